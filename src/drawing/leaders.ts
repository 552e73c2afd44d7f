import { extentOnSheet } from './extentOnSheet.js';
import { freePlace } from './freePlace.js';
import { heartOf } from './heartOf.js';
import { joistBands } from './joistBands.js';
import { type Box, boxOf, grown, type Label, overlap } from './label.js';
import { LETTERS, shortened } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import { blankOf, FROM_OPENING, type LetteredPiece, WIDEST } from './pieceLabels.js';
import { segmentBoxes } from './segmentBoxes.js';
import type { Sheet } from './sheet.js';
import { type Subject, zoneOf, zonesOf } from './subject.js';
import { line, type PaperPoint, polygon } from './svg.js';

/** A number beside its piece keeps this far from edges of boards and walls, from other texts, and from the piece; mm on paper. */
const ROOM = { edge: 0.5, text: 1.2, piece: 2.5 } as const;
/** Places that are tried, until the leader runs through no other text. */
const TRIES = 8;
const HEAD = { length: 1.6, half: 0.45 } as const;

/** Pieces that have no room for a number get it beside them, in the room, at the end of a leader. */
export function withLeaders(
  lettered: readonly LetteredPiece[],
  subject: Subject,
  sheet: Sheet,
  screws: readonly PaperPoint[],
  taken: readonly Box[],
): readonly LetteredPiece[] {
  if (lettered.every(({ labels }) => labels.length > 0)) return lettered;
  const room = subject.rings.outline.map(sheet.place);
  const rings = [
    room,
    ...lettered.flatMap(({ piece }) => [piece.outline, ...(piece.holes ?? [])].map((ring) => ring.map(sheet.place))),
  ];
  const edges = rings.flatMap(edgesOf).map((box) => grown(box, ROOM.edge));
  const joists = zonesOf(subject).flatMap((zone) => joistBands(zone, sheet));
  const texts = [...taken, ...lettered.flatMap(({ labels }) => labels.map(boxOf))];
  return lettered.map((each) => {
    const { piece } = each;
    if (each.labels.length > 0) return each;
    const upward = zoneOf(subject, piece).direction === 'y';
    const own = piece.outline.map(sheet.place);
    const heart = heartOf(own);
    const hindering = [
      ...taken.map((box) => grown(box, FROM_OPENING)),
      ...texts.map((box) => grown(box, ROOM.text)),
      ...edges,
      ...edgesOf(own).map((box) => grown(box, ROOM.piece)),
    ];
    const text = shortened(piece.id, WIDEST, LETTERS.small, true);
    const way = { lines: [{ text, height: LETTERS.small, bold: true }], full: false, cost: 0 };
    for (let tries = 0; tries < TRIES; tries++) {
      const [label] =
        freePlace(way, { inner: extentOnSheet(room), ring: room, heart, screws, hindering, joists, upward }, undefined)?.labels ??
        [];
      if (label === undefined) break;
      const leader = leaderTo(label, heart);
      if (segmentBoxes(leader.from, leader.to).every((part) => !texts.some((box) => overlap(part, box)))) {
        texts.push(boxOf(label), ...segmentBoxes(leader.from, leader.to));
        return { ...each, labels: [label], blanks: [blankOf(label, joists, upward)], leader };
      }
      hindering.push(boxOf(label));
    }
    return each;
  });
}

const edgesOf = (ring: readonly PaperPoint[]): Box[] => ring.flatMap((a, i) => segmentBoxes(a, ring[(i + 1) % ring.length]));

/** From the edge of a text, the nearest way. */
function leaderTo(label: Label, to: PaperPoint): NonNullable<LetteredPiece['leader']> {
  const { left, right, top, bottom } = grown(boxOf(label), 0.4);
  return { from: { x: Math.min(Math.max(to.x, left), right), y: Math.min(Math.max(to.y, top), bottom) }, to };
}

/** The leader of a piece that has one, with its head at the piece. */
export function leaderSvg({ piece, leader }: LetteredPiece): string[] {
  if (leader === undefined) return [];
  const { from, to } = leader;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return [];
  const spot = (back: number, beside: number): PaperPoint => ({
    x: to.x - (dx * back + dy * beside) / length,
    y: to.y - (dy * back - dx * beside) / length,
  });
  const head = [to, spot(HEAD.length, HEAD.half), spot(HEAD.length, -HEAD.half)];
  return [
    line(from, to, { 'stroke-width': WIDTH.narrow, 'data-leader': piece.id }),
    polygon(head, { fill: '#000', stroke: 'none' }),
  ];
}
