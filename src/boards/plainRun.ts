import { againstStanding } from './againstStanding.js';
import { type JointLine, jointLine } from './jointLine.js';
import type { Part } from './partsOf.js';
import type { PlacedJoist } from './partView.js';
import type { PlacementProblem } from './placementProblem.js';
import { boxIn, isPossible, type Meets, type Place, type PossiblePiece, type Run } from './possiblePieces.js';
import type { Band } from './rowLayouts.js';
import { giveOf, linesAround, placeOn } from './standingJoints.js';

/** A stretch that fills its row from one square end to another. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly lowMeets: Exclude<Meets, 'board'>;
  readonly highMeets: Exclude<Meets, 'board'>;
}

/** Where it may be divided, and every piece that could lie in it. */
export function plainRun(problem: PlacementProblem, part: Part, band: Band, stretch: Stretch): Run {
  const { from, to, lowMeets, highMeets } = stretch;
  const { rules } = problem;
  const joists = part.joists
    .filter((joist) => reachesAcross(joist, band, rules.wallGap.greatest))
    .map((joist) => jointLine(rules, joist, band));
  const onJoists = joists.filter((line) => line.spare >= 0 && isBetween(line, from, to)).filter(isBeyondLast());
  const inside = linesAround(problem, part, band, stretch, onJoists);
  const places: Place[] = [
    { at: from, low: from, high: from, joist: -1 },
    ...inside.map(placeOn),
    { at: to, low: to, high: to, joist: -1 },
  ];
  const last = places.length - 1;
  const gives = [
    lowMeets === 'wall' ? rules.wallGive : 0,
    ...inside.map((line) => giveOf(problem, line)),
    highMeets === 'wall' ? rules.wallGive : 0,
  ];
  // A joist on the line of a wall carries what ends at the gap before it.
  const reaches = places.map((_, place) =>
    (place === 0 && lowMeets === 'wall') || (place === last && highMeets === 'wall') ? rules.wallGap.nominal : 0,
  );
  const supports = places.map(({ at }, place) => ({
    before: joists.filter((line) => line.at < at - reaches[place]).length,
    upTo: joists.filter((line) => line.at <= at + reaches[place]).length,
  }));
  const pieces: PossiblePiece[] = [];
  const starting: number[][][] = places.map(() => []);
  for (let i = 0; i < last; i++) {
    for (let k = i + 1; k <= last; k++) {
      const piece = pieceBetween(problem, stretch, places, gives, i, k);
      const against = againstStanding(
        part.standing,
        boxIn({ places }, band, piece),
        places[i].joist >= 0 || places[k].joist >= 0,
      );
      const isUp = against === 'up';
      if (against === 'blocked' || !(isUp || isPossible(problem, band, piece, supports[k].upTo - supports[i].before))) continue;
      starting[i].push([pieces.length]);
      pieces.push({ ...piece, ...(isUp && { isUp }) });
    }
  }
  return { places, pieces, starting };
}

function pieceBetween(
  { rules }: PlacementProblem,
  { lowMeets, highMeets }: Stretch,
  places: readonly Place[],
  gives: readonly number[],
  from: number,
  to: number,
): PossiblePiece {
  const [low, high] = [places[from], places[to]];
  const atHigh = to < places.length - 1;
  return {
    from,
    to,
    lowMeets: from > 0 ? 'board' : lowMeets,
    highMeets: atHigh ? 'board' : highMeets,
    nominal: Math.max(high.low - low.low, high.high - low.high),
    cut: Math.max(high.low, high.high) - Math.min(low.low, low.high) - ((Number(from > 0) + Number(atHigh)) * rules.jointGap) / 2,
    give: gives[from] + gives[to],
  };
}

/** Whether a joist lies over the whole width of a row, less what may be missing at its ends. */
export const reachesAcross = (joist: PlacedJoist, row: { readonly low: number; readonly high: number }, slack: number): boolean =>
  joist.low <= row.low + slack && joist.high >= row.high - slack;

/** For joint lines in order across the row: leaves out one that meets the last that was kept. */
export function isBeyondLast(): (line: JointLine) => boolean {
  let last: JointLine | undefined;
  return (line) => {
    if (last !== undefined && (line.low <= last.low || line.high <= last.high)) return false;
    last = line;
    return true;
  };
}

export const isBetween = ({ low, high, at }: JointLine, from: number, to: number): boolean =>
  Math.min(low, high, at) > from && Math.max(low, high, at) < to;
