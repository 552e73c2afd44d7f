import type { Fit } from './fit.js';
import { nodeMeansOf } from './nodeMeans.js';
import type { Sight } from './readings.js';

/** Numbers of the joists that may be in the room, counted from the system's origin. */
export function joistsInRoom(fit: Fit, sight: Sight): { first: number; last: number } {
  const length = sight.far - sight.near;
  const at = nodeMeansOf(fit);
  const [zero, one] = [at(0), at(1)];
  const spacing = Math.max(50, one - zero);
  let first = -Math.min(200, Math.floor(zero / spacing));
  let last = Math.min(200, Math.floor((length - zero) / spacing));
  while (first > -200 && at(first - 1) >= 0) first -= 1;
  while (first < 0 && at(first) < 0) first += 1;
  while (last < 200 && at(last + 1) <= length) last += 1;
  while (last > 0 && at(last) > length) last -= 1;
  return { first, last };
}
