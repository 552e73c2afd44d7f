import {
  type End,
  type Finding,
  type Joist,
  joistsFromPositions,
  type Piece,
  type Point,
  placeBoards,
  type Room,
  rectangle,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { findingsByHand, rowByHand } from '../generators/findingsByHand.js';
import { handLaidPiece, joint, wall } from '../generators/handLaid.js';
import { even, joistAt, ring, stock } from '../generators/scenario.js';

/** A piece with an outline of its own. */
function shaped(id: string, row: number, ends: readonly [End, End], outline: readonly Point[]): Piece {
  const levels = outline.map(({ y }) => y);
  return { ...handLaidPiece({ id, ends, low: Math.min(...levels), high: Math.max(...levels) }), row, outline };
}

const toldOf = (findings: readonly Finding[]) =>
  findings
    .filter(({ code }) => code === 'perimeter-overhang')
    .map(({ value, where }) => ({ value, wall: where?.wall, joist: where?.joist }));

const byHand = (by: Parameters<typeof findingsByHand>[0]) => toldOf(findingsByHand(by));

const placed = (outline: readonly Point[], joists: Parameters<typeof placeBoards>[0]['joists'], more: Partial<Room> = {}) =>
  toldOf(placeBoards({ room: { outline, ...more }, joists, boards: [stock(2400)] }).findings);

describe('a joist on the line of a wall', () => {
  it('carries the boards there', () => {
    expect(placed(rectangle(3200, 1190), even(0, 400, 3200))).toEqual([]);
  });

  it('carries them at the walls of a leg', () => {
    const tee = ring([0, 0], [4800, 0], [4800, 1500], [3200, 1500], [3200, 3600], [1600, 3600], [1600, 1500], [0, 1500]);
    expect(placed(tee, even(0, 400, 4800))).toEqual([]);
    const ell = ring([0, 0], [4800, 0], [4800, 2400], [3300, 2400], [3300, 3600], [0, 3600]);
    const positions = [60, 460, 860, 1260, 1660, 2060, 2460, 2860, 3300, 3700, 4100, 4500, 4740];
    expect(placed(ell, { direction: 'y', positions, width: 50 })).toEqual([]);
    // Without that joist the leg hangs over from 2860 to 3300.
    const without = positions.filter((position) => position !== 3300);
    expect(placed(ell, { direction: 'y', positions: without, width: 50 })).toEqual([{ value: 440, wall: 3, joist: 'J8' }]);
  });
});

describe('a piece that faces a wall along a part of its end', () => {
  it('hangs over there, not where it faces a zone', () => {
    const joistsOfZone = { direction: 'x' as const, first: 60, spacing: 400, last: 1440, width: 50 };
    const zone = { id: 'Z', outline: ring([3200, 0], [4600, 0], [4600, 1500], [3200, 1500]), joists: joistsOfZone };
    const room = { outline: rectangle(4600, 3600), zones: [zone] };
    const outline = ring([2461.5, 1205], [3200, 1205], [3200, 1505], [4595, 1505], [4595, 2405], [2461.5, 2405]);
    const pieces = [shaped('2.3', 2, [joint(2460, 'J7'), wall(4595)], outline)];
    // To the border from J8, at 2860. At the wall there is a joist at 4540 from 1500 on.
    const found = byHand({ room, joists: even(60, 400, 4540), pieces, rows: [rowByHand(2, 1205, 2405)] });
    expect(found).toEqual([{ value: 340, wall: undefined, joist: 'J8' }]);
  });

  it('hangs over there, not where it ends at a stair', () => {
    const stair = { id: 'S', kind: 'other' as const, outline: ring([0, 1500], [900, 1500], [900, 4100], [0, 4100]) };
    const joists = [50, 350, 650].map((x, i) => joistAt(`L${i + 1}`, x, 0, 1500));
    const beside = [950, 1350, 1750].map((x, i) => joistAt(`J${i + 1}`, x, 0, 5000));
    const outline = ring([5, 405], [1348.5, 405], [1348.5, 1605], [905, 1605], [905, 1495], [5, 1495]);
    const pieces = [shaped('2.1', 2, [wall(5), joint(1350, 'J2')], outline)];
    const room = { outline: rectangle(3800, 5000), openings: [stair] };
    expect(byHand({ room, joists: [...joists, ...beside], pieces, rows: [rowByHand(2, 405, 1605)] })).toEqual([]);
  });

  it('faces the near side of a thin pier, not the far one', () => {
    // The pier is 40 wide; joists are 150 before it and 140 behind it.
    const outline = ring([0, 0], [2390, 0], [2390, 1210], [1240, 1210], [1240, 810], [1200, 810], [1200, 1210], [0, 1210]);
    const room = { outline };
    const positions = [45, 350, 700, 1050, 1380, 1700, 2000, 2345];
    const joists = joistsFromPositions({ room, direction: 'y', positions, width: 50 });
    const around = ring([5, 5], [2385, 5], [2385, 1205], [1245, 1205], [1245, 805], [1195, 805], [1195, 1205], [5, 1205]);
    const pieces = [shaped('1.1', 1, [wall(5), wall(2385)], around)];
    expect(byHand({ room, joists, pieces, rows: [rowByHand(1, 5, 1205)] })).toEqual([]);
  });
});

describe('noggings from the last joist to the wall', () => {
  const room = { outline: rectangle(3300, 1210) };
  const joists = joistsFromPositions({
    room,
    direction: 'y',
    positions: [250, 650, 1050, 1450, 1850, 2250, 2650, 3050],
    width: 50,
  });
  const pieces = [handLaidPiece({ id: '1.1', ends: [wall(5), wall(3295)], low: 5, high: 1205 })];
  const found = (levels: readonly number[]) => {
    const noggings = levels.flatMap((y) =>
      [0, 3050].map((x): Joist => ({ ...joists[0], id: `N${x} ${y}`, kind: 'nogging', start: { x, y }, end: { x: x + 250, y } })),
    );
    return byHand({ room, joists: [...joists, ...noggings], pieces, rows: [rowByHand(1, 5, 1205)] });
  };

  it('carry the boards where no place of the wall is further from one than the limit', () => {
    // 292 apart: 146 at the most.
    expect(found([21, 313, 605, 897, 1189])).toEqual([]);
  });

  it('do not carry them half way between two that are far apart', () => {
    // 380 apart: 190 half way. 584 apart: 292 half way, where the joist is nearer.
    expect(found([25, 405, 785, 1165]).map(({ value }) => value)).toEqual([190, 190]);
    expect(found([21, 605, 1189])).toEqual([
      { value: 250, wall: 1, joist: 'J8' },
      { value: 250, wall: 3, joist: 'J1' },
    ]);
  });

  it('do not carry them at one end of the wall when they are at the other', () => {
    expect(found([21, 313]).map(({ value }) => value)).toEqual([250, 250]);
  });
});

describe('a slanting wall that joists run into', () => {
  it('is furthest from timber between the end of one and the next', () => {
    // x + y = 5800. At x between 2900 and 3300: x - 2900 from the one, (3300 - x) times the root of 2 from the end of the other; 234.315 where they are alike.
    const outline = ring([0, 0], [3600, 0], [3600, 2200], [2900, 2900], [0, 2900]);
    const [{ value, wall: side }, ...others] = placed(outline, even(100, 400, 3500));
    expect(others).toEqual([]);
    expect(side).toBe(2);
    expect(value).toBeCloseTo(400 * (2 - Math.SQRT2), 2);
  });

  it('hangs over the more, the more it runs with them', () => {
    // The wall goes 400 back in 1210; the joist at 2200 meets it half way up. Beyond, s along the wall from the end of that joist, the one at 1800 is 400 - s * 400 / 1274.4 away.
    const room = { outline: ring([0, 0], [2400, 0], [2000, 1210], [0, 1210]) };
    const joists = [45, 400, 800, 1200, 1500, 1800].map((x, i) => joistAt(`J${i + 1}`, x, 0, 1210));
    const outline = ring([5, 5], [2393, 5], [1996, 1205], [5, 1205]);
    const pieces = [shaped('1.1', 1, [wall(5), wall(2393)], outline)];
    const [found, ...others] = byHand({
      room,
      joists: [...joists, joistAt('J7', 2200, 0, 605)],
      pieces,
      rows: [rowByHand(1, 5, 1205)],
    });
    expect(others).toEqual([]);
    const length = Math.sqrt(400 * 400 + 1210 * 1210);
    expect(found.value).toBeCloseTo((400 * length) / (length + 400), 2);
  });

  it('counts of a joist that is said to run on outside only what runs inside', () => {
    const room = { outline: ring([0, 0], [2400, 0], [2000, 1210], [0, 1210]) };
    const joists = [45, 400, 800, 1200, 1500, 1800, 2200].map((x, i) => joistAt(`J${i + 1}`, x, 0, 1210));
    const pieces = [shaped('1.1', 1, [wall(5), wall(2393)], ring([5, 5], [2393, 5], [1996, 1205], [5, 1205]))];
    const [found] = byHand({ room, joists, pieces, rows: [rowByHand(1, 5, 1205)] });
    expect(found.value).toBeCloseTo(304.444, 2);
  });
});

it('a joist cut for a hatch and going on beyond it stops short of no wall', () => {
  const hatch = { id: 'H', kind: 'hatch' as const, outline: ring([1274, 400], [1826, 400], [1826, 900], [1274, 900]) };
  const whole = [45, 450, 850, 1250, 1850, 2250, 2650, 3050, 3555].map((x, i) => joistAt(`J${i + 1}`, x, 0, 3000));
  const trimmers = [376, 924].map(
    (y): Joist => ({ ...whole[0], id: `T${y}`, kind: 'trimmer', start: { x: 1250, y }, end: { x: 1850, y } }),
  );
  const joists = [...whole, joistAt('A', 1550, 0, 376), joistAt('B', 1550, 924, 3000), ...trimmers];
  expect(placed(rectangle(3600, 3000), joists, { openings: [hatch] })).toEqual([]);
});
