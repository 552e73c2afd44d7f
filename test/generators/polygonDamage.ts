import type { Point } from 'soffitwright';
import {
  added,
  type Change,
  changed,
  corner,
  type Damage,
  damage,
  hole,
  joistsLike,
  mirroredWithin,
  PRACTICE,
  without,
  x,
  y,
} from './hurting.js';
import { block, type CheckByHand } from './layoutsByHand.js';
import {
  bayRoom,
  bayZone,
  beamRoom,
  bowedRoom,
  breastRoom,
  doubledRoom,
  strongFan,
  teeRoom,
  timber,
  trimmedHatch,
} from './shapedRooms.js';

const outline =
  (points: Point[]): Change =>
  (piece) => ({ ...piece, outline: points });

/** Corners on one side of a level along the row, moved along it. */
const beyond = (from: number, by: number): Change => corner((point) => (point.x > from ? { ...point, x: point.x + by } : point));

/** The ends of the joint of a row, as they are, made square where they are on average. */
const squared: Change = (piece) => {
  const xs = [...piece.outline].sort((a, b) => a.x - b.x).map((point) => point.x);
  const [left, right] = [(xs[0] + xs[1]) / 2, (xs[2] + xs[3]) / 2];
  const ys = piece.outline.map((point) => point.y);
  return { ...piece, outline: block(left, right, Math.min(...ys), Math.max(...ys)) };
};

/** The same rake to the other hand. */
const otherHand: Change = (piece) => {
  const ys = piece.outline.map((point) => point.y);
  const sum = Math.min(...ys) + Math.max(...ys);
  return { ...piece, outline: piece.outline.map((point) => ({ x: point.x, y: sum - point.y })).reverse() };
};

const scribe = (by: number): Change => corner((point) => (point.y > 2000 ? { ...point, y: point.y + by } : point));

const moved =
  (id: string, by: number): ((check: CheckByHand) => CheckByHand) =>
  (check) =>
    joistsLike(check, (joist) =>
      joist.id === id
        ? [{ ...joist, start: { ...joist.start, x: joist.start.x + by }, end: { ...joist.end, x: joist.end.x + by } }]
        : [joist],
    );

