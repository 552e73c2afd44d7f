import { lengthWeights } from './lengthWeights.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Run } from './possiblePieces.js';
import type { Band } from './rowLayouts.js';

/** A row with its runs. */
export interface PlacedRow {
  readonly band: Band;
  readonly runs: readonly Run[];
}

/**
 * A number of boards that no layout on these rows can be below: for each weighting of lengths, every row is divided in its
 * lightest way, and a strip of a ripped row weighs its share of a board's width. Infinity when a row cannot be divided at all.
 *
 * With several stock sizes one board at least as large as any of them stands for all.
 */
export function boardBound(problem: PlacementProblem, rows: readonly PlacedRow[]): number {
  const kerf = Math.min(...problem.stocks.map((stock) => stock.kerf));
  const longest = Math.max(...problem.stocks.map((stock) => stock.length));
  const widest = Math.max(...problem.stocks.map((stock) => stock.width));
  const size = (cut: number): number => Math.min(cut, longest) + kerf;
  const sizes = [...new Set(rows.flatMap(({ runs }) => runs.flatMap((run) => run.pieces.map(({ cut }) => size(cut)))))];
  const place = new Map(sizes.map((each, index) => [each, index]));
  const shares = sharesOfWidth([...new Set(rows.map(({ band }) => band.width))], widest, kerf);
  let bound = 0;
  for (const weights of lengthWeights(sizes, longest + kerf)) {
    const lightest = new Map<Run, number>();
    const weigh = (run: Run): number => {
      const known = lightest.get(run);
      if (known !== undefined) return known;
      const weight = lightestDivision(run, (piece) => weights.of[place.get(size(piece.cut)) as number]);
      lightest.set(run, weight);
      return weight;
    };
    const rowWeights = rows.map(({ runs }) => runs.reduce((sum, run) => sum + weigh(run), 0));
    if (rowWeights.includes(Infinity)) return Infinity;
    for (const share of shares) {
      const total = rowWeights.reduce((sum, weight, index) => sum + weight * (share.of.get(rows[index].band.width) as number), 0);
      bound = Math.max(bound, Math.ceil(total / (weights.most * share.most)));
    }
  }
  return bound;
}

function lightestDivision(run: Run, weigh: (piece: Run['pieces'][number]) => number): number {
  const lightest = run.places.map(() => Infinity);
  lightest[run.places.length - 1] = 0;
  for (let at = run.places.length - 2; at >= 0; at--) {
    for (const index of run.starting[at]) {
      const piece = run.pieces[index];
      lightest[at] = Math.min(lightest[at], weigh(piece) + lightest[piece.to]);
    }
  }
  return lightest[0];
}

/** What each row width counts for, in whole parts of `most`: rows side by side on a board never count for more. */
interface WidthShares {
  readonly of: ReadonlyMap<number, number>;
  readonly most: number;
}

function sharesOfWidth(widths: readonly number[], board: number, kerf: number): WidthShares[] {
  const strips = (width: number): number => Math.max(1, Math.floor((board + kerf) / (width + kerf)));
  const ripped = widths.filter((width) => width < board).sort((a, b) => b - a);
  const most = ripped.reduce((product, width) => product * strips(width), 1);
  const shares = (parts: (width: number) => number, whole: number): WidthShares => ({
    of: new Map(widths.map((width) => [width, width >= board ? whole : parts(width)])),
    most: whole,
  });
  if (ripped.length < 2) return [shares((width) => most / strips(width), most)];
  // Several ripped widths may share a board: by width, and by each of them alone where the wider ones would fill it.
  return [
    shares((width) => width + kerf, board + kerf),
    ...ripped.map((least) => shares((width) => (width < least ? 0 : 1), strips(least))),
  ];
}
