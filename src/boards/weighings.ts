import { type LengthWeight, lengthWeights, weightOf } from './lengthWeights.js';
import { longestFill } from './longestFill.js';
import { leastKerf, longestOf, sizeFrom } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { leastToEnd, type RowGraph } from './rowGraph.js';

/** A weighting of lengths, worked out for every row that may be laid. */
export interface WeighedLengths {
  readonly weight: LengthWeight;
  /** Weight of a board of each stock. */
  readonly boards: readonly number[];
  /** Per size of piece. */
  readonly of: ReadonlyMap<number, number>;
  /** Per graph, per arc. */
  readonly arcs: ReadonlyMap<RowGraph, Float64Array>;
  /** Per graph: the weight of its lightest division. */
  readonly lightest: ReadonlyMap<RowGraph, number>;
}

/** A weighting of row widths: what strips side by side on a board together never exceed. */
export interface WeighedWidths {
  readonly weight: LengthWeight;
  readonly boards: readonly number[];
  readonly of: ReadonlyMap<number, number>;
}

interface Capacity {
  readonly capacity: number;
  readonly boards: readonly number[];
}

/**
 * The length of a board with one cut, less what no pieces of these sizes can fill. A piece a little over a shorter board may
 * still be made of it.
 */
function lengthCapacity(problem: PlacementProblem, sizes: readonly number[]): Capacity {
  const { stocks, rules } = problem;
  const kerf = leastKerf(problem);
  const longest = longestOf(problem).length + kerf;
  const filled = stocks.map((stock) => longestFill(sizes, Math.min(longest, stock.length + kerf + rules.greatestExcess)));
  return { capacity: Math.max(...filled), boards: filled };
}

function widthCapacity(problem: PlacementProblem): Capacity {
  const { stocks } = problem;
  const kerf = leastKerf(problem);
  return { capacity: Math.max(...stocks.map((stock) => stock.width)) + kerf, boards: stocks.map((stock) => stock.width + kerf) };
}

/** All weightings of lengths over these graphs. */
export function weighLengths(problem: PlacementProblem, graphs: readonly RowGraph[]): WeighedLengths[] {
  const longest = longestOf(problem);
  const kerf = leastKerf(problem);
  const sizesOf = new Map(
    graphs.map((graph) => [graph, graph.piece.map((piece) => (piece === undefined ? 0 : sizeFrom(longest, piece) + kerf))]),
  );
  const sizes = [...new Set([...sizesOf.values()].flat())].filter((size) => size > 0);
  const { capacity, boards } = lengthCapacity(problem, sizes);
  return lengthWeights(sizes, capacity).map((weight): WeighedLengths => {
    const of = new Map(sizes.map((size) => [size, weightOf(weight, size, capacity)]));
    const arcs = new Map<RowGraph, Float64Array>();
    const lightest = new Map<RowGraph, number>();
    for (const [graph, lengths] of sizesOf) {
      const costs = Float64Array.from(lengths, (size) => of.get(size) ?? 0);
      arcs.set(graph, costs);
      lightest.set(graph, leastToEnd(graph, costs)[0]);
    }
    return { weight, boards: boards.map((board) => weightOf(weight, board, capacity)), of, arcs, lightest };
  });
}

/** All weightings of the widths of some rows. */
export function weighWidths(problem: PlacementProblem, widths: readonly number[]): WeighedWidths[] {
  const { capacity, boards } = widthCapacity(problem);
  const kerf = leastKerf(problem);
  const distinct = [...new Set(widths)];
  const sizes = distinct.map((width) => width + kerf);
  return lengthWeights(sizes, capacity).map((weight) => ({
    weight,
    boards: boards.map((board) => weightOf(weight, board, capacity)),
    of: new Map(distinct.map((width, index) => [width, weightOf(weight, sizes[index], capacity)])),
  }));
}
