import { inFrame, wallsOf } from './findings/laidCeiling.js';
import { windowsOf } from './findings/windowsOf.js';
import { type JointWishes, nearnessOf } from './nearnessOf.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Band, RowLayout } from './rowLayouts.js';

/**
 * For a problem, a function that counts what the long joints of a division into rows come too near to; `nearWindow`: rows beside a window
 * that are no full boards there.
 */
export function rowWishes(problem: PlacementProblem): (layout: RowLayout) => JointWishes {
  const near = problem.parts.map((part) => nearnessOf(problem, part));
  const windows = problem.parts.map((part) => windowLevels(problem, part));
  const { greatest } = problem.rules.wallGap;
  const isCutAt = ({ ripped, low, high }: Band, wall: number): boolean =>
    ripped ? low - greatest <= wall && wall <= high + greatest : low + greatest < wall && wall < high - greatest;
  return ({ bands }) => {
    const total = { onOldJoint: 0, nearHatchCorner: 0, nearWindow: 0, nearOpening: 0 };
    bands.forEach((band, row) => {
      const next = bands[row + 1]?.part === band.part ? bands[row + 1] : undefined;
      const alone = next === undefined && bands[row - 1]?.part !== band.part;
      if (!alone && windows[band.part].some((level) => isCutAt(band, level))) total.nearWindow++;
      if (next === undefined) return;
      const level = Math.round((band.high + next.low) / 2);
      const each = near[band.part]('long joint', { u: 0, v: level }, { u: problem.parts[band.part].length, v: level });
      total.onOldJoint += each.onOldJoint;
      total.nearHatchCorner += each.nearHatchCorner;
      total.nearOpening += each.nearOpening;
    });
    return total;
  };
}

/** Where the walls with a window lie that run with the rows, in the coordinates of a part. */
function windowLevels({ request }: PlacementProblem, { frame, mirrored, toPlan }: Part): number[] {
  const origin = inFrame(frame, toPlan(0, 0)).v;
  const walls = wallsOf(request.room.outline, frame);
  return windowsOf(request.room).flatMap((edge) => {
    const [a, b] = walls[edge];
    if (Math.abs(b.v - a.v) >= Math.abs(b.u - a.u)) return [];
    const level = Math.round((a.v + b.v) / 2) - origin;
    return [mirrored.v ? -level : level];
  });
}
