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

function divisions(run: Run, most: number): number[][] {
  const last = run.places.length - 1;
  const fewest = fewestFrom(run);
  const found: number[][] = [];
  for (let count = fewest[0]; count <= last && found.length < most; count++) {
    const extend = (place: number, pieces: number[]): void => {
      if (place === last) {
        if (pieces.length === count) found.push(pieces);
        return;
      }
      if (pieces.length + fewest[place] > count || found.length >= most) return;
      for (const piece of run.starting[place]) extend(run.pieces[piece].to, [...pieces, piece]);
    };
    extend(0, []);
  }
  return found;
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
