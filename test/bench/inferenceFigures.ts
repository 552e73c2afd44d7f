import { inferJoistsIn } from '../../src/joists/inferJoists.js';
import { type Survey, surveyOf, USUAL } from '../generators/surveys.js';
import { genuineMarks, idealSpacing } from './idealClassifier.js';
import { latticeBound } from './latticeBound.js';

/** How good the inference is over many surveys. */
export interface InferenceFigures {
  /** Root-mean-square error of the joists' centres over that of the bound; surveys without spurious marks, six marks or more. */
  readonly error: { readonly measured: number; readonly inferred: number; readonly all: number; readonly joists: number };
  /** Share of 95 % intervals that hold the true centre. */
  readonly coverage: { readonly measured: number; readonly inferred: number; readonly joists: number };
  /** Share of surveys whose first candidate is right, and how the ideal does on the same. */
  readonly right: {
    readonly share: number;
    readonly ideal: number;
    readonly exactly: number;
    readonly idealExactly: number;
    readonly surveys: number;
  };
  /** Expected calibration error of the first candidate's probability, in tenths; and of all candidates'. */
  readonly calibration: { readonly first: number; readonly every: number; readonly bins: readonly Bin[] };
}

export interface Bin {
  readonly surveys: number;
  readonly stated: number;
  readonly right: number;
}

const NORMAL_95 = 1.959963984540054;

/** Index of the true joist nearest to a place. */
function nearest(centres: readonly number[], place: number): number {
  let best = 0;
  centres.forEach((centre, k) => {
    if (Math.abs(centre - place) < Math.abs(centres[best] - place)) best = k;
  });
  return best;
}

const infer = ({ room, marks, width }: Survey) => inferJoistsIn({ room, marks, direction: 'y', width });

/** Where an inferred joist's centre is at mid-length: all joists run with y and cross the whole room. */
const middleOf = ({ start, end }: { start: { x: number }; end: { x: number } }): number => (start.x + end.x) / 2;

/** Error against the bound. */
export function errorFigures(surveys: readonly Survey[]): InferenceFigures['error'] {
  const sums = { measured: [0, 0, 0], inferred: [0, 0, 0] };
  for (const survey of surveys) {
    const { known } = genuineMarks(survey);
    if (known.length < 6) continue;
    const bound = latticeBound(known, { own: survey.straying, bay: survey.drift });
    const { joists } = infer(survey);
    const length = survey.room.outline[1].x;
    survey.centres.forEach((centre, k) => {
      const least = bound.joist(k);
      // Beside a wall the joist may be taken to stand beyond it.
      if (Math.min(centre, length - centre) < 4 * least) return;
      const sum = known.some(({ joist }) => joist === k) ? sums.measured : sums.inferred;
      // The joist of the inference nearest to the true one; none there at all is an error as large as its distance.
      const away = Math.min(...joists.map((joist) => Math.abs(middleOf(joist) - centre)));
      sum[0] += away * away;
      sum[1] += least * least;
      sum[2]++;
    });
  }
  const ratio = ([error, bound]: readonly number[]): number => Math.sqrt(error / bound);
  const { measured, inferred } = sums;
  const all = measured.map((value, i) => value + inferred[i]);
  return { measured: ratio(measured), inferred: ratio(inferred), all: ratio(all), joists: all[2] };
}

/** How often 95 % intervals hold. */
export function coverageFigures(surveys: readonly Survey[]): InferenceFigures['coverage'] {
  const counts = { measured: [0, 0], inferred: [0, 0] };
  for (const survey of surveys) {
    for (const joist of infer(survey).joists) {
      const count = joist.known === 'measured' ? counts.measured : counts.inferred;
      const at = middleOf(joist);
      count[1]++;
      if (Math.abs(survey.centres[nearest(survey.centres, at)] - at) <= NORMAL_95 * joist.sd) count[0]++;
    }
  }
  const { measured, inferred } = counts;
  return { measured: measured[0] / measured[1], inferred: inferred[0] / inferred[1], joists: measured[1] + inferred[1] };
}

/** Whether two spacings are one as far as the marks can tell: nearer than 3 standard deviations of the bound at the farthest mark. */
function asOne(survey: Survey, spacing: number): boolean {
  const { known } = genuineMarks(survey);
  const numbers = known.map(({ joist }) => joist);
  const [first, last] = [Math.min(...numbers), Math.max(...numbers)];
  const { straying, drift } = survey;
  const fromFirst = known.map((mark) => ({ ...mark, joist: mark.joist - first }));
  const sd = latticeBound(fromFirst, { own: straying, bay: drift }).line(last - first);
  const middle = numbers.reduce((sum, joist) => sum + joist, 0) / numbers.length;
  const bays = Math.max(last - middle, middle - first);
  return Math.abs(spacing - survey.spacing) * bays < 3 * sd;
}

