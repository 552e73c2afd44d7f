import { fc, test } from '@fast-check/vitest';
import { checkFixings, type Finding, placeFixings, withRules } from 'soffitwright';
import { describe, expect } from 'vitest';
import { SCREW_DAMAGES, screwed } from '../generators/damagedScrews.js';
import { anyRowPlan, type RowPlan } from '../generators/rowPlans.js';

const SEED = 20_261_125;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

const inWords = (findings: readonly Finding[]): string[] => findings.map(({ severity, message }) => `${severity}: ${message}`);
const errorsOf = (findings: readonly Finding[]): Finding[] => findings.filter(({ severity }) => severity === 'error');
const who = ({ where }: Finding): string => `${where?.piece} on ${where?.joist}`;
const withoutZones = (plan: RowPlan): RowPlan => ({ ...plan, noFix: [] });

describe('screws placed and checked by code that shares nothing', { timeout: 120_000 }, () => {
  test.prop([anyRowPlan], runs(100))('pass', (plan) => {
    expect(inWords(errorsOf(checkFixings(screwed(withoutZones(plan)).check)))).toEqual([]);
  });

  test.prop([anyRowPlan], runs(100))('pass beside zones without screws, but for the gaps that were said', (plan) => {
    const { check } = screwed(plan);
    const { direction: _, ...request } = plan;
    const said = new Set(placeFixings(request).findings.map(who));
    const unsaid = errorsOf(checkFixings(check)).filter((found) => found.code !== 'fixing-gap' || !said.has(who(found)));
    expect(inWords(unsaid)).toEqual([]);
  });

  const spacing = fc.integer({ min: 60, max: 400 });
  test.prop([anyRowPlan, spacing, spacing], runs(200))('are never fewer when the spacing shrinks, zones or not', (plan, a, b) => {
    const { direction: _, rules, ...request } = plan;
    const count = (each: number): number => {
      const at = { 'fixing.field': each, 'fixing.boardEnd': each, 'fixing.perimeter': each };
      return placeFixings({ ...request, rules: withRules(rules, at) }).count;
    };
    expect(count(Math.min(a, b))).toBeGreaterThanOrEqual(count(Math.max(a, b)));
  });

  test.prop([anyRowPlan], runs(200))('of two ends on one joist are set off from each other, or said to be angled', (plan) => {
    const { direction, ...request } = withoutZones(plan);
    const { lines, positions } = placeFixings(request);
    const along = direction === 'y' ? 'y' : 'x';
    const placesOf = (piece: string, joist: string): number[] =>
      positions.filter((each) => each.piece === piece && each.joist === joist).map((each) => each[along]);
    const joints = plan.layout.pieces.flatMap((piece) =>
      piece.ends[1].meets === 'board' ? [{ low: piece.id, joist: piece.ends[1].joist ?? '', high: nextTo(piece.id) }] : [],
    );
    for (const { low, high, joist } of joints) {
      const [a, b] = [placesOf(low, joist), placesOf(high, joist)];
      const facing = a.some((one) => b.some((other) => Math.abs(one - other) < 10));
      for (const line of lines.filter((each) => each.joist === joist && (each.piece === low || each.piece === high))) {
        if (facing) expect(line.pair).toBe('angled');
        else expect(['offset', 'angled']).toContain(line.pair);
      }
    }
  });

  test.prop([anyRowPlan], runs(200))('through lath and plaster keep 8 from the middle of every joist, or it is said', (plan) => {
    const { direction, ...request } = withoutZones(plan);
    const lining = [{ kind: 'lath-and-plaster' as const, thickness: 25 }];
    const { positions, findings } = placeFixings({ ...request, lining });
    const said = new Set(findings.filter(({ code }) => code === 'nail-line-near').map(who));
    const [along, across] = direction === 'y' ? (['y', 'x'] as const) : (['x', 'y'] as const);
    const joists = new Map(plan.joists.filter(({ kind }) => kind !== 'trimmer').map((joist) => [joist.id, joist]));
    for (const screw of positions) {
      const joist = joists.get(screw.joist);
      if (joist === undefined || said.has(`${screw.piece} on ${screw.joist}`)) continue;
      const { start, end } = joist;
      const centre =
        start[across] + ((end[across] - start[across]) * (screw[along] - start[along])) / (end[along] - start[along]);
      if (Math.abs(screw[across] - centre) < 7.998)
        throw new Error(`${screw.piece} on ${screw.joist}: ${screw[across] - centre}`);
    }
  });

  test.prop([anyRowPlan], runs(300))('go into all four timbers about a hatch', (plan) => {
    const { direction, ...request } = withoutZones(plan);
    const [hatch] = plan.room.openings ?? [];
    if (hatch === undefined || !('outline' in hatch)) return;
    const { positions } = placeFixings(request);
    const [along, across] = direction === 'y' ? (['y', 'x'] as const) : (['x', 'y'] as const);
    const [low, high] = [Math.min(...hatch.outline.map((p) => p[along])), Math.max(...hatch.outline.map((p) => p[along]))];
    const middle = (Math.min(...hatch.outline.map((p) => p[across])) + Math.max(...hatch.outline.map((p) => p[across]))) / 2;
    const beside = positions.filter((each) => low <= each[along] && each[along] <= high && Math.abs(each[across] - middle) < 320);
    expect(new Set(beside.map((each) => each[across] < middle)).size).toBe(2);
    for (const trimmer of ['T1', 'T2']) {
      expect(positions.filter(({ joist }) => joist === trimmer).length).toBeGreaterThanOrEqual(2);
    }
  });
});

const nextTo = (id: string): string => `${id.split('.')[0]}.${Number(id.split('.')[1]) + 1}`;

describe('each of the damages is found', { timeout: 120_000 }, () => {
  for (const damage of SCREW_DAMAGES) {
    test.prop([anyRowPlan, fc.nat()], runs(30))(damage.name, (plan, pick) => {
      const hurt = damage.hurt(screwed(withoutZones(plan)), pick);
      if (hurt === undefined) return;
      const found = checkFixings(hurt.check).find(({ code, severity }) => code === damage.code && severity === damage.severity);
      expect(found, hurt.what).toBeDefined();
    });
  }
});
