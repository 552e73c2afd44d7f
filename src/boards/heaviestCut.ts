import { countFilling, type Fillings, fillingWithin, heaviestFillings, nothingFilled } from './heaviestFillings.js';
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
const MOST_FILLINGS = 5000;
const PARTS = 4096;

/**
 * Cuts a board so that its pieces are worth most: whole pieces from one end, the rest of its length in strips side by side, a
 * strip as wide as its widest piece. Every such cutting is considered.
 */
export function heaviestCut(blank: Blank, worth: Worth): HeaviestCut {
  const exact = cutWith(blank, worth);
  if (exact !== undefined) return { ...exact, most: exact.value };
  // Larger pieces can be cut whatever the rest, and smaller ones are worth no less.
  const sure = cutWith(blank, rounded(blank, worth, Math.ceil)) as Cut;
  const smaller = rounded(blank, worth, Math.floor);
  const over = [...smaller.sizes, ...smaller.widths].includes(0) ? undefined : cutWith(blank, smaller);
  return { ...sure, most: over?.value ?? mostByArea(blank, worth), work: sure.work + (over?.work ?? 0) };
}

/** Pieces whose lengths and widths come to whole parts of the board. */
function rounded({ length, width }: Blank, worth: Worth, round: (parts: number) => number): Worth {
  const [along, across] = [Math.ceil(length / PARTS), Math.ceil(width / PARTS)];
  return {
    ...worth,
    sizes: worth.sizes.map((size) => round(size / along) * along),
    widths: worth.widths.map((each) => Math.min(width, round(each / across) * across)),
  };
}

/** No cut is worth more than what is worth most for its area, all over the board. */
function mostByArea({ length, width, kerf }: Blank, { sizes, widths, values }: Worth): number {
  const density = values.reduce((most, value, kind) => Math.max(most, value / (sizes[kind] * (widths[kind] + kerf))), 0);
  return Math.ceil(density * length * (width + kerf) * ALMOST);
}

type Cut = Omit<HeaviestCut, 'most'>;

/** Strips of one width: what fills one of them, and the most that any length of it is worth. */
interface Lane {
  readonly width: number;
  readonly fillings: Fillings;
  readonly density: number;
}

function cutWith(blank: Blank, worth: Worth): Cut | undefined {
  const whole = wholeFillings(blank, worth);
  const lanes = lanesOf(blank, worth);
  if (whole === undefined || lanes === undefined) return undefined;
  const { known, kept } = whole;
  const density = sideBySide(blank, lanes, ({ density: most }) => most)?.value ?? Infinity;
  let best = { value: -1, filling: 0, counts: new Int32Array(lanes.length) };
  for (let at = kept.length - 1; at >= 0; at--) {
    const filling = kept[at];
    const room = blank.length - known.lengths[filling];
    if (known.values[filling] + room * density * ALMOST <= best.value) continue;
    const beside = sideBySide(blank, lanes, ({ fillings }) => fillings.known.values[fillingWithin(fillings, room)]);
    if (beside === undefined) return undefined;
    const value = known.values[filling] + beside.value;
    if (value > best.value) best = { value, filling, counts: beside.counts };
  }
  const counts = new Int32Array(worth.sizes.length);
  countFilling(whole, best.filling, 1, counts);
  const room = blank.length - known.lengths[best.filling];
  for (const [at, { fillings }] of lanes.entries()) {
    if (best.counts[at] > 0) countFilling(fillings, fillingWithin(fillings, room), best.counts[at], counts);
  }
  const last = lanes[lanes.length - 1]?.fillings.compared ?? 0;
  return { value: best.value, counts, work: (whole.compared + last + kept.length * lanes.length) / 1000 };
}

/** A little more than one, for densities are rounded. */
const ALMOST = 1 + 1e-12;

/** Kinds that are worth something and fit, the shortest first. */
function kindsThat({ sizes, values }: Worth, may: (kind: number) => boolean): number[] {
  const kinds: number[] = [];
  for (let kind = 0; kind < sizes.length; kind++) if (values[kind] > 0 && sizes[kind] < Infinity && may(kind)) kinds.push(kind);
  return kinds.sort((a, b) => sizes[a] - sizes[b] || values[b] - values[a] || a - b);
}

const filled = ({ length }: Blank, { sizes, values }: Worth, kinds: readonly number[], before?: Fillings) =>
  heaviestFillings(
    { names: kinds, sizes: kinds.map((kind) => sizes[kind]), values: kinds.map((kind) => values[kind]) },
    length,
    MOST_FILLINGS,
    before,
  );

/** Whole pieces one after another; nothing where there are too many ways. */
export const wholeFillings = (blank: Blank, worth: Worth): Fillings | undefined =>
  filled(
    blank,
    worth,
    kindsThat(worth, (kind) => worth.alone[kind]),
  );

/** Strips that are worth cutting, the narrowest first; what fills one fills a wider one as well. */
function lanesOf(blank: Blank, worth: Worth): Lane[] | undefined {
  const kinds = kindsThat(worth, (kind) => !worth.alone[kind]);
  const widths = [...new Set(kinds.map((kind) => worth.widths[kind]))].sort((a, b) => a - b);
  const lanes: Lane[] = [];
  for (const width of widths) {
    const before = lanes[lanes.length - 1] ?? { fillings: nothingFilled(), density: 0 };
    const own = kinds.filter((kind) => worth.widths[kind] === width);
    const fillings = filled(blank, worth, own, before.fillings);
    if (fillings === undefined) return undefined;
    if (fillings === before.fillings) continue;
    const density = own.reduce((most, kind) => Math.max(most, worth.values[kind] / worth.sizes[kind]), before.density);
    lanes.push({ width, fillings, density });
  }
  return lanes;
}

/** The strips that are worth most side by side on a board: how many of each width. Nothing where there are too many to compare. */
function sideBySide({ width, kerf }: Blank, lanes: readonly Lane[], worthOf: (lane: Lane) => number) {
  const across = width + kerf;
  const [narrowest, ...wider] = lanes;
  const counts = new Int32Array(lanes.length);
  if (narrowest === undefined) return { value: 0, counts };
  const worth = worthOf(narrowest);
  const items = {
    names: wider.map((_, at) => at + 1),
    sizes: wider.map((lane) => lane.width + kerf),
    values: wider.map(worthOf),
  };
  const mixes = heaviestFillings(items, across, MOST_FILLINGS);
  if (mixes === undefined) return;
  let best = { value: -1, mix: 0, narrow: 0 };
  for (const mix of mixes.kept) {
    const narrow = Math.floor((across - mixes.known.lengths[mix]) / (narrowest.width + kerf));
    const value = mixes.known.values[mix] + narrow * worth;
    if (value > best.value) best = { value, mix, narrow };
  }
  countFilling(mixes, best.mix, 1, counts);
  counts[0] = best.narrow;
  return { value: best.value, counts };
}
