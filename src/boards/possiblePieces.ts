import { toGrid } from '../survey/grid.js';
import type { PlacedJoist, PlacedOpening, PlacementProblem } from './placementProblem.js';
import { leavesStanding, type PlacesInRun, placesInRun } from './placesInRun.js';
import type { Band } from './rowLayouts.js';
import { isBare } from './standing.js';
import { type Edges, type StandingJoint, standingBeside } from './standingJoints.js';

/** A stretch of a row from wall or opening to wall or opening, and where it may be divided. */
export interface Run {
  readonly lowMeets: 'wall' | 'opening';
  readonly highMeets: 'wall' | 'opening';
  /** The two ends of the run and, between them, the joist centres on which it may be divided; in order. */
  readonly places: readonly number[];
  /** For each place, which of the problem's joists it is on; -1 at the ends. */
  readonly joistAt: readonly number[];
  readonly pieces: readonly PossiblePiece[];
  /** For each place, the pieces that start there, shortest first. */
  readonly starting: readonly (readonly number[])[];
  /** Per place, where pieces are up: the joint that they make there. */
  readonly standing?: readonly (StandingJoint | undefined)[];
}

/** A piece from one place of a run to another that the rules allow and some board can give. */
export interface PossiblePiece {
  readonly from: number;
  readonly to: number;
  readonly nominal: number;
  /** As cut, if its board is long enough. */
  readonly cut: number;
  /** How much shorter than `cut` it may be left, on both ends together. */
  readonly give: number;
  /** What it needs of the width of a board, where that is less than its row. */
  readonly width?: number;
  /** It is up already, and takes no board. */
  readonly isUp?: true;
}

/** What a piece of a row needs of the width of a board. */
export const widthOn = (piece: PossiblePiece | undefined, rowWidth: number): number => piece?.width ?? rowWidth;

/** The stretches of one row, and every piece that could lie in each. */
export function runsOf(problem: PlacementProblem, band: Band): Run[] {
  const { wallGap } = problem.rules;
  const middle = Math.round((band.low + band.high) / 2);
  const joists = problem.joists
    .map((joist, index) => ({ joist, index, at: joist.centre(middle) }))
    .filter(({ joist }) => joist.low <= band.low + wallGap.greatest && joist.high >= band.high - wallGap.greatest);
  const beside = isBare(problem.standing) ? [] : standingBeside(problem, band, (row) => stretches(problem, row));
  return stretches(problem, band).map(({ from, to, lowMeets, highMeets }) => {
    const onJoists = joists.filter(
      ({ joist, at }, place) =>
        at > from && at < to && (place === 0 || joists[place - 1].at !== at) && spareTimber(problem, joist, band, at) >= 0,
    );
    const { inside, up }: PlacesInRun = isBare(problem.standing)
      ? { inside: onJoists, up: [] }
      : placesInRun(problem, band, { from, to }, onJoists, beside);
    const places = [from, ...inside.map(({ at }) => at), to];
    const { jointGive, wallGive } = problem.rules;
    const gives = [
      lowMeets === 'wall' ? wallGive : 0,
      ...inside.map(({ index, at }) =>
        index < 0 ? jointGive : Math.min(jointGive, spareTimber(problem, problem.joists[index], band, at)),
      ),
      highMeets === 'wall' ? wallGive : 0,
    ];
    const supports = places.map((place) => ({
      before: joists.filter(({ at }) => at < place).length,
      upTo: joists.filter(({ at }) => at <= place).length,
    }));
    const isSupported = (i: number, k: number): boolean =>
      supports[k].upTo - supports[i].before >= problem.rules.pieceSupports && leavesStanding(problem, band, places, up, [i, k]);
    return {
      lowMeets,
      highMeets,
      places,
      joistAt: [-1, ...inside.map(({ index }) => index), -1],
      ...piecesOf(problem, band, { places, gives, up }, isSupported),
      ...(up.length > 0 && {
        standing: [undefined, ...inside.map(({ standing }) => standing), undefined],
      }),
    };
  });
}

