import type { Row } from '../boards/boardLayout.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Point } from '../survey/point.js';
import { LETTERS, shortened } from './lettering.js';
import type { Station } from './runningDimension.js';
import { type Heading, sighting } from './sighting.js';
import type { Subject } from './subject.js';
import { isCrosswise } from './zonesIn.js';

/** A station before it is brought to the sheet: where it is on the plan, mm. */
export type PlanStation = Omit<Station, 'at'> & { readonly coordinate: number };

/** A joist's name is cut to this width, mm on paper. */
const NAME_WIDTH = 12;

/**
 * The joists at one of their ends as running dimensions from the wall beside the first of them, both walls included. Only joists
 * whose extension line would not cross the room again on its way out are dimensioned there.
 */
export function joistStations(zone: Subject, room: Subject, end: 'start' | 'end', scale: number): PlanStation[] {
  const { plan, frame, length } = zone;
  const inward = end === 'start' ? 1 : -1;
  const joists = plan.joists.filter((joist) => !isCrosswise(zone, joist));
  const seen = joists.filter((joist) => !crossesAgain(joist[end], zone, end));
  const shown = (seen.length > 0 ? seen : joists).map((joist) => ({ joist, u: toGrid(frame.into(joist[end]).u) }));
  if (shown.length === 0) return [];
  const order = [...shown].sort((a, b) => a.u - b.u);
  const [first, last] = [order[0], order[order.length - 1]];
  const wall = (place: Point, u: number, heading: Heading, way: 1 | -1): number => {
    const met = sighting(zone, place, heading, inward);
    return u + way * toGrid(met?.distance ?? 0);
  };
  const zero = wall(first.joist[end], first.u, 'near', -1);
  const far = wall(last.joist[end], last.u, 'far', 1);
  const merged = new Map<number, Joist[]>();
  for (const { joist, u } of order) merged.set(u, [...(merged.get(u) ?? []), joist]);
  return [
    { coordinate: fromGrid(zero), value: '0', origin: true },
    { coordinate: fromGrid(far), value: length(fromGrid(far - zero)) },
    ...[...merged].map(
      ([u, same]): PlanStation => ({
        coordinate: fromGrid(u),
        value: length(fromGrid(u - zero)),
        id: nameOf(same, zone),
        framed: same.some(({ id }) => plan.proveFirst.includes(id)),
        inset: Math.min(...same.map((joist) => fromEdge(joist[end], zone, room, end))) / scale,
      }),
    ),
  ];
}

/** The names of joists in one place; in a zone without the zone's name, which stands on the plan. */
function nameOf(joists: readonly Joist[], { zone }: Subject): string {
  const own = joists.map(({ id }) => (zone !== undefined && id.startsWith(`${zone} `) ? id.slice(zone.length + 1) : id));
  return shortened(own.join(' '), NAME_WIDTH, LETTERS.medium, true);
}

/** How far a joist's end lies inside the room's extent, mm. */
function fromEdge(point: Point, { frame }: Subject, { extent }: Subject, end: 'start' | 'end'): number {
  const [least, greatest] = [frame.into({ x: extent.left, y: extent.low }).v, frame.into({ x: extent.right, y: extent.high }).v];
  const { v } = frame.into(point);
  return end === 'start' ? v - least : greatest - v;
}

/** Whether a line from the end of a joist out of its part of the ceiling meets that part again. */
function crossesAgain(point: Point, zone: Subject, end: 'start' | 'end'): boolean {
  const { u, v } = zone.frame.into(point);
  // A mm beyond the end, and a little beside it, so that a corner of a tidy room is not met.
  const beyond = zone.frame.back(u + 0.137, v + (end === 'start' ? -1 : 1));
  return sighting(zone, beyond, end === 'start' ? 'low' : 'high') !== undefined;
}

/** The edges of the rows on the near or far side, as running dimensions from the wall that the lowest row lies along. */
export function rowStations(zone: Subject, side: 'near' | 'far'): PlanStation[] {
  const { plan, frame, length } = zone;
  const rows = [...plan.layout.rows].sort((a, b) => a.low - b.low);
  if (rows.length === 0) return [];
  const [first, last] = [rows[0], rows[rows.length - 1]];
  const bound = (row: Row, heading: 'low' | 'high'): number => {
    const place = endOfRow(zone, row, side);
    const distance = sighting(zone, place, heading, side === 'near' ? 1 : -1)?.distance ?? 0;
    return toGrid(frame.into(place).v) + toGrid(distance) * (heading === 'low' ? -1 : 1);
  };
  const [zero, far] = [bound(first, 'low'), bound(last, 'high')];
  const edges = rows.flatMap(({ low, high }) => [toGrid(low), toGrid(high)]);
  const between = [...new Set(edges)].filter((edge) => edge > zero && edge < far);
  const trimmers = plan.joists.filter((joist) => isCrosswise(zone, joist));
  const at = (v: number): Pick<PlanStation, 'coordinate' | 'value'> => ({
    coordinate: fromGrid(v),
    value: length(fromGrid(v - zero)),
  });
  return [
    { coordinate: fromGrid(zero), value: '0', origin: true },
    at(far),
    ...between.map(at),
    ...trimmers.map((joist) => ({
      ...at(toGrid(frame.into(joist[side === 'near' ? 'start' : 'end']).v)),
      id: nameOf([joist], zone),
    })),
  ];
}

/** Where a row ends on one side, halfway across it. */
export function endOfRow({ plan, frame }: Subject, { row, low, high }: Row, side: 'near' | 'far'): Point {
  const middle = (low + high) / 2;
  const places = plan.layout.pieces
    .filter((piece) => piece.row === row)
    .flatMap(({ outline }) => {
      const ring = outline.map(frame.into);
      return ring.flatMap((a, i) => {
        const b = ring[(i + 1) % ring.length];
        return a.v > middle === b.v > middle ? [] : [a.u + ((b.u - a.u) * (middle - a.v)) / (b.v - a.v)];
      });
    });
  return frame.back(side === 'near' ? Math.min(...places) : Math.max(...places), middle);
}
