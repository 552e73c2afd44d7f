import { heaviestBeside } from './heaviestBeside.js';
import { type HeaviestCut, heaviestCut, type Worth } from './heaviestCut.js';
import { likelyStrips } from './likelyStrips.js';
import type { Relaxation } from './relaxation.js';
import { knownStrips } from './stripBlocks.js';
import { type Blank, blankOf } from './waysToCut.js';

/** The cut of a board whose pieces are worth most, told by the kinds that the programme knows; of strips no more than there are. */
export function cutWorthMost(relaxation: Relaxation, stock: number, ofKind: Float64Array): HeaviestCut {
  const { space, present, strips } = relaxation;
  const blank = blankOf(space.problem.stocks[stock]);
  const worth: Worth = {
    widths: present.map((kind) => space.kinds[kind].width),
    alone: present.map((kind) => space.kinds[kind].alone[stock]),
    sizes: present.map((kind) => space.kinds[kind].sizes[stock]),
    values: new Float64Array(present.map((kind) => ofKind[kind])),
  };
  if (strips === undefined) return heaviestCut(blank, worth);
  const settled = cutBeside(relaxation, stock, ofKind, blank, worth);
  if (settled !== undefined) return settled;
  // It may have more strips than there are: only what a board is worth at most holds, so no new cut is found.
  return { ...heaviestCut(blank, worth), value: 0, counts: new Int32Array(present.length) };
}

/** With strips that are settled; nothing where there is too much to compare. */
function cutBeside(
  { present, strips }: Relaxation,
  stock: number,
  ofKind: Float64Array,
  blank: Blank,
  worth: Worth,
): HeaviestCut | undefined {
  if (strips === undefined) return undefined;
  const { pieces, blocks, across } = strips.ofStock[stock];
  const worthOf = (kind: number): number => ofKind[kind];
  const beside = blocks ? knownStrips(blocks, worthOf) : likelyStrips(blank, pieces, across, worthOf);
  const heaviest = beside && heaviestBeside(blank, worth, beside);
  if (heaviest === undefined) return undefined;
  const { block, ...cut } = heaviest;
  for (const [at, kind] of block.kinds.entries()) cut.counts[present.indexOf(kind)] += block.counts[at];
  return cut;
}
