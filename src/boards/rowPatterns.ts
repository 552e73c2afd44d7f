import { leastToEnd, type RowGraph } from './rowGraph.js';

/** One way to divide a whole row. */
export interface RowPattern {
  readonly arcs: readonly number[];
  /** Joists under its butt joints, and as bits, thirty to a word. */
  readonly joists: readonly number[];
  readonly bits: Int32Array;
  /** Per cost. */
  readonly costs: Float64Array;
}

/** The patterns of a row that some layout within all caps may have. */
export interface PatternList {
  readonly patterns: readonly RowPattern[];
  /** Whether these are all there are. */
  readonly complete: boolean;
}

/** How much of each cost one row may take. */
export interface RowCaps {
  readonly graph: RowGraph;
  readonly costs: readonly Float64Array[];
  readonly caps: readonly number[];
}

/** Joists whose bits share a word. */
export const WORD = 30;

/** Walks the row's network for patterns within its caps; at most `most` of them, and an equal share with each first piece. */
export function rowPatterns({ graph, costs, caps }: RowCaps, words: number, most: number): PatternList {
  const toEnd = costs.map((cost) => leastToEnd(graph, cost));
  const found: RowPattern[] = [];
  const firsts = graph.starts[1] - graph.starts[0];
  const share = Math.max(2, Math.ceil(most / Math.max(1, firsts)));
  let complete = true;
  let limit = share;
  let steps = STEPS_PER_PATTERN * most;
  const arcs: number[] = [];
  const spent = new Float64Array(costs.length);
  const within = (arc: number): boolean => {
    for (let k = 0; k < costs.length; k++) {
      if (!(spent[k] + costs[k][arc] + toEnd[k][graph.to[arc]] <= caps[k])) return false;
    }
    return true;
  };
  const finish = (): void => {
    if (found.length >= limit) complete = false;
    else found.push(patternOf(graph, arcs, spent, words));
  };
  const isOver = (): boolean => steps <= 0 || (!complete && found.length >= limit);
  const walk = (node: number): void => {
    if (node === graph.nodes - 1) {
      finish();
      return;
    }
    for (let arc = graph.starts[node + 1] - 1; arc >= graph.starts[node] && !isOver(); arc--) {
      if (--steps <= 0) complete = false;
      if (!within(arc)) continue;
      for (let k = 0; k < costs.length; k++) spent[k] += costs[k][arc];
      arcs.push(arc);
      walk(graph.to[arc]);
      arcs.pop();
      for (let k = 0; k < costs.length; k++) spent[k] -= costs[k][arc];
      if (node === 0) limit = Math.max(limit, Math.min(most, found.length + share));
    }
  };
  if (graph.nodes > 0) walk(0);
  return { patterns: found, complete };
}

const STEPS_PER_PATTERN = 60;

function patternOf(graph: RowGraph, arcs: readonly number[], spent: Float64Array, words: number): RowPattern {
  const joists: number[] = [];
  const bits = new Int32Array(words);
  for (const arc of arcs) {
    const joist = graph.joist[arc];
    if (joist < 0) continue;
    joists.push(joist);
    bits[Math.floor(joist / WORD)] |= 1 << (joist % WORD);
  }
  return { arcs: [...arcs], joists, bits, costs: spent.slice() };
}
