import type { Board, Piece } from '../boards/boardLayout.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { problem, refuse } from '../survey/inputError.js';
import { type Block, paragraph, spacer, stacked } from './block.js';
import { boardSketch, LEFT, OVER, RIGHT, UNDER } from './boardSketch.js';
import { holdStamp } from './holdStamp.js';
import { isWhole } from './isWhole.js';
import { LETTERS, shortened } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import type { CuttingOptions } from './options.js';
import { openingsOf } from './pieceOpenings.js';
import { pieceShape } from './pieceShape.js';
import { PIECE_ROOM, pieceSketch } from './pieceSketch.js';
import { provisionalText } from './provisional.js';
import { cuttingOptionsSchema, planSchema } from './schemas.js';
import type { View } from './sheet.js';
import { stillToFix, upText } from './stillToFix.js';
import { type Subject, zoneOf } from './subject.js';
import { subjectOf } from './subjectOf.js';
import { rect } from './svg.js';
import { svgDocument } from './svgDocument.js';

/** A4, upright; what stands within the frame, mm. */
const PAGE = { width: 210, height: 297, frame: 7, margin: 10 } as const;
const SCALES = [25, 30, 40, 50, 100] as const;

/**
 * Draws how each board is cut: pieces with their numbers and sizes, cuts dimensioned from the left end, offcuts hatched, the
 * wall that each side faces. Boards that stay whole are listed. Pieces that are no rectangles follow on sheets of their own, lying
 * as their boards lie, with a figure for every corner and ticks on cut edges. A board that was cut into already is drawn whole, the
 * pieces from it that are up marked so. Under a hold the sheet is stamped.
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
  const boards = boardSheets(subject, view);
  const shaped = pieceSheets(subject, view);
  const count = boards.count + shaped.count;
  if (sheet > count) refuse(problem('no-such-sheet', 'options.sheet', `1 to ${count}`, String(sheet)));
  const part = sheet <= boards.count ? boards : shaped;
  const own = sheet <= boards.count ? sheet : sheet - boards.count;
  const { width, height, frame, margin } = PAGE;
  const foot = paragraph(say('cutting.sheet', { sheet, count, scale: part.scale }), width - 2 * margin, LETTERS.small, true);
  return svgDocument({
    width,
    height,
    title: `${nameOf(subject)}: ${say('cutting.title')}, ${say(`cutting.view.${view}`)}`,
    layers: [
      { name: 'cutting', parts: part.draw(own) },
      {
        name: 'sheet',
        parts: [
          rect(frame, frame, width - 2 * frame, height - 2 * frame, { 'stroke-width': WIDTH.wide }),
          ...part.head.draw(margin, margin),
          ...foot.draw(margin, height - margin - foot.height),
        ],
      },
    ],
  });
}

/** Sheets of sketches of one kind. */
interface Sheets {
  readonly count: number;
  readonly scale: number;
  readonly head: Block;
  /** From 1. */
  readonly draw: (sheet: number) => string[];
}

function boardSheets(subject: Subject, view: View): Sheets {
  const { plan } = subject;
  const cut = boardsToCut(plan).flatMap((board) => {
    const stock = plan.job.boards.find(({ id }) => id === board.stock);
    return stock === undefined || isWhole(subject, board) ? [] : [{ board, stock }];
  });
  const { headFor, ...grid } = gridOf({
    sizes: cut.map(({ stock }) => stock),
    room: { over: OVER, under: UNDER, left: LEFT, right: RIGHT },
    headFor: (each) => headOf(subject, each, WIDTH_OF_HEAD),
  });
  return {
    count: Math.max(1, grid.sheets),
    scale: grid.scale,
    head: headFor(view),
    draw: (sheet) =>
      grid.on(sheet).flatMap(({ index, corner }) => boardSketch(subject, { ...cut[index], corner, scale: grid.scale, view })),
  };
}

/** Pieces that are no rectangles, each large enough for all its figures. */
function pieceSheets(subject: Subject, view: View): Sheets {
  const pieces = shapedPieces(subject);
  const { headFor, ...grid } = gridOf({
    sizes: pieces.map(({ cutLength, width }) => ({ length: cutLength, width })),
    room: PIECE_ROOM,
    headFor: (each) => pieceHead(subject, each, WIDTH_OF_HEAD),
  });
  return {
    count: grid.sheets,
    scale: grid.scale,
    head: headFor(view),
    draw: (sheet) =>
      grid.on(sheet).flatMap(({ index, corner }) => {
        const piece = pieces[index];
        return pieceSketch(zoneOf(subject, piece), { piece, corner, scale: grid.scale, view, span: grid.span });
      }),
  };
}

/** Boards that something is still to be cut from. */
function boardsToCut(plan: CeilingPlan): Board[] {
  const wanted = new Set(stillToFix(plan).map(({ board }) => board));
  return plan.layout.boards.filter(({ id }) => wanted.has(id));
}

