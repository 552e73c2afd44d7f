import { toGrid } from '../survey/grid.js';
import { isRaked, type JointLine, jointLine } from './jointLine.js';
import type { Part, PlacedJoist } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import { isPossible, type Meets, type Place, type PossiblePiece, type Run } from './possiblePieces.js';
import type { Band } from './rowLayouts.js';

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
  const inside = joists.filter(
    (line, k) => line.spare >= 0 && isBetween(line, from, to) && (k === 0 || joists[k - 1].at !== line.at),
  );
  const places: Place[] = [
    { at: from, low: from, high: from, joist: -1 },
    ...inside.map(({ at, low, high, joist: { index } }) => ({ at, low, high, joist: index })),
    { at: to, low: to, high: to, joist: -1 },
  ];
  const last = places.length - 1;
  const gives = [
    lowMeets === 'wall' ? rules.wallGive : 0,
    ...inside.map((line) => (isRaked(line) ? 0 : Math.min(rules.jointGive, line.spare))),
    highMeets === 'wall' ? rules.wallGive : 0,
  ];
  const supports = places.map(({ at }, place) => ({
    before: joists.filter((line) => line.at + (place === 0 ? sideReach(line.joist, rules) : 0) < at).length,
    upTo: joists.filter((line) => line.at - (place === last ? sideReach(line.joist, rules) : 0) <= at).length,
  }));
  const pieces: PossiblePiece[] = [];
  const starting: number[][][] = places.map(() => []);
  for (let i = 0; i < last; i++) {
    for (let k = i + 1; k <= last; k++) {
      if (supports[k].upTo - supports[i].before < rules.pieceSupports) continue;
      const joints = (i > 0 ? 1 : 0) + (k < last ? 1 : 0);
      const sides = [places[k].low - places[i].low, places[k].high - places[i].high];
      const whole = Math.max(places[k].low, places[k].high) - Math.min(places[i].low, places[i].high);
      const piece: PossiblePiece = {
        from: i,
        to: k,
        lowMeets: i > 0 ? 'board' : lowMeets,
        highMeets: k < last ? 'board' : highMeets,
        nominal: Math.max(...sides),
        cut: whole - (joints * rules.jointGap) / 2,
        give: gives[i] + gives[k],
      };
      if (Math.min(...sides) <= 0 || !isPossible(problem, band, piece)) continue;
      starting[i].push([pieces.length]);
      pieces.push(piece);
    }
  }
  return { places, pieces, starting };
}

/** Whether a joist lies over the whole width of a row, less what may be missing at its ends. */
export const reachesAcross = (joist: PlacedJoist, row: { readonly low: number; readonly high: number }, slack: number): boolean =>
  joist.low <= row.low + slack && joist.high >= row.high - slack;

export const isBetween = ({ low, high, at }: JointLine, from: number, to: number): boolean =>
  Math.min(low, high, at) > from && Math.max(low, high, at) < to;

/** How far beyond the end of a board the middle of a joist may be that still carries it: one on the edge of the room does. */
export const sideReach = ({ joist }: PlacedJoist, { leastTimber }: PlacementProblem['rules']): number =>
  Math.max(0, Math.floor(toGrid(joist.width) / 2) - leastTimber);
