import { test } from '@fast-check/vitest';
import { type CeilingPlan, checkFixings, checkLayout, type Job, type Point, planCeiling, tryPlanCeiling } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyJob } from '../generators/seededJobs.js';

const SEED = 20_261_125;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

/** The plan, or nothing where no layout meets the rules; a refused input fails the test. */
function planOf(job: Job): CeilingPlan | undefined {
  const attempt = tryPlanCeiling(job);
  if (attempt.ok) return attempt.value;
  if (attempt.reason === 'input') throw new Error(attempt.problems.map(({ message }) => message).join('\n'));
  return undefined;
}

/** Everything of a plan that does not depend on which way round the room is drawn. */
const measuresOf = ({ layout, fixings }: CeilingPlan) => ({
  boards: layout.boardsBought,
  atMinimumLength: layout.boardsAtMinimumLength,
  joints: layout.endJoints,
  cost: layout.cost,
  bound: layout.bound,
  area: layout.areaM2,
  waste: layout.wasteAreaM2,
  cuts: layout.cuts,
  jointLength: layout.jointLength,
  screws: fixings.count,
});

const moved = (job: Job, turn: (point: Point) => Point, joists: Job['joists']): Job => ({
  ...job,
  room: { ...job.room, outline: job.room.outline.map(turn) },
  joists,
});

const spacingOf = (job: Job) => {
  if (!('spacing' in job.joists)) throw new Error('even joists wanted');
  return job.joists;
};

describe('every plan', { timeout: 120_000 }, () => {
  test.prop([anyJob], runs(15))('passes the verifiers', (job) => {
    const plan = planOf(job);
    if (plan === undefined) return;
    const { room, joists, layout, fixings } = plan;
    const errors = [
      ...checkLayout({ room, joists, layout, boards: job.boards, lining: job.lining }),
      ...checkFixings({ room, layout, joists, fixings: fixings.positions }),
    ].filter((finding) => finding.severity === 'error');
    expect(errors).toEqual([]);
  });

  test.prop([anyJob], runs(10))('covers the ceiling to its wall gaps, and its areas add up', (job) => {
    const plan = planOf(job);
    if (plan === undefined) return;
    const { layout, job: done } = plan;
    const bought = layout.boards.reduce((sum, { stock }) => {
      const size = done.boards.find(({ id }) => id === stock);
      return sum + ((size?.length ?? 0) * (size?.width ?? 0)) / 1e6;
    }, 0);
    expect(layout.areaM2 + layout.wasteAreaM2).toBeCloseTo(bought, 6);
    const pieces = layout.pieces.reduce((sum, { cutLength, width }) => sum + (cutLength * width) / 1e6, 0);
    expect(layout.areaM2).toBeCloseTo(pieces, 6);
    expect(layout.boards.length).toBe(layout.boardsBought);
    expect(layout.bound).toBeLessThanOrEqual(layout.boardsBought);
    expect(layout.proven).toBe(layout.bound === layout.boardsBought);
  });

  test.prop([anyJob], runs(6))('has the same measures in a mirrored and in a quarter-turned room', (job) => {
    const plan = planOf(job);
    const { direction, first, spacing, last = 0, width } = spacingOf(job);
    const [right, top] = [job.room.outline[2].x, job.room.outline[2].y];
    const turned = moved(job, ({ x, y }) => ({ x: y, y: x }), {
      direction: direction === 'y' ? 'x' : 'y',
      first,
      spacing,
      last,
      width,
    });
    const centres: number[] = [];
    for (let at = first; at <= last - (width ?? 0); at += spacing) centres.push(at);
    const across = direction === 'y' ? right : top;
    const positions = [...centres, last].map((at) => across - at);
    const flip = ({ x, y }: Point): Point => (direction === 'y' ? { x: right - x, y } : { x, y: top - y });
    const mirrored = moved(job, flip, { direction, positions, width });
    for (const other of [turned, mirrored]) {
      const same = planOf(other);
      expect(same && measuresOf(same)).toEqual(plan && measuresOf(plan));
    }
  });

  test.prop([anyJob], runs(6))('is the same however boards and joists are ordered', (job) => {
    const plan = planOf(job);
    if (plan === undefined) return;
    const reordered = planOf({ ...job, boards: [...job.boards].reverse(), joists: [...plan.joists].reverse() });
    expect(reordered?.layout).toEqual(plan.layout);
    expect(reordered?.fixings.positions).toEqual(plan.fixings.positions);
  });

  test.prop([anyJob], runs(4))('survives JSON and structuredClone, and comes out the same twice', (job) => {
    const plan = planOf(job);
    if (plan === undefined) return;
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
    expect(structuredClone(plan)).toEqual(plan);
    expect(JSON.stringify(planCeiling(job))).toBe(JSON.stringify(plan));
  });

  test.prop([anyJob], runs(4))('lists its findings by severity, each once, each with a sentence without blanks', (job) => {
    const plan = planOf(job);
    if (plan === undefined) return;
    const order = ['hold', 'error', 'warning', 'note'];
    const severities = plan.findings.map(({ severity }) => order.indexOf(severity));
    expect(severities).toEqual([...severities].sort((a, b) => a - b));
    expect(new Set(plan.findings.map((finding) => JSON.stringify(finding))).size).toBe(plan.findings.length);
    for (const { message, remedy = '' } of plan.findings) expect(message + remedy).not.toMatch(/[{}]|undefined|NaN|\?/);
  });
});
