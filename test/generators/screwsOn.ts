import type { FixingToCheck, Joist, PieceToCheck, Point } from 'soffitwright';
import type { CheckByHand } from './layoutsByHand.js';

/** From the edges of the board, mm: more than any rule asks for. */
const CLEAR = 13.2;
/** From place to place along a timber, mm. */
const STEP = 5;
/** Between screws, mm: enough for the closest rule. */
const SPACING = 148;
/** Off the middle of a timber of 50, mm, the middle first. */
const ASIDE = [0, 5, -5, 10, -10, 16, -16, 18.5, -18.5];

/**
 * Screws found by feeling along: at every step along every timber it is tried whether a screw would be well inside a piece. The
 * placing of screws has no part in it.
 */
export function screwsOn({ layout, joists }: Pick<CheckByHand, 'layout' | 'joists'>): FixingToCheck[] {
  return layout.pieces.flatMap((piece) => joists.flatMap((joist) => screwsBetween(piece, joist)));
}

function screwsBetween(piece: PieceToCheck, joist: Joist): FixingToCheck[] {
  const { start, end } = joist;
  if (!meet([start, end], piece.outline)) return [];
  const length = Math.sqrt((end.x - start.x) ** 2 + (end.y - start.y) ** 2);
  const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
  const at = (t: number, aside: number): Point => ({
    x: Math.round((start.x + along.x * t - along.y * aside) * 1000) / 1000,
    y: Math.round((start.y + along.y * t + along.x * aside) * 1000) / 1000,
  });
  const steps = Array.from({ length: Math.floor(length / STEP) + 1 }, (_, k) => k * STEP);
  // Each step takes the place nearest to the middle that is clear of all edges.
  const places = steps.map((t) => ASIDE.find((aside) => isClear(at(t, aside), piece)));
  const screws: FixingToCheck[] = [];
  for (let from = 0; from < places.length; ) {
    const aside = places[from];
    let to = from + 1;
    while (to < places.length && places[to] === aside) to++;
    if (aside !== undefined) {
      const [first, last] = [steps[from], steps[to - 1]];
      const count = Math.max(1, Math.ceil((last - first) / SPACING));
      for (let k = 0; k <= count; k++) {
        screws.push({ ...at(first + ((last - first) * k) / count, aside), piece: piece.id, joist: joist.id });
      }
    }
    from = to;
  }
  return screws;
}

/** Whether the boxes about a timber and a piece share anything. */
function meet(line: readonly Point[], outline: readonly Point[]): boolean {
  return (['x', 'y'] as const).every((axis) => {
    const [a, b] = [line, outline].map((points) => points.map((point) => point[axis]));
    return Math.min(...a) - 25 <= Math.max(...b) && Math.min(...b) <= Math.max(...a) + 25;
  });
}

const isClear = (at: Point, { outline, holes = [] }: PieceToCheck): boolean =>
  [outline, ...holes].every((ring, i) => isIn(at, ring) === (i === 0) && awayFrom(at, ring) >= CLEAR);

const isIn = ({ x, y }: Point, ring: readonly Point[]): boolean =>
  ring.filter((a, i) => {
    const b = ring[(i + 1) % ring.length];
    return a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
  }).length %
    2 ===
  1;

const awayFrom = ({ x, y }: Point, ring: readonly Point[]): number =>
  Math.min(
    ...ring.map((a, i) => {
      const b = ring[(i + 1) % ring.length];
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const share = Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
      return Math.sqrt((x - a.x - share * dx) ** 2 + (y - a.y - share * dy) ** 2);
    }),
  );
