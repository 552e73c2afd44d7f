import {
  bearing,
  fixingLength,
  fixingsPerLine,
  type Joist,
  placeFixings,
  type RuleKey,
  rectangle,
  ruleSets,
  ruleValue,
  withRules,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { handLaid, joint } from '../generators/handLaid.js';

// Arithmetic on the values of the rule sets: regression values, nobody published them.

const joist = (width: number): Joist => ({
  id: 'J1',
  start: { x: 1000, y: 0 },
  end: { x: 1000, y: 3000 },
  width,
  sd: 0,
  presence: 1,
  known: 'given',
});
const distance = (key: RuleKey): number => ruleValue(ruleSets.uk, key).value as number;
const bound = distance('fixing.boundEdgeDistance');
const cut = distance('fixing.cutEdgeDistance');
const timber = distance('fixing.timberEdgeDistance');

describe('timber at a butt joint', () => {
  it.each([
    ['FD1 both bound, gap 0', bound, bound, 0, 32],
    ['FD1 both bound, gap 3', bound, bound, 3, 35],
    ['FD2 one bound, one cut, gap 0', bound, cut, 0, 35],
    ['FD2 one bound, one cut, gap 3', bound, cut, 3, 38],
    ['FD3 both cut, gap 0', cut, cut, 0, 38],
    ['FD3 both cut, gap 3', cut, cut, 3, 41],
  ])('%s needs %i + %i + gap %i and twice the distance from the timber edge: %i mm', (_, a, b, gap, expected) => {
    expect(a + b + 2 * timber + gap).toBe(expected);
  });

  it.each([
    [35, 0, -1.5],
    [35, 3, -3],
    [38, 0, 0],
    [38, 3, -1.5],
    [41, 3, 0],
    [44, 0, 3],
    [44, 3, 1.5],
    [47, 0, 4.5],
    [47, 3, 3],
    [50, 0, 6],
    [50, 3, 4.5],
    [63, 0, 12.5],
    [63, 3, 11],
    [75, 0, 18.5],
    [75, 3, 17],
    [100, 0, 31],
    [100, 3, 29.5],
  ])('FD4 a joist of %i with a gap of %i lets the joint drift by %f', (width, jointGap, expected) => {
    expect(bearing({ joist: joist(width), at: 1000, jointGap }).tolerance).toBe(expected);
  });
});

describe('screws on a line', () => {
  it.each([
    [300, 5],
    [230, 7],
    [170, 8],
    [150, 9],
  ])('FD5 at %i, 10 from each edge of 1200: %i', (spacing, count) => {
    expect(fixingsPerLine({ width: 1200, spacing, edgeDistance: 10 }).count).toBe(count);
  });

  it('takes no more at 230 when the edge distance is 25 than 1150 needs', () => {
    expect(fixingsPerLine({ width: 1200, spacing: 230, edgeDistance: 25 })).toEqual({ count: 6, pitch: 230, first: 25 });
  });

  const perLine = (spacing: number): number => fixingsPerLine({ width: 1200, spacing, edgeDistance: 10 }).count;
  it.each([
    ['FD6 joists at 400, ends at 150', 5 * perLine(230) + 2 * perLine(150), 53],
    ['FD7 joists at 600, ends at 150', 3 * perLine(230) + 2 * perLine(150), 39],
    ['FD8 nails, joists at 400', 7 * perLine(150), 63],
    ['FD8 nails, joists at 600', 5 * perLine(150), 45],
    ['FD9 at 170, joists at 400', 7 * perLine(170), 56],
    ['FD9 at 170, joists at 600', 5 * perLine(170), 40],
  ])('%s: a board of 2400 x 1200', (_, count, expected) => {
    expect(count).toBe(expected);
  });

  it('4 ft at 12 in, 3/8 in from the edges: 5, so that no step exceeds 12 in', () => {
    const inch = 25.4;
    const { count, pitch } = fixingsPerLine({ width: 48 * inch, spacing: 12 * inch, edgeDistance: 0.375 * inch });
    expect(count).toBe(5);
    expect(pitch / inch).toBeCloseTo(11.8125, 9);
  });
});

describe('screws of a whole board between two butt joints', () => {
  // Lines take six across 1200 and five across 900 at 230, the first 25 in; nine and seven at 150.
  it.each([
    [2400, 1200, 400, 42, 48, 16.7],
    [2250, 1200, 450, 36, 42, 15.6],
    [2400, 1200, 600, 30, 36, 12.5],
    [3000, 1200, 600, 36, 42, 11.7],
    [1800, 900, 450, 25, 29, 17.9],
    [1800, 900, 600, 20, 24, 14.8],
  ])(
    '%i x %i over joists at %i: %i at 230, %i with its ends at 150, about %f a m2',
    (length, width, centres, even, count, each) => {
      const room = { outline: rectangle(length + 200, width + 100) };
      const positions = Array.from({ length: length / centres + 1 }, (_, k) => 100 + k * centres);
      const layout = handLaid({
        id: '1.1',
        ends: [joint(100, 'J1'), joint(100 + length, `J${positions.length}`)],
        low: 50,
        high: 50 + width,
      });
      const request = { room, layout, joists: { direction: 'y' as const, positions, width: 47 } };
      const placed = placeFixings(request);
      expect(placed.count).toBe(count);
      expect(Math.abs(placed.perSquareMetre - each)).toBeLessThanOrEqual(0.06);
      expect(placeFixings({ ...request, rules: { 'fixing.boardEnd': 230, 'fixing.perimeter': 230 } }).count).toBe(even);
    },
  );
});

describe('lengths of over-boarding screws', () => {
  it.each([
    ['9.5 under 9.5 + 3', 9.5, [9.5, 3], 47, 50],
    ['12.5 under 9.5 + 3, no margin', 12.5, [9.5, 3], 50, 50],
    ['12.5 under 12.5 + 3 + 3', 12.5, [12.5, 3, 3], 56, 60],
    ['12.5 under 28', 12.5, [28], 65.5, 70],
    ['15 under 28', 15, [28], 68, 70],
    ['12.5 under 35', 12.5, [35], 72.5, 75],
  ])('%s with 25 into the joist', (_, board, lining, minimum, recommended) => {
    const rules = { 'fixing.preferredEmbedment': 25 };
    expect(fixingLength({ thicknesses: [board], lining, rules })).toMatchObject({ minimum, recommended });
  });

  it.each([
    ['no services known', 70, undefined, 29.5],
    ['no services known: 49.5 in is too deep', 90, undefined, null],
    ['over a cable 37 up', 70, 37, 29.5],
    ['over a cable 37 up: 34.5 in is too deep', 75, 37, null],
  ])('12.5 under 28, %s: a screw of %i', (_, screw, serviceDepth, embedment) => {
    const depth = serviceDepth === undefined ? {} : { serviceDepth };
    const answer = fixingLength({ thicknesses: [12.5], lining: [28], stock: [screw], ...depth });
    expect(answer.embedment).toBe(embedment);
    expect(answer.findings.some(({ code }) => code === 'embedment-deep')).toBe(embedment === null);
  });

  const stacks: [string, number[], number[], Record<20 | 25 | 32, number>][] = [
    ['S1 9.5 under 9.5 + 3', [9.5], [9.5, 3], { 20: 42, 25: 50, 32: 55 }],
    ['S2 12.5 under 9.5 + 3', [12.5], [9.5, 3], { 20: 45, 25: 50, 32: 60 }],
    ['S3 12.5 under 12.5 + 3', [12.5], [12.5, 3], { 20: 50, 25: 55, 32: 60 }],
    ['S4 12.5 under lath 6 and plaster 19', [12.5], [19, 6], { 20: 60, 25: 65, 32: 70 }],
    ['S5 12.5 under lath 8 and plaster 25', [12.5], [25, 8], { 20: 70, 25: 75, 32: 80 }],
    ['S6 15 under 33', [15], [33], { 20: 70, 25: 75, 32: 80 }],
    ['S7 two of 12.5 under 12.5 + 3', [12.5, 12.5], [12.5, 3], { 20: 65, 25: 70, 32: 75 }],
  ];
  const cases = stacks.flatMap(([name, boards, lining, lengths]) =>
    ([20, 25, 32] as const).map((into) => [name, into, boards, lining, lengths[into]] as const),
  );
  it.each(cases)('%s with %i into the joist', (_, into, thicknesses, lining, expected) => {
    const rules = withRules(ruleSets.uk, { 'fixing.embedment': into, 'fixing.preferredEmbedment': into });
    expect(fixingLength({ thicknesses, lining, rules }).recommended).toBe(expected);
  });
});
