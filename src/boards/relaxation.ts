import { type HeaviestCut, heaviestCut } from './heaviestCut.js';
import {
  addRow,
  bringIn,
  type Column,
  costOf,
  emptyProgram,
  type LinearProgram,
  price,
  restore,
  type Snapshot,
  snapshotOf,
} from './linearProgram.js';
import { pricesOfArcs } from './pricesOfArcs.js';
import { leastBeyond, lightestWay, type RowPath, rowPath } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';
import { servedKinds, servesFor } from './servedKinds.js';

/** One way to cut a board. */
export interface BoardCut {
  readonly stock: number;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** A column that is a row's path, a board's cut, or something left over. */
interface Entry extends Column {
  readonly path?: RowPath;
  readonly cut?: BoardCut;
}

/** What an objective may come to. */
export interface Cap {
  readonly objective: number;
  readonly most: number;
}

/**
 * The rows and boards of a ceiling as a linear programme sees them: rows of one sort together may be a mixture of ways to divide
 * them, and a board may be used in part. Its prices tell what no layout can be below.
 */
export interface Relaxation {
  readonly space: RowSpace;
  readonly objective: number;
  readonly caps: readonly Cap[];
  readonly program: LinearProgram;
  /** Per sort of row: how many of them are still open. */
  readonly open: number[];
  /** Paths of the rows that are fixed, from the first row on. */
  readonly fixed: RowPath[];
  /** Boards that are cut already. */
  readonly made: BoardCut[];
  readonly paths: Map<string, RowPath>;
  readonly cuts: Map<string, BoardCut>;
  /** Kinds that have a row of the programme, and where that is; -1 for the others. */
  readonly present: number[];
  /** The same in the order of the kinds. */
  readonly inOrder: number[];
  readonly kindRow: Int32Array;
  /** Per present kind: the next shorter one that is no wider; -1 where there is none. */
  readonly shorter: Int32Array;
  /** Per kind: what it serves for, besides all that these do. */
  readonly served: readonly (readonly number[])[];
  /** Rows of the programme for caps, and for stocks of which there are only so many; -1 for the others. */
  readonly capRow: number[];
  readonly stockRow: number[];
  /** Cost of what must not be. */
  readonly forbidden: number;
  /** The best prices so far. */
  best: Guess | undefined;
  /** Boards that a layout may have at most. */
  readonly mostBoards: number;
  pivots: number;
  /** What it has taken, in thousands of multiplications, about. */
  work: number;
}

/** What must not be costs so many times the dearest that may be. */
const FORBIDDEN = 1e3;
const SMALL = 1e-7;

/** Sets up the programme; what another one of the same rows has found is taken over. */
export function relax(space: RowSpace, objective: number, caps: readonly Cap[], known?: Relaxation): Relaxation {
  const relaxation: Relaxation = {
    space,
    objective,
    caps,
    program: emptyProgram(),
    open: space.groups.map(({ count }) => count),
    fixed: [],
    made: [],
    paths: new Map(known?.paths),
    cuts: new Map(),
    present: [],
    inOrder: [],
    served: known?.served ?? servedKinds(space.kinds),
    kindRow: new Int32Array(space.kinds.length).fill(-1),
    shorter: new Int32Array(space.kinds.length).fill(-1),
    capRow: [],
    stockRow: space.problem.stocks.map(() => -1),
    forbidden: FORBIDDEN * Math.max(1, ...space.objectives[objective].boards),
    best: undefined,
    mostBoards: mostBoards(space, caps),
    pivots: 0,
    work: 0,
  };
  startBasis(relaxation);
  if (known !== undefined) {
    for (const kind of known.present) if (relaxation.kindRow[kind] < 0) addKind(relaxation, kind, 0);
    for (const cut of known.cuts.values()) addCut(relaxation, cut);
  }
  return relaxation;
}

/** A basis: one way to divide each row, each of its pieces cut by itself; what passes a cap is forbidden, but possible. */
function startBasis(relaxation: Relaxation): void {
  const { space, program, caps } = relaxation;
  const wanted = new Map<number, number>();
  for (const [row, { sort, count }] of space.groups.entries()) {
    const path = knownPath(relaxation, sort, likelyWay(space, sort));
    // Its rows for kinds are added next.
    addRow(program, { cost: path.costs[relaxation.objective], rows: [row], values: [1], path } as Entry, 1, count);
    for (const [at, kind] of path.kinds.entries()) wanted.set(kind, (wanted.get(kind) ?? 0) + path.counts[at] * count);
  }
  for (const [kind, count] of wanted) addKind(relaxation, kind, count);
  for (const { objective, most } of caps) {
    relaxation.capRow.push(program.size);
    addLimit(relaxation, most - space.objectives[objective].fixed, (entry) => costUnder(space, objective, entry));
  }
  for (const [stock, { board }] of space.problem.stocks.entries()) {
    if (board.available === undefined) continue;
    relaxation.stockRow[stock] = program.size;
    addLimit(relaxation, board.available, (entry) => (entry.cut?.stock === stock ? 1 : 0));
  }
}

const costUnder = ({ objectives }: RowSpace, objective: number, { path, cut }: Entry): number =>
  path?.costs[objective] ?? (cut === undefined ? 0 : objectives[objective].boards[cut.stock]);

/** The way with few pieces, and of those the shortest in sum. */
function likelyWay({ kinds }: RowSpace, { graph, kinds: ofArc }: RowSort): number[] {
  const costs = Float64Array.from(ofArc, (kind) => (kind < 0 ? 0 : 1e9 + kinds[kind].size));
  return lightestWay(graph, costs, undefined, leastBeyond(graph, costs));
}

/** A path; the one that the programme knows, if it does. */
export function pathOf({ paths, space }: Relaxation, sort: RowSort, arcs: readonly number[]): RowPath {
  return paths.get(keyOf(sort, arcs)) ?? rowPath(space, sort, arcs);
}

const keyOf = ({ group }: RowSort, arcs: readonly number[]): string => `${group} ${arcs.join(' ')}`;

function knownPath(relaxation: Relaxation, sort: RowSort, arcs: readonly number[]): RowPath {
  const path = pathOf(relaxation, sort, arcs);
  relaxation.paths.set(keyOf(sort, arcs), path);
  return path;
}

/** A row of the programme for a kind of piece: as many are cut as are wanted, or more. */
function addKind(relaxation: Relaxation, kind: number, wanted: number): void {
  const { program, kindRow, present } = relaxation;
  const cut = cutAlone(relaxation, kind);
  kindRow[kind] = program.size;
  present.push(kind);
  linkShorter(relaxation, kind);
  addCut(relaxation, cut);
  const [own] = cut.counts;
  addRow(program, cutEntry(relaxation, cut), own, wanted / own, wanted === 0 ? undefined : wantedBy(program, kind));
}

/** Kinds stand the widest and longest first, so the next present one after a kind is the next shorter of its width. */
function linkShorter({ space: { kinds }, inOrder, shorter }: Relaxation, kind: number): void {
  const after = inOrder.findIndex((other) => other > kind);
  const at = after < 0 ? inOrder.length : after;
  inOrder.splice(at, 0, kind);
  for (const place of [at - 1, at]) {
    const [long, short] = [inOrder[place], inOrder[place + 1]];
    if (long !== undefined) shorter[long] = short !== undefined && servesFor(kinds[long], kinds[short]) ? short : -1;
  }
}

/** Per column of the basis: how many pieces of this kind it wants. */
function wantedBy({ basis, size }: LinearProgram, kind: number): Float64Array {
  const wanted = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    const { path } = basis[row] as Entry;
    const at = path === undefined ? -1 : path.kinds.indexOf(kind);
    if (path !== undefined && at >= 0) wanted[row] = -path.counts[at];
  }
  return wanted;
}

