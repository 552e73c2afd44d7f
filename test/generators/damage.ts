import type { PieceToCheck, Point } from 'soffitwright';
import {
  added,
  type Change,
  changed,
  corner,
  type Damage,
  damage,
  GEOMETRY,
  GIVEN,
  hole,
  joistsLike,
  mirroredWithin,
  onBoard,
  PRACTICE,
  SPECIFICATION,
  shifted,
  withLayout,
  without,
  x,
  y,
} from './hurting.js';
import { block, type CheckByHand, cornerRoom, hatchRoom, leaningRoom, plainRoom, round } from './layoutsByHand.js';

const overOldJoint = (from: Point, to: Point): CheckByHand => ({
  ...plainRoom(),
  lining: [{ kind: 'plasterboard', thickness: 9.5, joints: [[from, to]] }],
});

/** The last joint of the first row moved to the joist beside the wall: a sliver of 20, a flap on one joist. */
const sliverAtWall = (): CheckByHand => changed(plainRoom(), { '1.2': x(2823.5, 3573.5), '1.3': x(2826.5, 3576.5) });

const hatchToOneSide = (): CheckByHand => changed(hatchRoom(), { '2.2': hole(block(2420, 2770, 1500, 2100)) });

/** A notch of 300 from the low edge of a piece up to 910, and what lies beyond it; on a joist it is a lip only. */
const notchedBeside =
  (end: number): Change =>
  (piece) => ({
    ...piece,
    outline: piece.outline.flatMap((point, i) =>
      i === 0
        ? [point, { x: end - 300, y: point.y }, { x: end - 300, y: 910 }, { x: end, y: 910 }, { x: end, y: point.y }]
        : [point],
    ),
  });

