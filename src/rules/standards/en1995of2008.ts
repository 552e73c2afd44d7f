import { type Clause, type FormulaClause, formula } from '../clause.js';
import type { Source } from '../source.js';

/*
 * EN 1995-1-1:2004+A1:2008, axially loaded fasteners. N, mm, kg/m3 throughout. Read in hand calculations and textbooks that
 * restate it. d is the outer diameter, d1 the inner one, l_ef the thread in the timber (the first amendment took away the
 * deduction of one diameter), rho_k the characteristic density of the timber, d_h the diameter of the head. A fastener in the
 * underside of a joist stands square to the grain, so that the angle's term of the formulas is 1.
 */
const clause = (id: string, at: string, governs: string, standing: Source['standing'] = 'secondary'): Clause => ({
  id: `en-1995-1-1-${id}`,
  source: { standard: 'EN 1995-1-1', edition: '2004+A1:2008', clause: at, standing },
  governs,
});

/** Whether 8.7.2 (4) covers a screw: 6 to 12 mm, and an inner diameter of 0.6 to 0.75 of the outer one. */
export const screwInRange: FormulaClause<(d: number, d1: number | undefined) => boolean> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('8.7.2-4', '8.7.2 (4)', 'screws that the withdrawal formula is for'),
  (d, d1) => d >= 6 && d <= 12 && d1 !== undefined && d1 / d >= 0.6 && d1 / d <= 0.75,
);

/** Withdrawal strength f_ax,k of a screw in range, N/mm2; one notebook misprints the exponent 0.8 as 0.08. */
export const withdrawalStrength: FormulaClause<(d: number, lEf: number, rhoK: number) => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('8.39', '8.7.2 equation 8.39', 'withdrawal strength of a screw'),
  (d, lEf, rhoK) => (0.52 * rhoK ** 0.8) / (Math.sqrt(d) * lEf ** 0.1),
);

/** k_d. */
export const diameterFactor: FormulaClause<(d: number) => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('8.40', '8.7.2 equation 8.40', 'thinner screws hold less'),
  (d) => Math.min(d / 8, 1),
);

/** Characteristic withdrawal of one screw in range, N. */
export const screwWithdrawal: FormulaClause<(d: number, lEf: number, rhoK: number) => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('8.38', '8.7.2 equation 8.38', 'withdrawal of a screw in range'),
  (d, lEf, rhoK) => withdrawalStrength(d, lEf, rhoK) * d * lEf * diameterFactor(d),
);

/** Characteristic withdrawal of one screw by its declared strength f_ax,k at the density rho_a, N. */
export const declaredWithdrawal: FormulaClause<(d: number, lEf: number, rhoK: number, fAxK: number, rhoA: number) => number> =
  /* @__PURE__ */ formula(
    /* @__PURE__ */ clause('8.40a', '8.7.2 (5) equation 8.40a', 'withdrawal of a screw by declared strength'),
    (d, lEf, rhoK, fAxK, rhoA) => fAxK * d * lEf * (rhoK / rhoA) ** 0.8,
  );

/** Characteristic pull-through of a head in timber or panels, N; not for gypsum board. */
export const headPullThrough: FormulaClause<(fHeadK: number, dH: number, rhoK: number, rhoA: number) => number> =
  /* @__PURE__ */ formula(
    /* @__PURE__ */ clause('8.40b', '8.7.2 (6) equation 8.40b', 'pull-through of a screw head in timber'),
    (fHeadK, dH, rhoK, rhoA) => fHeadK * dH * dH * (rhoK / rhoA) ** 0.8,
  );

/** Screws that count out of n loaded together. */
export const effectiveNumber: FormulaClause<(n: number) => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('8.41', '8.7.2 (8) equation 8.41', 'screws loaded together'),
  (n) => n ** 0.9,
);

/** Least thread in the timber, mm. */
export const leastThread: FormulaClause<(d: number) => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('8.7.2-3', '8.7.2 (3)', 'least thread of a screw in the timber'),
  (d) => 6 * d,
);

/** Least distances of axially loaded screws in range, mm: along and across the grain, from the end, from the edge; and timber. */
export const axialDistances: FormulaClause<
  (d: number) => {
    readonly along: number;
    readonly across: number;
    readonly end: number;
    readonly edge: number;
    readonly timberThickness: number;
  }
> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause(
    'table-8.6',
    'table 8.6',
    'distances of screws in range from each other and from the edges of the timber',
  ),
  (d) => ({ along: 7 * d, across: 5 * d, end: 10 * d, edge: 4 * d, timberThickness: 12 * d }),
);

/** Withdrawal strength of a smooth nail, N/mm2. */
export const smoothNailStrength: FormulaClause<(rhoK: number) => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('8.25', '8.3.2 (6) equation 8.25', 'withdrawal strength of a smooth nail'),
  (rhoK) => 20e-6 * rhoK * rhoK,
);

/** What a short penetration leaves of a nail's withdrawal: none below 8d (threaded 6d), all from 12d (8d). */
export const penetrationFactor: FormulaClause<(d: number, tPen: number, shank: 'smooth' | 'ringed') => number> =
  /* @__PURE__ */ formula(
    /* @__PURE__ */ clause('8.3.2-7', '8.3.2 (7)', 'nails that are short in the timber'),
    (d, tPen, shank) => {
      const [none, all, factor] = shank === 'smooth' ? [8 * d, 12 * d, tPen / (4 * d) - 2] : [6 * d, 8 * d, tPen / (2 * d) - 3];
      return tPen < none ? 0 : tPen >= all ? 1 : factor;
    },
  );

/** Characteristic withdrawal of a smooth nail from the point side, N. */
export const smoothNailWithdrawal: FormulaClause<(d: number, tPen: number, rhoK: number) => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('8.24', '8.3.2 equation 8.24', 'withdrawal of a smooth nail'),
  (d, tPen, rhoK) => smoothNailStrength(rhoK) * d * tPen * penetrationFactor(d, tPen, 'smooth'),
);

/** Smooth nails must not carry permanent or long-term load along their axis. */
export const smoothNailsBarred: Clause = /* @__PURE__ */ clause(
  '8.3.2-1',
  '8.3.2 (1)',
  'smooth nails carry no permanent load along their axis',
  'read',
);

/** k_mod of solid timber under permanent load. */
export const permanentFactor: FormulaClause<(serviceClass: 1 | 2 | 3) => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('3.1', 'table 3.1', 'timber under permanent load'),
  (serviceClass) => (serviceClass === 3 ? 0.5 : 0.6),
);

/** gamma_M of connections. */
export const materialFactor: FormulaClause<() => number> = /* @__PURE__ */ formula(
  /* @__PURE__ */ clause('2.3', 'table 2.3', 'partial factor of connections'),
  () => 1.3,
);

/** EN 1990 equation 6.10: factor on permanent load. */
export const permanentLoadFactor: FormulaClause<() => number> = /* @__PURE__ */ formula(
  {
    id: 'en-1990-6.10',
    source: { standard: 'EN 1990', clause: 'equation 6.10', standing: 'secondary' },
    governs: 'partial factor of permanent load',
  },
  () => 1.35,
);
