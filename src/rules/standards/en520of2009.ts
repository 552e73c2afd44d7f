import { type Clause, type FormulaClause, formula } from '../clause.js';

const breaking: Clause = {
  id: 'en-520-2009-breaking-load',
  source: {
    standard: 'EN 520',
    edition: '2004+A1:2009',
    clause: 'least breaking loads, as printed by a trade association',
    standing: 'secondary',
  },
  governs: 'least breaking load of a board, by direction: why boards are laid across the joists',
};

const sizes: Clause = {
  id: 'en-520-2009-4.9',
  source: { standard: 'EN 520', edition: '2004+A1:2009', clause: '4.9, read in a damaged scan', standing: 'secondary' },
  governs: 'tolerances of a board; the 4 mm of the width and the 5 of the length are legible only in part',
};

interface Loads {
  readonly rows: Readonly<Record<number, readonly [across: number, along: number]>>;
  /** N per mm of thickness, where the table has no row. */
  readonly perMm?: readonly [across: number, along: number];
}

/** N; `common` serves types A, D, E, F, H and I. */
const LOADS: Readonly<Record<'common' | 'R' | 'P', Loads>> = {
  common: { rows: { 9.5: [160, 400], 12.5: [210, 550], 15: [250, 650] }, perMm: [16.8, 43] },
  R: { rows: { 12.5: [300, 725], 15: [360, 870] }, perMm: [24, 58] },
  P: { rows: { 9.5: [125, 180], 12.5: [165, 235] } },
};

/**
 * Least breaking load of a board of 300 mm width over 350 mm, N. The table has precedence over the formula for other
 * thicknesses. For type R of 15 mm one table prints 600 across, where the formula gives 360: taken as a misprint.
 *
 * @param thickness - mm
 * @param direction - `along` the board's length or `across` it
 * @returns N, or nothing for a board that the standard does not cover
 */
export const breakingLoad: FormulaClause<
  (type: 'common' | 'R' | 'P', thickness: number, direction: 'across' | 'along') => number | undefined
> = /* @__PURE__ */ formula(breaking, (type, thickness, direction) => {
  const { rows, perMm } = LOADS[type];
  const loads = rows[thickness] ?? perMm?.map((each) => each * thickness);
  return loads?.[direction === 'across' ? 0 : 1];
});

/** How far a board of this thickness may be from its nominal size: mm, and mm per m of width for squareness. */
export const boardTolerances: FormulaClause<
  (thickness: number) => {
    readonly shorter: number;
    readonly narrower: number;
    readonly thickness: number;
    readonly thicknessSpread: number;
    readonly outOfSquare: number;
  }
> = /* @__PURE__ */ formula(sizes, (thickness) => ({
  shorter: 5,
  narrower: 4,
  thickness: thickness < 18 ? 0.5 : Math.round(0.4 * thickness) / 10,
  thicknessSpread: 0.8,
  outOfSquare: 2.5,
}));

/** Usual sizes, mm; others are allowed. Plaster base board is type P. */
export const usualSizes = {
  id: 'en-520-2009-usual-sizes',
  source: { standard: 'EN 520', edition: '2004+A1:2009', clause: '4.9, read in a damaged scan', standing: 'secondary' },
  governs: 'usual widths, thicknesses and lengths of boards, and the thinnest',
  widths: [600, 625, 900, 1200, 1250],
  thicknesses: [9.5, 12.5, 15],
  thinnest: 6,
  plasterBaseWidths: [400, 600, 900, 1200],
  plasterBaseLengths: [1200, 1500, 1800, 2000],
} as const;
