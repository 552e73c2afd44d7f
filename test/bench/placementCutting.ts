import type { BoardStock } from 'soffitwright';
import { disjoint, type ModelRows } from './placementRows.js';
import { balance } from './placementTerms.js';

/** The part of the model that says what can be cut from the boards bought. */
export interface CuttingModel {
  readonly boards: readonly { readonly name: string; readonly available?: number }[];
  readonly lines: readonly string[];
  /** Variables that take whole numbers only. */
  readonly whole: readonly string[];
  /** The variables that cut a piece of this size for a row of this width. */
  readonly cut: (width: number, size: number) => string[];
  /** Boards with the pieces on them, as a solution says it; of `cut` only. */
  readonly filled: (count: (name: string) => number) => FilledBoard[];
}

export interface FilledBoard {
  readonly stock: number;
  readonly items: Item[];
}

/** A piece on a board, or in a strip of one; lengths with their kerf. */
export interface Item {
  readonly width: number;
  readonly size: number;
  readonly length: number;
  /** More of them than this no room needs. */
  readonly most: number;
}

interface Arc {
  readonly from: number;
  readonly to: number;
  readonly item: Item;
  readonly name: string;
}

/**
 * Flow over the lengths that pieces laid end to end can reach, the long pieces first. On each board the pieces of its whole width
 * come first; `u` counts the boards on which they stop at a length. The rest of such a board is ripped into strips, as many of
 * each width as its `mode` says, and each strip is filled from there to the end. The sum of lengths, each with its kerf, is at
 * most the board's and one kerf.
 *
 * With one ripped width this is exact: what lies side by side at any place is at most what the strips are.
 *
 * With two ripped widths, `cut` has every greatest mix of strips side by side as a mode, all strips of a board as long as the
 * rest, and a strip may be made narrower for a piece of the other width: what can be cut so can be cut, so this gives boards that
 * are enough. `bound` fills strips of each width as if the others were not there, and asks that all together find room in the
 * area under the mixes: no cutting whatever does with fewer boards.
 */
export function cuttingModel(
  boards: readonly BoardStock[],
  model: ModelRows,
  rowWidths: readonly number[],
  strips: 'cut' | 'bound',
): CuttingModel {
  const parts = boards.map((board, stock) => stockModel(board, stock, model, rowWidths, strips));
  return {
    boards: boards.map(({ available }, stock) => ({ name: `n${stock}`, available })),
    lines: parts.flatMap(({ lines }) => lines),
    whole: parts.flatMap(({ whole }) => whole),
    cut: (width, size) =>
      parts.flatMap(({ arcs }) => arcs.filter(({ item }) => item.width === width && item.size === size).map(({ name }) => name)),
    filled: (count) => parts.flatMap(({ filled }) => filled(count)),
  };
}

