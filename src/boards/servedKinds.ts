import type { PieceKind } from './pieceKinds.js';

/** Whether a piece of one kind can be cut down to one of another, from whatever board. */
export const servesFor = (long: PieceKind, short: PieceKind): boolean =>
  short.width <= long.width && long.sizes.every((size, stock) => size === Infinity || short.sizes[stock] <= size);

/**
 * Per kind, the widest and longest first: of each width the next kind that it serves for. What those serve for, it serves for as
 * well.
 */
export function servedKinds(kinds: readonly PieceKind[]): (readonly number[])[] {
  const ofWidth = new Map<number, number[]>();
  for (const [kind, { width }] of kinds.entries()) ofWidth.set(width, [...(ofWidth.get(width) ?? []), kind]);
  return kinds.map((long, kind) =>
    [...ofWidth.values()].flatMap((others) => others.find((other) => other > kind && servesFor(long, kinds[other])) ?? []),
  );
}
