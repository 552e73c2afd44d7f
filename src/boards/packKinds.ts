import type { PieceKind } from './pieceKinds.js';
import { servesInPlace } from './servedKinds.js';
import type { Stock } from './stocksOf.js';
import { blankOf, type Way, waysToCut } from './waysToCut.js';

/**
 * What one board gives: pieces of its whole width one after another from its low end, the rest of its length in strips side by
 * side. A strip is as wide as its first piece; narrower ones may follow in it. Pieces are told by kind.
 */
export interface KindsOnBoard {
  readonly stock: number;
  readonly whole: readonly number[];
  readonly strips: readonly { readonly width: number; readonly kinds: readonly number[] }[];
}

/** The boards there may be: what those of each stock count for, and the most that all may come to. */
export interface BoardLimits {
  readonly caps: readonly { readonly of: readonly number[]; readonly most: number }[];
  /** Per stock. */
  readonly available: readonly number[];
}

/** A count of steps that several searches may share. */
export interface Steps {
  left: number;
}

/** Placings of a piece that count for one step of a search. */
export const PLACINGS_OF_STEP = 3;

/** How much of a board a kind takes, such that what fits on a board together never takes more than it has. */
export interface Shares {
  readonly kinds: Float64Array;
  readonly boards: readonly number[];
}

/** What pieces take of a board by their lengths times widths. */
export const areaOf = ({ stocks }: { readonly stocks: readonly Stock[] }, kinds: readonly PieceKind[]): Shares => ({
  kinds: new Float64Array(kinds.map(({ size, width }) => size * width)),
  boards: stocks.map(({ length, width, kerf }) => (length + kerf) * (width + kerf)),
});

/**
 * Cuts pieces from at most so many boards. Board after board is cut for the largest piece that is left, the ways that waste
 * least first, and only ways to which no other piece could be added: nothing else needs to be tried. What is left after some
 * boards and could not be cut from the rest is remembered in `failed`, also for other pieces of the same kinds.
 *
 * @returns the boards; `none` when there is no way; `unknown` when the steps ran out first
 */
export function packKinds(
  stocks: readonly Stock[],
  kinds: readonly PieceKind[],
  counts: Int32Array,
  limits: BoardLimits,
  shares: readonly Shares[],
  steps: Steps,
  failed = new Set<string>(),
): readonly KindsOnBoard[] | 'none' | 'unknown' {
  const wanted = wantedOf(kinds, stocks, counts, shares, limits);
  if (wanted.measures.some(({ slack }) => slack < 0)) return 'none';
  const packing: Packing = {
    stocks,
    wanted,
    caps: limits.caps,
    spare: limits.caps.map(({ most }) => most),
    available: [...limits.available],
    failed,
    chosen: [],
    steps,
    sure: true,
  };
  const isCut = cut(
    packing,
    wanted.measures.map(({ slack }) => slack),
  );
  if (!isCut) return packing.sure ? 'none' : 'unknown';
  return packing.chosen.map(({ stock, way }) => ({
    stock,
    whole: way.whole.map((at) => wanted.kinds[at]),
    strips: way.strips.map((strip) => ({ width: strip.width, kinds: strip.kinds.map((at) => wanted.kinds[at]) })),
  }));
}

/** The kinds of pieces that are wanted, told by their place among these. */
interface WantedKinds {
  readonly kinds: readonly number[];
  readonly widths: readonly number[];
  /** Per stock. */
  readonly alone: readonly (readonly boolean[])[];
  /** Per stock. */
  readonly sizes: readonly (readonly number[])[];
  readonly left: number[];
  readonly share: readonly number[];
  /** Per kind: those before it that can be cut down to it in their place, whatever board that is on. */
  readonly greater: readonly (readonly number[])[];
  /** The measures that say most, the one that says most first. */
  readonly measures: readonly Measure[];
}

/** What pieces and boards come to by some shares. */
interface Measure {
  readonly share: readonly number[];
  /** Per stock. */
  readonly boards: readonly number[];
  /** How much of all boards may go to waste. */
  readonly slack: number;
  readonly filled: number;
}

/** Prices of boards are divided by what they count for, which is not exact. */
const HAIR = 1e-9;
/** Measures by which what is left is held against the boards that are left. */
const MOST_MEASURES = 8;

