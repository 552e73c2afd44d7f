import type { PossiblePiece, Run } from './possiblePieces.js';

/**
 * A row as a network: its nodes are the places where a piece may begin or end, its arcs the pieces. Every way from the first
 * node to the last is a way to divide the row. Where several pieces together lie between two places, arcs lead from one to the
 * next of them; from run to run an arc without a piece does.
 */
export interface RowGraph {
  readonly runs: readonly Run[];
  readonly nodes: number;
  /** Arcs from node `n` are those from `starts[n]` up to `starts[n + 1]`, the shortest piece first. */
  readonly starts: Int32Array;
  readonly to: Int32Array;
  /** Whether some piece needs less of a board's width than its row. */
  readonly narrow: boolean;
  /** Nothing from run to run, and along a piece that is up. */
  readonly piece: readonly (PossiblePiece | undefined)[];
  /** Which joist the butt joint at the end of the arc is on; -1 at a wall or an opening. */
  readonly joist: Int32Array;
  /** Which run the piece is in, and its index among the pieces of that run. */
  readonly run: Int32Array;
  readonly index: Int32Array;
}

/** An arc: a piece of a run, or the way on to the next run. */
interface Arc {
  readonly to: number;
  readonly run: number;
  readonly index: number;
}

export function rowGraph(runs: readonly Run[]): RowGraph {
  const leaving = arcsOf(runs);
  const arcs = leaving.flat();
  const starts = new Int32Array(leaving.length + 1);
  for (let node = 0; node < leaving.length; node++) starts[node + 1] = starts[node] + leaving[node].length;
  const piece = arcs.map(({ run, index }) => {
    const its = index < 0 ? undefined : runs[run].pieces[index];
    return its?.isUp ? undefined : its;
  });
  return {
    runs,
    nodes: leaving.length,
    starts,
    to: new Int32Array(arcs.map(({ to }) => to)),
    narrow: piece.some((each) => each?.width !== undefined),
    piece,
    joist: new Int32Array(
      arcs.map(({ run }, arc) => {
        const its = piece[arc];
        return its?.highMeets === 'board' ? runs[run].places[its.to].joist : -1;
      }),
    ),
    run: new Int32Array(arcs.map(({ run }) => run)),
    index: new Int32Array(arcs.map(({ index }) => index)),
  };
}

/** The arcs that leave each node. A row with nothing in it is one node. */
function arcsOf(runs: readonly Run[]): Arc[][] {
  const leaving: Arc[][] = [];
  for (const [run, { starting, pieces }] of runs.entries()) {
    const places: number[] = [];
    let node = leaving.length;
    for (const sets of starting) {
      places.push(node);
      node += sets.reduce((sum, { length }) => sum + length - 1, 1);
    }
    for (const sets of starting) {
      const from: Arc[] = [];
      leaving.push(from);
      for (const set of sets) addSet(leaving, from, run, set, places[pieces[set[0]].to]);
    }
    if (run + 1 < runs.length) leaving[leaving.length - 1].push({ to: leaving.length, run, index: -1 });
  }
  return leaving.length === 0 ? [[]] : leaving;
}

/** Arcs for pieces that lie together between two places: a node between each two of them. */
function addSet(leaving: Arc[][], first: Arc[], run: number, set: readonly number[], end: number): void {
  let from = first;
  for (const index of set.slice(0, -1)) {
    from.push({ to: leaving.length, run, index });
    from = [];
    leaving.push(from);
  }
  from.push({ to: end, run, index: set[set.length - 1] });
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

/** Whether there is any way to divide the row. */
export const isDivided = (graph: RowGraph): boolean => leastToEnd(graph, new Float64Array(graph.piece.length))[0] < Infinity;
