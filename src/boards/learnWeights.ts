import { type Cells, cellsFor, fillingOf, type Heaviest, heaviestFor } from './heaviestBoard.js';
import { bringIn, type Column, duals, type LinearProgram, linearProgram, reducedCost } from './linearProgram.js';

/**
 * Rows to be divided and boards to be cut, as a linear programme sees them: part of a board may be used, and part of one way to
 * divide the rows mixed with part of another. Its prices are the weights that give the best bound of any.
 */
export interface Mixture {
  /** Lengths that pieces are cut to, with one cut. */
  readonly lengths: Float64Array;
  /** Kinds of strip: the whole width of a board, and perhaps one narrower strip, with how many a board gives. */
  readonly strips: readonly number[];
  /** Per stock: its length with one cut, and its width as a share of the widest. */
  readonly stocks: readonly { readonly capacity: number; readonly share: number }[];
  /** The lightest way to divide all rows, with weights by strip and length; how much it takes of each. */
  readonly lightest: (weights: readonly Float64Array[]) => Lightest;
}

export interface Lightest {
  readonly weight: number;
  /** By strip and length, how much is wanted. */
  readonly wanted: readonly Float64Array[];
}

/** Whole weights by strip and length, and the most of them that a board of each stock can carry. */
export interface Learnt {
  readonly weights: readonly Float64Array[];
  readonly boards: readonly number[];
}

/** Prices are made whole by this many parts. */
const PARTS = 1e7;

/** Finds weights by at most `rounds` improvements; stops early when the bound reaches `goal` or can get no better. */
export function learnWeights(mixture: Mixture, goal: number, rounds: number): Learnt | undefined {
  const master = startOf(mixture);
  if (master === undefined) return undefined;
  let best: Prices | undefined;
  for (let round = 0; round < rounds; round++) {
    const prices = duals(master.program);
    const known = cheapestOf(master.pool, prices);
    if (known !== undefined) {
      if (!bringIn(master.program, known)) break;
      continue;
    }
    const weights = mixture.strips.map((_, strip) => priceOfStrip(master, prices, strip));
    const boards = mixture.stocks.map((stock, at) => bestCutting(mixture, master.cells[at], 1 / stock.share, weights));
    const lightest = mixture.lightest(weights);
    const most = boards.reduce((greatest, { perPrice }) => Math.max(greatest, perPrice), 0);
    const bound = most > 0 ? lightest.weight / most : 0;
    if (best === undefined || bound > best.price) best = { weights, price: bound };
    const asked = prices[master.rows];
    if (Math.ceil(best.price - 1e-6) >= goal || asked - best.price < 1e-4) break;
    const columns = [
      ...boards.filter(({ perPrice }) => perPrice > 1 + 1e-7).map(({ pieces, price }) => cuttingColumn(pieces, price)),
      ...(lightest.weight < asked - 1e-7 ? [rowsColumn(master, lightest)] : []),
    ];
    if (columns.length === 0) break;
    master.pool.push(...columns);
  }
  return best && whole(mixture, master.cells, best);
}

interface Master {
  readonly program: LinearProgram;
  readonly pool: Column[];
  readonly cells: readonly Cells[];
  /** Number of the programme's rows that are about lengths; the next one says that all rows are divided once. */
  readonly rows: number;
  readonly lengths: number;
}

/** Row of the programme for a length of a strip. */
const rowOf = (lengths: number, strip: number, length: number): number => strip * lengths + length;

/** A basis to start with: one way to divide the rows, and each length cut by itself. */
function startOf(mixture: Mixture): Master | undefined {
  const lengths = mixture.lengths.length;
  const rows = lengths * mixture.strips.length;
  const first = mixture.lightest(mixture.strips.map(() => mixture.lengths));
  if (first.weight === Infinity) return undefined;
  const cells = mixture.stocks.map(({ capacity }) => cellsFor(mixture.lengths, capacity));
  const size = rows + 1;
  const inverse = new Float64Array(size * size);
  const basis: Column[] = [];
  for (const [strip, count] of mixture.strips.entries()) {
    for (let length = 0; length < lengths; length++) {
      const row = rowOf(lengths, strip, length);
      const pieces = byItself(mixture, cells, length, count);
      basis.push({ cost: 1, rows: [row], values: [pieces] });
      inverse[row * size + row] = 1 / pieces;
      inverse[row * size + rows] = first.wanted[strip][length] / pieces;
    }
  }
  const program = { rows, lengths };
  basis.push(rowsColumn(program, first));
  inverse[rows * size + rows] = 1;
  const right = new Float64Array(size);
  right[rows] = 1;
  const slack = Array.from({ length: rows }, (_, row): Column => ({ cost: 0, rows: [row], values: [-1] }));
  return { ...program, program: linearProgram(basis, inverse, right), pool: slack, cells };
}

