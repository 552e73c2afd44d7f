import type { BoardStock, Direction, Point } from 'soffitwright';
import { boardOf, Draw } from './rooms.js';
import { TURNS } from './turnedAbout.js';

/** A room with a step in its far wall, to lay boards in. */
export interface SteppedRoom {
  readonly shape: keyof typeof SHAPES;
  readonly room: { readonly outline: readonly Point[] };
  readonly joists: { readonly direction: Direction; readonly positions: readonly number[]; readonly width: number };
  readonly boards: readonly BoardStock[];
}

/** A stretch of the far wall: how long it is, and how far from the near wall. */
type Step = readonly [length: number, depth: number];

/** Least width of an alcove and of the stem of a T, mm. */
const [ALCOVE, STEM] = [400, 1200];

const SHAPES = {
  L: (draw: Draw, w: number, d: number): Step[] => {
    const [a, b] = [share(draw, w, 25, 60), share(draw, d, 25, 60)];
    return [
      [w - a, d],
      [a, d - b],
    ];
  },
  T: (draw: Draw, w: number, d: number): Step[] => {
    const stem = Math.max(STEM, share(draw, w, 30, 55));
    const [before, b] = [draw.between(ALCOVE, w - stem - ALCOVE), share(draw, d, 25, 60)];
    return [
      [before, d - b],
      [stem, d],
      [w - stem - before, d - b],
    ];
  },
  breast: (draw: Draw, w: number, d: number): Step[] => {
    const breast = draw.between(900, 1600);
    const before = draw.between(ALCOVE, w - breast - ALCOVE);
    return [
      [before, d],
      [breast, d - draw.between(300, 600)],
      [w - breast - before, d],
    ];
  },
};

const share = (draw: Draw, of: number, least: number, greatest: number): number =>
  Math.round((of * draw.between(least, greatest)) / 100);

/** From the near wall round to a far wall in steps. */
function outlineTo(steps: readonly Step[]): Point[] {
  let x = 0;
  const far = steps.flatMap(([length, depth]) => {
    x += length;
    return [
      { x: x - length, y: depth },
      { x, y: depth },
    ];
  });
  return [{ x: 0, y: 0 }, { x, y: 0 }, ...far.reverse()];
}

/** Length and width of the usual boards, mm; the most usual stands twice. */
const SIZES = [
  [2400, 1200],
  [2400, 1200],
  [1800, 900],
  [3000, 1200],
] as const;

/**
 * One room for each seed: an L, a T or a room with a chimney breast, 2.5 to 7 m each way, turned and mirrored, its joists either
 * way; centres of 400, 450 or 600, in a third of the rooms each joist up to 5 off; whole mm.
 */
export function steppedRoom(seed: number): SteppedRoom {
  const draw = new Draw(seed);
  const shape = draw.from(['L', 'T', 'breast'] as const);
  const [, turn] = draw.from(TURNS);
  const outline = outlineTo(SHAPES[shape](draw, draw.between(2500, 7000), draw.between(2500, 7000))).map(turn);
  const direction = draw.from(['x', 'y'] as const);
  const across = outline.map(({ x, y }) => (direction === 'y' ? x : y));
  const spacing = draw.from([400, 400, 450, 600]);
  const stray = draw.from([0, 0, 5]);
  const positions: number[] = [];
  for (let at = Math.min(...across) + draw.between(30, spacing); at < Math.max(...across) - 30; at += spacing) {
    positions.push(at + draw.between(-stray, stray));
  }
  const [length, width] = draw.from(SIZES);
  return { shape, room: { outline }, joists: { direction, positions, width: 47 }, boards: [boardOf(length, width)] };
}
