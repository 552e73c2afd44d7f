import type { Piece } from '../boards/boardLayout.js';
import { directionOf, type Frame, frameOf } from '../joists/frame.js';
import type { Direction, Joist } from '../survey/joist.js';
import { extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { restOfRoom } from '../survey/restOfRoom.js';
import type { Room } from '../survey/room.js';
import { type Borders, boundsOf, isIn, type ZoneBorder, zoneBorders } from './bounds.js';
import { sideNames } from './sideNames.js';
import type { Subject } from './subject.js';

type Zone = NonNullable<Room['zones']>[number];

/** The parts of a ceiling with zones that are boarded: what lies outside all zones, and the zones in their order. */
export function zonesIn(room: Subject): Subject[] {
  const { plan, say, walls } = room;
  const { zones = [] } = plan.room;
  if (zones.length === 0) return [];
  const { near, far, low, high } = sideNames(room.bounds, frameOf('y'), say);
  const borders = zoneBorders(plan.room, walls, { left: near, right: far, low, high }, say);
  const rests = restOfRoom(plan.room).map((rings, index) =>
    part(room, {
      rings,
      borders,
      name: index === 0 ? say('zone.rest') : say('zone.restNext', { number: index + 1 }),
      joists: plan.joists.filter((joist) => zoneOfJoist(joist, zones) === undefined && runsIn(rings, joist)),
      pieces: plan.layout.pieces.filter((piece) => piece.zone === undefined && isIn(rings, middleOf(piece))),
    }),
  );
  const own = zones.map((zone) =>
    part(room, {
      rings: zone,
      borders: [...borders].sort((a, b) => Number(b.zone === zone.id) - Number(a.zone === zone.id)),
      name: zone.id,
      zone: zone.id,
      joists: plan.joists.filter((joist) => zoneOfJoist(joist, zones) === zone),
      pieces: plan.layout.pieces.filter((piece) => piece.zone === zone.id),
    }),
  );
  return [...rests, ...own].filter(({ plan: { joists, layout } }) => joists.length + layout.pieces.length > 0);
}

interface Part {
  readonly rings: Borders;
  /** Of all zones, the part's own first. */
  readonly borders: readonly ZoneBorder[];
  readonly name: string;
  readonly zone?: string;
  readonly joists: readonly Joist[];
  readonly pieces: readonly Piece[];
}

function part(room: Subject, { rings, borders, name, zone, joists, pieces }: Part): Subject {
  const { plan, walls, say } = room;
  const rows = plan.layout.rows.filter(({ row }) => pieces.some((piece) => piece.row === row));
  const bounds = boundsOf(rings, walls, borders);
  const along = joists.filter(({ kind = 'joist' }) => !CROSSWISE.has(kind));
  const direction = directionOf(along.length > 0 ? along : joists);
  return {
    ...room,
    plan: { ...plan, joists, layout: { ...plan.layout, pieces, rows } },
    ...(zone !== undefined && { zone }),
    name,
    rings,
    extent: extentOf(rings.outline),
    bounds,
    ...seenFrom(joists.length === 0 ? plan.meta.direction : direction, { bounds, say }),
  };
}

/** A part as seen along its joists: which way round it is and what its sides are called. */
export function seenFrom(direction: Direction, { bounds, say }: Pick<Subject, 'bounds' | 'say'>) {
  const frame: Frame = frameOf(direction);
  const sides = sideNames(bounds, frame, say);
  return { direction, frame, sides, datum: { across: sides.near, along: sides.low } };
}

/** Timbers that may run across the joists. */
const CROSSWISE: ReadonlySet<string> = new Set(['nogging', 'trimmer', 'batten']);

/** Whether a timber of a part runs across its joists, as trimmers and noggings do. */
export const isCrosswise = ({ direction }: Subject, joist: Joist): boolean =>
  CROSSWISE.has(joist.kind ?? 'joist') && directionOf([joist]) !== direction;

/** The zone that a joist belongs to: the one that lists it or whose name its own begins with, else a listing one that it runs in. */
function zoneOfJoist(joist: Joist, zones: readonly Zone[]): Zone | undefined {
  const listed = ({ joists }: Zone): boolean => Array.isArray(joists);
  const names = (zone: Zone): boolean =>
    Array.isArray(zone.joists) ? zone.joists.some(({ id }: Joist) => id === joist.id) : joist.id.startsWith(`${zone.id} `);
  return zones.find(names) ?? zones.find((zone) => listed(zone) && runsIn(zone, joist));
}

/** How many places of a joist's centre line are looked at. */
const LOOKS = 8;

/** Whether a joist runs in a part, or along its border. */
function runsIn(rings: Borders, { start, end }: Joist): boolean {
  return Array.from({ length: LOOKS - 1 }, (_, i) => (i + 1) / LOOKS).some((share) => {
    const { x, y } = { x: start.x + (end.x - start.x) * share, y: start.y + (end.y - start.y) * share };
    const beside: readonly Point[] = [
      { x, y },
      { x: x + 1, y },
      { x: x - 1, y },
      { x, y: y + 1 },
      { x, y: y - 1 },
    ];
    return beside.some((place) => isIn(rings, place));
  });
}

/** A place in a piece: halfway along the middle of it. */
function middleOf({ outline }: Piece): Point {
  const { left, right, low, high } = extentOf(outline);
  return { x: (left + right) / 2, y: (low + high) / 2 };
}
