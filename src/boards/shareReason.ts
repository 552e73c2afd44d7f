import type { BestLayout, Proof } from './bestLayout.js';

/** Parts of a board in which pieces may be told, and the words for them. */
const PARTS: readonly (readonly [number, string])[] = [
  [1, 'a whole board'],
  [2, 'half a board'],
  [3, 'a third of a board'],
  [4, 'a quarter of a board'],
];

/**
 * The proof of a number of boards in words, where its prices come to plain parts of a board: pieces that leave no use for the
 * rest count for a whole board, those of which no three share one for a half, and so on.
 */
export function shareReason({ space, laid }: BestLayout, proofs: readonly Proof[], boards: number): string | undefined {
  const prices = proofs.find((proof) => proof.space === space)?.prices;
  if (prices === undefined) return undefined;
  const whole = Math.max(...prices.boards);
  const counted = PARTS.map(() => 0);
  let sum = 0;
  for (const { kinds, counts } of laid.paths) {
    for (const [at, kind] of kinds.entries()) {
      const price = prices.kinds[kind];
      sum += price * counts[at];
      const part = PARTS.findIndex(([of]) => price * of === whole);
      if (part >= 0) counted[part] += counts[at];
      else if (price > 0) return undefined;
    }
  }
  if (Math.ceil(sum / whole) !== boards) return undefined;
  const told = PARTS.flatMap(([, words], part) =>
    counted[part] === 0 ? [] : [`${counted[part]} take ${words}${counted[part] === 1 ? '' : ' each'}`],
  );
  return `Of the pieces ${told.join(', ')}: together ${boards} boards, and other divisions of the rows come to no less.`;
}
