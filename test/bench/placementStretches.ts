import type { Opening, Point } from 'soffitwright';
import type { RoomToSolve } from './placementRows.js';

/** What of a row lies between walls and openings. Thousandths of a mm. */
export interface Stretch {
  readonly from: End;
  readonly to: End;
}

interface End {
  readonly at: number;
  readonly meets: 'wall' | 'opening';
}

/** Across the joists and along them. */
interface Corner {
  readonly u: number;
  readonly v: number;
}

/**
 * The stretches of every row, as far as boards may reach: to the gap before a wall, and to an opening. All walls and openings run
 * along the joists or across them, and openings keep clear of walls.
 *
 * @throws where a wall along the rows, or an end of an opening, is not on a line between two rows: there a piece is notched, or
 *   narrower than its row, and the model knows no such pieces
 */
export function rowStretches({ room, joists }: RoomToSolve, rowWidths: readonly number[], gap: number): Stretch[][] {
  const into = ({ x, y }: Point): Corner => {
    const [u, v] = joists.direction === 'y' ? [x, y] : [y, x];
    return { u: thousandths(u), v: thousandths(v) };
  };
  const outline = room.outline.map(into);
  const across = outline.map(({ v }) => v);
  const used = rowWidths.reduce((sum, width) => sum + thousandths(width), 0);
  // Rows that leave more or less than the gap do so at both walls alike.
  const beside = (Math.max(...across) - Math.min(...across) - used) / 2;
  const walls = drawnIn(outline, gap, beside);
  const openings = (room.openings ?? []).map((opening) => ringOf(opening).map(into));
  let high = Math.min(...across) + beside;
  return rowWidths.map((width) => {
    const low = high;
    high = low + thousandths(width);
    if ([walls, ...openings].flat().some(({ v }) => v > low && v < high)) throw new Error('a row that is no plain rectangle');
    const level = (low + high) / 2;
    const ends = [
      ...crossings(walls, level).map((at): End => ({ at, meets: 'wall' })),
      ...openings.flatMap((ring) => crossings(ring, level)).map((at): End => ({ at, meets: 'opening' })),
    ].sort((a, b) => a.at - b.at);
    return ends.flatMap((from, index) => (index % 2 === 0 ? [{ from, to: ends[index + 1] }] : []));
  });
}

const thousandths = (length: number): number => Math.round(length * 1000);

function ringOf(opening: Opening): readonly Point[] {
  if (!('outline' in opening)) throw new Error('a round opening');
  return opening.outline;
}

/** Where boards may lie: the outline with each wall moved in, those along the rows by `beside`, the others by `gap`. */
function drawnIn(outline: readonly Corner[], gap: number, beside: number): Corner[] {
  const next = (i: number): Corner => outline[(i + 1) % outline.length];
  const turn = Math.sign(outline.reduce((sum, { u, v }, i) => sum + u * next(i).v - next(i).u * v, 0));
  const inwards = outline.map(({ u, v }, i): Corner => {
    const along = { u: Math.sign(next(i).u - u), v: Math.sign(next(i).v - v) };
    if ((along.u === 0) === (along.v === 0)) throw new Error('a wall that is neither along the rows nor across them');
    return { u: -turn * along.v, v: turn * along.u };
  });
  return outline.map(({ u, v }, i) => {
    const [before, after] = [inwards[(i + outline.length - 1) % outline.length], inwards[i]];
    return { u: u + gap * (before.u || after.u), v: v + beside * (before.v || after.v) };
  });
}

const crossings = (ring: readonly Corner[], level: number): number[] =>
  ring.flatMap(({ u, v }, i) => (v > level === ring[(i + 1) % ring.length].v > level ? [] : [u]));
