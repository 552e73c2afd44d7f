import { table } from '../clause.js';

/**
 * Commission Decision 2006/673/EC: condition for a board's reaction to fire without testing. The sentence was seen in a corpus
 * of the Union's texts; that it belongs to this decision is from memory. Every European set keeps it without saying so.
 */
export const fixingCentres = /* @__PURE__ */ table(
  {
    id: 'eu-2006-673',
    source: { standard: 'Commission Decision 2006/673/EC', standing: 'secondary' },
    governs: 'fixings along every support, for the class of reaction to fire',
  },
  [{ value: 300 }],
);
