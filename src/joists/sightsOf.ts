import type { Direction } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import type { Assumptions } from './assumptions.js';
import type { InferRequest } from './inference.js';
import { frameExtent } from './joistLine.js';
import { type Sight, sightAlong } from './readings.js';

/** The marks seen along the direction that was given, or along both with the probability of each beforehand. */
export function sightsOf(request: InferRequest, width: number, assumptions: Assumptions): { sight: Sight; prior: number }[] {
  const { room, marks } = request;
  const sight = (direction: Direction): Sight => sightAlong(direction, room, marks, width, assumptions);
  if (request.direction !== undefined) return [{ sight: sight(request.direction), prior: 1 }];
  const { direction, ratio } = shorterWay(room);
  // A square room says nothing; from a fifth longer one way, joists usually span the shorter.
  const lean = Math.min(1, (ratio - 1) / 0.2);
  const shorter = 0.5 + (assumptions.shorterWay - 0.5) * lean;
  return [
    { sight: sight(direction), prior: shorter },
    { sight: sight(direction === 'x' ? 'y' : 'x'), prior: 1 - shorter },
  ];
}

/** The axis along which a room is shorter, and how many times longer it is the other way. */
export function shorterWay(room: Room): { direction: Direction; ratio: number } {
  const { near, far, low, high } = frameExtent(room, 'y');
  const [width, depth] = [far - near, high - low];
  return width < depth ? { direction: 'x', ratio: depth / width } : { direction: 'y', ratio: width / depth };
}