/** A row of the programme that must not pass a limit. */
function addLimit({ program, forbidden }: Relaxation, most: number, coefficientOf: (entry: Entry) => number): void {
  const row = program.size;
  const others = Float64Array.from(program.basis.slice(0, row), coefficientOf);
  let spent = 0;
  for (let at = 0; at < row; at++) spent += others[at] * program.values[at];
  const own = spent <= most ? 1 : -1;
  addRow(program, { cost: own === 1 ? 0 : forbidden, rows: [row], values: [own] }, own, Math.abs(most - spent), others);
}

function addCut({ cuts }: Relaxation, cut: BoardCut): void {
  const key = `${cut.stock} ${cut.kinds.join(' ')} ${cut.counts.join(' ')}`;
  if (!cuts.has(key)) cuts.set(key, cut);
}

/** As many of one kind as the stock that suits it best gives. */
function cutAlone({ space }: Relaxation, kind: number): BoardCut {
  const { sizes, width, alone } = space.kinds[kind];
  let best = { stock: 0, count: 0, forArea: 0 };
  for (const [stock, { length, width: whole, kerf, area }] of space.problem.stocks.entries()) {
    if (sizes[stock] === Infinity) continue;
    const lanes = alone[stock] ? 1 : Math.max(1, Math.floor((whole + kerf) / (width + kerf)));
    const count = Math.floor((length + kerf) / sizes[stock]) * lanes;
    if (count / area > best.forArea) best = { stock, count, forArea: count / area };
  }
  return { stock: best.stock, kinds: [kind], counts: [best.count] };
}

