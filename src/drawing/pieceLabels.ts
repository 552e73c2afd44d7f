import type { Piece } from '../boards/boardLayout.js';
import { extentOnSheet } from './extentOnSheet.js';
import { freePlace, type Line, type Placed, type Scene, type Way } from './freePlace.js';
import { heartOf } from './heartOf.js';
import { joistBands } from './joistBands.js';
import { type Box, boxOf, CLEAR, grown, type Label, overlap } from './label.js';
import { LETTERS, shortened } from './lettering.js';
import { sizeText } from './provisional.js';
import { segmentBoxes } from './segmentBoxes.js';
import type { Sheet } from './sheet.js';
import { boardOrUp } from './stillToFix.js';
import { type Subject, zoneOf, zonesOf } from './subject.js';
import type { PaperPoint } from './svg.js';

/** What a piece is lettered with, and whether that is all of it. */
export interface LetteredPiece {
  readonly piece: Piece;
  readonly labels: readonly Label[];
  /** Where joists are left out for the lettering. */
  readonly blanks: readonly Box[];
  /** Number, size and board all found a place clear of screws and openings. */
  readonly full: boolean;
  /** From its number to the piece, where that has no room for it. */
  readonly leader?: { readonly from: PaperPoint; readonly to: PaperPoint };
}

/** A text stays this far from openings and their names, mm on paper. */
export const FROM_OPENING = 2.4;
/** In this order: all of it or only a part, this far from the edges of the piece, mm on paper; a sliver has no room but among its ticks. */
const ATTEMPTS = [
  { margin: 1.6, full: true },
  { margin: 1.6, full: false },
  { margin: 0.4, full: false },
] as const;
/** A piece's number and a board's are cut to this width, mm on paper. */
export const WIDEST = 24;

type Obstacles = Pick<Scene, 'screws' | 'hindering' | 'joists'>;

/**
 * Letters every piece: number, size as cut, and board. Each block of text is put as near the heart of its piece as it can be
 * without touching a screw, an opening or another text, between the joists where there is room.
 */
export function letteredPieces(
  subject: Subject,
  sheet: Sheet,
  screws: readonly PaperPoint[],
  taken: readonly Box[],
): LetteredPiece[] {
  const all = {
    screws,
    hindering: taken.map((box) => grown(box, FROM_OPENING)),
    joists: zonesOf(subject).flatMap((zone) => joistBands(zone, sheet)),
  };
  return subject.plan.layout.pieces.map((piece) => letter(piece, zoneOf(subject, piece), sheet, all));
}

function letter(piece: Piece, subject: Subject, sheet: Sheet, all: Obstacles): LetteredPiece {
  const ring = piece.outline.map(sheet.place);
  const outer = extentOnSheet(ring);
  const near = (boxes: readonly Box[]): Box[] => boxes.filter((box) => overlap(box, outer));
  const upward = subject.direction === 'y';
  const joists = near(all.joists);
  const screws = all.screws.filter(({ x, y }) => x > outer.left && x < outer.right && y > outer.top && y < outer.bottom);
  const ways = lettering(piece, subject, sheet);
  for (const { margin, full } of ATTEMPTS) {
    const edges = innerEdges(ring, outer, margin);
    const scene = {
      inner: grown(outer, -margin),
      screws,
      hindering: [...near(all.hindering), ...edges],
      heart: heartOf(ring),
      ...(edges.length > 0 && { ring }),
      joists,
      upward,
    };
    let found: Placed | undefined;
    for (const way of ways.filter((each) => each.full === full)) found = freePlace(way, scene, found);
    if (found !== undefined) {
      const { labels } = found;
      return { piece, labels, blanks: labels.map((label) => blankOf(label, joists, upward)), full };
    }
  }
  return { piece, labels: [], blanks: [], full: false };
}

/** Ways to letter a piece. */
function lettering(piece: Piece, subject: Subject, sheet: Sheet): Way[] {
  const { long, wide } = sizeText(piece, subject);
  const small = { height: LETTERS.small };
  const number = (height: number): Line => ({ text: shortened(piece.id, WIDEST, height, true), height, bold: true });
  const board = { text: shortened(boardOrUp(piece, subject), WIDEST, LETTERS.small), ...small };
  const size = { text: `${long} × ${wide}`, ...small };
  const sizeInTwo = [
    { text: long, ...small },
    { text: `× ${wide}`, ...small },
  ];
  const roomy = Math.min(piece.width, piece.cutLength) / sheet.scale > 30;
  const large = number(roomy ? LETTERS.large : LETTERS.medium);
  const inOne = { ...number(LETTERS.small), text: `${piece.id}  ${boardOrUp(piece, subject)}` };
  return [
    { lines: [large, size, board], full: true, cost: 0 },
    { lines: [large, ...sizeInTwo, board], full: true, cost: 4 },
    { lines: [number(LETTERS.medium), size, board], full: true, cost: 5 },
    { lines: [number(LETTERS.small), size, board], full: true, cost: 14 },
    { lines: [inOne, size], full: true, cost: 18 },
    { lines: [{ ...inOne, text: `${piece.id}  ${long} × ${wide}  ${boardOrUp(piece, subject)}` }], full: true, cost: 22 },
    { lines: [number(LETTERS.medium), size], full: false, cost: 0 },
    { lines: [number(LETTERS.medium)], full: false, cost: 20 },
    { lines: [number(LETTERS.small)], full: false, cost: 24 },
  ];
}

/** What is left blank for a text: joists that it touches are left out over their whole width. */
export function blankOf(label: Label, joists: readonly Box[], upward: boolean): Box {
  const own = grown(boxOf(label), CLEAR);
  const met = [own, ...joists.filter((joist) => overlap(joist, own)).map((joist) => grown(joist, 0.2))];
  return upward
    ? { ...own, left: Math.min(...met.map(({ left }) => left)), right: Math.max(...met.map(({ right }) => right)) }
    : { ...own, top: Math.min(...met.map(({ top }) => top)), bottom: Math.max(...met.map(({ bottom }) => bottom)) };
}

/** Boxes along the edges of a piece that run inside its extent: notches and scribed walls. */
function innerEdges(ring: readonly PaperPoint[], outer: Box, margin: number): Box[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const onExtent =
      (a.x === b.x && (a.x === outer.left || a.x === outer.right)) ||
      (a.y === b.y && (a.y === outer.top || a.y === outer.bottom));
    if (onExtent) return [];
    return segmentBoxes(a, b).map((box) => grown(box, margin));
  });
}
