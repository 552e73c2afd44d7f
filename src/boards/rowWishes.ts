import { inFrame, wallsOf } from './findings/laidCeiling.js';
import { windowsOf } from './findings/windowsOf.js';
import { type JointWishes, nearnessOf } from './jointWishes.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Band, RowLayout } from './rowLayouts.js';

/** What would be wrong with the long joints of a division into rows, counted; `nearWindow`: rows beside a window that are no full boards there. */
export type RowWishes = Omit<JointWishes, 'unproven' | 'poor'>;

/** For a problem, a function that says what is wrong with the rows of a division, in the order of {@link JointWishes}. */
export function rowWishes(problem: PlacementProblem): (layout: RowLayout) => RowWishes {
  const near = nearnessOf(problem);
  const windows = windowLevels(problem);
  const { greatest } = problem.rules.wallGap;
  const isCutAt = ({ ripped, low, high }: Band, wall: number): boolean =>
    ripped ? low - greatest <= wall && wall <= high + greatest : low + greatest < wall && wall < high - greatest;
  return ({ bands }) => {
    const total = { onOldJoint: 0, nearHatchCorner: 0, nearWindow: 0, nearOpening: 0 };
    bands.slice(1).forEach(({ low }, below) => {
      const level = Math.round((bands[below].high + low) / 2);
      const each = near('long joint', { u: 0, v: level }, { u: problem.length, v: level });
      total.onOldJoint += each.onOldJoint;
      total.nearHatchCorner += each.nearHatchCorner;
      total.nearOpening += each.nearOpening;
    });
    if (bands.length > 1) total.nearWindow = bands.filter((band) => windows.some((level) => isCutAt(band, level))).length;
    return total;
  };
}

/** Where the walls with a window lie that run with the rows, in the problem's coordinates. */
function windowLevels(problem: PlacementProblem): number[] {
  const { frame, mirrored, request } = problem;
  const origin = inFrame(frame, problem.toPlan(0, 0)).v;
  const walls = wallsOf(request.room, frame);
  return windowsOf(request.room).flatMap((edge) => {
    const [a, b] = walls[edge];
    if (Math.abs(b.v - a.v) >= Math.abs(b.u - a.u)) return [];
    const level = Math.round((a.v + b.v) / 2) - origin;
    return [mirrored.v ? -level : level];
  });
}
