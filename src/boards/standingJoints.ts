import { toGrid } from '../survey/grid.js';
import { isWithin } from '../survey/isWithin.js';
import { LEAST_LEFT } from './againstStanding.js';
import { isRaked, type JointLine, jointLine } from './jointLine.js';
import type { Part } from './partsOf.js';
import type { PlacementProblem } from './placementProblem.js';
import type { Box, Edges, Place, StandingJoint } from './possiblePieces.js';
import { type EndOfPiece, isBare, type UpPiece } from './standing.js';

/** A joint that nobody chooses: it is there. */
export interface StandingLine {
  readonly low: number;
  readonly at: number;
  readonly high: number;
  readonly standing: StandingJoint;
}

const isIn = (piece: Box, { low, high }: Edges): boolean => piece.low < high - LEAST_LEFT && piece.high > low + LEAST_LEFT;

/** The joints that pieces which are up make in a row. */
function standingLines(problem: PlacementProblem, part: Part, row: Edges): StandingLine[] {
  const up = part.standing.up.filter((piece) => isIn(piece, row)).sort((a, b) => a.near - b.near);
  const lines: StandingLine[] = [];
  const goesOn = boardedAt(problem, part);
  for (const piece of up) {
    const next = up.find(
      (other) => isIn(other, piece) && other.near >= piece.far - LEAST_LEFT && other.near - piece.far <= LEAST_LEFT,
    );
    const before = up.some(
      (other) => isIn(other, piece) && piece.near >= other.far - LEAST_LEFT && piece.near - other.far <= LEAST_LEFT,
    );
    if (!before && goesOn(piece.near - LEAST_LEFT, piece.nearEnd.middle))
      lines.push(lineBetween(problem, part, row, undefined, piece));
    if (next !== undefined || goesOn(piece.far + LEAST_LEFT, piece.farEnd.middle))
      lines.push(lineBetween(problem, part, row, piece, next));
  }
  return lines;
}

/** In the middle of a joist, if the gap may be as wide as that makes it; else half a gap from the piece that is up. */
function lineBetween(problem: PlacementProblem, part: Part, row: Edges, below?: UpPiece, above?: UpPiece): StandingLine {
  const { jointGap, jointGive } = problem.rules;
  const half = jointGap / 2;
  const levels = (['low', 'high'] as const).map((level) =>
    limitsOf(half, jointGive, below?.farEnd[level], above?.nearEnd[level]),
  );
  const fits = ({ low, high }: Pick<EndOfPiece, 'low' | 'high'>): boolean =>
    [low, high].every((at, i) => levels[i].least <= at && at <= levels[i].greatest);
  const centred = part.joists.map((joist) => jointLine(problem.rules, joist, row)).find(fits);
  const [low, high] = centred === undefined ? levels.map(({ middle }) => middle) : [centred.low, centred.high];
  const at = centred?.at ?? Math.round((low + high) / 2);
  return {
    low,
    at,
    high,
    standing: {
      joist: joistUnder(part, row, { low, high }),
      below: below === undefined ? 0 : low - half - below.farEnd.low,
      above: above === undefined ? 0 : above.nearEnd.low - low - half,
    },
  };
}

/** Where the middle of a joint may be, and where it is when no joist says. */
function limitsOf(
  half: number,
  give: number,
  below?: number,
  above?: number,
): { least: number; greatest: number; middle: number } {
  if (below !== undefined && above !== undefined)
    return { least: below, greatest: above, middle: Math.round((below + above) / 2) };
  if (below !== undefined) return { least: below + half, greatest: below + half + give, middle: below + half };
  const end = (above as number) - half;
  return { least: end - give, greatest: end, middle: end };
}

