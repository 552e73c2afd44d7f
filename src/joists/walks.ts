/**
 * Partial placings on their way across the room, each the state of a Kalman filter. Their numbers lie in flat arrays, one row a
 * walk: a search makes thousands of them, and objects would cost more than the sums.
 */
export interface Walks {
  count: number;
  /** Rows of the numbers listed in {@link OF_STATE}. */
  readonly state: Float64Array;
  /** Rows of the whole numbers listed in {@link OF_FACTS}. */
  readonly facts: Int32Array;
}

/**
 * `A`: place of the walk's joist at the middle of the room, mm; `T`: spacing, mm; `B`: slope, mm in a metre; then their covariance.
 * `SCORE` is the logarithm of the walk's probability, `OFF` the widths by which its last reading is off the middle.
 */
export const OF_STATE = { SCORE: 0, A: 1, T: 2, B: 3, AA: 4, AT: 5, AB: 6, TT: 7, TB: 8, BB: 9, OFF: 10 } as const;
export const STATE = 11;

/**
 * Family, number of the walk's joist counted from the first one read, how many joists have been read, the last and the first
 * reading that lie on a joist (-1: none yet), the step in the history, and whether the newest reading lies on a joist (`PLACED`) and
 * is the second timber of a doubled one (`DOUBLES`).
 */
export const OF_FACTS = { FAMILY: 0, JOIST: 1, MARKED: 2, LAST: 3, FIRST: 4, STEP: 5, PLACED: 6, DOUBLES: 7 } as const;
export const FACTS = 8;

export const roomFor = (walks: number): Walks => ({
  count: 0,
  state: new Float64Array(walks * STATE),
  facts: new Int32Array(walks * FACTS),
});

/** Copies one walk to the end of other walks; its row there, or -1 when they are full. */
export function addCopy(to: Walks, from: Walks, walk: number): number {
  const row = to.count;
  if ((row + 1) * STATE > to.state.length) return -1;
  for (let i = 0; i < STATE; i++) to.state[row * STATE + i] = from.state[walk * STATE + i];
  for (let i = 0; i < FACTS; i++) to.facts[row * FACTS + i] = from.facts[walk * FACTS + i];
  to.count = row + 1;
  return row;
}
