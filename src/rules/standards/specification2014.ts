import { table } from '../clause.js';

/** Generic specification clauses of 2014, read in a project specification that quotes them. */
const STANDARD = 'National Building Specification generic clauses, as quoted in a project specification';

const METAL = 'from a clause for metal framing, commonly applied to timber';

/** Clauses K10 610 and M20 610: fixings along timber under a ceiling. */
export const fieldSpacing = /* @__PURE__ */ table(
  {
    id: 'specification-2014-K10-610',
    source: { standard: STANDARD, edition: '2014', clause: 'K10 610, M20 610', standing: 'secondary' },
    governs: 'screws and nails along a joist',
  },
  [{ value: 230 }, { value: 150, when: { fixing: 'nail' } }],
);

/** Clause K10 590: fixings at board ends and along the edge of the lining. */
export const endSpacing = /* @__PURE__ */ table(
  {
    id: 'specification-2014-K10-590',
    source: { standard: STANDARD, edition: '2014', clause: 'K10 590', standing: 'secondary' },
    governs: 'screws at board ends and along walls',
  },
  [{ value: 150, note: METAL }],
);

export const boundEdge = /* @__PURE__ */ table(
  {
    id: 'specification-2014-M20-610-bound',
    source: { standard: STANDARD, edition: '2014', clause: 'K10 610, M20 610', standing: 'secondary' },
    governs: 'fixings from a bound edge',
  },
  [{ value: 10 }],
);

export const cutEdge = /* @__PURE__ */ table(
  {
    id: 'specification-2014-M20-610-cut',
    source: { standard: STANDARD, edition: '2014', clause: 'K10 610, M20 610', standing: 'secondary' },
    governs: 'fixings from a cut edge or end',
  },
  [{ value: 13 }],
);

export const timberEdge = /* @__PURE__ */ table(
  {
    id: 'specification-2014-M20-610-timber',
    source: { standard: STANDARD, edition: '2014', clause: 'K10 610, M20 610', standing: 'secondary' },
    governs: 'fixings from the edge of the timber',
  },
  [{ value: 6 }],
);

/** Clause M20 612: bound edges square to the joists, butt joints staggered (no distance given), gaps. */
export const jointGap = /* @__PURE__ */ table(
  {
    id: 'specification-2014-M20-612',
    source: { standard: STANDARD, edition: '2014', clause: 'M20 612', standing: 'secondary' },
    governs: 'gap at a butt joint',
  },
  [
    {
      value: 3,
      range: { least: 0, greatest: 5 },
      note: 'the clause gives 3 as the most; 5 beside a board that came short, common practice, no source',
    },
  ],
);
