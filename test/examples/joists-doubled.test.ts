import {
  checkFixings,
  type FixingPosition,
  type Joist,
  type JoistDescription,
  placeBoards,
  placeFixings,
  planCeiling,
  rectangle,
  ruleSets,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { locateJoists } from '../../src/joists/locateJoists.js';

const room = { outline: rectangle(3600, 2390) };
const located = (joists: JoistDescription) => locateJoists(room, joists, ruleSets.uk);
const boards = [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }];

describe('two joists side by side', () => {
  const positions = [25, 425, 825, 1225, 1575, 1625, 2025, 2425, 2825, 3225, 3575];
  const doubled: JoistDescription = { direction: 'y', positions, width: 50 };

  it('are one support as wide as both, with the joint between them', () => {
    const { joists, findings } = located(doubled);
    expect(joists).toHaveLength(10);
    expect(joists[4]).toMatchObject({ id: 'J5+J6', start: { x: 1600, y: 0 }, end: { x: 1600, y: 2390 }, width: 100, seams: [0] });
    expect(findings).toMatchObject([{ code: 'joist-doubled', severity: 'note', where: { joist: 'J5+J6' }, value: 100 }]);
  });

  it('of different widths have their joint off the middle; a third beside them is one more', () => {
    const at = (id: string, x: number, width: number): Joist => ({
      id,
      start: { x, y: 0 },
      end: { x, y: 2390 },
      width,
      sd: 0,
      presence: 1,
      known: 'given',
    });
    expect(located([at('a', 1000, 50), at('b', 1044, 38)]).joists).toMatchObject([
      { id: 'a+b', start: { x: 1019 }, width: 88, seams: [6] },
    ]);
    expect(located([at('c', 1100, 50), at('a', 1000, 50), at('b', 1050, 50)]).joists).toMatchObject([
      { id: 'a+b+c', start: { x: 1050 }, width: 150, seams: [-25, 25] },
    ]);
  });

  it('are two where there is room between them, where one ends short, or where they may not be there', () => {
    const ids = (joists: JoistDescription) => located(joists).joists.map(({ id }) => id);
    expect(ids({ direction: 'y', positions: [1000, 1055], width: 50 })).toEqual(['J1+J2']);
    expect(ids({ direction: 'y', positions: [1000, 1055.1], width: 50 })).toEqual(['J1', 'J2']);
    expect(ids({ direction: 'y', positions: [1000, { atStart: 1050, atEnd: 1060 }], width: 50 })).toEqual(['J1', 'J2']);
    const [one, other] = located({ direction: 'y', positions: [1000, 1060], width: 50 }).joists;
    const beside = { ...other, start: { x: 1050, y: 0 }, end: { x: 1050, y: 2390 } };
    expect(ids([one, beside])).toEqual(['J1+J2']);
    expect(ids([one, { ...beside, end: { x: 1050, y: 2280 } }])).toEqual(['J1', 'J2']);
    expect(ids([one, { ...beside, sd: 3 }])).toEqual(['J1', 'J2']);
    expect(ids([one, { ...beside, presence: 0.9 }])).toEqual(['J1', 'J2']);
    expect(ids([one, { ...beside, kind: 'batten' as const }])).toEqual(['J1', 'J2']);
  });

  it('that lie over each other are told and kept as they were given', () => {
    const { joists, findings } = located({ direction: 'y', positions: [1000, 1044.9, 1600], width: 50 });
    expect(joists.map(({ id }) => id)).toEqual(['J1', 'J2', 'J3']);
    expect(findings).toMatchObject([
      { code: 'joists-overlap', severity: 'warning', where: { joist: 'J1' }, value: 5.1 },
      { code: 'joist-probe-last-bay' },
      { code: 'joist-probe-last-bay' },
    ]);
    expect(findings[0].message).toContain('J1 and J2');
    const fanned = located({ direction: 'y', positions: [1000, { atStart: 1100, atEnd: 1010 }], width: 50 });
    expect(fanned.findings).toMatchObject([{ code: 'joists-overlap', value: 40 }, {}, {}]);
  });

  it('take the screws of a board into one of them or the other, never between', () => {
    const layout = placeBoards({ room, joists: doubled, boards });
    const { positions: screws } = placeFixings({ room, layout, joists: doubled, boardThickness: 12.5 });
    const there = screws.filter(({ joist }: FixingPosition) => joist === 'J5+J6');
    expect(there.length).toBeGreaterThan(0);
    for (const { x } of there) expect(Math.abs(Math.abs(x - 1600) - 25)).toBeLessThanOrEqual(19);
    const told = checkFixings({ room, layout, joists: doubled, boards, fixings: screws });
    expect(told.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('are said in the plan, and a butt joint on them has the tolerance of both', () => {
    const joists: JoistDescription = { direction: 'y', positions: [25, 1200, 1250, 2425, 3575], width: 50 };
    const plan = planCeiling({
      room: { outline: rectangle(3600, 1190) },
      joists,
      lining: [],
      boards,
      rules: { 'perimeter.gap': 3, 'support.centres': 1200 },
    });
    const [{ ends }] = plan.layout.pieces;
    expect(ends[1]).toMatchObject({ joist: 'J2+J3', position: 1225, bearing: { tolerance: 29.5, outcome: 'secure' } });
    expect(plan.findings.map(({ code }) => code)).toContain('joist-doubled');
  });
});

describe('centres that are taken for others', () => {
  const wide = { outline: rectangle(4200, 3000) };
  const told = (first: number, spacing: number, last?: number) =>
    locateJoists(
      wide,
      { direction: 'y', first, spacing, width: 47, ...(last !== undefined && { last }) },
      ruleSets.uk,
    ).findings.filter(({ code }) => code.startsWith('spacing'));

  it('from the first joist only: the drift over the room is stated, with what to prove', () => {
    const [drift, ...more] = told(40, 400);
    expect(more).toEqual([]);
    // Ten bays of 16 in less ten of 400.
    expect(drift).toMatchObject({
      code: 'spacing-drift',
      severity: 'warning',
      value: 64,
      unit: 'mm',
      where: { at: { x: 4040, y: 1500 } },
    });
    // Nine bays: a tenth would be beyond the wall.
    expect(told(240, 406.4)).toMatchObject([{ code: 'spacing-drift', value: 58 }]);
  });

  it('a last joist that the other centres put there contradicts the spacing, by as much as it is off', () => {
    expect(told(40, 400, 4100)).toMatchObject([{ code: 'spacing-contradicted', value: 60, where: { at: { x: 4040 } } }]);
  });

  it('nothing is said where the last joist bears the spacing out, or neither', () => {
    expect(told(40, 400, 4040)).toEqual([]);
    expect(told(40, 400, 4175)).toEqual([]);
  });

  it('nothing is said of centres that are like no others, or of a room too short to matter', () => {
    expect(told(40, 500)).toEqual([]);
    expect(told(3900, 400)).toEqual([]);
  });
});
