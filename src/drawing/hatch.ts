import type { NoFixZone } from '../fixings/placedFixings.js';
import type { Point } from '../survey/point.js';
import type { PaperPoint } from './svg.js';

/** Distance between the lines of a hatch, mm on paper; ISO 128-3 asks for at least 0.7 (from memory). */
const PITCH = 2;

/** Which way the lines of a hatch run, and how far apart, mm on paper. */
interface Hatching {
  readonly pitch: number;
  /** From the upper left to the lower right. */
  readonly falling: boolean;
}

/** The lines at 45 degrees that fill what rings on the sheet enclose. */
export function hatch(
  rings: readonly (readonly PaperPoint[])[],
  { pitch, falling }: Hatching = { pitch: PITCH, falling: false },
): (readonly [PaperPoint, PaperPoint])[] {
  const way = falling ? -1 : 1;
  // Along a line x + y stays the same, and x - y tells how far along it a point is.
  const turned = rings.map((ring) => ring.map(({ x, y }) => ({ across: x + way * y, along: x - way * y })));
  const step = pitch * Math.SQRT2;
  const levels = turned.flat().map(({ across }) => across);
  const [least, greatest] = [Math.min(...levels), Math.max(...levels)];
  const segments: (readonly [PaperPoint, PaperPoint])[] = [];
  for (let level = (Math.floor(least / step) + 1) * step; level < greatest; level += step) {
    const met = turned
      .flatMap((ring) =>
        ring.flatMap((a, i) => {
          const b = ring[(i + 1) % ring.length];
          if (a.across > level === b.across > level) return [];
          return a.along + ((b.along - a.along) * (level - a.across)) / (b.across - a.across);
        }),
      )
      .sort((a, b) => a - b);
    const point = (along: number): PaperPoint => ({ x: (level + along) / 2, y: (way * (level - along)) / 2 });
    for (let i = 0; i + 1 < met.length; i += 2) segments.push([point(met[i]), point(met[i + 1])]);
  }
  return segments;
}

/** An eighth of a circle in three steps; mirrored and turned they make a ring of 24 corners. */
const EIGHTH: readonly (readonly [number, number])[] = [
  [1, 0],
  [0.9659, 0.2588],
  [0.866, 0.5],
];

/** The outline of a zone; that of a round one as a ring of 24 corners. */
export function zoneOutline(zone: NoFixZone): readonly Point[] {
  if ('outline' in zone) return zone.outline;
  const quarter = [
    ...EIGHTH,
    [Math.SQRT1_2, Math.SQRT1_2] as const,
    ...EIGHTH.slice(1)
      .reverse()
      .map(([x, y]) => [y, x] as const),
  ];
  const ring = [0, 1, 2, 3].flatMap((turns) =>
    quarter.map(([x, y]) => (turns === 0 ? [x, y] : turns === 1 ? [-y, x] : turns === 2 ? [-x, -y] : [y, -x])),
  );
  return ring.map(([x, y]) => ({ x: zone.centre.x + (x * zone.diameter) / 2, y: zone.centre.y + (y * zone.diameter) / 2 }));
}
