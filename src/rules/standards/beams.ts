import { type Clause, type FormulaClause, formula } from '../clause.js';

const reactions: Clause = {
  id: 'continuous-beam-reactions',
  source: {
    standard: 'reference tables of continuous beams; four and more spans by the equation of three moments',
    standing: 'read',
  },
  governs: 'how much of a board hangs on the first inner joist',
};

/** Share of one bay's load on the most loaded joist of a board over so many equal bays. */
export const greatestReaction: FormulaClause<(spans: number) => number> = /* @__PURE__ */ formula(
  reactions,
  (spans) => [1, 1.25, 1.1, 8 / 7, 43 / 38][spans - 1] ?? 1.135,
);
