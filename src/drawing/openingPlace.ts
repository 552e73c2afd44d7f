import type { Opening } from '../survey/room.js';
import { isIn } from './bounds.js';
import { openingExtent } from './pieceOpenings.js';
import { type Sighting, sighting } from './sighting.js';
import { type Subject, zonesOf } from './subject.js';

/** Where an opening's middle is, measured to two walls; of a place that faces no wall, as far as the part goes. */
export interface OpeningPlace {
  readonly zone: Subject;
  readonly across: Measured;
  readonly along: Measured;
}

/** A distance to a wall or border, mm. */
export interface Measured {
  readonly wall: string;
  readonly distance: number;
}

export function openingPlace(subject: Subject, opening: Opening): OpeningPlace {
  const { left, right, low, high } = openingExtent(opening);
  const middle = { x: (left + right) / 2, y: (low + high) / 2 };
  const zone = zonesOf(subject).find(({ rings }) => isIn(rings, middle)) ?? subject;
  const { u, v } = zone.frame.into({ x: middle.x - zone.extent.left, y: middle.y - zone.extent.low });
  const measured = (met: Sighting | undefined, wall: string, distance: number): Measured =>
    met === undefined ? { wall, distance } : { wall: met.bound.name, distance: met.distance };
  return {
    zone,
    across: measured(sighting(zone, middle, 'near'), zone.datum.across, u),
    along: measured(sighting(zone, middle, 'low'), zone.datum.along, v),
  };
}
