import { type Chain, meets } from './chain.js';
import { blockedBy } from './jointConflicts.js';
import type { Steps } from './packKinds.js';
import type { RowPattern } from './rowPatterns.js';

/** Asked about each set of divisions, told by how many pieces of each kind they have. */
export type Pack<T> = (counts: Int32Array) => T | 'none' | 'unknown';

export interface LaidRows<T> {
  readonly patterns: readonly RowPattern[];
  readonly packed: T;
}

/**
 * Row after row, each pattern that keeps its joints apart from those below it and leaves enough of every cost for the rest.
 * Where the same pieces stand below a row that may have its joints in the same places, it is searched only once.
 */
export function searchChain<T>(chain: Chain, pack: Pack<T>, steps: Steps): LaidRows<T> | 'none' | 'unknown' {
  const { rows, costs, patterns, rest, carried } = chain;
  const last = patterns.length - 1;
  const counts = new Int32Array(rows.kindCount);
  const spent = new Float64Array(costs.length);
  const chosen: RowPattern[] = [];
  const dead = new Set<string>();
  let sure = true;
  let packed: T | undefined;
  const fits = (row: number, at: number, pattern: RowPattern): boolean => {
    for (let k = 0; k < costs.length; k++) if (spent[k] + pattern.costs[k] + rest[k][row] > costs[k].cap) return false;
    for (const { cost, onward } of carried) if (spent[cost] + onward[row][at] > costs[cost].cap) return false;
    return true;
  };
  const add = (row: number, pattern: RowPattern, sign: 1 | -1): void => {
    for (const arc of pattern.arcs) if (rows.kinds[row][arc] >= 0) counts[rows.kinds[row][arc]] += sign;
    for (let k = 0; k < costs.length; k++) spent[k] += sign * pattern.costs[k];
  };
  const finish = (): boolean => {
    const result = pack(counts);
    if (result === 'unknown') sure = false;
    if (result === 'none' || result === 'unknown') return false;
    packed = result;
    return true;
  };
  const lay = (row: number): boolean => {
    if (row > last) return finish();
    const blocked = row === 0 ? undefined : blockedBy(rows.conflicts[row - 1], chosen[row - 1]);
    const key = row === 0 ? '' : `${row} ${blocked?.join(' ')} ${piecesKey(counts)}`;
    if (dead.has(key)) return false;
    const wasSure = sure;
    sure = true;
    if (layAnyOf(row, blocked)) return true;
    if (steps.left <= 0) sure = false;
    if (sure) dead.add(key);
    sure = sure && wasSure;
    return false;
  };
  const layAnyOf = (row: number, blocked: Int32Array | undefined): boolean => {
    const list = patterns[row];
    for (let at = 0; at < list.length && steps.left > 0; at++) {
      if (blocked !== undefined && meets(list[at].bits, blocked)) continue;
      if (fits(row, at, list[at]) && layWith(row, list[at])) return true;
    }
    return false;
  };
  const layWith = (row: number, pattern: RowPattern): boolean => {
    steps.left--;
    chosen.push(pattern);
    add(row, pattern, 1);
    if (lay(row + 1)) return true;
    add(row, pattern, -1);
    chosen.pop();
    return false;
  };
  if (lay(0)) return { patterns: chosen, packed: packed as T };
  return sure ? 'none' : 'unknown';
}

/** What pieces there are, as a text: each kind that there is, and how many. */
export function piecesKey(counts: Int32Array): string {
  const codes: number[] = [];
  for (let kind = 0; kind < counts.length; kind++) if (counts[kind] > 0) codes.push(kind, counts[kind]);
  return String.fromCharCode(...codes);
}
