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
  const { datum, say, length, frame, extent } = zone;
  const from = heading === 'near' ? datum.across : datum.along;
  const met = sighting(zone, place, heading satisfies Heading, inward);
  if (met === undefined) {
    // Nothing faces the place, as in the splay of a bay: from the line of the wall, produced.
    const { u, v } = frame.into({ x: place.x - extent.left, y: place.y - extent.low });
    return say('setting.markLine', { distance: length(heading === 'near' ? u : v), wall: from });
  }
  return met.bound.name === from
    ? lengthCell(zone, met.distance)
    : say('setting.mark', { distance: length(met.distance), wall: met.bound.name });
}