/** Of the plain room. */
export const PLAIN_DAMAGE: readonly Damage[] = [
  damage('a piece left out', () => without(plainRoom(), '2.1'), {
    // From row 1 to row 3: 2405 - 1205.
    code: 'cover-gap',
    severity: 'error',
    value: 1200,
    limit: 0,
    unit: 'mm',
    standard: PRACTICE,
  }),
  damage('every piece left out', () => withLayout(plainRoom(), { pieces: [] }), { code: 'cover-gap', severity: 'error' }),
  damage('an end cut short of the wall', () => changed(plainRoom(), { '1.3': x(3595, 3580) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 20,
    limit: 10,
    unit: 'mm',
    standard: PRACTICE,
    where: { piece: '1.3', wall: 1 },
  }),
  damage('a row cut short of the wall', () => changed(plainRoom(), { '3.1': y(2995, 2985), '3.2': y(2995, 2985) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 15,
    limit: 10,
    standard: PRACTICE,
    where: { wall: 2 },
  }),
  damage('a butt joint opened by 10', () => changed(plainRoom(), { '2.2': x(1626.5, 1636.5) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 13,
    limit: 3,
    standard: SPECIFICATION,
    where: { pieces: ['2.1', '2.2'] },
  }),
  damage('a gap of 7 between rows', () => changed(plainRoom(), { '3.1': y(2405, 2412) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 7,
    limit: 0,
    standard: PRACTICE,
    where: { pieces: ['2.1', '3.1'] },
  }),
  damage('a corner bitten out', () => changed(plainRoom(), { '2.1': bitten }), {
    // 40, and the gap of the joint.
    code: 'cover-gap',
    severity: 'error',
    value: 43,
    limit: 3,
    where: { pieces: ['2.1', '2.2'] },
  }),
  damage('an end run over the next piece', () => changed(plainRoom(), { '1.1': x(423.5, 440) }), {
    code: 'overlap',
    severity: 'error',
    value: 13.5,
    limit: 0,
    unit: 'mm',
    standard: GEOMETRY,
    where: { pieces: ['1.1', '1.2'] },
  }),
  damage('a row run over the one below', () => changed(plainRoom(), { '3.2': y(2405, 2380) }), {
    code: 'overlap',
    severity: 'error',
    value: 25,
    limit: 0,
    where: { pieces: ['2.2', '3.2'] },
  }),
  damage('a piece drawn twice', () => added(plainRoom(), { id: 'copy', outline: block(5, 423.5, 5, 1205), board: 'C' }), {
    code: 'overlap',
    severity: 'error',
    value: 418.5,
    limit: 0,
    where: { pieces: ['1.1', 'copy'] },
  }),
  damage(
    'a piece in the middle of another',
    () => added(plainRoom(), { id: 'in', outline: block(2000, 2300, 1500, 1700), board: 'A' }),
    {
      code: 'overlap',
      severity: 'error',
      value: 200,
      where: { pieces: ['2.2', 'in'] },
    },
  ),
  damage('an end run through the wall', () => changed(plainRoom(), { '1.3': x(3595, 3610) }), {
    code: 'outside-room',
    severity: 'error',
    value: 10,
    limit: 0,
    standard: GEOMETRY,
    where: { piece: '1.3' },
  }),
  damage('a row run through the wall', () => changed(plainRoom(), { '3.1': y(2995, 3004) }), {
    code: 'outside-room',
    severity: 'error',
    value: 4,
    limit: 0,
    where: { piece: '3.1' },
  }),
  damage('a piece outside the room', () => added(plainRoom(), { id: 'out', outline: block(4000, 4400, 0, 300), board: 'A' }), {
    code: 'outside-room',
    severity: 'error',
    value: 300,
    where: { piece: 'out' },
  }),
  damage('an end 2 from the wall', () => changed(plainRoom(), { '1.3': x(3595, 3598) }), {
    code: 'perimeter-gap',
    severity: 'error',
    value: 2,
    limit: 3,
    unit: 'mm',
    standard: PRACTICE,
    where: { piece: '1.3', wall: 1 },
  }),
  damage('an edge hard on the wall', () => changed(plainRoom(), { '1.1': y(5, 0) }), {
    code: 'perimeter-gap',
    severity: 'error',
    value: 0,
    limit: 3,
    where: { piece: '1.1', wall: 0 },
  }),
  damage('a butt joint moved off its joist', () => changed(plainRoom(), { '2.1': x(1623.5, 1723.5), '2.2': x(1626.5, 1726.5) }), {
    // Joist of 50 less the gap of 3, half of it less 10: 13.5.
    code: 'end-off-timber',
    severity: 'error',
    value: 100,
    limit: 13.5,
    unit: 'mm',
    standard: PRACTICE,
    where: { pieces: ['2.1', '2.2'], joist: 'J5', row: 2 },
  }),
  damage(
    'a butt joint at the edge of its joist',
    () => changed(plainRoom(), { '2.1': x(1623.5, 1637.5), '2.2': x(1626.5, 1640.5) }),
    {
      code: 'end-off-timber',
      severity: 'error',
      value: 14,
      limit: 13.5,
    },
  ),
  damage('a butt joint with short bearing', () => changed(plainRoom(), { '2.1': x(1623.5, 1631.5), '2.2': x(1626.5, 1634.5) }), {
    // (50 - 3) / 2 - 13 - 6 = 4.5.
    code: 'bearing-short',
    severity: 'warning',
    value: 8,
    limit: 4.5,
    standard: SPECIFICATION,
    where: { pieces: ['2.1', '2.2'], joist: 'J5', row: 2 },
  }),
  damage('narrow joists', () => joistsLike(plainRoom(), (joist) => [{ ...joist, width: 35 }]), {
    code: 'bearing-short',
    severity: 'warning',
    value: 0,
    limit: -3,
  }),
  damage('the joist of a joint taken away', () => joistsLike(plainRoom(), (joist) => (joist.id === 'J5' ? [] : [joist])), {
    code: 'end-off-timber',
    severity: 'error',
    value: 400,
    limit: 13.5,
  }),
  damage(
    'the joist of a joint cut off by a trimmer',
    () => joistsLike(plainRoom(), (joist) => [joist.id === 'J5' ? { ...joist, end: { x: 1625, y: 2000 } } : joist]),
    // The joint runs to 2405; the joist ends at 2000, and the gap to a wall, 10, is allowed it.
    { code: 'end-off-timber', severity: 'error', value: 395, limit: 0, where: { joist: 'J5', row: 2 }, says: 'stops short' },
  ),
  damage(
    'an end in the middle of nowhere',
    () => changed(plainRoom(), { '1.3': (piece) => ({ ...piece, outline: block(2826.5, 3400, 5, 1205) }) }),
    { code: 'cover-gap', severity: 'error', value: 200, limit: 10, where: { piece: '1.3', wall: 1 } },
  ),
  damage('joints in line on one joist', () => changed(plainRoom(), { '3.1': x(1223.5, 1623.5), '3.2': x(1226.5, 1626.5) }), {
    code: 'stagger',
    severity: 'error',
    value: 0,
    limit: 300,
    unit: 'mm',
    standard: PRACTICE,
    where: { pieces: ['2.1', '2.2', '3.1', '3.2'], joist: 'J5', row: 2 },
    says: 'same joist',
  }),
  damage('joints nearer than the rule', () => ({ ...plainRoom(), rules: { 'stagger.minimum': 401 } }), {
    code: 'stagger',
    severity: 'error',
    value: 400,
    limit: 401,
    standard: "the caller's own value",
    where: { pieces: ['2.1', '2.2', '3.1', '3.2'], row: 2 },
  }),
  damage('nothing at all, but joints nearer than is preferred', plainRoom, {
    code: 'stagger',
    severity: 'warning',
    value: 400,
    limit: 600,
    standard: PRACTICE,
  }),
  damage('a piece shorter than the rule', () => ({ ...plainRoom(), rules: { 'piece.minimumLength': 421 } }), {
    code: 'piece-below-minimum',
    severity: 'error',
    value: 420,
    limit: 421,
    unit: 'mm',
    where: { piece: '1.1', row: 1 },
  }),
  damage('a sliver at the wall', sliverAtWall, {
    // From the joist at 3575 to the piece's end at 3595.
    code: 'piece-below-minimum',
    severity: 'error',
    value: 20,
    limit: 300,
    standard: PRACTICE,
    where: { piece: '1.3', row: 1 },
  }),
  damage('a flap on one joist', sliverAtWall, {
    code: 'piece-on-one-support',
    severity: 'error',
    value: 1,
    limit: 2,
    unit: 'joists',
    standard: PRACTICE,
    where: { piece: '1.3', joist: 'J10', row: 1 },
  }),
  damage(
    'a row of 145',
    () =>
      added(
        changed(plainRoom(), { '3.1': y(2995, 2850), '3.2': y(2995, 2850) }),
        { id: '4.1', outline: block(5, 1623.5, 2850, 2995), board: 'D' },
        { id: '4.2', outline: block(1626.5, 3595, 2850, 2995), board: 'D' },
      ),
    {
      code: 'row-below-minimum',
      severity: 'error',
      value: 145,
      limit: 200,
      unit: 'mm',
      standard: PRACTICE,
      where: { pieces: ['4.1', '4.2'] },
    },
  ),
  damage('two pieces too long for their board', () => changed(plainRoom(), { '1.3': onBoard('C') }), {
    // 1968.5 + 768.5 + 418.5.
    code: 'board-overcut',
    severity: 'error',
    value: 3155.5,
    limit: 2400,
    unit: 'mm',
    standard: GIVEN,
    where: { pieces: ['1.1', '1.3', '2.2'], board: 'C' },
  }),
  damage('three strips on a board for two', () => changed(plainRoom(), { '1.1': onBoard('D'), '3.2': onBoard('D') }), {
    // 418.5 of the full width, then 2368.5 beside 1218.5.
    code: 'board-overcut',
    severity: 'error',
    value: 2787,
    limit: 2400,
    where: { board: 'D' },
  }),
  damage('a saw cut that the board has no room for', () => ({ ...plainRoom(), rules: { kerf: 14 } }), {
    // 1618.5 + 14 + 768.5.
    code: 'board-overcut',
    severity: 'error',
    value: 2401,
    limit: 2400,
    where: { pieces: ['1.3', '2.1'], board: 'B' },
  }),
  damage('a piece longer than its board', () => without(changed(plainRoom(), { '3.1': x(1223.5, 3595) }), '3.2'), {
    code: 'board-overcut',
    severity: 'error',
    value: 3590,
    limit: 2400,
    unit: 'mm',
    where: { piece: '3.1', board: 'D' },
  }),
  damage('a row wider than the board', () => changed(plainRoom(), { '1.1': y(1205, 1230) }), {
    code: 'board-overcut',
    severity: 'error',
    value: 1225,
    limit: 1200,
    where: { piece: '1.1', board: 'C' },
  }),
  damage('a board that is not in the list', () => changed(plainRoom(), { '1.2': onBoard('Z') }), {
    code: 'board-unknown',
    severity: 'error',
    standard: GIVEN,
    where: { piece: '1.2', board: 'Z' },
  }),
  damage('a board of a stock that nobody sells', () => withLayout(plainRoom(), { boards: [{ id: 'A', stock: 'gold' }] }), {
    code: 'board-unknown',
    severity: 'error',
    where: { board: 'A' },
  }),
  damage(
    'a board that nothing is cut from',
    () => withLayout(plainRoom(), { boards: [...plainRoom().layout.boards, { id: 'E', stock: '1200 x 2400' }] }),
    { code: 'board-unused', severity: 'warning', where: { board: 'E' } },
  ),
  damage(
    'two boards of one name',
    () => withLayout(plainRoom(), { boards: [...plainRoom().layout.boards, { id: 'A', stock: '1200 x 2400' }] }),
    {
      code: 'repeated-id',
      severity: 'error',
      where: { board: 'A' },
    },
  ),
  damage('two pieces of one name', () => changed(plainRoom(), { '3.2': (piece) => ({ ...piece, id: '3.1' }) }), {
    code: 'repeated-id',
    severity: 'error',
    where: { piece: '3.1' },
  }),
  damage(
    'more boards than there are',
    () => ({ ...plainRoom(), boards: plainRoom().boards.map((each) => ({ ...each, available: 3 })) }),
    {
      code: 'stock-exceeded',
      severity: 'error',
      value: 4,
      limit: 3,
      unit: 'boards',
      standard: GIVEN,
      where: { board: 'D' },
    },
  ),
  damage(
    'boards along the joists',
    () => joistsLike(plainRoom(), (joist) => [{ ...joist, start: { x: 0, y: joist.start.x }, end: { x: 3600, y: joist.end.x } }]),
    {
      code: 'board-parallel-to-supports',
      severity: 'error',
      value: 2397,
      limit: 1200,
      unit: 'mm',
      where: { piece: '1.2', board: 'A' },
    },
  ),
  damage('every second joist missing', () => joistsLike(plainRoom(), (joist) => (joist.id === 'J4' ? [] : [joist])), {
    code: 'support-centres-exceeded',
    severity: 'warning',
    value: 800,
    limit: 450,
    unit: 'mm',
    standard: 'NHBC',
    where: { joist: 'J3' },
  }),
  damage('no joist beside the far wall', () => joistsLike(plainRoom(), (joist) => (joist.id === 'J10' ? [] : [joist])), {
    code: 'perimeter-overhang',
    severity: 'warning',
    value: 375,
    limit: 150,
    unit: 'mm',
    standard: PRACTICE,
    where: { joist: 'J9', wall: 1 },
  }),
  damage('a butt joint over an old one', () => overOldJoint({ x: 1655, y: 0 }, { x: 1655, y: 3000 }), {
    code: 'joint-over-old-joint',
    severity: 'warning',
    value: 30,
    limit: 200,
    unit: 'mm',
    standard: PRACTICE,
    where: { pieces: ['2.1', '2.2'], row: 2 },
  }),
  damage('a row line over an old one', () => overOldJoint({ x: 0, y: 2300 }, { x: 3600, y: 2300 }), {
    code: 'joint-over-old-joint',
    severity: 'warning',
    value: 105,
    limit: 200,
    where: { row: 2 },
  }),
  damage('a piece too heavy for the team', () => ({ ...plainRoom(), rules: { 'piece.maximumMass': 24 } }), {
    // 2.397 x 1.2 x 8.4.
    code: 'piece-too-heavy',
    severity: 'warning',
    value: 24.162,
    limit: 24,
    unit: 'kg',
    where: { piece: '1.2' },
  }),
  damage('joists that nobody has seen', () => joistsLike(plainRoom(), (joist) => [{ ...joist, known: 'inferred', sd: 3 }]), {
    // Within 4.5 of a centre with a spread of 3: 1.5 sd, 0.866386.
    code: 'end-unproven',
    severity: 'warning',
    value: 0.866386,
    limit: 0.95,
    standard: PRACTICE,
    where: { joist: 'J5' },
  }),
];

function bitten(piece: PieceToCheck): PieceToCheck {
  const [a, b, c, d] = piece.outline;
  // 40 x 60 out of the corner that is inside the room.
  return { ...piece, outline: [a, b, { x: c.x, y: c.y - 60 }, { x: c.x - 40, y: c.y - 60 }, { x: c.x - 40, y: c.y }, d] };
}

/** Of rooms with openings and of rooms that are no rectangles. */
export const SHAPED_DAMAGE: readonly Damage[] = [
  damage('the hatch boarded over', () => changed(hatchRoom(), { '2.2': hole() }), {
    code: 'over-opening',
    severity: 'error',
    value: 350,
    limit: 0,
    unit: 'mm',
    standard: GEOMETRY,
    where: { piece: '2.2' },
    says: 'hatch loft',
  }),
  damage('the hatch cut 30 to one side', hatchToOneSide, {
    code: 'over-opening',
    severity: 'error',
    value: 30,
    where: { piece: '2.2' },
  }),
  damage('the hatch cut 30 to one side leaves a gap', hatchToOneSide, {
    code: 'cover-gap',
    severity: 'error',
    value: 30,
    limit: 10,
  }),
  damage('the hatch cut too large', () => changed(hatchRoom(), { '2.2': hole(block(2435, 2815, 1485, 2115)) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 15,
    limit: 10,
  }),
  damage('a neck left above and below a hatch', () => changed(hatchRoom(), { '2.2': hole(block(2450, 2800, 1500, 2110)) }), {
    // 1500 - 1205 and 2405 - 2110.
    code: 'piece-neck-narrow',
    severity: 'warning',
    value: 295,
    limit: 300,
    unit: 'mm',
    standard: PRACTICE,
    where: { piece: '2.2' },
  }),
  damage('a notch as deep as 905 into a row of 1200', () => changed(plainRoom(), { '1.2': notchedBeside(2500) }), {
    code: 'piece-neck-narrow',
    severity: 'warning',
    value: 295,
    where: { piece: '1.2' },
  }),
  damage('a light boarded over', () => changed(hatchRoom(), { '1.2': hole() }), {
    code: 'over-opening',
    severity: 'error',
    where: { piece: '1.2' },
    says: 'light L1',
  }),
  damage('a light cut 20 to one side', () => changed(hatchRoom(), { '1.2': hole(round(1045, 600, 35)) }), {
    code: 'over-opening',
    severity: 'error',
    where: { piece: '1.2' },
  }),
  damage('a hole of 110 for a light of 70', () => changed(hatchRoom(), { '1.2': hole(round(1025, 600, 55)) }), {
    code: 'cover-gap',
    severity: 'error',
    limit: 10,
  }),
  damage('a hole where there is no opening', () => changed(hatchRoom(), { '1.3': hole(block(3000, 3060, 500, 900)) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 60,
  }),
  damage(
    'a butt joint in line with a corner of the hatch',
    () => ({
      ...hatchRoom(),
      room: { ...plainRoom().room, openings: [{ id: 'loft', kind: 'hatch', outline: block(1680, 1980, 1500, 2100) }] },
      layout: changed(plainRoom(), { '2.2': hole(block(1680, 1980, 1500, 2100)) }).layout,
    }),
    // 1680 - 1625.
    {
      code: 'joint-near-hatch-corner',
      severity: 'warning',
      value: 55,
      limit: 150,
      unit: 'mm',
      standard: PRACTICE,
      where: { pieces: ['2.1', '2.2'] },
    },
  ),
  damage(
    'a light beside a butt joint',
    () => ({
      ...hatchRoom(),
      room: { ...plainRoom().room, openings: [{ id: 'L1', kind: 'light', outline: block(1680, 1750, 1500, 1570) }] },
      layout: changed(plainRoom(), { '2.2': hole(block(1680, 1750, 1500, 1570)) }).layout,
    }),
    {
      code: 'joint-near-opening',
      severity: 'warning',
      value: 55,
      limit: 100,
      unit: 'mm',
      standard: PRACTICE,
      where: { pieces: ['2.1', '2.2'] },
      says: 'light L1',
    },
  ),
  damage('a piece left out of the leg', () => without(cornerRoom(), '3.2'), {
    code: 'cover-gap',
    severity: 'error',
    value: 1195,
    limit: 10,
  }),
  damage('the notch too shallow', () => changed(cornerRoom(), { '2.2': y(2395, 2404) }), {
    // Beyond the wall at 2400, from 3300 on.
    code: 'outside-room',
    severity: 'error',
    value: 4,
    limit: 0,
    where: { piece: '2.2' },
  }),
  damage('the notch cut too deep', () => changed(cornerRoom(), { '2.2': y(2395, 2375) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 25,
    limit: 10,
    where: { wall: 2 },
  }),
  damage('the notch cut to the wrong hand', () => changed(cornerRoom(), { '2.2': mirroredWithin }), {
    code: 'outside-room',
    severity: 'error',
  }),
  damage('the leg run through its wall', () => changed(cornerRoom(), { '3.2': x(3295, 3320) }), {
    code: 'outside-room',
    severity: 'error',
    value: 20,
    where: { piece: '3.2' },
  }),
  damage('the leg short of its wall', () => changed(cornerRoom(), { '3.2': x(3295, 3270) }), {
    code: 'cover-gap',
    severity: 'error',
    value: 30,
    limit: 10,
    where: { piece: '3.2', wall: 3 },
  }),
  damage('the leg hard on its wall', () => changed(cornerRoom(), { '3.2': x(3295, 3300) }), {
    code: 'perimeter-gap',
    severity: 'error',
    value: 0,
    limit: 3,
    where: { piece: '3.2', wall: 3 },
  }),
  damage(
    'a joint of the leg off its joist',
    () => changed(cornerRoom(), { '3.1': x(1238.5, 1338.5), '3.2': x(1241.5, 1341.5) }),
    {
      code: 'end-off-timber',
      severity: 'error',
      value: 100,
      limit: 13.5,
      where: { pieces: ['3.1', '3.2'], row: 3 },
    },
  ),
  damage('a joint of the leg in line', () => changed(cornerRoom(), { '3.1': x(1238.5, 2038.5), '3.2': x(1241.5, 2041.5) }), {
    code: 'stagger',
    severity: 'error',
    value: 0,
    limit: 300,
  }),
  damage('two pieces of the corner room from one board', () => changed(cornerRoom(), { '3.2': onBoard('E') }), {
    // 1233.5 + 2053.5, both 1190 wide.
    code: 'board-overcut',
    severity: 'error',
    value: 3287,
    limit: 3000,
  }),
  damage('a notched piece over its neighbour', () => changed(cornerRoom(), { '2.2': x(2041.5, 2021.5) }), {
    code: 'overlap',
    severity: 'error',
    value: 17,
    where: { pieces: ['2.1', '2.2'] },
  }),
  damage('the whole layout 10 along', () => changed(cornerRoom(), allPieces(cornerRoom(), shifted(10, 0))), {
    code: 'cover-gap',
    severity: 'error',
    value: 15,
    limit: 10,
  }),
  damage(
    'a raked end cut square',
    () => changed(leaningRoom(), { '1.2': () => ({ id: '1.2', outline: block(1801.5, 3794, 5, 1200), board: 'B' }) }),
    {
      // The wall at y = 5 is at 3999.167: 205.167 along the row, 202.37 square to it.
      code: 'cover-gap',
      severity: 'error',
      limit: 10,
      where: { piece: '1.2', wall: 1 },
    },
  ),
  damage(
    'a raked end left square',
    () => changed(leaningRoom(), { '2.2': () => ({ id: '2.2', outline: block(1401.5, 3794, 1200, 2395), board: 'D' }) }),
    {
      code: 'outside-room',
      severity: 'error',
      where: { piece: '2.2' },
    },
  ),
  damage('a raked end 4 too long', () => changed(leaningRoom(), { '1.2': rakedBy(4) }), {
    // 2 along the row is 2 x 6 / sqrt(37) = 1.973 square to the wall.
    code: 'perimeter-gap',
    severity: 'error',
    value: 1.973,
    limit: 3,
    where: { piece: '1.2', wall: 1 },
  }),
  damage('a raked end 6 too short', () => changed(leaningRoom(), { '1.2': rakedBy(-6) }), {
    // 12 along the row is 11.836 square to the wall.
    code: 'cover-gap',
    severity: 'error',
    limit: 10,
    where: { piece: '1.2', wall: 1 },
  }),
  damage('the joist that the wall cuts off taken for a support', () => changed(leaningRoom(), { '2.2': splitAt(3800) }), {
    code: 'cover-gap',
    severity: 'error',
  }),
];

const allPieces = ({ layout }: CheckByHand, change: Change): Record<string, Change> =>
  Object.fromEntries(layout.pieces.map(({ id }) => [id, change]));

const rakedBy = (longer: number): Change => corner((point) => (point.x > 3500 ? { ...point, x: point.x + longer } : point));

const splitAt = (at: number): Change =>
  corner((point) => (point.x > 3500 ? { ...point, x: Math.min(point.x, at - 300) } : point));
