import { checkLayout, type Finding, joistsFromPositions, type Point } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { cutRows } from '../generators/cutRows.js';
import { PLAIN_DAMAGE, SHAPED_DAMAGE } from '../generators/damage.js';
import { changed, type Damage, hole } from '../generators/hurting.js';
import { block, type CheckByHand, cornerRoom, hatchRoom, leaningRoom, plainRoom } from '../generators/layoutsByHand.js';
import { POLYGON_DAMAGE } from '../generators/polygonDamage.js';
import { SHAPED_ROOMS } from '../generators/shapedRooms.js';
import { TURNS, turnedAbout } from '../generators/turnedAbout.js';

const GOOD = { plainRoom, hatchRoom, cornerRoom, leaningRoom, ...SHAPED_ROOMS };

/** Values worked out by hand may differ in the last step of the grid where a side slants. */
const matches = (found: Finding, { code, severity, value, limit, unit, standard, says }: Damage['finds']): boolean =>
  found.code === code &&
  (severity === undefined || found.severity === severity) &&
  (value === undefined || Math.abs((found.value ?? Number.NaN) - value) < 0.0015) &&
  (limit === undefined || found.limit === limit) &&
  (unit === undefined || found.unit === unit) &&
  (standard === undefined || found.source?.standard.includes(standard) === true) &&
  (says === undefined || found.message.includes(says));

const told = (findings: readonly Finding[]): string =>
  findings
    .map(
      ({ code, severity, value, limit, message, where }) =>
        `${severity} ${code} ${value}/${limit} ${message} ${JSON.stringify(where)}`,
    )
    .join('\n');

describe('a good layout, worked out by hand', () => {
  for (const [name, make] of Object.entries(GOOD)) {
    for (const [how, turn] of TURNS) {
      it(`has no error: ${name}, ${how}`, () => {
        const findings = checkLayout(turnedAbout(make(), turn));
        expect(told(findings.filter(({ severity }) => severity === 'error'))).toBe('');
      });
    }
  }
});

describe('each damage is found, with place, value, limit and source', () => {
  for (const each of [...PLAIN_DAMAGE, ...SHAPED_DAMAGE, ...POLYGON_DAMAGE]) {
    it(each.name, () => {
      const findings = checkLayout(each.hurt());
      const found = findings.find((finding) => matches(finding, each.finds) && isAt(finding, each.finds.where));
      expect(found, told(findings)).toBeDefined();
      expect(found?.source, told(findings)).toBeDefined();
      expect(found?.where, told(findings)).toBeDefined();
      expect(found?.message).not.toContain('?');
      expect(found?.message).not.toContain('undefined');
    });
  }
});

/** The places that are asked for, as they are asked for. */
const isAt = ({ where }: Finding, wanted: Finding['where'] = {}): boolean =>
  Object.entries(wanted).every(([key, value]) => JSON.stringify(where?.[key as keyof typeof where]) === JSON.stringify(value));

const kindOf = ({ code, severity, limit }: Finding): string => JSON.stringify([code, severity, limit]);

const inOrder = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((a, b) => (kindOf(a) < kindOf(b) ? -1 : kindOf(a) > kindOf(b) ? 1 : (a.value ?? 0) - (b.value ?? 0)));

describe('a damage says the same however the plan is turned', () => {
  // Two findings may come of one damage.
  const once = [...new Map([...PLAIN_DAMAGE, ...SHAPED_DAMAGE, ...POLYGON_DAMAGE].map((each) => [each.hurt, each])).values()];
  for (const each of once) {
    it(each.name, () => {
      const hurt = each.hurt();
      const [, ...turns] = TURNS;
      const asItIs = inOrder(checkLayout(turnedAbout(hurt, TURNS[0][1])));
      for (const [how, turn] of turns) {
        const turned = inOrder(checkLayout(turnedAbout(hurt, turn)));
        expect(turned.map(kindOf), how).toEqual(asItIs.map(kindOf));
        // Slanting sides meet the grid a step to one side or to the other.
        const apart = turned.map(({ value = 0 }, i) => Math.abs(value - (asItIs[i].value ?? 0)));
        expect(Math.max(0, ...apart), how).toBeLessThan(0.0025);
      }
    });
  }
});

describe('a neck', () => {
  const necks = (check: CheckByHand) => checkLayout(check).filter(({ code }) => code === 'piece-neck-narrow');
  const cut = (...holes: Point[][]): CheckByHand => changed(hatchRoom(), { '2.2': hole(...holes) });

  it('is none where the wider side of a hole is wide enough, nor where a hole is for a light', () => {
    expect(necks(cut(block(2450, 2800, 1500, 2105)))).toEqual([]);
    const check = cut(block(2450, 2800, 1500, 2110));
    const light = { kind: 'light' as const, outline: block(2450, 2800, 1500, 2110) };
    expect(necks({ ...check, room: { ...check.room, openings: [light] } })).toEqual([]);
  });

  it('is none beside a lip of no more than 100, nor in what tapers', () => {
    // Piece 2.2 ends at 3595.
    expect(necks(cut(block(3200, 3495, 1500, 2110)))).toEqual([]);
    expect(necks(cut(block(3200, 3494, 1500, 2110)))).toHaveLength(1);
    const taper = changed(plainRoom(), {
      '2.2': (piece) => ({ ...piece, outline: [...block(1626.5, 3595, 1205, 2405).slice(0, 3), { x: 1626.5, y: 1305 }] }),
    });
    expect(necks(taper)).toEqual([]);
  });

  it('is as narrow as the rules say', () => {
    const check = cut(block(2450, 2800, 1500, 2110));
    expect(necks({ ...check, rules: { 'piece.minimumNeck': 295 } })).toEqual([]);
    expect(necks({ ...check, rules: { 'piece.minimumNeck': 296 } })).toHaveLength(1);
    const lip = cut(block(3200, 3494, 1500, 2110));
    expect(necks({ ...lip, rules: { 'piece.neckRest': 101 } })).toEqual([]);
    expect(necks({ ...lip, rules: { 'piece.neckRest': 100 } })).toHaveLength(1);
  });
});

describe('boards on either side of the tip of a wall', () => {
  it('do not butt where they pass it, and need no joist there', () => {
    // A wall comes to a point at 2000, 1200. The second row begins 8 below it, and keeps 5 from it on either side.
    const outline = [
      { x: 0, y: 0 },
      { x: 4000, y: 0 },
      { x: 4000, y: 2390 },
      { x: 2300, y: 2390 },
      { x: 2000, y: 1200 },
      { x: 1700, y: 2390 },
      { x: 0, y: 2390 },
    ];
    const joists = joistsFromPositions({
      room: { outline },
      direction: 'y',
      positions: Array.from({ length: 10 }, (_, k) => 200 + 400 * k),
      width: 50,
    });
    const joints = [{ row: 1, foot: 1400, head: 1400 }];
    const pieces = cutRows({ outline, levels: [5, 1192, 2385], joints, gap: 5, jointGap: 3 });
    const layout = { pieces, boards: pieces.map(({ board }) => ({ id: board, stock: 'b' })), endJoints: 1 };
    const boards = [{ id: 'b', length: 4000, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }];
    const errors = checkLayout({ room: { outline }, joists, boards, layout }).filter(({ severity }) => severity === 'error');
    expect(told(errors)).toBe('');
  });
});
