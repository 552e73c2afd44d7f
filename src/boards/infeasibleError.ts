import type { Finding } from '../rules/finding.js';
import type { Attempt } from '../survey/attempt.js';

/** One change that is enough by itself to make a layout possible. */
export interface Relaxation {
  readonly kind: 'rule' | 'board' | 'joist';
  /** The rule's key, or the id of the board. */
  readonly key?: string;
  /** The rule's new value in its unit, the length of board in mm, or where a joist would have to be (plan coordinate, mm). */
  readonly value: number;
  /** Short, for a person: "stagger 1200". */
  readonly message: string;
}

/** Thrown when no layout meets the rules. */
export class InfeasibleError extends Error {
  override readonly name = 'InfeasibleError';
  readonly findings: readonly Finding[];
  /** Each is enough by itself. */
  readonly relaxations: readonly Relaxation[];

  constructor(findings: readonly Finding[], relaxations: readonly Relaxation[]) {
    super(
      [
        ...findings.map((each) => each.message),
        ...(relaxations.length > 0 ? [`Would do: ${relaxations.map((each) => each.message).join('; ')}.`] : []),
      ].join('\n'),
    );
    this.findings = findings;
    this.relaxations = relaxations;
  }
}

/**
 * Whether a caught value is an {@link InfeasibleError}, also one made by another copy of this package.
 *
 * @example
 * ```ts
 * import { isInfeasibleError, placeBoards, rectangle } from 'soffitwright';
 *
 * try {
 *   placeBoards({
 *     room: { outline: rectangle(3600, 3000) },
 *     joists: { direction: 'y', positions: [300, 3300], width: 47 },
 *     boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 *   });
 * } catch (error) {
 *   console.log(isInfeasibleError(error));
 * }
 * // true
 * ```
 */
export const isInfeasibleError = (error: unknown): error is InfeasibleError =>
  error instanceof Error && error.name === 'InfeasibleError' && Array.isArray((error as { relaxations?: unknown }).relaxations);

/** What a `try…` function that places boards returns when no layout meets the rules. */
export interface Infeasible {
  readonly ok: false;
  readonly reason: 'infeasible';
  readonly findings: readonly Finding[];
  readonly relaxations: readonly Relaxation[];
}

/** An attempt that may also fail because no layout meets the rules. */
export type PlacementAttempt<T> = Attempt<T, Infeasible>;
