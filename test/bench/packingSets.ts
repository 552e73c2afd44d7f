import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One instance of the packing of lengths: how many bins of this capacity hold the lengths. */
export interface PackingInstance {
  readonly name: string;
  readonly capacity: number;
  readonly lengths: readonly number[];
  /** The fewest bins, as published. */
  readonly optimum: number;
}

export interface PackingSet {
  readonly name: string;
  readonly instances: readonly PackingInstance[];
}

/** Optima of the 28 hard instances, which their file does not give; published in the literature on the problem. */
const HARD: Readonly<Record<number, number>> = {
  13: 67,
  14: 62,
  40: 59,
  47: 71,
  60: 63,
  119: 77,
  144: 73,
  175: 84,
  178: 80,
  181: 72,
  195: 64,
  359: 76,
  360: 62,
  419: 80,
  485: 71,
  531: 83,
  561: 72,
  640: 74,
  645: 58,
  709: 67,
  716: 76,
  742: 64,
  766: 62,
  781: 71,
  785: 68,
  814: 81,
  832: 60,
  900: 75,
};

/** Two headers that are out of date: fewer bins were found since. */
const SINCE: Readonly<Record<string, number>> = { u250_07: 103, u250_12: 105 };

/** Every set in a folder, by file name. */
export const packingSets = (folder: string): PackingSet[] =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.txt'))
    .sort()
    .map((file) => {
      const text = readFileSync(join(folder, file), 'utf8');
      return { name: file.replace(/\.txt$/, ''), instances: text.startsWith("'") ? listsOfSizes(text) : listsOfLengths(text) };
    });

/** Number of instances; then for each its name, a line of capacity, count and best known number, and one length a line. */
function listsOfLengths(text: string): PackingInstance[] {
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  const instances: PackingInstance[] = [];
  let at = 1;
  for (let count = Number(lines[0]); count > 0; count--) {
    const name = lines[at];
    const [capacity, items, best] = lines[at + 1].split(/\s+/);
    // Lengths with one decimal become whole.
    const factor = capacity.includes('.') ? 10 : 1;
    const lengths = lines.slice(at + 2, at + 2 + Number(items)).map((length) => Math.round(Number(length) * factor));
    instances.push({ name, capacity: Number(capacity) * factor, lengths, optimum: SINCE[name] ?? Number(best) });
    at += 2 + Number(items);
  }
  return instances;
}

/** For each instance a name in quotation marks, how many sizes, the capacity, and a line of size and quantity for each. */
function listsOfSizes(text: string): PackingInstance[] {
  return text
    .split(/'BPP\s*/)
    .slice(1)
    .map((part) => {
      const number = Number.parseInt(part, 10);
      const [, capacity, ...rows] = part
        .slice(part.indexOf("'") + 1)
        .trim()
        .split(/\r?\n/);
      const lengths = rows.flatMap((row) => {
        const [size, quantity] = row.trim().split(/\s+/).map(Number);
        return Array.from({ length: quantity }, () => size);
      });
      return { name: `BPP${number}`, capacity: Number(capacity), lengths, optimum: HARD[number] };
    });
}
