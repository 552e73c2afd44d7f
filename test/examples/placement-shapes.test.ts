import {
  type BoardLayout,
  checkLayout,
  isInfeasibleError,
  isInputError,
  type Joist,
  type Piece,
  type PlacementRequest,
  type Point,
  placeBoards,
  planCeiling,
  rectangle,
} from 'soffitwright';
import { cutList } from 'soffitwright/drawing';
import { describe, expect, it } from 'vitest';
import { pieceMarks } from '../../src/boards/pieceMarks.js';
import { frameOf } from '../../src/joists/frame.js';
import { boardOf } from '../generators/rooms.js';
import { joistAt } from '../generators/scenario.js';
import { TURNS } from '../generators/turnedAbout.js';

const outline = (...places: readonly (readonly [number, number])[]): Point[] => places.map(([x, y]) => ({ x, y }));
const boards = [boardOf(2400, 1200)];
const joistsAt = (first: number, last: number, spacing = 400) => ({ direction: 'y', first, spacing, last, width: 50 }) as const;

const errorsOf = (request: PlacementRequest, layout: BoardLayout) =>
  checkLayout({ room: request.room, joists: request.joists, boards: request.boards, rules: request.rules ?? {}, layout })
    .filter(({ severity }) => severity === 'error')
    .map(({ message }) => message);

const isRectangle = ({ outline: { length }, holes }: Piece): boolean => length === 4 && holes === undefined;

/** Room of 4.8 m by 3.6 m less a corner of 1.5 m by 1.2 m; a joist at the corner that stands in the room. */
const ELL: PlacementRequest = {
  room: { outline: outline([0, 0], [4800, 0], [4800, 2400], [3300, 2400], [3300, 3600], [0, 3600]) },
  joists: joistsAt(100, 4700),
  boards,
};

/** A breast of 400 by 1200 in the middle of the far wall. */
const BREAST: PlacementRequest = {
  room: {
    outline: outline([0, 0], [4200, 0], [4200, 3600], [2700, 3600], [2700, 3200], [1500, 3200], [1500, 3600], [0, 3600]),
  },
  joists: joistsAt(100, 4100),
  boards,
};

/** A breast of 400 by 1400 in the wall at which the rows begin. */
const BREAST_AT_END: PlacementRequest = {
  room: { outline: outline([0, 0], [4200, 0], [4200, 3600], [0, 3600], [0, 2500], [400, 2500], [400, 1100], [0, 1100]) },
  joists: joistsAt(60, 4060),
  boards,
};

/** A splayed bay of 700 in a wall of 3.9 m. */
const BAY: PlacementRequest = {
  room: {
    outline: outline([0, 0], [3900, 0], [3900, 3300], [3150, 3300], [2650, 4000], [1250, 4000], [750, 3300], [0, 3300]),
  },
  joists: joistsAt(100, 3860),
  boards,
};