function pathEntry(relaxation: Relaxation, path: RowPath): Entry {
  const { objective, caps, kindRow, capRow } = relaxation;
  const rows = [path.sort.group];
  const values = [1];
  for (const [at, kind] of path.kinds.entries()) {
    rows.push(kindRow[kind]);
    values.push(-path.counts[at]);
  }
  for (const [at, each] of caps.entries()) {
    if (path.costs[each.objective] === 0) continue;
    rows.push(capRow[at]);
    values.push(path.costs[each.objective]);
  }
  return { cost: path.costs[objective], rows, values, path };
}

function cutEntry(relaxation: Relaxation, cut: BoardCut): Entry {
  const { space, objective, caps, kindRow, capRow, stockRow } = relaxation;
  const rows = cut.kinds.map((kind) => kindRow[kind]);
  const values = [...cut.counts];
  for (const [at, each] of caps.entries()) {
    const cost = space.objectives[each.objective].boards[cut.stock];
    if (cost === 0) continue;
    rows.push(capRow[at]);
    values.push(cost);
  }
  if (stockRow[cut.stock] >= 0) {
    rows.push(stockRow[cut.stock]);
    values.push(1);
  }
  return { cost: space.objectives[objective].boards[cut.stock], rows, values, cut };
}

/** No layout cuts a board for nothing, so there are no more boards than pieces. */
function mostBoards({ sorts, objectives, problem }: RowSpace, caps: readonly Cap[]): number {
  const pieces = sorts.reduce((sum, { graph }) => sum + graph.nodes - 1, 0);
  return caps.reduce(
    (most, cap) => {
      const least = Math.min(...objectives[cap.objective].boards);
      return least > 0 ? Math.min(most, Math.floor(cap.most / least)) : most;
    },
    Math.min(
      pieces,
      problem.stocks.reduce((sum, { board }) => sum + (board.available ?? Infinity), 0),
    ),
  );
}

/** Prices made whole, and what they prove. */
export interface WholePrices {
  /** No layout costs less; in `PARTS` of one. */
  readonly bound: number;
  /** Per sort of row: the least that a row can come to, and what each arc does. */
  readonly least: readonly number[];
  readonly arcs: readonly Float64Array[];
  /** Per kind. */
  readonly kinds: Float64Array;
  /** Per stock: what a board may carry. */
  readonly boards: readonly number[];
}

/** Whole parts of one unit, by which prices are judged. */
export const PARTS = 2 ** 22;

/** Prices of kinds, caps and limited stocks, and what they prove as far as plain arithmetic tells. */
interface Guess {
  readonly kinds: Float64Array;
  readonly caps: readonly number[];
  readonly stocks: readonly number[];
  readonly bound: number;
}

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
      relaxation.pivots++;
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

