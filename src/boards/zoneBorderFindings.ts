import { type Finding, finding } from '../rules/finding.js';
import { fromGrid } from '../survey/grid.js';
import { anticlockwise, corners } from '../survey/outline.js';
import { splitRings } from '../survey/splitRings.js';
import { type Side, sidesOf } from '../survey/traceRings.js';
import type { PlacementProblem } from './placementProblem.js';

/** Some sides of a part, on the plan in grid steps. */
interface Border {
  readonly zones: string;
  readonly sides: readonly Side[];
}

/**
 * Where boards stop within a room: between two of its zones, and where a zone ends at something that is not boarded, such as the
 * side of a beam. No piece lies across, and nothing but a bead joins or ends the boards there.
 */
export function zoneBorderFindings({ request: { room }, located }: PlacementProblem): Finding[] {
  if (room.zones === undefined || room.zones.length === 0) return [];
  const outlines = [room.outline, ...located.flatMap(({ outline, holes = [] }) => [outline, ...holes])];
  const [walls, ...rings] = splitRings(outlines.map((outline) => anticlockwise(corners(outline))));
  const names = located.flatMap(({ zone = 'the rest', holes = [] }) => [zone, ...holes.map(() => zone)]);
  const holes = located.flatMap((part) => [false, ...(part.holes ?? []).map(() => true)]);
  const sides = rings.map((ring, i) => (holes[i] ? [...ring].reverse() : ring)).map(sidesOf);
  const wall = new Set(sidesOf(walls).map(keyOf));
  const between = new Map<string, Border>();
  for (const [i, own] of sides.entries()) {
    for (const side of own) {
      if (wall.has(keyOf(side))) continue;
      const other = sides.findIndex((its) => its.some(([a, b]) => keyOf([b, a]) === keyOf(side)));
      if (other >= 0 && other < i) continue;
      const zones = other < 0 ? names[i] : `${names[i]} and ${names[other]}`;
      const key = `${other < 0} ${zones}`;
      between.set(key, { zones, sides: [...(between.get(key)?.sides ?? []), side] });
    }
  }
  return [...between].map(([key, border]) => told(border, key.startsWith('true')));
}

const keyOf = ([a, b]: Side): string => `${a.x} ${a.y} ${b.x} ${b.y}`;

function told({ zones, sides }: Border, isOpen: boolean): Finding {
  const lengths = sides.map(([a, b]) => Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y)));
  const [a, b] = sides[lengths.indexOf(Math.max(...lengths))];
  return finding('zone-border', 'note', {
    where: { at: { x: fromGrid(Math.round((a.x + b.x) / 2)), y: fromGrid(Math.round((a.y + b.y) / 2)) } },
    value: Math.round(fromGrid(lengths.reduce((sum, length) => sum + length, 0))),
    unit: 'mm',
    words: { zones },
    ...(isOpen && { sentence: 'zone-border-open' }),
  });
}
