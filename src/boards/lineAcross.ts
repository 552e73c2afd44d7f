import type { Edges } from './box.js';
import type { Slab, Span } from './crossSections.js';
import type { Part } from './partsOf.js';
import { leastKerf, longestOf } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';
import { fitsLength } from './possiblePieces.js';

/** What may lie from one place of a row to another. */
interface Across {
  readonly from: number;
  readonly to: number;
  /** Its length, at the least; nothing where there is no ceiling between the two. */
  readonly cut: number | undefined;
  /** The same between the middles of its joints, and how much shorter it may be left at the most. */
  readonly nominal: number;
  readonly give: number;
  /** Among the heights of the row: from which slab to which it reaches. */
  readonly height: number;
  /** Which of the problem's joists its far end is on; -1 for none. */
  readonly joist: number;
}

/** All ways to divide a row, as a network: places in order, what lies between them from each of them on. */
export interface Line {
  readonly places: number;
  readonly pieces: readonly Across[];
  /** The first and the last slab that some piece reaches over. */
  readonly heights: readonly SlabRange[];
}

/** From one slab to another, both included. */
export interface SlabRange {
  readonly first: number;
  readonly last: number;
}

/** Where there is no ceiling. */
const NOTHING = { cut: undefined, nominal: 0, give: 0, height: -1 };

interface Place {
  readonly near: number;
  readonly far: number;
  readonly joist: number;
  readonly cluster: number;
  /** At a wall where all such rows end for certain. */
  readonly isLast: boolean;
}

/**
 * Ways to divide a row that has part of some slabs, `held`, and of none but those that are `possible`. A joint runs through all of a
 * row, so what hangs together between two joints is one piece, at least as long and as wide as its slabs there; where several pieces
 * lie one above another, only the greatest is told.
 */
export function lineAcross(
  problem: PlacementProblem,
  part: Part,
  slabs: readonly Slab[],
  { held, possible }: { readonly held: SlabRange; readonly possible: SlabRange },
): Line {
  const { rules } = problem;
  const own = slabs.slice(held.first, held.last + 1);
  const reached = slabs.slice(possible.first, possible.last + 1);
  const isExact = reached.every((slab) => slab.isExact);
  const isLast = (goesOn: (span: Span) => boolean): boolean => isExact && !reached.some(({ spans }) => spans.some(goesOn));
  const joists = joistsAt(problem, part, { low: reached[0].low, high: reached[reached.length - 1].high });
  const places = unionOf(own.flatMap(({ spans }) => spans)).flatMap(([from, to], cluster): Place[] => [
    { near: from, far: from, joist: -1, cluster, isLast: isLast(([a, b]) => a < from && b >= from) },
    ...joists.filter(({ near, far }) => far > from && near < to).map((joist) => ({ ...joist, cluster, isLast: false })),
    { near: to, far: to, joist: -1, cluster, isLast: isLast(([a, b]) => a <= to && b > to) },
  ]);
  const longest = longestOf(problem).length + rules.greatestExcess;
  const pieces: Across[] = [];
  const heights: SlabRange[] = [];
  const placeOf = (first: number, last: number): number => {
    const at = heights.findIndex((each) => each.first === first && each.last === last);
    return at < 0 ? heights.push({ first, last }) - 1 : at;
  };
  places.forEach((from, i) => {
    for (let k = i + 1; k < places.length; k++) {
      const to = places[k];
      if (to.cluster !== from.cluster) {
        if (k === i + 1) pieces.push({ ...NOTHING, from: i, to: k, joist: -1 });
        break;
      }
      const between = spanBetween(problem, from, to);
      const most = greatestWithin(own, between);
      if (most === undefined) {
        pieces.push({ ...NOTHING, from: i, to: k, joist: to.joist });
        continue;
      }
      const size = sizeBetween(problem, from, to, between, most);
      if (size.cut > longest) break;
      const height = placeOf(held.first + most.first, held.first + most.last);
      const fits = problem.stocks.some(({ length }) => fitsLength(problem, length, size));
      if (fits && isAllowed(problem, part, from, to, joists)) pieces.push({ ...size, from: i, to: k, height, joist: to.joist });
    }
  });
  return { places: places.length, pieces, heights };
}

/** What is left between two places, beside the gaps at joints on them. */
function spanBetween({ rules }: PlacementProblem, from: Place, to: Place): Span {
  const gap = ({ joist }: Place): number => (joist < 0 ? 0 : rules.jointGap / 2);
  return [from.far + gap(from), to.near - gap(to)];
}

