import { sidesOf } from '../survey/traceRings.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Reach } from './reachOf.js';

/** Levels that rows are tried at, those of the longest walls first. */
const MOST_LEVELS = 4;

/**
 * Widths of rows, from the low side of a part up, such that the edge of one falls on a level of its outline: where walls or sides of
 * openings run along the rows, or walls turn back. Full rows of one width from there to both sides, and what is left ripped at the
 * sides of the part; or what is left below the level ripped beside it.
 */
export function rowsAtCorners(problem: PlacementProblem, part: Part, reach: Reach): number[][] {
  if (part.clear === undefined) return [];
  const { edgeGap, rowWidth, wallGap } = problem.rules;
  const least = Math.max(rowWidth, 1);
  const found: number[][] = [];
  for (const level of levelsOf(part.clear(wallGap.nominal), reach)) {
    for (const width of new Set(problem.stocks.map((stock) => stock.width))) {
      const below = fullAndRest(level - edgeGap - reach.low, width, edgeGap, least);
      const above = fullAndRest(reach.high - level, width, edgeGap, least);
      if (below === undefined || above === undefined) continue;
      found.push([...below.rest, ...below.full, ...above.full, ...above.rest]);
      found.push([...below.full, ...below.rest, ...above.full, ...above.rest]);
    }
  }
  return found;
}

/** A stretch in full rows and at most one narrower one; nothing if that one would be too narrow. */
function fullAndRest(
  length: number,
  width: number,
  edgeGap: number,
  least: number,
): { full: number[]; rest: number[] } | undefined {
  const count = Math.floor((length + edgeGap) / (width + edgeGap));
  const rest = length - count * (width + edgeGap);
  const full = Array.from({ length: count }, () => width);
  if (rest + edgeGap === 0) return { full, rest: [] };
  return rest >= least ? { full, rest: [rest] } : undefined;
}

function levelsOf(rings: ReturnType<NonNullable<Part['clear']>>, { low, high }: Reach): number[] {
  const lengths = new Map<number, number>();
  const add = (level: number, length: number): void => {
    if (level > low && level < high) lengths.set(level, (lengths.get(level) ?? 0) + length);
  };
  for (const ring of rings) {
    for (const [a, b] of sidesOf(ring)) if (a.y === b.y) add(a.y, Math.abs(b.x - a.x));
    ring.forEach((at, i) => {
      const [before, after] = [ring[(i + ring.length - 1) % ring.length], ring[(i + 1) % ring.length]];
      const turn = (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x);
      if (turn < 0) add(at.y, 0);
    });
  }
  return [...lengths]
    .sort(([p, a], [q, b]) => b - a || p - q)
    .slice(0, MOST_LEVELS)
    .map(([level]) => level);
}
