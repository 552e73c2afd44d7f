import { normalBelow } from '../../src/joists/normal.js';

/**
 * The exact posterior of a small case by exhaustion: every spacing, every place of the row on a fine grid, every way of taking each
 * mark for a joist or for something else, and every joist missing or there. It follows the model's definition word by word and
 * shares nothing with the library's search, its Gaussian algebra or its sampling, but the normal distribution function.
 */
export interface Case {
  readonly length: number;
  /** Equally probable spacings, exact, mm. */
  readonly spacings: readonly number[];
  /** Places of marks and their standard deviations, mm; places of misses. */
  readonly marks: readonly { readonly at: number; readonly sd: number }[];
  readonly misses: readonly number[];
  readonly straying: number;
  readonly spurious: number;
  readonly repeated: number;
  readonly missing: number;
  readonly falseMiss: number;
  readonly falseHit: number;
  readonly wander: number;
  readonly width: number;
}

export interface Exhausted {
  /** Probability of each spacing. */
  readonly spacings: readonly number[];
  /** Probability that each mark is of something else. */
  readonly spurious: readonly number[];
  /** Mean and standard deviation of the centre nearest to each of these places, of the first spacing. */
  readonly centres: (places: readonly number[]) => readonly { readonly mean: number; readonly sd: number }[];
}

const STEP = 0.5;
/** Beyond this many standard deviations a mark is of another joist. */
const REACH = 6;

const density = (x: number, variance: number): number => Math.exp((-x * x) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);

interface Branch {
  readonly weight: number;
  /** Marks on each joist. */
  readonly on: ReadonlyMap<number, readonly number[]>;
  readonly none: readonly number[];
}

export function exhaustivePosterior(problem: Case): Exhausted {
  const { spacings, marks } = problem;
  const totals = spacings.map(() => 0);
  const spurious = marks.map(() => 0);
  const kept: { weight: number; offset: number; branch: Branch }[] = [];
  spacings.forEach((spacing, index) => {
    const prior = 1 / spacings.length / spacing;
    for (let offset = STEP / 2; offset < spacing; offset += STEP) {
      for (const branch of branchesOf(problem, spacing, offset)) {
        const weight = prior * branch.weight;
        // That no mark at all is of a joist is left out of the model.
        if (weight === 0 || branch.on.size === 0) continue;
        totals[index] += weight;
        for (const mark of branch.none) spurious[mark] += weight;
        if (index === 0) kept.push({ weight, offset, branch });
      }
    }
  });
  const all = totals.reduce((sum, total) => sum + total, 0);
  return {
    spacings: totals.map((total) => total / all),
    spurious: spurious.map((weight) => weight / all),
    centres: (places) => places.map((place) => centreNear(problem, kept, spacings[0], place)),
  };
}

/** Every way of taking the marks in turn, with its probability times the density of the marks and the probability of the misses. */
function branchesOf(problem: Case, spacing: number, offset: number): Branch[] {
  const { length, marks, spurious, repeated, straying } = problem;
  const joists = Math.floor((length - offset) / spacing) + 1;
  let branches: Branch[] = [{ weight: 1, on: new Map(), none: [] }];
  marks.forEach(({ at, sd }, mark) => {
    const reach = REACH * Math.sqrt(sd * sd + straying * straying);
    branches = branches.flatMap(({ weight, on, none }) => {
      const next: Branch[] = [{ weight: (weight * spurious) / length, on, none: [...none, mark] }];
      for (let joist = 0; joist < joists; joist++) {
        if (Math.abs(offset + joist * spacing - at) > reach) continue;
        const choice = on.has(joist)
          ? repeated / on.size
          : on.size === 0
            ? 1 / joists
            : (1 - repeated) / Math.max(1, joists - on.size);
        const marked = new Map(on).set(joist, [...(on.get(joist) ?? []), mark]);
        next.push({ weight: weight * (1 - spurious) * choice, on: marked, none });
      }
      return next;
    });
  });
  return branches.map((branch) => ({ ...branch, weight: branch.weight * seen(problem, branch, spacing, offset) }));
}

