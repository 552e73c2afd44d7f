/** One mistake in what the caller passed. */
export interface Problem {
  /** Stable; see the list of codes in the README. */
  readonly code: string;
  /** Where it is, as text: `room.outline[2].x`; empty for the whole input. */
  readonly path: string;
  readonly expected: string;
  readonly received: string;
  /** A sentence for a person; may change between versions. */
  readonly message: string;
}

/** Thrown when an input cannot be used; `problems` names every mistake that was found, not only the first. */
export class InputError extends Error {
  override readonly name = 'InputError';
  /** The code of the first problem. */
  readonly code: string;
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map((problem) => problem.message).join('\n'));
    this.code = problems[0]?.code ?? 'input';
    this.problems = problems;
  }
}

/**
 * Whether a caught value is an {@link InputError}, also one made by another copy of this package.
 *
 * @example
 * ```ts
 * import { isInputError, rectangle } from 'soffitwright';
 *
 * try {
 *   rectangle(3600, -3000);
 * } catch (error) {
 *   if (isInputError(error)) console.log(error.message);
 * }
 * // depth: expected more than 0, received -3000
 * ```
 */
export const isInputError = (error: unknown): error is InputError =>
  error instanceof Error && error.name === 'InputError' && Array.isArray((error as { problems?: unknown }).problems);

/** A problem with its sentence. */
export const problem = (code: string, path: string, expected: string, received: string): Problem => ({
  code,
  path,
  expected,
  received,
  message: `${path === '' ? 'input' : path}: expected ${expected}, received ${received}`,
});

/** Throws an {@link InputError} with these problems. */
export const refuse = (...problems: Problem[]): never => {
  throw new InputError(problems);
};

/** A value as it is shown in a problem: short, and never the whole input. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'string') return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value);
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (typeof value === 'bigint') return `${value}n`;
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}
