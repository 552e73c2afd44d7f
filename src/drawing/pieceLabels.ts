import type { Piece } from '../boards/boardLayout.js';
import { type Box, boxOf, CLEAR, grown, type Label, overlap, within } from './label.js';
import { LETTERS, shortened } from './lettering.js';
import { sizeText } from './provisional.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import type { PaperPoint } from './svg.js';

/** What a piece is lettered with, and whether that is all of it. */
export interface LetteredPiece {
  readonly piece: Piece;
  readonly labels: readonly Label[];
  /** Where joists are left out for the lettering. */
  readonly blanks: readonly Box[];
  /** Number, size and board all found a place clear of screws and openings. */
  readonly full: boolean;
}

/**
 * A text stays this far from the edges of its piece, from the middle of a screw before or after it (a dot close by would be read
 * as a full stop) and over or under it, and from openings and their names, mm on paper.
 */
const FROM_EDGE = 1.6;
const FROM_SCREW = { before: 1.3, over: 0.6 } as const;
const FROM_OPENING = 2.4;
/** Steps across and along the joists, and reach, of the search for a place, mm on paper. */
const STEP = { across: 1, along: 0.5 } as const;
const REACH = 16;
/** What it costs to lay a number or another line over a joist, and to turn the text, in mm from the middle of the piece. */
const NUMBER_ON_JOIST = 8;
const LINE_ON_JOIST = 4;
const TURNED = 10;
/** A piece's number and a board's are cut to this width, mm on paper. */
const WIDEST = 24;

/** What text has to keep clear of, and what it should. */
interface Obstacles {
  readonly screws: readonly PaperPoint[];
  readonly hindering: readonly Box[];
  readonly joists: readonly Box[];
}

/**
 * Letters every piece: number, size as cut, and board. Each block of text is put as near the middle of its piece as it can be
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
    joists: joistBands(subject, sheet),
  };
  return subject.plan.layout.pieces.map((piece) => letter(piece, subject, sheet, all));
}

function letter(piece: Piece, subject: Subject, sheet: Sheet, all: Obstacles): LetteredPiece {
  const ring = piece.outline.map(sheet.place);
  const outer = extentOnSheet(ring);
  const near = (boxes: readonly Box[]): Box[] => boxes.filter((box) => overlap(box, outer));
  const upward = subject.direction === 'y';
  const scene = {
    inner: grown(outer, -FROM_EDGE),
    screws: all.screws.filter(({ x, y }) => x > outer.left && x < outer.right && y > outer.top && y < outer.bottom),
    hindering: [...near(all.hindering), ...notches(ring, outer)],
    joists: near(all.joists),
    upward,
  };
  const ways = lettering(piece, subject, sheet);
  for (const full of [true, false]) {
    let found: Placed | undefined;
    for (const way of ways.filter((each) => each.full === full)) found = best(way, scene, found);
    if (found !== undefined) {
      const { labels } = found;
      return { piece, labels, blanks: labels.map((label) => blankOf(label, scene.joists, upward)), full };
    }
  }
  return { piece, labels: [], blanks: [], full: false };
}

/** One line of a piece's lettering. */
interface Line {
  readonly text: string;
  readonly height: number;
  readonly bold?: boolean;
}

interface Way {
  readonly lines: readonly Line[];
  readonly full: boolean;
  /** How much worse it is than the best, in mm from the middle of the piece. */
  readonly cost: number;
}

/** Ways to letter a piece. */
function lettering(piece: Piece, subject: Subject, sheet: Sheet): Way[] {
  const { long, wide } = sizeText(piece, subject);
  const small = { height: LETTERS.small };
  const number = (height: number): Line => ({ text: shortened(piece.id, WIDEST, height, true), height, bold: true });
  const board = { text: shortened(piece.board, WIDEST, LETTERS.small), ...small };
  const size = { text: `${long} × ${wide}`, ...small };
  const sizeInTwo = [
    { text: long, ...small },
    { text: `× ${wide}`, ...small },
  ];
  const roomy = Math.min(piece.width, piece.cutLength) / sheet.scale > 30;
  const large = number(roomy ? LETTERS.large : LETTERS.medium);
  const inOne = { ...number(LETTERS.small), text: `${piece.id}  ${piece.board}` };
  return [
    { lines: [large, size, board], full: true, cost: 0 },
    { lines: [large, ...sizeInTwo, board], full: true, cost: 4 },
    { lines: [number(LETTERS.medium), size, board], full: true, cost: 5 },
    { lines: [number(LETTERS.small), size, board], full: true, cost: 14 },
    { lines: [inOne, size], full: true, cost: 18 },
    { lines: [{ ...inOne, text: `${piece.id}  ${long} × ${wide}  ${piece.board}` }], full: true, cost: 22 },
    { lines: [number(LETTERS.medium), size], full: false, cost: 0 },
    { lines: [number(LETTERS.medium)], full: false, cost: 20 },
    { lines: [number(LETTERS.small)], full: false, cost: 24 },
  ];
}

