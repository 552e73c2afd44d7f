import { type Finding, finding } from '../../rules/finding.js';
import { commonPractice } from '../../rules/source.js';
import type { LaidCeiling, LaidPart } from './laidCeiling.js';
import { turnedAbout, wallsFaced } from './wallsFaced.js';
import { windowsOf } from './windowsOf.js';

/**
 * Ripped rows beside a window whose wall runs with the rows: the long joint on the other side of such a row lies nearer to the light
 * than it need. A ceiling of one row has no joint there.
 */
export function windowRowFindings({ room, parts }: LaidCeiling): Finding[] {
  const windows = windowsOf(room);
  if (windows.length === 0) return [];
  return parts.flatMap((part) => {
    if (part.rows.length < 2) return [];
    return windows.flatMap((wall) =>
      part.rows
        .filter(({ row, ripped }) => ripped && liesAt(part, row, wall))
        .map(({ row, width }) =>
          finding('window-row-ripped', 'warning', { where: { row, wall }, value: width, unit: 'mm', source: commonPractice }),
        ),
    );
  });
}

/** Whether a long edge of a row faces a wall that runs with the rows. */
function liesAt({ pieces, walls }: LaidPart, row: number, wall: number): boolean {
  const [a, b] = walls[wall];
  if (Math.abs(b.v - a.v) >= Math.abs(b.u - a.u)) return false;
  const about = walls.map(([c, d]) => [turnedAbout(c), turnedAbout(d)] as const);
  return pieces
    .filter(({ piece }) => piece.row === row)
    .some(({ outline }) =>
      (['low', 'high'] as const).some((side) =>
        wallsFaced(outline.map(turnedAbout), about, side).some((faced) => faced.wall === wall),
      ),
    );
}