function stockModel(board: BoardStock, stock: number, model: ModelRows, rowWidths: readonly number[], kind: 'cut' | 'bound') {
  const kerf = model.kerfs[stock];
  const capacity = Math.round(board.length * 1000) + kerf;
  const items = [...new Set(rowWidths)]
    .filter((width) => width <= board.width)
    .flatMap((width) =>
      model.sizes.flatMap((taken, size): Item[] => {
        const length = taken[stock];
        if (length === undefined) return [];
        const most = model.rows
          .filter((_, row) => rowWidths[row] === width)
          .reduce((total, { pieces }) => total + disjoint(pieces.filter((piece) => piece.size === size)), 0);
        return most === 0 ? [] : [{ width, size, length: length + kerf, most }];
      }),
    )
    .sort((a, b) => b.length - a.length || b.width - a.width || a.size - b.size);
  const lines: string[] = [];
  const counts = [`n${stock}`];
  const widths = [...new Set(items.map(({ width }) => width))].filter((width) => width < board.width).sort((a, b) => b - a);
  const modes = stripModes(widths, Math.round(board.width * 1000), kerf);
  // No two strips side by side: a piece of any width has its length of the board to itself.
  const single = modes.every((mode) => mode.reduce((total, count) => total + count, 0) === 1);
  const ripped = single ? [] : items.filter(({ width }) => width < board.width);
  const whole = single ? items : items.filter(({ width }) => width === board.width);
  const spine = flow(`f${stock}`, [0], whole, capacity, lift(items, capacity));
  const mixed = !single && widths.length > 1 && kind === 'bound';
  const shortest = Math.min(...ripped.map(({ length }) => length));
  const stops = spine.nodes.filter((node) => capacity - node >= shortest);
  const stopped = (node: number): string[] =>
    stops.includes(node) ? (mixed ? [`u${stock}_${node}`] : modes.map((_, mode) => `u${stock}_${node}_${mode}`)) : [];
  for (const node of spine.nodes) {
    const taken = [...spine.leaving(node), ...stopped(node)];
    if (taken.length > 0) lines.push(balance(node === 0 ? [`n${stock}`] : spine.arriving(node), taken, '>='));
    counts.push(...stopped(node));
  }
  const arcs = [...spine.arcs];
  const strips = (single ? [] : widths).map((width, at) => {
    const fits = ripped.filter((item) => (mixed ? item.width === width : item.width <= width));
    const raise = lift(fits, capacity);
    return { raise, at, flow: flow(`s${stock}_${at}`, stops.map(raise), fits, capacity, raise) };
  });
  for (const { raise, at, flow: strip } of strips) {
    for (const node of strip.nodes) {
      const begun = stops
        .filter((stop) => raise(stop) === node)
        .flatMap((stop) =>
          mixed
            ? [`${Math.max(...modes.map((mode) => mode[at]))} u${stock}_${stop}`]
            : modes.flatMap((mode, index) => (mode[at] > 0 ? [`${mode[at]} u${stock}_${stop}_${index}`] : [])),
        );
      const leaving = strip.leaving(node);
      if (leaving.length > 0) lines.push(balance([...strip.arriving(node), ...begun], leaving, '>='));
    }
    for (const arc of strip.arcs) arcs.push(arc);
  }
  if (mixed) lines.push(...areaLines(stock, stops, capacity, modes, widths, arcs));
  for (const { name } of arcs) counts.push(name);
  const filled = (count: (name: string) => number): FilledBoard[] => {
    const boards = Array.from({ length: count(`n${stock}`) }, (): FilledBoard => ({ stock, items: [] }));
    const begun = strips.map((): [number, FilledBoard][] => []);
    fill(
      spine,
      boards.map((board) => [0, board]),
      count,
      (node, take) => {
        modes.forEach((mode, index) => {
          if (!stops.includes(node) || single) return;
          for (const board of take(count(`u${stock}_${node}_${index}`))) {
            for (const { at, raise } of strips) for (let k = 0; k < mode[at]; k++) begun[at].push([raise(node), board]);
          }
        });
      },
    );
    for (const { at, flow: strip } of strips) fill(strip, begun[at], count);
    return boards;
  };
  return { lines, whole: counts, arcs, filled };
}

/** Follows boards, or strips of them, along the arcs that a solution uses, and puts the arcs' pieces on them. */
function fill(
  { nodes, arcs }: Pick<ReturnType<typeof flow>, 'nodes' | 'arcs'>,
  begun: readonly (readonly [number, FilledBoard])[],
  count: (name: string) => number,
  stop: (node: number, take: (boards: number) => FilledBoard[]) => void = () => undefined,
): void {
  const at = new Map(nodes.map((node): [number, FilledBoard[]] => [node, []]));
  for (const [node, board] of begun) at.get(node)?.push(board);
  for (const node of nodes) {
    const here = at.get(node) ?? [];
    const take = (boards: number): FilledBoard[] => {
      if (boards > here.length) throw new Error(`more taken than there is at ${node}`);
      return here.splice(0, boards);
    };
    for (const { to, item, name } of arcs.filter(({ from }) => from === node)) {
      for (const board of take(count(name))) {
        board.items.push(item);
        at.get(to)?.push(board);
      }
    }
    stop(node, take);
  }
}

