import type { FramePoint } from '../../joists/frame.js';

/** From where to where a ring reaches across the joists at a level along them that no corner of it lies on; grid steps, in order. */
export function stretchesAt(ring: readonly FramePoint[], level: number): (readonly [from: number, to: number])[] {
  const crossings: number[] = [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    if (a.v < level !== b.v < level) crossings.push(lineAt(a, b, level));
  });
  crossings.sort((a, b) => a - b);
  return crossings.flatMap((from, i) => (i % 2 === 0 ? [[from, crossings[i + 1]] as const] : []));
}

/** Where the line through two corners is across the joists, at a level along them. */
export const lineAt = (a: FramePoint, b: FramePoint, level: number): number =>
  a.v === b.v ? a.u : Math.round(a.u + ((b.u - a.u) * (level - a.v)) / (b.v - a.v));
