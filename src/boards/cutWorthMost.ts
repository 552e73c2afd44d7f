import { heaviestBeside } from './heaviestBeside.js';
import { type HeaviestCut, heaviestCut } from './heaviestCut.js';
import { likelyStrips } from './likelyStrips.js';
import type { Relaxation } from './relaxation.js';
import { knownStrips } from './stripBlocks.js';
import type { Blank } from './waysToCut.js';

/** The cut of a board whose pieces are worth most, told by the kinds that the programme knows; of strips no more than there are. */
export function cutWorthMost(relaxation: Relaxation, stock: number, ofKind: Float64Array): HeaviestCut {
  const { space, present, strips } = relaxation;
  const { length, width, kerf } = space.problem.stocks[stock];
  const blank = { length: length + kerf, width, kerf };
  const settled = cutBeside(relaxation, stock, ofKind, blank);
  if (settled !== undefined) return settled;
  const heaviest = heaviestCut(blank, {
    widths: present.map((kind) => space.kinds[kind].width),
    alone: present.map((kind) => space.kinds[kind].alone[stock]),
    sizes: present.map((kind) => space.kinds[kind].sizes[stock]),
    values: Float64Array.from(present, (kind) => ofKind[kind]),
  });
  // It may have more strips than there are: only what a board is worth at most holds, so no new cut is found.
  return strips === undefined ? heaviest : { ...heaviest, value: 0, counts: new Int32Array(present.length) };
}

/** With strips that are settled; nothing where there is too much to compare. */
function cutBeside(
  { space, present, strips }: Relaxation,
  stock: number,
  ofKind: Float64Array,
  blank: Blank,
): HeaviestCut | undefined {
  if (strips === undefined) return undefined;
  const { pieces, blocks } = strips.ofStock[stock];
  const names = [...present.keys()].filter((at) => space.kinds[present[at]].alone[stock]);
  const wholes = {
    names,
    sizes: names.map((at) => space.kinds[present[at]].sizes[stock]),
    values: names.map((at) => ofKind[present[at]]),
  };
  const worthOf = (kind: number): number => ofKind[kind];
  const beside = blocks ? knownStrips(blocks, worthOf) : likelyStrips(blank, pieces, worthOf);
  const heaviest = beside && heaviestBeside(blank.length, wholes, beside);
  if (heaviest === undefined) return undefined;
  const counts = new Int32Array(present.length);
  heaviest.countWholes(counts);
  for (const [i, kind] of heaviest.block.kinds.entries()) counts[present.indexOf(kind)] += heaviest.block.counts[i];
  return { value: heaviest.value, most: heaviest.value, counts, work: heaviest.work };
}
