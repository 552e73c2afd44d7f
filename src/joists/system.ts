import type { Assumptions } from './assumptions.js';
import { logarithm } from './exponential.js';
import type { Placing } from './placing.js';
import type { Sight } from './readings.js';

/** How the joists lie, as far as it is not known but weighed: straying and drift in mm, slopes in mm in a metre. */
export interface Setting {
  readonly straying: number;
  readonly drift: number;
  readonly skew: number;
  readonly fan: number;
}

/**
 * The readings that a placing puts on joists, as the terms of one Gaussian system. Readings of the same part of the same joist
 * on the same line are one observation: their weighted mean.
 */
export interface System {
  readonly count: number;
  /** Joist number, counted from the leftmost joist that was read. */
  readonly joist: Float64Array;
  /** Number of the leftmost joist that was read. */
  readonly origin: number;
  /** Widths off the middle of the joist. */
  readonly off: Float64Array;
  readonly v: Float64Array;
  readonly variance: Float64Array;
  /** Reading less what is known of it beforehand: the width's share; mm from the near wall. */
  readonly value: Float64Array;
  /** Logarithm of what the readings of one observation say of each other. */
  readonly within: number;
  readonly spacing: number;
  readonly spread: number;
  readonly width: number;
  readonly widthSd: number;
  /** Variance that a joist's own straying has beside that of the others, by joist: a doubled one is added on one side, mm2. */
  readonly extra: ReadonlyMap<number, number>;
  readonly assumptions: Assumptions;
}

const LOG_TWO_PI = 1.8378770664093453;
/** Readings this near to each other along the joist are on one line, m. */
const ONE_LINE = 0.03;

export function systemOf(sight: Sight, placing: Placing, width: number, widthSd: number, assumptions: Assumptions): System {
  const joist: number[] = [];
  const off: number[] = [];
  const v: number[] = [];
  const variance: number[] = [];
  const value: number[] = [];
  const alone: boolean[] = [];
  let within = 0;
  let origin = Infinity;
  sight.readings.forEach((reading, index) => {
    const place = placing.places[index];
    if (place === null) return;
    origin = Math.min(origin, place.joist);
    const y = reading.u - sight.near - place.off * width;
    const same = joist.findIndex(
      (each, i) =>
        each === place.joist && off[i] === place.off && Math.abs(v[i] - reading.v) < ONE_LINE && !alone[i] && !reading.anywhere,
    );
    if (same < 0) {
      joist.push(place.joist);
      off.push(place.off);
      v.push(reading.v);
      variance.push(reading.variance);
      value.push(y);
      alone.push(reading.anywhere);
      return;
    }
    const sum = variance[same] + reading.variance;
    const difference = y - value[same];
    within -= (LOG_TWO_PI + logarithm(sum) + (difference * difference) / sum) / 2;
    value[same] += (difference * variance[same]) / sum;
    variance[same] = (variance[same] * reading.variance) / sum;
  });
  return {
    count: joist.length,
    joist: Float64Array.from(joist, (each) => each - origin),
    origin,
    off: Float64Array.from(off),
    v: Float64Array.from(v),
    variance: Float64Array.from(variance),
    value: Float64Array.from(value),
    within,
    spacing: placing.family.spacing,
    spread: placing.family.spread,
    width,
    widthSd,
    extra: new Map(placing.doubled.map((each) => [each - origin, (width * width) / 4])),
    assumptions,
  };
}
