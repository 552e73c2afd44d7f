import { type Clause, type FormulaClause, formula } from '../clause.js';

const lengths: Clause = {
  id: 'din-18182-2-1987-length',
  source: { standard: 'DIN 18182-2', edition: '1987', clause: 'table of dimensions, read in a scan', standing: 'read' },
  governs: 'how much shorter or longer a screw may be than its nominal length',
};

const threads: Clause = {
  id: 'din-18182-2-1987-thread',
  source: {
    standard: 'DIN 18182-2',
    edition: '1987',
    clause: 'table of dimensions, read in a scan whose columns were inferred',
    standing: 'secondary',
  },
  governs: 'length of thread of a screw',
};

const diameters: Clause = {
  id: 'din-18182-2-1987-diameter',
  source: {
    standard: 'DIN 18182-2',
    edition: '1987',
    clause: 'table of dimensions, read in a scan whose columns were inferred',
    standing: 'secondary',
  },
  governs: 'outer diameter of a screw of 3.5 nominal',
};

const LENGTHS: Readonly<Record<number, readonly [number, number]>> = {
  25: [24, 26.1],
  35: [33.8, 36.3],
  45: [43.8, 46.3],
  55: [53.5, 56.3],
};

const THREADS: Readonly<Record<number, number>> = { 25: 16, 35: 26, 45: 30 };

/** Least and greatest length of a screw of a nominal length, mm; nothing for lengths that are not in the table. */
export const screwLengths: FormulaClause<(nominal: number) => readonly [least: number, greatest: number] | undefined> =
  /* @__PURE__ */ formula(lengths, (nominal) => LENGTHS[nominal]);

/** Thread of a screw of a nominal length, mm; nothing for lengths that are not in the table. */
export const threadLength: FormulaClause<(nominal: number) => number | undefined> = /* @__PURE__ */ formula(
  threads,
  (nominal) => THREADS[nominal],
);

/** Least and greatest outer diameter of a screw of 3.5 mm nominal, mm. */
export const outerDiameter: FormulaClause<() => readonly [least: number, greatest: number]> = /* @__PURE__ */ formula(
  diameters,
  () => [3.4, 3.7],
);

/** Most that any screw of the table may be shorter or longer than its nominal length, mm. */
export const greatestDeviation = (): number =>
  Math.max(
    ...Object.entries(LENGTHS).flatMap(([nominal, [least, greatest]]) => [Number(nominal) - least, greatest - Number(nominal)]),
  );
