import { isWithin } from '../survey/isWithin.js';
import { extentOnSheet } from './extentOnSheet.js';
import { type Box, boxOf, grown, type Label, overlap } from './label.js';
import { LETTERS, shortened } from './lettering.js';
import { outwardOf } from './outwardOf.js';
import { extensionLines, type LaidDimension } from './runningDimension.js';
import { segmentBoxes } from './segmentBoxes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { wallLength } from './wallLength.js';

const HEIGHT = LETTERS.small;
/** From the inner edge of a wall to its label; how much further out it may go; how far outside the room at the most; mm on paper. */
const FROM_WALL = 2.55;
const FURTHER = [0, 1, 2, 3.5, 5] as const;
const OUTERMOST = 7.4;
/** Step along the wall of the search for a place, mm on paper, and how often it is taken either way. */
const STEP = 0.75;
const STEPS = 60;
/** Names longer than this are cut, and what stands further from a wall than this is none of its label's concern, mm on paper. */
const WIDEST = 60;
const REACH = 75;
/**
 * What it costs to stand on something that may not be covered, on an extension line, to reach beyond the wall (each mm), and to say
 * less; in steps along the wall.
 */
const COST = { covering: 1e6, onLine: 12, beyond: 4, letterAndLength: 25, letter: 90, turned: 30, further: 4 } as const;

/** A wall's label; not there where no place was free for it. */
export interface WallLabel {
  readonly letter: string;
  readonly label?: Label;
}

/**
 * The names of the walls, outside them, each along its wall and clear of extension lines where there is room between them; in a
 * room that is no plain rectangle with the wall's length.
 */
export function wallLabels(subject: Subject, sheet: Sheet, dimensions: readonly LaidDimension[]): WallLabel[] {
  const { walls } = subject;
  const ring = subject.plan.room.outline.map(sheet.place);
  const solid = walls.flatMap(({ from, to }) => segmentBoxes(sheet.place(from), sheet.place(to)).map((box) => grown(box, 1.1)));
  const lines = dimensions.flatMap((each) => extensionBoxes(each, sheet));
  const outer = grown(sheet.room, OUTERMOST);
  const placed: Label[] = [];
  // Short walls first: they have the fewest places.
  const order = walls
    .map((_, i) => i)
    .sort((a, b) => lengthOnSheet(subject, a, sheet) - lengthOnSheet(subject, b, sheet) || a - b);
  const labels = new Map<number, Label>();
  for (const index of order) {
    const wall = outwardOf(subject, index, sheet);
    const near = grown(extentOnSheet([wall.from, wall.to]), REACH);
    const [walled, lined] = [solid, lines].map((boxes) => boxes.filter((box) => overlap(box, near)));
    const taken = placed.map((label) => grown(boxOf(label), 0.8));
    const cost = (box: Box): number => {
      const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
      const out = box.left < outer.left || box.right > outer.right || box.top < outer.top || box.bottom > outer.bottom;
      const hits = (boxes: readonly Box[]): number => boxes.filter((other) => overlap(box, other)).length;
      const covering = hits(walled) + hits(taken) + (out ? 1 : 0) + (isWithin(ring, middle) ? 1 : 0);
      return covering * COST.covering + hits(lined) * COST.onLine;
    };
    const best = bestPlace(waysFor(subject, index, wall), wall, cost);
    if (best === undefined || best.cost >= COST.covering) continue;
    placed.push(best.label);
    labels.set(index, best.label);
  }
  return walls.map(({ letter }, i) => {
    const label = labels.get(i);
    return { letter, ...(label && { label }) };
  });
}

const lengthOnSheet = (subject: Subject, index: number, sheet: Sheet): number => outwardOf(subject, index, sheet).length;

/** Whether the running dimensions give the length of every wall. */
const isPlain = ({ walls }: Subject): boolean =>
  walls.length === 4 && walls.every(({ from, to }) => from.x === to.x || from.y === to.y);

