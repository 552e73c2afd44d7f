import { alikeGraph } from './alikeGraph.js';
import { wordsFor } from './jointConflicts.js';
import { type Objective, type ObjectiveName, objectivesFor } from './objectives.js';
import { type PieceKind, pieceKinds } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { leastToEnd, type RowGraph } from './rowGraph.js';
import type { RowSet } from './rowSets.js';

/** Rows that can be divided alike, from boards that are cut alike. */
export interface RowSort {
  /** Its place among the groups. */
  readonly group: number;
  readonly graph: RowGraph;
  /** Per arc: the kind of piece; -1 where no board is needed. */
  readonly kinds: Int32Array;
  /** Per objective, per arc. */
  readonly costs: readonly Float64Array[];
}

/** One division of the ceiling into rows, as the search sees it. */
export interface RowSpace {
  readonly problem: PlacementProblem;
  readonly set: RowSet;
  readonly kinds: readonly PieceKind[];
  /** Per row; rows of one sort share it. */
  readonly sorts: readonly RowSort[];
  /** Each sort once, with the number of its rows. */
  readonly groups: readonly { readonly sort: RowSort; readonly count: number }[];
  readonly objectives: readonly Objective[];
  /** Words of bits for the joists. */
  readonly words: number;
  /** Per objective: what no layout on these rows can be below, by its rows alone. */
  readonly least: readonly number[];
  /** The one network that all rows share, every joist keeping its place from row to row; nothing where they do not. */
  readonly alike: RowGraph | undefined;
}

export function rowSpace(problem: PlacementProblem, set: RowSet, names: readonly ObjectiveName[]): RowSpace {
  const { kinds, ofRow } = pieceKinds(
    problem,
    set.rows.map(({ graph, band }) => ({ graph, width: band.width })),
  );
  const objectives = objectivesFor(problem, set, names);
  const sorts: RowSort[] = [];
  for (const [row, { graph, band }] of set.rows.entries()) {
    const costs = objectives.map(({ ofPiece }) => {
      const ofArc = new Float64Array(graph.piece.length);
      for (let arc = 0; arc < ofArc.length; arc++) if (graph.piece[arc] !== undefined) ofArc[arc] = ofPiece(graph, arc, band);
      return ofArc;
    });
    const same = sorts.find(
      (sort, at) =>
        sort.graph === graph && set.rows[at].band.width === band.width && sort.costs.every((of, k) => isSame(of, costs[k])),
    );
    sorts.push(same ?? { group: new Set(sorts).size, graph, kinds: ofRow[row], costs });
  }
  const least = objectives.map(({ fixed }, at) =>
    sorts.reduce((sum, { graph, costs }) => sum + (graph.nodes === 0 ? Infinity : leastToEnd(graph, costs[at])[0]), fixed),
  );
  const groups = [...new Set(sorts)].map((sort) => ({ sort, count: sorts.filter((each) => each === sort).length }));
  return { problem, set, kinds, sorts, groups, alike: alikeGraph(set), objectives, words: wordsFor(problem), least };
}

const isSame = (one: Float64Array, other: Float64Array): boolean => one.every((each, at) => each === other[at]);
