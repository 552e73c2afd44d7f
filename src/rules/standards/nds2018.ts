import { type Clause, type FormulaClause, formula } from '../clause.js';

const screws: Clause = {
  id: 'nds-2018-12.2.2',
  source: { standard: 'NDS', edition: '2018', clause: '12.2.2, as restated on an engineering page', standing: 'secondary' },
  governs: 'allowable withdrawal of a wood screw',
};

const nails: Clause = {
  id: 'nds-2018-12.2.3',
  source: { standard: 'NDS', edition: '2018', clause: '12.2.3, as in a solved example of its publisher', standing: 'secondary' },
  governs: 'allowable withdrawal of a smooth nail',
};

const durations: Clause = {
  id: 'nds-2018-2.3.2',
  source: { standard: 'NDS', edition: '2018', clause: '2.3.2', standing: 'memory' },
  governs: 'load that stays: a hung ceiling is permanent',
};

/** W = 2850 G^2 D: lb for each inch of thread, D in inches, G the oven-dry specific gravity. */
export const woodScrewWithdrawal: FormulaClause<(g: number, d: number) => number> = /* @__PURE__ */ formula(
  screws,
  (g, d) => 2850 * g * g * d,
);

/** W = 1380 G^2.5 D: lb for each inch of penetration. Some pages print the exponent as 2. */
export const nailWithdrawal: FormulaClause<(g: number, d: number) => number> = /* @__PURE__ */ formula(
  nails,
  (g, d) => 1380 * g * g * Math.sqrt(g) * d,
);

/** C_D of permanent load. */
export const permanentDuration: FormulaClause<() => number> = /* @__PURE__ */ formula(durations, () => 0.9);