/** The texts that a wall may be labelled with, and how much worse each is than the first. */
function textsFor(subject: Subject, index: number): { text: string; cost: number }[] {
  const { letter, name } = subject.walls[index];
  if (isPlain(subject)) {
    return [
      { text: shortened(name, WIDEST, HEIGHT, true), cost: 0 },
      { text: letter, cost: COST.letter },
    ];
  }
  const length = subject.length(wallLength(subject.walls[index]));
  return [
    { text: `${shortened(name, WIDEST, HEIGHT, true)}  ${length}`, cost: 0 },
    ...(name === letter ? [] : [{ text: `${letter}  ${length}`, cost: COST.letterAndLength }]),
    { text: letter, cost: COST.letter },
  ];
}

type Wall = ReturnType<typeof outwardOf>;

/** A way to label a wall: the label about the origin, how far from the wall its middle stands, and how much worse the way is. */
interface Way {
  readonly label: Label;
  readonly away: number;
  readonly cost: number;
}

/** The ways to label a wall, the best first as far as the wall itself goes. */
function waysFor(subject: Subject, index: number, { from, to, length, out }: Wall): Way[] {
  const steep = Math.abs(to.y - from.y) > Math.abs(to.x - from.x);
  const ways = textsFor(subject, index).flatMap(({ text, cost }) =>
    [steep, !steep].flatMap((upright) => {
      const label = { text, height: HEIGHT, anchor: 'middle', upright, bold: true, clear: true, x: 0, y: 0 } as const;
      const { left, right, top, bottom } = boxOf(label);
      const away = ((right - left) * Math.abs(out.x) + (bottom - top) * Math.abs(out.y)) / 2 + FROM_WALL;
      const beyond = Math.max(0, (upright ? bottom - top : right - left) - length);
      const worse = cost + beyond * COST.beyond + (upright === steep ? 0 : COST.turned);
      return FURTHER.map((further) => ({ label, away: away + further, cost: worse + further * COST.further }));
    }),
  );
  return ways.sort((a, b) => a.cost - b.cost);
}

/** The cheapest place along a wall of any of the ways to label it. */
function bestPlace(ways: readonly Way[], { from, to, length, out }: Wall, costOf: (box: Box) => number) {
  const along = length === 0 ? { x: 0, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const steps = Math.min(STEPS, Math.floor(length / 2 / STEP));
  let best: { readonly label: Label; readonly cost: number } | undefined;
  for (const { label, away, cost } of ways) {
    const { left, right, top, bottom } = boxOf(label);
    for (let move = 0; move <= steps && cost + move < (best?.cost ?? Infinity); move++) {
      for (const shift of move === 0 ? [0] : [-move * STEP, move * STEP]) {
        const x = (from.x + to.x) / 2 + out.x * away + along.x * shift;
        const y = (from.y + to.y) / 2 + out.y * away + along.y * shift;
        const whole = cost + move + costOf({ left: left + x, right: right + x, top: top + y, bottom: bottom + y });
        if (best === undefined || whole < best.cost) best = { label: { ...label, x, y }, cost: whole };
      }
    }
  }
  return best;
}

/** Extension lines as thin boxes on the sheet. */
function extensionBoxes(laid: LaidDimension, { room }: Sheet): Box[] {
  return extensionLines(laid).map(({ at, from, to }) => {
    const [x, y] = [room.left + at, room.top + at];
    if (laid.side === 'top') return grown({ left: x, right: x, top: room.top - to, bottom: room.top + from }, 0.4);
    if (laid.side === 'bottom') return grown({ left: x, right: x, top: room.bottom - from, bottom: room.bottom + to }, 0.4);
    if (laid.side === 'left') return grown({ left: room.left - to, right: room.left + from, top: y, bottom: y }, 0.4);
    return grown({ left: room.right - from, right: room.right + to, top: y, bottom: y }, 0.4);
  });
}
