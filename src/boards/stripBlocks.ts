import type { Blank } from './waysToCut.js';

/** Strips side by side, and the length of board that they take. */
export interface StripBlock {
  readonly length: number;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** Pieces that go into strips, by kind, the widest and longest first: lengths with one cut, and how many there are of each. */
export interface StripPieces {
  readonly names: readonly number[];
  readonly widths: readonly number[];
  readonly sizes: readonly number[];
  readonly counts: readonly number[];
}

/** Strips that are worth most within so much length of board. */
export interface BestStrips {
  /** The rooms that are asked for never become smaller. */
  readonly within: (room: number) => { readonly value: number; readonly block: () => StripBlock };
  readonly compared: number;
}

/** Blocks that are kept, and placings of a piece for them. */
const MOST_BLOCKS = 800;
const MOST_PLACINGS = 3000;

interface Building {
  readonly blank: Blank;
  readonly pieces: StripPieces;
  readonly taken: number[];
  /** By how many of each piece they have. */
  readonly blocks: Map<string, StripBlock>;
  placings: number;
}

/**
 * All sets of these pieces that can be cut from one board as strips, each in the least length; the shortest first. Nothing where
 * there are too many.
 */
export function stripBlocks(blank: Blank, pieces: StripPieces): StripBlock[] | undefined {
  if (areAllBeside(blank, pieces)) return besideEachOther(pieces);
  const building: Building = { blank, pieces, taken: pieces.names.map(() => 0), blocks: new Map(), placings: 0 };
  beginStrip(building, 0, 0, blank.width + blank.kerf);
  if (isTooMuch(building)) return undefined;
  return [...building.blocks.values()].sort((a, b) => a.length - b.length);
}

/** Whether every piece can have a strip of its own. */
const areAllBeside = ({ width, kerf }: Blank, { widths, counts }: StripPieces): boolean =>
  widths.reduce((sum, each, at) => sum + counts[at] * (each + kerf), 0) <= width + kerf;

/** All pieces up to each length. */
function besideEachOther({ names, sizes, counts }: StripPieces): StripBlock[] {
  const lengths = [...new Set(sizes)].sort((a, b) => a - b);
  return [0, ...lengths].map((length): StripBlock => {
    const there = [...names.keys()].filter((at) => sizes[at] <= length);
    return { length, kinds: there.map((at) => names[at]), counts: there.map((at) => counts[at]) };
  });
}

const isTooMuch = ({ placings, blocks }: Building): boolean => placings > MOST_PLACINGS || blocks.size > MOST_BLOCKS;

/** Keeps the strips so far, and begins one more beside them. */
function beginStrip(building: Building, from: number, length: number, across: number): void {
  keep(building, length);
  const { blank, pieces } = building;
  for (let at = from; at < pieces.names.length; at++) {
    const rest = across - pieces.widths[at] - blank.kerf;
    if (rest >= 0) put(building, at, (used) => fillStrip(building, at, at, used, length, rest), 0);
  }
}

/** Ends a strip, or puts one more piece into it. */
function fillStrip(building: Building, first: number, from: number, used: number, length: number, across: number): void {
  beginStrip(building, first, Math.max(length, used), across);
  for (let at = from; at < building.pieces.names.length; at++)
    put(building, at, (more) => fillStrip(building, first, at, more, length, across), used);
}

/** Goes on with one piece more in a strip, where there is one and it fits. */
function put(building: Building, at: number, goOn: (used: number) => void, before: number): void {
  const { pieces, taken, blank } = building;
  const used = before + pieces.sizes[at];
  if (taken[at] >= pieces.counts[at] || used > blank.length || isTooMuch(building)) return;
  building.placings++;
  taken[at]++;
  goOn(used);
  taken[at]--;
}

function keep({ pieces, taken, blocks }: Building, length: number): void {
  const key = taken.join(' ');
  const known = blocks.get(key);
  if (known !== undefined && known.length <= length) return;
  const there = [...pieces.names.keys()].filter((at) => taken[at] > 0);
  blocks.set(key, { length, kinds: there.map((at) => pieces.names[at]), counts: there.map((at) => taken[at]) });
}

/** The best of these blocks, the shortest first. */
export function knownStrips(blocks: readonly StripBlock[], worthOf: (kind: number) => number): BestStrips {
  let best = { value: -1, block: blocks[0] };
  let next = 0;
  return {
    compared: 3 * blocks.length,
    within: (room) => {
      for (; next < blocks.length && blocks[next].length <= room; next++) {
        const { kinds, counts } = blocks[next];
        let value = 0;
        for (let i = 0; i < kinds.length; i++) value += counts[i] * worthOf(kinds[i]);
        if (value > best.value) best = { value, block: blocks[next] };
      }
      return { value: best.value, block: () => best.block };
    },
  };
}
