import type { Frame } from '../joists/frame.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import type { BoardStock } from '../survey/boardStock.js';
import { toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Opening, Room } from '../survey/room.js';
import type { LayoutToCheck, PieceToCheck } from './layoutToCheck.js';
import { type Box, boxOf, circleRing, ringOf, type Solid } from './solid.js';

/** Everything that a layout is checked against, on the grid and in the frame of the joists. */
export interface Ceiling {
  readonly frame: Frame;
  readonly joists: readonly Joist[];
  readonly rules: RuleSet;
  readonly room: Solid;
  readonly openings: readonly Solid[];
  readonly cores: readonly Solid[];
  readonly pieces: readonly Solid[];
  readonly about: readonly PieceFacts[];
  readonly given: { readonly room: Room; readonly layout: LayoutToCheck };
}

/** What is known of a piece without looking at the others. */
export interface PieceFacts {
  readonly id: string;
  readonly claim: PieceToCheck;
  readonly box: Box;
  /** The stock its board is cut from; absent when the layout does not say. */
  readonly stock?: BoardStock;
}

/** Furthest that a board up to this much too short is stretched over its place, mm; common practice, no source. */
export const TAKEN_UP = 5;

export function ceilingOf(
  room: Room,
  layout: LayoutToCheck,
  boards: readonly BoardStock[],
  joists: readonly Joist[],
  frame: Frame,
  rules: RuleSet,
): Ceiling {
  const stockOf = new Map(boards.map((board) => [board.id, board]));
  const boardOf = new Map(layout.boards.map((board) => [board.id, stockOf.get(board.stock)]));
  const tolerance = numberOf(rules, 'cut.tolerance');
  const openings = room.openings ?? [];
  return {
    frame,
    joists,
    rules,
    room: { kind: 'room', index: 0, rings: [ringOf(room.outline, frame)] },
    openings: openings.map((opening, index) => ({ kind: 'opening', index, rings: [clearing(opening, frame)] })),
    cores: openings.flatMap((opening, index) => core(opening, frame, tolerance).map((ring) => solidCore(index, ring))),
    pieces: layout.pieces.map((piece, index) => ({
      kind: 'piece',
      index,
      rings: [piece.outline, ...(piece.holes ?? [])].map((outline) => ringOf(outline, frame)),
    })),
    about: layout.pieces.map((piece) => {
      const stock = boardOf.get(piece.board);
      return { id: piece.id, claim: piece, box: boxOf(ringOf(piece.outline, frame)), ...(stock && { stock }) };
    }),
    given: { room, layout },
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