/** Every piece from one place to another that may be laid, and those that are up. */
function piecesOf(
  problem: PlacementProblem,
  band: Band,
  { up, ...between }: Pick<Between, 'places' | 'gives'> & Pick<PlacesInRun, 'up'>,
  isAllowed: (from: number, to: number) => boolean,
): Pick<Run, 'pieces' | 'starting'> {
  const { places } = between;
  const pieces: PossiblePiece[] = [];
  const starting: number[][] = places.map(() => []);
  for (let i = 0; i < places.length; i++) {
    for (let k = i + 1; k < places.length; k++) {
      if (!isAllowed(i, k)) continue;
      const piece = pieceBetween(problem, band, { from: i, to: k, ...between });
      if (piece === undefined) continue;
      starting[i].push(pieces.length);
      pieces.push(piece);
    }
  }
  for (const [i, k] of up) {
    starting[i].push(pieces.length);
    pieces.push({ from: i, to: k, nominal: places[k] - places[i], cut: 0, give: 0, isUp: true });
  }
  return { pieces, starting };
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly lowMeets: 'wall' | 'opening';
  readonly highMeets: 'wall' | 'opening';
}

/** From wall to wall, less the openings that take the whole width of the row. */
function stretches(problem: PlacementProblem, band: Edges): Stretch[] {
  const { nominal, greatest } = problem.rules.wallGap;
  const across = problem.openings.filter((opening) => spans(opening, band, greatest));
  const found: Stretch[] = [];
  let from = nominal;
  let lowMeets: Stretch['lowMeets'] = 'wall';
  for (const opening of across) {
    if (opening.near > from) found.push({ from, to: opening.near, lowMeets, highMeets: 'opening' });
    if (opening.far > from) {
      from = opening.far;
      lowMeets = 'opening';
    }
  }
  const end = problem.length - nominal;
  if (end > from) found.push({ from, to: end, lowMeets, highMeets: 'wall' });
  return found;
}

/** Whether an opening takes the whole width of a row; one that leaves a sliver beside a wall gap does. */
export const spans = (opening: PlacedOpening, band: Edges, allowance = 0): boolean =>
  opening.low <= band.low + (band.low <= allowance ? allowance : 0) && opening.high >= band.high;

/** Timber to spare on each side of a butt joint on this joist, beyond the least, all the way across the row. */
function spareTimber(problem: PlacementProblem, { joist, centre }: PlacedJoist, band: Band, at: number): number {
  const { jointGap, leastTimber } = problem.rules;
  const away = Math.max(Math.abs(centre(band.low) - at), Math.abs(centre(band.high) - at));
  return Math.floor((toGrid(joist.width) - jointGap) / 2) - leastTimber - away;
}

interface Between {
  readonly from: number;
  readonly to: number;
  readonly places: readonly number[];
  /** For each place, how much wider its gap may be left on this piece's side. */
  readonly gives: readonly number[];
}

/** The piece between two places, if it is long enough and some board is. */
function pieceBetween(problem: PlacementProblem, band: Band, { from, to, places, gives }: Between): PossiblePiece | undefined {
  const { rules, stocks } = problem;
  const nominal = places[to] - places[from];
  if (nominal < rules.pieceLength) return undefined;
  const joints = (from > 0 ? 1 : 0) + (to < places.length - 1 ? 1 : 0);
  const cut = nominal - (joints * rules.jointGap) / 2;
  const piece = { from, to, nominal, cut, give: gives[from] + gives[to] };
  return stocks.some((stock) => stock.width >= band.width && fitsLength(problem, stock.length, piece)) ? piece : undefined;
}

/** Whether a board of this length can be the piece: cut from it, or used uncut and a little short. */
export const fitsLength = (problem: PlacementProblem, length: number, piece: PossiblePiece): boolean =>
  piece.cut <= length || (piece.cut - length <= piece.give && piece.nominal - length <= problem.rules.greatestExcess);
