import { type Cells, cellsFor, fillingOf, heaviestFor } from './heaviestBoard.js';
import type { Blank } from './waysToCut.js';

/** Pieces that a board may be cut into, by kind: widths, lengths with one cut, and what each is worth. */
export interface Worth {
  readonly widths: readonly number[];
  /** Whether nothing goes beside it. */
  readonly alone: readonly boolean[];
  readonly sizes: readonly number[];
  readonly values: Float64Array;
}

/** The most that one board can be worth, and its pieces: how many of each kind. */
export interface HeaviestCut {
  readonly value: number;
  readonly counts: Int32Array;
  /** No cut is worth more: the value itself, unless the lengths were too many to compare. */
  readonly most: number;
  /** What it took, in thousands of comparisons, about. */
  readonly work: number;
}

/** Kinds that are worth something, the most for their length first; none that another serves better. */
interface Lane {
  readonly kinds: readonly number[];
  readonly sizes: readonly number[];
  readonly values: readonly number[];
  /** The least size among this kind and those after it. */
  readonly least: readonly number[];
  readonly density: number;
}

interface Filling {
  readonly value: number;
  readonly kinds: readonly number[];
}

/** Strips side by side: how many of each filling. */
interface Block {
  readonly value: number;
  readonly counts: readonly number[];
  readonly fillings: readonly Filling[];
}

const NO_BLOCK: Block = { value: 0, counts: [], fillings: [] };

/** Adds the pieces of a block to those counted. */
function addBlock(into: Int32Array, { counts, fillings }: Block): void {
  for (const [at, count] of counts.entries()) for (const kind of fillings[at].kinds) into[kind] += count;
}

/** Fillings that are compared one by one before every length is looked at. */
const MOST_COMPARED = 1000;
const COMPARED_FOR_MIX = 10;

/**
 * Cuts a board so that its pieces are worth most: whole pieces from one end, the rest of its length in strips side by side, a
 * strip as wide as its widest piece. Every such cutting is considered.
 */
export function heaviestCut(blank: Blank, worth: Worth): HeaviestCut {
  const whole = laneOf(worth, (kind) => worth.alone[kind]);
  const strips = stripsOf(blank, worth);
  const budget = { left: MOST_COMPARED };
  const { value, counts } = compareFillings(blank, whole, strips, { worth, budget });
  const work = (MOST_COMPARED - Math.max(0, budget.left)) / 10;
  if (budget.left > 0) return { value, counts, most: value, work };
  const every = everyLength(blank, whole, strips, worth);
  const all = { most: every.value, work: work + every.work };
  return every.exact ? { value: every.value, counts: every.counts, ...all } : { value, counts, ...all };
}

interface Budget {
  left: number;
}

interface Counted {
  readonly value: number;
  readonly counts: Int32Array;
}

function compareFillings(
  blank: Blank,
  whole: Lane,
  strips: Strips,
  { worth, budget }: { readonly worth: Worth; readonly budget: Budget },
): Counted {
  let best: { readonly value: number; readonly taken: readonly number[]; readonly block: Block } = {
    value: 0,
    taken: [],
    block: NO_BLOCK,
  };
  const taken: number[] = [];
  const along = Math.max(whole.density, strips.density);
  const consider = (value: number, rest: number): void => {
    if (value + rest * strips.density <= best.value) return;
    const block = strips.density === 0 ? NO_BLOCK : strips.block(rest, budget);
    if (value + block.value > best.value) best = { value: value + block.value, taken: [...taken], block };
  };
  const fill = (from: number, value: number, rest: number): void => {
    budget.left--;
    consider(value, rest);
    for (let at = from; at < whole.kinds.length && budget.left > 0; at++) {
      if (rest < whole.least[at]) return;
      const size = whole.sizes[at];
      if (size > rest) continue;
      const reach = strips.density === 0 ? whole.values[at] / size : along;
      if (value + rest * reach <= best.value) return;
      taken.push(whole.kinds[at]);
      fill(at, value + whole.values[at], rest - size);
      taken.pop();
    }
  };
  fill(0, 0, blank.length);
  const counts = new Int32Array(worth.sizes.length);
  for (const kind of best.taken) counts[kind]++;
  addBlock(counts, best.block);
  return { value: best.value, counts };
}

/** The same by the most that each length of board can be worth, in cells; exact where the cells lose nothing. */
function everyLength(
  blank: Blank,
  whole: Lane,
  strips: Strips,
  worth: Worth,
): Counted & { readonly exact: boolean; readonly work: number } {
  const lanes = [whole, ...strips.lanes];
  const all = Float64Array.from(lanes.flatMap(({ sizes }) => sizes));
  const { cell, capacity } = cellsFor(all, blank.length);
  const cells = lanes.map(
    ({ sizes }): Cells => ({ cell, capacity, sizes: Int32Array.from(sizes, (size) => Math.floor(size / cell)) }),
  );
  const narrow = strips.lanes.map(({ values }, at) => heaviestFor(cells[at + 1], Float64Array.from(values)));
  const mixOf = (room: number) => strips.mix(narrow.map(({ weight }) => weight[room]));
  const rest = narrow.length === 0 ? undefined : new Float64Array(capacity + 1);
  for (let room = 1; rest !== undefined && room <= capacity; room++) {
    const same = narrow.every(({ weight }) => weight[room] === weight[room - 1]);
    rest[room] = same ? rest[room - 1] : mixOf(room).value;
  }
  const board = heaviestFor(cells[0], Float64Array.from(whole.values), rest);
  const filling = fillingOf(cells[0], board, capacity);
  const counts = new Int32Array(worth.sizes.length);
  for (const at of filling.pieces) counts[whole.kinds[at]]++;
  if (filling.rest > 0) {
    const fillings = narrow.map((lane, at): Filling => {
      const { pieces } = fillingOf(cells[at + 1], lane, filling.rest);
      return { value: 0, kinds: pieces.map((each) => strips.lanes[at].kinds[each]) };
    });
    addBlock(counts, { value: 0, counts: mixOf(filling.rest).counts, fillings });
  }
  return {
    value: board.weight[capacity],
    counts,
    exact: all.every((size) => size % cell === 0),
    work: (capacity * (all.length + 5)) / 1000,
  };
}

