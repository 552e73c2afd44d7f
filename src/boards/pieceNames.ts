import { toGrid } from '../survey/grid.js';
import { extentOf } from '../survey/outline.js';
import type { Piece } from './boardLayout.js';

/** Names that pieces had before, by their place on the ceiling. */
export type KnownNames = ReadonlyMap<string, string>;

/** A piece's place on the ceiling as a text. */
export function placeKey({ outline }: Pick<Piece, 'outline'>): string {
  const { left, right, low, high } = extentOf(outline);
  return [left, right, low, high].map(toGrid).join(' ');
}

/**
 * Pieces with the names that they had before. The others are named by row and place; where a piece has that name already, after
 * the piece before them: `1.2a` comes after `1.2`.
 */
export function named(pieces: readonly Piece[], known: KnownNames): Piece[] {
  const taken = new Set<string>();
  const kept = pieces.map((piece) => {
    const id = known.get(placeKey(piece));
    const isFree = id !== undefined && !taken.has(id);
    if (isFree) taken.add(id);
    return isFree ? id : undefined;
  });
  let [row, place, before] = [0, 0, ''];
  return pieces.map((piece, i) => {
    [place, before] = piece.row === row ? [place + 1, before] : [1, `${piece.row}.1`];
    row = piece.row;
    before = kept[i] ?? freeName(taken, `${row}.${place}`, before);
    taken.add(before);
    return { ...piece, id: before };
  });
}

function freeName(taken: ReadonlySet<string>, wanted: string, before: string): string {
  if (!taken.has(wanted)) return wanted;
  const base = before.replace(/[a-z]+$/, '');
  for (let letters = 1; ; letters++) {
    for (const letter of 'abcdefghijklmnopqrstuvwxyz') {
      const name = base + letter.repeat(letters);
      if (!taken.has(name)) return name;
    }
  }
}
