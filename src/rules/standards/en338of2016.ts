import { type Clause, type FormulaClause, formula } from '../clause.js';

/** Strength classes of softwood that this module holds. */
export type StrengthClass = 'C14' | 'C16' | 'C18' | 'C20' | 'C22' | 'C24' | 'C27' | 'C30';

const densities: Clause = {
  id: 'en-338-2016-density',
  source: {
    standard: 'EN 338',
    edition: '2016',
    clause: 'characteristic density, from a public transcription',
    standing: 'secondary',
  },
  governs: 'density of a strength class, which fixings hold by',
};

const DENSITIES: Readonly<Record<StrengthClass, number>> = {
  C14: 290,
  C16: 310,
  C18: 320,
  C20: 330,
  C22: 340,
  C24: 350,
  C27: 360,
  C30: 380,
};

/**
 * Characteristic density of a strength class, rho_k in kg/m3. The edition of 2009 had 370 for C27, from memory; shear strengths of
 * 2003 and of later editions go with different factors and must not be mixed.
 */
export const characteristicDensity: FormulaClause<(strengthClass: StrengthClass) => number> = /* @__PURE__ */ formula(
  densities,
  (strengthClass) => DENSITIES[strengthClass],
);