const shapedPieces = (subject: Subject): Piece[] =>
  stillToFix(subject.plan).filter((piece) => pieceShape(piece, zoneOf(subject, piece)).kind !== 'rectangle');

const WIDTH_OF_HEAD = PAGE.width - 2 * PAGE.margin;

const nameOf = ({ plan, say }: Subject): string => plan.room.name ?? plan.room.id ?? say('room.unnamed');

interface GridWish {
  /** Of what is sketched, mm. */
  readonly sizes: readonly { readonly length: number; readonly width: number }[];
  /** What stands round each sketch, mm on paper. */
  readonly room: { readonly over: number; readonly under: number; readonly left: number; readonly right: number };
  readonly headFor: (view: View) => Block;
}

/** How sketches are set out: on as few sheets as a scale that is easy to read allows, and as large as they then can be. */
function gridOf({ sizes, room, headFor }: GridWish) {
  const head = headFor('looking-up');
  const longest = Math.max(0, ...sizes.map(({ length }) => length));
  const widest = Math.max(0, ...sizes.map(({ width }) => width));
  const height = PAGE.height - 2 * PAGE.margin - head.height - 8;
  const at = (scale: number) => {
    const cell = { width: longest / scale + room.left + room.right, height: widest / scale + room.over + room.under + 3 };
    const [columns, rows] = [Math.floor(WIDTH_OF_HEAD / cell.width), Math.floor(height / cell.height)];
    return { scale, cell, columns, perSheet: columns * rows, sheets: Math.ceil(sizes.length / (columns * rows)) };
  };
  const grids = SCALES.map(at).filter(({ perSheet }) => perSheet > 0);
  const legible = grids.filter(({ scale }) => scale <= 50);
  const fewest = (legible.length > 0 ? legible : grids).reduce((best, each) => (each.sheets < best.sheets ? each : best));
  const { scale, cell, columns, perSheet, sheets } = fewest;
  const on = (sheet: number) =>
    sizes
      .map((_, index) => index)
      .slice((sheet - 1) * perSheet, sheet * perSheet)
      .map((index, i) => ({
        index,
        corner: {
          x: PAGE.margin + room.left + (i % columns) * cell.width,
          y: PAGE.margin + head.height + 2 + room.over + Math.floor(i / columns) * cell.height,
        },
      }));
  return { scale, headFor, on, sheets, span: cell.width - room.left - 2 };
}

/** Room, view and rules over the sketches of pieces. */
function pieceHead(subject: Subject, view: View, width: number): Block {
  const { plan, say, unit } = subject;
  const title = shortened(`${nameOf(subject)}: ${say('cutting.pieces')}`, width, LETTERS.large, true);
  return stacked([
    paragraph(title, width, LETTERS.large, true),
    paragraph(say(`cutting.piecesView.${view}`), width, LETTERS.medium, true),
    ...(plan.meta.held ? [spacer(2), holdStamp(subject, 90)] : []),
    paragraph(say('table.rules', { rules: plan.job.rules.title }), width),
    paragraph(say('cutting.piecesFigures', { unit: say(`unit.${unit}`) }), width),
    ...provisionalText(subject).map((text) => paragraph(text, width, LETTERS.small, true)),
    paragraph(say('caution'), width),
  ]);
}

/** Room, view, rules, hold, and the boards that need no sketch. */
function headOf(subject: Subject, view: View, width: number): Block {
  const { plan, say, unit } = subject;
  const small = (text: string): Block => paragraph(text, width);
  const whole = boardsToCut(plan).filter((board) => isWhole(subject, board));
  const list = whole.map(({ id }) =>
    say('cutting.wholeEach', {
      board: id,
      pieces: plan.layout.pieces
        .filter((piece) => piece.board === id)
        .map((piece) => piece.id)
        .join(', '),
    }),
  );
  const open = stillToFix(plan)
    .filter((piece) => openingsOf(zoneOf(subject, piece), piece).length > 0)
    .map(({ id }) => id);
  const shaped = shapedPieces(subject).map(({ id }) => id);
  const title = shortened(`${nameOf(subject)}: ${say('cutting.title')}`, width, LETTERS.large, true);
  return stacked([
    paragraph(title, width, LETTERS.large, true),
    paragraph(say(`cutting.view.${view}`), width, LETTERS.medium, true),
    ...(plan.meta.held ? [spacer(2), holdStamp(subject, 90)] : []),
    small(say('table.rules', { rules: plan.job.rules.title })),
    small(say('cutting.figures', { unit: say(`unit.${unit}`) })),
    ...upText(subject).map(small),
    ...(list.length > 0 ? [small(say('cutting.whole', { list: list.join(', ') }))] : []),
    ...(shaped.length > 0 ? [small(say('cutting.shaped', { list: shaped.join(', ') }))] : []),
    ...(open.length > 0 ? [small(say('cutting.openings', { list: open.join(', ') }))] : []),
    ...provisionalText(subject).map((text) => paragraph(text, width, LETTERS.small, true)),
    small(say('caution')),
  ]);
}
