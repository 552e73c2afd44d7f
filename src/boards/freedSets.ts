import type { Piece } from './boardLayout.js';
import { compareInOrder } from './compareInOrder.js';

/** Pieces that may be given up beside those that must be, the nearest to them first. */
const MOST_NEAR = 14;
/** How many of them at once. */
const MOST_AT_ONCE = 3;

/**
 * Sets of pieces to give up: those that must be, then with one more of the others, then with two, then with three; pieces in the
 * rows of those that must be come first, then those of the rows beside.
 */
export function* freedSets(must: readonly Piece[], free: readonly Piece[]): Generator<ReadonlySet<string>> {
  const ids = must.map(({ id }) => id);
  const away = ({ row, ends }: Piece): readonly [number, number] => {
    const apart = must.map((each): readonly [number, number] => [
      Math.abs(each.row - row),
      Math.abs(each.ends[0].position - ends[0].position),
    ]);
    return apart.reduce((least, each) => (compareInOrder(each, least) < 0 ? each : least), [Infinity, Infinity]);
  };
  const near = free
    .filter(({ id }) => !ids.includes(id))
    .map((piece, at) => ({ id: piece.id, order: [...away(piece), at] }))
    .sort((a, b) => compareInOrder(a.order, b.order))
    .slice(0, MOST_NEAR)
    .map(({ id }) => id);
  for (let size = 0; size <= MOST_AT_ONCE; size++) {
    for (const more of subsets(near, size)) yield new Set([...ids, ...more]);
  }
}

/** Every subset of so many, in the order of the list. */
function* subsets(list: readonly string[], size: number, from = 0): Generator<readonly string[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i + size <= list.length; i++) {
    for (const rest of subsets(list, size - 1, i + 1)) yield [list[i], ...rest];
  }
}
