import { toGrid } from '../survey/grid.js';
import { distanceTo, isWithin } from '../survey/isWithin.js';
import type { Joist } from '../survey/joist.js';
import { corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Opening } from '../survey/room.js';

/** What a hole keeps clear of. */
interface Around {
  readonly ring: readonly Point[];
  readonly joists: readonly Joist[];
  readonly openings: readonly Opening[];
}

/** No hole is moved further than this, grid steps: the width of a room. */
const FARTHEST = toGrid(100_000);
const MM = toGrid(1);

/** How far a grid point is from the side of a joist, grid steps; negative within it. */
export const timberFrom = ({ start, end, width }: Joist, point: Point): number =>
  distanceTo(
    [start, end].map(({ x, y }) => ({ x: toGrid(x), y: toGrid(y) })),
    point,
  ) - Math.ceil(toGrid(width) / 2);

/**
 * The nearest place on whole millimetres, straight along x or along y from where a hole was wanted, whose middle is so far from the
 * side of every joist, and the hole within the room and clear of other openings; grid steps.
 */
export function clearPlace(wanted: Point, fromTimber: number, radius: number, around: Around): Point | undefined {
  const ways = [
    { x: 1, y: 0 },
    { x: -1, y: 0 },
    { x: 0, y: 1 },
    { x: 0, y: -1 },
  ];
  const places = ways
    .map((way) => firstClear(wanted, way, fromTimber, around.joists))
    .filter((place) => place !== undefined && isFree(place, radius, around))
    .map((place) => place as Point);
  const moved = ({ x, y }: Point): number => Math.abs(x - wanted.x) + Math.abs(y - wanted.y);
  return places.reduce<Point | undefined>(
    (nearest, place) => (nearest === undefined || moved(place) < moved(nearest) ? place : nearest),
    undefined,
  );
}

/** On past every joist that is in the way. What one joist bars of a straight line is one stretch, whose end is found by halving. */
function firstClear(wanted: Point, way: Point, fromTimber: number, joists: readonly Joist[]): Point | undefined {
  const at = (steps: number): Point => ({ x: wanted.x + way.x * steps, y: wanted.y + way.y * steps });
  let steps = 0;
  for (let passed = 0; passed <= joists.length; passed++) {
    const here = at(steps);
    const barring = joists.find((joist) => timberFrom(joist, here) < fromTimber);
    if (barring === undefined) return here;
    if (timberFrom(barring, at(FARTHEST)) < fromTimber) return undefined;
    let [low, high] = [steps, FARTHEST];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (timberFrom(barring, at(middle)) < fromTimber) low = middle;
      else high = middle;
    }
    // A whole number of mm away from where it was wanted.
    steps = Math.ceil(high / MM) * MM;
  }
  return undefined;
}

function isFree(place: Point, radius: number, { ring, openings }: Around): boolean {
  const clearOf = (outline: readonly Point[], distance: number): boolean => distanceTo(outline, place) >= distance;
  return (
    isWithin(ring, place) &&
    clearOf(ring, radius) &&
    openings.every((opening) => {
      if ('outline' in opening) {
        const its = corners(opening.outline);
        return !isWithin(its, place) && clearOf(its, radius);
      }
      const { centre, diameter } = opening;
      const middle = { x: toGrid(centre.x), y: toGrid(centre.y) };
      const [dx, dy] = [place.x - middle.x, place.y - middle.y];
      const apart = radius + Math.ceil(toGrid(diameter) / 2);
      return dx * dx + dy * dy >= apart * apart;
    })
  );
}
