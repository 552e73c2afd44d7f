import { type Survey, spreadOf, USUAL } from '../generators/surveys.js';
import { covarianceOf, inverse, type KnownMark, times, turned } from './latticeBound.js';

/** The genuine marks of a survey, with the joist that each is of, and their values at mid-length. */
export function genuineMarks({ marks, of, room }: Survey): { known: KnownMark[]; values: number[] } {
  const middle = room.outline[2].y / 2;
  const lines = new Set(marks.map(({ y }) => y)).size > 1;
  const known: KnownMark[] = [];
  const values: number[] = [];
  marks.forEach((mark, i) => {
    const joist = of[i];
    if (joist === null) return;
    known.push({ joist, sd: spreadOf(mark), along: lines ? mark.y - middle : 0 });
    values.push(mark.x);
  });
  return { known, values };
}

/**
 * The spacing that the exact posterior prefers when it is known which joist each mark is of, how far the joists stray and how they
 * drift: no method can do better on these surveys. Usual spacings weigh as they are drawn; any other as one family, even from 250
 * to 700.
 */
export function idealSpacing(survey: Survey): { spacing: number; probability: number } {
  const { known, values } = genuineMarks(survey);
  const weights = inverse(covarianceOf(known, { own: survey.straying, bay: survey.drift }));
  const design = known.map(({ along = 0 }) => (known.some((mark) => mark.along !== 0) ? [1, along] : [1]));
  const fisher = times(times(turned(design), weights), design);
  const projected = times(times(times(design, inverse(fisher)), turned(design)), weights);
  // Left over once the place (and the slope) are taken off.
  const rest = (y: readonly number[]): number[] =>
    y.map((value, i) => value - projected[i].reduce((sum, p, k) => sum + p * y[k], 0));
  const quadratic = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, i) => sum + value * weights[i].reduce((inner, w, k) => inner + w * b[k], 0), 0);
  const [y, s] = [rest(values), rest(known.map(({ joist }) => joist))];
  const [yy, ys, ss] = [quadratic(y, y), quadratic(y, s), quadratic(s, s)];
  const density = (spacing: number): number =>
    Math.exp(-(yy - 2 * spacing * ys + spacing * spacing * ss) / 2 + (yy - (ys * ys) / ss) / 2);
  const options = USUAL.map((spacing) => ({ spacing, weight: (0.95 / USUAL.length / spacing) * density(spacing) }));
  let other = 0;
  for (let spacing = 250; spacing < 700; spacing += 0.5) other += (0.05 * 0.5 * density(spacing)) / (700 - 250) / spacing;
  const total = options.reduce((sum, { weight }) => sum + weight, other);
  const best = options.reduce((greatest, each) => (each.weight > greatest.weight ? each : greatest), {
    spacing: ys / ss,
    weight: other,
  });
  return { spacing: best.spacing, probability: best.weight / total };
}