/** Of rooms that were cut into rows along lines chosen on paper. */
export const POLYGON_DAMAGE: readonly Damage[] = [
  damage('a board run through the breast', () => changed(breastRoom(), { '3.2': outline(block(1001.5, 2998.5, 2405, 3295)) }), {
    // The breast less the gap to the far wall.
    code: 'outside-room',
    severity: 'error',
    value: 395,
    limit: 0,
    where: { piece: '3.2' },
  }),
  damage('the notch for the breast 30 too deep', () => changed(breastRoom(), { '3.2': y(2895, 2865) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 35,
    limit: 10,
    where: { piece: '3.2', wall: 4 },
  }),
  damage('the notch for the breast hard against it', () => changed(breastRoom(), { '3.2': x(1295, 1299) }), {
    code: 'perimeter-gap',
    severity: 'error',
    value: 1,
    limit: 3,
    where: { piece: '3.2', wall: 5 },
  }),
  damage('the piece beside the breast left out', () => without(breastRoom(), '3.3'), { code: 'cover-gap', severity: 'error' }),
  damage(
    'a joint beside the breast between two joists',
    () => changed(breastRoom(), { '3.1': x(998.5, 1098.5), '3.2': x(1001.5, 1101.5) }),
    {
      code: 'end-off-timber',
      severity: 'error',
      value: 100,
      limit: 13.5,
      where: { pieces: ['3.1', '3.2'], row: 3, joist: 'J3' },
    },
  ),
  damage(
    'a joint below the breast in line with the one before',
    () => changed(breastRoom(), { '2.1': x(2198.5, 998.5), '2.2': x(2201.5, 1001.5) }),
    { code: 'stagger', severity: 'error', value: 0, limit: 300, where: { row: 2, joist: 'J3' } },
  ),
  damage(
    'a joint on a joist that stops at the breast',
    () => joistsLike(breastRoom(), (joist) => (joist.id === 'J3' ? [{ ...joist, end: { x: 1000, y: 2900 } }] : [joist])),
    // The joint runs to 3295, the joist to 2900, 10 are let pass.
    { code: 'end-off-timber', severity: 'error', value: 385, limit: 0, where: { pieces: ['3.1', '3.2'], joist: 'J3' } },
  ),
  damage('the piece in the neck of a T mirrored', () => changed(teeRoom(), { '2.2': mirroredWithin }), {
    code: 'outside-room',
    severity: 'error',
    where: { piece: '2.2' },
  }),
  damage('the foot of the T left out', () => without(teeRoom(), '4.1'), { code: 'cover-gap', severity: 'error', value: 395 }),
  damage('two pieces of a T over each other', () => changed(teeRoom(), { '2.2': x(3298.5, 3318.5) }), {
    code: 'overlap',
    severity: 'error',
    value: 17,
    where: { pieces: ['2.2', '2.3'] },
  }),
  damage('a joist of the stem that ends at the bar', () => joistsLike(teeRoom(), stopAtBar), {
    // J7, at 2500, left out of the stem: 2100 to 2900.
    code: 'support-centres-exceeded',
    severity: 'warning',
    value: 800,
    limit: 450,
    where: { joist: 'J6' },
  }),
  damage('the splays cut square', () => changed(bayRoom(), { '4.1': (piece) => outline(boxOf(piece.outline))(piece) }), {
    code: 'outside-room',
    severity: 'error',
    where: { piece: '4.1' },
  }),
  damage('a splay 4 too long', () => changed(bayRoom(), { '4.1': beyond(2000, 4) }), {
    // 4 along the row is 4 x 7 / sqrt(74) = 3.255 square to the splay.
    code: 'perimeter-gap',
    severity: 'error',
    value: 1.745,
    limit: 3,
    where: { piece: '4.1', wall: 3 },
  }),
  damage('a splay 12 too short', () => changed(bayRoom(), { '4.1': beyond(2000, -12) }), {
    code: 'cover-gap',
    severity: 'error',
    limit: 10,
    where: { piece: '4.1', wall: 3 },
  }),
  damage('the boards of the room run on into a bay with joists of its own', () => changed(bayZone(), { '3.2': y(3295, 3400) }), {
    code: 'across-zones',
    severity: 'error',
    value: 100,
    limit: 0,
    where: { piece: '3.2' },
    says: 'the part outside the zones',
  }),
  damage('a board of a bay brought out of it', () => changed(bayZone(), { '4.1': y(3305, 3280) }), {
    code: 'across-zones',
    severity: 'error',
    where: { piece: '4.1' },
    says: 'zone bay',
  }),
  damage(
    'a bay boarded along its joists',
    () => {
      const { layout, ...rest } = bayZone();
      const [first, ...others] = layout.pieces.filter(({ id }) => !id.startsWith('5'));
      const inBay = [
        { x: 756.2, y: 3305 },
        { x: 3143.8, y: 3305 },
        { x: 2650, y: 3995 },
        { x: 1250, y: 3995 },
      ];
      const pieces = [first, ...others].map((piece) => (piece.id === '4.1' ? { ...piece, outline: inBay } : piece));
      return { ...rest, layout: { ...layout, pieces } };
    },
    { code: 'board-parallel-to-supports', severity: 'error', value: 2387.6, limit: 1200, where: { piece: '4.1', board: '4.1' } },
  ),
  damage('a board across the beam', () => changed(beamRoom(), { '3.1': y(2995, 3400) }), {
    code: 'across-zones',
    severity: 'error',
    value: 400,
    where: { piece: '3.1' },
    says: 'zone near',
  }),
  damage('a board under the beam', () => added(beamRoom(), { id: '9.1', outline: block(600, 1800, 3005, 3245), board: '1.1' }), {
    code: 'across-zones',
    severity: 'error',
    value: 240,
    where: { piece: '9.1' },
  }),
  damage('a row of the second ceiling left out', () => without(beamRoom(), '5.1'), {
    code: 'cover-gap',
    severity: 'error',
    value: 1200,
  }),
  damage('square joints on joists that fan', () => changed(strongFan(), { '1.1': squared, '1.2': squared }), {
    // J4 leans 40 in 3600: 13.333 over the row, half of that at each end of the joint.
    code: 'bearing-short',
    severity: 'warning',
    value: 6.667,
    limit: 4.5,
    where: { joist: 'J4', row: 1 },
  }),
  damage('rakes cut to the wrong hand', () => changed(strongFan(), { '2.1': otherHand, '2.2': otherHand }), {
    // J5 leans 50 in 3600: 16.667 over the row, as much at each end of the joint.
    code: 'end-off-timber',
    severity: 'error',
    value: 16.665,
    limit: 13.5,
    where: { joist: 'J5', row: 2 },
  }),
  damage('a raked end against a square one', () => changed(strongFan(), { '3.1': squared }), {
    // Half the rake of 13.222, and 3.
    code: 'cover-gap',
    severity: 'error',
    value: 9.611,
    limit: 3,
    where: { pieces: ['3.1', '3.2'] },
  }),
  damage('a fanning joist that stands 10 further on', () => moved('J5', 10)(strongFan()), {
    code: 'bearing-short',
    severity: 'warning',
    limit: 4.5,
    where: { joist: 'J5', row: 2 },
  }),
  damage('the board run over a trimmed hatch', () => changed(trimmedHatch(), { '2.2': hole() }), {
    code: 'over-opening',
    severity: 'error',
    value: 600,
    where: { piece: '2.2' },
    says: 'hatch loft',
  }),
  damage(
    'tails that stop short of their trimmers',
    () => joistsLike(trimmedHatch([2025]), (joist) => (joist.id === 'J6a' ? [{ ...joist, end: { x: 2025, y: 1325 } }] : [joist])),
    // From 1325 to the trimmer at 1400; 10 are let pass at either.
    { code: 'end-off-timber', severity: 'error', value: 55, where: { joist: 'J6a', row: 2 } },
  ),
  damage(
    'no trimmers, and the tails short of the hatch',
    () => joistsLike(trimmedHatch([2025]), (joist) => (joist.kind === 'trimmer' ? [] : [joist])),
    {
      // 25 at the nearer tail, less 10.
      code: 'end-off-timber',
      severity: 'error',
      where: { row: 2 },
    },
  ),
  damage(
    'a row of noggings taken for a joist',
    () => ({
      ...trimmedHatch(),
      joists: [
        ...trimmedHatch().joists.filter(({ id }) => id !== 'J5'),
        ...[200, 600, 1000].map((at, i) => timber(`N${i + 1}`, [1225, at], [2025, at], { kind: 'nogging' })),
      ],
    }),
    { code: 'end-off-timber', severity: 'error', value: 400, where: { pieces: ['1.1', '1.2'], row: 1 } },
  ),
  damage('the scribed row cut straight', () => changed(bowedRoom(), { '2.1': outline(block(5, 1698.5, 1205, 2375)) }), {
    code: 'cover-gap',
    severity: 'error',
    limit: 10,
    where: { piece: '2.1' },
  }),
  damage('the scribed row 3 too wide', () => changed(bowedRoom(), { '2.1': scribe(3), '2.2': scribe(3) }), {
    code: 'perimeter-gap',
    severity: 'error',
    limit: 3,
  }),
  damage('half of a doubled joist', () => joistsLike(doubledRoom(), (joist) => (joist.id === 'J5' ? [] : [joist])), {
    // 1601 - 1575.
    code: 'end-off-timber',
    severity: 'error',
    value: 26,
    limit: 13.5,
    where: { joist: 'J4', pieces: ['1.1', '1.2'] },
  }),
  damage('two joists 20 apart taken for one', () => moved('J5', 18)(doubledRoom()), {
    code: 'end-off-timber',
    severity: 'error',
    value: 26,
    where: { joist: 'J4' },
  }),
  damage(
    'a strip beside a breast',
    () => {
      const room = breastRoom();
      const deeper = (point: Point): Point => (point.y === 2900 ? { ...point, y: 2565 } : point);
      const under = block(1301.5, 2598.5, 2405, 2560);
      const pieces = room.layout.pieces.flatMap((piece) =>
        piece.id === '3.2'
          ? [
              { ...piece, outline: block(1001.5, 1295, 2405, 3295) },
              { ...piece, id: '3.2b', outline: under },
              { ...piece, id: '3.2c', outline: block(2605, 2998.5, 2405, 3295) },
            ]
          : [piece],
      );
      return { ...room, room: { outline: room.room.outline.map(deeper) }, layout: { ...room.layout, pieces } };
    },
    {
      code: 'row-below-minimum',
      severity: 'warning',
      value: 155,
      limit: 200,
      standard: PRACTICE,
      where: { piece: '3.2b', row: 3 },
    },
  ),
];

function stopAtBar(joist: CheckByHand['joists'][number]): CheckByHand['joists'][number][] {
  return joist.id === 'J7' ? [{ ...joist, end: { x: joist.end.x, y: 1800 } }] : [joist];
}

function boxOf(points: readonly Point[]): Point[] {
  const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
  return block(Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys));
}
