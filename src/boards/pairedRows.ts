import type { JointConflicts } from './jointConflicts.js';
import { mayClash } from './leastByPairs.js';
import { besideOf, isAboveNext, keepsClear } from './lightestPair.js';
import type { RowGraph } from './rowGraph.js';
import type { RowSort, RowSpace } from './rowSpace.js';

/** Two neighbouring rows as one: where both stand, and which of the two goes on along which of its arcs. */
interface PairGraph extends RowGraph {
  readonly isAbove: readonly boolean[];
  readonly arcs: readonly number[];
}

/**
 * The same rows two by two, for bounds only: each two neighbours are divided at once, so that their joints keep apart. Where the
 * number of rows is odd, one at a side stays by itself. Nothing where none have to keep apart.
 */
export function pairedRows({ sorts, set, groups, ...space }: RowSpace): RowSpace | undefined {
  const last = sorts.length - 1;
  const firstIsAlone = last % 2 === 0 && groups[sorts[0].group].count < groups[sorts[last].group].count;
  const rows: RowSort[] = [];
  const known = new Map<string, RowSort>();
  const graphs: { readonly of: readonly [RowGraph, RowGraph, JointConflicts]; readonly graph: PairGraph }[] = [];
  const graphOf = (...of: readonly [RowGraph, RowGraph, JointConflicts]): PairGraph => {
    const same = graphs.find((each) => each.of.every((part, at) => part === of[at]));
    if (same !== undefined) return same.graph;
    const graph = pairGraph(...of);
    graphs.push({ of, graph });
    return graph;
  };
  const add = (key: string, make: (group: number) => RowSort): void => {
    const sort = known.get(key) ?? make(known.size);
    known.set(key, sort);
    rows.push(sort);
  };
  for (let row = 0; row <= last; row++) {
    const [below, above, conflicts] = [sorts[row], sorts[row + 1], set.conflicts[row]];
    if ((row === 0 && firstIsAlone) || !mayClash(conflicts)) {
      add(`${below.group}`, (group) => ({ ...below, group }));
      continue;
    }
    add(`${below.group} ${above.group} ${set.conflicts.indexOf(conflicts)}`, (group) =>
      pairSort(graphOf(below.graph, above.graph, conflicts), below, above, group),
    );
    row++;
  }
  if (rows.length === sorts.length) return undefined;
  return {
    ...space,
    set: { ...set, conflicts: [] },
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
    kinds: new Int32Array(arcs.map((own, arc) => of(arc).kinds[own])),
    costs: below.costs.map((_, objective) => new Float64Array(arcs.map((own, arc) => of(arc).costs[objective][own]))),
  };
}

/** Whichever row is behind is carried on; its next joint has only the last one of the other row to keep clear of. */
function pairGraph(below: RowGraph, above: RowGraph, conflicts: JointConflicts): PairGraph {
  const beside = besideOf(below, above, conflicts);
  /** Per place of both rows that can be reached: the arcs from there. */
  const leaving = new Map<number, { readonly arc: number; readonly isAbove: boolean; readonly to: number }[]>([
    [0, []],
    [below.nodes * above.nodes - 1, []],
  ]);
  const end = below.nodes * above.nodes - 1;
  for (let here = 0; here < end; here++) {
    const arcs = leaving.get(here);
    if (arcs === undefined) continue;
    const [a, b] = [Math.floor(here / above.nodes), here % above.nodes];
    const isAbove = isAboveNext(beside, a, b);
    const { starts, to } = isAbove ? above : below;
    const from = isAbove ? b : a;
    for (let arc = starts[from]; arc < starts[from + 1]; arc++) {
      if (!keepsClear(beside, a, b, isAbove, arc)) continue;
      const next = isAbove ? a * above.nodes + to[arc] : to[arc] * above.nodes + b;
      arcs.push({ arc, isAbove, to: next });
      if (!leaving.has(next)) leaving.set(next, []);
    }
  }
  const order = [...leaving.keys()].sort((a, b) => a - b);
  const places = new Map(order.map((key, place) => [key, place]));
  const arcs = order.flatMap((key) => leaving.get(key) ?? []);
  let sum = 0;
  return {
    ...below,
    nodes: order.length,
    starts: Int32Array.from([0, ...order.map((key) => (sum += leaving.get(key)?.length ?? 0))]),
    to: new Int32Array(arcs.map((each) => places.get(each.to) as number)),
    joist: new Int32Array(arcs.map(({ arc, isAbove }) => (isAbove ? above : below).joist[arc])),
    isAbove: arcs.map((each) => each.isAbove),
    arcs: arcs.map(({ arc }) => arc),
  };
}
