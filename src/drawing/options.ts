import type { NoFixZone } from '../fixings/placedFixings.js';
import type { FigureUnit } from './figure.js';
import type { DrawingLayer } from './ink.js';
import type { Paper, View } from './sheet.js';
import type { TableOptions } from './table.js';
import type { DrawingMessages } from './words.js';

/** What `drawPlan` may be told. */
export interface DrawOptions {
  /**
   * `reflected` (default): the same way round as the floor plan. `looking-up`: as somebody sees it who stands under it with the
   * upper wall of the sheet in front, which is its mirror image and also how a board lies face up.
   */
  readonly view?: View;
  /** One to this many; chosen from 20, 25, 30, 40 and 50 (100, 200 and 500 for the largest rooms) when not given. */
  readonly scale?: number;
  /** Chosen when not given: A4, or A3 where A4 would not be legible. */
  readonly paper?: Paper;
  /** Which layers to draw; all of them when not given. Key, notes and title block are always there. */
  readonly layers?: readonly DrawingLayer[];
  /** Whole mm (default), or feet and inches to the nearest sixteenth. */
  readonly units?: FigureUnit;
  /** Where no screw may go, beside the zones of the job itself; plan coordinates in mm: hatched. */
  readonly noFix?: readonly NoFixZone[];
  /** Words that replace those of `drawingWords`. */
  readonly messages?: DrawingMessages;
}

/** What `cutList` may be told. */
export interface CutListOptions extends TableOptions {
  /** Board by board (default), or as the pieces go up. */
  readonly order?: 'cutting' | 'fixing';
}

/** What `drawCutting` may be told. */
export interface CuttingOptions {
  /** `looking-up` (default): boards lying face up, the mirror image of the plan. `reflected`: as on the reflected plan. */
  readonly view?: View;
  /** Which sheet, from 1; the sheet says how many there are. */
  readonly sheet?: number;
  readonly units?: FigureUnit;
  readonly messages?: DrawingMessages;
}
