import { toGrid } from '../survey/grid.js';
import type { Stretch } from './lockedPieces.js';
import type { PlacementProblem } from './placementProblem.js';
import { type Edges, type RunEnds, type StandingJoint, standingIn } from './standingJoints.js';

/** Where a run may be divided: on a joist, or at the end of a piece that is up. */
export interface DividingPlace {
  readonly at: number;
  /** Which of the problem's joists a joint that is chosen here is on; -1 at the end of a piece that is up. */
  readonly index: number;
  readonly standing?: StandingJoint;
}

/** The places of a run, and which of them a piece that is up lies between. */
export interface PlacesInRun {
  /** Without the two ends of the run. */
  readonly inside: readonly DividingPlace[];
  /** From one place to another, the low end of the run being 0. */
  readonly up: readonly (readonly [from: number, to: number])[];
}

/** Puts the ends of pieces that are up among the joists of a run, and takes out those joists that they leave no room for. */
export function placesInRun(
  problem: PlacementProblem,
  row: Edges,
  run: RunEnds,
  onJoists: readonly DividingPlace[],
  beside: readonly StandingJoint[],
): PlacesInRun {
  const { joints, pieces } = standingIn(problem, row, run);
  const free = onJoists.filter(
    ({ at, index }) =>
      !pieces.some(({ from, to }) => from <= at && at <= to) &&
      !beside.some((joint) => joint.joist === index || Math.abs(joint.at - at) < problem.rules.stagger) &&
      !problem.standing.beneath.some((joint) => isOver(problem, row, index, joint)),
  );
  const inside = [...free, ...joints.map((standing): DividingPlace => ({ at: standing.at, index: -1, standing }))].sort(
    (a, b) => a.at - b.at,
  );
  const placeOf = (at: number): number =>
    at === run.from ? 0 : at === run.to ? inside.length + 1 : inside.findIndex((each) => each.at === at) + 1;
  return { inside, up: pieces.map(({ from, to }) => [placeOf(from), placeOf(to)]) };
}

/** Whether a butt joint of another layer runs along this joist beneath some of the row. */
function isOver({ joists, rules }: PlacementProblem, row: Edges, index: number, joint: Stretch): boolean {
  const [low, high] = [Math.max(row.low, joint.low), Math.min(row.high, joint.high)];
  if (low >= high || joint.high - joint.low < joint.far - joint.near) return false;
  const { centre, joist } = joists[index];
  const away = Math.abs(centre(Math.round((low + high) / 2)) - Math.round((joint.near + joint.far) / 2));
  return away <= toGrid(joist.width) / 2 + rules.jointGap;
}

/** Whether a piece between two places may be laid: clear of pieces that are up, and not across one that is kept where it was. */
export function leavesStanding(
  { standing: { kept } }: PlacementProblem,
  row: Edges,
  places: readonly number[],
  up: PlacesInRun['up'],
  [from, to]: readonly [number, number],
): boolean {
  if (up.some((piece) => from < piece[1] && piece[0] < to)) return false;
  const [near, far] = [places[from], places[to]];
  return kept.every(
    (piece) =>
      piece.low >= row.high ||
      piece.high <= row.low ||
      piece.far <= near ||
      piece.near >= far ||
      (piece.near === near && piece.far === far && piece.low === row.low && piece.high === row.high),
  );
}