/** The stock that gives most of one length for its price, and how many. */
function byItself({ stocks }: Mixture, cells: readonly Cells[], length: number, strips: number): number {
  return Math.max(...stocks.map(({ share }, at) => Math.floor(cells[at].capacity / cells[at].sizes[length]) * strips * share));
}

function rowsColumn({ rows, lengths }: Pick<Master, 'rows' | 'lengths'>, { wanted }: Lightest): Column {
  const column = { rows: [rows], values: [1] };
  for (const [strip, counts] of wanted.entries()) {
    for (let length = 0; length < lengths; length++) {
      if (counts[length] === 0) continue;
      column.rows.push(rowOf(lengths, strip, length));
      column.values.push(-counts[length]);
    }
  }
  return { cost: 0, ...column };
}

/** How a board is cut: how many pieces of each strip and length. */
type Pieces = ReadonlyMap<number, number>;

function cuttingColumn(pieces: Pieces, cost: number): Column {
  return { cost, rows: [...pieces.keys()], values: [...pieces.values()] };
}

function cheapestOf(pool: readonly Column[], prices: Float64Array): Column | undefined {
  let best: Column | undefined;
  let least = -1e-7;
  for (const column of pool) {
    const reduced = reducedCost(column, prices);
    if (reduced < least) {
      least = reduced;
      best = column;
    }
  }
  return best;
}

const priceOfStrip = ({ lengths }: Master, prices: Float64Array, strip: number): Float64Array =>
  prices.slice(strip * lengths, (strip + 1) * lengths).map((price) => Math.max(0, price));

interface Cutting {
  readonly pieces: Pieces;
  readonly price: number;
  readonly perPrice: number;
}

/** The heaviest that a board can give: whole pieces from one end, strips side by side from the rest of its length. */
function bestCutting({ strips, lengths }: Mixture, cells: Cells, price: number, weights: readonly Float64Array[]): Cutting {
  const { board, strip } = heaviestBoth(cells, strips, weights);
  const pieces = new Map<number, number>();
  const add = (at: number, length: number, count: number): void => {
    const row = rowOf(lengths.length, at, length);
    pieces.set(row, (pieces.get(row) ?? 0) + count);
  };
  const filling = fillingOf(cells, board, cells.capacity);
  for (const length of filling.pieces) add(0, length, strips[0]);
  if (strip !== undefined) for (const length of fillingOf(cells, strip, filling.rest).pieces) add(1, length, strips[1]);
  return { pieces, price, perPrice: (board.weight[cells.capacity] * strips[0]) / price };
}

/** The heaviest filling of every length of a board, and of a strip of it where there are strips. */
function heaviestBoth(
  cells: Cells,
  strips: readonly number[],
  [whole, narrow]: readonly Float64Array[],
): { readonly board: Heaviest; readonly strip: Heaviest | undefined } {
  if (strips.length === 1) return { board: heaviestFor(cells, whole), strip: undefined };
  const strip = heaviestFor(cells, narrow);
  const rest = strip.weight.map((weight) => weight * strips[1]);
  return { board: heaviestFor(cells, whole, rest), strip };
}

interface Prices {
  readonly weights: readonly Float64Array[];
  readonly price: number;
}

/** Rounds weights to whole numbers and measures again what a board gives of them. */
function whole(mixture: Mixture, cells: readonly Cells[], { weights }: Prices): Learnt {
  const rounded = weights.map((each) => each.map((weight) => Math.round(weight * PARTS)));
  const boards = cells.map((each) => heaviestBoth(each, mixture.strips, rounded).board.weight[each.capacity]);
  return { weights: rounded, boards: boards.map((board, stock) => Math.ceil(board * mixture.stocks[stock].share)) };
}
