import type { Finding, Joist, LayoutCheck, PieceToCheck, Point } from 'soffitwright';
import type { CheckByHand } from './layoutsByHand.js';

/** One thing done to a good layout, and what must be said of it. Values are worked out by hand from the outlines. */
export interface Damage {
  readonly name: string;
  readonly hurt: () => CheckByHand;
  readonly finds: {
    readonly code: string;
    readonly severity?: Finding['severity'];
    readonly value?: number;
    readonly limit?: number;
    readonly unit?: string;
    /** Of the source: a part of the standard's name. */
    readonly standard?: string;
    readonly where?: Finding['where'];
    /** Part of the message. */
    readonly says?: string;
  };
}

export const PRACTICE = 'common practice';
export const SPECIFICATION = 'National Building Specification';
export const GEOMETRY = 'geometry of the layout';
export const GIVEN = 'arithmetic on the values given';

export type Change = (piece: PieceToCheck) => PieceToCheck;

export const withLayout = (check: CheckByHand, layout: Partial<LayoutCheck['layout']>): CheckByHand => ({
  ...check,
  layout: { ...check.layout, ...layout },
});

export const changed = (check: CheckByHand, changes: Readonly<Record<string, Change>>): CheckByHand =>
  withLayout(check, { pieces: check.layout.pieces.map((piece) => changes[piece.id]?.(piece) ?? piece) });

export const without = (check: CheckByHand, id: string): CheckByHand =>
  withLayout(check, { pieces: check.layout.pieces.filter((piece) => piece.id !== id) });

export const added = (check: CheckByHand, ...pieces: PieceToCheck[]): CheckByHand =>
  withLayout(check, { pieces: [...check.layout.pieces, ...pieces] });

export const corner =
  (change: (point: Point) => Point): Change =>
  (piece) => ({ ...piece, outline: piece.outline.map(change) });

/** Every corner at this coordinate goes to that one. */
export const x = (from: number, to: number): Change => corner((point) => (point.x === from ? { ...point, x: to } : point));
export const y = (from: number, to: number): Change => corner((point) => (point.y === from ? { ...point, y: to } : point));
export const shifted = (dx: number, dy: number): Change => corner((point) => ({ x: point.x + dx, y: point.y + dy }));
export const onBoard =
  (board: string): Change =>
  (piece) => ({ ...piece, board });

export const joistsLike = (check: CheckByHand, change: (joist: Joist) => readonly Joist[]): CheckByHand => ({
  ...check,
  joists: check.joists.flatMap(change),
});

export const damage = (name: string, hurt: () => CheckByHand, finds: Damage['finds']): Damage => ({ name, hurt, finds });

export const hole =
  (...holes: Point[][]): Change =>
  (piece) => ({ ...piece, holes });

/** Mirrored in its own box along the row. */
export function mirroredWithin(piece: PieceToCheck): PieceToCheck {
  const xs = piece.outline.map((point) => point.x);
  const sum = Math.min(...xs) + Math.max(...xs);
  return { ...piece, outline: piece.outline.map((point) => ({ x: sum - point.x, y: point.y })) };
}
