import type { FramePoint } from '../../joists/frame.js';
import { toGrid } from '../../survey/grid.js';
import { extentOf } from '../../survey/outline.js';
import type { Wall } from './laidCeiling.js';
import { lineAt, stretchesAt } from './stretchesAt.js';

/** A wall in front of one end of a piece, and from where to where along it; grid steps. */
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

/** The walls in front of the low or high ends of an outline, those in a notch too; with corners turned about by {@link turnedAbout}, of its low or high edge. */
export function wallsFaced(outline: readonly FramePoint[], walls: readonly Wall[], side: 'low' | 'high'): FacedWall[] {
  const { left, right, low, high } = extentOf(outline.map(({ u, v }) => ({ x: u, y: v })));
  const reach = toGrid(IN_FRONT);
  return walls.flatMap(([a, b], wall): FacedWall[] => {
    const [from, to] = [Math.max(low, Math.min(a.v, b.v)), Math.min(high, Math.max(a.v, b.v))];
    if (from >= to || Math.min(a.u, b.u) > right + reach || Math.max(a.u, b.u) < left - reach) return [];
    const level = Math.round((from + to) / 2);
    const at = lineAt(a, b, level);
    const isFaced = stretchesAt(outline, level).some(([start, end]) => {
      const away = side === 'low' ? start - at : at - end;
      return away >= 0 && away <= reach;
    });
    return isFaced ? [{ wall, a, b, from, to }] : [];
  });
}

/** The two axes of the frame in each other's place. */
export const turnedAbout = ({ u, v }: FramePoint): FramePoint => ({ u: v, v: u });
