import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Point } from '../survey/point.js';
import { centreAt } from './frame.js';
import { edgeAt, type SideBySide, sideBySide } from './sideBySide.js';

/** Two joists with no more than this between them, or lapped by no more on the tape, are side by side, mm; common practice, no source. */
export const TOUCHING = 5;
/** One may run this much further than the other, mm: two that only lap over a wall are not doubled. Common practice, no source. */
const ENDS_APART = 100;

/** So many joists before one are looked at: more than a joist has stretches. */
const LOOK_BACK = 20;

/**
 * Joists of which those that stand side by side, as under a partition or a bath, are one wide support: `J4+J5`, as far as both run.
 * A butt joint has more timber there than anywhere else. Only joists that were given can be told to touch.
 *
 * @param joists - in order across the room
 */
export function doubledJoists(joists: readonly Joist[]): Joist[] {
  const result: Joist[] = [];
  for (const joist of joists) {
    let both: Joist | undefined;
    // Stretches of the same two joists are not next to each other in the list.
    for (let i = result.length - 1; i >= 0 && i >= result.length - LOOK_BACK && both === undefined; i--) {
      both = together(result[i], joist);
      if (both !== undefined) result[i] = both;
    }
    if (both === undefined) result.push(joist);
  }
  return result;
}

/** Two joists as one, where they stand side by side. */
function together(a: Joist, b: Joist): Joist | undefined {
  if (a.kind !== b.kind || a.sd + b.sd > 0 || a.presence < 1 || b.presence < 1) return undefined;
  const beside = sideBySide(a, b);
  if (beside === undefined || beside.endsApart > toGrid(ENDS_APART)) return undefined;
  return beside.between.some((gap) => Math.abs(gap) > toGrid(TOUCHING)) ? undefined : asOne(beside);
}

function asOne({ one, other, frame, low, high }: SideBySide): Joist {
  const centre = (v: number): number => Math.round((edgeAt(one, frame, v, -1) + edgeAt(other, frame, v, 1)) / 2);
  const seamAt = (v: number): number => Math.round((edgeAt(one, frame, v, 1) + edgeAt(other, frame, v, -1)) / 2) - centre(v);
  const point = (v: number): Point => {
    const { x, y } = frame.back(centre(v), v);
    return { x: fromGrid(x), y: fromGrid(y) };
  };
  const width = Math.min(...[low, high].map((v) => edgeAt(other, frame, v, 1) - edgeAt(one, frame, v, -1)));
  const middle = Math.round((low + high) / 2);
  const seamsOf = (joist: Joist): number[] =>
    (joist.seams ?? []).map((seam) => toGrid(seam) + centreAt(joist, frame, middle) - centre(middle));
  const depths = [one.depth, other.depth].filter((depth) => depth !== undefined);
  const { kind, sd, presence } = one;
  return {
    id: `${one.id}+${other.id}`,
    start: point(low),
    end: point(high),
    width: fromGrid(width),
    seams: [...seamsOf(one), seamAt(middle), ...seamsOf(other)].map(fromGrid),
    ...(depths.length > 0 && { depth: Math.min(...depths) }),
    sd,
    presence,
    ...(kind !== undefined && { kind }),
    known: one.known === 'given' && other.known === 'given' ? 'given' : 'measured',
  };
}
