import type { PlacedFixings } from './placedFixings.js';

/** Screws of the pieces that are not up yet; without their places, all that are counted. */
export function screwsToDrive(
  { pieces }: { readonly pieces: readonly { readonly id?: string; readonly locked?: boolean }[] },
  { count, positions = [] }: Pick<PlacedFixings, 'count'> & Partial<Pick<PlacedFixings, 'positions'>>,
): number {
  const up = new Set(pieces.filter(({ locked }) => locked === true).map(({ id }) => id));
  return count - positions.filter(({ piece }) => up.has(piece)).length;
}
