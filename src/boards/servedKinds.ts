import type { PieceKind } from './pieceKinds.js';

/** Whether a piece of one kind can be cut down to one of another, from whatever board. */
export const servesFor = (long: PieceKind, short: PieceKind): boolean =>
  short.width <= long.width && long.sizes.every((size, stock) => size === Infinity || short.sizes[stock] <= size);

/** Whether a piece that nothing goes beside is like that when it is cut down to the other kind, too. */
const staysAlone = (long: PieceKind, short: PieceKind): boolean =>
  long.alone.every((alone, stock) => !alone || long.sizes[stock] === Infinity || short.alone[stock]);

/** Whether a piece of one kind can be cut down to one of another wherever it lies, and nothing else changes beside it. */
export const servesInPlace = (long: PieceKind, short: PieceKind): boolean =>
  servesFor(long, short) && long.alone.every((alone, stock) => long.sizes[stock] === Infinity || short.alone[stock] === alone);

/**
 * Per kind, the widest and longest first: of each width the next kind that it serves for in its own place on a board: a whole piece
 * cannot become a strip, for strips lie side by side in one place. What those serve for, it serves for as well.
 */
export function servedKinds(kinds: readonly PieceKind[]): (readonly number[])[] {
  const ofWidth = new Map<number, number[]>();
  for (const [kind, { width }] of kinds.entries()) ofWidth.set(width, [...(ofWidth.get(width) ?? []), kind]);
  return kinds.map((long, kind) =>
    [...ofWidth.values()].flatMap(
      (others) => others.find((other) => other > kind && servesFor(long, kinds[other]) && staysAlone(long, kinds[other])) ?? [],
    ),
  );
}
