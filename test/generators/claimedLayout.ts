import type { BoardToCheck, EndClaim, LayoutToCheck, PieceToCheck } from 'soffitwright';
import { type CheckByHand, plainRoom } from './layoutsByHand.js';

const wall = (position: number, made: EndClaim['made'] = 'cut'): EndClaim => ({ meets: 'wall', position, made });
const joint = (position: number, joist: string, made: EndClaim['made'] = 'factory'): EndClaim => ({
  meets: 'board',
  position,
  joist,
  made,
  bearing: { outcome: 'secure' },
});

type Facts = Omit<PieceToCheck, 'id' | 'outline' | 'board'>;

const bound = { low: 'bound', high: 'bound' } as const;

/** Lengths from joint to joint or to the wall less 5; as cut 1.5 less at each joint; mass = length x width x 8.4 kg/m2. */
const FACTS: Readonly<Record<string, Facts>> = {
  '1.1': {
    row: 1,
    length: 420,
    cutLength: 418.5,
    width: 1200,
    at: { along: 1981.5, across: 0 },
    ends: [wall(5), joint(425, 'J2')],
    edges: bound,
    tight: false,
    massKg: 4.218,
  },
  '1.2': {
    row: 1,
    length: 2400,
    cutLength: 2397,
    width: 1200,
    at: { along: 0, across: 0 },
    ends: [joint(425, 'J2'), joint(2825, 'J8', 'cut')],
    edges: bound,
    tight: true,
    massKg: 24.162,
  },
  '1.3': {
    row: 1,
    length: 770,
    cutLength: 768.5,
    width: 1200,
    at: { along: 0, across: 0 },
    ends: [joint(2825, 'J8'), wall(3595)],
    edges: bound,
    tight: false,
    massKg: 7.746,
  },
  '2.1': {
    row: 2,
    length: 1620,
    cutLength: 1618.5,
    width: 1200,
    at: { along: 781.5, across: 0 },
    ends: [wall(5), joint(1625, 'J5')],
    edges: bound,
    tight: false,
    massKg: 16.314,
  },
  '2.2': {
    row: 2,
    length: 1970,
    cutLength: 1968.5,
    width: 1200,
    at: { along: 0, across: 0 },
    ends: [joint(1625, 'J5'), wall(3595)],
    edges: bound,
    tight: false,
    massKg: 19.842,
  },
  '3.1': {
    row: 3,
    length: 1220,
    cutLength: 1218.5,
    width: 590,
    at: { along: 1181.5, across: 610 },
    ends: [wall(5), joint(1225, 'J4')],
    edges: { low: 'cut', high: 'bound' },
    tight: false,
    massKg: 6.039,
  },
  '3.2': {
    row: 3,
    length: 2370,
    cutLength: 2368.5,
    width: 590,
    at: { along: 0, across: 0 },
    ends: [joint(1225, 'J4'), wall(3595)],
    edges: { low: 'bound', high: 'cut' },
    tight: false,
    massKg: 11.738,
  },
};

const cross = (at: number, from: number, to: number) => ({ kind: 'cross', at, from, to }) as const;
const rip = (at: number, from: number, to: number) => ({ kind: 'rip', at, from, to }) as const;

/** A and the two shared boards are cut across; D is ripped at 590 from either edge, then each strip cut across. */
const BOARDS: readonly Omit<BoardToCheck, 'stock'>[] = [
  { id: 'A', cuts: [cross(2397, 0, 1200)], offcuts: [{ length: 3, width: 1200, at: { along: 2397, across: 0 } }] },
  {
    id: 'B',
    cuts: [cross(768.5, 0, 1200), cross(781.5, 0, 1200)],
    offcuts: [{ length: 13, width: 1200, at: { along: 768.5, across: 0 } }],
  },
  {
    id: 'C',
    cuts: [cross(1968.5, 0, 1200), cross(1981.5, 0, 1200)],
    offcuts: [{ length: 13, width: 1200, at: { along: 1968.5, across: 0 } }],
  },
  {
    id: 'D',
    cuts: [rip(590, 0, 2400), rip(610, 0, 2400), cross(2368.5, 0, 590), cross(1181.5, 610, 1200)],
    offcuts: [
      { length: 31.5, width: 590, at: { along: 2368.5, across: 0 } },
      { length: 2400, width: 20, at: { along: 0, across: 590 } },
      { length: 1181.5, width: 590, at: { along: 0, across: 610 } },
    ],
  },
];

/** The plain room with all that can be said of it. Area 3.584 x 1.2 + 3.587 x 1.2 + 3.587 x 0.59; four boards of 2.88 m2. */
export function claimedRoom(): CheckByHand {
  const plain = plainRoom();
  const layout: LayoutToCheck = {
    pieces: plain.layout.pieces.map((piece) => ({ ...piece, ...FACTS[piece.id] })),
    boards: BOARDS.map((board) => ({ ...board, stock: '1200 x 2400' })),
    rows: [
      { row: 1, low: 5, high: 1205, width: 1200, ripped: false },
      { row: 2, low: 1205, high: 2405, width: 1200, ripped: false },
      { row: 3, low: 2405, high: 2995, width: 590, ripped: true },
    ],
    endJoints: 4,
    boardsBought: 4,
    boardsAtMinimumLength: 5,
    boardsByStock: [{ stock: '1200 x 2400', count: 4 }],
    cost: 34,
    areaM2: 10.72153,
    wasteAreaM2: 0.79847,
    cuts: 9,
    // 2 x 1200 + 1200 + 590 at the butt joints, 2 x 3590 between rows.
    jointLength: 11_370,
    bound: 4,
    costBound: 34,
    proven: true,
    offcuts: BOARDS.flatMap(({ id, offcuts = [] }) => offcuts.map((offcut) => ({ ...offcut, board: id }))),
  };
  return { ...plain, boards: plain.boards.map((board) => ({ ...board, price: 8.5 })), layout };
}
