import { type Clause, type FormulaClause, formula } from '../clause.js';

/** What may have been cut out of a joist of this depth, mm. */
export interface NotchesAndHoles {
  /** Depth of a notch, in the top or the bottom. */
  readonly notchDepth: number;
  readonly holeDiameter: number;
  /** Bottom of the largest hole, on the centre line, above the underside of the joist. */
  readonly lowestHole: number;
}

const local: Clause = {
  id: 'labc-notches-and-holes',
  source: {
    standard: 'Local authority building control guidance on notches and holes, quoting the span tables to Eurocode 5',
    standing: 'read',
  },
  governs: 'notches and holes in joists: 0.125 and 0.25 of the depth, at most 35 and 65 mm',
};

const warranty: Clause = {
  id: 'nhbc-2020-6.4.18-table-6',
  source: { standard: 'NHBC Standards', edition: '2020', clause: '6.4.18 table 6', standing: 'read' },
  governs: 'notches and holes in joists up to 250 deep: 0.15 of the depth in a narrower zone, 0.25',
};

/** Half the depth less half the largest hole. */
const lowest = (depth: number, holeDiameter: number): number => (depth - holeDiameter) / 2;

/** Local authority guidance: notch 0.125 of the depth, hole 0.25 on the centre line, and absolute caps. */
export const localAuthorityLimits: FormulaClause<(depth: number) => NotchesAndHoles> = /* @__PURE__ */ formula(local, (depth) => {
  const holeDiameter = Math.min(0.25 * depth, 65);
  return { notchDepth: Math.min(0.125 * depth, 35), holeDiameter, lowestHole: lowest(depth, holeDiameter) };
});

/**
 * NHBC Standards 2020, 6.4.18 table 6: a notch of 0.15 of the depth is allowed where its zone is narrowed to 0.1 to 0.2 of the
 * span. Nothing is said of joists deeper than 250.
 */
export const warrantyLimits: FormulaClause<(depth: number) => NotchesAndHoles | undefined> = /* @__PURE__ */ formula(
  warranty,
  (depth) =>
    depth > 250 ? undefined : { notchDepth: 0.15 * depth, holeDiameter: 0.25 * depth, lowestHole: lowest(depth, 0.25 * depth) },
);