/** The joist that is under a joint all across a row, the nearest if there are several. */
function joistUnder({ joists }: Part, row: Edges, { low, high }: Pick<EndOfPiece, 'low' | 'high'>): number {
  let nearest = -1;
  let least = Infinity;
  for (const { joist, centre, index, ...runs } of joists) {
    const away = Math.max(Math.abs(centre(row.low) - low), Math.abs(centre(row.high) - high));
    if (away >= least || 2 * away > toGrid(joist.width) || runs.low > row.low + LEAST_LEFT || runs.high < row.high - LEAST_LEFT)
      continue;
    [nearest, least] = [index, away];
  }
  return nearest;
}

/** The joints that pieces which are up make in the rows on both sides of a row. */
function standingBeside(problem: PlacementProblem, part: Part, row: Edges): StandingLine[] {
  const { up } = part.standing;
  const beside = [
    up.filter(({ high }) => high <= row.low + LEAST_LEFT && row.low - high <= LEAST_LEFT),
    up.filter(({ low }) => low >= row.high - LEAST_LEFT && low - row.high <= LEAST_LEFT),
  ];
  return beside.flatMap((pieces) => {
    if (pieces.length === 0) return [];
    const edges = { low: Math.min(...pieces.map(({ low }) => low)), high: Math.max(...pieces.map(({ high }) => high)) };
    return standingLines(problem, part, edges);
  });
}

/** Where there is ceiling to be boarded. */
function boardedAt({ rules }: PlacementProblem, { clear, length }: Part): (x: number, y: number) => boolean {
  const { nominal } = rules.wallGap;
  if (clear === undefined) return (x) => x > nominal && x < length - nominal;
  const rings = clear(nominal);
  return (x, y) => rings.filter((ring) => isWithin(ring, { x, y })).length % 2 === 1;
}

/** Lines on which a run may be divided once pieces are up: joists that these leave free, and their own ends; in order. */
export function linesAround(
  problem: PlacementProblem,
  part: Part,
  row: Edges,
  run: Run,
  onJoists: readonly JointLine[],
): readonly DividingLine[] {
  if (isBare(part.standing)) return onJoists;
  const own = standingLines(problem, part, row).filter(
    ({ low, at, high }) => Math.min(low, at, high) > run.from && Math.max(low, at, high) < run.to,
  );
  const beside = standingBeside(problem, part, row);
  const { stagger } = problem.rules;
  const free = onJoists.filter(
    (line) =>
      !own.some(({ at }) => Math.abs(at - line.at) <= LEAST_LEFT) &&
      !beside.some(
        ({ at, low, standing }) =>
          standing.joist === line.joist.index || Math.min(Math.abs(at - line.at), Math.abs(low - line.high)) < stagger,
      ) &&
      !part.standing.beneath.some((joint) => isOverJoint(problem, row, line, joint)),
  );
  return [...free, ...own].sort((a, b) => a.at - b.at);
}

interface Run {
  readonly from: number;
  readonly to: number;
}

/** A line on which a run is divided. */
export type DividingLine = JointLine | StandingLine;

export const isStanding = (line: DividingLine): line is StandingLine => 'standing' in line;

/** How much wider than nominal a joint's gap may be left on one side. */
export const giveOf = ({ rules }: PlacementProblem, line: DividingLine): number =>
  isRaked(line) ? 0 : isStanding(line) ? rules.jointGive : Math.min(rules.jointGive, line.spare);

/** Whether a butt joint of another layer runs along this joist beneath some of the row. */
function isOverJoint({ rules }: PlacementProblem, row: Edges, { joist }: JointLine, joint: Box): boolean {
  const [low, high] = [Math.max(row.low, joint.low), Math.min(row.high, joint.high)];
  if (low >= high || joint.high - joint.low < joint.far - joint.near) return false;
  const away = Math.abs(joist.centre(Math.round((low + high) / 2)) - Math.round((joint.near + joint.far) / 2));
  return away <= toGrid(joist.joist.width) / 2 + rules.jointGap;
}

/** Where a run is divided on a line. */
export const placeOn = (line: DividingLine): Place =>
  isStanding(line)
    ? { at: line.at, low: line.low, high: line.high, joist: -1, standing: line.standing }
    : { at: line.at, low: line.low, high: line.high, joist: line.joist.index };
