import { table } from '../clause.js';

const STANDARD = 'AS/NZS 2589';

/** Support spacing of ceilings: from memory, and not surely. */
export const supportSpacing = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-3.5.2',
    source: { standard: STANDARD, edition: '2017', clause: '3.5.2', standing: 'memory' },
    governs: 'board thickness against joist centres',
  },
  [
    { value: 450, when: { boardThickness: 10, orientation: 'across' } },
    { value: 600, when: { boardThickness: 10, orientation: 'across', board: 'sag-resistant' } },
    { value: 600, when: { boardThickness: 13, orientation: 'across' } },
  ],
);

export const fieldSpacing = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-screws',
    source: { standard: STANDARD, edition: '2017', standing: 'memory' },
    governs: 'screws along a joist, no adhesive',
  },
  [{ value: 300 }],
);

export const buttJoints = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-butt-joints',
    source: { standard: STANDARD, edition: '2017', standing: 'memory' },
    governs: 'screws at butt joints',
  },
  [{ value: 200 }],
);

/** Screws 10 to 16 from an edge. */
export const edgeDistance = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-edges',
    source: { standard: STANDARD, edition: '2017', clause: 'as restated by an Australian trade page', standing: 'secondary' },
    governs: 'screws from an edge or end, at least',
  },
  [{ value: 10 }],
);

export const greatestEdgeDistance = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-edges-greatest',
    source: { standard: STANDARD, edition: '2017', clause: 'as restated by an Australian trade page', standing: 'secondary' },
    governs: 'screws from an edge or end, at most',
  },
  [{ value: 16 }],
);

/**
 * Clause 2.7.2 (a): at least 32 mm of face under a butt joint that is screwed, 30 elsewhere. Two edge distances of 10 leave 6 to
 * each edge of the timber.
 */
export const timberEdge = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-2.7.2',
    source: {
      standard: STANDARD,
      edition: '2017',
      clause: '2.7.2 (a), face width of 32 less two edge distances',
      standing: 'derived',
    },
    governs: 'screws from the edge of the timber',
  },
  [{ value: 6 }],
);

/** Clause 2.7.2 (a): width of the face that a board is screwed to, mm. */
export const faceWidth = {
  id: 'as-nzs-2589-2017-2.7.2-a',
  source: { standard: STANDARD, edition: '2017', clause: '2.7.2 (a)', standing: 'read' },
  governs: 'face of the timber under a butt joint that is screwed, and of any other timber',
  buttJoint: 32,
  other: 30,
} as const;

/** Clauses 2.6.2 and 2.6.3: below this in Australia, at most that in New Zealand, %. */
export const timberMoisture = {
  id: 'as-nzs-2589-2017-2.6',
  source: { standard: STANDARD, edition: '2017', clause: '2.6.2, 2.6.3', standing: 'read' },
  governs: 'moisture of the timber at lining',
  australiaBelow: 15,
  newZealand: 18,
} as const;

/** mm under a straight edge, mm. */
export const flatness = {
  id: 'as-nzs-2589-2017-4.2.2',
  source: { standard: STANDARD, edition: '2017', clause: '4.2.2, as summarised by an inspector', standing: 'secondary' },
  governs: 'how far the joists may be out of flat',
  gap: 4,
  straightEdge: 1800,
} as const;

/** Screws of 30 mm for 10 mm board, as an inspector restates the standard: 20 into the timber. */
export const embedment = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-2.9.1',
    source: { standard: STANDARD, edition: '2017', clause: '2.9.1, 30 mm screws less 10 mm board', standing: 'derived' },
    governs: 'screws into the joist',
  },
  [{ value: 20 }],
);

export const stagger = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-stagger',
    source: { standard: STANDARD, edition: '2017', standing: 'memory' },
    governs: 'butt joints of neighbouring rows apart',
  },
  [{ value: 300 }],
);

/** Clause 3.4 and a public department's specification: 12 m, and at structural joints. */
export const controlJoints = /* @__PURE__ */ table(
  {
    id: 'as-nzs-2589-2017-3.4',
    source: {
      standard: 'Australian public works specification of buildings',
      edition: '2009',
      clause: '9.8',
      standing: 'secondary',
    },
    governs: 'ceiling without a movement joint',
  },
  [{ value: 12_000 }],
);

/** AS/NZS 3000: cables within 50 of the face that a lining is fixed to are protected. */
export const cableZone = /* @__PURE__ */ table(
  {
    id: 'as-nzs-3000-3.9.4',
    source: { standard: 'AS/NZS 3000', clause: '3.9.4', standing: 'memory' },
    governs: 'how deep a fixing may go for cables',
  },
  [{ value: 45, note: 'cables may run 50 from the underside of a joist; 45 leaves a margin of 5, common practice' }],
);
