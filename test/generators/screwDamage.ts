import type { Finding, FixingsCheck, FixingToCheck, Joist } from 'soffitwright';
import { claimedRoom } from './claimedLayout.js';
import { PRACTICE, SPECIFICATION } from './hurting.js';
import { block } from './layoutsByHand.js';

/** A check of screws whose positions are a list. */
export type ScrewsByHand = FixingsCheck & { readonly fixings: readonly FixingToCheck[]; readonly joists: readonly Joist[] };

/** Where the screws of each piece of the plain room stand: joist, place across the joists, `end` at joints and walls. */
const LINES: Readonly<Record<string, readonly (readonly [joist: number, x: number, line: 'field' | 'end'])[]>> = {
  '1.1': [
    [1, 25, 'end'],
    [2, 410, 'end'],
  ],
  '1.2': [
    [2, 440, 'end'],
    [3, 825, 'field'],
    [4, 1225, 'field'],
    [5, 1625, 'field'],
    [6, 2025, 'field'],
    [7, 2425, 'field'],
    [8, 2810, 'end'],
  ],
  '1.3': [
    [8, 2840, 'end'],
    [9, 3225, 'field'],
    [10, 3575, 'end'],
  ],
  '2.1': [
    [1, 25, 'end'],
    [2, 425, 'field'],
    [3, 825, 'field'],
    [4, 1225, 'field'],
    [5, 1610, 'end'],
  ],
  '2.2': [
    [5, 1640, 'end'],
    [6, 2025, 'field'],
    [7, 2425, 'field'],
    [8, 2825, 'field'],
    [9, 3225, 'field'],
    [10, 3575, 'end'],
  ],
  '3.1': [
    [1, 25, 'end'],
    [2, 425, 'end'],
    [3, 825, 'end'],
    [4, 1210, 'end'],
  ],
  '3.2': [
    [4, 1240, 'end'],
    [5, 1625, 'end'],
    [6, 2025, 'end'],
    [7, 2425, 'end'],
    [8, 2825, 'end'],
    [9, 3225, 'end'],
    [10, 3575, 'end'],
  ],
};

const every = (from: number, step: number, count: number): number[] => Array.from({ length: count }, (_, k) => from + step * k);

/**
 * The plain room screwed by hand. Over 1200: 12 and six steps of 196, at ends and walls 12 and eight of 147, 12 from bound edges.
 * Over the row of 590: 15 and four of 140, 15 from edges of which one is cut. At joints 13.5 from the cut end, or 13.5 on the
 * other side: 25 - 15 = 10 from the edge of the timber.
 */
export function screwedRoom(): ScrewsByHand {
  const { room, joists, layout, boards } = claimedRoom();
  const fixings = Object.entries(LINES).flatMap(([piece, lines]) =>
    lines.flatMap(([joist, x, line]) => {
      const low = { 1: 5, 2: 1205, 3: 2405 }[piece[0]] ?? 0;
      const marks = piece.startsWith('3') ? every(15, 140, 5) : line === 'end' ? every(12, 147, 9) : every(12, 196, 7);
      return marks.map((mark) => ({ x, y: low + mark, piece, joist: `J${joist}` }));
    }),
  );
  return { room, joists, layout, boards, fixings };
}

/** One thing done to good screws, and what must be said of it. */
export interface ScrewDamage {
  readonly name: string;
  readonly hurt: () => ScrewsByHand;
  readonly finds: {
    readonly code: string;
    readonly severity?: Finding['severity'];
    readonly value?: number;
    readonly limit?: number;
    readonly standard?: string;
    readonly where?: Finding['where'];
  };
}

type Pick = (fixing: FixingToCheck) => boolean;

const on =
  (piece: string, joist: string, y?: number): Pick =>
  (fixing) =>
    fixing.piece === piece && fixing.joist === joist && (y === undefined || fixing.y === y);

const changed = (pick: Pick, change: Partial<FixingToCheck>, check = screwedRoom()): ScrewsByHand => {
  if (!check.fixings.some(pick)) throw new Error('no such screw');
  return { ...check, fixings: check.fixings.map((fixing) => (pick(fixing) ? { ...fixing, ...change } : fixing)) };
};

