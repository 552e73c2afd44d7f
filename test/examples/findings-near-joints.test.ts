import { joistsFromPositions, type Layer, type Opening, type Piece, type Point, type Room, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { findingsByHand, rowByHand } from '../generators/findingsByHand.js';
import { handLaidPiece, joint, wall } from '../generators/handLaid.js';

/** 3600 by 2410 in two rows: butt joints at 2025 in the first and at 1225 in the second, the long joint at 1205. */
const pieces: readonly Piece[] = [
  handLaidPiece({ id: '1.1', ends: [wall(5), joint(2025, 'J6')], low: 5, high: 1205 }),
  handLaidPiece({ id: '1.2', ends: [joint(2025, 'J6'), wall(3595)], low: 5, high: 1205 }),
  { ...handLaidPiece({ id: '2.1', ends: [wall(5), joint(1225, 'J4')], low: 1205, high: 2405 }), row: 2 },
  { ...handLaidPiece({ id: '2.2', ends: [joint(1225, 'J4'), wall(3595)], low: 1205, high: 2405 }), row: 2 },
];
const positions = [25, 425, 825, 1225, 1625, 2025, 2425, 2825, 3225, 3575];

interface More {
  readonly openings?: readonly Opening[];
  readonly joints?: readonly (readonly [Point, Point])[];
  readonly walls?: Room['walls'];
  readonly ripped?: boolean;
}

function told(code: string, { openings, joints, walls, ripped = false }: More) {
  const room = { outline: rectangle(3600, 2410), ...(openings && { openings }), ...(walls && { walls }) };
  const joists = joistsFromPositions({ room, direction: 'y', positions, width: 50 });
  const lining: Layer[] = joints ? [{ kind: 'plasterboard', thickness: 9.5, joints }] : [];
  const rows = [rowByHand(1, 5, 1205), rowByHand(2, 1205, 2405, ripped)];
  return findingsByHand({ room, joists, pieces, rows, lining })
    .filter((each) => each.code === code)
    .map(({ value, where }) => [value, ...(where?.pieces ?? [`row ${where?.row}`])]);
}

const line = (x0: number, y0: number, x1: number, y1: number) =>
  [
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ] as const;

describe('joints of the old ceiling', () => {
  const over = (...joints: readonly (readonly [Point, Point])[]) => told('joint-over-old-joint', { joints });

  it('under a new butt joint or beside it are told, with how far', () => {
    expect(over(line(2025, 0, 2025, 1200))).toEqual([[0, '1.1', '1.2']]);
    expect(over(line(2224, 100, 2224, 900))).toEqual([[199, '1.1', '1.2']]);
    expect(over(line(2225, 0, 2225, 1200))).toEqual([]);
  });

  it('on the same joist count where the two would make one line', () => {
    expect(over(line(2025, 1205, 2025, 2410))).toEqual([[0, '1.1', '1.2']]);
    expect(over(line(2025, 1404, 2025, 2410))).toEqual([[0, '1.1', '1.2']]);
    expect(over(line(2025, 1405, 2025, 2410))).toEqual([]);
  });

  it('that run with the rows are held against the long joint, told once for the row', () => {
    expect(over(line(0, 1300, 3600, 1300))).toEqual([[95, '1.1', '2.1']]);
    expect(over(line(0, 1405, 3600, 1405))).toEqual([]);
  });

  it('that lean are nearest where they come nearest, and 0 where they cross', () => {
    expect(over(line(2125, 0, 2325, 2410))[0][0]).toBeCloseTo(100.415, 3);
    expect(over(line(1925, 0, 2125, 1210))).toEqual([[0, '1.1', '1.2']]);
  });

  it('that run across a new joint are nothing to it', () => {
    expect(over(line(1900, 500, 2150, 500))).toEqual([]);
  });
});

it('butt joints of rows that do not meet are not held against each other', () => {
  const room = { outline: rectangle(3600, 2410) };
  const joists = joistsFromPositions({ room, direction: 'y', positions, width: 50 });
  const near = pieces.map((piece) => (piece.row === 1 ? piece : { ...piece, ends: pieces[Number(piece.id.slice(2)) - 1].ends }));
  const stagger = (low: number) =>
    findingsByHand({ room, joists, pieces: near, rows: [rowByHand(1, 5, 1205), rowByHand(2, low, low + 1200)] }).filter(
      ({ code }) => code === 'stagger',
    ).length;
  expect([stagger(1205), stagger(1210)]).toEqual([1, 0]);
});

describe('openings', () => {
  const square = (kind: Opening['kind'], x: number, y: number, side: number): Opening => ({
    kind,
    outline: [
      { x, y },
      { x: x + side, y },
      { x: x + side, y: y + side },
      { x, y: y + side },
    ],
  });

  it('that are no hatch are kept clear of by any joint', () => {
    const near = (...openings: Opening[]) => told('joint-near-opening', { openings });
    expect(near({ kind: 'light', centre: { x: 2150, y: 600 }, diameter: 70 })).toEqual([[90, '1.1', '1.2']]);
    expect(near({ kind: 'light', centre: { x: 2160, y: 600 }, diameter: 70 })).toEqual([]);
    expect(near({ kind: 'light', centre: { x: 3000, y: 1205 }, diameter: 70 })).toEqual([[0, '1.2', '2.2']]);
    expect(near(square('column', 2124, 200, 300))).toEqual([[99, '1.1', '1.2']]);
    expect(near(square('flue', 1000, 1900, 450))).toEqual([[0, '2.1', '2.2']]);
    expect(near(square('hatch', 2124, 200, 300))).toEqual([]);
  });

  it('that are a hatch are not to have a joint in line with a corner', () => {
    const near = (...openings: Opening[]) => told('joint-near-hatch-corner', { openings });
    expect(near(square('hatch', 2150, 300, 600))).toEqual([[125, '1.1', '1.2']]);
    expect(near(square('hatch', 2175, 300, 600))).toEqual([]);
    expect(near(square('hatch', 1725, 300, 600))).toEqual([]);
    // In line with a corner beyond the row's edge, and nearer to that corner than the same distance.
    expect(near(square('hatch', 2100, 1340, 500))).toEqual([
      [75, '1.1', '1.2'],
      [135, '1.1', '2.2'],
    ]);
    expect(near({ kind: 'hatch', centre: { x: 2400, y: 500 }, diameter: 500 })).toEqual([[125, '1.1', '1.2']]);
  });
});

describe('a window', () => {
  it('in a wall that runs with the joists shows butt joints nearer than 1200', () => {
    expect(told('raking-light', { walls: [{ edge: 3, window: true }] })).toEqual([]);
    expect(told('raking-light', { walls: [{ edge: 1, window: true }] })).toEqual([]);
    const room = { outline: rectangle(3600, 2410), walls: [{ edge: 3, window: true }] };
    const joists = joistsFromPositions({ room, direction: 'y', positions, width: 50 });
    const [first] = findingsByHand({
      room,
      joists,
      pieces: [
        handLaidPiece({ id: '1.1', ends: [wall(5), joint(1199, 'J4')], low: 5, high: 1205 }),
        handLaidPiece({ id: '1.2', ends: [joint(1199, 'J4'), wall(3595)], low: 5, high: 1205 }),
      ],
      rows: [rowByHand(1, 5, 1205)],
    }).filter(({ code }) => code === 'raking-light');
    expect(first).toMatchObject({ severity: 'warning', value: 1199, limit: 1200, where: { joist: 'J4', wall: 3 } });
  });

  it('does not see round a corner', () => {
    // A breast between the window and the joint hides the joint.
    const outline = [
      [0, 0],
      [3600, 0],
      [3600, 1210],
      [900, 1210],
      [900, 300],
      [600, 300],
      [600, 1210],
      [0, 1210],
    ].map(([x, y]) => ({ x, y }));
    const room = { outline, walls: [{ edge: 7, window: true }] };
    const joists = joistsFromPositions({ room, direction: 'y', positions: [25, 425, 825, 1125, 1625, 2025], width: 50 });
    const up = [
      handLaidPiece({ id: '1.1', ends: [wall(905), joint(1125, 'J4')], low: 305, high: 1205 }),
      handLaidPiece({ id: '1.2', ends: [joint(1125, 'J4'), wall(3595)], low: 305, high: 1205 }),
    ];
    const codes = findingsByHand({ room, joists, pieces: up, rows: [rowByHand(1, 5, 1205)] }).map(({ code }) => code);
    expect(codes).not.toContain('raking-light');
  });

  it('in a wall that runs with the rows wants a full row there', () => {
    const at = (edge: number, ripped: boolean) => told('window-row-ripped', { walls: [{ edge, window: true }], ripped });
    expect(at(2, true)).toEqual([[1200, 'row 2']]);
    expect(at(0, true)).toEqual([]);
    expect(at(2, false)).toEqual([]);
    expect(at(1, true)).toEqual([]);
  });
});

describe('a notched piece', () => {
  it('is told where what is left of it would snap', () => {
    const room = { outline: rectangle(2400, 1210) };
    const joists = joistsFromPositions({ room, direction: 'y', positions: [25, 425, 825, 1225, 1625, 2025, 2375], width: 50 });
    const plain = handLaidPiece({ id: '1.1', ends: [wall(5), wall(2395)], low: 5, high: 1205 });
    const notched = (depth: number): Piece => ({
      ...plain,
      outline: [
        [5, 5],
        [850, 5],
        [850, depth],
        [1450, depth],
        [1450, 5],
        [2395, 5],
        [2395, 1205],
        [5, 1205],
      ].map(([x, y]) => ({ x, y })),
    });
    const found = (piece: Piece) =>
      findingsByHand({ room, joists, pieces: [piece], rows: [rowByHand(1, 5, 1205)] }).filter(
        ({ code }) => code === 'piece-neck-narrow',
      );
    expect(found(plain)).toEqual([]);
    expect(found(notched(905))).toEqual([]);
    expect(found(notched(906))).toMatchObject([{ value: 299, limit: 300, where: { piece: '1.1' }, severity: 'warning' }]);
  });

  it('is not, for a hole that is cut when the board is up', () => {
    const outline = rectangle(2400, 400);
    const joists = { direction: 'y' as const, positions: [25, 425, 825, 1225, 1625, 2025, 2375], width: 50 };
    const hole = [
      [1100, 100],
      [1300, 100],
      [1300, 300],
      [1100, 300],
    ].map(([x, y]) => ({ x, y }));
    const piece = handLaidPiece({ id: '1.1', ends: [wall(5), wall(2395)], low: 5, high: 395, holes: [hole] });
    const codes = (kind: Opening['kind']) =>
      findingsByHand({
        room: { outline, openings: [{ kind, outline: hole }] },
        joists,
        pieces: [piece],
        rows: [rowByHand(1, 5, 395)],
      }).map(({ code }) => code);
    expect(codes('hatch')).toContain('piece-neck-narrow');
    expect(codes('light')).not.toContain('piece-neck-narrow');
  });
});