/** The column of those known that would save most. */
function cheapestKnown(relaxation: Relaxation): (Entry & { reduced: number }) | undefined {
  const { present, kindRow, capRow, stockRow, shorter, program } = relaxation;
  const { prices } = program;
  let least = -SMALL;
  let best: Entry | undefined;
  for (const kind of present) {
    const reduced = prices[kindRow[kind]];
    if (reduced < least) {
      least = reduced;
      best = { cost: 0, rows: [kindRow[kind]], values: [-1] };
    }
    // A longer piece serves for the next shorter one.
    const next = shorter[kind];
    if (next < 0 || kindRow[next] < 0 || reduced - prices[kindRow[next]] >= least) continue;
    least = reduced - prices[kindRow[next]];
    best = { cost: 0, rows: [kindRow[kind], kindRow[next]], values: [-1, 1] };
  }
  for (const row of [...capRow, ...stockRow]) {
    if (row < 0 || -prices[row] >= least) continue;
    least = -prices[row];
    best = { cost: 0, rows: [row], values: [1] };
  }
  const cut = cheapestCut(relaxation, least);
  const path = cheapestPath(relaxation, Math.min(least, cut.reduced));
  if (path.at !== undefined) return { ...pathEntry(relaxation, path.at), reduced: path.reduced };
  if (cut.at !== undefined) return { ...cutEntry(relaxation, cut.at), reduced: cut.reduced };
  return best && { ...best, reduced: least };
}

interface Cheapest<T> {
  readonly at: T | undefined;
  readonly reduced: number;
}

function cheapestCut(
  { space, program, cuts, kindRow, capRow, stockRow, caps, objective }: Relaxation,
  below: number,
): Cheapest<BoardCut> {
  const { prices } = program;
  let least = below;
  let best: BoardCut | undefined;
  const ofStock = space.problem.stocks.map((_, stock) => {
    let cost = space.objectives[objective].boards[stock];
    for (let at = 0; at < caps.length; at++) cost -= space.objectives[caps[at].objective].boards[stock] * prices[capRow[at]];
    return stockRow[stock] >= 0 ? cost - prices[stockRow[stock]] : cost;
  });
  for (const cut of cuts.values()) {
    let reduced = ofStock[cut.stock];
    const { kinds, counts } = cut;
    for (let at = 0; at < kinds.length; at++) reduced -= counts[at] * prices[kindRow[kinds[at]]];
    if (reduced >= least) continue;
    least = reduced;
    best = cut;
  }
  return { at: best, reduced: least };
}

function cheapestPath({ program, paths, kindRow, capRow, caps, objective, open }: Relaxation, below: number): Cheapest<RowPath> {
  const { prices } = program;
  let least = below;
  let best: RowPath | undefined;
  for (const path of paths.values()) {
    const { kinds, counts, costs, sort } = path;
    if (open[sort.group] === 0) continue;
    let reduced = costs[objective] - prices[sort.group];
    for (let at = 0; at < kinds.length; at++) reduced += counts[at] * prices[kindRow[kinds[at]]];
    for (let at = 0; at < caps.length; at++) reduced -= costs[caps[at].objective] * prices[capRow[at]];
    if (reduced >= least) continue;
    least = reduced;
    best = path;
  }
  return { at: best, reduced: least };
}

/** What an absent kind counts for: as much as any present one that could be cut from it. */
function pricesOfKinds({ space, present, kindRow, served }: Relaxation, priceOf: (kind: number) => number): Float64Array {
  const values = new Float64Array(space.kinds.length);
  for (const kind of present) values[kind] = priceOf(kind);
  if (present.length === values.length) return values;
  const most = values.slice();
  for (let kind = values.length - 1; kind >= 0; kind--) {
    for (const other of served[kind]) if (most[other] > most[kind]) most[kind] = most[other];
    if (kindRow[kind] < 0) values[kind] = most[kind];
  }
  return values;
}

