import type { FramePoint } from '../../joists/frame.js';
import { toGrid } from '../../survey/grid.js';
import { extentOf } from '../../survey/outline.js';
import type { Wall } from './laidCeiling.js';
import { lineAt, stretchesAt } from './stretchesAt.js';

/** A stretch of a wall in front of one end of a piece; grid steps. */
export interface FacedWall {
  /** Index of the side of the room. */
  readonly wall: number;
  readonly a: FramePoint;
  readonly b: FramePoint;
  readonly from: number;
  readonly to: number;
}

/** A wall further from a piece than this has something else in front of it, mm: more than any gap that is left, less than any row or piece. */
const IN_FRONT = 60;

/**
 * The walls in front of the low or high ends of an outline, those in a notch too, as far as each is in front of it; with corners
 * turned about by {@link turnedAbout}, of its low or high edge.
 */
export function wallsFaced(outline: readonly FramePoint[], walls: readonly Wall[], side: 'low' | 'high'): FacedWall[] {
  const { left, right, low, high } = extentOf(outline.map(({ u, v }) => ({ x: u, y: v })));
  const reach = toGrid(IN_FRONT);
  return walls.flatMap(([a, b], wall): FacedWall[] => {
    const [from, to] = [Math.max(low, Math.min(a.v, b.v)), Math.min(high, Math.max(a.v, b.v))];
    if (from >= to || Math.min(a.u, b.u) > right + reach || Math.max(a.u, b.u) < left - reach) return [];
    const isFaced = ([foot, head]: Band): boolean => {
      const level = Math.round((foot + head) / 2);
      const at = lineAt(a, b, level);
      return stretchesAt(outline, level).some(([start, end]) => {
        const own = side === 'low' ? start : end;
        const away = side === 'low' ? own - at : at - own;
        return away >= 0 && away <= reach && !walls.some((each) => standsBetween(each, level, at, own));
      });
    };
    return bandsOf(outline, from, to)
      .filter(isFaced)
      .map(([foot, head]) => ({ wall, a, b, from: foot, to: head }));
  });
}

/** Whether a wall stands between two places of a level. */
function standsBetween([a, b]: Wall, level: number, one: number, other: number): boolean {
  if (level <= Math.min(a.v, b.v) || level >= Math.max(a.v, b.v)) return false;
  const at = lineAt(a, b, level);
  return Math.min(one, other) < at && at < Math.max(one, other);
}

type Band = readonly [foot: number, head: number];

/** Between two levels, the bands of an outline in which no corner of it lies. */
export function bandsOf(outline: readonly FramePoint[], from: number, to: number): Band[] {
  const corners = outline.map(({ v }) => v).filter((v) => from < v && v < to);
  const levels = [...new Set([from, ...corners, to])].sort((a, b) => a - b);
  return levels.slice(1).map((head, i) => [levels[i], head]);
}

/** The two axes of the frame in each other's place. */
export const turnedAbout = ({ u, v }: FramePoint): FramePoint => ({ u: v, v: u });
