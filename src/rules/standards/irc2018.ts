import { table } from '../clause.js';

const STANDARD = 'International Residential Code';

/** Sizes in inches of the code, in mm. */
const SIXTEEN = 406.4;
const TWENTY_FOUR = 609.6;
/** 24 in is 610 on a tape in whole mm. */
const range = { least: 0, greatest: 610 };

/** Table R702.3.5, ceilings without adhesive: from memory, it agrees with the Canadian table that was read. */
export const supportSpacing = /* @__PURE__ */ table(
  {
    id: 'irc-2018-R702.3.5',
    source: { standard: STANDARD, edition: '2018', clause: 'table R702.3.5', standing: 'memory' },
    governs: 'board thickness and orientation against joist centres',
  },
  [
    { value: SIXTEEN, when: { boardThickness: 9.5, orientation: 'across' } },
    { value: SIXTEEN, when: { boardThickness: 12.7, orientation: 'along' } },
    { value: TWENTY_FOUR, range, when: { boardThickness: 12.7, orientation: 'across' } },
    { value: SIXTEEN, when: { boardThickness: 15.9, orientation: 'along' } },
    { value: TWENTY_FOUR, range, when: { boardThickness: 15.9, orientation: 'across' } },
  ],
);

/** Table R702.3.5 footnote d: board that a water-based texture wets. */
export const texturedSpacing = /* @__PURE__ */ table(
  {
    id: 'irc-2018-R702.3.5-d',
    source: {
      standard: STANDARD,
      edition: '2018',
      clause: 'table R702.3.5 footnote d, as quoted by a code forum',
      standing: 'secondary',
    },
    governs: 'joist centres under a water-based texture',
  },
  [
    { value: SIXTEEN, when: { boardThickness: 12.7, orientation: 'across', finish: 'textured' } },
    {
      value: TWENTY_FOUR,
      range,
      when: { boardThickness: 12.7, orientation: 'across', finish: 'textured', board: 'sag-resistant' },
    },
    { value: TWENTY_FOUR, range, when: { boardThickness: 15.9, orientation: 'across', finish: 'textured' } },
  ],
);

/** Table R702.3.5: 12 in for screws, 7 in for nails; wider beside adhesive. */
export const fieldSpacing = /* @__PURE__ */ table(
  {
    id: 'irc-2018-R702.3.5-fasteners',
    source: { standard: STANDARD, edition: '2018', clause: 'table R702.3.5', standing: 'memory' },
    governs: 'screws along a joist; screws and nails with adhesive',
  },
  [
    { value: 304.8 },
    { value: 406.4, when: { adhesive: true } },
    { value: 406.4, when: { adhesive: true, fixing: 'nail', centres: 406.4 } },
    { value: 304.8, when: { adhesive: true, fixing: 'nail', centres: 609.6 } },
  ],
);

/** R702.3.5.1: screws at least 5/8 in into wood. */
export const screwPenetration = /* @__PURE__ */ table(
  {
    id: 'irc-2018-R702.3.5.1',
    source: { standard: STANDARD, edition: '2018', clause: 'R702.3.5.1, as quoted in a plan review', standing: 'secondary' },
    governs: 'screws into the joist',
  },
  [{ value: 15.875 }],
);

/** Table R702.3.6 notes c and d: a ceiling that braces the building, fixed at every support and along its blocked perimeter. */
export const diaphragmSpacing = /* @__PURE__ */ table(
  {
    id: 'irc-2018-R702.3.6-spacing',
    source: { standard: STANDARD, edition: '2018', clause: 'table R702.3.6 note d', standing: 'read' },
    governs: 'fixings of a ceiling that braces the building',
  },
  [{ value: 177.8, when: { diaphragm: true } }],
);

export const edgeDistance = /* @__PURE__ */ table(
  {
    id: 'irc-2018-R702.3.6-edge',
    source: { standard: STANDARD, edition: '2018', clause: 'table R702.3.6 note d', standing: 'read' },
    governs: 'fixings from an edge or end',
  },
  [
    {
      value: 9.525,
      note: 'read for a ceiling that braces the building; the trade association asks the same of any, from memory',
    },
  ],
);

/** Table R702.3.6 notes a and b: share of the capacity that is taken off. */
export const diaphragmReductions = {
  id: 'irc-2018-R702.3.6-reductions',
  source: { standard: STANDARD, edition: '2018', clause: 'table R702.3.6 notes a and b', standing: 'read' },
  governs: 'what is taken off the shear that a ceiling carries: under normal loading, and in seismic categories D and E',
  normalLoading: 0.25,
  seismic: 0.5,
} as const;

/** Table R702.3.6 notes c and d: nail or screw, inches. */
export const diaphragmFixing = {
  id: 'irc-2018-R702.3.6-fixing',
  source: { standard: STANDARD, edition: '2018', clause: 'table R702.3.6 notes c and d', standing: 'read' },
  governs: 'nail or screw of a ceiling that braces the building, in',
  nailLength: 1.625,
  nailShank: 0.086,
  nailHead: 0.234375,
  screwLength: 1.25,
} as const;

/**
 * R702.3.6: butt joints of neighbouring courses do not fall on the same joist, and a bracing ceiling is at most so many times as
 * long as wide.
 */
export const diaphragmJoints = {
  id: 'irc-2018-R702.3.6-joints',
  source: { standard: STANDARD, edition: '2018', clause: 'R702.3.6, as quoted in a plan review', standing: 'secondary' },
  governs: 'butt joints and proportion of a ceiling that braces the building',
  sharedJoists: 0,
  greatestLengthToWidth: 1.5,
} as const;

/**
 * Table R702.3.6: capacity of a 1/2 in ceiling that braces the building, lb/ft, before its reductions (a quarter less for normal
 * loading, half in seismic categories D and E). A reference for a designer: nothing here relies on it.
 */
export const diaphragmCapacity = {
  id: 'irc-2018-R702.3.6-capacity',
  source: { standard: STANDARD, edition: '2018', clause: 'table R702.3.6', standing: 'read' },
  governs: 'shear that a 1/2 in ceiling carries, lb/ft',
  rows: [
    { centres: 406.4, capacity: 90 },
    { centres: 609.6, capacity: 70 },
  ],
} as const;
