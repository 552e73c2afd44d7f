import { extentOf } from '../survey/outline.js';
import { beside } from './beside.js';
import type { Ring } from './overlayRings.js';
import { ringsOf, type Shape, shapesOf } from './shapesOf.js';

/**
 * A run whose ends are cut square where the wall strays from a square cut by no more than the gap to it may be wider than nominal:
 * there the gap takes up what the wall is out. Ends that stray more follow the wall.
 */
export function squaredOff(shape: Shape, most: number): Shape {
  if (most === 0) return shape;
  return endSquared(endSquared(shape, most, 1), most, -1);
}

/** `side` 1: the near end; -1: the far end. */
function endSquared(shape: Shape, most: number, side: 1 | -1): Shape {
  const { left, right, low, high } = extentOf(shape.outline);
  const square = squareAt(shape.outline, side === 1 ? left : -right, most, side);
  if (square === undefined) return shape;
  const at = side * square;
  const [from, to] = side === 1 ? [high, low] : [low, high];
  const kept = shapesOf(beside(ringsOf(shape), { x: at, y: from }, { x: at, y: to }).rings);
  return kept.length === 1 ? kept[0] : shape;
}

/**
 * The farthest in of the corners of an end, `x` counted inwards from the end; nothing where they are all in line already, or where
 * one is too far in. An end is what lies between the first and the last corner that are not beyond `most`.
 */
function squareAt(outline: Ring, end: number, most: number, side: 1 | -1): number | undefined {
  const inwards = outline.map(({ x }) => side * x - end);
  const near = inwards.map((away) => away <= most);
  const first = near.findIndex((isNear, i) => isNear && !near[(i + near.length - 1) % near.length]);
  if (first < 0) return undefined;
  let count = 0;
  while (near[(first + count) % near.length]) count++;
  if (near.filter(Boolean).length !== count) return undefined;
  const farthest = Math.max(...inwards.filter((away) => away <= most));
  return farthest === 0 ? undefined : end + farthest;
}
