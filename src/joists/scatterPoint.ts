/**
 * A weighted scatter of what one fit allows: places of the joists' nodes (each joist's centre less its own straying) and the
 * slopes. What a joist strays on its own stays exact: given the node it is normal.
 */
export interface Scatter {
  /** Number of the leftmost joist, counted from the system's origin, and how many there are. */
  readonly first: number;
  readonly joists: number;
  readonly points: number;
  /** Node of joist `j` at point `p`, mm from the near wall, at `p * joists + j`, at mid-length. */
  readonly nodes: Float64Array;
  /** Slope of joist `j` at point `p` is `skew[p] + fan[p] * (first + j)`, mm in a metre. */
  readonly skew: Float64Array;
  readonly fan: Float64Array;
  /** Weight of each point; they add up to 1. */
  readonly weights: Float64Array;
  /** Logarithm of how well the fit foresaw the holes, beside the normal stand-in used in the fit. */
  readonly logHoles: number;
  readonly straying: Straying;
}

/** What a joist strays on its own given its node: `mean = sum(gain * (value - node at v))`, and the variance. */
export interface Straying {
  /** By joist of the scatter: variance, and the observations that bear on it. */
  readonly variance: readonly number[];
  readonly readings: readonly (readonly {
    readonly value: number;
    readonly v: number;
    readonly gain: number;
    readonly variance: number;
  }[])[];
}

/** A scatter before the holes weigh it. */
export type Bare = Omit<Scatter, 'weights' | 'logHoles'>;

/** What joist `j` of a point is expected to stray, mm. */
export function strayOf(scatter: Bare, p: number, j: number): number {
  let stray = 0;
  const slope = scatter.skew[p] + scatter.fan[p] * (scatter.first + j);
  const node = scatter.nodes[p * scatter.joists + j];
  for (const { value, v, gain } of scatter.straying.readings[j]) stray += gain * (value - node - v * slope);
  return stray;
}

/** The joist of a point whose centre is nearest to a place at `v`. */
export function nearestJoist(scatter: Bare, p: number, u: number, v: number): number {
  const { joists, nodes, skew, fan, first } = scatter;
  let best = 0;
  let least = Infinity;
  for (let j = 0; j < joists; j++) {
    const away = Math.abs(nodes[p * joists + j] + v * (skew[p] + fan[p] * (first + j)) - u);
    if (away < least) {
      least = away;
      best = j;
    }
  }
  return best;
}
