/**
 * A weight for every length such that lengths which fit into a board together never weigh more than `most`, the weight of the
 * whole board: then pieces need at least their weight over `most` boards. The weights are whole numbers, never fall with length,
 * and two lengths never weigh more than one as long as both, so that a shorter board carries at most the weight of its length.
 */
export interface LengthWeight {
  readonly family: 'length' | 'forgetting' | 'rounded' | 'counted';
  /** Lengths below this are forgotten, and those that leave less than this count as a whole board; 0: none. */
  readonly least: number;
  /** `rounded`: parts that the board is divided into. `counted`: the length that is counted. */
  readonly unit: number;
}

/** The weight of a length in a board of `capacity`, both including one cut. */
export function weightOf({ family, least, unit }: LengthWeight, length: number, capacity: number): number {
  const seen = length < least ? 0 : length > capacity - least ? capacity : length;
  if (family === 'rounded') {
    const whole = Math.floor((unit * seen) / capacity);
    return whole * capacity === unit * seen ? whole * (unit - 1) : whole * unit;
  }
  if (family === 'counted') {
    const all = Math.floor(capacity / unit);
    if (2 * seen === capacity) return all;
    return 2 * (2 * seen < capacity ? Math.floor(seen / unit) : all - Math.floor((capacity - seen) / unit));
  }
  return seen;
}

/** Most lengths that are tried as a limit or a unit. */
const MOST_LIMITS = 16;
const PARTS = 8;

/**
 * Dual-feasible functions for these sizes: the length itself; the length with small pieces forgotten and large ones rounded up
 * (Martello and Toth, Knapsack Problems, 1990); the rounded functions of Fekete and Schepers; and those of Carlier, Clautiaux
 * and Moukrim, in the forms given in the survey of Clautiaux, Alves and Valério de Carvalho, Annals of Operations Research 179
 * (2010), from memory.
 */
export function lengthWeights(sizes: readonly number[], capacity: number): LengthWeight[] {
  const limits = fewer(
    [...new Set(sizes.flatMap((size) => [size, capacity - size, capacity - size + 1]))]
      .filter((size) => size > 0 && 2 * size <= capacity)
      .sort((a, b) => a - b),
  );
  const parts = Array.from({ length: PARTS }, (_, index) => index + 2);
  return [
    { family: 'length', least: 0, unit: 0 },
    ...limits.map((least) => ({ family: 'forgetting' as const, least, unit: 0 })),
    ...parts.map((unit) => ({ family: 'rounded' as const, least: 0, unit })),
    ...limits.map((unit) => ({ family: 'counted' as const, least: 0, unit })),
  ];
}

function fewer(limits: readonly number[]): readonly number[] {
  if (limits.length <= MOST_LIMITS) return limits;
  return Array.from({ length: MOST_LIMITS }, (_, k) => limits[Math.floor((k * (limits.length - 1)) / (MOST_LIMITS - 1))]);
}
