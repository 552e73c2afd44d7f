import { extentOf } from '../survey/outline.js';
import type { Edges } from './box.js';
import { common, crossSections, type Slab, type Span } from './crossSections.js';
import { type LengthWeight, lengthWeights, weightOf } from './lengthWeights.js';
import { type Line, leastOf, lineAcross, sizeOf } from './lineAcross.js';
import { leastKerf, longestOf } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';

/** What some neighbouring slabs of a part have in common. */
export interface Stretch extends Edges {
  /** The last of its slabs. */
  readonly to: number;
  /** Where its first slab ends, and its last one begins. */
  readonly within: Edges;
  readonly line: Line;
  /** Per weight of lengths, what it comes to however it is divided. */
  readonly worth: readonly number[];
  /** Butt joints at the least. */
  readonly joints: number;
}

/** A ceiling as it is whatever its rows are. */
export interface AnyRows {
  readonly problem: PlacementProblem;
  readonly lengths: readonly LengthWeight[];
  /** Length and width of the greatest board, each with one cut. */
  readonly long: number;
  readonly wide: number;
  readonly kerf: number;
  /** Per part, per gap at its walls, per slab: the stretches that begin with it. */
  readonly stretches: (part: number, gap: number) => readonly (readonly Stretch[])[];
}

/** Weights of lengths that are kept, those that tell most by themselves. */
const MOST_LENGTHS = 14;

type Measured = Omit<Stretch, 'worth' | 'joints'>;

export function stretchesOfParts(problem: PlacementProblem): AnyRows {
  const kerf = leastKerf(problem);
  const long = longestOf(problem).length + kerf;
  const { nominal } = problem.rules.wallGap;
  const usual = problem.parts.map((_, part) => stretchesIn(problem, part, nominal));
  const single = usual.flatMap((slabs) => slabs.flatMap((found) => found.slice(0, 1)));
  const sizes = new Set(
    single.flatMap(({ line }) => line.pieces.flatMap(({ cut = 0 }) => (cut > 0 ? [sizeOf(problem, cut)] : []))),
  );
  const leastBy = (weight: LengthWeight, line: Line): number => {
    const least = leastOf(line, (cut) => weightOf(weight, sizeOf(problem, cut), long));
    return least === Infinity ? 0 : least;
  };
  const lengths = lengthWeights([...sizes], long)
    .map((weight) => {
      const whole = weightOf(weight, long, long);
      return {
        weight,
        sharp: single.reduce((sum, { line, low, high }) => sum + ((high - low) * leastBy(weight, line)) / whole, 0),
      };
    })
    .sort((a, b) => b.sharp - a.sharp)
    .slice(0, MOST_LENGTHS)
    .map(({ weight }) => weight);
  const known = new Map<string, readonly (readonly Stretch[])[]>();
  const weighed = (each: Measured): Stretch => {
    const joints = leastOf(each.line, () => 0, 1);
    return { ...each, worth: lengths.map((weight) => leastBy(weight, each.line)), joints: joints === Infinity ? 0 : joints };
  };
  const stretches = (part: number, gap: number): readonly (readonly Stretch[])[] => {
    const key = `${part} ${gap}`;
    const found =
      known.get(key) ??
      (gap === nominal ? usual[part] : stretchesIn(problem, part, gap)).map((from) => from.map((each) => weighed(each)));
    known.set(key, found);
    return found;
  };
  const wide = Math.max(...problem.stocks.map(({ width }) => width)) + kerf;
  return { problem, lengths, long, wide, kerf, stretches };
}

function stretchesIn(problem: PlacementProblem, index: number, gap: number): Measured[][] {
  const part = problem.parts[index];
  const { clear, depth } = part;
  const reach = clear === undefined ? { low: gap, high: depth - gap } : extentOf(clear(gap).flat());
  const slabs: readonly Slab[] = crossSections(part, reach, gap, problem.rules.wallGap);
  const along = slabs.flatMap(({ spans }) => spans.flat());
  const ends: Span = [Math.min(...along), Math.max(...along)];
  return slabs.map((first, at) => {
    let spans = first.spans;
    const found: Measured[] = [];
    for (let to = at; to < slabs.length; to++) {
      spans = common(spans, slabs[to].spans);
      if (spans.length === 0) break;
      const line = lineAcross(problem, part, spans, slabs.slice(at, to + 1), ends);
      found.push({ low: first.low, high: slabs[to].high, to, within: { low: first.high, high: slabs[to].low }, line });
    }
    return found;
  });
}

/** How much of a stretch is within a row; nothing where the row does not have part of all its slabs. */
export const heightOf = (row: Edges, { low, high, within }: Stretch): number =>
  row.low < within.low && row.high > within.high ? Math.min(row.high, high) - Math.max(row.low, low) : 0;
