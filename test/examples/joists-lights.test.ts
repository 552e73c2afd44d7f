import { type Joist, type Opening, planCeiling, type Room, rectangle, ruleSets } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { lightsOnJoists } from '../../src/joists/lightsOnJoists.js';
import { locateJoists } from '../../src/joists/locateJoists.js';

const outline = rectangle(2390, 2380);
const positions = [45, 445, 845, 1245, 1645, 2045, 2345];
const joistsOf = (room: Room) => locateJoists(room, { direction: 'y', positions, width: 50 }, ruleSets.uk).joists;
const light = (id: string, x: number, y: number, diameter = 70): Opening => ({ id, kind: 'light', centre: { x, y }, diameter });
const told = (room: Room, joists: readonly Joist[] = joistsOf(room)) => lightsOnJoists(room, joists, ruleSets.uk);

describe('a hole for a light', () => {
  it('on a joist is reported with the nearest clear place', () => {
    // 1245 + 25 of joist + 10 clear + 35 of hole.
    expect(told({ outline, openings: [light('sink', 1250, 600)] })).toMatchObject([
      {
        code: 'light-on-joist',
        severity: 'warning',
        where: { joist: 'J4', at: { x: 1250, y: 600 } },
        value: -55,
        limit: 10,
        message: 'The hole for sink would be cut where J4 is. The nearest clear place is 1315, 600.',
      },
    ]);
  });

  it('in the middle of a bay is not, and neither is one that just keeps clear', () => {
    expect(told({ outline, openings: [light('a', 1045, 600), light('b', 1315, 600), light('c', 1175, 600)] })).toEqual([]);
    expect(told({ outline, openings: [light('b', 1314, 600)] })).toMatchObject([{ value: 9 }]);
  });

  it('of six on a grid and a vent, the two that are on a joist are told', () => {
    const grid = [300, 1195, 1880].flatMap((x) => [600, 1780].map((y) => light(`${x}-${y}`, x, y)));
    const vent: Opening = { id: 'vent', kind: 'other', centre: { x: 1430, y: 1190 }, diameter: 125 };
    expect(told({ outline, openings: [...grid, vent] }).map(({ where }) => where)).toEqual([
      { joist: 'J4', at: { x: 1195, y: 600 } },
      { joist: 'J4', at: { x: 1195, y: 1780 } },
    ]);
  });

  it('is not sent onto another light, nor into a wall or beyond it', () => {
    const [first] = told({ outline, openings: [light('a', 1250, 600), light('b', 1320, 600)] });
    expect(first.message).toContain('1175, 600');
    // 45 from the wall there is no room on that side of the joist.
    expect(told({ outline, openings: [light('a', 40, 600)] })[0].message).toContain('115, 600');
    const alcove = [
      { x: 0, y: 0 },
      { x: 1300, y: 0 },
      { x: 1300, y: 1000 },
      { x: 2390, y: 1000 },
      { x: 2390, y: 2380 },
      { x: 0, y: 2380 },
    ];
    expect(told({ outline: alcove, openings: [light('a', 1250, 600)] })[0].message).toContain('1175, 600');
  });

  it('keeps clear of a joist that runs askew, of one that ends, and of a nogging', () => {
    const joist = (id: string, start: [number, number], end: [number, number]): Joist => ({
      id,
      start: { x: start[0], y: start[1] },
      end: { x: end[0], y: end[1] },
      width: 50,
      sd: 0,
      presence: 1,
      known: 'given',
    });
    const at = (x: number, y: number) => ({ outline, openings: [light('a', x, y)] });
    const askew = joist('askew', [1000, 0], [1600, 2380]);
    const [moved] = told(at(1250, 1000), [askew]);
    const place = Number(/place is (\d+)/.exec(moved.message)?.[1]);
    // Square to the joist, its middle line is 600 across in 2380.
    const square = Math.abs((place - 1000) * 2380 - 1000 * 600) / Math.hypot(600, 2380);
    expect(square).toBeGreaterThanOrEqual(70);
    expect(square).toBeLessThan(71);
    expect(told(at(1250, 1200), [joist('short', [1250, 0], [1250, 1000])])).toEqual([]);
    const nogging = { ...joist('nogging', [870, 600], [1220, 600]), kind: 'nogging' as const };
    expect(told(at(1045, 610), [...joistsOf({ outline }), nogging])[0].message).toContain('1045, 670');
  });

  it('too large for the bay has no clear place', () => {
    const wide = { outline, openings: [light('dish', 1045, 600, 380)] };
    const [only] = told(wide);
    expect(only.message).toContain('no clear place');
    expect(only.remedy).toContain('No joist is to be cut');
  });

  it('is told by the plan of the ceiling', () => {
    const plan = planCeiling({
      room: { outline, openings: [light('sink', 1250, 600)] },
      joists: { direction: 'y', positions, width: 50 },
      lining: [],
      boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
    });
    expect(plan.findings.map(({ code }) => code)).toContain('light-on-joist');
  });
});
