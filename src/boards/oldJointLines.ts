import { frameOf } from '../joists/frame.js';
import type { Direction } from '../survey/joist.js';
import type { Point } from '../survey/point.js';
import type { BoardLayout } from './boardLayout.js';

/** A joint from one place on the plan to another, mm. */
export type JointLine = readonly [Point, Point];

/** The joints of a layout as lines, for a layer that goes over it: butt joints, and the long joints between its rows. */
export function oldJointLines(
  { pieces, rows }: Pick<BoardLayout, 'pieces' | 'rows'>,
  directionIn: (zone: string | undefined) => Direction,
): JointLine[] {
  const butts = pieces.flatMap(({ row, ends: [low] }): JointLine[] => {
    const band = rows[row - 1];
    const { back } = frameOf(directionIn(band.zone));
    return low.meets === 'board' ? [[back(low.position, band.low), back(low.position, band.high)]] : [];
  });
  const long = rows.slice(0, -1).flatMap(({ row, high, zone }, i): JointLine[] => {
    if (rows[i + 1].zone !== zone) return [];
    const { back, into } = frameOf(directionIn(zone));
    const across = pieces.filter((piece) => piece.row === row).flatMap(({ outline }) => outline.map((point) => into(point).u));
    return [[back(Math.min(...across), high), back(Math.max(...across), high)]];
  });
  return [...butts, ...long];
}
