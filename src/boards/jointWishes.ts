import { bearingOf } from '../joists/bearing.js';
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
import type { Band } from './rowLayouts.js';
import { isUnproven } from './unproven.js';

/**
 * What would be wrong with a joint, each 0 or 1 for a butt joint and a count for the long joints of a row set; all of it is what
 * a warning would say of the finished layout. In the order of preference that a person on a ladder goes by:
 *
 * 1. `unproven`, 2. `poor`: before boards and butt joints are counted;
 * 3. `onOldJoint`, 4. `nearHatchCorner`: after boards and butt joints, before pieces under the preferred length, since they crack;
 * 5. `nearWindow`, 6. `nearOpening`: after the number of lengths and cuts, before the stagger that is preferred, since they only show.
 *
 * Under the other preferences the first two come after butt joints, and the rest in the same order after them.
 */
export interface JointWishes {
  /** On a joist that nobody has seen, or not well enough. */
  readonly unproven: number;
  /** Not sure to keep its edge distances, even on the middle of its joist. */
  readonly poor: number;
  readonly onOldJoint: number;
  readonly nearHatchCorner: number;
  readonly nearWindow: number;
  readonly nearOpening: number;
}

type Nearness = Omit<JointWishes, 'unproven' | 'poor'>;

/**
 * For a problem, a function that says what is wrong with a butt joint across a row on one of its joists; `at` is the middle of the
 * joint, in the coordinates of the row's part. Beyond the tolerance an end is raked along its joist, so that how well it sits depends
 * on the joist alone.
 */
export function jointWishes(problem: PlacementProblem): (band: Band, joist: number, at: number) => JointWishes {
  const near = problem.parts.map((part) => nearnessOf(problem, part));
  const ofJoist = problem.joists.map(({ joist }) => {
    const { outcome, withinEdgeRules } = bearingOf(joist, 0, numberOf(problem.set, 'joint.gap'), problem.set);
    return { unproven: Number(isUnproven(joist, withinEdgeRules)), poor: Number(outcome !== 'secure') };
  });
  return (band, joist, at) => ({
    ...ofJoist[joist],
    ...near[band.part]('butt joint', { u: at, v: band.low }, { u: at, v: band.high }),
  });
}

/** Most ceilings have nothing that a joint could be too near to. */
const NOTHING: Nearness = { onOldJoint: 0, nearHatchCorner: 0, nearWindow: 0, nearOpening: 0 };

/** What a line from place to place of a part comes too near to. */
export function nearnessOf(
  { request, set }: PlacementProblem,
  { frame, toPlan }: Part,
): (kind: JointLine['kind'], from: FramePoint, to: FramePoint) => Nearness {
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
