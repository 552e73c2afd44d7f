import { cheapestKnown } from './cheapestKnown.js';
import { cutWorthMost } from './cutWorthMost.js';
import { bringIn, costOf } from './linearProgram.js';
import { addCut, addKind, knownPath } from './relax.js';
import { type Guess, type Relaxation, SMALL } from './relaxation.js';
import { leastBeyond, lightestWay } from './rowPath.js';
import { arcPrices, boardCost, pricesOfKinds, provenBy, type WholePrices, wholePrices } from './wholePrices.js';

/** How much of the best prices so far is mixed into those of the moment: fewer of them lead astray. */
const SMOOTHING = 0.6;

/**
 * Finds good prices with no more than so much work. It stops when what they prove is more than `enough`, or near the best that
 * any prices can; where whole numbers are the aim, when the next one cannot be reached.
 */
export function solve(relaxation: Relaxation, work: number, enough: number, aim: 'whole' | 'best'): WholePrices {
  const { program } = relaxation;
  const last = relaxation.work + work;
  relaxation.best = undefined;
  let smoothing = SMOOTHING;
  while (relaxation.work < last) {
    const entry = cheapestKnown(relaxation);
    if (entry !== undefined) {
      relaxation.work += (program.size * program.size) / 1000 + 1;
      if (!bringIn(program, entry, entry.reduced)) break;
      smoothing = SMOOTHING;
      continue;
    }
    const found = generate(relaxation, smoothing);
    const { bound } = relaxation.best as unknown as Guess;
    const reached = aim === 'whole' ? Math.ceil(bound - ALMOST) : bound + CLOSE;
    if (bound > enough || reached >= costOf(program) + fixedCost(relaxation) - ALMOST) break;
    if (found) {
      if (cheapestKnown(relaxation) === undefined) smoothing = 0;
      continue;
    }
    if (smoothing === 0) break;
    smoothing = 0;
  }
  if (relaxation.best === undefined) generate(relaxation, 0);
  return wholePrices(relaxation);
}

const ALMOST = 1e-5;
const CLOSE = 5e-3;
const WORK_OF_PRICING = 20;

const fixedCost = ({ space, objective, fixed, made }: Relaxation): number =>
  space.objectives[objective].fixed +
  fixed.reduce((sum, path) => sum + path.costs[objective], 0) +
  made.reduce((sum, { stock }) => sum + space.objectives[objective].boards[stock], 0);

/** Adds the path of each sort and the cut of each stock that is worth most at the present prices; false where all were known. */
function generate(relaxation: Relaxation, smoothing: number): boolean {
  const { program, capRow, stockRow, cuts, kindRow, paths, best } = relaxation;
  const { prices } = program;
  const mixed = (now: number, then: number | undefined): number =>
    best === undefined || then === undefined ? now : (1 - smoothing) * now + smoothing * then;
  const kinds = pricesOfKinds(relaxation, (kind) => mixed(Math.max(0, prices[kindRow[kind]]), best?.kinds[kind]));
  const ofCap = capRow.map((row, at) => mixed(Math.max(0, -prices[row]), best?.caps[at]));
  const ofStock = stockRow.map((row, at) => (row < 0 ? 0 : mixed(Math.max(0, -prices[row]), best?.stocks[at])));
  const known = cuts.size + paths.size;
  relaxation.work += WORK_OF_PRICING;
  const over = addCuts(relaxation, kinds, ofCap, ofStock);
  addPaths(relaxation, kinds, ofCap);
  const scaled = over === 1 ? kinds : kinds.map((value) => value / over);
  const { bound } = provenBy(relaxation, scaled, 1, ofCap, ofStock);
  if (best === undefined || bound > best.bound) relaxation.best = { kinds: scaled, caps: ofCap, stocks: ofStock, bound };
  return cuts.size + paths.size > known;
}

/** Adds cuts that are worth more than their board; says by how much the prices are too high. */
function addCuts(relaxation: Relaxation, kinds: Float64Array, ofCap: readonly number[], ofStock: readonly number[]): number {
  const { space, present } = relaxation;
  let over = 1;
  for (const [stock] of space.problem.stocks.entries()) {
    const cost = boardCost(relaxation, stock, 1, ofCap, ofStock[stock]);
    const { value, most, counts, work } = cutWorthMost(relaxation, stock, kinds);
    relaxation.work += work;
    if (value > cost + SMALL) {
      const wanted = present.filter((_, at) => counts[at] > 0);
      addCut(relaxation, { stock, kinds: wanted, counts: [...counts].filter((count) => count > 0) });
    }
    if (most > cost) over = Math.max(over, cost > 0 ? most / cost : Infinity);
  }
  return over;
}

function addPaths(relaxation: Relaxation, kinds: Float64Array, ofCap: readonly number[]): void {
  const { space, open, paths, kindRow } = relaxation;
  for (const [row, { sort }] of space.groups.entries()) {
    if (open[row] === 0) continue;
    const arcs = arcPrices(relaxation, sort, kinds, 1, ofCap);
    const size = paths.size;
    const path = knownPath(relaxation, sort, lightestWay(sort.graph, arcs, undefined, leastBeyond(sort.graph, arcs)));
    if (paths.size > size) for (const kind of path.kinds) if (kindRow[kind] < 0) addKind(relaxation, kind, 0);
  }
}
