import type { FramePoint } from '../joists/frame.js';

/** A piece no narrower than this share of what lies on both sides of the place is scribed or tapered there, not notched; common practice, no source. */
const SHARE = { narrow: 3, whole: 4 };

/**
 * How wide a piece is at its neck, in grid steps: where a notch or a hole leaves least of it between two wider parts, across the
 * board. Beside a hole the wider of the two sides counts, since that is what holds the piece together. Nothing where it has no neck.
 *
 * A neck under `piece.minimumNeck` snaps when the piece is lifted: then the piece is to be parted there, by a butt joint on a timber
 * between the sides of the opening or at them.
 *
 * @param outline - of the piece, `u` along the board and `v` across it; either winding
 * @param holes - cut before the piece goes up; what is cut out afterwards, as for lights, is none of them
 */
export function neckOf(outline: readonly FramePoint[], holes: readonly (readonly FramePoint[])[] = []): number | undefined {
  const widths = widthsAlong([outline, ...holes]);
  const widestFrom: number[] = [];
  for (let i = widths.length - 1, widest = 0; i >= 0; i--) {
    widest = Math.max(widest, widths[i]);
    widestFrom[i] = widest;
  }
  let before = 0;
  let neck: number | undefined;
  widths.forEach((width, i) => {
    const beside = Math.min(before, widestFrom[i]);
    if (beside > 0 && SHARE.whole * width <= SHARE.narrow * beside && width < (neck ?? Infinity)) neck = width;
    before = Math.max(before, width);
  });
  return neck;
}

/** From end to end of the piece, just after each corner and just before the next: the widest that is left of it. */
function widthsAlong(rings: readonly (readonly FramePoint[])[]): number[] {
  const places = [...new Set(rings.flat().map(({ u }) => u))].sort((a, b) => a - b);
  const edges = rings.flatMap((ring) => ring.map((a, i) => [a, ring[(i + 1) % ring.length]] as const));
  return places.slice(1).flatMap((to, i) => {
    const from = places[i];
    const across = edges
      .filter(([a, b]) => Math.min(a.u, b.u) <= from && Math.max(a.u, b.u) >= to)
      .map(([a, b]) => [levelAt(a, b, from), levelAt(a, b, to)] as const)
      .sort((a, b) => a[0] + a[1] - b[0] - b[1]);
    return [0, 1].map((end) => {
      let widest = 0;
      for (let k = 0; k + 1 < across.length; k += 2) widest = Math.max(widest, across[k + 1][end] - across[k][end]);
      return widest;
    });
  });
}

const levelAt = (a: FramePoint, b: FramePoint, u: number): number => Math.round(a.v + ((b.v - a.v) * (u - a.u)) / (b.u - a.u));
