import { isInputError } from '../survey/inputError.js';
import { isInfeasibleError, type PlacementAttempt } from './infeasibleError.js';

/** Calls a function that places boards; what goes wrong with the job is returned and not thrown. */
export function attemptPlacement<T>(call: () => T): PlacementAttempt<T> {
  try {
    return { ok: true, value: call() };
  } catch (error) {
    if (isInputError(error)) return { ok: false, reason: 'input', problems: error.problems };
    if (isInfeasibleError(error)) {
      return { ok: false, reason: 'infeasible', findings: error.findings, relaxations: error.relaxations };
    }
    throw error;
  }
}
