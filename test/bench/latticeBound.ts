/**
 * The Cramer-Rao bound of a row of joists when it is known which joist each mark is of, by plain matrix algebra: it shares nothing
 * with the library. The model is `y = place + spacing * s + slope * v + own straying of joist s + what the bays before it added +
 * reading error`, all Gaussian, place, spacing and slope unknown and free.
 */
export interface KnownMark {
  /** Joist number, from 0 at or left of the first mark. */
  readonly joist: number;
  /** Standard deviation of the reading, mm. */
  readonly sd: number;
  /** Place along the joist; 0 when all marks are on one line. */
  readonly along?: number;
}

export interface Straying {
  /** Standard deviations: of each joist on its own, and of what each bay adds; mm. */
  readonly own: number;
  readonly bay: number;
}

export interface Bound {
  /** Standard deviation of the spacing, mm. */
  readonly spacing: number;
  /** Of the place of joist 0, without its own straying. */
  readonly place: number;
  /** Of the even line at a joist: no joist's own straying, no drift. */
  readonly line: (joist: number) => number;
  /** Of the actual centre of a joist, marked or not. */
  readonly joist: (joist: number) => number;
  /** Best estimate of the actual centre of a joist from the marks' values. */
  readonly estimate: (joist: number, values: readonly number[]) => number;
  /** Weighted least squares: place, spacing (and slope). */
  readonly solve: (values: readonly number[]) => readonly number[];
}

type Matrix = readonly (readonly number[])[];

/** Inverse by Gauss and Jordan with pivots. */
export function inverse(matrix: Matrix): number[][] {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(rows[r][c]) > Math.abs(rows[pivot][c])) pivot = r;
    [rows[c], rows[pivot]] = [rows[pivot], rows[c]];
    const by = rows[c][c];
    for (let k = c; k < 2 * n; k++) rows[c][k] /= by;
    for (let r = 0; r < n; r++) {
      const factor = rows[r][c];
      if (r === c || factor === 0) continue;
      for (let k = c; k < 2 * n; k++) rows[r][k] -= factor * rows[c][k];
    }
  }
  return rows.map((row) => row.slice(n));
}

export const times = (a: Matrix, b: Matrix): number[][] =>
  a.map((row) => b[0].map((_, j) => row.reduce((sum, value, k) => sum + value * b[k][j], 0)));
export const turned = (a: Matrix): number[][] => a[0].map((_, j) => a.map((row) => row[j]));
const column = (values: readonly number[]): number[][] => values.map((value) => [value]);

/** Covariance of the marks: reading error, own straying, and the drift that two joists share. */
export const covarianceOf = (marks: readonly KnownMark[], { own, bay }: Straying): number[][] =>
  marks.map((a, i) =>
    marks.map(
      (b, j) => (i === j ? a.sd * a.sd : 0) + (a.joist === b.joist ? own * own : 0) + bay * bay * Math.min(a.joist, b.joist),
    ),
  );

/** The bound for these marks. */
export function latticeBound(marks: readonly KnownMark[], straying: Straying): Bound {
  const { own, bay } = straying;
  const sloped = marks.some(({ along = 0 }) => along !== 0);
  const inverted = inverse(covarianceOf(marks, straying));
  const design = marks.map(({ joist, along = 0 }) => (sloped ? [1, joist, along] : [1, joist]));
  const fisher = times(times(turned(design), inverted), design);
  const bound = inverse(fisher);
  const root = (variance: number): number => Math.sqrt(Math.max(0, variance));
  const at = (joist: number): number[][] => column(sloped ? [1, joist, 0] : [1, joist]);
  const solve = (values: readonly number[]): number[] =>
    times(times(times(bound, turned(design)), inverted), column(values)).map(([value]) => value);
  const sharedWith = (joist: number): number[][] =>
    column(marks.map((mark) => bay * bay * Math.max(0, Math.min(mark.joist, joist)) + (mark.joist === joist ? own * own : 0)));
  return {
    spacing: root(bound[1][1]),
    place: root(bound[0][0]),
    line: (joist) => root(times(times(turned(at(joist)), bound), at(joist))[0][0]),
    joist: (joist) => {
      const c = sharedWith(joist);
      const weighed = times(inverted, c);
      const left = at(joist).map(([value], i) => [value - times(turned(design), weighed)[i][0]]);
      const before = own * own + bay * bay * Math.abs(joist);
      return root(before - times(turned(c), weighed)[0][0] + times(times(turned(left), bound), left)[0][0]);
    },
    estimate: (joist, values) => {
      const b = solve(values);
      const rest = values.map((value, i) => value - design[i].reduce((sum, d, k) => sum + d * b[k], 0));
      const along = times(turned(at(joist)), column(b))[0][0];
      return along + times(times(turned(sharedWith(joist)), inverted), column(rest))[0][0];
    },
    solve,
  };
}
