import type { Column, LinearProgram } from './linearProgram.js';
import type { RowPath } from './rowPath.js';
import type { RowSpace } from './rowSpace.js';
import type { StripBlock, StripPieces } from './stripBlocks.js';

/** One way to cut a board. */
export interface BoardCut {
  readonly stock: number;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** A column that is a row's path, a board's cut, or something left over. */
export interface Entry extends Column {
  readonly path?: RowPath;
  readonly cut?: BoardCut;
}

/** What an objective may come to. */
export interface Cap {
  readonly objective: number;
  readonly most: number;
}

/** Pieces that go beside others, once all rows that they are in are fixed. */
export interface SettledStrips {
  /** Per kind: how many there are; Infinity for kinds that nothing goes beside. */
  readonly counts: Float64Array;
  /** Per stock: those that it can give, their blocks, unless there are too many, and else what they take of its width at the most. */
  readonly ofStock: readonly {
    readonly pieces: StripPieces;
    readonly blocks: readonly StripBlock[] | undefined;
    readonly across: number;
  }[];
}

/** Whether there are only so many pieces of a kind. */
export const isLimited = (strips: SettledStrips | undefined, kind: number): boolean =>
  (strips?.counts[kind] ?? Infinity) < Infinity;

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
  /** Paths of the rows that are fixed, in the order in which they were. */
  readonly fixed: RowPath[];
  /** Strips that are known one by one: no board has more of them than there are. Undefined as long as they are not. */
  readonly strips: SettledStrips | undefined;
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
  /** What it has taken, in thousands of multiplications, about. */
  work: number;
}

/** Prices of kinds, caps and limited stocks, and what they prove as far as plain arithmetic tells. */
export interface Guess {
  readonly kinds: Float64Array;
  readonly caps: readonly number[];
  readonly stocks: readonly number[];
  readonly bound: number;
}

/** What is less than this is nothing. */
export const SMALL = 1e-7;

export function pathEntry(relaxation: Relaxation, path: RowPath): Entry {
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

export function cutEntry(relaxation: Relaxation, cut: BoardCut): Entry {
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
