import { table } from '../clause.js';

const STANDARD = 'NZS 3604, as restated by the standards body';

/** A ceiling that braces the building: fixings along every edge of each sheet. */
export const diaphragmEdges = /* @__PURE__ */ table(
  {
    id: 'nzs-3604-2011-edges',
    source: { standard: STANDARD, edition: '2011', standing: 'read' },
    governs: 'fixings along the edges of each sheet of a ceiling that braces the building',
  },
  [{ value: 150, when: { diaphragm: true } }],
);

export const diaphragmField = /* @__PURE__ */ table(
  {
    id: 'nzs-3604-2011-field',
    source: { standard: STANDARD, edition: '2011', standing: 'read' },
    governs: 'other fixings of a ceiling that braces the building',
  },
  [{ value: 300, when: { diaphragm: true } }],
);

export const diaphragmEdgeDistance = /* @__PURE__ */ table(
  {
    id: 'nzs-3604-2011-edge-distance',
    source: { standard: STANDARD, edition: '2011', standing: 'read' },
    governs: 'fixings from an edge, in a ceiling that braces the building',
  },
  [{ value: 10, when: { diaphragm: true } }],
);

/** What the sheet and the ceiling must be: mm, kg/m3, degrees. */
export const diaphragmSheet = {
  id: 'nzs-3604-2011-sheet',
  source: { standard: STANDARD, edition: '2011', standing: 'read' },
  governs: 'board of a ceiling that braces the building, and how far it may reach',
  thickness: 10,
  density: 600,
  sheetLength: 1800,
  sheetWidth: 900,
  greatestLength: 7500,
  greatestSlope: 15,
  greatestLengthToWidth: 2,
} as const;
