import type { End, Piece } from '../boards/boardLayout.js';
import { LEAST_TIMBER } from '../joists/bearing.js';
import type { Frame } from '../joists/frame.js';
import { type Finding, finding } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { corners } from '../survey/outline.js';
import type { Stretch } from './fixingMarks.js';
import { tooWideGap } from './lineFindings.js';
import type { LineJob, PlacedTimber } from './lineJob.js';
import { merged } from './screwPath.js';

/** What lies on one timber: the stretches along it in which a piece can be fixed to it. */
export interface Fixed {
  readonly timber: PlacedTimber;
  readonly run: Stretch;
}

/**
 * Butt joints of a piece that no timber holds, or for part of their length only: the joist ends under the joint, as at a trimmer.
 */
export function endFindings(piece: Piece, under: readonly Fixed[], main: Frame, job: LineJob): Finding[] {
  const ring = corners(piece.outline).map(main.into);
  const us = ring.map(({ u }) => u);
  return piece.ends.flatMap((end, i) => {
    if (end.meets !== 'board') return [];
    const on = under.filter(({ timber }) => timber.joist.id === end.joist);
    if (on.length === 0) return [endWithoutTimber(piece, end, main)];
    const extreme = i === 0 ? Math.min(...us) : Math.max(...us);
    return ring.flatMap((a, k) => {
      const b = ring[(k + 1) % ring.length];
      if (a.v === b.v || (a.u !== extreme && b.u !== extreme)) return [];
      return unheld({ from: Math.min(a.v, b.v), to: Math.max(a.v, b.v) }, on, job).map((stretch) => {
        const middle = Math.round((stretch.from + stretch.to) / 2);
        const { x, y } = main.back(on[0].timber.centreAt(middle), middle);
        const where = { piece: piece.id, joist: on[0].timber.joist.id, at: { x: fromGrid(x), y: fromGrid(y) } };
        return tooWideGap(stretch, 'end', false, where, job);
      });
    });
  });
}

/** What of a stretch no run holds, as far as it is longer than the spacing at board ends. */
function unheld({ from, to }: Stretch, on: readonly Fixed[], { spacing }: LineJob): Stretch[] {
  const limits = [from, ...merged(on.map(({ run }) => run)).flatMap((run) => [run.from, run.to]), to].map((v) =>
    Math.max(from, Math.min(to, v)),
  );
  return limits
    .flatMap((v, i) => (i % 2 === 0 ? [{ from: v, to: limits[i + 1] }] : []))
    .filter((gap) => gap.to - gap.from > toGrid(spacing.boardEnd));
}

function endWithoutTimber(piece: Piece, end: End, main: Frame): Finding {
  const levels = piece.outline.map((point) => main.into(point).v);
  const at = main.back(end.position, fromGrid(Math.round((toGrid(Math.min(...levels)) + toGrid(Math.max(...levels))) / 2)));
  return finding('fixing-off-timber', 'error', {
    where: { piece: piece.id, ...(end.joist !== undefined && { joist: end.joist }), at },
    limit: LEAST_TIMBER,
    unit: 'mm',
  });
}
