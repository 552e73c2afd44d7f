import type { FramePoint } from '../joists/frame.js';

/** A piece no narrower than this share of what lies on both sides of the place is scribed or tapered there, not notched; common practice, no source. */
const SHARE = { narrow: 3, whole: 4 };

/** Where a notch or a hole leaves little of a piece between two wider parts; grid steps. */
export interface Neck {
  /** What is left across the board, where that is least. */
  readonly width: number;
  /** How far along the board it is so narrow. */
  readonly from: number;
  readonly to: number;
}

/** When a piece has a neck, grid steps: `piece.minimumNeck` and `piece.neckRest`. */
export interface NeckLimits {
  readonly under: number;
  readonly rest: number;
}

/**
 * The necks of a piece, from end to end. Beside a hole the wider of the two sides counts, since that is what holds the piece together.
 *
 * A neck under `piece.minimumNeck` snaps when the piece is lifted: then the piece is to be parted there, by a butt joint on a timber
 * between the sides of the opening or at them.
 *
 * @param outline - of the piece, `u` along the board and `v` across it; either winding
 * @param holes - cut before the piece goes up; what is cut out afterwards, as for lights, is none of them
 * @param limits - what is narrower is a neck, and a wider part beyond it hangs by it when it is longer along the board; grid steps
 */
export function necksOf(
  outline: readonly FramePoint[],
  holes: readonly (readonly FramePoint[])[],
  { under, rest }: NeckLimits,
): readonly Neck[] {
  const slices = slicesOf([outline, ...holes]);
  const isNeck = (width: number, at: number): boolean =>
    width < under && hangs(slices.slice(0, at), width, rest) && hangs(slices.slice(at), width, rest);
  const necks: Neck[] = [];
  slices.forEach((slice, i) => {
    const [near, far] = [isNeck(slice.near, i), isNeck(slice.far, i + 1)];
    if (!near && !far) return;
    const neck: Neck = {
      width: Math.min(near ? slice.near : Infinity, far ? slice.far : Infinity),
      from: near ? slice.from : reaching(slice, under),
      to: far ? slice.to : reaching(slice, under),
    };
    const before = necks[necks.length - 1];
    if (before?.to === neck.from)
      necks[necks.length - 1] = { width: Math.min(before.width, neck.width), from: before.from, to: neck.to };
    else necks.push(neck);
  });
  return necks;
}

/** A stretch of a piece between two corners along it: the widest and the narrowest part that is left at its two ends. */
export interface Slice {
  readonly from: number;
  readonly to: number;
  readonly near: number;
  readonly far: number;
  readonly narrowest: number;
}

export function slicesOf(rings: readonly (readonly FramePoint[])[]): Slice[] {
  const places = [...new Set(rings.flat().map(({ u }) => u))].sort((a, b) => a - b);
  const edges = rings.flatMap((ring) => ring.map((a, i) => [a, ring[(i + 1) % ring.length]] as const));
  return places.slice(1).map((to, i): Slice => {
    const from = places[i];
    const across = edges
      .filter(([a, b]) => Math.min(a.u, b.u) <= from && Math.max(a.u, b.u) >= to)
      .map(([a, b]) => [levelAt(a, b, from), levelAt(a, b, to)] as const)
      .sort((a, b) => a[0] + a[1] - b[0] - b[1]);
    const [near, far] = [0, 1].map((end) => across.flatMap((edge, k) => (k % 2 === 1 ? [edge[end] - across[k - 1][end]] : [])));
    return { from, to, near: Math.max(0, ...near), far: Math.max(0, ...far), narrowest: Math.min(...near, ...far) };
  });
}

const levelAt = (a: FramePoint, b: FramePoint, u: number): number => Math.round(a.v + ((b.v - a.v) * (u - a.u)) / (b.u - a.u));

/** Whether what is clearly wider than this goes on for more than what rests on timber. */
function hangs(slices: readonly Slice[], width: number, rest: number): boolean {
  const wide = Math.ceil((SHARE.whole * width) / SHARE.narrow);
  const length = slices.reduce((sum, slice) => {
    const { from, to, near, far } = slice;
    if (Math.min(near, far) >= wide) return sum + to - from;
    if (Math.max(near, far) < wide) return sum;
    return sum + (near >= wide ? reaching(slice, wide) - from : to - reaching(slice, wide));
  }, 0);
  return length > rest;
}

/** Where along a slice a width is reached that lies between those at its ends; else its end towards the wider one. */
function reaching({ from, to, near, far }: Slice, width: number): number {
  if (Math.max(near, far) <= width) return far > near ? to : from;
  return Math.round(from + ((to - from) * (width - near)) / (far - near));
}
