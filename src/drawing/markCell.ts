import type { Point } from '../survey/point.js';
import { type Heading, sighting } from './sighting.js';
import { fromDatum, type Subject } from './subject.js';
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
  if (met === undefined) {
    const { across, along } = fromDatum(zone, place);
    return lengthCell(zone, heading === 'near' ? across : along);
  }
  return met.bound.name === from
    ? lengthCell(zone, met.distance)
    : say('setting.mark', { distance: length(met.distance), wall: met.bound.name });
}
