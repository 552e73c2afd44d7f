import type { Piece } from '../boards/boardLayout.js';
import { LEAST_TIMBER } from '../joists/bearing.js';
import type { Frame } from '../joists/frame.js';
import type { Finding } from '../rules/finding.js';
import { toGrid } from '../survey/grid.js';
import type { Extent } from '../survey/outline.js';
import { endFindings, type Fixed } from './endFindings.js';
import type { LineJob, PlacedTimber } from './lineJob.js';
import { type PieceSides, pieceSides, sidesOver } from './pieceSides.js';
import type { FixingLine } from './placedFixings.js';
import { type SetOut, setOutLine } from './setOutLine.js';
import { timberUnder } from './timberUnder.js';

/** The screws of one piece, on every timber under it. */
export function fixPiece(
  piece: Piece,
  timbers: readonly PlacedTimber[],
  main: Frame,
  job: LineJob,
): { readonly lines: readonly SetOut[]; readonly findings: readonly Finding[] } {
  const sides = pieceSides(piece, main, job.spacing);
  const under = timbers.flatMap((timber) => {
    if (!reaches(sides.about, timber)) return [];
    const edges = sidesOver(sides, timber, main, job);
    return timberUnder(edges, timber, toGrid(LEAST_TIMBER)).map((run) => ({ timber, edges, run }));
  });
  const across = linesAcross(sides, under, main, job);
  return {
    lines: under.map(({ timber, edges, run }) => {
      const middle = Math.round((run.from + run.to) / 2);
      const lines = across.map((each) => each.centreAt(middle));
      const kind =
        timber.frame.direction === main.direction
          ? lineKind(piece, timber.centreAt(middle), lines)
          : timber.joist.kind === 'trimmer'
            ? 'end'
            : 'field';
      return setOutLine({ piece, timber, edges, run, kind }, job);
    }),
    findings: endFindings(piece, under, main, job),
  };
}

/**
 * The joists across which a piece lies: those of its butt joints, and those under half of its width or under it for as far as two screws
 * are apart. At a wall that slants, one that holds a corner only does not stand between the wall and the next.
 */
function linesAcross({ piece, box }: PieceSides, under: readonly Fixed[], main: Frame, { spacing }: LineJob): PlacedTimber[] {
  const enough = Math.min((box.high - box.low) / 2, toGrid(spacing.field));
  const lengths = new Map<PlacedTimber, number>();
  for (const { timber, run } of under) {
    if (timber.frame.direction === main.direction) lengths.set(timber, (lengths.get(timber) ?? 0) + run.to - run.from);
  }
  return [...lengths]
    .filter(([timber, length]) => length >= enough || piece.ends.some(({ joist }) => joist === timber.joist.id))
    .map(([timber]) => timber);
}

/** Whether a timber reaches a rectangle at all; grid steps. */
function reaches({ left, right, low, high }: Extent, timber: PlacedTimber): boolean {
  const [from, to] = [timber.frame.into({ x: left, y: low }), timber.frame.into({ x: right, y: high })];
  return from.u < timber.far && to.u > timber.near && from.v < timber.high && to.v > timber.low;
}

/**
 * The first and the last line of a piece, of all that lie across it, are those of its ends: closer where it meets a board or an
 * opening, and along a wall. An end that runs past its last joist to a wall has its screws on that joist. A lone line serves both ends.
 */
function lineKind(piece: Piece, across: number, lines: readonly number[]): FixingLine['kind'] {
  const [low, high] = piece.ends.map(({ meets }): FixingLine['kind'] => (meets === 'wall' ? 'perimeter' : 'end'));
  const [isFirst, isLast] = [lines.every((each) => each >= across), lines.every((each) => each <= across)];
  if (isFirst && isLast) return low === 'end' ? low : high;
  return isFirst ? low : isLast ? high : 'field';
}
