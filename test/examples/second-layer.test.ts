import {
  type CeilingPlan,
  checkLayout,
  type Job,
  type PlannedLayer,
  planCeiling,
  rectangle,
  replanCeiling,
  tryPlanCeiling,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';

const dense = { id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 10.5, edge: 'square' } as const;

/** 2380 across the joists by 3594, joists at 40 + 400 k to 2040 and at 2340, under 9.5 and a skim of 3; gaps of 3. */
const bedroom: Job = {
  room: { outline: rectangle(2380, 3594) },
  joists: { direction: 'y', positions: [40, 440, 840, 1240, 1640, 2040, 2340], width: 47 },
  lining: [
    { kind: 'skim', thickness: 3 },
    { kind: 'plasterboard', thickness: 9.5 },
  ],
  boards: [dense],
  rules: { 'perimeter.gap': 3, 'joint.gap': 3 },
  layers: 2,
};

/** 5000 across by 4000: butt joints in both layers. */
const lounge: Job = {
  ...bedroom,
  room: { outline: rectangle(5000, 4000) },
  joists: { direction: 'y', first: 40, spacing: 400, last: 4960, width: 47 },
  rules: {},
};

const layersOf = ({ layers = [] }: CeilingPlan): readonly [PlannedLayer, PlannedLayer] => {
  const [first, second] = layers;
  if (first === undefined || second === undefined) throw new Error('there are not two layers');
  return [first, second];
};

const longJoints = ({ layout: { rows } }: PlannedLayer): number[] => rows.slice(0, -1).map(({ high }) => high);

const buttJoints = ({ layout: { pieces, rows } }: PlannedLayer) =>
  pieces.flatMap(({ row, ends: [low] }) => (low.joist === undefined ? [] : [{ joist: low.joist, ...rows[row - 1] }]));

describe('common practice, no source: two dense layers, the second pushed along by half a board', () => {
  const plan = planCeiling({ ...bedroom, screws: { lengthTolerance: 1.5 } });
  const [first, second] = layersOf(plan);

  it('lays rows of 1200, 1200, 1188 and over them 600, 1200, 1200, 588: six boards and no butt joint', () => {
    expect(first.layout.rows.map(({ width }) => width)).toEqual([1200, 1200, 1188]);
    expect(second.layout.rows.map(({ width }) => width)).toEqual([600, 1200, 1200, 588]);
    expect(plan.takeOff.lines[0]).toMatchObject({ packs: 6 });
    expect([first.layout.endJoints, second.layout.endJoints]).toEqual([0, 0]);
    const apart = longJoints(first).flatMap((low) => longJoints(second).map((other) => Math.abs(low - other)));
    expect(Math.min(...apart)).toBe(600);
    expect(second.apart).toBe(600);
    for (const { layout, boards } of [first, second]) {
      const found = checkLayout({ room: plan.room, joists: plan.joists, layout, boards, rules: plan.job.rules });
      expect(found.filter(({ severity }) => severity === 'error')).toEqual([]);
    }
  });

  it('cuts the rows of 600 and 588 from one board', () => {
    const boards = second.layout.pieces.filter(({ width }) => width < 1200).map(({ board }) => board);
    expect(new Set(boards).size).toBe(1);
  });

  it('wants screws of 60 and of 70 when a screw may be 1.5 short, each on a line of the order', () => {
    expect([first.fixingLength.recommended, second.fixingLength.recommended]).toEqual([60, 70]);
    const lines = plan.takeOff.lines.filter(({ item }) => item.startsWith('drywall screws'));
    expect(lines.map(({ item, basis }) => [item, Number.parseInt(basis, 10)])).toEqual([
      ['drywall screws 60 mm', first.fixings.count],
      ['drywall screws 70 mm', second.fixings.count],
    ]);
  });

  it('adds both layers to the load, which is not checked here', () => {
    expect(plan.findings.find(({ code }) => code === 'load-unchecked')).toMatchObject({ severity: 'warning', value: 21 });
  });

  it('tapes and plasters the second only', () => {
    const tape = plan.takeOff.lines.find(({ item }) => item === 'joint tape');
    expect(tape?.basis).toContain(`${Math.round(second.layout.jointLength / 10) / 100} m of joints`);
    expect(plan.takeOff.lines.filter(({ item }) => item === 'finish plaster')).toHaveLength(1);
  });

  it('is held when the old ceiling hangs from metal bars', () => {
    const hung = planCeiling({
      ...bedroom,
      lining: [
        { kind: 'plasterboard', thickness: 12.5 },
        { kind: 'metal-bar', thickness: 16 },
      ],
    });
    expect(hung.findings.find(({ code }) => code === 'layers-on-bars')).toMatchObject({ severity: 'hold' });
    expect(hung.takeOff.hold).toBeDefined();
  });
});

describe('a second layer', () => {
  const plan = planCeiling(lounge);
  const [first, second] = layersOf(plan);

  it('keeps its long joints clear of those of the first, and its butt joints off the joists of theirs', () => {
    for (const edge of longJoints(second)) {
      for (const old of longJoints(first)) expect(Math.abs(edge - old)).toBeGreaterThanOrEqual(200);
    }
    const beneath = buttJoints(first);
    expect(beneath.length).toBeGreaterThan(0);
    for (const { joist, low, high } of buttJoints(second)) {
      expect(beneath.filter((old) => old.joist === joist && old.low < high && low < old.high)).toEqual([]);
    }
  });

  it('is a layout without an error, of which the first knows nothing', () => {
    for (const { layout, boards } of [first, second]) {
      const found = checkLayout({ room: plan.room, joists: plan.joists, layout, boards });
      expect(found.filter(({ severity }) => severity === 'error')).toEqual([]);
    }
    const { layers: _, ...once } = lounge;
    expect(first.layout).toEqual(planCeiling(once).layout);
    expect(plan.layout).toEqual(first.layout);
  });

  it('is never said to take fewer boards than a layer by itself', () => {
    expect(second.layout.bound).toBeLessThanOrEqual(second.layout.boardsBought);
    expect(second.layout.proven).toBe(second.layout.bound === second.layout.boardsBought);
  });

  it('may be of other boards, and each layer may have its rows given', () => {
    const thick = { ...dense, id: 'thick', thickness: 15, massPerArea: 12 };
    const other = layersOf(planCeiling({ ...lounge, layers: [{ boards: [thick] }] }));
    expect(other.map(({ boards }) => boards[0].id)).toEqual(['2400', 'thick']);
    const rows = [{ rowWidths: [1200, 1200, 1200, 390] }, { rowWidths: [800, 1200, 1200, 790] }] as const;
    const given = layersOf(planCeiling({ ...lounge, layers: rows }));
    expect(given.map(({ layout }) => layout.rows.map(({ width }) => width))).toEqual(rows.map(({ rowWidths }) => rowWidths));
    expect(given[1].apart).toBe(400);
  });

  it('says where its rows, as given, lie over those beneath', () => {
    const rows = { rowWidths: [1200, 1200, 1200, 390] };
    const [, over] = layersOf(planCeiling({ ...lounge, layers: [rows, rows] }));
    expect(over.apart).toBe(0);
  });

  it('comes to a whole order: the boards of both, rounded once', () => {
    const { layers, ...takeOffOf } = lounge;
    expect(layers).toBe(2);
    const broken = planCeiling({ ...takeOffOf, layers: 2, takeOff: { breakage: 0.05 } });
    const laid = first.layout.boardsBought + second.layout.boardsBought;
    expect(broken.takeOff.lines[0].packs).toBe(Math.ceil(laid * 1.05));
  });

  it('is laid anew over a first layer that is planned once more', () => {
    const fixed = plan.layout.pieces.filter(({ row }) => row === 1).map(({ id }) => id);
    const again = replanCeiling(plan, { fixed });
    expect(again.changed).toEqual([]);
    expect(layersOf(again)[1].layout).toEqual(second.layout);
  });

  it('is refused as a third, or as none', () => {
    const refused = (layers: unknown) => {
      const attempt = tryPlanCeiling({ ...lounge, layers } as Job);
      return !attempt.ok && attempt.reason === 'input' ? attempt.problems[0].path : 'planned';
    };
    expect(refused(3)).toBe('layers');
    expect(refused([])).toBe('layers');
    expect(refused([{}, {}, {}])).toBe('layers');
    expect(refused([{ colour: 'grey' }])).toBe('layers[0].colour');
  });
});
