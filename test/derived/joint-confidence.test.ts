import { inferJoists, type Mark, planCeiling, rectangle, ruleSets } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { type EndJoint, jointConfidence } from '../../src/joists/jointConfidence.js';
import { normal, seeded } from '../generators/surveys.js';

// Derived: a Monte-Carlo over the model as documented, written with its own linear algebra.

const SPACING = { value: 400, sd: 0.5 };
const STRAYING = 3;
const SKEW = 2;
const OWN_SKEW = 0.7;
const READING = 3;
const MISSING = 0.03;
const WIDTH = 50;
const room = { outline: rectangle(4400, 3000) };

/** One spacing, one straying, no drift: the posterior is one normal distribution. */
const assume = {
  usual: [{ spacing: SPACING.value, weight: 1 }],
  otherSpacing: 0,
  irregular: 0,
  spacingSd: SPACING.sd,
  straying: [STRAYING],
  drift: [0],
  skew: SKEW,
  askew: 0,
  fanned: 0,
  ownSkew: OWN_SKEW,
  spurious: 0.001,
  doubled: 0,
  missing: MISSING,
};

type Row = number[];

/** Solves a symmetric positive system for several right-hand sides by elimination. */
function inverse(matrix: readonly Row[]): Row[] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < size; i++) {
    const pivot = rows[i][i];
    rows[i] = rows[i].map((each) => each / pivot);
    for (let k = 0; k < size; k++) {
      if (k === i) continue;
      const factor = rows[k][i];
      rows[k] = rows[k].map((each, j) => each - factor * rows[i][j]);
    }
  }
  return rows.map((row) => row.slice(size));
}

function lower(matrix: readonly Row[]): Row[] {
  const factor: Row[] = matrix.map((row) => row.map(() => 0));
  matrix.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      let sum = row[j];
      for (let k = 0; k < j; k++) sum -= factor[i][k] * factor[j][k];
      factor[i][j] = i === j ? Math.sqrt(sum) : sum / factor[j][j];
    }
  });
  return factor;
}

const JOISTS = 11;
/** Unknowns: place of joist 0, spacing, slope, what each joist strays, each joist's own slope. */
const size = 3 + 2 * JOISTS;
/** Where joist `k` is at `v` metres along, as a row of the unknowns. */
const placeOf = (k: number, v: number): Row =>
  Array.from({ length: size }, (_, i) =>
    i === 0 ? 1 : i === 1 ? k : i === 2 ? v : i === 3 + k ? 1 : i === 3 + JOISTS + k ? v : 0,
  );

/** Share of draws from the posterior in which every end is within `limit` of its joist, and the product of their single shares. */
function simulated(
  marks: readonly { joist: number; x: number; v: number }[],
  ends: readonly { joist: number; x: number; v: number }[],
  limit: number,
): { all: number; product: number } {
  const sds = placeOf(0, 0).map((_, i) =>
    i === 0 ? 1e5 : i === 1 ? SPACING.sd : i === 2 ? SKEW : i < 3 + JOISTS ? STRAYING : OWN_SKEW,
  );
  const means = sds.map((_, i) => (i === 1 ? SPACING.value : 0));
  const precision = sds.map((sd, i) => sds.map((_, j) => (i === j ? 1 / (sd * sd) : 0)));
  const right = sds.map((sd, i) => means[i] / (sd * sd));
  for (const { joist, x, v } of marks) {
    const row = placeOf(joist, v);
    row.forEach((a, i) => {
      right[i] += (a * x) / (READING * READING);
      row.forEach((b, j) => {
        precision[i][j] += (a * b) / (READING * READING);
      });
    });
  }
  const covariance = inverse(precision);
  const mean = covariance.map((row) => row.reduce((sum, each, i) => sum + each * right[i], 0));
  const rows = ends.map(({ joist, v }) => placeOf(joist, v));
  const centres = rows.map((row) => row.reduce((sum, each, i) => sum + each * mean[i], 0));
  const between = rows.map((one) =>
    rows.map((other) =>
      one.reduce((sum, a, i) => (a === 0 ? sum : sum + a * other.reduce((inner, b, j) => inner + b * covariance[i][j], 0)), 0),
    ),
  );
  const factor = lower(between.map((row, i) => row.map((each, j) => (i === j ? each + 1e-9 : each))));
  const random = seeded(11);
  const draws = 40_000;
  let all = 0;
  const each = ends.map(() => 0);
  for (let draw = 0; draw < draws; draw++) {
    const z = ends.map(() => normal(random));
    const held = ends.map(({ x }, i) => Math.abs(centres[i] + factor[i].reduce((sum, f, k) => sum + f * z[k], 0) - x) <= limit);
    if (held.every(Boolean)) all += 1 / draws;
    held.forEach((one, i) => {
      each[i] += one ? 1 / draws : 0;
    });
  }
  return { all, product: each.reduce((product, one) => product * one, 1) };
}

