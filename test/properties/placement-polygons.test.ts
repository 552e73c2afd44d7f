import {
  type BoardLayout,
  checkLayout,
  type Finding,
  type Joist,
  type Opening,
  type Overrides,
  type PlacementRequest,
  type Point,
  type Room,
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

/** The area of a room that is not boarded, mm2. */
function bareIn({ outline, openings = [] }: Room, { pieces }: BoardLayout): number {
  const wanted = areaOf(outline) - total(openings.map((opening) => ('outline' in opening ? opening.outline : [])));
  return wanted - total(pieces.map((piece) => piece.outline)) + total(pieces.flatMap(({ holes = [] }) => holes));
}

/** Codes of what may not be in any layout, whatever the rules. */
const MISLAID = ['overlap', 'over-opening', 'outside-room', 'cover-gap'];

const necksIn = (found: readonly Finding[]): string[] =>
  found
    .flatMap(({ code, where, value = 0 }) => (code === 'piece-neck-narrow' ? [`${where?.piece}: ${value.toFixed(2)}`] : []))
    .sort();

/** What is wrong with the layout of a room, in words; layouts are not kept, for there may be thousands. */
function judge(seed: number) {
  const [turnName, turn] = TURNS[Math.floor(seed / 2) % TURNS.length];
  const name = `${seed}, ${turnName}`;
  const made = turned(polygonRoom(seed), turn);
  const attempt = tryPlaceBoards(requestOf(made));
  if (!attempt.ok) return { missed: [`${name}: ${attempt.reason}`], mislaid: [] };
  const { value: layout } = attempt;
  const area = Math.abs(bareIn(made.room, layout));
  const allowed = made.rectilinear ? 1 : 0.001 * girthOf(made.room.outline);
  const { room, joists, boards } = made;
  const findings = checkLayout({ room, joists, boards, rules: TIGHT, layout });
  const [necks, told] = [necksIn(findings), necksIn(layout.findings)].map((each) => each.join(', '));
  return {
    missed: area > allowed ? [`${name}: ${area} mm2`] : [],
    mislaid: [
      ...findings.filter(({ code }) => MISLAID.includes(code)).map(({ message }) => `${name}: ${message}`),
      ...(necks === told ? [] : [`${name}: necks ${necks}, told ${told}`]),
    ],
  };
}

describe('rooms of any outline, turned and mirrored', () => {
  const judged = Array.from({ length: ROOMS }, (_, seed) => judge(seed));

  it(`${ROOMS} of them are covered by their pieces and openings, to 1 mm2 or 0.001 mm of the walls' length`, () => {
    expect(judged.flatMap(({ missed }) => missed)).toEqual([]);
  });

  it('no piece of them lies over another, over an opening or beyond the walls, and all necks are told', () => {
    expect(judged.flatMap(({ mislaid }) => mislaid)).toEqual([]);
  });
});

describe('rooms of any outline by the rules as they are, with the whole search', () => {
  const placed = Array.from({ length: 12 }, (_, seed) => {
    const [name, turn] = TURNS[(5 * seed + 3) % TURNS.length];
    const { room, joists, boards } = turned(polygonRoom(5000 + seed), turn);
    return { name: `${5000 + seed}, ${name}`, request: { room, joists, boards } };
  }).flatMap(({ name, request }) => {
    const attempt = tryPlaceBoards(request);
    return attempt.ok ? [{ name, request, layout: attempt.value }] : [];
  });

  it('can be laid often enough', () => {
    expect(placed.length).toBeGreaterThanOrEqual(8);
  });

  it('are covered but for the gaps, and break no rule that must hold', () => {
    const found = placed.flatMap(({ name, request, layout }) =>
      checkLayout({ ...request, layout })
        .filter(({ severity }) => severity === 'error')
        .map(({ message }) => `${name}: ${message}`),
    );
    expect(found).toEqual([]);
  });

  it('are covered to within their gaps by the areas too', () => {
    for (const { name, request, layout } of placed) {
      const { outline, openings = [] } = request.room;
      const bare = bareIn(request.room, layout);
      // A gap of 10 at the most along every wall and opening, and of 5 at each butt joint.
      const girth = girthOf(outline) + openings.reduce((sum, each) => sum + ('outline' in each ? girthOf(each.outline) : 0), 0);
      const deepest = Math.max(...layout.rows.map(({ width }) => width));
      expect(bare, name).toBeGreaterThan(0);
      expect(bare, name).toBeLessThanOrEqual(10 * girth + 5 * deepest * layout.endJoints);
    }
  });
});