describe('rooms that are no rectangles', { timeout: 60_000 }, () => {
  it.each([
    ['an L', ELL],
    ['a breast beside which rows end', BREAST],
    ['a breast at the end of rows', BREAST_AT_END],
    ['a splayed bay', BAY],
  ])('%s: what is laid breaks no rule, whoever looks at it', (_, request) => {
    expect(errorsOf(request, placeBoards(request))).toEqual([]);
  });

  it('an L runs its rows through: no long joint in line with the corner that stands in the room', () => {
    const { rows, proven } = placeBoards(ELL);
    expect(proven).toBe(true);
    const edges = rows.slice(0, -1).map(({ high }) => high);
    expect(edges.length).toBeGreaterThanOrEqual(2);
    // The gap at a wall is 10 at the most.
    expect(edges.filter((edge) => Math.abs(edge - 2400) <= 10)).toEqual([]);
  });

  it('a row is notched round a breast, and the notch is told face up', () => {
    const { pieces } = placeBoards(BREAST_AT_END);
    const notched = pieces.filter((piece) => !isRectangle(piece));
    expect(notched.length).toBeGreaterThan(0);
    for (const { ends, hand } of notched) {
      expect(ends[0].meets).toBe('wall');
      expect(hand?.view).toBe('face up');
    }
  });

  it.each([
    ['an L', ELL],
    ['a bay', BAY],
  ])('%s takes the same boards, joints and pieces turned and mirrored', (_, request) => {
    const counts = TURNS.map(([, turn]) => {
      const { direction, ...at } = joistsAt(100, request === ELL ? 4700 : 3860);
      const room = { outline: request.room.outline.map(turn) };
      const along = turn({ x: 0, y: 1 }).y - turn({ x: 0, y: 0 }).y !== 0;
      const centres = Array.from({ length: 12 }, (__, k) => at.first + k * at.spacing).filter((u) => u < at.last - 50);
      const positions = [...centres, at.last].map((u) => {
        const { x, y } = turn({ x: u, y: 0 });
        return along ? x : y;
      });
      const turned = placeBoards({ room, boards, joists: { direction: along ? 'y' : 'x', positions, width: 50 } });
      expect(direction).toBe('y');
      return [turned.boardsBought, turned.endJoints, turned.pieces.length, turned.areaM2];
    });
    expect(counts).toEqual(TURNS.map(() => counts[0]));
  });

  it('a wall that bows by 18 mm is taken up by one scribed row', () => {
    const { pieces } = placeBoards({
      room: { outline: outline([0, 0], [4400, 0], [4400, 3500], [3300, 3513.5], [2200, 3518], [1100, 3513.5], [0, 3500]) },
      joists: joistsAt(100, 4360),
      boards,
    });
    const scribed = new Set(pieces.filter((piece) => !isRectangle(piece)).map(({ row }) => row));
    expect([...scribed]).toHaveLength(1);
    // The edge along the wall is as long as the other one and a hair more: it falls by 18 in 2200 at the most.
    for (const { row, edgeLengths, cutLength } of pieces) {
      if (!scribed.has(row)) continue;
      expect(edgeLengths?.low).toBe(cutLength);
      expect(edgeLengths?.high).toBeGreaterThanOrEqual(cutLength);
      expect(edgeLengths?.high).toBeLessThan(cutLength + 0.5);
    }
  });

  it('walls that stray by less than the gap may are met by square ends and straight rows', () => {
    const { pieces } = placeBoards({
      room: { outline: outline([0, 0], [3600, 3], [3604, 3000], [0, 2998]) },
      joists: joistsAt(25, 3575),
      boards,
    });
    expect(pieces.every(isRectangle)).toBe(true);
  });

  it('a parallelogram 51 mm out: rows square to the joists, and both edges of each piece at a leaning wall', () => {
    const { pieces } = placeBoards({
      room: { outline: outline([0, 0], [4200, 0], [4251, 3000], [51, 3000]) },
      joists: { direction: 'y', first: 200, spacing: 400, width: 50 },
      boards,
    });
    const ends = pieces.filter(
      ({ width, ends: [low, high] }) => width === 1200 && (low.meets === 'wall') !== (high.meets === 'wall'),
    );
    expect(ends.length).toBeGreaterThan(0);
    // 51 mm over 3000 is 20.4 over 1200.
    for (const { edgeLengths } of ends) {
      expect(Math.abs((edgeLengths?.low ?? 0) - (edgeLengths?.high ?? 0))).toBeCloseTo(20.4, 1);
    }
  });
});

