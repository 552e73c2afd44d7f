import { table } from '../clause.js';

/**
 * National Building Code, 2023 Alberta edition, division B, section 9.29, whose articles carry the numbers of the national code
 * of 2020. It speaks of one layer fixed to wood; over-boarding lies outside what is deemed to satisfy it (9.29.5.1).
 */
const STANDARD = 'National Building Code, Alberta edition';

/** The printed 400 and 600 are the metric names of 16 and 24 in, which a tape reads as 406 and 610. */
const SIXTEEN_INCHES = { least: 0, greatest: 406.4 };
const TWENTY_FOUR_INCHES = { least: 0, greatest: 610 };

/** Table 9.29.5.3, ceilings. What it does not permit has no row. */
export const supportSpacing = /* @__PURE__ */ table(
  {
    id: 'nbc-9.29.5.3',
    source: { standard: STANDARD, edition: '2023', clause: 'table 9.29.5.3', standing: 'read' },
    governs: 'board thickness, orientation and finish against joist centres',
  },
  [
    { value: 400, range: SIXTEEN_INCHES, when: { boardThickness: 9.5, orientation: 'across' } },
    { value: 400, range: SIXTEEN_INCHES, when: { boardThickness: 12.7, orientation: 'along' } },
    { value: 600, range: TWENTY_FOUR_INCHES, when: { boardThickness: 12.7, orientation: 'across' } },
    { value: 400, range: SIXTEEN_INCHES, when: { boardThickness: 12.7, orientation: 'across', finish: 'textured' } },
    { value: 400, range: SIXTEEN_INCHES, when: { boardThickness: 15.9, orientation: 'along' } },
    { value: 600, range: TWENTY_FOUR_INCHES, when: { boardThickness: 15.9, orientation: 'across' } },
    { value: 600, range: TWENTY_FOUR_INCHES, when: { boardThickness: 15.9, orientation: 'across', finish: 'textured' } },
    {
      value: 600,
      range: TWENTY_FOUR_INCHES,
      when: { boardThickness: 12.7, orientation: 'across', finish: 'textured', board: 'sag-resistant' },
    },
  ],
);

/** Table 9.29.5.5, ceilings: fixings into wood, by the fire resistance that is asked for. */
export const penetration = /* @__PURE__ */ table(
  {
    id: 'nbc-9.29.5.5',
    source: { standard: STANDARD, edition: '2023', clause: 'table 9.29.5.5', standing: 'read' },
    governs: 'fixings into the joist, with and without fire resistance',
  },
  [
    { value: 15 },
    { value: 20, when: { fixing: 'nail' } },
    { value: 30, when: { fireRating: 45 } },
    { value: 45, when: { fireRating: 60 } },
    { value: 60, when: { fireRating: 90 } },
  ],
);

/** Article 9.29.5.8 (1): nails under a ceiling. */
export const nailSpacing = /* @__PURE__ */ table(
  {
    id: 'nbc-9.29.5.8-1',
    source: { standard: STANDARD, edition: '2023', clause: '9.29.5.8 (1)', standing: 'read' },
    governs: 'nails along a joist',
  },
  [{ value: 180, when: { fixing: 'nail' } }],
);

/** Article 9.29.5.8 (1): or pairs of nails. */
export const nailPairs = /* @__PURE__ */ table(
  {
    id: 'nbc-9.29.5.8-1-pairs',
    source: { standard: STANDARD, edition: '2023', clause: '9.29.5.8 (1)', standing: 'read' },
    governs: 'pairs of nails along a joist',
  },
  [{ value: 300 }],
);

export const nailPairDistance = /* @__PURE__ */ table(
  {
    id: 'nbc-9.29.5.8-1-distance',
    source: { standard: STANDARD, edition: '2023', clause: '9.29.5.8 (1)', standing: 'read' },
    governs: 'second nail of a pair from the first',
  },
  [{ value: 50, note: 'about 50' }],
);

/** Article 9.29.5.9 (1): screws under a ceiling. The number is missing from the copy of the code and was read in the housing agency's text. */
export const screwSpacing = /* @__PURE__ */ table(
  {
    id: 'nbc-9.29.5.9-1',
    source: {
      standard: 'National Building Code, as restated by the federal housing agency',
      clause: '9.29.5.9 (1)',
      standing: 'secondary',
    },
    governs: 'screws along a joist',
  },
  [{ value: 300 }],
);

/** Articles 9.29.5.8 (6) and 9.29.5.9 (6). */
export const edgeDistance = /* @__PURE__ */ table(
  {
    id: 'nbc-9.29.5.9-6',
    source: { standard: STANDARD, edition: '2023', clause: '9.29.5.8 (6), 9.29.5.9 (6)', standing: 'read' },
    governs: 'fixings from an edge or end',
  },
  [{ value: 10 }],
);

/** Article 9.29.5.4: least board that insulation lies on, mm. */
export const insulatedBoard = {
  id: 'nbc-9.29.5.4',
  source: { standard: STANDARD, edition: '2023', clause: '9.29.5.4', standing: 'read' },
  governs: 'thickness of board that insulation lies on',
  thickness: 12.7,
} as const;

/** Article 9.29.5.10: degrees Celsius, and hours before and after taping. */
export const taping = {
  id: 'nbc-9.29.5.10',
  source: { standard: STANDARD, edition: '2023', clause: '9.29.5.10', standing: 'read' },
  governs: 'warmth of the room before and after taping',
  celsius: 10,
  hours: 48,
} as const;

/** Ringed nails: shank and head, mm. */
export const nailSize = {
  id: 'nbc-nails',
  source: {
    standard: 'National Building Code, as restated by the federal housing agency',
    clause: 'nails',
    standing: 'secondary',
  },
  governs: 'ringed nails for gypsum board',
  shank: 2.3,
  head: 5.5,
} as const;

/** Table 9.29.3.1: wood furring, thickness and width in mm, for furring an old ceiling flat. */
export const furring = {
  id: 'nbc-9.29.3.1',
  source: { standard: STANDARD, edition: '2023', clause: 'table 9.29.3.1', standing: 'read' },
  governs: 'battens under an old ceiling: size by their centres and by the centres of what they are fixed to',
  rows: [
    { centres: 300, continuous: [19, 38], supports400: [19, 38], supports600: [19, 64] },
    { centres: 400, continuous: [19, 38], supports400: [19, 38], supports600: [19, 64] },
    { centres: 600, continuous: [19, 38], supports400: [19, 64], supports600: [19, 89] },
  ],
} as const;
