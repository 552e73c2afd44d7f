import type { Run } from './possiblePieces.js';

/** One way to divide a whole row: its pieces in order, and the joists that its butt joints are on. */
export interface RowPattern {
  /** Per run, indices into its pieces. */
  readonly pieces: readonly (readonly number[])[];
  /** Positions of the butt joints. */
  readonly joints: readonly number[];
  /** Indices of the joists under them. */
  readonly joists: readonly number[];
}

/** Ways to divide a row, those with few pieces first; at most `most` for each run. */
export function rowPatterns(runs: readonly Run[], most: number): RowPattern[] {
  let rows: RowPattern[] = [{ pieces: [], joints: [], joists: [] }];
  for (const run of runs) {
    const divided = divisions(run, most);
    rows = rows
      .flatMap((row) =>
        divided.map((pieces) => {
          const ends = pieces.slice(1).map((piece) => run.pieces[piece].from);
          return {
            pieces: [...row.pieces, pieces],
            joints: [...row.joints, ...ends.map((end) => run.places[end])],
            joists: [...row.joists, ...ends.map((end) => run.joistAt[end])],
          };
        }),
      )
      .slice(0, most);
  }
  return rows;
}

/**
 * Divisions of a run, the fewest pieces first. Each first piece gets its share, and after it the longest pieces come first, so
 * that butt joints at every distance from the wall are among them: neighbouring rows need joints in different places.
 */
function divisions(run: Run, most: number): number[][] {
  const last = run.places.length - 1;
  const fewest = fewestFrom(run);
  const share = Math.max(2, Math.floor(most / Math.max(1, run.starting[0].length)));
  const found: number[][] = [];
  const steps = { left: STEPS };
  for (let count = fewest[0]; count <= last && found.length < most && steps.left > 0; count++) {
    for (const first of run.starting[0]) divide(run, fewest, [first], { count, most: found.length + share, steps }, found);
  }
  return found;
}

/** Pieces tried for the divisions of one run. */
const STEPS = 20_000;

interface Wanted {
  readonly count: number;
  readonly most: number;
  readonly steps: { left: number };
}

/** Adds the ways to go on after these pieces to `found`, until it holds `most`. */
function divide(run: Run, fewest: readonly number[], pieces: readonly number[], wanted: Wanted, found: number[][]): void {
  const place = run.pieces[pieces[pieces.length - 1]].to;
  if (place === run.places.length - 1) {
    if (pieces.length === wanted.count) found.push([...pieces]);
    return;
  }
  const starting = run.starting[place];
  for (let at = starting.length - 1; at >= 0; at--) {
    if (found.length >= wanted.most || pieces.length + fewest[place] > wanted.count || wanted.steps.left-- <= 0) return;
    divide(run, fewest, [...pieces, starting[at]], wanted, found);
  }
}

/** Fewest pieces from each place to the end of the run; Infinity where the end cannot be reached. */
export function fewestFrom(run: Run): number[] {
  const fewest = run.places.map(() => Infinity);
  fewest[run.places.length - 1] = 0;
  for (let place = run.places.length - 2; place >= 0; place--) {
    for (const piece of run.starting[place]) fewest[place] = Math.min(fewest[place], 1 + fewest[run.pieces[piece].to]);
  }
  return fewest;
}
