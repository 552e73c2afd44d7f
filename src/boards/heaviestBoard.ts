/** Lengths to be cut from a board, in cells so small that rounding them down loses nothing, or next to nothing. */
export interface Cells {
  /** Length of one cell, grid steps. */
  readonly cell: number;
  readonly capacity: number;
  readonly sizes: Int32Array;
}

const MOST_CELLS = 8192;

/** Puts lengths on cells: as large as divide them all, or as many to a board as are looked at. Lengths never grow. */
export function cellsFor(lengths: Float64Array, capacity: number): Cells {
  const divisor = lengths.reduce(greatestCommonDivisor, 0);
  const cell = Math.max(divisor, Math.ceil(capacity / MOST_CELLS));
  return { cell, capacity: Math.floor(capacity / cell), sizes: Int32Array.from(lengths, (length) => Math.floor(length / cell)) };
}

export const greatestCommonDivisor = (a: number, b: number): number => (b === 0 ? a : greatestCommonDivisor(b, a % b));

/** The most that pieces of a length of board can weigh, for every length, and which piece to take. */
export interface Heaviest {
  readonly weight: Float64Array;
  /** A piece that the best filling ends with; `SPARE` where the last cell is left over, `REST` where all of it is used otherwise. */
  readonly last: Int32Array;
}

export const SPARE = -1;
export const REST = -2;

/** `rest`: what a length weighs that is used otherwise, if it may be. */
export function heaviestFor({ capacity, sizes }: Cells, weights: Float64Array, rest?: Float64Array): Heaviest {
  const weight = new Float64Array(capacity + 1);
  const last = new Int32Array(capacity + 1).fill(SPARE);
  const worth = worthTaking(sizes, weights);
  for (let room = 1; room <= capacity; room++) {
    let best = weight[room - 1];
    let piece = SPARE;
    for (const each of worth) {
      if (sizes[each] > room) break;
      const value = weight[room - sizes[each]] + weights[each];
      if (value > best) {
        best = value;
        piece = each;
      }
    }
    if (rest !== undefined && rest[room] > best) {
      best = rest[room];
      piece = REST;
    }
    weight[room] = best;
    last[room] = piece;
  }
  return { weight, last };
}

/** Pieces heavier than every shorter one, shortest first. */
function worthTaking(sizes: Int32Array, weights: Float64Array): number[] {
  const order = Array.from(sizes, (_, at) => at).sort((a, b) => sizes[a] - sizes[b] || weights[b] - weights[a] || a - b);
  const worth: number[] = [];
  let heaviest = 0;
  for (const each of order) {
    if (weights[each] <= heaviest) continue;
    heaviest = weights[each];
    worth.push(each);
  }
  return worth;
}

/** The pieces of the heaviest filling of a length, and the length that is used otherwise. */
export function fillingOf({ sizes }: Cells, { last }: Heaviest, length: number): { pieces: number[]; rest: number } {
  const pieces: number[] = [];
  let room = length;
  while (room > 0 && last[room] !== REST) {
    if (last[room] === SPARE) room--;
    else {
      pieces.push(last[room]);
      room -= sizes[last[room]];
    }
  }
  return { pieces, rest: room };
}
