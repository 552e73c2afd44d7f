import { anticlockwise, corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { splitRings } from '../survey/splitRings.js';
import { type Side, sidesOf, withoutStraightCorners } from '../survey/traceRings.js';
import type { Ring } from './overlayRings.js';

/** What is boarded by joists of its own: plan coordinates in grid steps, anticlockwise about it and clockwise about what it leaves out. */
export interface BoardedArea {
  readonly rings: readonly Ring[];
  /** Whether a side borders on another part that is boarded. Every other side is a wall, or ends like one. */
  readonly isBorder: (side: Side) => boolean;
}

interface PartOutline {
  readonly outline: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
}

/** The areas of all parts of a ceiling. Where two of them meet they have the same corners. */
export function boardedAreas(parts: readonly PartOutline[]): BoardedArea[] {
  const rings = parts.map(({ outline, holes = [] }) => [
    anticlockwise(corners(outline)),
    ...holes.map((hole) => [...anticlockwise(corners(hole))].reverse()),
  ]);
  if (parts.length === 1) return [{ rings: rings[0].map(withoutStraightCorners), isBorder: () => false }];
  const split = splitRings(rings.flat());
  const sides = split.map((ring) => new Set(sidesOf(ring).map(keyOf)));
  let end = 0;
  return rings.map((own): BoardedArea => {
    const start = end;
    end += own.length;
    const others = [...sides.slice(0, start), ...sides.slice(end)];
    return {
      rings: split.slice(start, end),
      isBorder: ([a, b]) => others.some((side) => side.has(keyOf([b, a]))),
    };
  });
}

const keyOf = ([a, b]: Side): string => `${a.x} ${a.y} ${b.x} ${b.y}`;