const isUsual = (spacing: number): boolean => USUAL.some((each) => Math.abs(each - spacing) < 0.05);

/** Whether a candidate says what is true: the very spacing if it is a usual one, otherwise an unusual one about as wide. */
const saysTrue = (survey: Survey, spacing: number | 'irregular'): boolean =>
  spacing !== 'irregular' &&
  (survey.usual
    ? Math.abs(spacing - survey.spacing) < 0.05
    : !isUsual(spacing) && Math.abs(spacing - survey.spacing) < 0.015 * spacing);

/** Surveys with at least five genuine marks over at least six bays. */
export function isLong(survey: Survey): boolean {
  const numbers = survey.of.filter((joist) => joist !== null);
  return numbers.length >= 5 && Math.max(...numbers) - Math.min(...numbers) >= 6;
}

/** How often the first candidate is right. */
export function rightFigures(
  surveys: readonly Survey[],
  wrong?: (survey: Survey, index: number) => void,
): InferenceFigures['right'] {
  const long = surveys.filter(isLong);
  const counts = { share: 0, ideal: 0, exactly: 0, idealExactly: 0 };
  for (const survey of long) {
    const { spacing } = infer(survey).candidates[0];
    const ideal = idealSpacing(survey).spacing;
    if (spacing !== 'irregular' && (saysTrue(survey, spacing) || asOne(survey, spacing))) counts.share++;
    else wrong?.(survey, surveys.indexOf(survey));
    if (saysTrue(survey, ideal) || asOne(survey, ideal)) counts.ideal++;
    if (saysTrue(survey, spacing)) counts.exactly++;
    if (saysTrue(survey, ideal)) counts.idealExactly++;
  }
  const of = (count: number): number => count / long.length;
  return {
    ...{ share: of(counts.share), ideal: of(counts.ideal), exactly: of(counts.exactly), idealExactly: of(counts.idealExactly) },
    surveys: long.length,
  };
}

/** Whether the stated probabilities mean what they say. */
export function calibrationFigures(surveys: readonly Survey[]): InferenceFigures['calibration'] {
  const first: [stated: number, right: boolean][] = [];
  const every: [stated: number, right: boolean][] = [];
  for (const survey of surveys) {
    infer(survey).candidates.forEach(({ spacing, probability }, i) => {
      const pair: [number, boolean] = [probability, saysTrue(survey, spacing)];
      if (i === 0) first.push(pair);
      every.push(pair);
    });
  }
  const bins = binned(first);
  return { first: errorOver(bins), every: errorOver(binned(every)), bins };
}

function binned(pairs: readonly (readonly [number, boolean])[]): Bin[] {
  const sums = Array.from({ length: 10 }, () => [0, 0, 0]);
  for (const [stated, right] of pairs) {
    const bin = sums[Math.min(9, Math.floor(stated * 10))];
    bin[0]++;
    bin[1] += stated;
    if (right) bin[2]++;
  }
  return sums.map(([count, stated, right]) => ({ surveys: count, stated: stated / count, right: right / count }));
}

function errorOver(bins: readonly Bin[]): number {
  const held = bins.filter(({ surveys }) => surveys > 0);
  const total = held.reduce((sum, { surveys }) => sum + surveys, 0);
  return held.reduce((sum, { surveys, stated, right }) => sum + (surveys / total) * Math.abs(stated - right), 0);
}

/** Seeded surveys, `count` of them. */
export const surveysFrom = (seed: number, count: number, options?: Parameters<typeof surveyOf>[1]): Survey[] =>
  Array.from({ length: count }, (_, i) => surveyOf(seed + i, options));

/** Surveys of a hall 14 m across with 30 marks on timber and so many misses, for timing. */
export function longSurveys(seed: number, count: number, misses: number): Survey[] {
  const drawn: Survey[] = [];
  for (let i = seed; drawn.length < count; i++) {
    const survey = surveyOf(i, { least: 30, greatest: 30, length: 14_000, misses });
    if (survey.marks.length === 30 + misses) drawn.push(survey);
  }
  return drawn;
}
