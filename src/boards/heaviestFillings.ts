/** Pieces that may go into a length, or strips into a width: how much each takes, with one cut, and what it is worth. */
export interface Items {
  /** By what name each is told. */
  readonly names: readonly number[];
  readonly sizes: readonly number[];
  readonly values: readonly number[];
}

/** Ways to fill a length, told by number: what each measures and is worth, the item that came last, and the filling it came to. */
interface Known {
  readonly lengths: number[];
  readonly values: number[];
  readonly last: number[];
  readonly before: number[];
}

/** The ways to fill a length that are worth more than any shorter one, the shortest first; the first of them is empty. */
export interface Fillings {
  readonly known: Known;
  readonly kept: readonly number[];
  /** Fillings that were compared. */
  readonly compared: number;
}

export const nothingFilled = (): Fillings => ({
  known: { lengths: [0], values: [0], last: [-1], before: [-1] },
  kept: [0],
  compared: 0,
});

/**
 * The undominated fillings of a length with each of these items as often as it fits, besides those that were found before with
 * others; nothing where there are more than `most`.
 */
export function heaviestFillings({ names, sizes, values }: Items, capacity: number, most: number, before = nothingFilled()) {
  let fillings = before;
  for (let at = 0; at < names.length; at++) {
    const [size, value] = [sizes[at], values[at]];
    // What is worth no more than others in its place is left out.
    if (size > capacity || fillings.known.values[fillingWithin(fillings, size)] >= value) continue;
    const kept = withItem(fillings, { name: names[at], size, value }, capacity, most);
    if (kept.length > most) return;
    fillings = { known: fillings.known, kept, compared: fillings.compared + 2 * kept.length };
  }
  return fillings;
}

/** One item more. */
export interface Item {
  readonly name: number;
  readonly size: number;
  readonly value: number;
}

/** The fillings worth keeping once there is one more item, as often as it fits; one more than `most` at most. */
const withItem = (fillings: Fillings, item: Item, capacity: number, most: number): number[] =>
  merged(fillings, item, { capacity, most, isOnce: false });

/** The same with the item once; nothing where there are more than `most`. */
export function withOneMore(fillings: Fillings, item: Item, capacity: number, most: number): Fillings | undefined {
  const kept = merged(fillings, item, { capacity, most, isOnce: true });
  if (kept.length > most) return undefined;
  return { known: fillings.known, kept, compared: fillings.compared + 2 * kept.length };
}

/** Fillings with and without an item, merged in the order of their lengths. */
function merged(
  { known, kept }: Fillings,
  item: Item,
  { capacity, most, isOnce }: { readonly capacity: number; readonly most: number; readonly isOnce: boolean },
): number[] {
  const { lengths, values } = known;
  const { size, value } = item;
  const all: number[] = [];
  // One more of an item that may go in again goes to what has been kept with it, too.
  const grown = isOnce ? kept : all;
  let heaviest = -1;
  let old = 0;
  let next = 0;
  while (all.length <= most) {
    const without = old < kept.length ? lengths[kept[old]] : Infinity;
    const within = next < grown.length ? lengths[grown[next]] + size : Infinity;
    if (without === Infinity && within > capacity) break;
    const isOld = without < within || (without === within && values[kept[old]] >= values[grown[next]] + value);
    const from = isOld ? kept[old++] : grown[next++];
    const worth = values[from] + (isOld ? 0 : value);
    if (worth <= heaviest) continue;
    heaviest = worth;
    all.push(isOld ? from : withAdded(known, from, item));
  }
  return all;
}

/** The number of a filling with one more item in it. */
function withAdded({ lengths, values, last, before }: Known, filling: number, { name, size, value }: Item): number {
  last.push(name);
  before.push(filling);
  values.push(values[filling] + value);
  return lengths.push(lengths[filling] + size) - 1;
}

/** The filling worth most that is no longer than `room`. */
export function fillingWithin({ kept, known: { lengths } }: Fillings, room: number): number {
  let [low, high] = [0, kept.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lengths[kept[middle]] <= room) low = middle;
    else high = middle - 1;
  }
  return kept[low];
}

/** Adds the items of a filling, so many times, to those counted by name. */
export function countFilling({ known: { last, before } }: Fillings, filling: number, times: number, counts: Int32Array): void {
  for (let at = filling; before[at] >= 0; at = before[at]) counts[last[at]] += times;
}
