import { frameOf } from '../joists/frame.js';
import type { Direction } from '../survey/joist.js';
import type { Point } from '../survey/point.js';
import type { BoardLayout } from './boardLayout.js';

/** A joint from one place on the plan to another, mm. */
export type JointLine = readonly [Point, Point];

/** The joints of a layout as lines, for a layer that goes over it: butt joints, and the long joints between its rows. */
export function oldJointLines({ pieces, rows }: Pick<BoardLayout, 'pieces' | 'rows'>, direction: Direction): JointLine[] {
  const { back, into } = frameOf(direction);
  const butts = pieces.flatMap(({ row, ends: [low] }): JointLine[] => {
    const band = rows[row - 1];
    return low.meets === 'board' ? [[back(low.position, band.low), back(low.position, band.high)]] : [];
  });
  const long = rows.slice(0, -1).map(({ row, high }): JointLine => {
    const across = pieces.filter((piece) => piece.row === row).flatMap(({ outline }) => outline.map((point) => into(point).u));
    return [back(Math.min(...across), high), back(Math.max(...across), high)];
  });
  return [...butts, ...long];
}