/** Kinds that are there at all, measured by the shares and caps that fill boards most. */
function wantedOf(
  kinds: readonly PieceKind[],
  stocks: readonly Stock[],
  counts: Int32Array,
  shares: readonly Shares[],
  { caps }: BoardLimits,
): WantedKinds {
  const present: number[] = [];
  for (let kind = 0; kind < counts.length; kind++) if (counts[kind] > 0) present.push(kind);
  const measures = shares
    .flatMap((each): Measure[] => {
      let total = 0;
      for (const kind of present) total += each.kinds[kind] * counts[kind];
      return caps
        .filter(({ of }) => of.every((one) => one > 0))
        .map(({ of, most }) => {
          const perUnit = Math.max(...of.map((one, stock) => each.boards[stock] / one));
          const capacity = perUnit * most;
          return {
            share: present.map((kind) => each.kinds[kind]),
            boards: of.map((one) => one * perUnit),
            slack: capacity * (1 + HAIR) - total,
            filled: total / capacity,
          };
        });
    })
    .sort((a, b) => b.filled - a.filled)
    .slice(0, MOST_MEASURES);
  return {
    kinds: present,
    widths: present.map((kind) => kinds[kind].width),
    alone: stocks.map((_, stock) => present.map((kind) => kinds[kind].alone[stock])),
    sizes: stocks.map((_, stock) => present.map((kind) => kinds[kind].sizes[stock])),
    left: present.map((kind) => counts[kind]),
    share: measures[0]?.share ?? present.map((kind) => shares[0].kinds[kind]),
    greater: present.map((kind, at) =>
      [...present.slice(0, at).keys()].filter((before) => servesInPlace(kinds[present[before]], kinds[kind])),
    ),
    measures,
  };
}

interface Packing {
  readonly stocks: readonly Stock[];
  readonly wanted: WantedKinds;
  readonly caps: BoardLimits['caps'];
  /** Per cap: what is left of it. */
  readonly spare: number[];
  readonly available: number[];
  /** Sets of pieces that were left and could not be cut from the boards that were. */
  readonly failed: Set<string>;
  readonly chosen: { readonly stock: number; readonly way: Way }[];
  readonly steps: Steps;
  sure: boolean;
}

/** Cuts what is left, of which no more than `slack` may go to waste by each measure. */
function cut(packing: Packing, slack: readonly number[]): boolean {
  const { stocks, wanted, caps, spare, available, failed } = packing;
  const first = wanted.left.findIndex((count) => count > 0);
  if (first < 0) return true;
  const key = keyOf(packing);
  if (failed.has(key)) return false;
  const wasSure = packing.sure;
  packing.sure = true;
  for (let stock = 0; stock < stocks.length; stock++) {
    if (available[stock] <= 0 || wanted.sizes[stock][first] === Infinity) continue;
    if (caps.some(({ of }, at) => of[stock] > spare[at])) continue;
    if (cutOne(packing, stock, first, slack)) return true;
  }
  if (packing.sure) failed.add(key);
  packing.sure &&= wasSure;
  return false;
}

function keyOf({ wanted: { kinds, left }, spare, available }: Packing): string {
  let key = `${spare.join(' ')};${available.join(' ')};`;
  for (let at = 0; at < left.length; at++) if (left[at] > 0) key += `${kinds[at]}x${left[at]} `;
  return key;
}

function cutOne(packing: Packing, stock: number, first: number, slack: readonly number[]): boolean {
  const { stocks, wanted, caps, spare, available, chosen, steps } = packing;
  const { ways, all, placings } = waysToCut(
    blankOf(stocks[stock]),
    { ...wanted, sizes: wanted.sizes[stock], alone: wanted.alone[stock] },
    first,
  );
  packing.sure &&= all;
  steps.left -= placings;
  available[stock]--;
  for (const [at, { of }] of caps.entries()) spare[at] -= of[stock];
  for (const way of ways) {
    const left = wanted.measures.map((measure, at) => slack[at] - wasteOf(way, measure, stock));
    if (left.some((each) => each < 0)) continue;
    if (steps.left <= 0) {
      packing.sure = false;
      break;
    }
    take(wanted.left, way, -1);
    chosen.push({ stock, way });
    if (cut(packing, left)) return true;
    chosen.pop();
    take(wanted.left, way, 1);
  }
  available[stock]++;
  for (const [at, { of }] of caps.entries()) spare[at] += of[stock];
  return false;
}

function wasteOf({ counts }: Way, { share, boards }: Measure, stock: number): number {
  let waste = boards[stock];
  for (let at = 0; at < counts.length; at++) waste -= counts[at] * share[at];
  return waste;
}

function take(left: number[], { counts }: Way, sign: 1 | -1): void {
  for (let at = 0; at < counts.length; at++) left[at] += sign * counts[at];
}