/** How long a piece is at the least that reaches so far between two places, and how much shorter it may be left at the most. */
function sizeBetween(
  { rules }: PlacementProblem,
  from: Place,
  to: Place,
  [near, far]: Span,
  most: Connected,
): { readonly cut: number; readonly nominal: number; readonly give: number } {
  const cut = most.to - most.from;
  // An end that is not at a joint for certain may be at a wall.
  const atJoints = [from.joist >= 0 && most.from === near, to.joist >= 0 && most.to === far];
  const give = atJoints.reduce((sum, isAt) => sum + (isAt ? rules.jointGive : Math.max(rules.jointGive, rules.wallGive)), 0);
  return { cut, nominal: cut + (atJoints.filter(Boolean).length * rules.jointGap) / 2, give };
}

/** Spans that touch or overlap as one. */
function unionOf(spans: readonly Span[]): Span[] {
  const all: [number, number][] = [];
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = all[all.length - 1];
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else all.push([from, to]);
  }
  return all;
}

/** What hangs together: from where to where it reaches across the joists, and from which slab to which. */
interface Connected extends SlabRange {
  readonly from: number;
  readonly to: number;
}

/** The greatest extent of what hangs together between two places. */
function greatestWithin(slabs: readonly Slab[], [near, far]: Span): Connected | undefined {
  let all: Connected[] = [];
  let below: { readonly span: Span; readonly of: Connected }[] = [];
  for (const [slab, { spans }] of slabs.entries()) {
    let here: { readonly span: Span; readonly of: Connected }[] = [];
    for (const [a, b] of spans) {
      const span: Span = [Math.max(a, near), Math.min(b, far)];
      if (span[0] >= span[1]) continue;
      const touched = new Set(below.filter(({ span: [c, d] }) => c < span[1] && d > span[0]).map(({ of }) => of));
      const joint = [...touched].reduce<Connected>(
        (one, other) => ({
          from: Math.min(one.from, other.from),
          to: Math.max(one.to, other.to),
          first: Math.min(one.first, other.first),
          last: slab,
        }),
        { from: span[0], to: span[1], first: slab, last: slab },
      );
      const renamed = <T extends { readonly of: Connected }>(each: T): T =>
        touched.has(each.of) ? { ...each, of: joint } : each;
      below = below.map(renamed);
      here = [...here.map(renamed), { span, of: joint }];
      all = [...all.filter((each) => !touched.has(each)), joint];
    }
    below = here;
  }
  const areaOf = ({ from, to, first, last }: Connected): number => (to - from) * (slabs[last].high - slabs[first].low);
  return all.length === 0 ? undefined : all.reduce((a, b) => (areaOf(b) > areaOf(a) ? b : a));
}

type Crossed = Pick<Place, 'near' | 'far' | 'joist'>;

/** Where joists that reach these levels cross them, or a joint on them could. */
function joistsAt({ stocks, rules }: PlacementProblem, part: Part, { low, high }: Edges): Crossed[] {
  const widest = Math.max(...stocks.map(({ width }) => width));
  const levels = part.parallel ? [0] : [Math.max(0, low - widest), Math.min(part.depth, high + widest)];
  const slack = rules.wallGap.greatest;
  return part.joists
    .filter((joist) => joist.low <= high + slack && joist.high >= low - slack)
    .map(({ centre, index }) => {
      const at = levels.map(centre);
      return { near: Math.min(...at), far: Math.max(...at), joist: index };
    })
    .sort((a, b) => a.near + a.far - b.near - b.far);
}

/** Where a piece ends as told here, it must be long enough, and lie on joists enough; of others nothing is said. */
function isAllowed({ rules }: PlacementProblem, part: Part, from: Place, to: Place, joists: readonly Crossed[]): boolean {
  const isWall = [from, to].map(({ joist }) => joist < 0);
  if (!part.parallel || isWall.every(Boolean) || (isWall[0] && !from.isLast) || (isWall[1] && !to.isLast)) return true;
  if (to.near - from.near < rules.pieceLength) return false;
  // A joist on the line of a wall carries what ends at the gap before it.
  const [low, high] = isWall.map((wall) => (wall ? rules.wallGap.nominal : 0));
  const under = joists.filter(({ near }) => near >= from.near - low && near <= to.near + high);
  // Of a joist that a wall parts, both pieces are at one place.
  return new Set(under.map(({ near }) => near)).size >= rules.pieceSupports;
}

/** The length of what lies there from the longest board, with one cut. */
export const sizeOf = (problem: PlacementProblem, cut: number): number =>
  Math.min(cut, longestOf(problem).length) + leastKerf(problem);

/** What a line comes to at least, by what its pieces are worth; Infinity where it cannot be divided. */
export function leastOf({ places, pieces }: Line, worthOf: (piece: Across, at: number) => number): number {
  if (places === 0) return 0;
  const least = new Float64Array(places).fill(Infinity);
  least[0] = 0;
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at];
    const sum = least[piece.from] + worthOf(piece, at);
    if (sum < least[piece.to]) least[piece.to] = sum;
  }
  return least[places - 1];
}
