import type { Point } from '../survey/point.js';
import { type Side, sidesOf, traceRings, withoutStraightCorners } from '../survey/traceRings.js';

/** Corners of a closed line on the grid. */
export type Ring = readonly Point[];

/** Rounding of crossings can bring sides to cross anew; after this many rounds that is over. */
const MOST_ROUNDS = 6;

/** A side of the overlay, from its lower or left end, and how often the rings of each layer run along it that way. */
interface Border {
  readonly a: Point;
  readonly b: Point;
  readonly turns: number[];
}

/**
 * What layers of rings enclose together: the rings, anticlockwise about it and clockwise about holes, of the area where `isIn` is
 * true of how often each layer winds about a place. Crossings are rounded to the grid.
 */
export function overlayRings(layers: readonly (readonly Ring[])[], isIn: (windings: readonly number[]) => boolean): Ring[] {
  const borders = bordersOf(layers);
  const sides = borders.flatMap((border): Side[] => {
    const { a, b, turns } = border;
    const low = windingBeyond(borders, border, layers.length);
    // On the left of an upright side is what is met first from the left; on the left of a level one what lies above it.
    const level = a.y === b.y;
    const high = low.map((winding, layer) => winding + (level ? turns[layer] : -turns[layer]));
    const [left, right] = level ? [high, low] : [low, high];
    if (isIn(left) === isIn(right)) return [];
    return [isIn(left) ? [a, b] : [b, a]];
  });
  return traceRings(sides)
    .map(withoutStraightCorners)
    .filter((ring) => ring.length > 2);
}

/** Every side once, divided wherever another meets it. */
function bordersOf(layers: readonly (readonly Ring[])[]): Border[] {
  let sides = layers.flatMap((rings, layer) => rings.flatMap((ring) => sidesOf(ring).map((side) => ({ side, layer }))));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const all = sides.map(({ side }) => side);
    const divided = sides.flatMap(({ side, layer }) => dividedAt(side, all).map((part) => ({ side: part, layer })));
    const done = divided.length === sides.length;
    sides = divided;
    if (done) break;
  }
  const borders = new Map<string, Border>();
  for (const {
    side: [from, to],
    layer,
  } of sides) {
    if (from.x === to.x && from.y === to.y) continue;
    const forward = from.y === to.y ? from.x < to.x : from.y < to.y;
    const [a, b] = forward ? [from, to] : [to, from];
    const key = `${a.x} ${a.y} ${b.x} ${b.y}`;
    const border = borders.get(key) ?? { a, b, turns: layers.map(() => 0) };
    border.turns[layer] += forward ? 1 : -1;
    borders.set(key, border);
  }
  return [...borders.values()];
}

/** A side in parts, from crossing to crossing with the others. */
function dividedAt([a, b]: Side, others: readonly Side[]): Side[] {
  const met: Point[] = [];
  for (const [c, d] of others) {
    if (Math.max(c.x, d.x) < Math.min(a.x, b.x) || Math.min(c.x, d.x) > Math.max(a.x, b.x)) continue;
    if (Math.max(c.y, d.y) < Math.min(a.y, b.y) || Math.min(c.y, d.y) > Math.max(a.y, b.y)) continue;
    const [ofC, ofD] = [away(a, b, c), away(a, b, d)];
    if (ofC === 0) met.push(c);
    if (ofD === 0) met.push(d);
    const [ofA, ofB] = [away(c, d, a), away(c, d, b)];
    if (Math.sign(ofC) * Math.sign(ofD) < 0 && Math.sign(ofA) * Math.sign(ofB) < 0)
      met.push(crossing(a, b, c, d, ofC / (ofC - ofD)));
  }
  const along = ({ x, y }: Point): number => (x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y);
  const length = along(b);
  const inside = met.filter((point) => along(point) > 0 && along(point) < length && !same(point, a) && !same(point, b));
  const order = [a, ...inside.sort((p, q) => along(p) - along(q)), b];
  return order.slice(1).flatMap((to, i): Side[] => (same(order[i], to) ? [] : [[order[i], to]]));
}

const away = (a: Point, b: Point, { x, y }: Point): number => (b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y);

const same = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

/** The same place whichever of the two sides asks for it. */
function crossing(a: Point, b: Point, c: Point, d: Point, share: number): Point {
  const ofA = away(c, d, a);
  const own = ofA / (ofA - away(c, d, b));
  const first = a.y < b.y || (a.y === b.y && a.x < b.x) ? [a, b, own] : [b, a, 1 - own];
  const second = c.y < d.y || (c.y === d.y && c.x < d.x) ? [c, d, share] : [d, c, 1 - share];
  const [[p, q, t]] = [first, second].sort(
    ([e, f], [g, h]) =>
      (e as Point).x - (g as Point).x ||
      (e as Point).y - (g as Point).y ||
      (f as Point).x - (h as Point).x ||
      (f as Point).y - (h as Point).y,
  ) as [Point, Point, number][];
  return { x: Math.round(p.x + (q.x - p.x) * t), y: Math.round(p.y + (q.y - p.y) * t) };
}

/** How often each layer winds about the left of an upright side, or what is below a level one. */
function windingBeyond(borders: readonly Border[], own: Border, layers: number): number[] {
  const windings = Array.from({ length: layers }, () => 0);
  const [x, y] = [own.a.x + own.b.x, own.a.y + own.b.y];
  const turnsOf = own.a.y === own.b.y ? turnsBelow : turnsLeft;
  for (const border of borders) {
    if (border === own) continue;
    const times = turnsOf(border, x, y);
    if (times !== 0) for (let layer = 0; layer < layers; layer++) windings[layer] += times * border.turns[layer];
  }
  return windings;
}

/** How a side counts for a place if it lies below it; places are doubled, so that the middle of a side is a whole one. */
function turnsBelow({ a, b }: Border, x: number, y: number): number {
  const [p, q] = a.x <= b.x ? [a, b] : [b, a];
  if (2 * p.x > x || 2 * q.x <= x || (q.y - p.y) * (x - 2 * p.x) >= (y - 2 * p.y) * (q.x - p.x)) return 0;
  return p === a ? 1 : -1;
}

/** The same for one that lies on its left. */
const turnsLeft = ({ a, b }: Border, x: number, y: number): number =>
  2 * a.y > y || 2 * b.y <= y || (b.x - a.x) * (y - 2 * a.y) >= (x - 2 * a.x) * (b.y - a.y) ? 0 : -1;
