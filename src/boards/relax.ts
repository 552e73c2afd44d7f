import { addRow, emptyProgram, type LinearProgram } from './linearProgram.js';
import { type BoardCut, type Cap, cutEntry, type Entry, isLimited, type Relaxation, type SettledStrips } from './relaxation.js';
import { leastBeyond, lightestWay, type RowPath, rowPath } from './rowPath.js';
import type { RowSort, RowSpace } from './rowSpace.js';
import { servedKinds, servesFor } from './servedKinds.js';

/** What must not be costs so many times the dearest that may be. */
const FORBIDDEN = 1e3;

/**
 * Sets up the programme; what another one of the same rows has found is taken over, with `strips` that its fixed rows settle these rows
 * too.
 */
export function relax(
  space: RowSpace,
  objective: number,
  caps: readonly Cap[],
  known?: Relaxation,
  strips?: SettledStrips,
): Relaxation {
  const relaxation: Relaxation = {
    space,
    objective,
    caps,
    program: emptyProgram(),
    open: space.groups.map(({ count }) => count),
    fixed: strips === undefined ? [] : [...(known?.fixed ?? [])],
    strips,
    made: [],
    paths: new Map(known?.paths),
    cuts: new Map(),
    present: [],
    inOrder: [],
    served: known?.served ?? servedKinds(space.kinds),
    kindRow: new Int32Array(space.kinds.length).fill(-1),
    shorter: new Int32Array(space.kinds.length).fill(-1),
    capRow: [],
    stockRow: space.problem.stocks.map(() => -1),
    forbidden: FORBIDDEN * Math.max(1, ...space.objectives[objective].boards),
    best: undefined,
    mostBoards: mostBoards(space, caps),
    work: 0,
  };
  for (const { sort } of relaxation.fixed) relaxation.open[sort.group]--;
  startBasis(relaxation);
  if (known !== undefined) {
    const wanted = known.present.filter((kind) => relaxation.kindRow[kind] < 0 && strips?.counts[kind] !== 0);
    for (const kind of wanted) addKind(relaxation, kind, 0);
    for (const cut of known.cuts.values()) if (isThere(relaxation, cut)) addCut(relaxation, cut);
  }
  return relaxation;
}

/** Whether a board has no more strips than there are. */
const isThere = ({ strips }: Relaxation, { kinds, counts }: BoardCut): boolean =>
  strips === undefined || kinds.every((kind, at) => counts[at] <= strips.counts[kind]);

/** A basis: one way to divide each row, each of its pieces cut by itself; what passes a cap is forbidden, but possible. */
function startBasis(relaxation: Relaxation): void {
  const { space, program, caps, fixed, open } = relaxation;
  const wanted = new Map<number, number>();
  const want = (path: RowPath, times: number): void => {
    for (const [at, kind] of path.kinds.entries()) wanted.set(kind, (wanted.get(kind) ?? 0) + path.counts[at] * times);
  };
  for (const [row, { sort }] of space.groups.entries()) {
    const count = open[row];
    if (count === 0) {
      addRow(program, { cost: 0, rows: [row], values: [1] }, 1, 0);
      continue;
    }
    const path = knownPath(relaxation, sort, likelyWay(space, sort));
    // Its rows for kinds are added next.
    addRow(program, { cost: path.costs[relaxation.objective], rows: [row], values: [1], path } as Entry, 1, count);
    want(path, count);
  }
  for (const path of fixed) want(path, 1);
  for (const [kind, count] of wanted) addKind(relaxation, kind, count);
  for (const { objective, most } of caps) {
    relaxation.capRow.push(program.size);
    const spent = fixed.reduce((sum, path) => sum + path.costs[objective], space.objectives[objective].fixed);
    addLimit(relaxation, most - spent, (entry) => costUnder(space, objective, entry));
  }
  for (const [stock, { board }] of space.problem.stocks.entries()) {
    if (board.available === undefined) continue;
    relaxation.stockRow[stock] = program.size;
    addLimit(relaxation, board.available, (entry) => (entry.cut?.stock === stock ? 1 : 0));
  }
}

const costUnder = ({ objectives }: RowSpace, objective: number, { path, cut }: Entry): number =>
  path?.costs[objective] ?? (cut === undefined ? 0 : objectives[objective].boards[cut.stock]);

/** The way with few pieces, and of those the shortest in sum. */
function likelyWay({ kinds }: RowSpace, { graph, kinds: ofArc }: RowSort): number[] {
  const costs = Float64Array.from(ofArc, (kind) => (kind < 0 ? 0 : 1e9 + kinds[kind].size));
  return lightestWay(graph, costs, undefined, leastBeyond(graph, costs));
}

