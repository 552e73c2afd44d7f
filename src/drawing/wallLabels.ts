import { insideRing } from './insideRing.js';
import { type Box, boxOf, grown, type Label, overlap } from './label.js';
import { LETTERS, shortened } from './lettering.js';
import { outwardOf } from './outwardOf.js';
import { extensionLines, type LaidDimension } from './runningDimension.js';
import { segmentBoxes } from './segmentBoxes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import type { PaperPoint } from './svg.js';
import { wallLength } from './wallLength.js';

const HEIGHT = LETTERS.small;
/** From the inner edge of a wall to its label; how much further out it may go; how far outside the room at the most; mm on paper. */
const FROM_WALL = 2.55;
const FURTHER = [0, 1, 2, 3.5, 5] as const;
const OUTERMOST = 7.4;
/** Step along the wall of the search for a place, mm on paper, and how often it is taken either way. */
const STEP = 0.75;
const STEPS = 60;
/** Names longer than this are cut, mm on paper. */
const WIDEST = 60;
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
    const candidates = candidatesFor(subject, index, sheet);
    const near = grown(boundsOf(candidates.map(({ box }) => box)), 1);
    const [walled, lined] = [solid, lines].map((boxes) => boxes.filter((box) => overlap(box, near)));
    const taken = placed.map((label) => grown(boxOf(label), 0.8));
    const cost = (box: Box): number => {
      const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
      const out = box.left < outer.left || box.right > outer.right || box.top < outer.top || box.bottom > outer.bottom;
      const hits = (boxes: readonly Box[]): number => boxes.filter((other) => overlap(box, other)).length;
      const covering = hits(walled) + hits(taken) + (out ? 1 : 0) + (insideRing(ring, middle) ? 1 : 0);
      return covering * COST.covering + hits(lined) * COST.onLine;
    };
    let best: { label: Label; cost: number } | undefined;
    for (const { label, box, start } of candidates) {
      if (best !== undefined && start >= best.cost) break;
      const whole = start + cost(box);
      if (best === undefined || whole < best.cost) best = { label, cost: whole };
    }
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

const boundsOf = (boxes: readonly Box[]): Box => ({
  left: Math.min(...boxes.map(({ left }) => left)),
  right: Math.max(...boxes.map(({ right }) => right)),
  top: Math.min(...boxes.map(({ top }) => top)),
  bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
});

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

interface Candidate {
  readonly label: Label;
  readonly box: Box;
  readonly start: number;
}

/** Places for a wall's label, the best first as far as the wall itself goes. */
function candidatesFor(subject: Subject, index: number, sheet: Sheet): Candidate[] {
  const { from, to, length, out } = outwardOf(subject, index, sheet);
  const along = length === 0 ? { x: 0, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const steep = Math.abs(along.y) > Math.abs(along.x);
  const middle: PaperPoint = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const candidates = textsFor(subject, index).flatMap(({ text, cost }) =>
    [steep, !steep].flatMap((upright) => {
      const common = { text, height: HEIGHT, anchor: 'middle', upright, bold: true, clear: true } as const;
      const own = boxOf({ ...common, x: 0, y: 0 });
      const reach = ((own.right - own.left) * Math.abs(out.x) + (own.bottom - own.top) * Math.abs(out.y)) / 2 + FROM_WALL;
      const beyond = Math.max(0, (upright ? own.bottom - own.top : own.right - own.left) - length);
      const steps = Math.min(STEPS, Math.floor(length / 2 / STEP));
      return FURTHER.flatMap((further) =>
        Array.from({ length: 2 * steps + 1 }, (_, i) => {
          const move = i - steps;
          const [away, shift] = [reach + further, move * STEP];
          const x = middle.x + out.x * away + along.x * shift;
          const y = middle.y + out.y * away + along.y * shift;
          return {
            label: { ...common, x, y },
            box: { left: own.left + x, right: own.right + x, top: own.top + y, bottom: own.bottom + y },
            start: cost + beyond * COST.beyond + Math.abs(move) + further * COST.further + (upright === steep ? 0 : COST.turned),
          };
        }),
      );
    }),
  );
  return candidates.sort((a, b) => a.start - b.start);
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
