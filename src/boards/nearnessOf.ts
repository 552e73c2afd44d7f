import type { FramePoint } from '../joists/frame.js';
import { numberOf } from '../rules/ruleValue.js';
import { toGrid } from '../survey/grid.js';
import { besideHatchCorner } from './findings/besideHatchCorner.js';
import { besideOldJoint, type OldJoint } from './findings/besideOldJoint.js';
import { distanceToOpening } from './findings/distanceToOpening.js';
import { inLightOf } from './findings/inLightOf.js';
import type { JointLine } from './findings/jointLines.js';
import { inFrame, wallsOf } from './findings/laidCeiling.js';
import { windowsOf } from './findings/windowsOf.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';

/**
 * What a joint comes too near to, each 0 or 1 for a butt joint and a count for the long joints of a division into rows: what a warning
 * would say of the finished layout. In the order of preference that a person on a ladder goes by:
 *
 * 1. `onOldJoint`, 2. `nearHatchCorner`: after boards and butt joints, before pieces under the preferred length, since they crack;
 * 3. `nearWindow`, 4. `nearOpening`: after the number of lengths and cuts, before the stagger that is preferred, since they only show.
 *
 * What the joist is worth in itself comes from {@link jointMerits}.
 */
export interface JointWishes {
  readonly onOldJoint: number;
  readonly nearHatchCorner: number;
  readonly nearWindow: number;
  readonly nearOpening: number;
}

/** Most ceilings have nothing that a joint could be too near to. */
const NOTHING: JointWishes = { onOldJoint: 0, nearHatchCorner: 0, nearWindow: 0, nearOpening: 0 };

/** What a line from place to place of a part comes too near to. */
export function nearnessOf(
  { request, set }: PlacementProblem,
  { frame, toPlan }: Part,
): (kind: JointLine['kind'], from: FramePoint, to: FramePoint) => JointWishes {
  const { room, lining = [] } = request;
  const steps = (key: Parameters<typeof numberOf>[1]): number => toGrid(numberOf(set, key));
  const old = lining.flatMap(({ joints = [] }) => joints.map(([a, b]): OldJoint => [inFrame(frame, a), inFrame(frame, b)]));
  const openings = room.openings ?? [];
  const hatches = openings.filter(({ kind }) => kind === 'hatch');
  const others = openings.filter(({ kind }) => kind !== 'hatch');
  const [walls, windows] = [wallsOf(room.outline, frame), windowsOf(room)];
  const [clear, corner, light] = [steps('oldJoint.clearance'), steps('hatch.cornerClearance'), steps('light.jointDistance')];
  const beside = steps('opening.jointClearance');
  if (old.length + openings.length + windows.length === 0) return () => NOTHING;
  return (kind, from, to) => {
    const ends = [from, to].map(({ u, v }) => inFrame(frame, toPlan(u, v)));
    ends.sort((a, b) => (kind === 'butt joint' ? a.v - b.v : a.u - b.u));
    const line: JointLine = { kind, pieces: ['', ''], row: 0, from: ends[0], to: ends[1] };
    const lit = (edge: number): boolean => kind === 'butt joint' && inLightOf(walls, edge, line, light) !== undefined;
    return {
      onOldJoint: Number(besideOldJoint(old, line, clear) !== undefined),
      nearHatchCorner: Number(hatches.some((hatch) => besideHatchCorner(frame, hatch, line, corner) !== undefined)),
      nearWindow: Number(windows.some(lit)),
      nearOpening: Number(others.some((opening) => distanceToOpening(frame, opening, line).away < beside)),
    };
  };
}