/** The length under all boards' ends is shared between the mixes of strips, `t` for each, and holds the strips' pieces. */
function areaLines(
  stock: number,
  stops: readonly number[],
  capacity: number,
  modes: readonly (readonly number[])[],
  widths: readonly number[],
  arcs: readonly Arc[],
): string[] {
  const shares = modes.map((_, mode) => `t${stock}_${mode}`);
  const metres = (length: number): string => (length / 1e6).toFixed(6);
  return [
    balance(
      stops.map((stop) => `${metres(capacity - stop)} u${stock}_${stop}`),
      shares,
      '>=',
    ),
    ...widths.map((width, at) =>
      balance(
        modes.flatMap((mode, index) => (mode[at] > 0 ? [`${mode[at]} ${shares[index]}`] : [])),
        arcs.filter(({ item }) => item.width === width).map(({ item, name }) => `${metres(item.length)} ${name}`),
        '>=',
      ),
    ),
  ];
}

/** Every greatest mix of strips side by side, how many of each width; at least one strip, whatever the kerf. */
function stripModes(widths: readonly number[], boardWidth: number, kerf: number): number[][] {
  const found: number[][] = [];
  const extend = (mode: number[], room: number): void => {
    if (mode.length === widths.length) {
      found.push(mode);
      return;
    }
    const each = Math.round(widths[mode.length] * 1000) + kerf;
    for (let count = Math.floor(room / each); count >= 0; count--) extend([...mode, count], room - count * each);
  };
  extend([], boardWidth + kerf);
  return found.filter(
    (mode) =>
      mode.some((count) => count > 0) && !found.some((other) => other !== mode && mode.every((count, at) => count <= other[at])),
  );
}

/**
 * What comes after a length is a sum of these items' lengths, so a length may be raised until only the longest such sum fits:
 * fewer lengths to tell apart, and nothing lost.
 */
function lift(items: readonly Item[], capacity: number): (length: number) => number {
  const unit = items.reduce((divisor, { length }) => greatestDivisor(divisor, length), capacity);
  const reached = new Uint8Array(capacity / unit + 1);
  reached[0] = 1;
  for (const { length, most } of items) {
    const used = new Uint16Array(reached.length);
    const step = length / unit;
    for (let at = step; at < reached.length; at++) {
      if (reached[at] === 1 || reached[at - step] === 0 || used[at - step] === most) continue;
      reached[at] = 1;
      used[at] = used[at - step] + 1;
    }
  }
  const longest = new Float64Array(reached.length);
  for (let at = 1; at < reached.length; at++) longest[at] = reached[at] === 1 ? at : longest[at - 1];
  return (length) => capacity - longest[Math.floor((capacity - length) / unit)] * unit;
}

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));

/** Every way to lay the items end to end, long ones first, as arcs between the lengths reached. */
function flow(
  name: string,
  starts: readonly number[],
  items: readonly Item[],
  capacity: number,
  raise: (length: number) => number,
) {
  const nodes = new Set(starts);
  const arcs: Arc[] = [];
  items.forEach((item, index) => {
    const tried = new Set<number>();
    let layer: Iterable<number> = [...nodes];
    for (let count = 0; count < item.most; count++) {
      const next: number[] = [];
      for (const from of layer) {
        if (tried.has(from) || from + item.length > capacity) continue;
        tried.add(from);
        const to = raise(from + item.length);
        arcs.push({ from, to, item, name: `${name}_${from}_${index}` });
        nodes.add(to);
        next.push(to);
      }
      layer = next;
    }
  });
  const [into, out] = [new Map<number, string[]>(), new Map<number, string[]>()];
  for (const arc of arcs) {
    into.set(arc.to, [...(into.get(arc.to) ?? []), arc.name]);
    out.set(arc.from, [...(out.get(arc.from) ?? []), arc.name]);
  }
  return {
    nodes: [...nodes].sort((a, b) => a - b),
    arcs,
    arriving: (node: number): string[] => into.get(node) ?? [],
    leaving: (node: number): string[] => out.get(node) ?? [],
  };
}
