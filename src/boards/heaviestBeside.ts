import { type HeaviestCut, type Worth, wholeFillings } from './heaviestCut.js';
import { countFilling } from './heaviestFillings.js';
import type { BestStrips, StripBlock } from './stripBlocks.js';
import type { Blank } from './waysToCut.js';

/** The most that a board can be worth, its whole pieces counted, and its strips. */
export interface HeaviestBeside extends HeaviestCut {
  readonly block: StripBlock;
}

/**
 * Cuts a board into whole pieces from one end and strips from the rest of its length, so that it is worth most; nothing where there
 * are too many ways to fill it.
 */
export function heaviestBeside(blank: Blank, worth: Worth, beside: BestStrips): HeaviestBeside | undefined {
  const fillings = wholeFillings(blank, worth);
  if (fillings === undefined) return undefined;
  const { known, kept } = fillings;
  let best = { value: -1, filling: 0, block: undefined as StripBlock | undefined };
  for (let at = kept.length - 1; at >= 0; at--) {
    const { value: more, block } = beside.within(blank.length - known.lengths[kept[at]]);
    const value = known.values[kept[at]] + more;
    if (value > best.value) best = { value, filling: kept[at], block: block() };
  }
  const { value } = best;
  const counts = new Int32Array(worth.sizes.length);
  countFilling(fillings, best.filling, 1, counts);
  const work = (fillings.compared + kept.length + beside.compared) / 1000;
  return { value, most: value, counts, work, block: best.block as StripBlock };
}
