import type { Clause } from '../clause.js';

/** Least load at which the head of a nail is pulled through 1/2 in board in the test of ASTM C473, N (77 lbf). */
export const nailPull: Clause & { readonly load: number } = {
  id: 'astm-c36-nail-pull',
  source: { standard: 'ASTM C36', clause: 'nail pull by ASTM C473, as quoted in an industry note', standing: 'secondary' },
  governs: 'pull-through of a nail head in 1/2 in board',
  load: 343,
};
