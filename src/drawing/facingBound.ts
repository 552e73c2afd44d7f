import type { Piece } from '../boards/boardLayout.js';
import type { Bound } from './bounds.js';
import { sighting } from './sighting.js';
import type { Subject } from './subject.js';

/** The wall or border that an end of a piece faces. */
export function facingBound({ outline }: Piece, side: 0 | 1, zone: Subject): Bound | undefined {
  const points = outline.map(zone.frame.into);
  const [us, vs] = [points.map(({ u }) => u), points.map(({ v }) => v)];
  const middle = { u: (Math.min(...us) + Math.max(...us)) / 2, v: (Math.min(...vs) + Math.max(...vs)) / 2 };
  return sighting(zone, zone.frame.back(middle.u, middle.v), side === 0 ? 'near' : 'far')?.bound;
}