describe('the confidence of a layout', () => {
  const measured = [
    { joist: 0, x: 201, v: 0 },
    { joist: 2, x: 998, v: 0 },
    { joist: 4, x: 1803, v: 0.9 },
  ];
  const marks: Mark[] = measured.map(({ x, v }) => ({ x, y: 1500 + 1000 * v, kind: 'probe', sd: READING }));
  const inference = inferJoists({ room, marks, direction: 'y', width: WIDTH, assume });

  it.each([
    ['beyond the marks, far together', [7, 8, 9, 10], 0],
    ['between the marks', [1, 3], 0.6],
    ['on measured joists', [0, 2, 4], -0.9],
    ['several rows on one joist', [6, 6, 6], 1.2],
  ] as const)('is that of a Monte-Carlo over the same model: %s', (_, joists, along) => {
    const ends = joists.map((joist, i) => {
      const v = joists.filter((each) => each === joist).length > 1 ? along * (i - 1) : along;
      const { start, end } = inference.joists[joist];
      return { joist, v, x: (start.x + end.x) / 2 + ((end.x - start.x) * v) / 3 };
    });
    const given = ends.map(({ joist, x, v }): EndJoint => ({ joist: `J${joist + 1}`, across: x, along: 1500 + 1000 * v }));
    const { onTimber, withinEdgeRules } = jointConfidence(given, inference.joists, ruleSets.uk, inference);
    const unmarked = new Set(joists.filter((joist) => measured.every((mark) => mark.joist !== joist))).size;
    const present = (1 - MISSING) ** unmarked;
    const gap = 3;
    const edges = simulated(measured, ends, (WIDTH - gap) / 2 - 13 - 6);
    const timber = simulated(measured, ends, (WIDTH - gap) / 2 - 10);
    expect(Math.abs(withinEdgeRules - edges.all * present)).toBeLessThan(0.02);
    expect(Math.abs(onTimber - timber.all * present)).toBeLessThan(0.02);
  });

  it('is joint: what the far joists share makes it more than the product', () => {
    const ends = [7, 8, 9, 10].map((joist) => ({ joist, v: 0, x: inference.joists[joist].start.x }));
    const { all, product } = simulated(measured, ends, (WIDTH - 3) / 2 - 13 - 6);
    expect(all).toBeGreaterThan(product + 0.02);
    const given = ends.map(({ joist, x }): EndJoint => ({ joist: `J${joist + 1}`, across: x, along: 1500 }));
    const { withinEdgeRules } = jointConfidence(given, inference.joists, ruleSets.uk, inference);
    expect(withinEdgeRules).toBeGreaterThan((product + 0.01) * (1 - MISSING) ** 4);
  });

  it('is no higher than the probability of the only spacing that has all the joists', () => {
    const alias = inferJoists({
      room,
      marks: [200, 1400, 2600].map((x) => ({ x, y: 1500, kind: 'probe', sd: 1 })),
      direction: 'y',
      width: WIDTH,
      spacings: [400, 600],
    });
    const [first] = alias.candidates;
    const on = first.spacing === 400 ? [600, 1000, 1800, 2200] : [800, 2000];
    const at = (x: number): string => alias.joists.find(({ start }) => Math.abs(start.x - x) < 30)?.id as string;
    const ends = on.map((x): EndJoint => ({ joist: at(x), across: x, along: 1500 }));
    const { onTimber, joists } = jointConfidence(ends, alias.joists, ruleSets.uk, alias);
    expect(first.probability).toBeLessThan(0.999);
    expect(onTimber).toBeLessThanOrEqual(first.probability + 0.005);
    // All stand or fall together: not the product of the single figures.
    const product = joists.reduce((all, each) => all * each.onTimber, 1);
    expect(onTimber).toBeGreaterThan(product);
  });
});

describe('what a line of screws needs and what a butt joint needs', () => {
  const marks = [130, 531, 1329, 1730, 2931, 3728].map((x): Mark => ({ x, y: 1500, kind: 'probe' }));
  const job = {
    room: { outline: rectangle(4200, 3600) },
    lining: [],
    boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }],
  };
  const plan = planCeiling({ ...job, joists: { marks, direction: 'y', width: 50 } });

  it('differ: joists that screws would meet are still to be proved for butt joints', () => {
    const used = plan.certainty.map(({ joist }) => joist);
    expect(used.length).toBeGreaterThan(0);
    // Half the width, less what a screw keeps from the edge, is two and more standard deviations at every joist of the room.
    for (const joist of plan.joists) expect(joist.sd * 2).toBeLessThan(50 / 2 - 6);
    expect(plan.proveFirst.length).toBeGreaterThan(0);
    expect(plan.confidence.onTimber).toBeGreaterThan(plan.confidence.withinEdgeRules);
  });

  it('is met once both edges are found where the plan asks for them', () => {
    let marksThen = marks;
    let then = plan;
    for (let round = 0; round < 6 && then.proveFirst.length > 0; round++) {
      marksThen = [
        ...marksThen,
        ...then.probes.flatMap((probe): Mark[] => {
          const centre = [130, 530, 930, 1330, 1730, 2130, 2530, 2930, 3330, 3730].reduce((best, each) =>
            Math.abs(each - probe.x) < Math.abs(best - probe.x) ? each : best,
          );
          expect(Math.abs(centre - probe.x)).toBeLessThan(15);
          return [
            { x: centre - 25, y: probe.y, kind: 'near-edge' },
            { x: centre + 25, y: probe.y, kind: 'far-edge' },
          ];
        }),
      ];
      then = planCeiling({ ...job, joists: { marks: marksThen, direction: 'y', width: 50 } });
    }
    expect(then.proveFirst).toEqual([]);
    expect(then.nextProbe).toBeNull();
    expect(then.certainty.every(({ certainty }) => certainty === 'sure')).toBe(true);
  });
});
