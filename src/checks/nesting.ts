import type { PieceFacts } from './ceiling.js';
import { crossSections } from './crossSections.js';
import type { Blank, Placed } from './cuttable.js';
import { HAIR } from './hair.js';
import { shared } from './overlaps.js';
import { type Ring, ringOf, type Solid, turned, upright } from './solid.js';

const outlineOf = ({ claim, frame }: PieceFacts): Ring => ringOf(claim.outline, frame);

/** Whether a piece leaves something of the rectangle about it, into which another might reach: a rake or a notch. */
export function isShaped(piece: PieceFacts): boolean {
  const ring = outlineOf(piece);
  return ring.length > 4 || !upright(ring);
}

/** The longest stretch over which a piece takes the whole of its width; nothing where it does so nowhere. */
export function fullStretch(piece: PieceFacts): Blank[] {
  const { v0, v1 } = piece.box;
  const solid: Solid = { kind: 'piece', index: 0, rings: [outlineOf(piece)] };
  let [longest, length, reached] = [0, 0, -Infinity];
  for (const { low, high, spans } of crossSections([turned(solid)])) {
    const isFull = spans.some(({ leftLow, leftHigh, rightLow, rightHigh }) =>
      [leftLow - v0, leftHigh - v0, v1 - rightLow, v1 - rightHigh].every((short) => short <= HAIR),
    );
    length = isFull ? (reached === low ? length : 0) + high - low : 0;
    reached = high;
    longest = Math.max(longest, length);
  }
  return longest > 0 ? [{ length: longest, width: v1 - v0 }] : [];
}

/** Whether two pieces lie over each other on their board, by their outlines. */
export function lieOverEachOther(a: PieceFacts, onA: Placed, b: PieceFacts, onB: Placed): boolean {
  const solids = [place(a, onA, 0), place(b, onB, 1)];
  return crossSections(solids).some(({ spans }) =>
    spans.some((span, i) =>
      spans.slice(i + 1).some((other) => {
        const both = span.solid === other.solid ? undefined : shared(span, other);
        return both !== undefined && both.rightLow + both.rightHigh - both.leftLow - both.leftHigh > 2 * HAIR;
      }),
    ),
  );
}

const place = (piece: PieceFacts, { along, across }: Placed, index: number): Solid => {
  const { u0, v0 } = piece.box;
  return { kind: 'piece', index, rings: [outlineOf(piece).map(({ u, v }) => ({ u: u - u0 + along, v: v - v0 + across }))] };
};
