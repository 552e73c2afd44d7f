import { fixingLength, ruleSets, withRules } from 'soffitwright';
import { type PublishedTable, published } from '../publishedTable.js';

const INCH = 25.4;

/** Thicknesses and penetration, mm. */
interface Through {
  readonly board: number;
  readonly lining: number;
  readonly into: number;
}

export const screwLengths: readonly PublishedTable[] = [
  published<Through, { readonly minimum: number; readonly recommended: number | null }>({
    title: 'screw for boarding over an old ceiling',
    rows: [
      {
        clause: 'irc-2018-R702.3.5.1',
        what: '3/8 in board, 1 in of plaster and lath, 5/8 in into the joist: a screw of 2 in',
        inputs: { board: (3 / 8) * INCH, lining: 1 * INCH, into: (5 / 8) * INCH },
        // The sum of the three thicknesses is exactly the screw: neither may miss it by a rounding.
        expected: { minimum: 2 * INCH, recommended: 2 * INCH },
        tolerance: 0,
        source: { standard: 'Renovation textbook, worked example', clause: 'drywall over plaster', standing: 'read' },
      },
    ],
    compute: ({ board, lining, into }) => {
      const rules = withRules(ruleSets.uk, { 'fixing.embedment': into, 'fixing.preferredEmbedment': into });
      const stock = [1.25, 1.625, 2, 2.5, 3].map((inches) => inches * INCH);
      const { minimum, recommended } = fixingLength({ thicknesses: [board], lining: [lining], rules, stock });
      return { minimum, recommended };
    },
  }),
];
