import { corners } from '../survey/outline.js';
import type { PlacementProblem } from './placementProblem.js';
import type { RowLayout } from './rowLayouts.js';

/**
 * Long joints that begin at an inner corner of the room, where a crack would run on: no further from it than the gap at a wall may be
 * wide, and a cut may be out.
 */
export function rowsAtInnerCorners({ request, parts, rules }: PlacementProblem, { bands }: RowLayout): number {
  const ring = corners(request.room.outline);
  if (ring.length <= 4) return 0;
  const inner = innerCorners(ring);
  const beside = rules.wallGap.greatest + rules.cutTolerance;
  return bands.filter((band, row) => {
    if (bands[row + 1]?.part !== band.part) return false;
    const { into } = parts[band.part];
    return inner.some((corner) => Math.abs(into(corner).y - band.high) <= beside);
  }).length;
}

function innerCorners(ring: readonly { readonly x: number; readonly y: number }[]) {
  const turns = ring.map((here, at) => {
    const before = ring[(at + ring.length - 1) % ring.length];
    const after = ring[(at + 1) % ring.length];
    return Math.sign((here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x));
  });
  const about = Math.sign(turns.reduce((sum, turn) => sum + turn, 0));
  return ring.filter((_, at) => turns[at] === -about);
}