interface Scene extends Obstacles {
  readonly inner: Box;
  /** Whether the joists run up the sheet. */
  readonly upward: boolean;
}

interface Placed {
  readonly labels: readonly Label[];
  readonly cost: number;
}

/** The cheapest free place of a block of text, level or turned, loose or tight, if it is cheaper than what was found before. */
function best(way: Way, scene: Scene, before: Placed | undefined): Placed | undefined {
  const pitch = screwPitch(scene);
  const pitches = pitch >= LEAST_PITCH && pitch <= 7 ? [undefined, pitch] : [undefined];
  return [false, true].reduce(
    (found, upright) =>
      pitches.reduce((soFar, leading) => {
        const start = way.cost + (leading === undefined ? 0 : 3) + (upright ? TURNED : 0);
        return settled(block(way.lines, upright, leading, middleOf(scene.inner)), start, scene, soFar);
      }, found),
    before,
  );
}

/** Lines of the smallest letters are never closer than this, middle to middle, mm on paper. */
const LEAST_PITCH = 3.5;

const middleOf = ({ left, top, right, bottom }: Box): PaperPoint => ({ x: (left + right) / 2, y: (top + bottom) / 2 });

/** A block at the cheapest of its free places. */
function settled(labels: readonly Label[], start: number, scene: Scene, before: Placed | undefined): Placed | undefined {
  if (before !== undefined && start >= before.cost) return before;
  const boxes = labels.map(boxOf);
  const upright = labels[0].upright === true;
  const [beside, over] = upright ? [FROM_SCREW.over, FROM_SCREW.before] : [FROM_SCREW.before, FROM_SCREW.over];
  const hindering = [
    ...scene.hindering,
    ...scene.screws.map(({ x, y }) => ({ left: x - beside, right: x + beside, top: y - over, bottom: y + over })),
  ];
  let found = before;
  for (const { dx, dy, away } of offsets(scene, labels, boxes, before === undefined ? Infinity : before.cost - start)) {
    if (found !== undefined && start + away >= found.cost) break;
    const moved = boxes.map((box) => shifted(box, dx, dy));
    if (moved.some((box) => hindering.some((other) => overlap(box, other)))) continue;
    const cost = start + away + costOnJoists(moved, scene.joists);
    if (found === undefined || cost < found.cost) {
      found = { labels: labels.map((label) => ({ ...label, x: label.x + dx, y: label.y + dy })), cost };
    }
  }
  return found;
}

const costOnJoists = (boxes: readonly Box[], joists: readonly Box[]): number =>
  boxes.reduce((sum, box, i) => {
    const blank = grown(box, CLEAR);
    const crossed = joists.filter((joist) => overlap(blank, joist)).length;
    return sum + crossed * (i === 0 ? NUMBER_ON_JOIST : LINE_ON_JOIST);
  }, 0);

/**
 * Moves from the middle of a piece that keep a block within it, the shortest first: even steps, and along the joists also those
 * that bring the first line halfway between two screws. None is as long as `limit`.
 */
