import { extentOf } from '../survey/outline.js';
import { beside } from './beside.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import { plainRun, type Stretch } from './plainRun.js';
import type { Run } from './possiblePieces.js';
import type { Band } from './rowLayouts.js';
import { shapedRun } from './shapedRun.js';
import { type Shape, shapesOf } from './shapesOf.js';
import { squaredOff } from './squaredOff.js';

/** The stretches of one row: those that fill it from one square end to another, and those of any other shape. */
export interface Stretches {
  readonly plain: readonly Stretch[];
  readonly shaped: readonly Shape[];
}

/** What of a row lies between walls and openings, from the near end. */
export function stretchesOf(problem: PlacementProblem, part: Part, band: Band): Stretches {
  const { nominal, greatest } = problem.rules.wallGap;
  if (part.clear === undefined) {
    return { plain: [{ from: nominal, to: part.length - nominal, lowMeets: 'wall', highMeets: 'wall' }], shaped: [] };
  }
  const { left, right } = extentOf(part.clear(band.gap).flat());
  const above = beside(part.clear(band.gap), { x: left, y: band.low }, { x: right, y: band.low }).rings;
  const within = beside(above, { x: right, y: band.high }, { x: left, y: band.high }).rings;
  const plain: Stretch[] = [];
  const shaped: Shape[] = [];
  for (const found of shapesOf(within)) {
    const shape = squaredOff(found, greatest - nominal);
    const stretch = asStretch(part, band, shape);
    if (stretch === undefined) shaped.push(shape);
    else plain.push(stretch);
  }
  return { plain: plain.sort((a, b) => a.from - b.from), shaped };
}

function asStretch({ openings }: Part, band: Band, { outline, holes }: Shape): Stretch | undefined {
  const { left, right, low, high } = extentOf(outline);
  if (holes.length > 0 || outline.length !== 4 || low !== band.low || high !== band.high) return undefined;
  if (outline.some(({ x, y }) => (x !== left && x !== right) || (y !== low && y !== high))) return undefined;
  const y = (low + high) / 2;
  const meets = (x: number): 'wall' | 'opening' =>
    openings.some((opening) => opening.near <= x && x <= opening.far && opening.low <= y && y <= opening.high)
      ? 'opening'
      : 'wall';
  return { from: left, to: right, lowMeets: meets(left), highMeets: meets(right) };
}

/** The runs of a row, and every piece that could lie in each. */
export const runsOf = (problem: PlacementProblem, part: Part, band: Band, { plain, shaped }: Stretches): Run[] => [
  ...plain.map((stretch) => plainRun(problem, part, band, stretch)),
  ...shaped.map((shape) => shapedRun(problem, part, band, shape)),
];
