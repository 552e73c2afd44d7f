import { isWithin } from '../survey/isWithin.js';
import { type Box, boxOf, CLEAR, grown, type Label, overlap } from './label.js';
import type { PaperPoint } from './svg.js';

/** One line of a block of lettering. */
export interface Line {
  readonly text: string;
  readonly height: number;
  readonly bold?: boolean;
}

/** A block of lettering that is looking for a place. */
export interface Way {
  readonly lines: readonly Line[];
  /** Whether it says all that is to be said. */
  readonly full: boolean;
  /** How much worse it is than the best, in mm from the place where it would stand best. */
  readonly cost: number;
}

/** Where a block may stand, and what it has to keep clear of. */
export interface Scene {
  /** The block stays in this box, and in this ring where the box is not all of it. */
  readonly inner: Box;
  readonly ring?: readonly PaperPoint[];
  /** Where it would stand best. */
  readonly heart: PaperPoint;
  readonly screws: readonly PaperPoint[];
  readonly hindering: readonly Box[];
  readonly joists: readonly Box[];
  /** Whether the joists run up the sheet. */
  readonly upward: boolean;
}

/** A block in its place. */
export interface Placed {
  readonly labels: readonly Label[];
  readonly cost: number;
}

/**
 * A text stays this far from the middle of a screw before or after it (a dot close by would be read as a full stop) and over or
 * under it, mm on paper.
 */
const FROM_SCREW = { before: 1.3, over: 0.6 } as const;
/** Steps across and along the joists, and reach, of the search for a place, mm on paper. */
const STEP = { across: 1, along: 0.5 } as const;
const REACH = 16;
/** What it costs to lay a number or another line over a joist, and to turn the text, in mm from the heart of the scene. */
const NUMBER_ON_JOIST = 8;
const LINE_ON_JOIST = 4;
const TURNED = 10;

/** The cheapest free place of a block of text, level or turned, loose or tight, if it is cheaper than what was found before. */
export function freePlace(way: Way, scene: Scene, before: Placed | undefined): Placed | undefined {
  const pitch = screwPitch(scene);
  const least = Math.max(LEAST_PITCH, ...way.lines.slice(1).map(({ height }, i) => (height + way.lines[i].height) / 2 + APART));
  const pitches = pitch >= least && pitch <= 7 ? [undefined, pitch] : [undefined];
  return [false, true].reduce(
    (found, upright) =>
      pitches.reduce((soFar, leading) => {
        const start = way.cost + (leading === undefined ? 0 : 3) + (upright ? TURNED : 0);
        return settled(block(way.lines, upright, leading, scene.heart), start, scene, soFar);
      }, found),
    before,
  );
}

/** Lines of the smallest letters are never closer than this, middle to middle, and no lines than this, edge to edge; mm on paper. */
const LEAST_PITCH = 3.5;
const APART = 0.6;

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
    if (moved.some((box) => hindering.some((other) => overlap(box, other)) || !inside(box, scene))) continue;
    const cost = start + away + costOnJoists(moved, scene.joists);
    if (found === undefined || cost < found.cost) {
      found = { labels: labels.map((label) => ({ ...label, x: label.x + dx, y: label.y + dy })), cost };
    }
  }
  return found;
}

/** Edges of the ring are among what hinders, so a box that touches none of them is in the ring when its middle is. */
const inside = ({ left, right, top, bottom }: Box, { ring }: Scene): boolean =>
  ring === undefined || isWithin(ring, { x: (left + right) / 2, y: (top + bottom) / 2 });

const costOnJoists = (boxes: readonly Box[], joists: readonly Box[]): number =>
  boxes.reduce((sum, box, i) => {
    const blank = grown(box, CLEAR);
    const crossed = joists.filter((joist) => overlap(blank, joist)).length;
    return sum + crossed * (i === 0 ? NUMBER_ON_JOIST : LINE_ON_JOIST);
  }, 0);

/**
 * Moves from the heart of a scene that keep a block within it, the shortest first: even steps, and along the joists also those
 * that bring the first line halfway between two screws. None is as long as `limit`.
 */
function offsets({ inner, screws, upward }: Scene, labels: readonly Label[], boxes: readonly Box[], limit: number) {
  const outer = {
    left: Math.min(...boxes.map(({ left }) => left)),
    right: Math.max(...boxes.map(({ right }) => right)),
    top: Math.min(...boxes.map(({ top }) => top)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  };
  if (outer.right - outer.left > inner.right - inner.left || outer.bottom - outer.top > inner.bottom - inner.top) return [];
  const range = (less: number, more: number, step: number, also: readonly number[]): number[] => {
    const [least, most] = [-Math.min(less, REACH), Math.min(more, REACH)];
    const first = Math.ceil(least / step);
    const even = Array.from({ length: Math.max(0, Math.floor(most / step) - first + 1) }, (_, i) => (first + i) * step);
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
