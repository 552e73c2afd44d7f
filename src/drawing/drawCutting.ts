import type { Board } from '../boards/boardLayout.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { problem, refuse } from '../survey/inputError.js';
import { type Block, paragraph, spacer, stacked } from './block.js';
import { boardSketch, LEFT, OVER, RIGHT, UNDER } from './boardSketch.js';
import { holdStamp } from './holdStamp.js';
import { LETTERS, shortened } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import type { CuttingOptions } from './options.js';
import { openingsOf } from './pieceOpenings.js';
import { provisionalText } from './provisional.js';
import { cuttingOptionsSchema, planSchema } from './schemas.js';
import type { View } from './sheet.js';
import { type Subject, subjectOf } from './subject.js';
import { rect } from './svg.js';
import { svgDocument } from './svgDocument.js';

/** A4, upright; what stands within the frame, mm. */
const PAGE = { width: 210, height: 297, frame: 7, margin: 10 } as const;
const SCALES = [25, 30, 40, 50, 100] as const;

/**
 * Draws how each board is cut: pieces with their numbers and sizes, cuts dimensioned from the left end, offcuts hatched, the
 * wall that each side faces. Boards that stay whole are listed. Under a hold the sheet is stamped.
 *
 * @param plan - what `planCeiling` returned
 * @returns the text of an SVG file, one sheet of A4
 * @throws InputError when the plan or an option is not as described, or there is no such sheet
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 * import { drawCutting } from 'soffitwright/drawing';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 25, spacing: 390, last: 2365, width: 50 },
 *   lining: [],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(drawCutting(plan).includes('Boards lying face up: mirror image of the plan'));
 * // true
 * ```
 */
export function drawCutting(plan: CeilingPlan, options: CuttingOptions = {}): string {
  admit(planSchema, plan, 'plan');
  admit(cuttingOptionsSchema, options, 'options');
  const { view = 'looking-up', sheet = 1 } = options;
  const subject = subjectOf(plan, options.units, options.messages);
  const { say } = subject;
  const cut = plan.layout.boards.filter(({ cuts }) => cuts.length > 0);
  const grid = gridOf(subject, cut);
  if (sheet > grid.sheets) refuse(problem('no-such-sheet', 'options.sheet', `1 to ${grid.sheets}`, String(sheet)));
  const { head } = grid;
  const room = { left: PAGE.margin, top: PAGE.margin + head.height + 2 };
  const sketches = cut.slice((sheet - 1) * grid.perSheet, sheet * grid.perSheet).flatMap((board, i) => {
    const corner = {
      x: room.left + LEFT + (i % grid.columns) * grid.cell.width,
      y: room.top + OVER + Math.floor(i / grid.columns) * grid.cell.height,
    };
    const stock = stockOf(plan, board);
    return stock === undefined ? [] : boardSketch(subject, { board, stock, corner, scale: grid.scale, view });
  });
  const foot = paragraph(
    say('cutting.sheet', { sheet, count: grid.sheets, scale: grid.scale }),
    PAGE.width - 2 * PAGE.margin,
    LETTERS.small,
    true,
  );
  const { width, height, frame, margin } = PAGE;
  return svgDocument({
    width,
    height,
    title: `${nameOf(subject)}: ${say('cutting.title')}, ${say(`cutting.view.${view}`)}`,
    layers: [
      { name: 'cutting', parts: sketches },
      {
        name: 'sheet',
        parts: [
          rect(frame, frame, width - 2 * frame, height - 2 * frame, { 'stroke-width': WIDTH.wide }),
          ...grid.headFor(view).draw(margin, margin),
          ...foot.draw(margin, height - margin - foot.height),
        ],
      },
    ],
  });
}

const nameOf = ({ plan, say }: Subject): string => plan.room.name ?? plan.room.id ?? say('room.unnamed');

const stockOf = (plan: CeilingPlan, { stock }: Board) => plan.job.boards.find(({ id }) => id === stock);

/** How the sketches are set out: the largest scale at which all boards fit one sheet, else the smallest that is easy to read. */
function gridOf(subject: Subject, cut: readonly Board[]) {
  const { plan } = subject;
  const width = PAGE.width - 2 * PAGE.margin;
  const headFor = (view: View): Block => headOf(subject, view, width);
  const head = headFor('looking-up');
  const stocks = cut.flatMap((board) => stockOf(plan, board) ?? []);
  const [longest, widest] = [
    Math.max(0, ...stocks.map(({ length }) => length)),
    Math.max(0, ...stocks.map((each) => each.width)),
  ];
  const room = PAGE.height - 2 * PAGE.margin - head.height - 8;
  const at = (scale: number) => {
    const cell = { width: longest / scale + LEFT + RIGHT, height: widest / scale + OVER + UNDER + 3 };
    const [columns, rows] = [Math.floor(width / cell.width), Math.floor(room / cell.height)];
    return { scale, cell, columns, perSheet: columns * rows };
  };
  const grids = SCALES.map(at).filter(({ perSheet }) => perSheet > 0);
  const smallest = grids.filter(({ scale }) => scale <= 50).pop() ?? grids[grids.length - 1];
  const chosen = grids.find(({ perSheet, scale }) => perSheet >= cut.length && scale <= 50) ?? smallest;
  return { ...chosen, head, headFor, sheets: Math.max(1, Math.ceil(cut.length / chosen.perSheet)) };
}

/** Room, view, rules, hold, and the boards that need no sketch. */
function headOf(subject: Subject, view: View, width: number): Block {
  const { plan, say, unit } = subject;
  const small = (text: string): Block => paragraph(text, width);
  const whole = plan.layout.boards.filter(({ cuts }) => cuts.length === 0);
  const list = whole.map(({ id }) =>
    say('cutting.wholeEach', {
      board: id,
      pieces: plan.layout.pieces
        .filter((piece) => piece.board === id)
        .map((piece) => piece.id)
        .join(', '),
    }),
  );
  const open = plan.layout.pieces.filter((piece) => openingsOf(subject, piece).length > 0).map(({ id }) => id);
  const title = shortened(`${nameOf(subject)}: ${say('cutting.title')}`, width, LETTERS.large, true);
  return stacked([
    paragraph(title, width, LETTERS.large, true),
    paragraph(say(`cutting.view.${view}`), width, LETTERS.medium, true),
    ...(plan.meta.held ? [spacer(2), holdStamp(subject, 90)] : []),
    small(say('table.rules', { rules: plan.job.rules.title })),
    small(say('cutting.figures', { unit: say(`unit.${unit}`) })),
    ...(list.length > 0 ? [small(say('cutting.whole', { list: list.join(', ') }))] : []),
    ...(open.length > 0 ? [small(say('cutting.openings', { list: open.join(', ') }))] : []),
    ...provisionalText(subject).map((text) => paragraph(text, width, LETTERS.small, true)),
    small(say('caution')),
  ]);
}
