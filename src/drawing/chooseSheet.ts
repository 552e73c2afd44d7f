import type { Extent } from '../survey/outline.js';
import type { Box } from './label.js';
import { type Paper, placing, type Sheet, type View } from './sheet.js';
import type { Surround } from './surround.js';

/** ISO 216 sizes, the shorter side first, mm. */
const PAPERS: Readonly<Record<Paper, readonly [number, number]>> = { A4: [210, 297], A3: [297, 420] };

/** From the edge of the paper to the frame, and from the frame to what stands in it, mm. */
export const MARGIN = 7;
const PADDING = 3;
/** Widths of the one column at the right, and of those below the plan, mm; notes take what is left. */
const COLUMN = { right: 66, key: 56, title: 76 } as const;
const BETWEEN_COLUMNS = 5;
/** Above the plan stands the name of the view. */
const HEADING = 8;

/** Where the columns stand: at the right over the whole height, or below over the whole width. */
type Arrangement = 'right' | 'below';

/** How much height key, notes and title block take, mm. */
export interface PanelHeights {
  /** All of them in one column of this width. */
  readonly together: (width: number) => number;
  /** The tallest of them, the key and the title block being of these widths. */
  readonly tallest: (key: number, notes: number, title: number) => number;
}

export interface SheetWish {
  readonly extent: Extent;
  readonly view: View;
  readonly papers: readonly Paper[];
  readonly scales: readonly number[];
  readonly surround: (scale: number) => Surround;
  readonly heights: (paper: Paper, scale: number) => PanelHeights;
}

/** The largest scale at which the room fits, on the first of the papers that has room for any; nothing where none has. */
export function fittingSheets(wish: SheetWish): Sheet[] {
  return wish.papers.flatMap((paper) => {
    for (const scale of wish.scales) {
      const sheet = sheetAt(wish, paper, scale);
      if (sheet !== undefined) return [sheet];
    }
    return [];
  });
}

/** The room on a paper at a scale, on the first arrangement of the sheet that has room for it. */
function sheetAt({ extent, view, surround, heights }: SheetWish, paper: Paper, scale: number): Sheet | undefined {
  const [width, depth] = [(extent.right - extent.left) / scale, (extent.high - extent.low) / scale];
  const { bands } = surround(scale);
  const need = { width: width + bands.left + bands.right, height: depth + bands.top + bands.bottom + HEADING };
  for (const [landscape, arrangement] of width >= depth ? ARRANGEMENTS : [...ARRANGEMENTS].reverse()) {
    const fields = arranged(paper, landscape, arrangement, heights(paper, scale));
    if (fields === undefined) continue;
    const { area, panel, size } = fields;
    const spare = { width: area.right - area.left - need.width, height: area.bottom - area.top - need.height };
    if (spare.width < 0 || spare.height < 0) continue;
    const left = area.left + bands.left + spare.width / 2;
    const top = area.top + HEADING + bands.top + spare.height / 2;
    const room = { left, top, right: left + width, bottom: top + depth };
    return { paper, ...size, scale, view, room, area, panel, place: placing(extent, room, scale, view) };
  }
  return undefined;
}

/** In the order in which they suit a room that is wider than deep. */
const ARRANGEMENTS = [
  [true, 'right'],
  [true, 'below'],
  [false, 'right'],
  [false, 'below'],
] as const;

type Fields = Pick<Sheet, 'area' | 'panel'> & { readonly size: Pick<Sheet, 'width' | 'height'> };

function arranged(paper: Paper, landscape: boolean, arrangement: Arrangement, heights: PanelHeights): Fields | undefined {
  const [short, long] = PAPERS[paper];
  const [width, height] = landscape ? [long, short] : [short, long];
  const inner = grownIn({ left: 0, top: 0, right: width, bottom: height }, MARGIN + PADDING);
  if (arrangement === 'right') {
    if (heights.together(COLUMN.right) > inner.bottom - inner.top) return undefined;
    const column = { ...inner, left: inner.right - COLUMN.right };
    return { size: { width, height }, area: { ...inner, right: column.left - 2 * PADDING }, panel: { column } };
  }
  const middle = inner.right - inner.left - COLUMN.key - COLUMN.title - 2 * BETWEEN_COLUMNS;
  const top = inner.bottom - heights.tallest(COLUMN.key, middle, COLUMN.title);
  const key = { ...inner, top, right: inner.left + COLUMN.key };
  const title = { ...inner, top, left: inner.right - COLUMN.title };
  const notes = { ...inner, top, left: key.right + BETWEEN_COLUMNS, right: title.left - BETWEEN_COLUMNS };
  return { size: { width, height }, area: { ...inner, bottom: top - 2 * PADDING }, panel: { key, notes, title } };
}

const grownIn = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left + by,
  top: top + by,
  right: right - by,
  bottom: bottom - by,
});
