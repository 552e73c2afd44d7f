import type { Section, Span } from './crossSections.js';
import { HAIR } from './hair.js';
import type { GridPoint } from './solid.js';

/** A part of the ceiling with nothing in it, between two things of one section. */
export interface Cell {
  /** Foot from left to right, then head from right to left. */
  readonly corners: readonly [GridPoint, GridPoint, GridPoint, GridPoint];
  /** What bounds it: the room's own side where `kind` is `room`. */
  readonly left: Span;
  readonly right: Span;
  /** The wider of foot and head, grid steps. */
  readonly width: number;
}

/** What lies between the things of a section, inside the room. */
export function emptyCells({ low, high, spans }: Section): Cell[] {
  const things = spans.filter(({ solid: { kind } }) => kind === 'piece' || kind === 'opening' || kind === 'filled');
  return spans.filter(({ solid }) => solid.kind === 'room').flatMap((room) => partsBeside(room, things, low, high));
}

interface Place {
  readonly low: number;
  readonly high: number;
  readonly by: Span;
}

const further = (a: Place, b: Place): boolean => a.low + a.high > b.low + b.high;

/** The parts of a span that none of these things cover; things in order from left to right. */
export function partsBeside(room: Span, things: readonly Span[], low: number, high: number): Cell[] {
  const cells: Cell[] = [];
  const end: Place = { low: room.rightLow, high: room.rightHigh, by: room };
  let reached: Place = { low: room.leftLow, high: room.leftHigh, by: room };
  const emptyTo = (next: Place): void => {
    const [foot, head] = [Math.max(0, next.low - reached.low), Math.max(0, next.high - reached.high)];
    if (Math.max(foot, head) <= HAIR || !further(next, reached)) return;
    cells.push({
      corners: [
        { u: reached.low, v: low },
        { u: reached.low + foot, v: low },
        { u: reached.high + head, v: high },
        { u: reached.high, v: high },
      ],
      left: reached.by,
      right: next.by,
      width: Math.max(foot, head),
    });
  };
  for (const thing of things) {
    const start: Place = { low: thing.leftLow, high: thing.leftHigh, by: thing };
    const stop: Place = { low: thing.rightLow, high: thing.rightHigh, by: thing };
    if (!further(stop, reached)) continue;
    if (!further(end, start)) break;
    emptyTo(start);
    reached = stop;
  }
  if (further(end, reached)) emptyTo(end);
  return cells;
}
