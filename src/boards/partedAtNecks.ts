import { extentOf } from '../survey/outline.js';
import { isKept } from './againstStanding.js';
import { type Neck, type NeckLimits, necksOf, slicesOf } from './necksOf.js';
import type { Ring } from './overlayRings.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import type { PossiblePiece, Run } from './possiblePieces.js';
import { ringsOf, type Shape } from './shapesOf.js';
import type { DividingLine } from './standingJoints.js';

/** A run of any shape, with what it takes to look for necks in its pieces. */
export interface Notched {
  readonly part: Part;
  readonly shape: Shape;
  readonly inside: readonly DividingLine[];
  /** What of the run lies between two of its places. */
  readonly between: (from: number, to: number) => readonly Shape[];
}

/**
 * A run without the pieces that have a neck which snaps, where it can be divided at the neck instead: between the sides of the opening,
 * or on the timbers beside them. A neck without such timber is kept, and so is one that leaves no other way to divide the run.
 */
export function partedAtNecks({ rules: { neck: under, neckRest: rest } }: PlacementProblem, notched: Notched, run: Run): Run {
  const { part, shape, inside, between } = notched;
  const narrow = slicesOf(ringsOf(shape).map(inFrame)).filter(({ narrowest }) => narrowest < under);
  const necks = new Map<string, { readonly width: number; readonly sets: Set<readonly number[]> }>();
  for (const set of narrow.length === 0 ? [] : run.starting.flat()) {
    const pieces = set.map((index) => run.pieces[index]);
    const [{ from, to }] = pieces;
    const lines = inside.slice(from, to - 1);
    const canPart = (place: Stretch): boolean => lines.some(({ at }) => at >= place.from - rest && at <= place.to + rest);
    if (!narrow.some(canPart) || pieces.some(isThere(part))) continue;
    for (const found of between(from, to).flatMap((each) => necksIn(part, each, { under, rest }))) {
      if (!canPart(found)) continue;
      const key = `${found.from} ${found.to}`;
      const neck = necks.get(key) ?? { width: found.width, sets: new Set() };
      neck.sets.add(set);
      necks.set(key, neck);
    }
  }
  let starting = run.starting;
  for (const { sets } of [...necks.values()].sort((a, b) => a.width - b.width)) {
    const others = starting.map((from) => from.filter((set) => !sets.has(set)));
    if (goesThrough(run, others)) starting = others;
  }
  return starting === run.starting ? run : { ...run, starting, isParted: true };
}

type Stretch = Pick<Neck, 'from' | 'to'>;

/** Whether a piece is up, or is to stay where it was. */
const isThere =
  ({ standing }: Part) =>
  ({ isUp, box }: PossiblePiece): boolean =>
    isUp === true || (box !== undefined && standing.kept.some((piece) => isKept(piece, box)));

/** Holes for lights are cut when the board is up. */
function necksIn({ openings }: Part, { outline, holes }: Shape, limits: NeckLimits): readonly Neck[] {
  const lights = openings.filter(({ opening }) => opening.kind === 'light');
  const isLight = (hole: Ring): boolean => {
    const { left, right, low, high } = extentOf(hole);
    return lights.some((light) => light.near < right && left < light.far && light.low < high && low < light.high);
  };
  return necksOf(inFrame(outline), holes.filter((hole) => !isLight(hole)).map(inFrame), limits);
}

const inFrame = (ring: Ring) => ring.map(({ x, y }) => ({ u: x, v: y }));

/** Whether there is a way from its first place to its last. */
function goesThrough({ places, pieces }: Run, starting: Run['starting']): boolean {
  const goesOn = places.map((_, at) => at === places.length - 1);
  for (let at = places.length - 2; at >= 0; at--) goesOn[at] = starting[at].some(([index]) => goesOn[pieces[index].to]);
  return goesOn[0];
}