/** What each arc comes to by some prices. */
function arcPrices(
  { objective, caps }: Relaxation,
  sort: RowSort,
  ofKind: Float64Array,
  unit: number,
  ofCap: readonly number[],
): Float64Array {
  const costs = sort.costs[objective];
  const arcs = pricesOfArcs(sort, ofKind);
  for (let arc = 0; arc < arcs.length; arc++) arcs[arc] += costs[arc] * unit;
  for (let at = 0; at < caps.length; at++) {
    if (ofCap[at] === 0) continue;
    const spent = sort.costs[caps[at].objective];
    for (let arc = 0; arc < arcs.length; arc++) arcs[arc] += ofCap[at] * spent[arc];
  }
  return arcs;
}

/** What an objective and the prices of its caps make of a board. */
const boardCost = (
  { space, objective, caps }: Relaxation,
  stock: number,
  unit: number,
  ofCap: readonly number[],
  ofStock: number,
): number =>
  caps.reduce(
    (sum, cap, at) => sum + ofCap[at] * space.objectives[cap.objective].boards[stock],
    space.objectives[objective].boards[stock] * unit + ofStock,
  );

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
    const { value, most, counts, work } = cutFor(relaxation, stock, kinds);
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

const cutFor = ({ space, present }: Relaxation, stock: number, ofKind: Float64Array): HeaviestCut => {
  const blank = space.problem.stocks[stock];
  return heaviestCut(
    { length: blank.length + blank.kerf, width: blank.width, kerf: blank.kerf },
    {
      widths: present.map((kind) => space.kinds[kind].width),
      alone: present.map((kind) => space.kinds[kind].alone[stock]),
      sizes: present.map((kind) => space.kinds[kind].sizes[stock]),
      values: valuesOf(present, ofKind),
    },
  );
};

function valuesOf(present: readonly number[], ofKind: Float64Array): Float64Array {
  const values = new Float64Array(present.length);
  for (let at = 0; at < values.length; at++) values[at] = ofKind[present[at]];
  return values;
}

/** What prices prove that no board is worth more than. */
function provenBy(
  relaxation: Relaxation,
  kinds: Float64Array,
  unit: number,
  ofCap: readonly number[],
  ofStock: readonly number[],
) {
  const { space, caps, objective } = relaxation;
  let bound = space.objectives[objective].fixed * unit;
  for (const [at, cap] of caps.entries()) bound -= ofCap[at] * (cap.most - space.objectives[cap.objective].fixed);
  for (const [stock, { board }] of space.problem.stocks.entries())
    if (ofStock[stock] > 0) bound -= ofStock[stock] * (board.available ?? 0);
  const arcs = space.groups.map(({ sort }) => arcPrices(relaxation, sort, kinds, unit, ofCap));
  const least = space.groups.map(({ sort }, at) => leastBeyond(sort.graph, arcs[at])[0]);
  for (const [at, open] of relaxation.open.entries()) if (open > 0) bound += open * least[at];
  for (const path of relaxation.fixed) {
    const of = arcs[path.sort.group];
    for (const arc of path.arcs) bound += of[arc];
  }
  for (const cut of relaxation.made) {
    bound += boardCost(relaxation, cut.stock, unit, ofCap, ofStock[cut.stock]);
    for (const [at, kind] of cut.kinds.entries()) bound -= cut.counts[at] * kinds[kind];
  }
  return { bound, arcs, least };
}

function wholePrices(relaxation: Relaxation): WholePrices {
  const { space, mostBoards: most } = relaxation;
  const best = relaxation.best as Guess;
  const whole = (value: number): number => Math.max(0, Math.floor(value * PARTS));
  const kinds = best.kinds.map(whole);
  const ofCap = best.caps.map(whole);
  const ofStock = best.stocks.map(whole);
  let excess = 0;
  const boards = space.problem.stocks.map((_, stock) => {
    const cost = boardCost(relaxation, stock, PARTS, ofCap, ofStock[stock]);
    const over = Math.max(0, cutFor(relaxation, stock, kinds).most - cost);
    excess += over * most;
    return cost + over;
  });
  const { bound, arcs, least } = provenBy(relaxation, kinds, PARTS, ofCap, ofStock);
  return { bound: bound - excess, least, arcs, kinds, boards };
}

