import type { GridPoint, Solid } from './solid.js';

/** One side of a solid that is not level, from its lower to its upper corner. */
export interface Side {
  readonly solid: Solid;
  /** Place of the side among those of the solid, ring after ring: from that corner to the next. */
  readonly edge: number;
  readonly from: GridPoint;
  readonly to: GridPoint;
}

/** A solid's width at the foot and at the head of a section, grid steps. */
export interface Span {
  readonly solid: Solid;
  readonly left: Side;
  readonly right: Side;
  readonly leftLow: number;
  readonly leftHigh: number;
  readonly rightLow: number;
  readonly rightHigh: number;
}

/** A level band in which no two sides cross, and what lies in it from left to right. */
export interface Section {
  readonly low: number;
  readonly high: number;
  readonly spans: readonly Span[];
}

/**
 * Cuts everything into level bands at each corner and each crossing. In a band all sides are straight and keep their order,
 * so what lies beside what is read off from left to right. Corners are exact; where a slanting side meets a level its place is
 * snapped to the grid.
 */
export function crossSections(solids: readonly Solid[]): Section[] {
  const sides = solids.flatMap(sidesOf).sort((a, b) => a.from.v - b.from.v);
  const levels = levelsOf(sides);
  const sections: Section[] = [];
  let active: Side[] = [];
  let next = 0;
  for (let i = 1; i < levels.length; i++) {
    const [low, high] = [levels[i - 1], levels[i]];
    active = active.filter((side) => side.to.v > low);
    for (; next < sides.length && sides[next].from.v <= low; next++) active.push(sides[next]);
    sections.push({ low, high, spans: spansOf(active, low, high) });
  }
  return sections;
}

function sidesOf(solid: Solid): Side[] {
  const sides: Side[] = [];
  let edge = 0;
  for (const ring of solid.rings) {
    for (let i = 0; i < ring.length; i++, edge++) {
      const [a, b] = [ring[i], ring[i + 1 === ring.length ? 0 : i + 1]];
      if (a.v < b.v) sides.push({ solid, edge, from: a, to: b });
      else if (a.v > b.v) sides.push({ solid, edge, from: b, to: a });
    }
  }
  return sides;
}

function levelsOf(sides: readonly Side[]): number[] {
  const levels = new Set<number>();
  for (const { from, to } of sides) {
    levels.add(from.v);
    levels.add(to.v);
  }
  const slanting = sides.filter(({ from, to }) => from.u !== to.u);
  for (const side of slanting) {
    for (const other of sides) {
      const level = side === other ? undefined : crossingOf(side, other);
      if (level !== undefined) levels.add(level);
    }
  }
  return [...levels].sort((a, b) => a - b);
}

/** The level nearest to where two sides cross, if they do. */
function crossingOf(a: Side, b: Side): number | undefined {
  if (a.to.v <= b.from.v || b.to.v <= a.from.v) return undefined;
  if (Math.max(a.from.u, a.to.u) < Math.min(b.from.u, b.to.u)) return undefined;
  if (Math.max(b.from.u, b.to.u) < Math.min(a.from.u, a.to.u)) return undefined;
  const start = offset(a, b.from);
  const end = offset(a, b.to);
  if (start === 0 || end === 0 || start > 0 === end > 0) return undefined;
  if (offset(b, a.from) > 0 === offset(b, a.to) > 0) return undefined;
  return Math.round(b.from.v + ((b.to.v - b.from.v) * start) / (start - end));
}

const offset = ({ from, to }: Side, point: GridPoint): number =>
  (to.u - from.u) * (point.v - from.v) - (to.v - from.v) * (point.u - from.u);

/** Where a side is at a level, to the nearest grid step. */
export const sideAt = ({ from, to }: Side, v: number): number =>
  from.u === to.u ? from.u : Math.round(from.u + ((to.u - from.u) * (v - from.v)) / (to.v - from.v));

function spansOf(active: readonly Side[], low: number, high: number): Span[] {
  const bySolid = new Map<Solid, Place[]>();
  for (const side of active) {
    const place = { side, low: sideAt(side, low), high: sideAt(side, high) };
    const list = bySolid.get(side.solid);
    if (list) list.push(place);
    else bySolid.set(side.solid, [place]);
  }
  const spans: Span[] = [];
  for (const places of bySolid.values()) {
    if (places.length > 2 || places[0].low + places[0].high > places[1].low + places[1].high) {
      places.sort((a, b) => a.low + a.high - b.low - b.high);
    }
    for (let k = 0; k + 1 < places.length; k += 2) spans.push(spanOf(places[k], places[k + 1]));
  }
  return spans.sort((a, b) => a.leftLow + a.leftHigh - b.leftLow - b.leftHigh || a.solid.index - b.solid.index);
}

interface Place {
  readonly side: Side;
  readonly low: number;
  readonly high: number;
}

const spanOf = (left: Place, right: Place): Span => ({
  solid: left.side.solid,
  left: left.side,
  right: right.side,
  leftLow: left.low,
  leftHigh: left.high,
  rightLow: right.low,
  rightHigh: right.high,
});
