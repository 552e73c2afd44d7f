import type { Component } from './components.js';
import type { Hypothesis } from './inference.js';
import { rounded } from './rounded.js';

/** A component as plain data, enough to build it again: `marks` is how many marks there are. */
export function hypothesisOf({ weighed, probability }: Component, marks: number): Hypothesis {
  const { placing, fit, sight } = weighed;
  const places: Hypothesis['places'][number][] = new Array(marks).fill(null);
  sight.readings.forEach((reading, index) => {
    places[reading.mark] = placing.places[index];
  });
  return {
    probability: rounded(probability, 1e6),
    direction: sight.direction,
    family: placing.family.kind,
    spacing: placing.family.spacing,
    ...fit.setting,
    places,
    doubled: placing.doubled,
  };
}
