import { countFilling, heaviestFillings } from './heaviestFillings.js';
import type { BestStrips, StripBlock } from './stripBlocks.js';

/** Pieces as wide as a board: lengths with one cut, and what each is worth. */
interface Wholes {
  readonly names: readonly number[];
  readonly sizes: readonly number[];
  readonly values: readonly number[];
}

/** The most that a board can be worth, and its pieces. */
export interface HeaviestBeside {
  readonly value: number;
  readonly block: StripBlock;
  /** Adds its whole pieces to those counted by name. */
  readonly countWholes: (counts: Int32Array) => void;
  /** What it took, in thousands of comparisons, about. */
  readonly work: number;
}

const MOST_FILLINGS = 5000;

/**
 * Cuts a board into whole pieces from one end and strips from the rest of its length, so that it is worth most; nothing where there
 * are too many ways to fill it.
 */
export function heaviestBeside(length: number, { names, sizes, values }: Wholes, beside: BestStrips): HeaviestBeside | undefined {
  const worth = names.map((_, at) => at).filter((at) => values[at] > 0 && sizes[at] <= length);
  worth.sort((a, b) => sizes[a] - sizes[b] || values[b] - values[a] || a - b);
  const fillings = heaviestFillings(
    { names: worth.map((at) => names[at]), sizes: worth.map((at) => sizes[at]), values: worth.map((at) => values[at]) },
    length,
    MOST_FILLINGS,
  );
  if (fillings === undefined) return undefined;
  const { known, kept } = fillings;
  let best = { value: -1, filling: 0, block: undefined as StripBlock | undefined };
  for (let at = kept.length - 1; at >= 0; at--) {
    const { value: more, block } = beside.within(length - known.lengths[kept[at]]);
    const value = known.values[kept[at]] + more;
    if (value > best.value) best = { value, filling: kept[at], block: block() };
  }
  return {
    value: best.value,
    block: best.block as StripBlock,
    countWholes: (counts) => countFilling(fillings, best.filling, 1, counts),
    work: (fillings.compared + kept.length + beside.compared) / 1000,
  };
}
