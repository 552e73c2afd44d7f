import type { Finding, Where } from '../rules/finding.js';
import { corners } from '../survey/outline.js';
import type { PieceFacts } from './ceiling.js';
import { wrong } from './claimWrong.js';
import { distance } from './distance.js';
import { HAIR } from './hair.js';
import { boxOf, type GridPoint, type Ring } from './solid.js';

/**
 * The outline as marked on the board lying face up: what is seen from below, the mirror image of the plan. The board may lie
 * either way round. A piece that tells both its ends and its long edges, and has no hand, says that its mirror image would fit too.
 */
export function handClaim({ claim, frame }: PieceFacts, rings: readonly Ring[], where: Where, what: string): Finding[] {
  const { hand, ends, edgeLengths } = claim;
  if (hand === undefined) {
    const isTold = ends !== undefined && edgeLengths !== undefined;
    return isTold && isHanded(rings) ? [wrong(what, 'none', 'its mirror image does not fit', where)] : [];
  }
  const [ring] = rings;
  const drawn = corners(hand.outline).map(({ x, y }): GridPoint => ({ u: x, v: y }));
  // Joists along x have the axes changed over in their frame, which mirrors the plan once.
  const faceUp = frame.direction === 'x' ? ring : mirrored(ring);
  const halfTurned = turned(faceUp);
  if (isSame([drawn], [faceUp]) || isSame([drawn], [halfTurned])) return [];
  const isMirrored = [ring, faceUp, halfTurned].some((each) => isSame([drawn], [mirrored(each)]));
  return [wrong(what, isMirrored ? 'its mirror image' : 'another outline', 'its outline face up', where)];
}

/** Whether a piece, its holes with it, differs from its mirror image whichever way round that lies. */
function isHanded(rings: readonly Ring[]): boolean {
  const image = rings.map(mirrored);
  return !isSame(rings, image) && !isSame(rings, image.map(turned));
}

const mirrored = (ring: Ring): Ring => ring.map(({ u, v }) => ({ u: -u, v }));

const turned = (ring: Ring): Ring => ring.map(({ u, v }) => ({ u: -u, v: -v }));

/** Whether two shapes are the same when pushed together. */
function isSame(a: readonly Ring[], b: readonly Ring[]): boolean {
  const [p, q] = [atOrigin(a), atOrigin(b)];
  return isOn(p, q) && isOn(q, p);
}

const atOrigin = (rings: readonly Ring[]): Ring[] => {
  const { u0, v0 } = boxOf(rings[0]);
  return rings.map((ring) => ring.map(({ u, v }) => ({ u: u - u0, v: v - v0 })));
};

const isOn = (places: readonly Ring[], rings: readonly Ring[]): boolean =>
  places.flat().every((place) => rings.some((ring) => isOnRing(place, ring)));

const isOnRing = (place: GridPoint, ring: Ring): boolean =>
  ring.some((from, i) => distance(place, { from, to: ring[(i + 1) % ring.length] }) <= HAIR);
