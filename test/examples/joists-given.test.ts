import { bearing, joistsFromPositions, joistsFromSpacing, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const room = { outline: rectangle(3600, 3000) };
const across = (joists: { start: { x: number } }[]) => joists.map((joist) => joist.start.x);

describe('joists that were given', () => {
  it('stand at even centres from the first, none outside the room', () => {
    expect(across(joistsFromSpacing({ room, direction: 'y', first: 200, spacing: 600 }))).toEqual([
      200, 800, 1400, 2000, 2600, 3200,
    ]);
  });

  it('a joist whose centre line is on the wall still counts', () => {
    expect(across(joistsFromSpacing({ room, direction: 'y', first: 0, spacing: 1200 }))).toEqual([0, 1200, 2400, 3600]);
  });

  it('a last joist takes the place of a regular one that would overlap it', () => {
    expect(across(joistsFromSpacing({ room, direction: 'y', first: 25, spacing: 400, last: 3240 })).slice(-2)).toEqual([
      2825, 3240,
    ]);
  });

  it('the first is measured from the least coordinate of a room anywhere', () => {
    const moved = { outline: room.outline.map(({ x, y }) => ({ x: x - 5000, y: y + 700 })) };
    expect(across(joistsFromSpacing({ room: moved, direction: 'y', first: 25, spacing: 400 }))[0]).toBe(-4975);
  });

  it('run the length of the room, and along x when told so', () => {
    const [joist] = joistsFromSpacing({ room, direction: 'x', first: 100, spacing: 400 });
    expect(joist).toEqual({
      id: 'J1',
      start: { x: 0, y: 100 },
      end: { x: 3600, y: 100 },
      width: 47,
      sd: 0,
      presence: 1,
      known: 'given',
    });
  });

  it('may run askew', () => {
    const [joist] = joistsFromPositions({ room, direction: 'y', positions: [{ atStart: 400, atEnd: 430 }], width: 50 });
    expect([joist.start, joist.end]).toEqual([
      { x: 400, y: 0 },
      { x: 430, y: 3000 },
    ]);
  });
});

describe('the bearing of a butt joint', () => {
  const on = (width: number, offset: number, jointGap?: number) => {
    const [joist] = joistsFromPositions({ room, direction: 'y', positions: [1200], width });
    return bearing({ joist, at: 1200 + offset, jointGap });
  };

  it('is short on a joist too narrow for both edge distances, and off where one side has under 10 mm', () => {
    expect(on(38, 0)).toMatchObject({ tolerance: -1.5, outcome: 'short' });
    expect(on(47, 3)).toMatchObject({ outcome: 'secure', withinEdgeRules: 1 });
    expect(on(47, 3.001)).toMatchObject({ outcome: 'short', withinEdgeRules: 0, onTimber: 1 });
    expect(on(47, 12)).toMatchObject({ outcome: 'short', onTimber: 1 });
    expect(on(47, 12.001)).toMatchObject({ outcome: 'off', onTimber: 0 });
  });

  it('is tight where the joist is not known well enough', () => {
    const [given] = joistsFromPositions({ room, direction: 'y', positions: [1200], width: 50 });
    const joist = { ...given, sd: 4.5, known: 'inferred' as const };
    // One standard deviation either side: 68.27 % of a normal distribution.
    expect(bearing({ joist, at: 1200 })).toMatchObject({ tolerance: 4.5, withinEdgeRules: 0.682689, outcome: 'tight' });
    expect(bearing({ joist: { ...joist, presence: 0.5 }, at: 1200 }).withinEdgeRules).toBeCloseTo(0.341345, 5);
  });

  it('is measured square to a joist that runs askew, at the place of the joint', () => {
    const [joist] = joistsFromPositions({ room, direction: 'y', positions: [{ atStart: 1200, atEnd: 1230 }], width: 50 });
    expect(bearing({ joist, at: { x: 1200, y: 0 } }).offset).toBe(0);
    expect(bearing({ joist, at: { x: 1200, y: 3000 } }).offset).toBeCloseTo(30, 2);
    expect(bearing({ joist, at: 1215 }).offset).toBe(0);
  });
});
