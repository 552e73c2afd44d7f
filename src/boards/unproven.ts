import { SURE } from '../joists/bearing.js';

/** Whether nobody has seen the timber where a board end is to go, or not well enough. */
export const isUnproven = (
  { known, sd, presence }: { readonly known: string; readonly sd: number; readonly presence: number },
  withinEdgeRules: number,
): boolean => known === 'inferred' || ((sd > 0 || presence < 1) && withinEdgeRules < SURE);
