import { type Fit, variancesOf } from './fit.js';
import { answer, before, centreOf, slopeOf, sumOf, type Target, widthOf } from './predict.js';

/** What a fit says of a row of joists from one number to another, counted from the system's origin. */
export interface Row {
  /** Places of the centres, mm from the near wall, and their variances, mm2: joist by joist, at each place along it in turn. */
  readonly means: Float64Array;
  readonly variances: Float64Array;
  /** Expected widths, mm. */
  readonly widths: Float64Array;
  /** Covariance of the centre of the row's joist `n` at mid-length with another target, mm2. */
  readonly covariance: (n: number, target: number) => number;
}

/** What is asked of a row of joists. */
export interface RowAsked {
  readonly first: number;
  readonly last: number;
  /** Places along the joists, m from mid-length. */
  readonly along: readonly number[];
  /** How many timbers a joist is made of. */
  readonly timbers: (joist: number) => number;
  /** Other targets whose covariance with the centres is wanted. */
  readonly beside: readonly Target[];
}

/** The centres of a row of joists, and their widths. */
export function predictRow(fit: Fit, { first, last, along, timbers, beside }: RowAsked): Row {
  const { system } = fit;
  const count = Math.max(0, last - first + 1);
  const joists = Array.from({ length: count }, (_, n) => first + n);
  const middles = joists.map((joist) => centreOf(joist, 0));
  const slopes = joists.map(slopeOf);
  // Readings on one line at mid-length say nothing of slopes, and centres nothing of widths.
  const sloping = system.v.some((v) => v !== 0);
  const edges = system.off.some((off) => off !== 0);
  const { means, covariance } = answer(fit, [...middles, ...(sloping ? slopes : []), ...beside.map(sumOf)]);
  const variances = variancesOf(system, fit.setting);
  const row = { means: new Float64Array(count * along.length), variances: new Float64Array(count * along.length) };
  slopes.forEach((slope, n) => {
    const ofSlope = sloping ? covariance(count + n, count + n) : before(slope, slope, variances);
    const both = sloping ? covariance(n, count + n) : 0;
    const atMiddle = covariance(n, n);
    along.forEach((v, i) => {
      row.means[n * along.length + i] = means[n] + (sloping ? v * means[count + n] : 0);
      row.variances[n * along.length + i] = atMiddle + v * (2 * both + v * ofSlope);
    });
  });
  const widths = edges
    ? answer(
        fit,
        joists.map((joist) => widthOf(joist, timbers(joist))),
      ).means
    : Float64Array.from(joists, (joist) => timbers(joist) * system.width);
  const others = sloping ? 2 * count : count;
  return { ...row, widths, covariance: (n, target) => covariance(n, others + target) };
}
