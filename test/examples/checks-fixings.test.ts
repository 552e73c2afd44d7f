import { checkFixings, type Finding, type FixedLayout, placeFixings } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { block } from '../generators/layoutsByHand.js';
import { SCREW_DAMAGE, type ScrewDamage, screwedRoom } from '../generators/screwDamage.js';

const told = (findings: readonly Finding[]): string =>
  findings
    .map(
      ({ code, severity, value, limit, message, where }) =>
        `${severity} ${code} ${value}/${limit} ${message} ${JSON.stringify(where)}`,
    )
    .join('\n');

const matches = (found: Finding, { code, severity, value, limit, standard, where }: ScrewDamage['finds']): boolean =>
  found.code === code &&
  (severity === undefined || found.severity === severity) &&
  (value === undefined || found.value === value) &&
  (limit === undefined || found.limit === limit) &&
  (standard === undefined || found.source?.standard.includes(standard) === true) &&
  (where === undefined || JSON.stringify(found.where) === JSON.stringify(where));

describe('screws placed by hand', () => {
  it('are good', () => {
    expect(told(checkFixings(screwedRoom()))).toBe('');
  });

  it('are good with no word of which piece and joist they belong to', () => {
    const { fixings, ...check } = screwedRoom();
    expect(told(checkFixings({ ...check, fixings: fixings.map(({ x, y }) => ({ x, y })) }))).toBe('');
  });

  it('are good in a bare layout: which edge of the ripped row is cut does not matter where both are far enough', () => {
    const { layout, boards: _, ...check } = screwedRoom();
    const pieces = layout.pieces.map(({ id, outline, board }) => ({ id, outline, board }));
    expect(told(checkFixings({ ...check, layout: { pieces, boards: layout.boards } }))).toBe('');
  });

  it('are in doubt in a bare layout where they are too near an edge that may be cut', () => {
    const { layout, fixings, ...check } = screwedRoom();
    const pieces = layout.pieces.map(({ id, outline, board }) => ({ id, outline, board }));
    const nearer = fixings.map((fixing) => (fixing.y === 2420 && fixing.joist === 'J2' ? { ...fixing, y: 2416 } : fixing));
    const findings = checkFixings({ ...check, fixings: nearer, layout: { pieces, boards: layout.boards } });
    expect(findings.map(({ code, severity, value, limit }) => [code, severity, value, limit])).toEqual([
      ['fixing-edge', 'warning', 11, 13],
    ]);
  });

  it('are counted against what is said of them', () => {
    const { fixings, ...check } = screwedRoom();
    const lines = [{ piece: '1.1', joist: 'J1', count: 8 }];
    const claims = { positions: fixings, count: fixings.length - 1, lines };
    const found = checkFixings({ ...check, fixings: claims }).map(({ code, value, limit }) => [code, value, limit]);
    expect(found).toEqual([
      ['claim-wrong', fixings.length - 1, fixings.length],
      ['claim-wrong', 8, 9],
    ]);
  });

  it('may stand further from the edge beside a zone without screws, as long as the spacing holds', () => {
    const { fixings, ...check } = screwedRoom();
    const kept = fixings.map((fixing) =>
      fixing.piece === '1.2' && fixing.joist === 'J4' && fixing.y === 17 ? { ...fixing, y: 60 } : fixing,
    );
    const noFix = [{ outline: block(1200, 1250, 0, 55) }];
    expect(told(checkFixings({ ...check, fixings: kept, noFix }))).toBe('');
    expect(checkFixings({ ...check, fixings: kept }).map(({ value, limit }) => [value, limit])).toEqual([[55, 25]]);
  });

  it('are asked for on both sides of a hole over the joist, and not in it', () => {
    const { fixings, layout, room, ...check } = screwedRoom();
    const hatch = block(2300, 2600, 1500, 2000);
    const holed = {
      ...check,
      room: { ...room, openings: [{ kind: 'hatch' as const, outline: hatch }] },
      layout: { ...layout, pieces: layout.pieces.map((piece) => (piece.id === '2.2' ? { ...piece, holes: [hatch] } : piece)) },
    };
    const isOn = ({ piece, joist }: { piece?: string; joist?: string }) => piece === '2.2' && joist === 'J7';
    const left = fixings.filter((fixing) => !isOn(fixing));
    const beside = [1217, 1400, 1485, 2015, 2200, 2393].map((y) => ({ x: 2425, y, piece: '2.2', joist: 'J7' }));
    expect(told(checkFixings({ ...holed, fixings: [...left, ...beside] }))).toBe('');
    const missing = checkFixings({ ...holed, fixings: [...left, ...beside.slice(0, 3)] });
    // The upper stretch, 2000 to 2405, has none.
    expect(missing.map(({ code, value, limit, where }) => [code, value, limit, where?.joist])).toEqual([
      ['fixing-gap', 405, 230, 'J7'],
    ]);
    const inside = [...left, ...beside, { x: 2425, y: 1700, piece: '2.2', joist: 'J7' }];
    expect(checkFixings({ ...holed, fixings: inside }).map(({ code, severity }) => [code, severity])).toContainEqual([
      'fixing-off-board',
      'error',
    ]);
  });

  it('as nails are held to the spacing of nails', () => {
    const { fixings, ...check } = screwedRoom();
    const gaps = (findings: readonly Finding[]) =>
      findings
        .filter(({ code, severity }) => code === 'fixing-gap' && severity === 'error')
        .map(({ value, limit }) => `${value}/${limit}`);
    // Seven on 1200: 196 apart, where nails may be 150.
    expect(new Set(gaps(checkFixings({ ...check, fixings, fixing: 'nail' })))).toEqual(new Set(['196/150']));
    expect(gaps(checkFixings({ ...check, fixings, fixing: 'screw' }))).toEqual([]);
    const layout = check.layout as unknown as FixedLayout;
    const nails = placeFixings({ room: check.room, joists: check.joists, layout, fixing: 'nail' }).positions;
    expect(told(checkFixings({ ...check, fixings: nails, fixing: 'nail' }).filter(({ severity }) => severity === 'error'))).toBe(
      '',
    );
  });

  it('break one distance or the other at a joint on narrow timber, which is a warning', () => {
    const check = screwedRoom();
    const joists = check.joists.map((joist) => (joist.id === 'J5' ? { ...joist, width: 38 } : joist));
    // 15 from the middle: 13.5 from the cut end, and 19 - 15 = 4 from the edge of the timber.
    const findings = checkFixings({ ...check, joists });
    expect(new Set(findings.map(({ code, severity, value, limit }) => `${severity} ${code} ${value}/${limit}`))).toEqual(
      new Set(['warning fixing-edge 4/6']),
    );
  });
});

describe('each damage to screws is found, with place, value, limit and source', () => {
  for (const each of SCREW_DAMAGE) {
    it(each.name, () => {
      const findings = checkFixings(each.hurt());
      const found = findings.find((finding) => matches(finding, each.finds));
      expect(found, told(findings)).toBeDefined();
      expect(found?.source).toBeDefined();
      expect(found?.where?.at ?? found?.where).toBeDefined();
      expect(found?.message).not.toMatch(/\?|undefined/);
    });
  }
});