describe('a far wall that runs in by 200 over 4200: the last row is tapered', { timeout: 60_000 }, () => {
  const job = {
    room: { outline: outline([0, 0], [4200, 0], [4200, 2800], [0, 3000]) },
    joists: joistsAt(50, 4150),
    boards,
    rules: { 'perimeter.gap': 3, 'joint.gap': 3 },
  };
  const plan = planCeiling({ ...job, lining: [] });
  const tapered = plan.layout.pieces.filter(({ outline: ring }) => new Set(ring.map(({ y }) => y)).size > 2);

  it('has both long edges: the slanting one is longer by 1 in 882, for the wall falls by 1 in 21', () => {
    expect(tapered.map(({ cutLength }) => cutLength)).toEqual([2045.5, 2145.5]);
    for (const { cutLength, edgeLengths, edges, ends } of tapered) {
      expect(edgeLengths?.low).toBe(cutLength);
      // The square root of 1 + 1 / 441.
      expect(edgeLengths?.high).toBeCloseTo(cutLength * 1.0011331, 2);
      expect(edges).toEqual({ low: 'bound', high: 'cut' });
      expect(ends.flatMap(({ rake }) => rake ?? [])).toEqual([]);
    }
  });

  it('has a hand: face up the slant is at the foot, square to the end where it is wide', () => {
    for (const { cutLength, width, hand } of tapered) {
      expect(hand?.view).toBe('face up');
      const corners = [...(hand?.outline ?? [])].sort((a, b) => a.x - b.x || a.y - b.y);
      const expected = [0, 0, 0, width, cutLength, cutLength / 21, cutLength, width];
      const found = corners.flatMap(({ x, y }) => [x, y]);
      expect(found).toHaveLength(expected.length);
      for (const [i, at] of found.entries()) expect(at).toBeCloseTo(expected[i], 2);
    }
    const { columns, rows } = cutList(plan);
    const noted = rows.filter((row) => String(row[columns.indexOf('note')]).includes('its mirror image does not fit'));
    expect(noted.map(([id]) => id)).toEqual(tapered.map(({ id }) => id));
  });

  it('is checked for it: with the hands left out each of its pieces is told, and no other', () => {
    expect(errorsOf(job, plan.layout)).toEqual([]);
    const pieces = plan.layout.pieces.map(({ hand: _, ...piece }) => piece);
    expect(errorsOf(job, { ...plan.layout, pieces })).toEqual(
      tapered.map(({ id }) => `The layout says piece ${id}, hand: none; its outlines say its mirror image does not fit.`),
    );
  });
});

describe('the long edges of a piece as cut', () => {
  const marked = (...places: readonly (readonly [number, number])[]) => {
    const part = { mirrored: { u: false, v: false }, frame: frameOf('y') } as Parameters<typeof pieceMarks>[0];
    const ring = places.map(([x, y]) => ({ x: 1000 * x, y: 1000 * y }));
    const { edgeLengths, level, rakes, hand } = pieceMarks(part, { outline: ring, holes: [] });
    return { ...edgeLengths, level, rakes, isHanded: hand !== undefined };
  };
  const none = [undefined, undefined];

  it('of a rectangle are its length, and nothing tells its hands apart', () => {
    const { isHanded, ...told } = marked([0, 0], [2400, 0], [2400, 1200], [0, 1200]);
    expect(told).toEqual({ low: 2400, high: 2400, level: [true, true], rakes: none });
    expect(isHanded).toBe(false);
  });

  // Slants of 7, 24 and 25 or 3, 4 and 5.
  it.each([
    ['a taper is as long as its slant', [2400, 500, 0, 1200], { low: 2400, high: 2500, level: [true, false], rakes: none }],
    [
      'an edge that bends is as long as both parts',
      [2400, 500, 1200, 850, 0, 850],
      { low: 2400, high: 2450, level: [true, true], rakes: none },
    ],
    ['a wedge that runs out has its slant for an edge', [0, 700], { low: 2400, high: 2500, level: [true, false], rakes: none }],
    [
      'a tip at the edge is no edge, and its side a raked end',
      [0, 3200],
      { low: 2400, high: 0, level: [true, false], rakes: [undefined, -2400] },
    ],
    [
      'a raked end is an end, however far it leans',
      [800, 1200, 0, 1200],
      { low: 2400, high: 800, level: [true, true], rakes: [undefined, -1600] },
    ],
    [
      'a notch leaves an edge what is beside it',
      [2400, 1200, 1600, 1200, 1600, 1000, 1000, 1000, 1000, 1200, 0, 1200],
      { low: 2400, high: 1800, level: [true, true], rakes: none },
    ],
  ])('%s', (_, rest, told) => {
    const corners = rest.flatMap((x, i) => (i % 2 === 0 ? [[x, rest[i + 1]] as const] : []));
    expect(marked([0, 0], [2400, 0], ...corners)).toEqual({ ...told, isHanded: true });
  });
});