function laneOf({ sizes, values }: Worth, may: (kind: number) => boolean): Lane {
  const kinds: number[] = [];
  for (let kind = 0; kind < sizes.length; kind++) {
    if (values[kind] > 0 && sizes[kind] < Infinity && may(kind)) kinds.push(kind);
  }
  kinds.sort((a, b) => sizes[a] - sizes[b] || values[b] - values[a] || a - b);
  const worthTaking: number[] = [];
  let most = 0;
  for (const kind of kinds) {
    if (values[kind] <= most) continue;
    most = values[kind];
    worthTaking.push(kind);
  }
  worthTaking.sort((a, b) => values[b] * sizes[a] - values[a] * sizes[b] || sizes[b] - sizes[a]);
  const least = worthTaking.map((kind) => sizes[kind]);
  for (let at = least.length - 2; at >= 0; at--) least[at] = Math.min(least[at], least[at + 1]);
  return {
    kinds: worthTaking,
    sizes: worthTaking.map((kind) => sizes[kind]),
    values: worthTaking.map((kind) => values[kind]),
    least,
    density: worthTaking.length === 0 ? 0 : values[worthTaking[0]] / sizes[worthTaking[0]],
  };
}

/** The heaviest filling of one strip. */
function fillLane({ kinds, sizes, values, least }: Lane, length: number, budget: Budget): Filling {
  let best = 0;
  let found: number[] = [];
  const taken: number[] = [];
  const fill = (from: number, value: number, rest: number): void => {
    budget.left--;
    if (value > best) {
      best = value;
      found = [...taken];
    }
    for (let at = from; at < kinds.length && budget.left > 0; at++) {
      if (rest < least[at]) return;
      const size = sizes[at];
      if (size > rest) continue;
      if (value + rest * (values[at] / size) <= best) return;
      taken.push(kinds[at]);
      fill(at, value + values[at], rest - size);
      taken.pop();
    }
  };
  fill(0, 0, length);
  return { value: best, kinds: found };
}

interface Strips {
  /** Per width of strip, the narrowest first. */
  readonly lanes: readonly Lane[];
  /** The most that a length of board can be worth in strips, for its length. */
  readonly density: number;
  /** How many strips of each width lie side by side on a board, to be worth most. */
  readonly mix: (values: readonly number[]) => { readonly value: number; readonly counts: readonly number[] };
  /** The best set of strips in a length. */
  readonly block: (length: number, budget: Budget) => Block;
}

const NO_STRIPS: Strips = { lanes: [], density: 0, mix: () => ({ value: 0, counts: [] }), block: () => NO_BLOCK };

function stripsOf(blank: Blank, worth: Worth): Strips {
  const found = new Set<number>();
  for (let kind = 0; kind < worth.widths.length; kind++) {
    if (worth.values[kind] > 0 && worth.sizes[kind] < Infinity && !worth.alone[kind]) found.add(worth.widths[kind]);
  }
  if (found.size === 0) return NO_STRIPS;
  const widths = [...found].sort((a, b) => a - b);
  const lanes = widths.map((width) => laneOf(worth, (kind) => !worth.alone[kind] && worth.widths[kind] <= width));
  const mix = sideBySide(blank, widths);
  const known = new Map<number, Block>();
  return {
    lanes,
    mix,
    density: mix(lanes.map((lane) => lane.density)).value,
    block: (length, budget) => {
      const before = known.get(length);
      if (before !== undefined) return before;
      budget.left -= COMPARED_FOR_MIX;
      const fillings = lanes.map((lane) => fillLane(lane, length, budget));
      const { value, counts } = mix(fillings.map((filling) => filling.value));
      const block = { value, counts, fillings };
      known.set(length, block);
      return block;
    },
  };
}

/** The heaviest mix of strips of these widths across a board; one strip at least, whatever the kerf. */
function sideBySide({ width, kerf }: Blank, widths: readonly number[]): Strips['mix'] {
  const across = width + kerf;
  return (values) => {
    let best = { value: 0, counts: widths.map(() => 0) };
    const counts = widths.map(() => 0);
    const add = (at: number, room: number, value: number): void => {
      if (at < 0) {
        if (value > best.value) best = { value, counts: [...counts] };
        return;
      }
      const [fewest, most] = strips(at, room);
      for (let count = values[at] > 0 ? most : 0; count >= (values[at] > 0 ? fewest : 0); count--) {
        counts[at] = count;
        add(at - 1, room - count * (widths[at] + kerf), value + count * values[at]);
      }
      counts[at] = 0;
    };
    /** Of the narrowest, as many as there is room for. */
    const strips = (at: number, room: number): readonly [number, number] => {
      const most = Math.max(Math.floor(room / (widths[at] + kerf)), room === across ? 1 : 0);
      return [at === 0 ? most : 0, most];
    };
    add(widths.length - 1, across, 0);
    return best;
  };
}
