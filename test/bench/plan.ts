import { tryPlanCeiling } from 'soffitwright';
import { seededJobs } from '../generators/seededJobs.js';
import { quantile } from './quantile.js';

const SEED = 20_261_125;
const ROOMS = 200;
const WARM_UP = 20;

const jobs = seededJobs(SEED, WARM_UP + ROOMS);
for (const job of jobs.slice(0, WARM_UP)) tryPlanCeiling(job);

const times: number[] = [];
const above = new Map<number, number>();
let boards = 0;
let bound = 0;
let proven = 0;
let infeasible = 0;
for (const job of jobs.slice(WARM_UP)) {
  const start = performance.now();
  const attempt = tryPlanCeiling(job);
  times.push(performance.now() - start);
  if (!attempt.ok) {
    if (attempt.reason === 'input') throw new Error(attempt.problems.map((problem) => problem.message).join('\n'));
    infeasible++;
    continue;
  }
  const { layout } = attempt.value;
  boards += layout.boardsBought;
  bound += layout.bound;
  if (layout.proven) proven++;
  const excess = layout.boardsBought - layout.bound;
  above.set(excess, (above.get(excess) ?? 0) + 1);
}

const ms = (share: number): string => quantile(times, share).toFixed(1);
console.log(`${ROOMS} rooms, seed ${SEED}: ${ROOMS - infeasible} planned, ${infeasible} without a layout`);
console.log(`planCeiling, ms: median ${ms(0.5)}, middle half ${ms(0.25)} to ${ms(0.75)}, least ${ms(0)}, greatest ${ms(1)}`);
console.log(`boards: ${boards}, bound: ${bound}, proven in ${proven} rooms`);
for (const [excess, rooms] of [...above].sort(([a], [b]) => a - b)) console.log(`  ${excess} above the bound: ${rooms} rooms`);
