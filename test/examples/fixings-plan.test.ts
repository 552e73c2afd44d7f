import { type BoardStock, type Job, joistsFromSpacing, planCeiling, rectangle, ruleSets } from 'soffitwright';
import { buyingList, cutList, drawCutting, drawPlan, fixingOrder, screwSummary, settingOut } from 'soffitwright/drawing';
import { describe, expect, it } from 'vitest';

// What a job says of its screws reaches the screws, their length, the sheets and what is bought.

const board: BoardStock = { id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' };
const room = { outline: rectangle(3600, 2390) };
const joists = { direction: 'y', first: 25, spacing: 400, last: 3575, width: 47 } as const;
const job: Job = { room, joists, lining: [{ kind: 'plasterboard', thickness: 9.5 }], boards: [board] };
const lath = [{ kind: 'lath-and-plaster' as const, thickness: 28, tolerance: 2 }];
const codes = (findings: readonly { code: string }[]): string[] => findings.map(({ code }) => code);
const screwsIn = (plan: ReturnType<typeof planCeiling>) =>
  plan.takeOff.lines.find(({ item }) => item.startsWith('drywall screws'));

describe('an old ceiling of lath and plaster', () => {
  const plan = planCeiling({ ...job, lining: lath });

  it('is reckoned at its thickest reading and its tolerance', () => {
    expect(plan.fixingLength.minimum).toBe(12.5 + 30 + 25);
    expect(plan.fixingLength).toMatchObject({ recommended: 75, embedment: 32.5 });
  });

  it('has its screws 8 to 10 beside the line of the old nails', () => {
    const centres = new Map(plan.joists.map(({ id, start }) => [id, start.x]));
    const inField = new Set(plan.fixings.lines.filter(({ kind }) => kind === 'field').map(({ joist, piece }) => joist + piece));
    for (const { x, joist, piece } of plan.fixings.positions) {
      const away = Math.abs(x - (centres.get(joist) ?? 0));
      if (inField.has(joist + piece)) expect(away).toBeGreaterThanOrEqual(8);
      if (inField.has(joist + piece)) expect(away).toBeLessThanOrEqual(10);
    }
    expect(planCeiling(job).fixings.lines.some(({ offCentre }) => offCentre !== undefined)).toBe(false);
  });

  it('takes 15 % spare screws, plasterboard 10 %', () => {
    expect(screwsIn(plan)?.quantity).toBeCloseTo(plan.fixings.count * 1.15, 6);
    const other = planCeiling(job);
    expect(screwsIn(other)?.quantity).toBeCloseTo(other.fixings.count * 1.1, 6);
  });
});

describe('what the screws go through', () => {
  it('is every old layer and the packing', () => {
    const old = [
      { kind: 'plasterboard' as const, thickness: 12.5 },
      { kind: 'lath-and-plaster' as const, thickness: 25, tolerance: 3 },
    ];
    const { fixingLength } = planCeiling({ ...job, lining: old, packing: 4 });
    expect(fixingLength.minimum).toBe(12.5 + 4 + 12.5 + 28 + 25);
    expect(fixingLength.maximum).toBe(12.5 + 4 + 12.5 + 25 + 45);
  });

  it('is a range where there is no probe hole, and no length, on the sheets and in what is bought', () => {
    const plan = planCeiling({ ...job, lining: lath, probed: false });
    expect(plan.fixingLength).toMatchObject({ recommended: null, embedment: null, range: { shortest: 75, longest: 75 } });
    const unknown = planCeiling({ ...job, lining: [] });
    expect(unknown.fixingLength).toMatchObject({ recommended: null, range: { shortest: 55, longest: 80 } });
    expect(codes(unknown.findings)).toContain('lining-not-probed');
    expect(screwsIn(unknown)?.item).toBe('drywall screws, 55 to 80 mm: open a probe hole before buying');
    expect(screwSummary(unknown).notes[1]).toBe('Length 55 mm to 80 mm, not known until a probe hole shows the old ceiling.');
    expect(drawPlan(unknown)).toMatch(/55 mm to 80 mm: no<.*probe hole yet/s);
  });

  it('is nothing but the board where a probe says that there is no old ceiling', () => {
    expect(planCeiling({ ...job, lining: [], probed: true }).fixingLength).toMatchObject({ minimum: 37.5, recommended: 45 });
  });
});

describe('how far the screws may go', () => {
  it('depends on the depth of the shallowest joist', () => {
    const deep = joistsFromSpacing({ room, ...joists, depth: 195 });
    const shallow = deep.map((each, i) => (i === 3 ? { ...each, depth: 97 } : each));
    // A hole of 24.25 in the middle of 97 lies 36.375 up, less a margin of 5.
    expect(planCeiling({ ...job, joists: shallow }).fixingLength.maximum).toBe(12.5 + 9.5 + 31.375);
    expect(planCeiling({ ...job, joists: deep }).fixingLength.maximum).toBe(12.5 + 9.5 + 45);
  });

  it('depends on a pipe or cable that is known', () => {
    expect(planCeiling({ ...job, serviceDepth: 33 }).fixingLength.maximum).toBe(12.5 + 9.5 + 28);
  });

  it('depends on the lengths to be had, and on how true they are', () => {
    const screws = { stock: [42, 50, 60], lengthTolerance: 'DIN 18182-2', threadLength: 40 } as const;
    const { fixingLength } = planCeiling({ ...job, screws });
    expect(fixingLength).toMatchObject({ recommended: 60, embedment: 60 - 22 - 1.5, threadInJoist: 36.5 });
    expect(planCeiling({ ...job, screws: { stock: [42, 50, 60] } }).fixingLength.recommended).toBe(60);
    const notes = screwSummary(planCeiling({ ...job, screws })).notes.join(' ');
    expect(notes).toContain('Length 60 mm: 36.5 mm into the joist.');
    expect(notes).toContain('A screw may be 1.5 mm shorter or longer than its name');
    expect(notes).toContain('scan every joist and isolate the circuits before driving a screw');
    expect(planCeiling({ ...job, screws: { stock: [20, 30] } }).findings).toContainEqual(
      expect.objectContaining({ code: 'embedment-short', severity: 'error' }),
    );
  });

  it('depends on a declared fire rating, and a rating that the rules do not know is refused', () => {
    const rules = ruleSets.nbcCanada;
    expect(planCeiling({ ...job, rules, fireRating: 60 }).fixingLength.minimum).toBeGreaterThan(
      planCeiling({ ...job, rules }).fixingLength.minimum,
    );
    expect(() => planCeiling({ ...job, rules, fireRating: 240 })).toThrow('fireRating');
  });
});

describe('an edge that is cut in the middle of the ceiling', () => {
  const tapered = { ...board, edge: 'tapered' as const };
  // The last row is 580: two strips to a board, and the second of them is cut along both edges.
  const twoStrips = { ...job, room: { outline: rectangle(3600, 4190) }, boards: [tapered] };
  const found = (more: Partial<Job>) =>
    planCeiling({ ...twoStrips, ...more }).findings.filter(({ code }) => code === 'cut-edge-taped');

  it('is an error where tapered board is taped', () => {
    const errors = found({ finish: 'tape' });
    expect(errors.length).toBeGreaterThan(0);
    // Both rows' edges meet where the last row begins, or where it ends if it is the first.
    for (const { severity, where } of errors) {
      expect(severity).toBe('error');
      expect([585, 3605]).toContain(where?.at?.y);
    }
  });

  it('is allowed for skimming, which is what is taken, and on square board', () => {
    expect(found({ finish: 'skim' })).toEqual([]);
    expect(found({})).toEqual([]);
    expect(found({ finish: 'tape', boards: [board] })).toEqual([]);
  });

  it('is none at a wall', () => {
    expect(found({ finish: 'tape', room: { outline: rectangle(3600, 2000) } })).toEqual([]);
  });
});

describe('places without screws', () => {
  const noFix = [{ id: 'pipe', centre: { x: 825, y: 600 }, diameter: 120 }];

  it('hold no screw, and are hatched on the drawing', () => {
    const plan = planCeiling({ ...job, noFix });
    for (const { x, y } of plan.fixings.positions) {
      expect((x - 825) * (x - 825) + (y - 600) * (y - 600)).toBeGreaterThanOrEqual(60 * 60);
    }
    expect(codes(plan.findings)).not.toContain('fixing-gap');
    expect(drawPlan(plan)).toContain('no screws here');
    expect(drawPlan(planCeiling(job))).not.toContain('no screws here');
  });

  it('longer than the spacing are an error in the plan', () => {
    const plan = planCeiling({ ...job, noFix: [{ centre: { x: 825, y: 600 }, diameter: 480 }] });
    expect(plan.findings).toContainEqual(expect.objectContaining({ code: 'fixing-gap', severity: 'error' }));
  });
});

it('the completed job gives the same plan again', () => {
  const plan = planCeiling({ ...job, lining: lath, noFix: [{ centre: { x: 825, y: 600 }, diameter: 60 }], finish: 'tape' });
  expect(plan.job).toMatchObject({ finish: 'tape', packing: 0, probed: true, screws: { lengthTolerance: 0 } });
  expect(planCeiling(plan.job as Job)).toEqual(plan);
});

describe('every sheet names the rule set that the plan was made by', () => {
  /** Texts of a drawing run together: a title may be broken over lines. */
  const lettering = (svg: string): string =>
    [...svg.matchAll(/<text[^>]*>([^<]*)</g)]
      .map(([, text]) => text)
      .join('')
      .replace(/\s/g, '');

  it.each(Object.values(ruleSets))('$id', (rules) => {
    const plan = planCeiling({ ...job, rules });
    const { joists: setOut, lines, openings } = settingOut(plan);
    for (const table of [cutList(plan), screwSummary(plan), buyingList(plan), fixingOrder(plan), setOut, lines, openings]) {
      expect(table.head).toContain(`Rules: ${rules.title}`);
    }
    for (const sheet of [drawPlan(plan), drawCutting(plan)]) {
      expect(lettering(sheet)).toContain(rules.title.replace(/\s/g, ''));
    }
  });
});
