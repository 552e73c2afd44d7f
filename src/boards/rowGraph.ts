import type { PossiblePiece, Run } from './possiblePieces.js';

/**
 * A row as a network: its nodes are the places where a piece may begin or end, its arcs the pieces. Every way from the first
 * node to the last is a way to divide the row. An arc without a piece leads across an opening that parts the row, and along a
 * piece that is up already.
 */
export interface RowGraph {
  readonly runs: readonly Run[];
  readonly nodes: number;
  /** Arcs from node `n` are those from `starts[n]` up to `starts[n + 1]`, the shortest piece first. */
  readonly starts: Int32Array;
  readonly to: Int32Array;
  /** Whether some piece needs less of a board's width than its row. */
  readonly narrow: boolean;
  /** Nothing across an opening or along a piece that is up. */
  readonly piece: readonly (PossiblePiece | undefined)[];
  /** Which joist the butt joint at the end of the arc is on; -1 at a wall or an opening. */
  readonly joist: Int32Array;
  /** Which run the piece is in, and its index among the pieces of that run. */
  readonly run: Int32Array;
  readonly index: Int32Array;
}

export function rowGraph(runs: readonly Run[]): RowGraph {
  const nodes = runs.reduce((sum, run) => sum + run.places.length, 0);
  const starts = new Int32Array(nodes + 1);
  const to: number[] = [];
  const piece: (PossiblePiece | undefined)[] = [];
  const joist: number[] = [];
  const inRun: number[] = [];
  const index: number[] = [];
  let base = 0;
  for (const [at, run] of runs.entries()) {
    for (let place = 0; place < run.places.length; place++) {
      starts[base + place] = to.length;
      for (const each of run.starting[place]) {
        to.push(base + run.pieces[each].to);
        piece.push(run.pieces[each].isUp ? undefined : run.pieces[each]);
        joist.push(run.joistAt[run.pieces[each].to]);
        inRun.push(at);
        index.push(each);
      }
      if (place < run.places.length - 1 || at === runs.length - 1) continue;
      to.push(base + run.places.length);
      piece.push(undefined);
      joist.push(-1);
      inRun.push(at);
      index.push(-1);
    }
    base += run.places.length;
  }
  starts[nodes] = to.length;
  return {
    runs,
    nodes,
    starts,
    to: Int32Array.from(to),
    narrow: piece.some((each) => each?.width !== undefined),
    piece,
    joist: Int32Array.from(joist),
    run: Int32Array.from(inRun),
    index: Int32Array.from(index),
  };
}

/** For each node, the least sum of `costs` over the arcs of a way from it to the end; Infinity where there is none. */
export function leastToEnd({ nodes, starts, to }: RowGraph, costs: Float64Array): Float64Array {
  const least = new Float64Array(nodes).fill(Infinity);
  if (nodes > 0) least[nodes - 1] = 0;
  for (let node = nodes - 2; node >= 0; node--) {
    for (let arc = starts[node]; arc < starts[node + 1]; arc++) {
      const sum = costs[arc] + least[to[arc]];
      if (sum < least[node]) least[node] = sum;
    }
  }
  return least;
}
