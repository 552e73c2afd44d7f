import { toGrid } from '../survey/grid.js';
import type { FixingSpacing } from './fixingSpacing.js';
import { perLine } from './fixingsPerLine.js';

/** How many, between as few and as many as the distance from the edges allows. */
export interface FixingCount {
  /** With the first and last screw as far in as the rules let them float. */
  readonly least: number;
  /** With the first and last screw at the least distance from the edge. */
  readonly most: number;
}

/** Screws of one whole board over even joists. */
export interface FixingCounts {
  /** Joists under the board. */
  readonly lines: number;
  /** On a joist in the middle of the board. */
  readonly line: FixingCount;
  /** Along a board end, with the closer spacing there. */
  readonly endLine: FixingCount;
  /** With every line as in the middle. */
  readonly board: FixingCount;
  /** With the closer spacing at both ends. */
  readonly boardWithEnds: FixingCount;
}

/** A whole board over even joists; mm. */
interface Board {
  readonly boardWidth: number;
  readonly boardLength: number;
  /** 0: one joist alone. */
  readonly joistSpacing: number;
}

/** Screws of a board, its ends on joists. `floating`: how far the first screw may be from the edge where that saves one, mm. */
export function countsOf(board: Board, { field, boardEnd, boundEdgeDistance }: FixingSpacing, floating: number): FixingCounts {
  const { boardWidth, boardLength, joistSpacing } = board;
  const lines = joistSpacing > 0 ? Math.floor(toGrid(boardLength) / toGrid(joistSpacing)) + 1 : 1;
  const on = (apart: number): FixingCount => countBetween(boardWidth, apart, boundEdgeDistance, floating);
  const [line, endLine] = [on(field), on(boardEnd)];
  const ends = Math.min(lines, 2);
  const total = (which: 'least' | 'most'): number => (lines - ends) * line[which] + ends * endLine[which];
  return {
    lines,
    line,
    endLine,
    board: timesLines(line, lines),
    boardWithEnds: { least: total('least'), most: total('most') },
  };
}

export const timesLines = ({ least, most }: FixingCount, lines: number): FixingCount => ({
  least: lines * least,
  most: lines * most,
});

/** Screws across a board with the first and last as near its edges as they may be, and as far. */
export function countBetween(width: number, spacing: number, nearest: number, farthest: number): FixingCount {
  const count = (edgeDistance: number): number => perLine({ width, spacing, edgeDistance }).count;
  const most = count(nearest);
  return { least: Math.min(most, count(Math.max(nearest, Math.min(farthest, width / 2)))), most };
}
