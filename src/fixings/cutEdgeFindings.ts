import type { Piece } from '../boards/boardLayout.js';
import { frameOf } from '../joists/frame.js';
import { type Finding, finding } from '../rules/finding.js';
import { commonPractice } from '../rules/source.js';
import type { BoardStock } from '../survey/boardStock.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Direction } from '../survey/joist.js';
import { corners } from '../survey/outline.js';
import type { FixedLayout } from './layoutSchema.js';
import { type FixedPart, pieceParts } from './pieceParts.js';

/** Edges of two boards further apart than this do not meet, mm. */
const MEETING = 10;

/**
 * Cut edges in the middle of a ceiling that is to be taped. A tapered edge leaves the hollow that the tape lies in; a cut edge
 * has none, and its joint stands proud. Skimming covers either, and so nothing is said of it.
 *
 * @param parts - the parts of the ceiling: where two of them meet there is a bead and no tape
 */
export function cutEdgeFindings(
  { pieces }: FixedLayout,
  boards: readonly Pick<BoardStock, 'edge'>[],
  finish: 'skim' | 'tape',
  parts: readonly FixedPart[],
): Finding[] {
  if (finish === 'skim' || boards.every(({ edge }) => edge === 'square')) return [];
  const boxes = pieceParts(pieces, parts).map(({ piece, part }) => ({ part, ...boxOf(piece, part.direction) }));
  return boxes.flatMap((below) =>
    boxes.flatMap((above) => {
      const meets =
        below.part === above.part && Math.abs(above.low - below.high) <= toGrid(MEETING) && below.middle < above.middle;
      const [from, to] = [Math.max(below.near, above.near), Math.min(below.far, above.far)];
      if (!meets || from >= to || (below.piece.edges.high === 'bound' && above.piece.edges.low === 'bound')) return [];
      const { x, y } = frameOf(below.part.direction).back(fromGrid(Math.round((from + to) / 2)), fromGrid(below.high));
      const where = { pieces: [below.piece.id, above.piece.id], at: { x, y } };
      return [finding('cut-edge-taped', 'error', { where, source: commonPractice })];
    }),
  );
}

function boxOf(piece: Piece, direction: Direction) {
  const points = corners(piece.outline).map(frameOf(direction).into);
  const us = points.map(({ u }) => u);
  const vs = points.map(({ v }) => v);
  const [low, high] = [Math.min(...vs), Math.max(...vs)];
  return { piece, near: Math.min(...us), far: Math.max(...us), low, high, middle: low + high };
}
