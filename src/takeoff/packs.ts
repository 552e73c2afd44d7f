/** Whole packs for a quantity. A billionth is allowed, so that 180 m of 90 m rolls is two, not three. */
export const packsOf = (quantity: number, perPack: number): number => Math.max(0, Math.ceil(quantity / perPack - 1e-9));

/** The smallest pack that holds it all, or else as many of the largest as it takes. */
export function packFor(quantity: number, sizes: readonly number[]): number {
  const order = [...sizes].sort((a, b) => a - b);
  return order.find((size) => size >= quantity) ?? order[order.length - 1];
}

/** To so many decimals, for a person to read. */
export function rounded(quantity: number, decimals: 1 | 2 | 3): number {
  const scale = [10, 100, 1000][decimals - 1];
  return Math.round(quantity * scale) / scale;
}