/** Irregular joists whose far ends are further apart by so much over 3.6 m. */
const fanned = (by: number): PlacementRequest => ({
  room: { outline: rectangle(3780, 4150) },
  joists: {
    direction: 'y',
    width: 50,
    positions: [110, 470, 820, 1185, 1530, 1880, 2250, 2595, 2950, 3310, 3660].map((at, k) => ({
      atStart: at,
      atEnd: at + (by * k * 4150) / 36_000,
    })),
  },
  boards,
});

describe('joists cut by trimmers round a hatch', { timeout: 60_000 }, () => {
  const joists = Array.from({ length: 12 }, (_, k) => 200 + 400 * k).flatMap((x, k) =>
    x > 1700 && x < 2700
      ? [joistAt(`J${k + 1}a`, x, 0, 900), joistAt(`J${k + 1}b`, x, 1700, 3000)]
      : [joistAt(`J${k + 1}`, x, 0, 3000)],
  );
  const hatch = outline([1750, 1000], [2650, 1000], [2650, 1600], [1750, 1600]);
  const request: PlacementRequest = {
    room: { outline: rectangle(4800, 3000), openings: [{ kind: 'hatch', outline: hatch }] },
    joists,
    boards,
  };

  it('no butt joint where its joist is not over the whole of it', () => {
    const layout = placeBoards(request);
    const joints = layout.pieces.flatMap(({ ends, outline: ring }) =>
      ends.flatMap(({ joist: id }) => (id === undefined ? [] : [{ id, ring }])),
    );
    expect(joints.length).toBeGreaterThan(0);
    for (const { id, ring } of joints) {
      const { start, end } = joists.find((each) => each.id === id) as Joist;
      const ys = ring.map(({ y }) => y);
      expect(start.y <= Math.min(...ys) && Math.max(...ys) <= end.y).toBe(true);
    }
    expect(errorsOf(request, layout)).toEqual([]);
  });
});

describe('joists that fan', { timeout: 60_000 }, () => {
  const rakesOf = ({ pieces }: BoardLayout) => pieces.flatMap(({ ends }) => ends.flatMap(({ rake }) => rake ?? []));

  it('by 20 mm over 3.6 m: every cut is square', () => {
    expect(rakesOf(placeBoards(fanned(20)))).toEqual([]);
  });

  it('by 60 mm: ends are raked along their joists, both pieces alike, where half the rake is over the tolerance of 4.5', () => {
    const layout = placeBoards(fanned(60));
    expect(rakesOf(layout).length).toBeGreaterThan(0);
    for (const [i, piece] of layout.pieces.entries()) {
      const [, high] = piece.ends;
      if (high.meets !== 'board') continue;
      const joist = Number(high.joist?.slice(1)) - 1;
      const { low: from, high: to } = layout.rows[piece.row - 1];
      const rake = (6 * joist * (to - from)) / 3600;
      if (rake <= 9) expect(high.rake).toBeUndefined();
      else expect(high.rake).toBeCloseTo(rake, 1);
      expect(layout.pieces[i + 1].ends[0].rake).toBe(high.rake);
    }
  });
});

const twoCeilings: PlacementRequest = {
  room: {
    outline: rectangle(3300, 6400),
    zones: [
      { id: 'A', outline: rectangle(3300, 3600), joists: { direction: 'y', first: 60, spacing: 400, width: 50 } },
      {
        id: 'B',
        outline: outline([0, 3600], [3300, 3600], [3300, 6400], [0, 6400]),
        joists: { direction: 'y', first: 150, spacing: 600, width: 50 },
      },
    ],
  },
  joists: [],
  boards: [boardOf(3000, 1200)],
  rules: { 'perimeter.gap': 3, 'joint.gap': 3 },
};

