import fc from 'fast-check';
import type { Opening, PieceToCheck, Point } from 'soffitwright';
import { isSimple } from '../../src/survey/outline.js';
import { type CutJoint, cutRows, twiceArea } from './cutRows.js';
import { block, type CheckByHand, round } from './layoutsByHand.js';

/** Any room cut up exactly, without gaps. */
export interface CutPolygon {
  readonly check: CheckByHand;
  /** As they are cut out, round ones with corners. */
  readonly holes: readonly (readonly Point[])[];
  readonly turn: number;
}

const place = fc.record({ x: fc.integer({ min: 0, max: 6000 }), y: fc.integer({ min: 0, max: 5000 }) });

const side = (a: Point, b: Point, c: Point): number => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));

const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

/** Corners in any order made an outline that does not cross itself: of two sides that cross the stretch between is turned about. */
function untangled(points: readonly Point[]): Point[] {
  const ring = [...points];
  for (let again = true; again; ) {
    again = false;
    for (let i = 0; i + 2 < ring.length; i++) {
      for (let k = i + 2; k < ring.length; k++) {
        if (!cross(ring[i], ring[i + 1], ring[k], ring[(k + 1) % ring.length])) continue;
        ring.splice(i + 1, k - i, ...ring.slice(i + 1, k + 1).reverse());
        again = true;
      }
    }
  }
  return ring;
}

const anyTangle = fc.array(place, { minLength: 3, maxLength: 11 }).map(untangled);

/** A floor of steps, up and down on either side. */
const anySteps = fc
  .array(
    fc.record({
      width: fc.integer({ min: 200, max: 1500 }),
      low: fc.integer({ min: 0, max: 1800 }),
      high: fc.integer({ min: 2000, max: 5000 }),
    }),
    {
      minLength: 1,
      maxLength: 5,
    },
  )
  .map((steps) => {
    const starts = steps.map((_, i) => steps.slice(0, i).reduce((sum, { width }) => sum + width, 0));
    const low = steps.flatMap(({ width, low: y }, i): Point[] => [
      { x: starts[i], y },
      { x: starts[i] + width, y },
    ]);
    const high = steps.flatMap(({ width, high: y }, i): Point[] => [
      { x: starts[i], y },
      { x: starts[i] + width, y },
    ]);
    const ring = [...low, ...high.reverse()];
    return ring.filter((at, i) => at.x !== ring[(i + 1) % ring.length].x || at.y !== ring[(i + 1) % ring.length].y);
  });

export const anyOutline: fc.Arbitrary<Point[]> = fc
  .oneof({ weight: 3, arbitrary: anyTangle }, { weight: 1, arbitrary: anySteps })
  .filter(isRoom);

function isRoom(outline: readonly Point[]): boolean {
  if (!isSimple(outline)) return false;
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  return Math.max(...xs) - Math.min(...xs) >= 400 && Math.max(...ys) - Math.min(...ys) >= 400;
}

const anyOpening: fc.Arbitrary<Opening> = fc.oneof(
  fc
    .record({ at: place, size: fc.integer({ min: 60, max: 500 }) })
    .map(({ at, size }): Opening => ({ kind: 'light', centre: at, diameter: size })),
  fc
    .record({
      at: place,
      width: fc.integer({ min: 60, max: 900 }),
      depth: fc.integer({ min: 60, max: 900 }),
      lean: fc.integer({ min: -50, max: 50 }),
    })
    .map(({ at: { x, y }, width, depth, lean }): Opening => {
      const outline = block(x, x + width, y, y + depth).map((corner, i) => (i > 1 ? { ...corner, x: corner.x + lean } : corner));
      return { kind: 'other', outline };
    }),
);

const ringOf = (opening: Opening): readonly Point[] =>
  'outline' in opening ? opening.outline : round(opening.centre.x, opening.centre.y, opening.diameter / 2);

/** Whether a ring lies inside an outline, or outside, and does not touch it. */
function lies(ring: readonly Point[], about: readonly Point[], inside: boolean): boolean {
  const within = ({ x, y }: Point): boolean =>
    about.filter((a, i) => {
      const b = about[(i + 1) % about.length];
      return a.y > y !== b.y > y && side(a, b, { x, y }) > 0 === b.y > a.y;
    }).length %
      2 ===
    1;
  const touches = ring.some((a, i) =>
    about.some((c, k) => {
      const [b, d] = [ring[(i + 1) % ring.length], about[(k + 1) % about.length]];
      return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
    }),
  );
  return !touches && within(ring[0]) === inside && (inside || !about.some((corner) => isIn(corner, ring)));
}

