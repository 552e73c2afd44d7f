import { jointLine } from './jointLine.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Band } from './rowLayouts.js';
import { type RowPattern, WORD } from './rowPatterns.js';

/** For two neighbouring rows: per joist under a butt joint of the lower one, the joists that the upper one may not use, as bits. */
export type JointConflicts = readonly Int32Array[];

/** Words of bits for the joists of a room. */
export const wordsFor = ({ joists }: PlacementProblem): number => Math.max(1, Math.ceil(joists.length / WORD));

/**
 * Butt joints of neighbouring rows keep the stagger and never lie on one joist; joints of rows in different parts of the ceiling do
 * not meet. Raked joints keep it where the rows meet, and so do their middles.
 */
export function jointConflicts(problem: PlacementProblem, below: Band, above: Band): JointConflicts {
  const words = wordsFor(problem);
  const none = new Int32Array(words);
  if (below.part !== above.part) return problem.joists.map(() => none);
  const { joists } = problem.parts[above.part];
  const high = joists.map((joist) => jointLine(problem.rules, joist, above));
  const conflicts = problem.joists.map(() => none);
  for (const joist of joists) {
    const line = jointLine(problem.rules, joist, below);
    const bits = new Int32Array(words);
    for (const { joist: other, at, low } of high) {
      const apart = Math.min(Math.abs(at - line.at), Math.abs(low - line.high));
      if (other.index !== joist.index && apart >= problem.rules.stagger) continue;
      bits[Math.floor(other.index / WORD)] |= 1 << (other.index % WORD);
    }
    conflicts[joist.index] = bits;
  }
  return conflicts;
}

/** The joists that a row above this pattern may not use. */
export function blockedBy(conflicts: JointConflicts, { joists, bits }: RowPattern): Int32Array {
  const blocked = new Int32Array(bits.length);
  for (const joist of joists) for (let word = 0; word < blocked.length; word++) blocked[word] |= conflicts[joist][word];
  return blocked;
}