describe('zones', { timeout: 60_000 }, () => {
  it('two ceilings knocked through: a row edge at the border, no piece across it, one order of boards', () => {
    const { pieces, rows, boardsBought, findings } = placeBoards(twoCeilings);
    expect(rows.filter(({ low, high }) => low === 3600 || high === 3600).map(({ zone }) => zone)).toEqual(['A', 'B']);
    for (const piece of pieces) {
      const ys = piece.outline.map(({ y }) => y);
      expect(piece.zone === 'A' ? Math.max(...ys) <= 3600 : Math.min(...ys) >= 3600).toBe(true);
    }
    expect(boardsBought).toBeLessThanOrEqual(7);
    expect(rows.map(({ row }) => row)).toEqual(rows.map((_, i) => i + 1));
    const border = findings.filter(({ code }) => code === 'zone-border');
    expect(border.map(({ severity, value, where }) => [severity, value, where?.at])).toEqual([
      ['note', 3300, { x: 1650, y: 3600 }],
    ]);
  });

  it('a beam between two ceilings whose joists run differently is not boarded', () => {
    const request: PlacementRequest = {
      room: {
        outline: rectangle(2400, 4250),
        zones: [
          { id: 'near', outline: rectangle(2400, 1800), joists: joistsAt(60, 2340) },
          {
            id: 'far',
            outline: outline([0, 2050], [2400, 2050], [2400, 4250], [0, 4250]),
            joists: { direction: 'x', first: 60, spacing: 400, last: 2140, width: 50 },
          },
        ],
      },
      joists: [],
      boards,
    };
    const { pieces, findings } = placeBoards(request);
    for (const { outline: ring, zone } of pieces) {
      const ys = ring.map(({ y }) => y);
      expect(zone === 'near' ? Math.max(...ys) <= 1795 : Math.min(...ys) >= 2055).toBe(true);
    }
    expect(findings.filter(({ code }) => code === 'zone-border').map(({ value }) => value)).toEqual([2400, 2400]);
  });
});

describe('rooms that cannot be planned are refused', () => {
  const refused = (request: PlacementRequest): string => {
    try {
      placeBoards(request);
    } catch (error) {
      if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`).join();
      if (isInfeasibleError(error)) return 'infeasible';
      throw error;
    }
    return 'planned';
  };
  const room = { outline: rectangle(3600, 3000) };
  const joists = joistsAt(25, 3575);

  it.each<[string, PlacementRequest, string]>([
    ['no joists', { room, joists: [], boards }, 'too-small joists'],
    [
      'sides that cross',
      { room: { outline: outline([0, 0], [3000, 3000], [3000, 0], [0, 3000]) }, joists, boards },
      'outline-crossing room.outline',
    ],
    ['smaller than any room', { room: { outline: rectangle(3600, 150) }, joists, boards }, 'room-too-small room.outline'],
    ['a gap larger than the room', { room, joists, boards, rules: { 'perimeter.gap': 1500 } }, 'room-too-small room.outline'],
    ['a gap larger than a room of any shape', { ...ELL, rules: { 'perimeter.gap': 1700 } }, 'room-too-small room.outline'],
  ])('%s', (_, request, told) => {
    expect(refused(request)).toBe(told);
  });

  it('joists 750 apart are planned, and a board larger than the room', () => {
    expect(refused({ room, joists: joistsAt(75, 3525, 750), boards })).toBe('planned');
    expect(refused({ room: { outline: rectangle(2000, 1000) }, joists: joistsAt(25, 1975), boards })).toBe('planned');
  });
});

describe('rows ripped at both sides', () => {
  // 3600 less two gaps of 3 is one full row and 1197 at each side, too much for a board to give two strips of.
  const request: PlacementRequest = {
    room: {
      outline: outline([0, 0], [3900, 0], [3900, 1100], [3550, 1100], [3550, 2500], [3900, 2500], [3900, 3600], [0, 3600]),
    },
    joists: joistsAt(50, 3850),
    boards,
    rules: { 'perimeter.gap': 3, 'joint.gap': 3 },
    rowWidths: [1197, 1200, 1197],
  };

  it('have their cut edges at the walls, and bound ones between them', () => {
    const { pieces } = placeBoards(request);
    expect(pieces.filter(({ row }) => row === 1).map(({ edges }) => edges)).toEqual([
      { low: 'cut', high: 'bound' },
      { low: 'cut', high: 'bound' },
    ]);
    for (const { edges } of pieces.filter(({ row }) => row === 2)) expect(edges).toEqual({ low: 'bound', high: 'bound' });
    for (const { edges } of pieces.filter(({ row }) => row === 3)) expect(edges).toEqual({ low: 'bound', high: 'cut' });
  });
});
