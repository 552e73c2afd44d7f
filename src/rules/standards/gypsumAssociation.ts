import { type Clause, type FormulaClause, formula, table } from '../clause.js';

/** The American trade association's guide to walls and ceilings, section III. */
const GUIDE = 'Gypsum Association, Using Gypsum Board for Walls and Ceilings';

export const nailSpacing = /* @__PURE__ */ table(
  {
    id: 'ga-guide-III-nails',
    source: { standard: GUIDE, clause: 'section III', standing: 'read' },
    governs: 'nails along a joist',
  },
  [{ value: 177.8, when: { fixing: 'nail' } }],
);

/** Double nailing: first nails 12 in apart; the second ones not along the edge of the ceiling. */
export const nailPairs = /* @__PURE__ */ table(
  {
    id: 'ga-guide-III-pairs',
    source: { standard: GUIDE, clause: 'section III', standing: 'read' },
    governs: 'pairs of nails along a joist',
  },
  [{ value: 304.8 }],
);

export const nailPairDistance = /* @__PURE__ */ table(
  {
    id: 'ga-guide-III-distance',
    source: { standard: GUIDE, clause: 'section III', standing: 'read' },
    governs: 'second nail of a pair from the first',
  },
  [{ value: 50.8, range: { least: 50.8, greatest: 63.5 } }],
);

const strength: Clause = {
  id: 'ga-235-2010',
  source: { standard: 'GA-235', edition: '2010', clause: 'flexural strength', standing: 'read' },
  governs: 'least breaking load of a board, by direction',
};

/** lbf: supports across the board's length, then along it; method A, then method B. */
const STRENGTHS: Readonly<Record<string, readonly [[number, number], [number, number]]>> = {
  '1/4': [
    [50, 20],
    [46, 16],
  ],
  '5/16': [
    [65, 25],
    [62, 21],
  ],
  '3/8': [
    [80, 30],
    [77, 26],
  ],
  '1/2': [
    [110, 40],
    [107, 36],
  ],
  '5/8': [
    [150, 50],
    [147, 46],
  ],
  '3/4': [
    [170, 60],
    [167, 56],
  ],
};

/**
 * GA-235 (2010): least flexural strength of wallboard, lbf. The table's metric column for stiffness is 1.29 times its imperial
 * one and is not used.
 *
 * @param thickness - in inches, as printed
 * @param bearing - edges on the supports: `across` the board's length or `along` it
 */
export const flexuralStrength: FormulaClause<
  (thickness: '1/4' | '5/16' | '3/8' | '1/2' | '5/8' | '3/4', bearing: 'across' | 'along', method: 'A' | 'B') => number
> = /* @__PURE__ */ formula(strength, (thickness, bearing, method) => {
  const [across, along] = STRENGTHS[thickness][method === 'A' ? 0 : 1];
  return bearing === 'across' ? across : along;
});
