import type { Laid } from './laid.js';
import type { Box } from './openingsInPieces.js';
import { sizeFrom } from './pieceKinds.js';
import type { PlacedJoist, PlacementProblem } from './placementProblem.js';
import type { Run } from './possiblePieces.js';
import type { Band } from './rowLayouts.js';
import type { Edges } from './standingJoints.js';

/** One end of a piece as laid, in grid steps. */
export interface LaidEnd {
  readonly meets: 'board' | 'wall' | 'opening';
  /** The joint's centre line, or where the piece ends at a wall or an opening. */
  readonly position: number;
  /** At a butt joint: which of the problem's joists. */
  readonly joist?: number;
  /** How far the middle of the gap is from the middle of the joist, at worst across the row. */
  readonly offset: number;
  readonly gap: number;
}

/** A piece in its place, in the problem's coordinates and grid steps. */
export interface LaidPiece {
  /** Among the wanted. */
  readonly index: number;
  /** From 0 at the low side; of `rows`. */
  readonly row: number;
  readonly rows: number;
  /** From 0 at the low end of the row; of `count`. */
  readonly place: number;
  readonly count: number;
  readonly nominal: number;
  readonly width: number;
  /** As cut. */
  readonly box: Box;
  readonly ends: readonly [low: LaidEnd, high: LaidEnd];
}

/** Every piece in its place, a board that is a little short for its place standing in the middle of what it may take up. */
export function laidPieces(problem: PlacementProblem, laid: Laid): LaidPiece[] {
  const short = shortfalls(laid);
  const found: LaidPiece[] = [];
  laid.rows.forEach(({ band, runs }, row) => {
    const count = laid.divisions[row].pieces.reduce((sum, pieces) => sum + pieces.length, 0);
    const first = found.length;
    runs.forEach((run, at) => {
      const pieces = laid.divisions[row].pieces[at];
      const start = found.length;
      const shares = pieces.map((piece, k) => shareOf(problem, run, piece, short[start + k]));
      pieces.forEach((piece, k) => {
        const { from, to, nominal } = run.pieces[piece];
        const meetsLow = k > 0 && run.pieces[pieces[k - 1]].to === from;
        const meetsHigh = k + 1 < pieces.length && run.pieces[pieces[k + 1]].from === to;
        const ends = [
          endAt(problem, band, run, from, [meetsLow ? shares[k - 1][1] : (run.standing?.[from]?.below ?? 0), shares[k][0]]),
          endAt(problem, band, run, to, [shares[k][1], meetsHigh ? shares[k + 1][0] : (run.standing?.[to]?.above ?? 0)]),
        ] as const;
        found.push({
          index: found.length,
          row,
          rows: laid.rows.length,
          place: found.length - first,
          count,
          nominal,
          width: band.width,
          box: {
            near: run.places[from] + (from > 0 ? problem.rules.jointGap / 2 : 0) + shares[k][0],
            far: run.places[to] - (to < run.places.length - 1 ? problem.rules.jointGap / 2 : 0) - shares[k][1],
            low: band.low,
            high: band.high,
          },
          ends,
        });
      });
    });
  });
  return found;
}

/** Per wanted piece, how much shorter it is than its place. */
function shortfalls({ wanted, boards }: Laid): number[] {
  const short = wanted.map(() => 0);
  for (const { stock, whole, strips } of boards) {
    for (const index of [...whole, ...strips.flatMap(({ pieces }) => pieces)]) {
      short[index] = wanted[index].piece.cut - sizeFrom(stock, wanted[index].piece);
    }
  }
  return short;
}

/** How a shortfall is shared between the two ends: a wall takes what it may, then the butt joint; like ends share alike. */
function shareOf({ rules }: PlacementProblem, run: Run, piece: number, short: number): readonly [number, number] {
  const { from, to } = run.pieces[piece];
  const last = run.places.length - 1;
  const atWall = [from === 0 && run.lowMeets === 'wall', to === last && run.highMeets === 'wall'];
  if (atWall[0] === atWall[1] && (from === 0) === (to === last)) return [Math.floor(short / 2), Math.ceil(short / 2)];
  if (from === 0 && !atWall[0]) return [0, short];
  if (to === last && !atWall[1]) return [short, 0];
  const wall = Math.min(short, rules.wallGive);
  return atWall[0] ? [wall, short - wall] : [short - wall, wall];
}

function endAt(
  problem: PlacementProblem,
  band: Band,
  run: Run,
  place: number,
  [below, above]: readonly [number, number],
): LaidEnd {
  const at = run.places[place];
  if (place === 0) return { meets: run.lowMeets, position: at + above, offset: 0, gap: 0 };
  if (place === run.places.length - 1) return { meets: run.highMeets, position: at - below, offset: 0, gap: 0 };
  return buttAt(problem, band, at, run.standing?.[place]?.joist ?? run.joistAt[place], [below, above]);
}

/** A butt joint at a place, over one of the problem's joists or, by -1, over none. */
export function buttAt(
  problem: PlacementProblem,
  row: Edges,
  at: number,
  joist: number,
  [below, above]: readonly [number, number],
): LaidEnd {
  const end = { meets: 'board' as const, position: at, gap: problem.rules.jointGap + below + above };
  if (joist < 0) return { ...end, offset: 0 };
  const off = (above - below) / 2;
  const offset = Math.round(Math.max(...strayed(problem.joists[joist], row, at).map((away) => Math.abs(away + off))));
  return { ...end, joist, offset };
}

/** How far a square joint is from the middle of its joist at the two edges of the row. */
const strayed = (joist: PlacedJoist, band: Edges, at: number): number[] => [
  at - joist.centre(band.low),
  at - joist.centre(band.high),
];
