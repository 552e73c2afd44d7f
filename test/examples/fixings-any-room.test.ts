import {
  checkFixings,
  type FixingLine,
  inferJoists,
  type Joist,
  type JoistDescription,
  nextProbe,
  type Piece,
  type Point,
  placeBoards,
  placeFixings,
  type Room,
  rectangle,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { handLaid, handLaidPiece, joint, wall } from '../generators/handLaid.js';
import { joistAt as joistFrom } from '../generators/scenario.js';

const room = { outline: rectangle(3600, 1210) };
const joistAt = (id: string, x: number, from = 0, to = 1210): Joist => joistFrom(id, x, from, to);
const said = ({ joist, kind, count }: FixingLine) => `${joist} ${kind} ${count}`;

describe('screws where timber ends', () => {
  const joists = [joistAt('J1', 30), joistAt('J2', 600), joistAt('J3', 1200, 0, 700), joistAt('J4', 1800), joistAt('J5', 2400)];
  const two = handLaid(
    { id: '1.1', ends: [wall(5), joint(1200, 'J3')], low: 5, high: 1205 },
    { id: '1.2', ends: [joint(1200, 'J3'), wall(2430)], low: 5, high: 1205 },
  );

  it('a butt joint on a joist that ends under it is told, with how much of it nothing holds', () => {
    const { findings, positions } = placeFixings({ room, layout: two, joists });
    expect(findings).toMatchObject([
      {
        code: 'fixing-gap',
        severity: 'error',
        where: { piece: '1.1', joist: 'J3', at: { x: 1200, y: 952.5 } },
        value: 505,
        limit: 230,
      },
      { code: 'fixing-gap', severity: 'error', where: { piece: '1.2', joist: 'J3' }, value: 505 },
    ]);
    expect(Math.max(...positions.filter(({ joist }) => joist === 'J3').map(({ y }) => y))).toBeLessThanOrEqual(694);
  });

  it('joists cut by a trimmer stop short of it, and the trimmer takes a line of its own, spaced like an end', () => {
    const trimmer: Joist = { ...joistAt('T', 0), start: { x: 600, y: 725 }, end: { x: 1800, y: 725 }, kind: 'trimmer' };
    const cut = [joistAt('J1', 30), joistAt('J2', 600), joistAt('J3', 1200, 0, 700), joistAt('J4', 1800), trimmer];
    const layout = handLaid({ id: '1.1', ends: [wall(5), wall(1900)], low: 5, high: 1205 });
    const { lines, findings } = placeFixings({ room, layout, joists: cut });
    expect(findings).toEqual([]);
    expect(lines.map(said)).toEqual(['J1 perimeter 9', 'J2 field 6', 'J3 field 4', 'T end 9', 'J4 perimeter 9']);
  });

  it('the two stretches of a joist on either side of a breast are both the line at the wall', () => {
    // The piece is notched for a breast at its low end; the first joist runs on both sides of it.
    const joists2 = [joistAt('J1a', 30, 0, 400), joistAt('J1b', 30, 800, 1210), joistAt('J2', 600), joistAt('J3', 1200)];
    const base = handLaidPiece({ id: '1.1', ends: [wall(5), wall(1230)], low: 5, high: 1205 });
    const outline: Point[] = [
      { x: 5, y: 5 },
      { x: 1230, y: 5 },
      { x: 1230, y: 1205 },
      { x: 5, y: 1205 },
      { x: 5, y: 805 },
      { x: 300, y: 805 },
      { x: 300, y: 395 },
      { x: 5, y: 395 },
    ];
    const piece: Piece = { ...base, outline };
    const { lines, findings } = placeFixings({ room, layout: { pieces: [piece] }, joists: joists2 });
    expect(findings).toEqual([]);
    expect(lines.map(said)).toEqual(['J1a perimeter 4', 'J1b perimeter 4', 'J2 field 6', 'J3 perimeter 9']);
  });
});

describe('screws on a joist that stands on the line of a wall', () => {
  it('stay on the timber, nearer the cut end than the rule: told by placer and verifier, and no error', () => {
    const joists: JoistDescription = { direction: 'y', positions: [0, 400, 800, 1200], width: 47 };
    const small = { outline: rectangle(1230, 1210) };
    const layout = handLaid({ id: '1.1', ends: [wall(5), wall(1225)], low: 5, high: 1205 });
    const fixings = placeFixings({ room: small, layout, joists });
    expect(fixings.findings).toMatchObject([
      { code: 'fixing-edge', severity: 'warning', where: { joist: 'J1' }, value: 12.5, limit: 13 },
    ]);
    expect(fixings.findings[0].message).toContain('covers little of the joist');
    const boards = [{ id: 'B1', stock: '2400' }];
    const found = checkFixings({ room: small, layout: { ...layout, boards }, joists, fixings });
    expect(found.map(({ code, severity }) => `${severity} ${code}`)).toEqual(
      Array.from({ length: 9 }, () => 'warning fixing-edge'),
    );
    // On a joist that has room for both distances the same screw is an error.
    const wider: JoistDescription = { direction: 'y', positions: [10, 400, 800, 1200], width: 47 };
    const worse = checkFixings({ room: small, layout: { ...layout, boards }, joists: wider, fixings: fixings.positions });
    expect(worse.filter(({ code, severity }) => code === 'fixing-edge' && severity === 'error')).toHaveLength(9);
  });
});

describe('screws at a raked end', () => {
  it('keep 13 from the rake on both sides of a joist that runs askew', () => {
    const askew: Joist = { ...joistAt('J3', 1200), start: { x: 1180, y: 0 }, end: { x: 1220, y: 1210 } };
    const at = (y: number): number => 1180 + (40 * y) / 1210;
    const raked = (piece: Piece, end: 0 | 1): Piece => ({
      ...piece,
      outline: piece.outline.map(({ x, y }) => ({
        x: x === piece.outline[end].x ? Math.round((at(y) + (end === 0 ? 1.5 : -1.5)) * 1000) / 1000 : x,
        y,
      })),
    });
    const [one, other] = handLaid(
      { id: '1.1', ends: [wall(5), joint(1200, 'J3')], low: 5, high: 1205 },
      { id: '1.2', ends: [joint(1200, 'J3'), wall(2430)], low: 5, high: 1205 },
    ).pieces;
    const joists = [joistAt('J1', 30), joistAt('J2', 600), askew, joistAt('J4', 1800), joistAt('J5', 2400)];
    const { positions, findings } = placeFixings({ room, layout: { pieces: [raked(one, 1), raked(other, 0)] }, joists });
    expect(findings).toEqual([]);
    const there = positions.filter(({ joist }) => joist === 'J3');
    expect(there).toHaveLength(18);
    // Square to the joist, 14.5 from its middle: 13 and half of the gap.
    const square = 1210 / Math.hypot(1210, 40);
    for (const { x, y } of there) expect(Math.abs(Math.abs(x - at(y)) * square - 14.5)).toBeLessThan(0.05);
  });
});

describe('screws of two ceilings in one room', () => {
  const zoned: Room = {
    outline: rectangle(4000, 1210),
    zones: [
      {
        id: 'left',
        outline: rectangle(2000, 1210),
        joists: { direction: 'y', positions: [30, 500, 1000, 1500, 1970], width: 50 },
      },
      {
        id: 'right',
        outline: rectangle(2000, 1210).map(({ x, y }) => ({ x: x + 2000, y })),
        joists: { direction: 'x', positions: [30, 600, 1180], width: 50 },
      },
    ],
  };
  it('each piece is fixed to the joists of its own, in lines across it', () => {
    const left = handLaidPiece({ id: '1.1', ends: [wall(5), wall(1997)], low: 5, high: 1205 });
    const right: Piece = {
      ...handLaidPiece({ id: '2.1', ends: [wall(5), wall(1205)], low: 2003, high: 3203 }),
      outline: [
        { x: 2003, y: 5 },
        { x: 3203, y: 5 },
        { x: 3203, y: 1205 },
        { x: 2003, y: 1205 },
      ],
    };
    const { lines, positions, findings } = placeFixings({ room: zoned, joists: [], layout: { pieces: [left, right] } });
    expect(findings).toEqual([]);
    expect(lines.map((line) => `${line.piece} ${said(line)}`)).toEqual([
      '1.1 left J1 perimeter 9',
      '1.1 left J2 field 6',
      '1.1 left J3 field 6',
      '1.1 left J4 field 6',
      '1.1 left J5 perimeter 9',
      '2.1 right J1 perimeter 9',
      '2.1 right J2 field 6',
      '2.1 right J3 perimeter 9',
    ]);
    expect(positions.filter(({ joist }) => joist === 'right J2').every(({ y }) => y === 600)).toBe(true);
  });
});

describe('screws of a ceiling of its own in the corner of a room', () => {
  it('are in every piece, also where pieces end on the border', () => {
    const corner = rectangle(1400, 1500).map(({ x, y }) => ({ x: x + 3200, y }));
    const room: Room = {
      outline: rectangle(4600, 3600),
      zones: [{ id: 'corner', outline: corner, joists: { direction: 'x', first: 60, spacing: 400, last: 1440, width: 50 } }],
    };
    const joists = { direction: 'y' as const, first: 60, spacing: 400, last: 4540, width: 50 };
    const boards = [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }];
    const layout = placeBoards({ room, joists, boards });
    const fixings = placeFixings({ room, joists, layout });
    const held = new Set(fixings.positions.map(({ piece }) => piece));
    expect(layout.pieces.filter(({ zone }) => zone === 'corner').length).toBeGreaterThan(1);
    expect(layout.pieces.map(({ id }) => id).filter((id) => !held.has(id))).toEqual([]);
    expect(checkFixings({ room, joists, layout, fixings }).filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

describe('joists inferred beside a chimney breast', () => {
  const outline = [
    { x: 0, y: 0 },
    { x: 4200, y: 0 },
    { x: 4200, y: 3000 },
    { x: 0, y: 3000 },
    { x: 0, y: 2200 },
    { x: 700, y: 2200 },
    { x: 700, y: 900 },
    { x: 0, y: 900 },
  ];
  const marks = [930, 1730, 2130, 3330, 3730].map((x) => ({ x, y: 1500, kind: 'probe' as const }));
  const inference = inferJoists({ room: { outline }, marks, direction: 'y', width: 47 });

  it('are one for each stretch, less sure the further from the marks', () => {
    expect(inference.joists.map(({ id }) => id).slice(0, 5)).toEqual(['J1a', 'J1b', 'J2a', 'J2b', 'J3']);
    const [first] = inference.joists;
    expect([first.start.y, first.end.y]).toEqual([0, 900]);
    expect(first.sdAtStart).toBeGreaterThan(first.sdAtEnd as number);
    expect(first.sd).toBeGreaterThan(first.sdAtEnd as number);
  });

  it('the next hole for a butt joint on one of them is on it, inside the room', () => {
    const probe = nextProbe(inference, { endJoints: ['J1b'] });
    expect(probe?.joist).toBe('J1b');
    expect(Math.abs((probe?.x as number) - 130)).toBeLessThan(30);
    expect((probe?.y as number) < 900 || (probe?.y as number) > 2200).toBe(true);
  });
});
