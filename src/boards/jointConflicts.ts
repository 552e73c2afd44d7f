import type { PlacementProblem } from './placementProblem.js';
import type { Band } from './rowLayouts.js';

/** Joists whose bits share a word. */
export const WORD = 30;

/** For two neighbouring rows: per joist under a butt joint of the lower one, the joists that the upper one may not use, as bits. */
export type JointConflicts = readonly Int32Array[];

/** Words of bits for the joists of a room. */
export const wordsFor = ({ joists }: PlacementProblem): number => Math.max(1, Math.ceil(joists.length / WORD));

/** Butt joints of neighbouring rows keep the stagger and never lie on one joist. */
export function jointConflicts(problem: PlacementProblem, below: Band, above: Band): JointConflicts {
  const words = wordsFor(problem);
  const middle = (band: Band): number => Math.round((band.low + band.high) / 2);
  const high = problem.joists.map((joist) => joist.centre(middle(above)));
  return problem.joists.map((joist, here) => {
    const at = joist.centre(middle(below));
    const bits = new Int32Array(words);
    for (const [there, other] of high.entries()) {
      if (there !== here && Math.abs(other - at) >= problem.rules.stagger) continue;
      bits[Math.floor(there / WORD)] |= 1 << (there % WORD);
    }
    return bits;
  });
}

/** The joists that a row above this pattern may not use. */
export function blockedBy(
  conflicts: JointConflicts,
  { joists, bits }: { readonly joists: readonly number[]; readonly bits: Int32Array },
): Int32Array {
  const blocked = new Int32Array(bits.length);
  for (const joist of joists) for (let word = 0; word < blocked.length; word++) blocked[word] |= conflicts[joist][word];
  return blocked;
}
