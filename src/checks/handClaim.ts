import type { Finding, Where } from '../rules/finding.js';
import { corners } from '../survey/outline.js';
import type { PieceFacts } from './ceiling.js';
import { wrong } from './claimWrong.js';
import { distance } from './distance.js';
import { HAIR } from './hair.js';
import { boxOf, type GridPoint, type Ring } from './solid.js';

/**
 * The outline as marked on the board lying face up: what is seen from below, the mirror image of the plan. The board may lie
 * either way round.
 */
export function handClaim({ claim: { hand }, frame }: PieceFacts, ring: Ring, where: Where, what: string): Finding[] {
  if (hand === undefined) return [];
  const drawn = corners(hand.outline).map(({ x, y }): GridPoint => ({ u: x, v: y }));
  // Joists along x have the axes changed over in their frame, which mirrors the plan once.
  const faceUp = frame.direction === 'x' ? ring : ring.map(({ u, v }): GridPoint => ({ u: -u, v }));
  const turned = faceUp.map(({ u, v }): GridPoint => ({ u: -u, v: -v }));
  if (isSame(drawn, faceUp) || isSame(drawn, turned)) return [];
  const isMirrored = [ring, faceUp, turned].some((each) =>
    isSame(
      drawn,
      each.map(({ u, v }) => ({ u: -u, v })),
    ),
  );
  return [wrong(what, isMirrored ? 'its mirror image' : 'another outline', 'its outline face up', where)];
}

/** Whether two rings are the same when pushed together. */
function isSame(a: Ring, b: Ring): boolean {
  const [p, q] = [atOrigin(a), atOrigin(b)];
  return isOn(p, q) && isOn(q, p);
}

const atOrigin = (ring: Ring): Ring => {
  const { u0, v0 } = boxOf(ring);
  return ring.map(({ u, v }) => ({ u: u - u0, v: v - v0 }));
};

const isOn = (places: Ring, ring: Ring): boolean =>
  places.every((place) => ring.some((from, i) => distance(place, { from, to: ring[(i + 1) % ring.length] }) <= HAIR));