const without = (pick: Pick): ScrewsByHand => {
  const check = screwedRoom();
  return { ...check, fixings: check.fixings.filter((fixing) => !pick(fixing)) };
};

const respaced = (pick: Pick, marks: readonly number[], low: number): ScrewsByHand => {
  const check = without(pick);
  const one = screwedRoom().fixings.find(pick);
  return one ? { ...check, fixings: [...check.fixings, ...marks.map((mark) => ({ ...one, y: low + mark }))] } : check;
};

const damage = (name: string, hurt: () => ScrewsByHand, finds: ScrewDamage['finds']): ScrewDamage => ({ name, hurt, finds });

export const SCREW_DAMAGE: readonly ScrewDamage[] = [
  damage('a screw 60 off its joist', () => changed(on('1.2', 'J4', 605), { x: 1285 }), {
    // Half of 50, less 6.
    code: 'fixing-off-timber',
    severity: 'error',
    value: 60,
    limit: 19,
    standard: SPECIFICATION,
    where: { piece: '1.2', joist: 'J4', at: { x: 1285, y: 605 } },
  }),
  damage('a screw off its joist leaves a gap', () => changed(on('1.2', 'J4', 605), { x: 1285 }), {
    code: 'fixing-gap',
    severity: 'error',
    value: 392,
    limit: 230,
    standard: SPECIFICATION,
    where: { piece: '1.2', joist: 'J4', at: { x: 1225, y: 605 } },
  }),
  damage('a screw 3 from the edge of its joist', () => changed(on('1.2', 'J4', 605), { x: 1247 }), {
    code: 'fixing-edge',
    severity: 'error',
    value: 3,
    limit: 6,
    standard: SPECIFICATION,
    where: { piece: '1.2', joist: 'J4', at: { x: 1247, y: 605 } },
  }),
  damage('a screw past the long edge', () => changed(on('2.1', 'J3', 1217), { y: 1197 }), {
    code: 'fixing-edge',
    severity: 'error',
    value: -8,
    limit: 10,
    standard: SPECIFICATION,
    where: { piece: '2.1', joist: 'J3', at: { x: 825, y: 1197 } },
  }),
  damage('a screw past the cut end', () => changed(on('1.2', 'J2', 311), { x: 426 }), {
    code: 'fixing-edge',
    severity: 'error',
    value: -0.5,
    limit: 13,
    where: { piece: '1.2', joist: 'J2', at: { x: 426, y: 311 } },
  }),
  damage('a screw in the gap at the wall', () => changed(on('1.1', 'J1', 17), { y: 2 }), {
    code: 'fixing-edge',
    severity: 'error',
    value: -3,
    limit: 10,
    where: { piece: '1.1', joist: 'J1', at: { x: 25, y: 2 } },
  }),
  damage('a screw 7 from a bound edge', () => changed(on('1.2', 'J5', 17), { y: 12 }), {
    code: 'fixing-edge',
    severity: 'error',
    value: 7,
    limit: 10,
    standard: SPECIFICATION,
    where: { piece: '1.2', joist: 'J5', at: { x: 1625, y: 12 } },
  }),
  damage('a screw 11 from a ripped edge', () => changed(on('3.1', 'J2', 2420), { y: 2416 }), {
    code: 'fixing-edge',
    severity: 'error',
    value: 11,
    limit: 13,
    standard: SPECIFICATION,
    where: { piece: '3.1', joist: 'J2', at: { x: 425, y: 2416 } },
  }),
  damage('a screw 8 from a cut end', () => changed(on('1.2', 'J2', 311), { x: 434.5 }), {
    code: 'fixing-edge',
    severity: 'error',
    value: 8,
    limit: 13,
    where: { piece: '1.2', joist: 'J2', at: { x: 434.5, y: 311 } },
  }),
  damage('a gap widened to 240', () => respaced(on('1.2', 'J6'), [12, 208, 448, 644, 840, 1036, 1188], 5), {
    code: 'fixing-gap',
    severity: 'error',
    value: 240,
    limit: 230,
    standard: SPECIFICATION,
    where: { piece: '1.2', joist: 'J6', at: { x: 2025, y: 333 } },
  }),
  damage('a gap of 231', () => respaced(on('1.2', 'J6'), [12, 208, 404, 600, 831, 1036, 1188], 5), {
    code: 'fixing-gap',
    severity: 'error',
    value: 231,
    limit: 230,
  }),
  damage('the first screw left out', () => without(on('2.2', 'J7', 1217)), {
    code: 'fixing-gap',
    severity: 'error',
    value: 208,
    limit: 25,
    standard: PRACTICE,
    where: { piece: '2.2', joist: 'J7', at: { x: 2425, y: 1309 } },
  }),
  damage('the last screw left out', () => without(on('2.2', 'J7', 2393)), {
    code: 'fixing-gap',
    severity: 'error',
    value: 208,
    limit: 25,
    standard: PRACTICE,
  }),
  damage('a line left out', () => without(on('1.2', 'J5')), {
    code: 'fixing-gap',
    severity: 'error',
    value: 1200,
    limit: 230,
    standard: SPECIFICATION,
    where: { piece: '1.2', joist: 'J5', at: { x: 1625, y: 605 } },
  }),
  damage('the line at one side of a butt joint left out', () => without(on('2.2', 'J5')), {
    code: 'fixing-gap',
    severity: 'error',
    value: 1200,
    limit: 230,
    where: { piece: '2.2', joist: 'J5', at: { x: 1625, y: 1805 } },
  }),
  damage('the line beside a wall left out', () => without(on('1.3', 'J10')), {
    code: 'fixing-gap',
    severity: 'error',
    value: 1200,
    limit: 230,
    where: { piece: '1.3', joist: 'J10', at: { x: 3575, y: 605 } },
  }),
  damage('a board end screwed like the middle', () => respaced(on('2.2', 'J5'), [12, 208, 404, 600, 796, 992, 1188], 1205), {
    code: 'fixing-gap',
    severity: 'warning',
    value: 196,
    limit: 150,
    standard: SPECIFICATION,
  }),
  damage(
    'the line beside a wall screwed like the middle',
    () => respaced(on('1.3', 'J10'), [12, 208, 404, 600, 796, 992, 1188], 5),
    {
      code: 'fixing-gap',
      severity: 'warning',
      value: 196,
      limit: 150,
    },
  ),
  damage(
    'a screw into a pipe in a notch',
    () => ({ ...screwedRoom(), noFix: [{ id: 'pipe', outline: block(1200, 1250, 590, 620) }] }),
    {
      code: 'fixing-in-no-fix-zone',
      severity: 'error',
      value: 15,
      limit: 0,
      where: { piece: '1.2', joist: 'J4', at: { x: 1225, y: 605 } },
    },
  ),
  damage('a screw into a cable', () => ({ ...screwedRoom(), noFix: [{ centre: { x: 1225, y: 615 }, diameter: 30 }] }), {
    code: 'fixing-in-no-fix-zone',
    severity: 'error',
    value: 5,
    limit: 0,
    where: { piece: '1.2', joist: 'J4', at: { x: 1225, y: 605 } },
  }),
  damage('a screw outside the room', () => changed(on('1.1', 'J1', 17), { x: 25, y: -200 }), {
    code: 'fixing-off-board',
    severity: 'error',
    where: { piece: '1.1', joist: 'J1', at: { x: 25, y: -200 } },
  }),
  damage('a screw that names another piece', () => changed(on('1.2', 'J5', 605), { piece: '3.2' }), {
    code: 'claim-wrong',
    severity: 'error',
  }),
  damage('a screw that names another joist', () => changed(on('1.2', 'J5', 605), { joist: 'J6' }), {
    code: 'claim-wrong',
    severity: 'error',
    where: { piece: '1.2', joist: 'J5', at: { x: 1625, y: 605 } },
  }),
  damage('a screw that names no piece that is there', () => changed(on('1.2', 'J5', 605), { piece: '9.9' }), {
    code: 'claim-wrong',
    severity: 'error',
  }),
  damage('a screw that names no joist that is there', () => changed(on('1.2', 'J5', 605), { joist: 'J99' }), {
    code: 'claim-wrong',
    severity: 'error',
  }),
];
