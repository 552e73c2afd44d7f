/** A column: what one unit of it costs, and what it does to each row. */
export interface Column {
  cost: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
}

/**
 * A linear programme to be made as cheap as possible, rows and columns being added as they are found: a basis, the inverse of
 * its matrix, the values of its columns and the price of each row. Plain arithmetic only, so that it runs the same everywhere;
 * nothing is decided on its numbers: they suggest prices, which are then made whole and judged exactly.
 */
export interface LinearProgram {
  size: number;
  /** Places for a row in `inverse`. */
  stride: number;
  inverse: Float64Array;
  values: Float64Array;
  prices: Float64Array;
  basis: Column[];
  /** Room to work in: what a column takes from each of the basis, and places of a row that are not nothing. */
  change: Float64Array;
  places: Int32Array;
}

const FIRST_STRIDE = 32;

export const emptyProgram = (): LinearProgram => ({
  size: 0,
  stride: FIRST_STRIDE,
  inverse: new Float64Array(FIRST_STRIDE * FIRST_STRIDE),
  values: new Float64Array(FIRST_STRIDE),
  prices: new Float64Array(FIRST_STRIDE),
  basis: [],
  change: new Float64Array(FIRST_STRIDE),
  places: new Int32Array(FIRST_STRIDE),
});

/**
 * Adds a row in which `column`, entering the basis with it, has the coefficient `own`. Either the other columns of the basis
 * have coefficients in it too, `others` by their place, or the column has some in older rows, but not both.
 */
export function addRow(program: LinearProgram, column: Column, own: number, value: number, others?: Float64Array): void {
  if (program.size === program.stride) grow(program);
  const { size, stride, inverse, prices } = program;
  const last = size * stride;
  for (let k = 0; k < size; k++) inverse[last + k] = 0;
  for (let row = 0; row < size; row++) inverse[row * stride + size] = 0;
  inverse[last + size] = 1 / own;
  if (others === undefined) {
    const change = direction(program, column);
    prices[size] = column.cost / own;
    for (let row = 0; row < size; row++) {
      inverse[row * stride + size] = -change[row] / own;
      prices[size] += program.basis[row].cost * inverse[row * stride + size];
    }
  } else {
    for (let row = 0; row < size; row++) {
      if (others[row] === 0) continue;
      const part = others[row] / own;
      for (let k = 0; k < size; k++) inverse[last + k] -= part * inverse[row * stride + k];
    }
    for (let k = 0; k < size; k++) prices[k] += column.cost * inverse[last + k];
    prices[size] = column.cost / own;
  }
  program.values[size] = value;
  program.basis[size] = column;
  program.size++;
}

function grow(program: LinearProgram): void {
  const { size, stride, inverse, values, prices } = program;
  const wider = 2 * stride;
  program.inverse = new Float64Array(wider * wider);
  for (let row = 0; row < size; row++) program.inverse.set(inverse.subarray(row * stride, row * stride + size), row * wider);
  program.values = new Float64Array(wider);
  program.values.set(values);
  program.prices = new Float64Array(wider);
  program.prices.set(prices);
  program.change = new Float64Array(wider);
  program.places = new Int32Array(wider);
  program.stride = wider;
}

/** Works out the prices anew, after costs have changed. */
export function price({ size, stride, inverse, basis, prices }: LinearProgram): void {
  prices.fill(0, 0, size);
  for (let row = 0; row < size; row++) {
    const { cost } = basis[row];
    if (cost === 0) continue;
    const from = row * stride;
    for (let k = 0; k < size; k++) prices[k] += cost * inverse[from + k];
  }
}

export function costOf({ size, values, basis }: LinearProgram): number {
  let cost = 0;
  for (let row = 0; row < size; row++) cost += values[row] * basis[row].cost;
  return cost;
}

const TINY = 1e-9;
/** A row of which more than one in so many places is not nothing is gone through whole. */
const DENSE = 2;

/** The row whose column is used up first as another comes in; -1 where none ever is. */
function leavingRow({ size, values }: LinearProgram, change: Float64Array): number {
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
  return leaving;
}

/** Brings a column into the basis; false where that would go on for ever. */
export function bringIn(program: LinearProgram, column: Column, reduced: number): boolean {
  const { size, stride, inverse, values, prices, basis, places } = program;
  const change = direction(program, column);
  const leaving = leavingRow(program, change);
  if (leaving < 0) return false;
  const pivot = change[leaving];
  const pivotRow = leaving * stride;
  let filled = 0;
  for (let k = 0; k < size; k++) {
    if (inverse[pivotRow + k] === 0) continue;
    inverse[pivotRow + k] /= pivot;
    prices[k] += reduced * inverse[pivotRow + k];
    places[filled++] = k;
  }
  const isDense = DENSE * filled > size;
  const entering = Math.max(0, values[leaving] / pivot);
  for (let row = 0; row < size; row++) {
    const part = change[row];
    if (row === leaving || part === 0) continue;
    const from = row * stride;
    if (isDense) for (let k = 0; k < size; k++) inverse[from + k] -= part * inverse[pivotRow + k];
    else for (let at = 0; at < filled; at++) inverse[from + places[at]] -= part * inverse[pivotRow + places[at]];
    values[row] = Math.max(0, values[row] - part * entering);
  }
  values[leaving] = entering;
  basis[leaving] = column;
  return true;
}

/** What one unit of a column takes from each column of the basis. */
function direction({ size, stride, inverse, change }: LinearProgram, { rows, values }: Column): Float64Array {
  for (let row = 0; row < size; row++) {
    const from = row * stride;
    let sum = 0;
    // A column may have coefficients in rows that are only now being added.
    for (let i = 0; i < rows.length; i++) if (rows[i] < size) sum += inverse[from + rows[i]] * values[i];
    change[row] = sum;
  }
  return change;
}

/** A programme as it was, to be gone back to. */
export interface Snapshot {
  readonly size: number;
  readonly stride: number;
  readonly inverse: Float64Array;
  readonly values: Float64Array;
  readonly prices: Float64Array;
  readonly basis: readonly Column[];
}

export const snapshotOf = ({ size, stride, inverse, values, prices, basis }: LinearProgram): Snapshot => ({
  size,
  stride,
  inverse: inverse.slice(0, size * stride),
  values: values.slice(0, size),
  prices: prices.slice(0, size),
  basis: basis.slice(0, size),
});

export function restore(program: LinearProgram, snapshot: Snapshot): void {
  // A programme never grows smaller, and what lies beyond its size is of no account.
  const { size, stride, inverse, values, prices, basis } = snapshot;
  for (let row = 0; row < size; row++)
    program.inverse.set(inverse.subarray(row * stride, row * stride + size), row * program.stride);
  program.values.set(values);
  program.prices.set(prices);
  program.basis.length = size;
  for (let row = 0; row < size; row++) program.basis[row] = basis[row];
  program.size = size;
}