function offsets({ inner, screws, upward }: Scene, labels: readonly Label[], boxes: readonly Box[], limit: number) {
  const outer = {
    left: Math.min(...boxes.map(({ left }) => left)),
    right: Math.max(...boxes.map(({ right }) => right)),
    top: Math.min(...boxes.map(({ top }) => top)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  };
  if (!within(outer, inner)) return [];
  const range = (less: number, more: number, step: number, also: readonly number[]): number[] => {
    const [least, most] = [-Math.min(less, REACH), Math.min(more, REACH)];
    const count = Math.floor(-least / step);
    const even = Array.from({ length: count + Math.floor(most / step) + 1 }, (_, i) => (i - count) * step);
    return [...even, ...also.filter((move) => move >= least && move <= most)];
  };
  const between = upward ? midpoints(screws.map(({ y }) => y)).map((y) => y - labels[0].y) : [];
  const aside = upward ? [] : midpoints(screws.map(({ x }) => x)).map((x) => x - labels[0].x);
  const xs = range(outer.left - inner.left, inner.right - outer.right, upward ? STEP.across : STEP.along, aside);
  const ys = range(outer.top - inner.top, inner.bottom - outer.bottom, STEP.along, between);
  return xs
    .flatMap((dx) => ys.map((dy) => ({ dx, dy, away: Math.sqrt(dx * dx + dy * dy) })))
    .filter(({ away }) => away < limit)
    .sort((a, b) => a.away - b.away || a.dx - b.dx || a.dy - b.dy);
}

/** Places halfway between neighbouring values that are far enough apart to letter between them. */
function midpoints(values: readonly number[]): number[] {
  const order = distinct(values);
  return order.slice(1).flatMap((value, i) => (value - order[i] >= LEAST_PITCH ? [(value + order[i]) / 2] : []));
}

const distinct = (values: readonly number[]): number[] =>
  [...new Set(values.map((value) => Math.round(value * 100) / 100))].sort((a, b) => a - b);

const shifted = ({ left, top, right, bottom }: Box, dx: number, dy: number): Box => ({
  left: left + dx,
  top: top + dy,
  right: right + dx,
  bottom: bottom + dy,
});

/** The lines of a block one under another (beside one another when upright), about a middle. */
function block(lines: readonly Line[], upright: boolean, leading: number | undefined, { x, y }: PaperPoint): Label[] {
  const pitches = lines.map(({ height }) => leading ?? height * 1.55);
  let at = -pitches.reduce((sum, pitch) => sum + pitch, 0) / 2;
  return lines.map((each, i) => {
    const middle = at + pitches[i] / 2;
    at += pitches[i];
    return { ...each, x: upright ? x + middle : x, y: upright ? y : y + middle, anchor: 'middle', upright };
  });
}

/** The commonest distance of neighbouring screws along the joists, mm on paper: text fits between screws at that pitch. */
function screwPitch({ screws, upward }: Scene): number {
  const along = distinct(screws.map(({ x, y }) => (upward ? y : x)));
  const counts = new Map<number, number>();
  for (let i = 1; i < along.length; i++) {
    const step = Math.round((along[i] - along[i - 1]) * 100) / 100;
    counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  let common = 0;
  for (const [step, count] of counts) if (step >= LEAST_PITCH && count > (counts.get(common) ?? 0)) common = step;
  return common;
}

/** What is left blank for a text: joists that it touches are left out over their whole width. */
function blankOf(label: Label, joists: readonly Box[], upward: boolean): Box {
  const own = grown(boxOf(label), CLEAR);
  const met = [own, ...joists.filter((joist) => overlap(joist, own)).map((joist) => grown(joist, 0.2))];
  return upward
    ? { ...own, left: Math.min(...met.map(({ left }) => left)), right: Math.max(...met.map(({ right }) => right)) }
    : { ...own, top: Math.min(...met.map(({ top }) => top)), bottom: Math.max(...met.map(({ bottom }) => bottom)) };
}

/** The joists as upright or level boxes on the sheet, in short lengths so that one that is not parallel fits its boxes. */
function joistBands({ plan, frame }: Subject, sheet: Sheet): Box[] {
  return plan.joists.flatMap((joist) => {
    const [start, end] = [frame.into(joist.start), frame.into(joist.end)];
    const lengths = start.u === end.u ? 1 : 12;
    return Array.from({ length: lengths }, (_, i) => {
      const spot = (share: number, by: number): PaperPoint =>
        sheet.place(frame.back(start.u + (end.u - start.u) * share + by, start.v + (end.v - start.v) * share));
      return extentOnSheet([spot(i / lengths, -joist.width / 2), spot((i + 1) / lengths, joist.width / 2)]);
    });
  });
}

function extentOnSheet(points: readonly PaperPoint[]): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Boxes along the edges of a piece that run inside its extent: notches and scribed walls. */
function notches(ring: readonly PaperPoint[], outer: Box): Box[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const onExtent =
      (a.x === b.x && (a.x === outer.left || a.x === outer.right)) ||
      (a.y === b.y && (a.y === outer.top || a.y === outer.bottom));
    if (onExtent) return [];
    const parts = Math.max(1, Math.ceil(Math.min(Math.abs(b.x - a.x), Math.abs(b.y - a.y)) / 2));
    return Array.from({ length: parts }, (_, k) => {
      const spot = (share: number): PaperPoint => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
      return grown(extentOnSheet([spot(k / parts), spot((k + 1) / parts)]), FROM_EDGE);
    });
  });
}
