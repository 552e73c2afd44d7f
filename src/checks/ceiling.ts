import { type Frame, frameOf } from '../joists/frame.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import type { BoardStock } from '../survey/boardStock.js';
import { toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Point } from '../survey/point.js';
import type { Opening, Room } from '../survey/room.js';
import type { LayoutToCheck, PieceToCheck } from './layoutToCheck.js';
import { type RoomSide, roomSides } from './roomSides.js';
import { type Box, boxOf, circleRing, ringOf, type Solid } from './solid.js';

/** What the boards of a layout are cut by, wherever they lie. */
export interface Work {
  readonly rules: RuleSet;
  readonly about: readonly PieceFacts[];
  readonly given: { readonly room: Room; readonly layout: LayoutToCheck };
}

/**
 * A ceiling, or a part of one whose joists run their own way, with everything that its pieces are checked against; on the grid and
 * in the frame of its joists.
 */
export interface Ceiling extends Work {
  readonly frame: Frame;
  /** Id of the zone; absent for what lies outside all zones. */
  readonly zone?: string;
  readonly joists: readonly Joist[];
  /** What is boarded by these joists. */
  readonly room: Solid;
  /** Side by side of its rings. */
  readonly sides: readonly RoomSide[];
  /** The whole room, where this is a part of it. */
  readonly whole?: Solid;
  readonly openings: readonly Solid[];
  readonly cores: readonly Solid[];
  readonly pieces: readonly Solid[];
}

/** What is known of a piece without looking at the others. */
export interface PieceFacts {
  readonly id: string;
  readonly claim: PieceToCheck;
  readonly frame: Frame;
  readonly box: Box;
  /** The stock its board is cut from; absent when the layout does not say. */
  readonly stock?: BoardStock;
}

/** Furthest that a board up to this much too short is stretched over its place, mm; common practice, no source. */
export const TAKEN_UP = 5;

/** A part of the ceiling with joists of its own, or all of it. */
export interface Part {
  readonly zone?: string;
  readonly outline: readonly Point[];
  /** Other parts that lie wholly within this one. */
  readonly holes?: readonly (readonly Point[])[];
  readonly joists: readonly Joist[];
  readonly direction: Direction;
}

export function ceilingOf(
  given: Work['given'],
  part: Part,
  pieces: readonly PieceToCheck[],
  boards: readonly BoardStock[],
  rules: RuleSet,
): Ceiling {
  const frame = frameOf(part.direction);
  const stockOf = new Map(boards.map((board) => [board.id, board]));
  const boardOf = new Map(given.layout.boards.map((board) => [board.id, stockOf.get(board.stock)]));
  const tolerance = numberOf(rules, 'cut.tolerance');
  const openings = given.room.openings ?? [];
  const sides = roomSides(given.room, part, frame);
  const solids = pieces.map((piece, index): Solid => {
    return { kind: 'piece', index, rings: [piece.outline, ...(piece.holes ?? [])].map((outline) => ringOf(outline, frame)) };
  });
  return {
    frame,
    ...(part.zone !== undefined && { zone: part.zone }),
    joists: part.joists,
    rules,
    room: { kind: 'room', index: 0, rings: sides.map((ring) => ring.map(({ from }) => from)) },
    sides: sides.flat(),
    ...(part.outline !== given.room.outline && {
      whole: { kind: 'whole', index: 0, rings: [ringOf(given.room.outline, frame)] },
    }),
    openings: openings.map((opening, index) => ({ kind: 'opening', index, rings: [clearing(opening, frame)] })),
    cores: openings.flatMap((opening, index) => core(opening, frame, tolerance).map((ring) => solidCore(index, ring))),
    pieces: solids,
    about: pieces.map((piece, index) => {
      const stock = boardOf.get(piece.board);
      return { id: piece.id, claim: piece, frame, box: boxOf(solids[index].rings[0]), ...(stock && { stock }) };
    }),
    given,
  };
}

const solidCore = (index: number, ring: Solid['rings'][number]): Solid => ({ kind: 'core', index, rings: [ring] });

/** Where no board need be. */
const clearing = (opening: Opening, frame: Frame): Solid['rings'][number] =>
  'outline' in opening ? ringOf(opening.outline, frame) : circleRing(opening.centre, opening.diameter / 2, frame, true);

/** Where no board may be: a round hole is allowed the accuracy of a cut, since it is drawn with straight sides. */
function core(opening: Opening, frame: Frame, tolerance: number): Solid['rings'] {
  if ('outline' in opening) return [ringOf(opening.outline, frame)];
  const radius = opening.diameter / 2 - tolerance;
  return radius > tolerance ? [circleRing(opening.centre, radius, frame, false)] : [];
}

/** A rule and its number on the grid. */
export interface GridRule {
  readonly steps: number;
  readonly rule: RuleValue;
}

export function gridRule(rules: RuleSet, key: Parameters<typeof lookUp>[1]): GridRule {
  const rule = lookUp(rules, key) as RuleValue;
  return { steps: toGrid(rule.value ?? 0), rule };
}

/** How wide the gap to a wall may be, grid steps. A bare number is met to the accuracy of a cut. */
export interface PerimeterGap {
  readonly least: number;
  readonly greatest: number;
  /** Greatest where a board that has no spare length ends. */
  readonly greatestTight: number;
  readonly rule: RuleValue;
}

export function perimeterGap(rules: RuleSet): PerimeterGap {
  const rule = lookUp(rules, 'perimeter.gap') as RuleValue;
  const nominal = rule.value ?? 0;
  const tolerance = numberOf(rules, 'cut.tolerance');
  const { least, greatest } = rule.range ?? { least: Math.max(0, nominal - tolerance), greatest: nominal + tolerance };
  return {
    least: toGrid(least),
    greatest: toGrid(greatest),
    greatestTight: toGrid(Math.max(greatest, nominal + TAKEN_UP)),
    rule,
  };
}

/** Whether a piece has no length to spare on its board: shorter boards would leave a wider gap. */
export function isTight({ claim, box, stock }: PieceFacts, jointGap: number): boolean {
  if (claim.tight === true) return true;
  return stock !== undefined && box.u1 - box.u0 >= toGrid(stock.length) - jointGap;
}
