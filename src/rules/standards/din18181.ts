import { table } from '../clause.js';

/** All values are from memory and want checking against the standard. */
const STANDARD = 'DIN 18181';

export const supportSpacing = /* @__PURE__ */ table(
  {
    id: 'din-18181-centres',
    source: { standard: STANDARD, standing: 'memory' },
    governs: 'board thickness and orientation against the centres of its supports',
  },
  [
    { value: 500, when: { boardThickness: 12.5, orientation: 'across' } },
    { value: 550, when: { boardThickness: 15, orientation: 'across' } },
    { value: 625, when: { boardThickness: 18, orientation: 'across' } },
    { value: 420, when: { boardThickness: 12.5, orientation: 'along' } },
    { value: 420, when: { boardThickness: 15, orientation: 'along' } },
  ],
);

export const fixingSpacing = /* @__PURE__ */ table(
  {
    id: 'din-18181-spacing',
    source: { standard: STANDARD, standing: 'memory' },
    governs: 'screws and nails along a support',
  },
  [{ value: 170 }, { value: 120, when: { fixing: 'nail' } }],
);

export const boundEdge = /* @__PURE__ */ table(
  { id: 'din-18181-bound', source: { standard: STANDARD, standing: 'memory' }, governs: 'fixings from a bound edge' },
  [{ value: 10 }],
);

export const cutEdge = /* @__PURE__ */ table(
  { id: 'din-18181-cut', source: { standard: STANDARD, standing: 'memory' }, governs: 'fixings from a cut edge or end' },
  [{ value: 15 }],
);

/** Five diameters of the screw. */
export const embedment = /* @__PURE__ */ table(
  { id: 'din-18181-penetration', source: { standard: STANDARD, standing: 'memory' }, governs: 'screws into the timber' },
  [{ value: 21, note: 'five diameters of a 4.2 mm screw' }],
);

export const stagger = /* @__PURE__ */ table(
  {
    id: 'din-18181-stagger',
    source: { standard: STANDARD, standing: 'memory' },
    governs: 'butt joints of neighbouring rows apart',
  },
  [{ value: 400 }],
);

export const movementJoints = /* @__PURE__ */ table(
  { id: 'din-18181-movement', source: { standard: STANDARD, standing: 'memory' }, governs: 'ceiling without a movement joint' },
  [{ value: 15_000 }],
);
