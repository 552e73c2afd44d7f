import { type Block, spacer, stacked } from './block.js';
import type { PanelHeights } from './chooseSheet.js';
import { holdStamp } from './holdStamp.js';
import { type DrawingLayer, type Ink, inkOn } from './ink.js';
import type { Box } from './label.js';
import { legend } from './legend.js';
import { type Lettered, notes, notesHeight } from './notes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { type SheetFacts, titleBlock } from './titleBlock.js';

/** What stands beside or below the plan. */
export interface Panel {
  readonly subject: Subject;
  readonly facts: SheetFacts;
  readonly shown: readonly DrawingLayer[];
  readonly noFix: boolean;
}

const GAP = 4;

/** How much height the parts take. */
export const panelHeights = (panel: Panel): PanelHeights => ({
  together: (width) =>
    [stamp(panel, width), key(panel, width), title(panel, width)].reduce(
      (sum, { height }) => sum + height + GAP,
      notesHeight(panel.subject, width),
    ),
  tallest: (keyWidth, notesWidth, titleWidth) =>
    Math.max(
      key(panel, keyWidth).height,
      stamp(panel, notesWidth).height + notesHeight(panel.subject, notesWidth),
      title(panel, titleWidth).height,
    ),
});

const NOTHING: Block = { height: 0, draw: () => [] };

const stamp = ({ subject }: Panel, width: number): Block =>
  subject.plan.meta.held ? stacked([holdStamp(subject, Math.min(width, 70)), spacer(GAP)]) : NOTHING;
const key = ({ subject, shown, noFix }: Panel, width: number): Block => legend(subject, width, shown, noFix);
const title = ({ subject, facts }: Panel, width: number): Block => titleBlock(subject, facts, width);

/** Draws stamp, notes, key and title block: the title block always stands lowest at the right. */
export function panelInk(panel: Panel, where: Sheet['panel'], lettered: Lettered): Ink[] {
  const widthOf = ({ left, right }: Box): number => right - left;
  const noted = (width: number, room: number): Block => notes(panel.subject, lettered, width, room);
  if ('column' in where) {
    const { column } = where;
    const width = widthOf(column);
    const [held, legendBlock, titled] = [stamp(panel, width), key(panel, width), title(panel, width)];
    const room = column.bottom - column.top - held.height - legendBlock.height - titled.height - 2 * GAP;
    const upper = stacked([held, noted(width, room), spacer(GAP), legendBlock]);
    return inkOn('sheet', [...upper.draw(column.left, column.top), ...titled.draw(column.left, column.bottom - titled.height)]);
  }
  const held = stamp(panel, widthOf(where.notes));
  const titled = title(panel, widthOf(where.title));
  const room = where.notes.bottom - where.notes.top - held.height;
  return inkOn('sheet', [
    ...key(panel, widthOf(where.key)).draw(where.key.left, where.key.top),
    ...stacked([held, noted(widthOf(where.notes), room)]).draw(where.notes.left, where.notes.top),
    ...titled.draw(where.title.left, where.title.bottom - titled.height),
  ]);
}
