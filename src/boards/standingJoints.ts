import { toGrid } from '../survey/grid.js';
import type { Stretch } from './lockedPieces.js';
import type { PlacementProblem } from './placementProblem.js';

/** The edges of a row. */
export interface Edges {
  readonly low: number;
  readonly high: number;
}

/** From where to where a run goes along its row. */
export interface RunEnds {
  readonly from: number;
  readonly to: number;
}

/** A butt joint that a piece which is up makes, whatever lies beside it. */
export interface StandingJoint {
  readonly at: number;
  /** Which of the problem's joists it is over; -1 for none. */
  readonly joist: number;
  /** How far the piece that is up keeps from its half of the gap: on the low side of the joint, and on its high side. */
  readonly below: number;
  readonly above: number;
}

/** What pieces that are up make of a run. */
export interface StandingInRun {
  readonly joints: readonly StandingJoint[];
  /** From the low end of the run: which of the pieces that are up, and the places where it begins and ends. */
  readonly pieces: readonly { readonly index: number; readonly from: number; readonly to: number }[];
}

/** Pieces and walls that are no further apart than this leave nothing to be boarded between them, grid steps. */
const LEAST_LEFT = toGrid(20);

/** Whether a piece lies in a row, more than touching it. */
const isIn = (piece: Stretch, { low, high }: Edges): boolean => piece.low < high && piece.high > low;

/** The joints that pieces which are up make in a run, and where in it these pieces lie. */
export function standingIn(problem: PlacementProblem, row: Edges, run: RunEnds): StandingInRun {
  const up = problem.standing.up
    .map((piece, index) => ({ piece, index }))
    .filter(({ piece }) => isIn(piece, row) && piece.near < run.to && piece.far > run.from)
    .sort((a, b) => a.piece.near - b.piece.near);
  const joints: StandingJoint[] = [];
  const put = (below?: Stretch, above?: Stretch): number => {
    const joint = jointBetween(problem, row, below, above);
    joints.push(joint);
    return joint.at;
  };
  const pieces = up.map(({ index }) => ({ index, from: run.from, to: run.to }));
  for (const [i, { piece }] of up.entries()) {
    const before = up[i - 1]?.piece;
    if (before === undefined) {
      if (piece.near - run.from > LEAST_LEFT) pieces[i].from = put(undefined, piece);
    } else if (piece.near - before.far > LEAST_LEFT) {
      pieces[i - 1].to = put(before);
      pieces[i].from = put(undefined, piece);
    } else {
      pieces[i].from = put(before, piece);
      pieces[i - 1].to = pieces[i].from;
    }
    if (i === up.length - 1 && run.to - piece.far > LEAST_LEFT) pieces[i].to = put(piece);
  }
  return { joints, pieces };
}

/** In the middle of a joist, if the gap may be as wide as that makes it; else half a gap from the piece that is up. */
function jointBetween(problem: PlacementProblem, row: Edges, below?: Stretch, above?: Stretch): StandingJoint {
  const { jointGap, jointGive } = problem.rules;
  const half = jointGap / 2;
  const [least, greatest] =
    below !== undefined && above !== undefined
      ? [below.far, above.near]
      : below === undefined
        ? [(above as Stretch).near - half - jointGive, (above as Stretch).near - half]
        : [below.far + half, below.far + half + jointGive];
  const level = Math.round((row.low + row.high) / 2);
  const centred = problem.joists.map(({ centre }) => centre(level)).find((centre) => least <= centre && centre <= greatest);
  const middle = below === undefined ? greatest : above === undefined ? least : Math.round((least + greatest) / 2);
  const at = centred ?? middle;
  return {
    at,
    joist: joistUnder(problem, row, at),
    below: below === undefined ? 0 : at - half - below.far,
    above: above === undefined ? 0 : above.near - at - half,
  };
}

/** The joist that is under a place all across a row, the nearest if there are several. */
function joistUnder({ joists }: PlacementProblem, { low, high }: Edges, at: number): number {
  let nearest = -1;
  let least = Infinity;
  for (const [index, { joist, centre, ...runs }] of joists.entries()) {
    const away = Math.max(Math.abs(centre(low) - at), Math.abs(centre(high) - at));
    if (away >= least || 2 * away > toGrid(joist.width) || runs.low > low + LEAST_LEFT || runs.high < high - LEAST_LEFT) continue;
    [nearest, least] = [index, away];
  }
  return nearest;
}

/** The joints that pieces which are up make in the rows on both sides of a row. */
export function standingBeside(
  problem: PlacementProblem,
  row: Edges,
  runsIn: (row: Edges) => readonly RunEnds[],
): StandingJoint[] {
  const { up } = problem.standing;
  const beside = [
    up.filter(({ high }) => high <= row.low && row.low - high <= LEAST_LEFT),
    up.filter(({ low }) => low >= row.high && low - row.high <= LEAST_LEFT),
  ];
  return beside.flatMap((pieces) => {
    if (pieces.length === 0) return [];
    const edges = { low: Math.min(...pieces.map(({ low }) => low)), high: Math.max(...pieces.map(({ high }) => high)) };
    return runsIn(edges).flatMap((run) => standingIn(problem, edges, run).joints);
  });
}
