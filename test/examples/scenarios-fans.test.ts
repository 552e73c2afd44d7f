import { type BoardLayout, type JoistsByPositions, type Piece, placeBoards, planCeiling, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { errorsIn, GAPS, rowsOf, stock } from '../generators/scenario.js';

// Joists of an old house, 3780 across by 4150 along, in rows of 1200, 1200, 1200 and 544.
const POSITIONS = [110, 470, 820, 1185, 1530, 1880, 2250, 2595, 2950, 3310, 3660];
const ACROSS = 3780;
const ALONG = 4150;
const room = { outline: rectangle(ACROSS, ALONG) };

/** Every joist so much further over at its far end in 3600 of its length; none at the first, all of it at the last. */
const fan = (over: number): JoistsByPositions => ({
  direction: 'y',
  positions: POSITIONS.map((at, k) => ({ atStart: at, atEnd: at + (((over * ALONG) / 3600) * k) / (POSITIONS.length - 1) })),
  width: 50,
});

/** All of them so much further over. */
const askew = (over: number): JoistsByPositions => ({
  direction: 'y',
  positions: POSITIONS.map((at) => ({ atStart: at, atEnd: at + (over * ALONG) / 3600 })),
  width: 50,
});

const joints = ({ pieces }: BoardLayout) =>
  pieces.slice(1).flatMap((after, i) => (after.ends[0].meets === 'board' ? [{ before: pieces[i], after }] : []));

/** A square end does while half of the rake is within the 4.5 that a joist of 50 allows. */
const raked = (rake: number) => (rake / 2 > 4.5 ? expect.closeTo(rake, 1) : undefined);

const request = (joists: JoistsByPositions, length = 2400) => ({ room, joists, rules: GAPS, boards: [stock(length)] });

describe('joists at irregular centres', () => {
  const joists: JoistsByPositions = { direction: 'y', positions: POSITIONS, width: 50 };

  it.each([
    [2400, 6],
    [3000, 5],
  ])('take %i boards, %i of them, every butt joint on a centre that was measured', (length, boards) => {
    const job = request(joists, length);
    const layout = placeBoards(job);
    expect([layout.boardsBought, rowsOf(layout)]).toEqual([boards, [1200, 1200, 1200, 544]]);
    for (const { after } of joints(layout)) expect(POSITIONS).toContain(after.ends[0].position);
    expect(errorsIn(job, layout)).toEqual([]);
  });
});

describe('joists that fan out by 20 in 3600', () => {
  it('are cut square to, and each end says how far it strays: 3.3 at the most', () => {
    const job = request(fan(20));
    const layout = placeBoards(job);
    expect(layout.boardsBought).toBe(6);
    for (const { before, after } of joints(layout)) {
      expect([before.ends[1].rake, after.ends[0].rake]).toEqual([undefined, undefined]);
      expect(after.ends[0].bearing?.offset).toBeLessThanOrEqual(3.4);
    }
    expect(Math.max(...joints(layout).map(({ after }) => after.ends[0].bearing?.offset ?? 0))).toBeGreaterThan(0);
    expect(errorsIn(job, layout)).toEqual([]);
  });

  it('stray by 3.3 each side over a row of 1200 where all of them lean', () => {
    const job = request(askew(20));
    const layout = placeBoards(job);
    const whole = joints(layout).filter(({ after }) => after.width === 1200);
    expect(whole.length).toBeGreaterThan(0);
    for (const { after } of whole) {
      expect(after.ends[0].rake).toBeUndefined();
      expect(after.ends[0].bearing?.offset).toBeCloseTo(3.333, 2);
    }
    expect(errorsIn(job, layout)).toEqual([]);
  });
});

describe('joists that lean by 60 in 3600', () => {
  it('have ends raked by 20 over a row of 1200, alike on both sides of the joint', () => {
    const job = request(askew(60));
    const layout = placeBoards(job);
    const all = joints(layout);
    expect(all.length).toBeGreaterThan(0);
    for (const { before, after } of all) {
      expect(before.ends[1].rake).toBe(after.ends[0].rake);
      expect(after.ends[0].rake).toEqual(raked((after.width * 60) / 3600));
    }
    expect(all.some(({ after }) => Math.round(after.ends[0].rake ?? 0) === 20)).toBe(true);
    expect(errorsIn(job, layout)).toEqual([]);
  });

  it('are followed only where a square end would not do, when they fan', () => {
    const job = request(fan(60));
    const layout = placeBoards(job);
    for (const { after } of joints(layout)) {
      const number = Number(after.ends[0].joist?.slice(1)) - 1;
      const rake = (after.width * 60 * number) / 10 / 3600;
      // Too near to what is decided on to say.
      if (Math.abs(rake / 2 - 4.5) > 0.05) expect(after.ends[0].rake).toEqual(raked(rake));
    }
    expect(errorsIn(job, layout)).toEqual([]);
  });

  it('give pieces a hand: marked face up, they are the mirror image of what the plan shows', () => {
    const { layout } = planCeiling({ ...request(askew(60)), lining: [] });
    const raked = layout.pieces.filter(({ ends }) => ends.some(({ rake = 0 }) => rake !== 0));
    expect(raked.length).toBeGreaterThan(0);
    for (const piece of raked.filter(({ ends }) => ends.filter(({ rake = 0 }) => rake !== 0).length === 1)) {
      expect(piece.hand?.view).toBe('face up');
      expect(turnsTo(piece.hand?.outline ?? [])).toBe(-turnsTo(piece.outline));
    }
    for (const { edgeLengths, cutLength, ends } of raked) {
      const [low, high] = ends.map(({ rake = 0 }) => rake);
      expect((edgeLengths?.high ?? 0) - (edgeLengths?.low ?? 0)).toBeCloseTo(high - low, 2);
      expect(Math.max(edgeLengths?.low ?? 0, edgeLengths?.high ?? 0)).toBeLessThanOrEqual(cutLength + 0.001);
    }
  });
});

/** Looking along a piece from its square end to its raked one: 1 where the longer edge is on the left, -1 where it is on the right. */
function turnsTo(outline: Piece['outline']): number {
  const sides = outline.map((a, i) => ({ a, b: outline[(i + 1) % outline.length] }));
  const square = sides.filter(({ a, b }) => a.x === b.x);
  const raked = sides.filter(({ a, b }) => a.x !== b.x && Math.abs(b.y - a.y) > Math.abs(b.x - a.x));
  if (square.length !== 1 || raked.length !== 1) throw new Error('no piece with one square end and one raked');
  const [{ a, b }] = raked;
  const way = Math.sign(a.x - square[0].a.x);
  const further = way * a.x > way * b.x ? a : b;
  const other = further === a ? b : a;
  return way * Math.sign(further.y - other.y);
}
