import type { Piece } from '../boards/boardLayout.js';
import { directionOf, type Frame, frameOf } from '../joists/frame.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import type { Direction, Joist } from '../survey/joist.js';
import { type Extent, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { type Bound, boundsOfRest, boundsOfZone } from './bounds.js';
import { type FigureUnit, figure } from './figure.js';
import { insideRing } from './insideRing.js';
import { type SideNames, sideNames } from './sideNames.js';
import { type NamedWall, namedWalls } from './wallNames.js';
import { type DrawingMessages, type Say, sayWith } from './words.js';

/** A plan made ready for paper: how its parts are called and what its figures run from. */
export interface Subject {
  /** The whole plan; in a zone, only the zone's joists, rows and pieces are in it. */
  readonly plan: CeilingPlan;
  /** The zone that this is about; not there where it is about the whole room or what lies outside all zones. */
  readonly zone?: string;
  readonly direction: Direction;
  readonly frame: Frame;
  /** Of the room or the zone, mm. */
  readonly extent: Extent;
  /** The room's walls, in a zone too. */
  readonly walls: readonly NamedWall[];
  /** What bounds the room or the zone. */
  readonly bounds: readonly Bound[];
  readonly sides: SideNames;
  /** What the figures across the joists run from, and those along them. */
  readonly datum: { readonly across: string; readonly along: string };
  readonly unit: FigureUnit;
  readonly say: Say;
  /** A length as a bare figure, and with its unit for running text. */
  readonly length: (mm: number) => string;
  readonly withUnit: (mm: number) => string;
  /** The parts of the ceiling that are boarded by joists of their own; empty where the room has no zones, and in a part. */
  readonly zones: readonly Subject[];
  /** Whether the room has zones. */
  readonly zoned: boolean;
}

export function subjectOf(plan: CeilingPlan, unit: FigureUnit = 'mm', messages: DrawingMessages = {}): Subject {
  const say = sayWith(messages);
  const walls = namedWalls(plan.room, say);
  const common = {
    walls,
    unit,
    say,
    length: (mm: number) => figure(mm, unit),
    withUnit: (mm: number) => figure(mm, unit) + (unit === 'mm' ? ' mm' : ''),
    zones: [],
    zoned: (plan.room.zones ?? []).length > 0,
  };
  const bounds = boundsOfRest({ ...plan.room, zones: [] }, walls, say);
  const whole = { plan, extent: extentOf(plan.room.outline), bounds, ...common, ...seen(plan.meta.direction, bounds, say) };
  return { ...whole, zones: zonesIn(whole) };
}

/** The parts of the ceiling that have joists of their own: the zones and what lies outside them, or the room as one. */
export const zonesOf = (subject: Subject): readonly Subject[] => (subject.zones.length === 0 ? [subject] : subject.zones);

/** The part of the ceiling that a piece lies in. */
export const zoneOf = (subject: Subject, { zone }: Pick<Piece, 'zone'>): Subject =>
  subject.zones.find((each) => each.zone === zone) ?? subject;

function seen(direction: Direction, bounds: readonly Bound[], say: Say) {
  const frame = frameOf(direction);
  const sides = sideNames(bounds, frame, say);
  return { direction, frame, sides, datum: { across: sides.near, along: sides.low } };
}

function zonesIn(whole: Omit<Subject, 'zones'> & { readonly zones: readonly Subject[] }): Subject[] {
  const { plan, say, walls } = whole;
  const zones = plan.room.zones ?? [];
  if (zones.length === 0) return [];
  const holder = ({ start, end }: Joist): string | undefined => {
    const middle = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
    const inside = zones.find(({ outline }) => insideRing(outline, middle));
    return (inside ?? zones.find(({ outline }) => besides(middle).some((place) => insideRing(outline, place))))?.id;
  };
  const part = (zone: string | undefined, bounds: readonly Bound[], extent: Extent): Subject[] => {
    const joists = plan.joists.filter((joist) => holder(joist) === zone);
    const pieces = plan.layout.pieces.filter((piece) => piece.zone === zone);
    if (pieces.length === 0 && joists.length === 0) return [];
    const rows = plan.layout.rows.filter(({ row }) => pieces.some((piece) => piece.row === row));
    const running = joists.filter(({ kind = 'joist' }) => !CROSSWISE.has(kind));
    const along = running.length > 0 ? running : joists;
    return [
      {
        ...whole,
        plan: { ...plan, joists, layout: { ...plan.layout, pieces, rows } },
        ...(zone !== undefined && { zone }),
        extent,
        bounds,
        ...seen(along.length > 0 ? directionOf(along) : plan.meta.direction, bounds, say),
      },
    ];
  };
  return [
    ...part(undefined, boundsOfRest(plan.room, walls, say), restExtent(plan)),
    ...zones.flatMap((zone) => part(zone.id, boundsOfZone(zone, walls, say), extentOf(zone.outline))),
  ];
}

/** A mm to either side: a joist on the border of a zone is the zone's. */
const besides = ({ x, y }: Point): Point[] =>
  [-1, 1].flatMap((step) => [
    { x: x + step, y },
    { x, y: y + step },
  ]);

/** Timbers that may run across the joists. */
const CROSSWISE: ReadonlySet<string> = new Set(['nogging', 'trimmer', 'batten']);

/** Timbers of a part that run across its joists: trimmers and noggings. */
export const isCrosswise = ({ direction }: Subject, joist: Joist): boolean =>
  CROSSWISE.has(joist.kind ?? 'joist') && directionOf([joist]) !== direction;

/** The extent of what lies outside all zones, by the corners that are not a zone's alone. */
function restExtent({ room, layout }: CeilingPlan): Extent {
  const corners = layout.pieces.filter(({ zone }) => zone === undefined).flatMap(({ outline }) => outline);
  if (corners.length === 0) return extentOf(room.outline);
  // Pieces end at their gap to the wall: what lies less than that beyond them is theirs.
  const { left, right, low, high } = extentOf(corners);
  const edges: readonly Point[] = [...room.outline, ...(room.zones ?? []).flatMap(({ outline }) => outline)];
  const beyond = (values: readonly number[], at: number): number =>
    values.reduce((best, value) => (Math.abs(value - at) < Math.abs(best - at) ? value : best), Infinity);
  const [xs, ys] = [edges.map(({ x }) => x), edges.map(({ y }) => y)];
  return { left: beyond(xs, left), right: beyond(xs, right), low: beyond(ys, low), high: beyond(ys, high) };
}

/** A plan point as distances from the least corner of the extent across and along the joists, mm. */
export const fromDatum = ({ frame, extent }: Subject, point: Point): { across: number; along: number } => {
  const { u, v } = frame.into({ x: point.x - extent.left, y: point.y - extent.low });
  return { across: u, along: v };
};
