/** Pieces for a length: their kinds, how long each is with one cut, and what it is worth. */
export interface Lane {
  readonly kinds: readonly number[];
  readonly sizes: readonly number[];
  readonly values: readonly number[];
}

/** Ways to fill a length, told by number: what each measures and is worth, the piece that came last, and the filling it came to. */
interface Known {
  readonly lengths: number[];
  readonly values: number[];
  readonly pieces: number[];
  readonly before: number[];
}

/** The ways to fill a length that are worth more than any shorter one, the shortest first; the first of them is empty. */
export interface Fillings extends Readonly<Known> {
  readonly kept: readonly number[];
  /** Fillings that were compared. */
  readonly compared: number;
}

/** The undominated fillings of a length, each piece as often as it fits; nothing where there are more than `most`. */
export function heaviestFillings({ kinds, sizes, values }: Lane, capacity: number, most: number): Fillings | undefined {
  const known: Known = { lengths: [0], values: [0], pieces: [-1], before: [-1] };
  let kept: readonly number[] = [0];
  let compared = 0;
  for (let at = 0; at < kinds.length; at++) {
    kept = withPiece(known, kept, { kind: kinds[at], size: sizes[at], value: values[at] }, capacity);
    compared += 2 * kept.length;
    if (kept.length > most) return undefined;
  }
  return { ...known, kept, compared };
}

/** The fillings worth keeping once there is one more kind of piece, merged in the order of their lengths. */
function withPiece(
  { lengths, values, pieces, before }: Known,
  kept: readonly number[],
  { kind, size, value }: { readonly kind: number; readonly size: number; readonly value: number },
  capacity: number,
): number[] {
  const merged: number[] = [];
  let heaviest = -1;
  let old = 0;
  // One more of this piece goes to what has been kept with it, too.
  let next = 0;
  while (true) {
    const without = old < kept.length ? lengths[kept[old]] : Infinity;
    const within = next < merged.length ? lengths[merged[next]] + size : Infinity;
    if (without === Infinity && within > capacity) return merged;
    const isOld = without < within || (without === within && values[kept[old]] >= values[merged[next]] + value);
    const from = isOld ? kept[old++] : merged[next++];
    const worth = values[from] + (isOld ? 0 : value);
    if (worth <= heaviest) continue;
    heaviest = worth;
    merged.push(isOld ? from : lengths.length);
    if (isOld) continue;
    lengths.push(within);
    values.push(worth);
    pieces.push(kind);
    before.push(from);
  }
}

/** The filling worth most that is no longer than `room`. */
export function fillingWithin({ kept, lengths }: Fillings, room: number): number {
  let [low, high] = [0, kept.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lengths[kept[middle]] <= room) low = middle;
    else high = middle - 1;
  }
  return kept[low];
}

/** Adds the pieces of a filling, so many times, to those counted by kind. */
export function countFilling({ pieces, before }: Fillings, filling: number, times: number, counts: Int32Array): void {
  for (let at = filling; before[at] >= 0; at = before[at]) counts[pieces[at]] += times;
}
