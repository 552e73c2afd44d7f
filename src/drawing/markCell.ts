import type { Point } from '../survey/point.js';
import { type Heading, sighting } from './sighting.js';
import type { Subject } from './subject.js';
import { type Cell, lengthCell } from './table.js';

/**
 * A mark on the ceiling as a cell: its distance to the wall that it faces, which is named where it is another than the figures of
 * the table run from.
 *
 * @param inward - on which side of the place the part lies that is set out
 */
export function markCell(zone: Subject, place: Point, heading: 'near' | 'low', inward: 1 | -1): Cell {
  const { datum, say, length } = zone;
  const from = heading === 'near' ? datum.across : datum.along;
  const met = sighting(zone, place, heading satisfies Heading, inward);
  // A part always has something on its near and its low side; this is for outlines that turn back on themselves.
  if (met === undefined) return say('setting.markNone');
  return met.bound.name === from
    ? lengthCell(zone, met.distance)
    : say('setting.mark', { distance: length(met.distance), wall: met.bound.name });
}
