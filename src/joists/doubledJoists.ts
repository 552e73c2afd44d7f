import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Point } from '../survey/point.js';
import { centreAt, directionOf, type Frame, frameOf } from './frame.js';

/** Two joists with no more than this between them, or lapped by no more on the tape, are side by side, mm; common practice, no source. */
const TOUCHING = 5;
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

interface Ends {
  readonly low: number;
  readonly high: number;
}

/** Two joists as one, where they stand side by side. */
function together(a: Joist, b: Joist): Joist | undefined {
  const direction = directionOf([a]);
  if (a.kind !== b.kind || directionOf([b]) !== direction) return undefined;
  if (a.sd + b.sd > 0 || a.presence < 1 || b.presence < 1) return undefined;
  const frame = frameOf(direction);
  const [one, other] = frame.into(a.start).u <= frame.into(b.start).u ? [a, b] : [b, a];
  const [mine, its] = [endsOf(one, frame), endsOf(other, frame)];
  const [low, high] = [Math.max(mine.low, its.low), Math.min(mine.high, its.high)];
  const apart = Math.max(Math.abs(mine.low - its.low), Math.abs(mine.high - its.high));
  if (low >= high || apart > toGrid(ENDS_APART)) return undefined;
  const between = [low, high].map((v) => edge(other, frame, v, -1) - edge(one, frame, v, 1));
  if (between.some((gap) => Math.abs(gap) > toGrid(TOUCHING))) return undefined;
  return asOne(one, other, frame, { low, high });
}

function asOne(one: Joist, other: Joist, frame: Frame, { low, high }: Ends): Joist {
  const centre = (v: number): number => Math.round((edge(one, frame, v, -1) + edge(other, frame, v, 1)) / 2);
  const seamAt = (v: number): number => Math.round((edge(one, frame, v, 1) + edge(other, frame, v, -1)) / 2) - centre(v);
  const point = (v: number): Point => {
    const { x, y } = frame.back(centre(v), v);
    return { x: fromGrid(x), y: fromGrid(y) };
  };
  const width = Math.min(...[low, high].map((v) => edge(other, frame, v, 1) - edge(one, frame, v, -1)));
  const middle = Math.round((low + high) / 2);
  const moved = centreAt(one, frame, middle) - centre(middle);
  const depths = [one.depth, other.depth].filter((depth) => depth !== undefined);
  const { kind, sd, presence } = one;
  return {
    id: `${one.id}+${other.id}`,
    start: point(low),
    end: point(high),
    width: fromGrid(width),
    seams: [...(one.seams ?? []).map((seam) => fromGrid(toGrid(seam) + moved)), fromGrid(seamAt(middle))],
    ...(depths.length > 0 && { depth: Math.min(...depths) }),
    sd,
    presence,
    ...(kind !== undefined && { kind }),
    known: one.known === 'given' && other.known === 'given' ? 'given' : 'measured',
  };
}

function endsOf({ start, end }: Joist, frame: Frame): Ends {
  const [a, b] = [frame.into(start).v, frame.into(end).v].map(toGrid);
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

/** Where the near (-1) or far (1) edge of a joist is across the room, at a distance along it; grid steps. */
const edge = (joist: Joist, frame: Frame, v: number, side: -1 | 1): number =>
  Math.round(centreAt(joist, frame, v) + (side * toGrid(joist.width)) / 2);
