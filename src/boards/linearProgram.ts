/** A column: what one unit of it costs, and what it does to each row. */
export interface Column {
  readonly cost: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
}

/**
 * A linear programme to be made as cheap as possible, columns being added as they are found: a basis, the inverse of its
 * matrix, and the values of its columns. Plain arithmetic only, so that it runs the same everywhere; nothing is decided on its
 * numbers, they only suggest weights, which are then rounded and checked as whole numbers.
 */
export interface LinearProgram {
  readonly size: number;
  readonly basis: Column[];
  readonly inverse: Float64Array;
  readonly values: Float64Array;
}

/** Starts from a basis whose inverse is known. */
export function linearProgram(basis: readonly Column[], inverse: Float64Array, right: Float64Array): LinearProgram {
  const size = basis.length;
  const values = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    let value = 0;
    for (let k = 0; k < size; k++) value += inverse[row * size + k] * right[k];
    values[row] = value;
  }
  return { size, basis: [...basis], inverse, values };
}

/** Price of each row under the present basis. */
export function duals({ size, basis, inverse }: LinearProgram): Float64Array {
  const prices = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    const { cost } = basis[row];
    if (cost === 0) continue;
    for (let k = 0; k < size; k++) prices[k] += cost * inverse[row * size + k];
  }
  return prices;
}

export function reducedCost({ cost, rows, values }: Column, prices: Float64Array): number {
  let reduced = cost;
  for (let i = 0; i < rows.length; i++) reduced -= prices[rows[i]] * values[i];
  return reduced;
}

const TINY = 1e-9;

/** Brings a column into the basis; false where that would go on for ever. */
export function bringIn({ size, basis, inverse, values }: LinearProgram, column: Column): boolean {
  const change = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    let sum = 0;
    for (let i = 0; i < column.rows.length; i++) sum += inverse[row * size + column.rows[i]] * column.values[i];
    change[row] = sum;
  }
  let leaving = -1;
  let step = Infinity;
  for (let row = 0; row < size; row++) {
    if (change[row] <= TINY) continue;
    const ratio = values[row] / change[row];
    if (ratio < step - TINY || (ratio < step + TINY && leaving >= 0 && change[row] > change[leaving])) {
      step = Math.min(step, ratio);
      leaving = row;
    }
  }
  if (leaving < 0) return false;
  const pivot = change[leaving];
  for (let k = 0; k < size; k++) inverse[leaving * size + k] /= pivot;
  values[leaving] = Math.max(0, values[leaving] / pivot);
  for (let row = 0; row < size; row++) {
    if (row === leaving || change[row] === 0) continue;
    for (let k = 0; k < size; k++) inverse[row * size + k] -= change[row] * inverse[leaving * size + k];
    values[row] = Math.max(0, values[row] - change[row] * values[leaving]);
  }
  basis[leaving] = column;
  return true;
}
