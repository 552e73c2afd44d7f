import type { Component } from './components.js';
import { familiesOf } from './families.js';
import { fitOf } from './fit.js';
import type { Inference } from './inferJoists.js';
import { type Sight, sightAlong } from './readings.js';
import { scatterOf } from './scatter.js';
import type { Scatter } from './scatterPoint.js';
import { systemOf } from './system.js';

/** The components of an inference again, from the plain data of its hypotheses; those along one axis only when asked. */
export function componentsFrom(inference: Inference): Component[] {
  const { room, marks, hypotheses, assumptions, width } = inference;
  const families = familiesOf(assumptions);
  const sights = new Map<string, Sight>();
  return hypotheses.flatMap((hypothesis) => {
    const { direction, family: kind, spacing, straying, drift, skew, fan, probability } = hypothesis;
    const family = families.find((each) => each.kind === kind && each.spacing === spacing);
    if (family === undefined || probability === 0) return [];
    const sight = sights.get(direction) ?? sightAlong(direction, room, marks, width.value, assumptions);
    sights.set(direction, sight);
    const places = sight.readings.map(({ mark }) => hypothesis.places[mark]);
    const placing = { family, places, doubled: hypothesis.doubled };
    const system = systemOf(sight, placing, width.value, width.sd, assumptions);
    const fit = fitOf(system, { straying, drift, skew, fan });
    return [{ weighed: { sight, placing, fit, logWeight: 0 }, probability }];
  });
}

/** Each component with a scatter of its share of `points`, at least `least`, weighed by the holes. */
export function scattered(
  components: readonly Component[],
  points: number,
  least: number,
): (Component & { readonly scatter: Scatter })[] {
  return components.map((component) => {
    const { fit, sight, placing } = component.weighed;
    const share = Math.max(least, Math.ceil(points * component.probability));
    return { ...component, scatter: scatterOf(fit, sight, placing, share) };
  });
}
