import type { PaperPoint } from './svg.js';

/** Distance between the lines of a hatch, mm on paper; ISO 128-3 asks for at least 0.7 (from memory). */
const PITCH = 2;

/** The lines at 45 degrees that fill a polygon on the sheet. */
export function hatch(ring: readonly PaperPoint[]): (readonly [PaperPoint, PaperPoint])[] {
  // Along a line x + y stays the same, and x - y tells how far along it a point is.
  const turned = ring.map(({ x, y }) => ({ across: x + y, along: x - y }));
  const step = PITCH * Math.SQRT2;
  const least = Math.min(...turned.map(({ across }) => across));
  const greatest = Math.max(...turned.map(({ across }) => across));
  const segments: (readonly [PaperPoint, PaperPoint])[] = [];
  for (let level = (Math.floor(least / step) + 1) * step; level < greatest; level += step) {
    const met = turned
      .flatMap((a, i) => {
        const b = turned[(i + 1) % turned.length];
        if (a.across > level === b.across > level) return [];
        return a.along + ((b.along - a.along) * (level - a.across)) / (b.across - a.across);
      })
      .sort((a, b) => a - b);
    const point = (along: number): PaperPoint => ({ x: (level + along) / 2, y: (level - along) / 2 });
    for (let i = 0; i + 1 < met.length; i += 2) segments.push([point(met[i]), point(met[i + 1])]);
  }
  return segments;
}
