import {
  checkLayout,
  type Finding,
  type Joist,
  type Opening,
  type Overrides,
  type PlacementRequest,
  type Point,
  tryPlaceBoards,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { type PolygonRoom, polygonRoom } from '../generators/polygonRooms.js';
import { TURNS } from '../generators/turnedAbout.js';

/** Rooms that are tried; DEVELOPERS.md says how to try more. */
const ROOMS = Number(process.env.POLYGON_ROOMS ?? 24);

/** No gaps, so that pieces and openings fill the room; and no least sizes, so that every room can be laid. */
const TIGHT: Overrides = {
  'perimeter.gap': 0,
  'joint.gap': 0,
  'piece.minimumLength': 0,
  'piece.minimumSupports': 0,
  'stagger.minimum': 0,
};

/** mm2, relative to the first corner. */
const areaOf = (ring: readonly Point[]): number => {
  const [origin] = ring;
  const twice = ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length];
    return sum + (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  }, 0);
  return Math.abs(twice) / 2;
};

const girthOf = (ring: readonly Point[]): number =>
  ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length];
    return sum + Math.hypot(b.x - a.x, b.y - a.y);
  }, 0);

const total = (rings: readonly (readonly Point[])[]): number => rings.reduce((sum, ring) => sum + areaOf(ring), 0);

/** Full rows and a ripped one, so that no time is spent on other rows. */
function fullRows({ room, joists, boards: [{ width }] }: PolygonRoom): number[] {
  const [{ start, end }] = joists as readonly Joist[];
  const axis = Math.abs(end.x - start.x) > Math.abs(end.y - start.y) ? 'x' : 'y';
  const places = room.outline.map((point) => point[axis]);
  const depth = Math.round((Math.max(...places) - Math.min(...places)) * 1000) / 1000;
  const count = Math.floor(depth / width);
  const rest = Math.round((depth - count * width) * 1000) / 1000;
  return [...Array.from({ length: count }, () => width), ...(rest > 0 ? [rest] : [])];
}

function turned({ room, joists, boards, rectilinear }: PolygonRoom, turn: (point: Point) => Point): PolygonRoom {
  const ring = (points: readonly Point[]): Point[] => points.map(turn);
  const openings = (room.openings ?? []).map(
    (opening): Opening =>
      'outline' in opening ? { ...opening, outline: ring(opening.outline) } : { ...opening, centre: turn(opening.centre) },
  );
  return {
    rectilinear,
    boards,
    room: { outline: ring(room.outline), openings },
    joists: (joists as readonly Joist[]).map((joist) => ({ ...joist, start: turn(joist.start), end: turn(joist.end) })),
  };
}

const requestOf = (made: PolygonRoom): PlacementRequest => {
  const { rectilinear: _, ...request } = made;
  return { ...request, rules: TIGHT, budget: 300, rowWidths: fullRows(made) };
};

describe('rooms of any outline, turned and mirrored', { timeout: 3_600_000 }, () => {
  it(`${ROOMS} of them are covered by their pieces and openings, to 1 mm2 or 0.001 mm of the walls' length`, () => {
    const missed: string[] = [];
    for (let seed = 0; seed < ROOMS; seed++) {
      const [name, turn] = TURNS[Math.floor(seed / 2) % TURNS.length];
      const made = turned(polygonRoom(seed), turn);
      const attempt = tryPlaceBoards(requestOf(made));
      if (!attempt.ok) {
        missed.push(`${seed}, ${name}: ${attempt.reason}`);
        continue;
      }
      const { outline, openings = [] } = made.room;
      const wanted = areaOf(outline) - total(openings.map((opening) => ('outline' in opening ? opening.outline : [])));
      const { pieces } = attempt.value;
      const laid = total(pieces.map((piece) => piece.outline)) - total(pieces.flatMap(({ holes = [] }) => holes));
      const allowed = made.rectilinear ? 1 : 0.001 * girthOf(outline);
      if (Math.abs(laid - wanted) > allowed) missed.push(`${seed}, ${name}: ${laid - wanted} mm2`);
    }
    expect(missed).toEqual([]);
  });

  it('no piece of them lies over another, over an opening or beyond the walls, and all necks are told', () => {
    const found: string[] = [];
    for (let seed = 0; seed < ROOMS / 4; seed++) {
      const { rules = {}, ...request } = requestOf(polygonRoom(seed));
      const attempt = tryPlaceBoards({ ...request, rules });
      if (!attempt.ok) continue;
      const { room, joists, boards } = request;
      const findings = checkLayout({ room, joists, boards, rules, layout: attempt.value });
      for (const { code, message } of findings) {
        if (['overlap', 'over-opening', 'outside-room', 'cover-gap'].includes(code)) found.push(`${seed}: ${message}`);
      }
      const necks = (told: readonly Finding[]) =>
        told.flatMap(({ code, where, value = 0 }) =>
          code === 'piece-neck-narrow' ? [`${where?.piece}: ${value.toFixed(2)}`] : [],
        );
      expect(necks(findings).sort(), String(seed)).toEqual(necks(attempt.value.findings).sort());
    }
    expect(found).toEqual([]);
  });
});
