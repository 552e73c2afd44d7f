import type { JointConflicts } from './jointConflicts.js';
import { joistsOfNodes } from './lightestPair.js';
import type { RowGraph } from './rowGraph.js';
import { isOpen } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';

/** Two neighbouring rows as one: where both stand, and which of the two goes on along which of its arcs. */
interface PairGraph extends RowGraph {
  readonly isAbove: readonly boolean[];
  readonly arcs: readonly number[];
}

/**
 * The same rows two by two, for bounds only: each two neighbours are divided at once, so that their joints keep apart. Where the
 * number of rows is odd, one at a side stays by itself. Nothing where the rows are not alike.
 */
export function pairedRows(space: RowSpace): RowSpace | undefined {
  const { alike, sorts, set, groups } = space;
  if (alike === undefined || sorts.length < 2) return undefined;
  const graph = pairGraph(alike, set.conflicts[0]);
  const last = sorts.length - 1;
  const isOdd = sorts.length % 2 === 1;
  const firstIsAlone = isOdd && groups[sorts[0].group].count < groups[sorts[last].group].count;
  const rows: RowSort[] = [];
  const known = new Map<string, RowSort>();
  const add = (key: string, make: (group: number) => RowSort): void => {
    const sort = known.get(key) ?? make(known.size);
    known.set(key, sort);
    rows.push(sort);
  };
  if (isOdd) add('alone', (group) => ({ ...sorts[firstIsAlone ? 0 : last], group }));
  for (let row = firstIsAlone ? 1 : 0; row + 1 <= last; row += 2) {
    const [below, above] = [sorts[row], sorts[row + 1]];
    add(`${below.group} ${above.group}`, (group) => pairSort(graph, below, above, group));
  }
  return {
    ...space,
    alike: undefined,
    sorts: rows,
    groups: [...known.values()].map((sort) => ({ sort, count: rows.filter((each) => each === sort).length })),
  };
}

function pairSort(graph: PairGraph, below: RowSort, above: RowSort, group: number): RowSort {
  const { isAbove, arcs } = graph;
  const of = (arc: number): RowSort => (isAbove[arc] ? above : below);
  return {
    group,
    graph,
    kinds: Int32Array.from(arcs, (own, arc) => of(arc).kinds[own]),
    costs: below.costs.map((_, objective) => Float64Array.from(arcs, (own, arc) => of(arc).costs[objective][own])),
  };
}

/** Whichever row is behind is carried on; its next joint has only the last one of the other row to keep clear of. */
function pairGraph(graph: RowGraph, conflicts: JointConflicts): PairGraph {
  const { nodes, starts, to, joist } = graph;
  const joistAt = joistsOfNodes(graph);
  /** Per place of both rows that can be reached: the arcs from there. */
  const leaving = new Map<number, { readonly arc: number; readonly isAbove: boolean; readonly to: number }[]>([[0, []]]);
  const end = nodes * nodes - 1;
  for (let here = 0; here < end; here++) {
    const arcs = leaving.get(here);
    if (arcs === undefined) continue;
    const [below, above] = [Math.floor(here / nodes), here % nodes];
    const isAbove = below > above;
    const [from, other] = isAbove ? [above, joistAt[below]] : [below, joistAt[above]];
    for (let arc = starts[from]; arc < starts[from + 1]; arc++) {
      if (!isOpen(other < 0 ? undefined : conflicts[other], joist[arc])) continue;
      const next = isAbove ? below * nodes + to[arc] : to[arc] * nodes + above;
      arcs.push({ arc, isAbove, to: next });
      if (!leaving.has(next)) leaving.set(next, []);
    }
  }
  const order = [...leaving.keys()].sort((a, b) => a - b);
  const places = new Map(order.map((key, place) => [key, place]));
  const arcs = order.flatMap((key) => leaving.get(key) ?? []);
  let sum = 0;
  return {
    ...graph,
    nodes: order.length,
    starts: Int32Array.from([0, ...order.map((key) => (sum += leaving.get(key)?.length ?? 0))]),
    to: Int32Array.from(arcs, (each) => places.get(each.to) as number),
    joist: Int32Array.from(arcs, ({ arc }) => joist[arc]),
    isAbove: arcs.map((each) => each.isAbove),
    arcs: arcs.map(({ arc }) => arc),
  };
}
