import { windowsOf } from './findings/windowsOf.js';
import type { PlacementProblem } from './placementProblem.js';

/** Whether joints may come too near to something; most ceilings have nothing of the kind. */
export function wishesIn({ request }: PlacementProblem): {
  readonly old: boolean;
  readonly view: boolean;
  /** Whether it matters from which side the rows begin. */
  readonly rows: boolean;
} {
  const { room, lining = [] } = request;
  const openings = room.openings ?? [];
  const old = lining.some(({ joints = [] }) => joints.length > 0) || openings.some(({ kind }) => kind === 'hatch');
  const view = openings.some(({ kind }) => kind !== 'hatch') || windowsOf(room).length > 0;
  return { old, view, rows: old || view };
}
