import { extentOf } from '../survey/outline.js';
import type { Edges } from './box.js';
import { crossSections, type Slab } from './crossSections.js';
import { type LengthWeight, lengthWeights, weightOf } from './lengthWeights.js';
import { type Line, leastOf, lineAcross, type SlabRange, sizeOf } from './lineAcross.js';
import { leastKerf, longestOf } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import type { RowLayout } from './rowLayouts.js';
import { sliversOn } from './rowSets.js';

/** A row that has part of some slabs, and all ways to divide it. */
export interface WeighedLine extends Line {
  /** Per weight of lengths, per piece. */
  readonly weights: readonly Float64Array[];
  /** Per weight of lengths: what the row comes to however it is divided. */
  readonly worth: readonly number[];
  /** Butt joints at the least. */
  readonly joints: number;
}

/** A ceiling as it is whatever its rows are. */
export interface AnyRows {
  readonly problem: PlacementProblem;
  /** The divisions that are searched, and how many slivers they leave: others that leave more are not looked at. */
  readonly searched: readonly RowLayout[];
  readonly slivers: number;
  readonly lengths: readonly LengthWeight[];
  /** Length and width of the greatest board, each with one cut. */
  readonly long: number;
  readonly wide: number;
  readonly kerf: number;
  /** Of a part with such a gap at its walls. */
  readonly slabs: (part: number, gap: number) => readonly Slab[];
  /** A row that has part of some of these slabs for certain, and perhaps of others. */
  readonly line: (part: number, gap: number, held: SlabRange, possible: SlabRange) => WeighedLine;
}

/** Weights of lengths that are kept, those that tell most by themselves. */
const MOST_LENGTHS = 14;

export function anyRowsOf(problem: PlacementProblem, searched: readonly RowLayout[]): AnyRows {
  const kerf = leastKerf(problem);
  const long = longestOf(problem).length + kerf;
  const wide = Math.max(...problem.stocks.map(({ width }) => width)) + kerf;
  const slabs = remembered((part: number, gap: number) => slabsOf(problem, part, gap));
  const lengths = sharpest(problem, slabs, long);
  const line = remembered((part: number, gap: number, held: SlabRange, possible: SlabRange): WeighedLine => {
    const across = lineAcross(problem, problem.parts[part], slabs(part, gap), { held, possible });
    const weights = lengths.map(
      (weight) =>
        new Float64Array(across.pieces.map(({ cut }) => (cut === undefined ? 0 : weightOf(weight, sizeOf(problem, cut), long)))),
    );
    const least = (worthOf: Parameters<typeof leastOf>[1]): number => finite(leastOf(across, worthOf));
    return {
      ...across,
      weights,
      worth: weights.map((each) => least((_, at) => each[at])),
      joints: least(({ joist }) => (joist < 0 ? 0 : 1)),
    };
  });
  return { problem, searched, slivers: sliversOn(problem, searched[0]), lengths, long, wide, kerf, slabs, line };
}

/** What cannot be divided asks for nothing: it is no row of any layout. */
const finite = (least: number): number => (least === Infinity ? 0 : least);

function slabsOf(problem: PlacementProblem, index: number, gap: number): Slab[] {
  const part = problem.parts[index];
  const { clear, depth } = part;
  const reach: Edges = clear === undefined ? { low: gap, high: depth - gap } : extentOf(clear(gap).flat());
  return crossSections(part, reach, gap, problem.rules.wallGap);
}

/** The weights of lengths by which the slabs, each for itself, come to most. */
function sharpest(problem: PlacementProblem, slabs: AnyRows['slabs'], long: number): LengthWeight[] {
  const { nominal } = problem.rules.wallGap;
  const single = problem.parts.flatMap((part, index) => {
    const all = slabs(index, nominal);
    const possible = { first: 0, last: all.length - 1 };
    return all.map(({ low, high }, at) => ({
      height: high - low,
      line: lineAcross(problem, part, all, { held: { first: at, last: at }, possible }),
    }));
  });
  const cuts = new Set(single.flatMap(({ line }) => line.pieces.flatMap(({ cut = 0 }) => (cut > 0 ? [cut] : []))));
  const sizes = new Set([...cuts].map((cut) => sizeOf(problem, cut)));
  return lengthWeights([...sizes], long)
    .map((weight) => {
      const whole = weightOf(weight, long, long);
      const worthOf = ({ cut }: Line['pieces'][number]): number =>
        cut === undefined ? 0 : weightOf(weight, sizeOf(problem, cut), long);
      const sharp = single.reduce((sum, { height, line }) => sum + (height * finite(leastOf(line, worthOf))) / whole, 0);
      return { weight, sharp };
    })
    .sort((a, b) => b.sharp - a.sharp)
    .slice(0, MOST_LENGTHS)
    .map(({ weight }) => weight);
}

function remembered<P extends readonly unknown[], T>(make: (...of: P) => T): (...of: P) => T {
  const known = new Map<string, T>();
  return (...of) => {
    const key = JSON.stringify(of);
    const found = known.get(key) ?? make(...of);
    known.set(key, found);
    return found;
  };
}
