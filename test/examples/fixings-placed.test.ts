import {
  type FixingsRequest,
  type Joist,
  joistsFromPositions,
  joistsFromSpacing,
  placeFixings,
  rectangle,
  ruleSets,
  ruleValue,
  withRules,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { messages } from '../../src/rules/messages.js';
import { handLaid, joint, wall } from '../generators/handLaid.js';

const room = { outline: rectangle(3600, 3000) };
const joists = joistsFromSpacing({ room, direction: 'y', first: 25, spacing: 400, last: 3575, width: 47 });
/** One row: a butt joint on J5 at 1625. */
const layout = handLaid(
  { id: '1.1', ends: [wall(5), joint(1625, 'J5')], low: 5, high: 1205 },
  { id: '1.2', ends: [joint(1625, 'J5'), wall(3595)], low: 5, high: 1205 },
);
const request: FixingsRequest = { room, layout, joists };
const lineOn = (joist: string, placed = placeFixings(request), piece?: string) => {
  const line = placed.lines.find((each) => each.joist === joist && (piece === undefined || each.piece === piece));
  if (line === undefined) throw new Error(`no line on ${joist}`);
  return line;
};

describe('screws on a joist in the middle of the board', () => {
  it('go in at 25 where that saves one: 1200 takes six at 230', () => {
    expect(lineOn('J2')).toMatchObject({ kind: 'field', count: 6, first: 25, text: 'first at 25, then every 230' });
  });

  it('stay at the edge distance where floating saves none, in steps of whole mm', () => {
    const rules = withRules(ruleSets.uk, { 'fixing.floatingEdgeDistance': 13 });
    expect(lineOn('J2', placeFixings({ ...request, rules }))).toMatchObject({ count: 7, text: 'first at 12, then every 196' });
  });

  it('five a line at 300, common practice, 35 a board; six a line at 230, 42', () => {
    const board = handLaid({ id: '1.1', ends: [joint(25, 'J1'), joint(2425, 'J7')], low: 5, high: 1205 });
    const countAt = (field: number): number =>
      placeFixings({
        ...request,
        layout: board,
        rules: withRules(ruleSets.uk, { 'fixing.field': field, 'fixing.boardEnd': field, 'fixing.perimeter': field }),
      }).count;
    expect(countAt(300)).toBe(35);
    expect(countAt(230)).toBe(42);
    expect(placeFixings({ ...request, layout: board }).count).toBe(48);
  });
});

describe('screws at the ends of a piece', () => {
  it('are closer on the joist nearest a wall', () => {
    expect(lineOn('J1')).toMatchObject({ kind: 'perimeter', count: 9 });
  });

  it('lie 13 inside the cut end of a butt joint, each side of it', () => {
    const at = placeFixings(request).positions.filter(({ joist }) => joist === 'J5');
    expect(new Set(at.filter(({ piece }) => piece === '1.1').map(({ x }) => x))).toEqual(new Set([1625 - 1.5 - 13]));
    expect(new Set(at.filter(({ piece }) => piece === '1.2').map(({ x }) => x))).toEqual(new Set([1625 + 1.5 + 13]));
  });

  it('do not face those of the other board on the same joist', () => {
    const placed = placeFixings(request);
    const [a, b] = [lineOn('J5', placed, '1.1'), lineOn('J5', placed, '1.2')];
    expect([a.kind, b.kind, a.pair, b.pair]).toEqual(['end', 'end', 'offset', 'offset']);
    expect(Math.abs(a.first - b.first)).toBeGreaterThanOrEqual(10);
    expect(a.steps).toEqual(b.steps);
  });

  it('stay on narrow timber, and a warning says how near the cut end they are', () => {
    const narrow = joists.map((each): Joist => (each.id === 'J5' ? { ...each, width: 35 } : each));
    const { positions, findings } = placeFixings({ ...request, joists: narrow });
    const at = positions.filter(({ joist, piece }) => joist === 'J5' && piece === '1.1');
    expect(new Set(at.map(({ x }) => x))).toEqual(new Set([1625 - (35 / 2 - 6)]));
    expect(findings.filter(({ code }) => code === 'fixing-edge')).toHaveLength(2);
    expect(findings[0]).toMatchObject({
      code: 'fixing-edge',
      severity: 'warning',
      where: { piece: '1.1', joist: 'J5' },
      value: 10,
      limit: 13,
      source: { standing: 'secondary' },
    });
  });

  it.each([35, 38, 40.9])('of %f can be put right by longer boards, by battens, or by a tight butt: a departure', (width) => {
    const narrow = joists.map((each): Joist => (each.id === 'J5' ? { ...each, width } : each));
    const [{ message, remedy }] = placeFixings({ ...request, joists: narrow }).findings;
    expect(message).toContain(`the joist is ${width} mm wide, too narrow for both edge distances`);
    expect(remedy).toMatch(/^Use longer boards .*, or fix battens under the old ceiling/);
    expect(remedy).toContain('tight butt with the screws about 12 mm in and angled into the joist is a departure from the rule');
  });

  it('too narrow for a tight butt have longer boards and battens only', () => {
    const narrow = joists.map((each): Joist => (each.id === 'J5' ? { ...each, width: 30 } : each));
    const [{ code, remedy }] = placeFixings({ ...request, joists: narrow }).findings;
    expect(code).toBe('fixing-edge');
    expect(remedy).toBe(
      'Use longer boards so that no butt joint falls here, or fix battens under the old ceiling and board to those.',
    );
  });

  it('of 41 has both distances', () => {
    const just = joists.map((each): Joist => (each.id === 'J5' ? { ...each, width: 41 } : each));
    expect(placeFixings({ ...request, joists: just }).findings).toEqual([]);
  });

  it('is not what is wrong where the joint is off the middle of wide timber', () => {
    const off = handLaid(
      { id: '1.1', ends: [wall(5), joint(1632, 'J5')], low: 5, high: 1205 },
      { id: '1.2', ends: [joint(1632, 'J5'), wall(3595)], low: 5, high: 1205 },
    );
    expect(placeFixings({ ...request, layout: off }).findings.map(({ code, message }) => [code, message])).toEqual([
      [
        'fixing-edge',
        'Piece 1.2 on J5: the butt joint is off the middle of the joist; the screws are 9 mm from the cut end instead of 13.',
      ],
    ]);
  });

  it('go on the last joist where the board runs past it to a wall', () => {
    const short = joistsFromSpacing({ room, direction: 'y', first: 25, spacing: 400, width: 47 });
    expect(short[short.length - 1].id).toBe('J9');
    expect(lineOn('J9', placeFixings({ ...request, joists: short }))).toMatchObject({ kind: 'perimeter', count: 9 });
  });

  it('move in on a joist that stands half under the wall', () => {
    const beside = joistsFromPositions({ room, direction: 'y', positions: [10, 425, 825, 1225, 1625, 3575], width: 50 });
    const first = placeFixings({ ...request, joists: beside }).positions.filter(({ joist }) => joist === 'J1');
    expect(new Set(first.map(({ x }) => x))).toEqual(new Set([5 + 13]));
  });

  it('cannot hold where the joint misses the timber: an error', () => {
    const missed = handLaid(
      { id: '1.1', ends: [wall(5), joint(1425, 'J5')], low: 5, high: 1205 },
      { id: '1.2', ends: [joint(1425, 'J5'), wall(3595)], low: 5, high: 1205 },
    );
    const { findings } = placeFixings({ ...request, layout: missed });
    expect(
      findings.filter(({ code }) => code === 'fixing-off-timber').map(({ severity, where }) => [severity, where?.piece]),
    ).toEqual([['error', '1.1']]);
  });
});

describe('the closer spacing at ends and walls', () => {
  const closed = (joist: number, from: number, to: number) => ({
    id: 'cable',
    outline: [joist - 60, joist + 60].flatMap((x, i) =>
      i === 0
        ? [
            { x, y: from },
            { x, y: to },
          ]
        : [
            { x, y: to },
            { x, y: from },
          ],
    ),
  });

  it('should hold on timber: where it cannot be kept it is a warning, and beyond the spacing in the middle an error', () => {
    for (const key of ['fixing.boardEnd', 'fixing.perimeter'] as const) {
      expect(ruleValue(ruleSets.uk, key)).toMatchObject({ value: 150, level: 'should', sense: 'at most' });
      expect(ruleValue(ruleSets.uk, key).note).toContain('metal framing');
    }
    expect(ruleValue(ruleSets.uk, 'fixing.field')).toMatchObject({ value: 230, level: 'must' });
    // At the butt joint on J5 and along the wall on J1.
    for (const joist of [1625, 25]) {
      const found = (to: number) =>
        placeFixings({ ...request, noFix: [closed(joist, 400, to)] }).findings.map(({ code, severity, value, limit }) => [
          code,
          severity,
          value,
          limit,
        ]);
      expect(new Set(found(600).map(String))).toEqual(new Set(['fixing-gap,warning,200,150']));
      expect(new Set(found(640).map(String))).toEqual(new Set(['fixing-gap,error,240,230']));
    }
  });

  it('means the first screw on each joist at a wall that runs across the joists, and no line along it', () => {
    const nearer = placeFixings({ ...request, rules: withRules(ruleSets.uk, { 'fixing.perimeter': 60 }) });
    const usual = placeFixings(request);
    // The line beside the wall that runs with the joists is closer; nothing else is.
    expect(lineOn('J1', nearer).count).toBeGreaterThan(lineOn('J1', usual).count);
    for (const joist of ['J2', 'J3', 'J4']) expect(lineOn(joist, nearer)).toEqual(lineOn(joist, usual));
    // Every joist has a screw no further from the edge beside the wall than screws may stand there, and none between joists.
    const first = new Map<string, number>();
    for (const { joist, y } of usual.positions) first.set(joist, Math.min(first.get(joist) ?? Infinity, y));
    expect(first.size).toBe(joists.length);
    for (const y of first.values()) expect(y - 5).toBeLessThanOrEqual(25);
    for (const { x, joist } of usual.positions) {
      const centre = joists.find(({ id }) => id === joist)?.start.x ?? 0;
      expect(Math.abs(x - centre)).toBeLessThanOrEqual(47 / 2 - 6);
    }
  });
});

describe('screws follow the timber', () => {
  it('of an askew joist', () => {
    const askew = joistsFromPositions({
      room,
      direction: 'y',
      positions: [25, { atStart: 815, atEnd: 845 }, 1625, 3575],
      width: 47,
    });
    const line = placeFixings({ ...request, joists: askew }).positions.filter(({ joist }) => joist === 'J2');
    for (const { x, y } of line) expect(Math.abs(x - (815 + (30 * y) / 3000))).toBeLessThanOrEqual(0.001);
    expect(line.length).toBe(6);
  });

  it('and stay on it where a square end crosses an askew joist', () => {
    const askew = joistsFromPositions({
      room,
      direction: 'y',
      positions: [25, 425, 825, 1225, { atStart: 1620, atEnd: 1639 }, 3575],
      width: 47,
    });
    const { positions, findings } = placeFixings({ ...request, joists: askew });
    for (const { x, y } of positions.filter(({ joist }) => joist === 'J5')) {
      expect(Math.abs(x - (1620 + (19 * y) / 3000))).toBeLessThanOrEqual(47 / 2 - 6 + 0.001);
    }
    // 5 mm to the left of the joint at the low edge: 2 more than the tolerance of 3, so that one board's screws move out.
    expect(findings.map(({ code, where }) => [code, where?.piece])).toEqual([['fixing-edge', '1.2']]);
  });
});

describe('places without screws', () => {
  it('move the neighbours so that the rule still holds', () => {
    const placed = placeFixings({ ...request, noFix: [{ id: 'pipe', centre: { x: 825, y: 490 }, diameter: 100 }] });
    const ys = placed.positions.filter(({ joist }) => joist === 'J3').map(({ y }) => y);
    for (const y of ys) expect(Math.abs(y - 490)).toBeGreaterThanOrEqual(50);
    for (let i = 1; i < ys.length; i++) expect(ys[i] - ys[i - 1]).toBeLessThanOrEqual(230);
    expect(placed.findings).toEqual([]);
  });

  it('are a finding where they are longer than the spacing', () => {
    const zone = [
      { x: 800, y: 300 },
      { x: 850, y: 300 },
      { x: 850, y: 700 },
      { x: 800, y: 700 },
    ];
    const placed = placeFixings({ ...request, noFix: [{ outline: zone }] });
    expect(placed.findings).toMatchObject([
      { code: 'fixing-gap', severity: 'error', where: { piece: '1.1', joist: 'J3' }, value: 400, limit: 230 },
    ]);
    const ys = placed.positions.filter(({ joist }) => joist === 'J3').map(({ y }) => y);
    expect(ys).toContain(300);
    expect(ys).toContain(700);
  });

  it('include openings, with the distance from a cut edge', () => {
    const light = { kind: 'light' as const, centre: { x: 825, y: 490 }, diameter: 70 };
    const placed = placeFixings({ ...request, room: { ...room, openings: [light] } });
    for (const { y } of placed.positions.filter(({ joist }) => joist === 'J3')) {
      expect(Math.abs(y - 490)).toBeGreaterThanOrEqual(35 + 13);
    }
  });
});

describe('a piece with a hole', () => {
  it('keeps its screws from the sides and corners of it', () => {
    const hole = [
      { x: 700, y: 400 },
      { x: 900, y: 400 },
      { x: 900, y: 800 },
      { x: 700, y: 800 },
    ];
    const holed = handLaid({ id: '1.1', ends: [wall(5), wall(3595)], low: 5, high: 1205, holes: [hole] });
    const placed = placeFixings({ ...request, layout: holed });
    const lines = placed.lines.filter(({ joist }) => joist === 'J3');
    expect(lines).toHaveLength(2);
    const ys = placed.positions.filter(({ joist }) => joist === 'J3').map(({ y }) => y);
    for (const y of ys) expect(y <= 400 - 13 || y >= 800 + 13).toBe(true);
    expect(ys.some((y) => y > 350 && y <= 387)).toBe(true);
  });
});

it('survives JSON and says how many there are to the square metre', () => {
  const placed = placeFixings(request);
  expect(JSON.parse(JSON.stringify(placed))).toEqual(placed);
  expect(placed.count).toBe(placed.positions.length);
  expect(placed.perSquareMetre).toBe(18.12);
});

describe('other ways of fixing', () => {
  it('nails are 150 apart in the UK', () => {
    const line = lineOn('J2', placeFixings({ ...request, fixing: 'nail' }));
    for (const step of line.steps) expect(step).toBeLessThanOrEqual(150);
    expect(line.count).toBe(9);
  });

  it('nails go in pairs where the rule set has a rule for it, single along walls and at butt joints', () => {
    const placed = placeFixings({ ...request, rules: ruleSets.nbcCanada, fixing: 'nail', doubleNailing: true });
    const line = lineOn('J2', placed);
    expect(line).toMatchObject({ pairDistance: 50, count: 10 });
    expect(line.text).toMatch(/^first at \d+, then every \d+, each with a second 50 towards the middle$/);
    expect(Math.max(...line.steps)).toBeLessThanOrEqual(300);
    expect(line.steps.filter((step) => step === 50)).toHaveLength(5);
    for (const joist of ['J1', 'J5']) expect(lineOn(joist, placed)).not.toHaveProperty('pairDistance');
  });

  it('no pairs of screws, and none where the set has no rule for them', () => {
    expect(() => placeFixings({ ...request, fixing: 'nail', doubleNailing: true })).toThrow('doubleNailing');
    expect(() => placeFixings({ ...request, rules: ruleSets.ircUs, doubleNailing: true })).toThrow('doubleNailing');
  });

  it('screws keep 9 off the line of old lath nails, and stay 6 inside the timber', () => {
    const lining = [{ kind: 'lath-and-plaster' as const, thickness: 28 }];
    const placed = placeFixings({ ...request, lining });
    expect(lineOn('J2', placed)).toMatchObject({ offCentre: 9 });
    for (const { x } of placed.positions.filter(({ joist }) => joist === 'J2')) expect(x).toBe(434);
    const thin = joists.map((each): Joist => ({ ...each, width: 28 }));
    for (const { x } of placeFixings({ ...request, lining, joists: thin }).positions.filter(({ joist }) => joist === 'J2')) {
      expect(x).toBe(433);
    }
    const thinner = joists.map((each): Joist => (each.id === 'J2' ? { ...each, width: 26 } : each));
    expect(placeFixings({ ...request, lining, joists: thinner }).findings).toMatchObject([
      { code: 'nail-line-near', severity: 'warning', where: { piece: '1.1', joist: 'J2' }, value: 7, limit: 8 },
    ]);
    expect(placed.findings).toEqual([]);
  });

  it('a bracing ceiling to NZS 3604 is fixed at 150 along the edges of each sheet', () => {
    const placed = placeFixings({ ...request, rules: ruleSets.asNzs, diaphragm: true });
    for (const joist of ['J1', 'J5']) expect(Math.max(...lineOn(joist, placed).steps)).toBeLessThanOrEqual(150);
    expect(placed.findings.map(({ code }) => code)).not.toContain('rule-from-memory');
    expect(placeFixings({ ...request, rules: ruleSets.asNzs }).findings.map(({ code }) => code)).toContain('rule-from-memory');
  });

  it('joists may be described in any of their forms', () => {
    const described = { direction: 'y', first: 25, spacing: 400, last: 3575, width: 47 } as const;
    expect(placeFixings({ ...request, joists: described })).toEqual(placeFixings(request));
  });

  it('a hatch has screws into all four of its trimmers', () => {
    const hatch = [
      { x: 840, y: 405 },
      { x: 1210, y: 405 },
      { x: 1210, y: 805 },
      { x: 840, y: 805 },
    ];
    const trimmer = (id: string, y: number): Joist => ({
      id,
      start: { x: 825, y },
      end: { x: 1225, y },
      width: 47,
      sd: 0,
      presence: 1,
      kind: 'trimmer',
      known: 'given',
    });
    const trimmed = [...joists, trimmer('T1', 385), trimmer('T2', 825)];
    const holed = handLaid({ id: '1.1', ends: [wall(5), wall(3595)], low: 5, high: 1205, holes: [hatch] });
    const placed = placeFixings({ ...request, joists: trimmed, layout: holed });
    for (const each of ['T1', 'T2']) {
      const screws = placed.positions.filter(({ joist }) => joist === each);
      expect(screws.length).toBeGreaterThanOrEqual(3);
      for (const { y } of screws) expect(y <= 405 - 13 || y >= 805 + 13).toBe(true);
    }
    for (const each of ['J3', 'J4']) {
      expect(placed.positions.filter(({ joist, y }) => joist === each && y > 405 && y < 805).length).toBeGreaterThan(0);
    }
  });
});

describe('what can be done with the old ceiling in place', () => {
  it('no remedy for timber that is too narrow, or not there, wants anything fixed beside a joist from above', () => {
    const about = Object.entries(messages).filter(([key, { of = key }]) =>
      ['bearing-short', 'fixing-edge', 'fixing-off-timber', 'end-off-timber', 'embedment-deep', 'embedment-short'].includes(of),
    );
    expect(about.length).toBeGreaterThan(8);
    for (const [, { remedy = '' }] of about) expect(remedy).not.toMatch(/nogging|cleat|sister|back-block|beside the joist|lath/i);
  });
});
