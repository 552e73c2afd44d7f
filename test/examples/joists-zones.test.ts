import { isInputError, type Joist, placeFixings, type Room, rectangle, ruleSets } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { locateZones } from '../../src/joists/locateZones.js';

const locate = (room: Room, joists: Parameters<typeof locateZones>[1]) => locateZones(room, joists, ruleSets.uk);
const linesOf = (joists: readonly Joist[]) =>
  joists.map(({ id, start, end }) => `${id} ${start.x},${start.y} to ${end.x},${end.y}`);
const box = (left: number, low: number, right: number, high: number) =>
  rectangle(right - left, high - low).map(({ x, y }) => ({ x: x + left, y: y + low }));

/** What the door of a public function says of a room. */
function problemsOf(room: Room) {
  try {
    placeFixings({ room, joists: { direction: 'y', first: 40, spacing: 400 }, layout: { pieces: [] } });
  } catch (error) {
    if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
  return [];
}

describe('the joists of a room with zones', () => {
  it('two ceilings beside a downstand beam have joists of their own, and the beam has none', () => {
    const room: Room = {
      outline: rectangle(7550, 3600),
      zones: [
        { id: 'front', outline: box(0, 0, 3400, 3600), joists: { direction: 'y', first: 100, spacing: 1200, width: 47 } },
        { id: 'back', outline: box(3650, 0, 7550, 3600), joists: { direction: 'x', first: 200, spacing: 1500, width: 47 } },
      ],
    };
    const located = locate(room, []);
    expect(located.map(({ zone, direction, joists }) => ({ zone, direction, joists: linesOf(joists) }))).toEqual([
      {
        zone: 'front',
        direction: 'y',
        joists: ['front J1 100,0 to 100,3600', 'front J2 1300,0 to 1300,3600', 'front J3 2500,0 to 2500,3600'],
      },
      {
        zone: 'back',
        direction: 'x',
        joists: ['back J1 3650,200 to 7550,200', 'back J2 3650,1700 to 7550,1700', 'back J3 3650,3200 to 7550,3200'],
      },
    ]);
  });

  it('what lies outside the zones has the joists of the room, and ends where a zone begins', () => {
    const bay = [
      { x: 750, y: 3300 },
      { x: 3150, y: 3300 },
      { x: 2650, y: 4000 },
      { x: 1250, y: 4000 },
    ];
    const outline = [{ x: 0, y: 0 }, { x: 3900, y: 0 }, { x: 3900, y: 3300 }, bay[1], bay[2], bay[3], bay[0], { x: 0, y: 3300 }];
    const [rest, zone] = locate(
      { outline, zones: [{ id: 'bay', outline: bay, joists: { direction: 'y', first: 600, spacing: 600, width: 50 } }] },
      { direction: 'y', first: 1000, spacing: 1500, width: 47 },
    );
    expect(rest.zone).toBeUndefined();
    expect(rest.outline).toEqual(rectangle(3900, 3300));
    expect(linesOf(rest.joists)).toEqual(['J1 1000,0 to 1000,3300', 'J2 2500,0 to 2500,3300']);
    expect(zone.zone).toBe('bay');
    expect(linesOf(zone.joists)).toEqual([
      'bay J1 1350,3300 to 1350,4000',
      'bay J2 1950,3300 to 1950,4000',
      'bay J3 2550,3300 to 2550,4000',
    ]);
  });

  it('a zone across the middle leaves two parts, each with its stretches of the joists', () => {
    const located = locate(
      {
        outline: rectangle(2000, 4000),
        zones: [{ id: 'hall', outline: box(0, 1500, 2000, 2500), joists: { direction: 'x', positions: [2000], width: 47 } }],
      },
      { direction: 'y', positions: [600, 1200], width: 47 },
    );
    expect(located.map(({ zone, joists }) => [zone, linesOf(joists)])).toEqual([
      [undefined, ['J1a 600,0 to 600,1500', 'J2a 1200,0 to 1200,1500']],
      [undefined, ['J1b 600,2500 to 600,4000', 'J2b 1200,2500 to 1200,4000']],
      ['hall', ['hall J1 0,2000 to 2000,2000']],
    ]);
  });

  it('a zone in the middle of the room is a hole in the rest', () => {
    const [rest] = locate(
      {
        outline: rectangle(4000, 4000),
        zones: [{ id: 'dome', outline: box(1000, 1000, 3000, 3000), joists: { direction: 'x', positions: [2000], width: 47 } }],
      },
      { direction: 'y', positions: [500, 2000, 3500], width: 47 },
    );
    expect(rest.outline).toEqual(rectangle(4000, 4000));
    expect(rest.holes).toHaveLength(1);
    expect(linesOf(rest.joists)).toEqual([
      'J1 500,0 to 500,4000',
      'J2a 2000,0 to 2000,1000',
      'J2b 2000,3000 to 2000,4000',
      'J3 3500,0 to 3500,4000',
    ]);
  });

  it('a zone is inferred from its own marks, and says which joists nobody measured', () => {
    const marks = [3900, 4300, 4700, 5100].map((x) => ({ x, y: 1000 }));
    const [, zone] = locate(
      {
        outline: rectangle(6000, 3000),
        zones: [{ id: 'east', outline: box(3600, 0, 6000, 3000), joists: { marks, direction: 'y' } }],
      },
      { direction: 'x', first: 100, spacing: 400 },
    );
    expect(zone.joists[0].id).toBe('east J1');
    expect(zone.joists.every(({ start, end }) => start.x > 3600 && start.y === 0 && end.y === 3000)).toBe(true);
    expect(zone.inference?.joists).toEqual(zone.joists);
    expect(zone.findings.map(({ code }) => code)).toContain('joists-inferred');
  });

  it('walls that slant are shared though their corners cannot lie on them exactly', () => {
    // The splay runs from (2000, 0) to (3001, 1000): a third of the way along it no corner has whole thousandths.
    const outline = [
      { x: 0, y: 0 },
      { x: 2000, y: 0 },
      { x: 3001, y: 1000 },
      { x: 3001, y: 3000 },
      { x: 0, y: 3000 },
    ];
    const on = { x: 2333.667, y: 333.333 };
    const zone = [{ x: 0, y: 0 }, { x: 2000, y: 0 }, on, { x: 0, y: 333.333 }];
    const [rest] = locate(
      { outline, zones: [{ id: 'low', outline: zone, joists: { direction: 'y', first: 100, spacing: 400, width: 47 } }] },
      { direction: 'y', first: 100, spacing: 400, width: 47 },
    );
    expect(rest.outline).toEqual([on, { x: 3001, y: 1000 }, { x: 3001, y: 3000 }, { x: 0, y: 3000 }, { x: 0, y: 333.333 }]);
  });

  it('joists are needed somewhere, and in every part that is boarded', () => {
    const zones = [
      { id: 'a', outline: box(0, 0, 2000, 3000), joists: { direction: 'y' as const, positions: [1000], width: 47 } },
    ];
    const codes = (call: () => unknown): unknown => {
      try {
        return call();
      } catch (error) {
        return isInputError(error) ? error.problems.map(({ code, path }) => `${code} ${path}`) : error;
      }
    };
    expect(codes(() => locate({ outline: rectangle(4000, 3000) }, []))).toEqual(['too-small joists']);
    expect(
      codes(() => locate({ outline: rectangle(4000, 3000), zones }, { direction: 'y', positions: [500], width: 47 })),
    ).toEqual(['no-joists joists']);
    const outside = [{ ...zones[0], joists: { direction: 'y' as const, positions: [2500], width: 47 } }];
    expect(codes(() => locate({ outline: rectangle(4000, 3000), zones: outside }, []))).toEqual([
      'joist-outside-room room.zones[0].joists.positions[0]',
    ]);
    const [joist] = locate({ outline: rectangle(4000, 3000) }, { direction: 'y', positions: [3000], width: 47 })[0].joists;
    const same = [{ ...zones[0], joists: [{ ...joist, start: { x: 500, y: 0 }, end: { x: 500, y: 3000 } }] }];
    expect(codes(() => locate({ outline: rectangle(4000, 3000), zones: same }, [joist]))).toEqual([
      'repeated-id room.zones[0].joists',
    ]);
  });
});

describe('zones that cannot be', () => {
  const joists = { direction: 'y' as const, first: 100, spacing: 400 };
  const withZones = (...outlines: (readonly { x: number; y: number }[])[]): Room => ({
    outline: [
      { x: 0, y: 0 },
      { x: 4000, y: 0 },
      { x: 4000, y: 2000 },
      { x: 2000, y: 2000 },
      { x: 2000, y: 3000 },
      { x: 0, y: 3000 },
    ],
    zones: outlines.map((outline, index) => ({ id: `z${index}`, outline, joists })),
  });

  it('reach beyond the room, by a side or wholly, or lie in its missing corner', () => {
    expect(problemsOf(withZones(box(2000, 0, 4000, 2000)))).toEqual([]);
    expect(problemsOf(withZones(box(2000, 0, 4001, 2000)))).toEqual(['zone-outside-room room.zones[0]']);
    expect(problemsOf(withZones(box(5000, 0, 6000, 2000)))).toEqual(['zone-outside-room room.zones[0]']);
    expect(problemsOf(withZones(box(2000, 2000, 4000, 3000)))).toEqual(['zone-outside-room room.zones[0]']);
    expect(problemsOf(withZones(box(1000, 1000, 3000, 2500)))).toEqual(['zone-outside-room room.zones[0]']);
  });

  it('lie over each other, in part, wholly or one in the other', () => {
    expect(problemsOf(withZones(box(0, 0, 2000, 2000), box(2000, 0, 4000, 2000)))).toEqual([]);
    expect(problemsOf(withZones(box(0, 0, 2001, 2000), box(2000, 0, 4000, 2000)))).toEqual(['zones-overlap room.zones[1]']);
    expect(problemsOf(withZones(box(0, 0, 2000, 2000), box(0, 0, 2000, 2000)))).toEqual(['zones-overlap room.zones[1]']);
    expect(problemsOf(withZones(box(500, 500, 1500, 1500), box(0, 0, 2000, 2000)))).toEqual(['zones-overlap room.zones[1]']);
    expect(problemsOf(withZones(box(0, 0, 2000, 2000), box(500, 500, 1500, 1500)))).toEqual(['zones-overlap room.zones[1]']);
  });

  it('have the same name', () => {
    const room = withZones(box(0, 0, 2000, 2000), box(2000, 0, 4000, 2000));
    const [first, second] = room.zones ?? [];
    expect(problemsOf({ ...room, zones: [first, { ...second, id: first.id }] })).toEqual(['repeated-id room.zones[1]']);
  });
});
