import { table } from '../clause.js';

/** Nails into wood: 3/4 in with a ringed shank, 1 in smooth. */
export const nailPenetration = /* @__PURE__ */ table(
  {
    id: 'navy-14044-nails',
    source: { standard: 'US Navy training manual 14044', clause: 'fasteners', standing: 'read' },
    governs: 'nails into the joist',
  },
  [
    { value: 19.05, when: { fixing: 'nail' }, note: 'ringed shank' },
    { value: 25.4, when: { fixing: 'nail', shank: 'smooth' } },
  ],
);

/** ASTM C840 20.3.3: with relief at the perimeter 50 ft; 30 ft without is from memory. */
export const controlJoints = /* @__PURE__ */ table(
  {
    id: 'astm-c840-20.3.3',
    source: { standard: 'ASTM C840', clause: '20.3.3, as quoted by a trade association', standing: 'secondary' },
    governs: 'ceiling without a movement joint, its perimeter free to move',
  },
  [{ value: 15_240, note: 'with perimeter relief; without it 900 ft2, and 30 ft from memory' }],
);

/** ASTM C840 20.3.3 and 20.3.4: area between control joints, ft2, with relief at the perimeter and without. */
export const controlJointAreas = {
  id: 'astm-c840-20.3.4',
  source: { standard: 'ASTM C840', clause: '20.3.3, 20.3.4, as quoted by a trade association', standing: 'secondary' },
  governs: 'area of a ceiling without a movement joint, ft2, its perimeter free to move or not',
  withRelief: 2500,
  withoutRelief: 900,
} as const;

/** Bored holes keep 1 1/4 in from the edge of a joist, so a cable may be that near. */
export const boredHoles = /* @__PURE__ */ table(
  {
    id: 'nfpa-70-300.4',
    source: { standard: 'NFPA 70', clause: '300.4 (A) (1)', standing: 'memory' },
    governs: 'how deep a fixing may go for cables',
  },
  [{ value: 26, note: 'cables may run 31.75 from the underside of a joist; 26 leaves a margin of over 5, common practice' }],
);

/** The Canadian electrical code's distance of a cable from the edge of a joist. */
export const canadianCables = /* @__PURE__ */ table(
  {
    id: 'csa-c22.1-12-516',
    source: { standard: 'CSA C22.1', clause: '12-516', standing: 'memory' },
    governs: 'how deep a fixing may go for cables',
  },
  [{ value: 27, note: 'cables may run 32 from the underside of a joist; 27 leaves a margin of 5, common practice' }],
);
