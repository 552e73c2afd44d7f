/**
 * Weights for lengths such that what fits into one board never weighs more than `most`: then a set of pieces needs at least
 * its weight over `most` boards. Whole numbers throughout.
 */
export interface LengthWeights {
  /** Weight of each of the sizes that were asked about. */
  readonly of: readonly number[];
  readonly most: number;
}

/**
 * Dual-feasible functions for pieces of these sizes and a board of `capacity`, both including one cut: the length itself; the
 * length with small pieces forgotten and large ones rounded up (Martello and Toth, Knapsack Problems, 1990); the rounded
 * functions of Fekete and Schepers, and of Carlier, Clautiaux and Moukrim, in the forms given in the survey of Clautiaux, Alves
 * and Valério de Carvalho, Annals of Operations Research 179 (2010), from memory.
 */
export function lengthWeights(sizes: readonly number[], capacity: number): LengthWeights[] {
  const small = [...new Set(sizes.flatMap((size) => [size, capacity - size, capacity - size + 1]))]
    .filter((size) => size > 0 && 2 * size <= capacity)
    .sort((a, b) => a - b);
  const families = [
    { of: sizes, most: capacity },
    ...small.map((least) => forgetting(sizes, capacity, least)),
    ...Array.from({ length: 12 }, (_, index) => roundedDown(sizes, capacity, index + 2)),
    ...small.map((unit) => counted(sizes, capacity, unit)),
  ];
  const seen = new Set<string>();
  return families.filter(({ of, most }) => {
    const key = of.map((weight) => Math.round((weight / most) * 1e9)).join(' ');
    return !seen.has(key) && seen.add(key);
  });
}

function forgetting(sizes: readonly number[], capacity: number, least: number): LengthWeights {
  return { of: sizes.map((size) => (size < least ? 0 : size > capacity - least ? capacity : size)), most: capacity };
}

/** `parts` times the size in capacities, rounded down to whole parts of one fewer; exact parts count in full. */
function roundedDown(sizes: readonly number[], capacity: number, parts: number): LengthWeights {
  const of = sizes.map((size) => {
    const whole = Math.floor((parts * size) / capacity);
    return whole * capacity === parts * size ? whole * (parts - 1) : whole * parts;
  });
  return { of, most: parts * (parts - 1) };
}

/** How many units a piece takes, or, over half a board, how many it leaves no room for. */
function counted(sizes: readonly number[], capacity: number, unit: number): LengthWeights {
  const all = Math.floor(capacity / unit);
  const of = sizes.map((size) => {
    if (2 * size === capacity) return all;
    return 2 * (2 * size < capacity ? Math.floor(size / unit) : all - Math.floor((capacity - size) / unit));
  });
  return { of, most: 2 * all };
}
