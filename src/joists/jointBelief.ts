import { fromGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { componentsFrom } from './componentsFrom.js';
import type { Fit } from './fit.js';
import { centreAt, frameOf } from './frame.js';
import type { Inference } from './inferJoists.js';
import { frameExtent } from './joistLine.js';
import { shiftBetween } from './joistsOfComponents.js';
import { nodeMeansOf } from './nodeMeans.js';
import { predict, type Target } from './predict.js';

/** A place on a joist's centre line. */
export interface OnJoist {
  readonly joist: Joist;
  /** Plan coordinate along the joists, mm. */
  readonly v: number;
}

/** Readings that make up all but this share of the probability are looked at. */
const LEFT_OUT = 0.02;

/**
 * Covariances, row by row in mm2, of where joists are across the room at places along them: one normal distribution with the
 * moments of all readings that count the joists alike.
 */
export function jointBelief(inference: Inference, places: readonly OnJoist[]): Float64Array {
  const { room, direction } = inference;
  const { low, high } = frameExtent(room, direction);
  const middle = fromGrid(low + high) / 2;
  const size = places.length;
  const components = componentsFrom(inference);
  const [leader] = components;
  const numbers = numbersOf(places, inference, leader.weighed.fit);
  const total = new Float64Array(size);
  const square = new Float64Array(size * size);
  let [weight, seen] = [0, 0];
  for (const component of components) {
    if (seen > 1 - LEFT_OUT) break;
    seen += component.probability;
    const shift = shiftBetween(leader, component);
    if (shift === undefined) continue;
    const { fit } = component.weighed;
    const ahead = shift + leader.weighed.fit.system.origin - fit.system.origin;
    const targets = places.map(({ v }, i): Target => ({ of: 'centre', joist: numbers[i] + ahead, v: (v - middle) / 1000 }));
    const { means, covariance } = predict(fit, targets);
    weight += component.probability;
    for (let i = 0; i < size; i++) {
      total[i] += component.probability * means[i];
      for (let j = 0; j <= i; j++) square[i * size + j] += component.probability * (covariance(i, j) + means[i] * means[j]);
    }
  }
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      const c = square[i * size + j] / weight - (total[i] / weight) * (total[j] / weight);
      square[i * size + j] = c;
      square[j * size + i] = c;
    }
  }
  return square;
}

/** Which of the joists, as a reading counts them, each of these is: the one that it puts nearest, at the middle of the room. */
function numbersOf(places: readonly OnJoist[], { room, direction }: Inference, fit: Fit): number[] {
  const { low, high, near } = frameExtent(room, direction);
  const node = nodeMeansOf(fit);
  return places.map(({ joist }) => {
    const at = fromGrid(centreAt(joist, frameOf(direction), Math.round((low + high) / 2)) - near);
    const away = (number: number): number => Math.abs(node(number) - at);
    let number = Math.round((at - node(0)) / (node(1) - node(0)));
    for (const step of [-1, 1]) while (away(number + step) < away(number)) number += step;
    return number;
  });
}