/** Mean and variance of a joist's centre given its node and the marks on it. */
function strayed(problem: Case, node: number, on: readonly number[]): { mean: number; variance: number } {
  let precision = 1 / problem.straying ** 2;
  let pull = 0;
  for (const mark of on) {
    const { at, sd } = problem.marks[mark];
    precision += 1 / (sd * sd);
    pull += (at - node) / (sd * sd);
  }
  return { mean: node + pull / precision, variance: 1 / precision };
}

/** Density of the marks on their joists, and probability of the misses. */
function seen(problem: Case, { on }: Branch, spacing: number, offset: number): number {
  let product = 1;
  for (const [joist, marks] of on) {
    let [mean, variance] = [offset + joist * spacing, problem.straying ** 2];
    for (const mark of marks) {
      const { at, sd } = problem.marks[mark];
      product *= density(at - mean, variance + sd * sd);
      const gain = variance / (variance + sd * sd);
      mean += gain * (at - mean);
      variance *= 1 - gain;
    }
  }
  for (const at of problem.misses) {
    const joist = Math.round((at - offset) / spacing);
    const marks = on.get(joist) ?? [];
    const { mean, variance } = strayed(problem, offset + joist * spacing, marks);
    const sd = Math.sqrt(variance + problem.wander ** 2);
    const [from, to] = [(mean - problem.width / 2 - at) / sd, (mean + problem.width / 2 - at) / sd];
    const timber = normalBelow(to) - normalBelow(from);
    const missed = 1 - problem.falseHit - (1 - problem.falseMiss - problem.falseHit) * timber;
    const absent = marks.length > 0 ? 0 : problem.missing;
    product *= (1 - absent) * missed + absent * (1 - problem.falseHit);
  }
  return product;
}

function centreNear(
  problem: Case,
  kept: readonly { weight: number; offset: number; branch: Branch }[],
  spacing: number,
  place: number,
): { mean: number; sd: number } {
  let [sum, first, second] = [0, 0, 0];
  for (const { weight, offset, branch } of kept) {
    const joist = Math.round((place - offset) / spacing);
    // A row that has its joist elsewhere is no spread of this one.
    if (Math.abs(offset + joist * spacing - place) > spacing / 2) continue;
    const on = branch.on.get(joist) ?? [];
    const missed = problem.misses.filter((at) => Math.round((at - offset) / spacing) === joist);
    const { mean, variance } = unmissed(problem, strayed(problem, offset + joist * spacing, on), missed, on.length > 0);
    sum += weight;
    first += weight * mean;
    second += weight * (variance + mean * mean);
  }
  const mean = first / sum;
  return { mean, sd: Math.sqrt(second / sum - mean * mean) };
}

/** Moments of a centre that these probes missed, by quadrature. */
function unmissed(
  problem: Case,
  { mean, variance }: { mean: number; variance: number },
  missed: readonly number[],
  there: boolean,
): { mean: number; variance: number } {
  if (missed.length === 0) return { mean, variance };
  const { width, wander, falseHit, falseMiss } = problem;
  const absent = there ? 0 : problem.missing;
  const sd = Math.sqrt(variance);
  let [sum, first, second] = [0, 0, 0];
  for (let z = -5; z <= 5; z += 0.05) {
    const centre = mean + z * sd;
    const misses = missed.reduce((product, at) => {
      const timber = normalBelow((centre + width / 2 - at) / wander) - normalBelow((centre - width / 2 - at) / wander);
      return product * (1 - falseHit - (1 - falseMiss - falseHit) * timber);
    }, 1);
    const weight = Math.exp((-z * z) / 2) * ((1 - absent) * misses + absent);
    sum += weight;
    first += weight * centre;
    second += weight * centre * centre;
  }
  return { mean: first / sum, variance: second / sum - (first / sum) ** 2 };
}