const isIn = ({ x, y }: Point, ring: readonly Point[]): boolean => {
  const xs = ring.map((each) => each.x);
  const ys = ring.map((each) => each.y);
  return Math.min(...xs) <= x && x <= Math.max(...xs) && Math.min(...ys) <= y && y <= Math.max(...ys);
};

/** Those that lie in the room and clear of the ones before. */
function placed(openings: readonly Opening[], outline: readonly Point[]): Opening[] {
  const kept: Opening[] = [];
  for (const opening of openings) {
    const ring = ringOf(opening);
    const clear = kept.every((other) => lies(ring, ringOf(other), false));
    if (lies(ring, outline, true) && clear) kept.push(opening);
  }
  return kept;
}

/** Where rows and joints lie, whatever the room. */
const anyCuts = fc.record({
  heights: fc.array(fc.integer({ min: 150, max: 1200 }), { minLength: 12, maxLength: 12 }),
  joints: fc.array(
    fc.record({
      row: fc.integer({ min: 1, max: 12 }),
      foot: fc.integer({ min: 0, max: 6000 }),
      lean: fc.integer({ min: -300, max: 300 }),
    }),
    {
      maxLength: 10,
    },
  ),
});

/** Rooms of any outline with openings, cut up with no gap anywhere; `jointGap` leaves one at butt joints. */
export const anyCutPolygon = (turns: number, jointGap = 0): fc.Arbitrary<CutPolygon> =>
  fc
    .record({
      outline: anyOutline,
      openings: fc.array(anyOpening, { maxLength: 3 }),
      cuts: anyCuts,
      turn: fc.integer({ min: 0, max: turns - 1 }),
    })
    .map(({ outline, openings, cuts, turn }) => {
      const kept = placed(openings, outline);
      const holes = kept.map(ringOf);
      return {
        check: checkOf(outline, kept, cutRows({ outline, openings: holes, ...rowsOf(outline, cuts), jointGap })),
        holes,
        turn,
      };
    })
    .filter(({ check }) => check.layout.pieces.every((piece) => [piece.outline, ...(piece.holes ?? [])].every(isSimple)));

function rowsOf(
  outline: readonly Point[],
  { heights, joints }: { heights: readonly number[]; joints: readonly { row: number; foot: number; lean: number }[] },
) {
  const ys = outline.map(({ y }) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const levels = [low];
  for (const height of heights) if (levels[levels.length - 1] + height < high) levels.push(levels[levels.length - 1] + height);
  const cuts = joints.map(({ row, foot, lean }): CutJoint => ({ row, foot, head: foot + lean }));
  // Joints of one row that cross would leave pieces of no shape.
  const apart = cuts.filter((joint, i) =>
    cuts.slice(0, i).every((other) => other.row !== joint.row || Math.abs(other.foot - joint.foot) > 700),
  );
  return { levels: [...levels, high], joints: apart };
}

const checkOf = (outline: readonly Point[], openings: readonly Opening[], pieces: readonly PieceToCheck[]): CheckByHand => ({
  room: { outline, openings },
  joists: [0, 1].map((i) => ({
    id: `J${i + 1}`,
    start: { x: outline[0].x + 400 * i, y: 0 },
    end: { x: outline[0].x + 400 * i, y: 5000 },
    width: 50,
    sd: 0,
    presence: 1,
    known: 'given',
  })),
  boards: [{ id: 'b', length: 10_000, width: 3000, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
  layout: { pieces, boards: pieces.map(({ board }) => ({ id: board, stock: 'b' })) },
  rules: { 'perimeter.gap': 0, 'joint.gap': 0 },
});

/** mm2. */
export const areaOf = (ring: readonly Point[]): number => Math.abs(twiceArea(ring)) / 2;

export const pieceArea = ({ outline, holes = [] }: PieceToCheck): number =>
  holes.reduce((sum, hole) => sum - areaOf(hole), areaOf(outline));

/** How thick a piece is: its area over half of its girth. */
export const thicknessOf = (piece: PieceToCheck): number => (2 * pieceArea(piece)) / girthOf(piece.outline);

/** Length of an outline, mm. */
export const girthOf = (ring: readonly Point[]): number =>
  ring.reduce((sum, { x, y }, i) => {
    const next = ring[(i + 1) % ring.length];
    return sum + Math.sqrt((next.x - x) ** 2 + (next.y - y) ** 2);
  }, 0);
