import type { BoardStock, Joist, PieceToCheck, Point, Zone } from 'soffitwright';
import { type CutJoint, cutRows } from './cutRows.js';
import { block, type CheckByHand } from './layoutsByHand.js';

/**
 * Rooms that are no rectangles, cut into rows by {@link cutRows} along lines chosen on paper: 5 to the walls, butt joints of 3 on
 * joists, at least 300 apart from row to row. The placement has no part in them.
 */
const STOCK: BoardStock = { id: '2400 x 1200', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' };

const points = (...places: readonly (readonly [number, number])[]): Point[] => places.map(([x, y]) => ({ x, y }));

/** A timber 50 wide from one place to another. */
export const timber = (
  id: string,
  from: readonly [number, number],
  to: readonly [number, number],
  more: Partial<Joist> = {},
): Joist => ({
  id,
  start: { x: from[0], y: from[1] },
  end: { x: to[0], y: to[1] },
  width: 50,
  sd: 0,
  presence: 1,
  known: 'given',
  ...more,
});

/** Joists straight up at these places, from one level to another. */
const upright = (places: readonly number[], low: number, high: number, name = 'J'): Joist[] =>
  places.map((x, i) => timber(`${name}${i + 1}`, [x, low], [x, high]));

const even = (first: number, count: number, spacing = 400): number[] =>
  Array.from({ length: count }, (_, k) => first + spacing * k);

/** Square joints, row by row. */
const square = (...rows: readonly (readonly number[])[]): CutJoint[] =>
  rows.flatMap((places, i) => places.map((at) => ({ row: i + 1, foot: at, head: at })));

const check = (room: CheckByHand['room'], joists: readonly Joist[], pieces: readonly PieceToCheck[]): CheckByHand => ({
  room,
  joists,
  boards: [STOCK],
  layout: { pieces, boards: pieces.map(({ board }) => ({ id: board, stock: STOCK.id })) },
});

const FIT = { gap: 5, jointGap: 3 };

/** 4000 x 3300, a breast 1300 wide standing 400 into the far side: the third row runs under it, 490 wide there. */
export function breastRoom(): CheckByHand {
  const outline = points([0, 0], [4000, 0], [4000, 3300], [2600, 3300], [2600, 2900], [1300, 2900], [1300, 3300], [0, 3300]);
  const pieces = cutRows({ outline, levels: [5, 1205, 2405, 3295], joints: square([1800], [2200], [1000, 3000]), ...FIT });
  // No joist runs through the breast.
  const joists = upright(even(200, 10), 0, 3300).map((joist) =>
    joist.start.x > 1300 && joist.start.x < 2600 ? { ...joist, end: { x: joist.start.x, y: 2900 } } : joist,
  );
  return check({ outline }, joists, pieces);
}

/** A bar of 5000 x 1800 and a stem of 2000 x 2200 in the middle of its far side. */
export function teeRoom(): CheckByHand {
  const outline = points([0, 0], [5000, 0], [5000, 1800], [3500, 1800], [3500, 4000], [1500, 4000], [1500, 1800], [0, 1800]);
  const joists = upright(even(100, 13), 0, 1800).map((joist) =>
    joist.start.x > 1500 && joist.start.x < 3500 ? { ...joist, end: { x: joist.start.x, y: 4000 } } : joist,
  );
  const levels = [5, 1205, 2405, 3605, 3995];
  return check({ outline }, joists, cutRows({ outline, levels, joints: square([2100, 4100], [1300, 3300]), ...FIT }));
}

const BAY = points([0, 0], [3900, 0], [3900, 3300], [3150, 3300], [2650, 4000], [1250, 4000], [750, 3300], [0, 3300]);

/** 3900 x 3300 with a splayed bay 700 deep, its joists those of the room; they end at the splays. */
export function bayRoom(): CheckByHand {
  const end = (x: number): number =>
    x <= 750 || x >= 3150 ? 3300 : x < 1250 ? 3300 + (x - 750) * 1.4 : x > 2650 ? 3300 + (3150 - x) * 1.4 : 4000;
  const joists = even(150, 10).map((x, i) => timber(`J${i + 1}`, [x, 0], [x, end(x)]));
  const levels = [5, 1205, 2405, 3605, 3995];
  return check({ outline: BAY }, joists, cutRows({ outline: BAY, levels, joints: square([1750], [2150], [1350, 2950]), ...FIT }));
}

/** Pieces cut with x and y changed over, for joists along x. */
const across = (cut: Parameters<typeof cutRows>[0]): PieceToCheck[] => {
  const over = (ring: readonly Point[]): Point[] => ring.map(({ x, y }) => ({ x: y, y: x }));
  return cutRows({ ...cut, outline: over(cut.outline) }).map((piece) => ({ ...piece, outline: over(piece.outline) }));
};

/** The same, the bay a zone with joists along its mouth. */
export function bayZone(): CheckByHand {
  const [main, bay] = [block(0, 3900, 0, 3300), points([750, 3300], [3150, 3300], [2650, 4000], [1250, 4000])];
  const inBay = [3320, 3650, 3980].map((y, i) =>
    timber(`B${i + 1}`, [750 + Math.max(0, y - 3300) / 1.4, y], [3150 - Math.max(0, y - 3300) / 1.4, y]),
  );
  const pieces = [
    ...cutRows({ outline: main, levels: [5, 1205, 2405, 3295], joints: square([1750], [2150], [1350, 2950]), ...FIT }),
    ...across({ outline: bay, levels: [755, 1955, 3145], firstRow: 4, ...FIT }),
  ];
  const zones: Zone[] = [{ id: 'bay', outline: bay, joists: inBay }];
  return check({ outline: BAY, zones }, upright(even(150, 10), 0, 3300), pieces);
}

/** Two ceilings, their joists across each other, and a beam 250 wide between that nobody boards. */
export function beamRoom(): CheckByHand {
  const outline = block(0, 3600, 0, 5650);
  const [near, far] = [block(0, 3600, 0, 3000), block(0, 3600, 3250, 5650)];
  const nearJoists = upright(even(200, 9), 0, 3000, 'A');
  const farJoists = even(3450, 6).map((y, i) => timber(`B${i + 1}`, [0, y], [3600, y]));
  const pieces = [
    ...cutRows({ outline: near, levels: [5, 1205, 2405, 2995], joints: square([1400], [1800], [1400]), ...FIT }),
    // Boards along y, wall to wall: 2390 long.
    ...across({ outline: far, levels: [5, 1205, 2405, 3595], firstRow: 4, ...FIT }),
  ];
  const zones: Zone[] = [
    { id: 'near', outline: near, joists: nearJoists },
    { id: 'far', outline: far, joists: farJoists },
  ];
  return check({ outline, zones }, [], pieces);
}

/** How far a fanning joist is out at a level: nothing at the low wall, so much at 3600. */
const fanned = (first: number, count: number, last: number) => {
  const line = (k: number) => (y: number) => first + 400 * k + (last * (k + 1) * y) / (count * 3600);
  return { line, joists: Array.from({ length: count }, (_, k) => timber(`J${k + 1}`, [line(k)(0), 0], [line(k)(3600), 3600])) };
};

/** 3600 x 3600, the last joist 90 out at the far wall: each butt joint follows its joist. */
export function strongFan(): CheckByHand {
  const outline = block(0, 3600, 0, 3600);
  const { line, joists } = fanned(200, 9, 90);
  const levels = [5, 1205, 2405, 3595];
  const joint = (row: number, k: number): CutJoint => ({ row, foot: line(k)(levels[row - 1]), head: line(k)(levels[row]) });
  return check({ outline }, joists, cutRows({ outline, levels, joints: [joint(1, 3), joint(2, 4), joint(3, 3)], ...FIT }));
}

/** The same, the last joist 20 out: joints are cut square in the middle of their joists, a rake of no more than 4 to a row. */
export function slightFan(): CheckByHand {
  const outline = block(0, 3600, 0, 3600);
  const { line, joists } = fanned(200, 9, 20);
  const levels = [5, 1205, 2405, 3595];
  const joint = (row: number, k: number): CutJoint => {
    const middle = line(k)((levels[row - 1] + levels[row]) / 2);
    return { row, foot: middle, head: middle };
  };
  return check({ outline }, joists, cutRows({ outline, levels, joints: [joint(1, 3), joint(2, 4), joint(3, 3)], ...FIT }));
}

/**
 * 3600 x 3000 with a hatch of 750 x 600 for which one joist is cut: two trimmers, and the joist as two tails. The second row may be
 * jointed on the tails.
 */
export function trimmedHatch(joints: readonly number[] = [1225, 2825]): CheckByHand {
  const outline = block(0, 3600, 0, 3000);
  const hatch = block(1650, 2400, 1450, 2050);
  const joists = [
    ...upright(even(25, 9), 0, 3000).filter(({ id }) => id !== 'J6'),
    timber('J10', [3575, 0], [3575, 3000]),
    timber('J6a', [2025, 0], [2025, 1425]),
    timber('J6b', [2025, 2075], [2025, 3000]),
    timber('T1', [1625, 1425], [2425, 1425], { kind: 'trimmer' }),
    timber('T2', [1625, 2075], [2425, 2075], { kind: 'trimmer' }),
  ];
  const pieces = cutRows({
    outline,
    openings: [hatch],
    levels: [5, 1205, 2405, 2995],
    joints: square([1625], joints, [1625]),
    ...FIT,
  });
  return check({ outline, openings: [{ id: 'loft', kind: 'hatch', outline: hatch }] }, joists, pieces);
}

/** 3000 x 2380, a wall bowed by 18 in the middle: the last row is scribed to it. */
export function bowedRoom(): CheckByHand {
  const bow = Array.from({ length: 9 }, (_, k) => ({ x: 3000 - 375 * k, y: 2380 + Math.round(18 - (18 * (k - 4) ** 2) / 16) }));
  const outline = [...points([0, 0], [3000, 0]), ...bow];
  const joists = upright(even(100, 8), 0, 2390);
  return check({ outline }, joists, cutRows({ outline, levels: [5, 1205, 2393], joints: square([1300], [1700]), ...FIT }));
}

/** An L whose two joists at 1600 stand side by side under a partition; a joint lies between them. */
export function doubledRoom(): CheckByHand {
  const outline = points([0, 0], [3600, 0], [3600, 2000], [2200, 2000], [2200, 3000], [0, 3000]);
  const joists = upright([200, 600, 1000, 1575, 1627, 2000, 2400, 2800, 3200, 3500], 0, 2000).map((joist) =>
    joist.start.x < 2200 ? { ...joist, end: { x: joist.start.x, y: 3000 } } : joist,
  );
  const levels = [5, 1205, 2405, 2995];
  return check({ outline }, joists, cutRows({ outline, levels, joints: square([1601], [2000], []), ...FIT }));
}

export const SHAPED_ROOMS = {
  breastRoom,
  teeRoom,
  bayRoom,
  bayZone,
  beamRoom,
  strongFan,
  slightFan,
  trimmedHatch: () => trimmedHatch(),
  tailsJointed: () => trimmedHatch([2025]),
  bowedRoom,
  doubledRoom,
};