/** Divides the next row in this way. */
export function fixNext(relaxation: Relaxation, path: RowPath): void {
  const { caps, capRow, kindRow, open, fixed } = relaxation;
  const { group } = path.sort;
  for (const kind of path.kinds) if (kindRow[kind] < 0) addKind(relaxation, kind, 0);
  const rows = [group, ...path.kinds.map((kind) => kindRow[kind])];
  const changes = [-1, ...path.counts];
  for (const [at, cap] of caps.entries()) {
    rows.push(capRow[at]);
    changes.push(-path.costs[cap.objective]);
  }
  changeRight(relaxation, rows, changes);
  open[group]--;
  fixed.push(path);
}

/** Cuts one board in this way. */
export function fixCut(relaxation: Relaxation, cut: BoardCut): void {
  const { space, caps, capRow, kindRow, stockRow, made } = relaxation;
  const rows = cut.kinds.map((kind) => kindRow[kind]);
  const changes = cut.counts.map((count) => -count);
  for (const [at, cap] of caps.entries()) {
    rows.push(capRow[at]);
    changes.push(-space.objectives[cap.objective].boards[cut.stock]);
  }
  if (stockRow[cut.stock] >= 0) {
    rows.push(stockRow[cut.stock]);
    changes.push(-1);
  }
  changeRight(relaxation, rows, changes);
  made.push(cut);
}

/** What the rows of the programme ask for changes, and with it what the basis comes to. */
function changeRight({ program, forbidden }: Relaxation, rows: readonly number[], changes: readonly number[]): void {
  const { size, stride, inverse, values } = program;
  for (let row = 0; row < size; row++) {
    const from = row * stride;
    let change = 0;
    for (let at = 0; at < rows.length; at++) change += changes[at] * inverse[from + rows[at]];
    values[row] += change;
    if (values[row] > -TINY) {
      values[row] = Math.max(0, values[row]);
      continue;
    }
    // Less than none of a column: as much of its opposite, which must not be.
    values[row] = -values[row];
    for (let k = 0; k < size; k++) inverse[from + k] = -inverse[from + k];
    program.basis[row] = { cost: forbidden, rows: [], values: [] };
  }
  price(program);
}

const TINY = 1e-9;

/** A programme with what is decided in it, to be gone back to. */
export interface Standing {
  readonly snapshot: Snapshot;
  readonly fixed: number;
  readonly made: number;
}

export const standingOf = ({ program, fixed, made }: Relaxation): Standing => ({
  snapshot: snapshotOf(program),
  fixed: fixed.length,
  made: made.length,
});

/** Goes back to how things stood; rows of the programme that have been added since stay. */
export function goBack(relaxation: Relaxation, { snapshot, fixed, made }: Standing): void {
  const { program, present, kindRow, open } = relaxation;
  for (const path of relaxation.fixed.splice(fixed)) open[path.sort.group]++;
  relaxation.made.length = made;
  restore(program, snapshot);
  forgetOldest(relaxation.cuts);
  forgetOldest(relaxation.paths);
  for (const kind of present) {
    if (kindRow[kind] < program.size) continue;
    const entry = cutEntry(relaxation, cutAlone(relaxation, kind));
    addRow(program, entry, entry.values[0], 0);
  }
}

/** Columns that are kept in mind; others are found again when they are worth it. */
const MOST_KEPT = 250;

function forgetOldest(kept: Map<string, unknown>): void {
  let over = kept.size - MOST_KEPT;
  for (const key of kept.keys()) {
    if (over-- <= 0) return;
    kept.delete(key);
  }
}

/** The board's cut of which the programme uses most, and how much. */
export function mostUsedCut({ program }: Relaxation): { readonly cut: BoardCut; readonly used: number } | undefined {
  let best: { cut: BoardCut; used: number } | undefined;
  for (let at = 0; at < program.size; at++) {
    const { cut } = program.basis[at] as Entry;
    const used = program.values[at];
    if (cut !== undefined && used > SMALL && (best === undefined || used > best.used)) best = { cut, used };
  }
  return best;
}
