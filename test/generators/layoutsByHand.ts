import { type BoardStock, type Joist, joistsFromPositions, type LayoutCheck, type Point, rectangle } from 'soffitwright';

/**
 * Layouts worked out on paper, so that the verifier is tried on something that the placement had no part in. Gap to the walls
 * 5, butt joints 3, all in mm. The arithmetic stands beside each.
 */
export type CheckByHand = LayoutCheck & { readonly joists: readonly Joist[] };

const board = (length: number, width = 1200): BoardStock => ({
  id: `${width} x ${length}`,
  length,
  width,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
});

/** A rectangle from `x0` to `x1`, `y0` to `y1`. */
export const block = (x0: number, x1: number, y0: number, y1: number): Point[] => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];

/**
 * 3600 across the joists by 3000; joists at 25 + 400 k and 3575. Rows 1200, 1200 and 590. Joints at 425 and 2825, at 1625, at
 * 1225. Boards: A the 2400; B 1620 + 770 (1618.5 + 768.5 = 2387 as cut); C 1970 + 420 (2387); D two strips of 590 with 1220 in
 * one and 2370 in the other. Four boards of 2400 x 1200.
 */
export function plainRoom(): CheckByHand {
  const room = { outline: rectangle(3600, 3000) };
  const positions = [25, 425, 825, 1225, 1625, 2025, 2425, 2825, 3225, 3575];
  const stock = board(2400);
  return {
    room,
    joists: joistsFromPositions({ room, direction: 'y', positions, width: 50 }),
    boards: [stock],
    layout: {
      pieces: [
        { id: '1.1', outline: block(5, 423.5, 5, 1205), board: 'C' },
        { id: '1.2', outline: block(426.5, 2823.5, 5, 1205), board: 'A' },
        { id: '1.3', outline: block(2826.5, 3595, 5, 1205), board: 'B' },
        { id: '2.1', outline: block(5, 1623.5, 1205, 2405), board: 'B' },
        { id: '2.2', outline: block(1626.5, 3595, 1205, 2405), board: 'C' },
        { id: '3.1', outline: block(5, 1223.5, 2405, 2995), board: 'D' },
        { id: '3.2', outline: block(1226.5, 3595, 2405, 2995), board: 'D' },
      ],
      boards: ['A', 'B', 'C', 'D'].map((id) => ({ id, stock: stock.id })),
    },
  };
}

/** Corners round a circle, as a hole is drawn. */
export const round = (x: number, y: number, radius: number, corners = 48): Point[] =>
  Array.from({ length: corners }, (_, i) => ({
    x: x + radius * Math.cos((2 * Math.PI * i) / corners),
    y: y + radius * Math.sin((2 * Math.PI * i) / corners),
  }));

/** The plain room with a hatch between two joists, cut out of 2.2, and a light of 70, cut out of 1.2. */
export function hatchRoom(): CheckByHand {
  const plain = plainRoom();
  const hatch = block(2450, 2800, 1500, 2100);
  return {
    ...plain,
    room: {
      ...plain.room,
      openings: [
        { id: 'loft', kind: 'hatch', outline: hatch },
        { id: 'L1', kind: 'light', centre: { x: 1025, y: 600 }, diameter: 70 },
      ],
    },
    layout: {
      ...plain.layout,
      pieces: plain.layout.pieces.map((piece) => {
        if (piece.id === '2.2') return { ...piece, holes: [hatch] };
        return piece.id === '1.2' ? { ...piece, holes: [round(1025, 600, 35)] } : piece;
      }),
    },
  };
}

/**
 * 4800 x 3600 less a corner of 1500 x 1200. Joists at 40 + 400 k and 4760. Rows 1200, 1200 and 1190; the second is notched round
 * the inner corner, 10 narrower beyond it. Joints at 2440, 2040 and 1240. Boards of 3000: each piece over 1500 has one to itself,
 * and 1235 + 2055 is over 3000, so six.
 */
export function cornerRoom(): CheckByHand {
  const room = {
    outline: [
      { x: 0, y: 0 },
      { x: 4800, y: 0 },
      { x: 4800, y: 2400 },
      { x: 3300, y: 2400 },
      { x: 3300, y: 3600 },
      { x: 0, y: 3600 },
    ],
  };
  const positions = [...Array.from({ length: 12 }, (_, k) => 40 + 400 * k), 4760];
  const stock = board(3000);
  const notched = [
    { x: 2041.5, y: 1205 },
    { x: 4795, y: 1205 },
    { x: 4795, y: 2395 },
    { x: 3295, y: 2395 },
    { x: 3295, y: 2405 },
    { x: 2041.5, y: 2405 },
  ];
  return {
    room,
    joists: joistsFromPositions({ room, direction: 'y', positions, width: 50 }),
    boards: [stock],
    layout: {
      pieces: [
        { id: '1.1', outline: block(5, 2438.5, 5, 1205), board: 'A' },
        { id: '1.2', outline: block(2441.5, 4795, 5, 1205), board: 'B' },
        { id: '2.1', outline: block(5, 2038.5, 1205, 2405), board: 'C' },
        { id: '2.2', outline: notched, board: 'D' },
        { id: '3.1', outline: block(5, 1238.5, 2405, 3595), board: 'E' },
        { id: '3.2', outline: block(1241.5, 3295, 2405, 3595), board: 'F' },
      ],
      boards: ['A', 'B', 'C', 'D', 'E', 'F'].map((id) => ({ id, stock: stock.id })),
    },
  };
}

/**
 * 2400 deep, its far wall leaning from 4000 in to 3600: 1 in 6. Joists at 200 + 400 k, the last one, at 3800, cut off half way by
 * the wall. Two rows of 1195; raked ends 6 from the wall along the row, which is 5.92 square to it. Joints at 1800 and 1400.
 */
export function leaningRoom(): CheckByHand {
  const room = {
    outline: [
      { x: 0, y: 0 },
      { x: 4000, y: 0 },
      { x: 3600, y: 2400 },
      { x: 0, y: 2400 },
    ],
  };
  const end = (y: number): Point => ({ x: 4000 - y / 6 - 6, y });
  const raked = (x0: number, y0: number, y1: number): Point[] => [{ x: x0, y: y0 }, end(y0), end(y1), { x: x0, y: y1 }];
  const stock = board(3000);
  return {
    room,
    joists: joistsFromPositions({
      room,
      direction: 'y',
      positions: Array.from({ length: 10 }, (_, k) => 200 + 400 * k),
      width: 50,
    }),
    boards: [stock],
    layout: {
      pieces: [
        { id: '1.1', outline: block(5, 1798.5, 5, 1200), board: 'A' },
        { id: '1.2', outline: raked(1801.5, 5, 1200), board: 'B' },
        { id: '2.1', outline: block(5, 1398.5, 1200, 2395), board: 'C' },
        { id: '2.2', outline: raked(1401.5, 1200, 2395), board: 'D' },
      ],
      boards: ['A', 'B', 'C', 'D'].map((id) => ({ id, stock: stock.id })),
    },
  };
}
