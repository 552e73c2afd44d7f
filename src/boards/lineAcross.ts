import type { Edges } from './box.js';
import type { Slab, Span } from './crossSections.js';
import type { Part } from './partsOf.js';
import { leastKerf, longestOf } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';

/** What may lie from one place to another of a line across the joists. */
interface Across {
  readonly from: number;
  readonly to: number;
  /** Its length, at the least; nothing where it need not reach the line. */
  readonly cut: number | undefined;
  /** Which of the problem's joists its far end is on; -1 for none. */
  readonly joist: number;
}

/** All ways to divide what lies across the joists at some levels, as a network: places in order, what lies between them from each of them on. */
export interface Line {
  readonly places: number;
  readonly pieces: readonly Across[];
}

interface Place {
  readonly near: number;
  readonly far: number;
  readonly joist: number;
  readonly cluster: number;
  /** At a wall beyond which the part does not reach at any level. */
  readonly isLast: boolean;
}

/** From the first to the last place of what hangs together, and where it has all of the levels. */
interface Cluster {
  readonly from: number;
  readonly to: number;
  readonly core: readonly Span[];
}

/**
 * Ways to divide a row that has at least these slabs, seen at what they have in common. A joint runs through all of a row, so what
 * lies between two joints is one piece wherever any of the slabs holds it together; it is never shorter than it must be.
 */
export function lineAcross(
  problem: PlacementProblem,
  part: Part,
  core: readonly Span[],
  slabs: readonly Slab[],
  ends: Span,
): Line {
  const { rules } = problem;
  const joists = joistsAt(problem, part, { low: slabs[0].low, high: slabs[slabs.length - 1].high });
  const clusters = clustersOf(core, slabs);
  const places = clusters.flatMap(({ from, to }, cluster): Place[] => [
    { near: from, far: from, joist: -1, cluster, isLast: from === ends[0] },
    ...joists.filter(({ near, far }) => near > from && far < to).map((joist) => ({ ...joist, cluster, isLast: false })),
    { near: to, far: to, joist: -1, cluster, isLast: to === ends[1] },
  ]);
  const longest = longestOf(problem).length + rules.greatestExcess;
  const pieces: Across[] = [];
  places.forEach((from, i) => {
    for (let k = i + 1; k < places.length; k++) {
      const to = places[k];
      if (to.cluster !== from.cluster) {
        if (k === i + 1) pieces.push({ from: i, to: k, cut: undefined, joist: -1 });
        break;
      }
      const reaches = clusters[from.cluster].core.some(([a, b]) => a < to.near && b > from.far);
      const cut = reaches ? cutBetween(rules.jointGap, from, to) : undefined;
      if (cut !== undefined && cut > longest) break;
      if (!reaches || isAllowed(problem, part, from, to, joists)) pieces.push({ from: i, to: k, cut, joist: to.joist });
    }
  });
  return { places: places.length, pieces };
}

const cutBetween = (jointGap: number, from: Place, to: Place): number =>
  Math.max(0, to.near - from.far - ((Number(from.joist >= 0) + Number(to.joist >= 0)) * jointGap) / 2);

type Crossed = Pick<Place, 'near' | 'far' | 'joist'>;

/** Where joists cross these levels, or a joint on them could. */
function joistsAt({ stocks }: PlacementProblem, part: Part, { low, high }: Edges): Crossed[] {
  const widest = Math.max(...stocks.map(({ width }) => width));
  const levels = part.parallel ? [0] : [Math.max(0, low - widest), Math.min(part.depth, high + widest)];
  return part.joists
    .map(({ centre, index }) => {
      const at = levels.map(centre);
      return { near: Math.min(...at), far: Math.max(...at), joist: index };
    })
    .sort((a, b) => a.near + a.far - b.near - b.far);
}

/** What hangs together: spans that one slab holds together, and beyond the outermost of them as far as any slab reaches. */
function clustersOf(core: readonly Span[], slabs: readonly Slab[]): Cluster[] {
  const holding = (a: number, b: number): Span[] =>
    slabs.flatMap(({ spans }) => spans.filter(([from, to]) => from <= a && to >= b));
  const clusters: { from: number; to: number; core: Span[] }[] = [];
  for (const span of core) {
    const last = clusters[clusters.length - 1];
    if (last !== undefined && holding(last.to, span[0]).length > 0) {
      last.to = span[1];
      last.core.push(span);
    } else clusters.push({ from: span[0], to: span[1], core: [span] });
  }
  const [first, last] = [core[0], core[core.length - 1]];
  clusters[0].from = Math.min(...holding(...first).map(([from]) => from));
  clusters[clusters.length - 1].to = Math.max(...holding(...last).map(([, to]) => to));
  return clusters;
}

/** Where nothing of a piece can lie beyond its ends, it must be long enough, and lie on joists enough. */
function isAllowed({ rules }: PlacementProblem, part: Part, from: Place, to: Place, joists: readonly Crossed[]): boolean {
  const isWall = [from, to].map(({ joist }) => joist < 0);
  if (!part.parallel || isWall.every(Boolean) || (isWall[0] && !from.isLast) || (isWall[1] && !to.isLast)) return true;
  if (to.near - from.near < rules.pieceLength) return false;
  // A joist on the line of a wall carries what ends at the gap before it.
  const [low, high] = isWall.map((wall) => (wall ? rules.wallGap.nominal : 0));
  return joists.filter(({ near }) => near >= from.near - low && near <= to.near + high).length >= rules.pieceSupports;
}

/** The length of what lies there from the longest board, with one cut. */
export const sizeOf = (problem: PlacementProblem, cut: number): number =>
  Math.min(cut, longestOf(problem).length) + leastKerf(problem);

/** What a line comes to at least, by what its pieces and a butt joint are worth; Infinity where it cannot be divided. */
export function leastOf({ places, pieces }: Line, worthOf: (cut: number) => number, ofJoint = 0): number {
  const least = new Float64Array(places).fill(Infinity);
  least[0] = 0;
  for (const { from, to, cut, joist } of pieces) {
    const sum = least[from] + (cut === undefined ? 0 : worthOf(cut)) + (joist < 0 ? 0 : ofJoint);
    if (sum < least[to]) least[to] = sum;
  }
  return least[places - 1];
}
