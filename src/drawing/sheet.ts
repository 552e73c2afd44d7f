import type { Extent } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Box } from './label.js';
import type { PaperPoint } from './svg.js';

/** `reflected`: as on a floor plan, seen from above; `looking-up`: its mirror image, as seen from the floor. */
export type View = 'reflected' | 'looking-up';
/** Sheets after ISO 216. */
export type Paper = 'A4' | 'A3';

/** A sheet of paper with the room's place on it. */
export interface Sheet {
  readonly paper: Paper;
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** One to this many. */
  readonly scale: number;
  readonly view: View;
  /** The room's extent on the sheet. */
  readonly room: Box;
  /** What belongs to the plan, dimensions included. */
  readonly area: Box;
  /** Where key, notes and title block stand: one above the other in one column, or each in its own. */
  readonly panel: { readonly column: Box } | { readonly key: Box; readonly notes: Box; readonly title: Box };
  readonly place: (point: Point) => PaperPoint;
}

/** How the plan point gets to the sheet: y turns over since paper counts downward, and x too when looking up. */
export const placing =
  (extent: Extent, room: Box, scale: number, view: View) =>
  ({ x, y }: Point): PaperPoint => ({
    x: room.left + (view === 'reflected' ? x - extent.left : extent.right - x) / scale,
    y: room.top + (extent.high - y) / scale,
  });
