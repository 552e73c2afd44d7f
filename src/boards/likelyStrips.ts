import { countFilling, type Fillings, fillingWithin, nothingFilled, withOneMore } from './heaviestFillings.js';
import type { BestStrips, StripBlock, StripPieces } from './stripBlocks.js';
import type { Blank } from './waysToCut.js';

/** Sets of strips that are compared. */
const MOST_SETS = 1500;

/**
 * The most that strips side by side can be worth, by what they measure together: no piece is longer than the room, and together they
 * are no larger than what strips of those widths take of a board's width, `across`, by the room. What can be cut from one board is among such sets, and perhaps more.
 * Nothing where there are too many to compare.
 */
export function likelyStrips(
  blank: Blank,
  pieces: StripPieces,
  across: number,
  worthOf: (kind: number) => number,
): BestStrips | undefined {
  const order = [...pieces.names.keys()].sort((a, b) => pieces.sizes[a] - pieces.sizes[b]);
  let fillings: Fillings = nothingFilled();
  const stages = [{ from: 0, fillings }];
  for (const at of order) {
    const item = { name: at, size: pieces.sizes[at] * (pieces.widths[at] + blank.kerf), value: worthOf(pieces.names[at]) };
    for (let copy = 0; copy < pieces.counts[at] && item.value > 0; copy++) {
      const more = withOneMore(fillings, item, blank.length * across, MOST_SETS);
      if (more === undefined) return undefined;
      fillings = more;
    }
    stages.push({ from: pieces.sizes[at], fillings });
  }
  let stage = 0;
  return {
    compared: fillings.compared,
    within: (room) => {
      while (stage + 1 < stages.length && stages[stage + 1].from <= room) stage++;
      const there = stages[stage].fillings;
      const filling = fillingWithin(there, room * across);
      return { value: there.known.values[filling], block: () => blockOf(there, filling, pieces, room) };
    },
  };
}

function blockOf(fillings: Fillings, filling: number, { names }: StripPieces, length: number): StripBlock {
  const counts = new Int32Array(names.length);
  countFilling(fillings, filling, 1, counts);
  const there = [...names.keys()].filter((at) => counts[at] > 0);
  return { length, kinds: there.map((at) => names[at]), counts: there.map((at) => counts[at]) };
}

/** The most that whole strips of these widths take of a board's width. */
export function widestAcross({ width, kerf }: Pick<Blank, 'width' | 'kerf'>, widths: readonly number[]): number {
  const across = width + kerf;
  let sums = new Set([0]);
  for (const each of new Set(widths)) {
    const more = new Set<number>();
    for (const sum of sums) for (let all = sum; all <= across && more.size <= MOST_SETS; all += each + kerf) more.add(all);
    if (more.size > MOST_SETS) return across;
    sums = more;
  }
  return Math.max(...sums);
}
