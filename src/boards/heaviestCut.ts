import { countFilling, type Fillings, fillingWithin, heaviestFillings, type Lane } from './heaviestFillings.js';
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
  /** No cut is worth more: the value itself, unless there were too many fillings to compare. */
  readonly most: number;
  /** What it took, in thousands of comparisons, about. */
  readonly work: number;
}

/** Fillings of one length that are compared before lengths are rounded, and parts of the board that they are rounded to then. */
const MOST_FILLINGS = 9000;
const PARTS = 8192;

/**
 * Cuts a board so that its pieces are worth most: whole pieces from one end, the rest of its length in strips side by side, a
 * strip as wide as its widest piece. Every such cutting is considered.
 */
export function heaviestCut(blank: Blank, worth: Worth): HeaviestCut {
  const exact = cutWith(blank, worth, worth.sizes);
  if (exact !== undefined) return { ...exact, most: exact.value };
  // Shorter pieces can be worth no less, and longer ones can be cut whatever the rest.
  const part = Math.ceil(blank.length / PARTS);
  const shorter = worth.sizes.map((size) => Math.floor(size / part) * part);
  const longer = worth.sizes.map((size) => Math.ceil(size / part) * part);
  const [over, sure] = [shorter, longer].map((sizes) => cutWith(blank, worth, sizes) as Cut);
  return { ...sure, most: over.value, work: sure.work + over.work };
}

type Cut = Omit<HeaviestCut, 'most'>;

function cutWith(blank: Blank, worth: Worth, sizes: readonly number[]): Cut | undefined {
  const fill = (lane: Lane): Fillings | undefined => heaviestFillings(lane, blank.length, MOST_FILLINGS);
  const widths = stripWidths(worth);
  const whole = fill(laneOf(worth, sizes, blank.length, (kind) => worth.alone[kind]));
  const lanes = widths.map((width) =>
    laneOf(worth, sizes, blank.length, (kind) => !worth.alone[kind] && worth.widths[kind] <= width),
  );
  const strips = lanes.map(fill).filter((lane) => lane !== undefined);
  if (whole === undefined || strips.length < lanes.length) return undefined;
  const mix = sideBySide(blank, widths);
  const density = mix(lanes.map(densityOf)).value;
  let best: Best = { value: -1, filling: 0, beside: [] };
  for (let at = whole.kept.length - 1; at >= 0; at--) {
    const filling = whole.kept[at];
    const room = blank.length - whole.lengths[filling];
    if (whole.values[filling] + (density > 0 ? room * density * ALMOST : 0) <= best.value) continue;
    const fillings = strips.map((lane) => fillingWithin(lane, room));
    const { value, counts } = mix(fillings.map((each, lane) => strips[lane].values[each]));
    const sum = whole.values[filling] + value;
    if (sum > best.value) best = { value: sum, filling, beside: fillings.map((each, lane) => [each, counts[lane]]) };
  }
  const counts = new Int32Array(sizes.length);
  countFilling(whole, best.filling, 1, counts);
  for (const [lane, [filling, times]] of best.beside.entries()) countFilling(strips[lane], filling, times, counts);
  const compared = strips.reduce((sum, lane) => sum + lane.compared, whole.compared + whole.kept.length);
  return { value: best.value, counts, work: compared / 1000 };
}

/** The pieces that lie alone, and per width the filling of a strip and how many there are of it. */
interface Best {
  readonly value: number;
  readonly filling: number;
  readonly beside: readonly (readonly [filling: number, times: number])[];
}

/** A little more than one, for densities are rounded. */
const ALMOST = 1 + 1e-12;

const densityOf = ({ sizes, values }: Lane): number => sizes.reduce((most, size, at) => Math.max(most, values[at] / size), 0);

/** Widths of strips that are worth cutting, the narrowest first. */
function stripWidths({ widths, values, sizes, alone }: Worth): number[] {
  const found = new Set<number>();
  for (let kind = 0; kind < widths.length; kind++) {
    if (values[kind] > 0 && sizes[kind] < Infinity && !alone[kind]) found.add(widths[kind]);
  }
  return [...found].sort((a, b) => a - b);
}

/** Kinds that are worth more than every shorter one, the longest first. */
function laneOf({ values }: Worth, sizes: readonly number[], length: number, may: (kind: number) => boolean): Lane {
  const kinds: number[] = [];
  for (let kind = 0; kind < sizes.length; kind++) if (values[kind] > 0 && sizes[kind] <= length && may(kind)) kinds.push(kind);
  kinds.sort((a, b) => sizes[a] - sizes[b] || values[b] - values[a] || a - b);
  let most = 0;
  const worthTaking = kinds.filter((kind) => {
    const more = values[kind] > most;
    if (more) most = values[kind];
    return more;
  });
  worthTaking.reverse();
  return {
    kinds: worthTaking,
    sizes: worthTaking.map((kind) => sizes[kind]),
    values: worthTaking.map((kind) => values[kind]),
  };
}

/** The heaviest mix of strips of these widths across a board; one strip at least, whatever the kerf. */
function sideBySide({ width, kerf }: Blank, widths: readonly number[]) {
  const across = width + kerf;
  return (values: readonly number[]): { readonly value: number; readonly counts: readonly number[] } => {
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