/** A path; the one that the programme knows, if it does. */
export function pathOf({ paths, space }: Relaxation, sort: RowSort, arcs: readonly number[]): RowPath {
  return paths.get(keyOf(sort, arcs)) ?? rowPath(space, sort, arcs);
}

const keyOf = ({ group }: RowSort, arcs: readonly number[]): string => `${group} ${arcs.join(' ')}`;

export function knownPath(relaxation: Relaxation, sort: RowSort, arcs: readonly number[]): RowPath {
  const path = pathOf(relaxation, sort, arcs);
  relaxation.paths.set(keyOf(sort, arcs), path);
  return path;
}

/** A row of the programme for a kind of piece: as many are cut as are wanted, or more. */
export function addKind(relaxation: Relaxation, kind: number, wanted: number): void {
  const { program, kindRow, present } = relaxation;
  const cut = cutAlone(relaxation, kind);
  kindRow[kind] = program.size;
  present.push(kind);
  linkShorter(relaxation, kind);
  addCut(relaxation, cut);
  const [own] = cut.counts;
  addRow(program, cutEntry(relaxation, cut), own, wanted / own, wanted === 0 ? undefined : wantedBy(program, kind));
}

/** Kinds stand the widest and longest first, so the next present one after a kind is the next shorter of its width. */
function linkShorter({ space: { kinds }, inOrder, shorter, strips }: Relaxation, kind: number): void {
  const after = inOrder.findIndex((other) => other > kind);
  const at = after < 0 ? inOrder.length : after;
  inOrder.splice(at, 0, kind);
  for (const place of [at - 1, at]) {
    const [long, short] = [inOrder[place], inOrder[place + 1]];
    // Of a piece of which there are only so many, a longer one may be worth less.
    const serves = (next: number): boolean => !isLimited(strips, next) && servesFor(kinds[long], kinds[next]);
    if (long !== undefined) shorter[long] = short !== undefined && serves(short) ? short : -1;
  }
}

/** Per column of the basis: how many pieces of this kind it wants. */
function wantedBy({ basis, size }: LinearProgram, kind: number): Float64Array {
  const wanted = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    const { path } = basis[row] as Entry;
    const at = path === undefined ? -1 : path.kinds.indexOf(kind);
    if (path !== undefined && at >= 0) wanted[row] = -path.counts[at];
  }
  return wanted;
}

/** A row of the programme that must not pass a limit. */
function addLimit({ program, forbidden }: Relaxation, most: number, coefficientOf: (entry: Entry) => number): void {
  const row = program.size;
  const others = new Float64Array(program.basis.slice(0, row).map(coefficientOf));
  let spent = 0;
  for (let at = 0; at < row; at++) spent += others[at] * program.values[at];
  const own = spent <= most ? 1 : -1;
  addRow(program, { cost: own === 1 ? 0 : forbidden, rows: [row], values: [own] }, own, Math.abs(most - spent), others);
}

export function addCut({ cuts }: Relaxation, cut: BoardCut): void {
  const key = `${cut.stock} ${cut.kinds.join(' ')} ${cut.counts.join(' ')}`;
  if (!cuts.has(key)) cuts.set(key, cut);
}

/** As many of one kind as the stock that suits it best gives. */
export function cutAlone({ space, strips }: Relaxation, kind: number): BoardCut {
  const { sizes, width, alone } = space.kinds[kind];
  let best = { stock: 0, count: 0, forArea: 0 };
  for (const [stock, { length, width: whole, kerf, area }] of space.problem.stocks.entries()) {
    if (sizes[stock] === Infinity) continue;
    const lanes = alone[stock] ? 1 : Math.max(1, Math.floor((whole + kerf) / (width + kerf)));
    const count = Math.min(strips?.counts[kind] ?? Infinity, Math.floor((length + kerf) / sizes[stock]) * lanes);
    if (count / area > best.forArea) best = { stock, count, forArea: count / area };
  }
  return { stock: best.stock, kinds: [kind], counts: [best.count] };
}

/** No layout cuts a board for nothing, so there are no more boards than pieces. */
function mostBoards({ sorts, objectives, problem }: RowSpace, caps: readonly Cap[]): number {
  const pieces = sorts.reduce((sum, { graph }) => sum + graph.nodes - 1, 0);
  return caps.reduce(
    (most, cap) => {
      const least = Math.min(...objectives[cap.objective].boards);
      return least > 0 ? Math.min(most, Math.floor(cap.most / least)) : most;
    },
    Math.min(
      pieces,
      problem.stocks.reduce((sum, { board }) => sum + (board.available ?? Infinity), 0),
    ),
  );
}
