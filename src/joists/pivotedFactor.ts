/** A factor of a covariance, column by column, the widest first: one column for each independent way of moving. */
export interface PivotedFactor {
  readonly columns: readonly Float64Array[];
  /** The row that each column was taken at, and its entry there. */
  readonly pivots: readonly number[];
}

/** Variance that no longer matters, mm2. */
const ENOUGH = 1e-4;

/** As many columns as matter. */
export function pivotedFactor(size: number, covariance: (i: number, j: number) => number): PivotedFactor {
  const columns: Float64Array[] = [];
  const pivots: number[] = [];
  const left = Float64Array.from({ length: size }, (_, i) => Math.max(0, covariance(i, i)));
  while (columns.length < size) {
    let pivot = 0;
    for (let i = 1; i < size; i++) if (left[i] > left[pivot] * 1.000001) pivot = i;
    if (left[pivot] < ENOUGH) break;
    const root = Math.sqrt(left[pivot]);
    const column = new Float64Array(size);
    for (let i = 0; i < size; i++) {
      let c = covariance(i, pivot);
      for (const before of columns) c -= before[i] * before[pivot];
      column[i] = c / root;
      left[i] = Math.max(0, left[i] - column[i] * column[i]);
    }
    left[pivot] = 0;
    columns.push(column);
    pivots.push(pivot);
  }
  return { columns, pivots };
}
