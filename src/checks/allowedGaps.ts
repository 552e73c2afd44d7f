import { GRID_PER_MM, toGrid } from '../survey/grid.js';
import { type Ceiling, gridRule, isTight, perimeterGap, TAKEN_UP } from './ceiling.js';
import type { Side, Span } from './crossSections.js';
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
  const bounds = [...ceiling.sides, ...ceiling.openings.flatMap(segmentsOf)].map(boundOf);
  const tight = ceiling.about.map((facts) => isTight(facts, jointGap));
  const isTightPiece = ({ solid }: Span): boolean => solid.kind === 'piece' && tight[solid.index];
  const endGap = (left: Span, right: Span): number =>
    isTightPiece(left) || isTightPiece(right) ? Math.max(jointGap, toGrid(TAKEN_UP)) : jointGap;
  const besideWall = ({ corners }: Cell, limit: number): boolean => isBeside(corners, bounds, limit);
  return {
    betweenRows: (cell) =>
      (isBoard(cell.left) && isBoard(cell.right) && squareWidth(cell) <= edgeGap + HAIR) || besideWall(cell, greatest),
    betweenEnds: (cell) => {
      const crossing = cell.left.solid.kind === 'filled' || cell.right.solid.kind === 'filled';
      const between = isBoard(cell.left) && isBoard(cell.right);
      const gap = crossing ? Math.max(jointGap, toGrid(TAKEN_UP)) : endGap(cell.left, cell.right);
      if (between && squareWidth(cell) <= gap + HAIR) return true;
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

const segmentsOf = ({ rings }: Solid): Segment[] =>
  rings.flatMap((ring) => ring.map((from, i) => ({ from, to: ring[(i + 1) % ring.length] })));

const boundOf = ({ from, to }: Segment): Bound => ({ from, to, length: lengthOf(from, to), box: boxOf([from, to]) });

const lengthOf = (from: GridPoint, to: GridPoint): number => {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  return Math.sqrt(du * du + dv * dv);
};

/** The width of a gap between two boards square to the steeper of its sides. */
function squareWidth({ left, right, width }: Cell): number {
  const steepness = ({ from, to }: Side): number => (from.u === to.u ? 1 : (to.v - from.v) / lengthOf(from, to));
  return Math.round(width * Math.max(steepness(left.right), steepness(right.left)));
}

/**
 * Whether every place of a cell is in the strip of some wall. Where walls meet, a cell may lie in the strips of both and in
 * neither alone: it is halved until it does not, or is so small that it no longer matters.
 */
function isBeside(corners: readonly GridPoint[], bounds: readonly Bound[], limit: number): boolean {
  if (bounds.some((bound) => corners.every((corner) => isWithin(corner, bound, limit)))) return true;
  if (!corners.every((corner) => bounds.some((bound) => isWithin(corner, bound, limit)))) return false;
  const [a, b, c, d] = corners;
  const [across, along] = [Math.max(extent(a, b), extent(d, c)), Math.max(extent(a, d), extent(b, c))];
  if (Math.max(across, along) <= Math.max(limit, GRID_PER_MM)) return true;
  const halves =
    across > along
      ? [
          [a, between(a, b), between(d, c), d],
          [between(a, b), b, c, between(d, c)],
        ]
      : [
          [a, b, between(b, c), between(a, d)],
          [between(a, d), between(b, c), c, d],
        ];
  return halves.every((half) => isBeside(half, bounds, limit));
}

const extent = (a: GridPoint, b: GridPoint): number => Math.max(Math.abs(b.u - a.u), Math.abs(b.v - a.v));

const between = (a: GridPoint, b: GridPoint): GridPoint => ({ u: Math.round((a.u + b.u) / 2), v: Math.round((a.v + b.v) / 2) });

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
