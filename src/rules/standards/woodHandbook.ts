import { type Clause, type FormulaClause, formula } from '../clause.js';

const screws: Clause = {
  id: 'wood-handbook-8-screws',
  source: {
    standard: 'Wood Handbook, Forest Products Laboratory',
    clause: 'chapter 8, as restated on an engineering page',
    standing: 'secondary',
  },
  governs: 'mean greatest withdrawal of a wood screw in tests',
};

const nails: Clause = {
  id: 'wood-handbook-8-nails',
  source: {
    standard: 'Wood Handbook, Forest Products Laboratory',
    clause: 'chapter 8, as restated on an engineering page',
    standing: 'secondary',
  },
  governs: 'mean greatest withdrawal of a bright nail in tests',
};

/** p = 108.25 G^2 D L, N and mm; 15,700 in lb and inches. A mean of tests, not a design value. */
export const screwUltimate: FormulaClause<(g: number, d: number, l: number) => number> = /* @__PURE__ */ formula(
  screws,
  (g, d, l) => 108.25 * g * g * d * l,
);

/** p = 54.12 G^2.5 D L, N and mm; 7,850 in lb and inches, G at 12 % moisture. One page misprints the exponent as 2. */
export const nailUltimate: FormulaClause<(g: number, d: number, l: number) => number> = /* @__PURE__ */ formula(
  nails,
  (g, d, l) => 54.12 * g * g * Math.sqrt(g) * d * l,
);
