import { toGrid } from '../survey/grid.js';
import { type Ceiling, gridRule, isTight, perimeterGap, TAKEN_UP } from './ceiling.js';
import type { Span } from './crossSections.js';
import { distance, type Segment } from './distance.js';
import type { Cell } from './emptyCells.js';
import { HAIR } from './hair.js';
import { type Box, boxOf, type GridPoint, type Solid } from './solid.js';

/** Tells whether a cell of a section may stay empty. */
export interface AllowedGaps {
  /** Between long edges, and along walls; the cell turned back from the view along the joists. */
  readonly betweenRows: (cell: Cell) => boolean;
  /** Between board ends, and along walls. */
  readonly betweenEnds: (cell: Cell) => boolean;
  /** Distance from the nearest wall or opening of the corner that is furthest from one, grid steps. */
  readonly reach: (cells: readonly Cell[]) => number;
  /** How far apart these two ends may be, grid steps. */
  readonly endGap: (left: Span, right: Span) => number;
}

/** A side of the room or of an opening. */
interface Bound extends Segment {
  readonly length: number;
  readonly box: Box;
}

export function allowedGaps(ceiling: Ceiling): AllowedGaps {
  const { greatest, greatestTight } = perimeterGap(ceiling.rules);
  const jointGap = gridRule(ceiling.rules, 'joint.gap').steps;
  const edgeGap = gridRule(ceiling.rules, 'edgeJoint.gap').steps;
  const bounds = [ceiling.room, ...ceiling.openings].flatMap(boundsOf);
  const tight = ceiling.about.map((facts) => isTight(facts, jointGap));
  const isTightPiece = ({ solid }: Span): boolean => solid.kind === 'piece' && tight[solid.index];
  const endGap = (left: Span, right: Span): number =>
    isTightPiece(left) || isTightPiece(right) ? Math.max(jointGap, toGrid(TAKEN_UP)) : jointGap;
  const besideWall = (cell: Cell, limit: number): boolean =>
    bounds.some((segment) => cell.corners.every((corner) => isWithin(corner, segment, limit)));
  return {
    betweenRows: (cell) =>
      (isBoard(cell.left) && isBoard(cell.right) && cell.width <= edgeGap + HAIR) || besideWall(cell, greatest),
    betweenEnds: (cell) => {
      const crossing = cell.left.solid.kind === 'filled' || cell.right.solid.kind === 'filled';
      const between = isBoard(cell.left) && isBoard(cell.right);
      const gap = crossing ? Math.max(jointGap, toGrid(TAKEN_UP)) : endGap(cell.left, cell.right);
      if (between && cell.width <= gap + HAIR) return true;
      return besideWall(cell, isTightPiece(cell.left) || isTightPiece(cell.right) ? greatestTight : greatest);
    },
    reach: (cells) =>
      Math.max(
        ...cells.flatMap(({ corners }) => corners.map((corner) => Math.min(...bounds.map((each) => distance(corner, each))))),
      ),
    endGap,
  };
}

const isBoard = ({ solid }: Span): boolean => solid.kind === 'piece' || solid.kind === 'filled';

const boundsOf = ({ rings }: Solid): Bound[] =>
  rings.flatMap((ring) =>
    ring.map((from, i) => {
      const to = ring[(i + 1) % ring.length];
      const [du, dv] = [to.u - from.u, to.v - from.v];
      return { from, to, length: Math.sqrt(du * du + dv * dv), box: boxOf([from, to]) };
    }),
  );

/** Whether a corner is in the strip of a wall: no further from its line than the limit, and not far beyond its ends. */
function isWithin({ u, v }: GridPoint, { from, to, length, box }: Bound, limit: number): boolean {
  const reach = 3 * limit + HAIR;
  if (u < box.u0 - reach || u > box.u1 + reach || v < box.v0 - reach || v > box.v1 + reach) return false;
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const [pu, pv] = [u - from.u, v - from.v];
  if (Math.round(Math.abs(du * pv - dv * pu) / length) > limit + HAIR) return false;
  const along = Math.round((du * pu + dv * pv) / length);
  return along >= -2 * limit - HAIR && along <= Math.round(length) + 2 * limit + HAIR;
}
