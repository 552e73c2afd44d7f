import { isWithin } from './isWithin.js';
import { anticlockwise, corners, turn } from './outline.js';
import type { Point } from './point.js';
import { splitRings } from './splitRings.js';

type Ring = readonly Point[];
type Side = readonly [Point, Point];

/**
 * Which zones reach beyond the room, and which lie over one before them: their places in the list. Zones may share stretches of
 * border with the room and with each other.
 */
export function zonesInRoom(room: Ring, zones: readonly Ring[]): { readonly outside: number[]; readonly over: number[] } {
  const [about, ...split] = splitRings([room, ...zones].map((outline) => anticlockwise(corners(outline))));
  const numbers = split.map((_, index) => index);
  return {
    outside: numbers.filter((index) => reachesBeyond(split[index], about)),
    over: numbers.filter((index) => split.slice(0, index).some((before) => liesOver(split[index], before))),
  };
}

function reachesBeyond(zone: Ring, room: Ring): boolean {
  const [with_, against] = [sidesOf(room), sidesOf(room).map(turned)];
  return sidesOf(zone).some(
    (side) => has(against, side) || (!has(with_, side) && (crosses(side, with_) || !isWithin(doubled(room), middle(side)))),
  );
}

function liesOver(zone: Ring, other: Ring): boolean {
  const meets = (ring: Ring, about: Ring): boolean => {
    const theirs = sidesOf(about);
    const against = theirs.map(turned);
    return sidesOf(ring).some(
      (side) => has(theirs, side) || (!has(against, side) && (crosses(side, theirs) || isWithin(doubled(about), middle(side)))),
    );
  };
  return meets(zone, other) || meets(other, zone);
}

const sidesOf = (ring: Ring): Side[] => ring.map((a, i) => [a, ring[(i + 1) % ring.length]]);
const turned = ([a, b]: Side): Side => [b, a];
const has = (sides: readonly Side[], [a, b]: Side): boolean => sides.some(([c, d]) => isSame(a, c) && isSame(b, d));
const isSame = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

const crosses = ([a, b]: Side, sides: readonly Side[]): boolean =>
  sides.some(([c, d]) => turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0);

/** The middle of a side, and a ring to look for it in, on a grid twice as fine. */
const middle = ([a, b]: Side): Point => ({ x: a.x + b.x, y: a.y + b.y });
const doubled = (ring: Ring): Point[] => ring.map(({ x, y }) => ({ x: 2 * x, y: 2 * y }));
