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

const ovenDryNails: Clause = {
  id: 'fpl-technical-note-236',
  source: { standard: 'Forest Products Laboratory, Technical Note 236', edition: '1958', standing: 'read' },
  governs: 'mean greatest withdrawal of a nail in tests, by oven-dry specific gravity',
};

const share: Clause = {
  id: 'allowable-share-of-nails',
  source: { standard: 'engineering page on nails, metric table', clause: 'allowable over greatest load', standing: 'secondary' },
  governs: 'allowable load as a share of the mean greatest one; published for nails',
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

/**
 * p = 6,900 G^2.5 D: lb for each inch, G on oven-dry volume. The same tests as {@link nailUltimate}, whose constant of 7,850 goes
 * with G at 12 % moisture: the two must not be mixed. The exponent is garbled in the scan and stands as in the NDS, whose 1,380 is
 * a fifth of this.
 */
export const nailUltimateOvenDry: FormulaClause<(g: number, d: number) => number> = /* @__PURE__ */ formula(
  ovenDryNails,
  (g, d) => 6900 * g * g * Math.sqrt(g) * d,
);

/** Allowable load over the mean greatest one. */
export const allowableShare: FormulaClause<() => number> = /* @__PURE__ */ formula(share, () => 1 / 5);
