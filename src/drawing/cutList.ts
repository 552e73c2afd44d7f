import type { End, Piece } from '../boards/boardLayout.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { numberOf } from '../rules/ruleValue.js';
import { admit } from '../survey/door.js';
import { corners } from '../survey/outline.js';
import { cutFigure } from './figure.js';
import { inFixingOrder } from './fixingOrder.js';
import type { CutListOptions } from './options.js';
import { openingsOf } from './pieceOpenings.js';
import { certaintyText, proveBefore, provisionalText, sizeText } from './provisional.js';
import { cutListOptionsSchema, planSchema } from './schemas.js';
import { type Subject, subjectOf } from './subject.js';
import { type Cell, lengthCell, type Table, tableOf } from './table.js';

/**
 * What to cut, piece by piece: size, what each edge and end is and which wall it faces, the board it comes from and what else
 * that board gives, mass and openings. Under a hold the table says so.
 *
 * @param plan - what `planCeiling` returned
 * @returns a table; lengths as cut, in whole mm and never more than the layout says, mass in kg
 * @throws InputError when the plan or an option is not as described
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 * import { cutList } from 'soffitwright/drawing';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 25, spacing: 390, last: 2365, width: 50 },
 *   lining: [],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * const { columns, rows } = cutList(plan);
 * console.log(columns.slice(0, 4).join(', '), '|', rows[0].slice(0, 4).join(', '));
 * // piece, length, width, board | 1.1, 2380, 1180, B1
 * ```
 */
export function cutList(plan: CeilingPlan, options: CutListOptions = {}): Table {
  admit(planSchema, plan, 'plan');
  admit(cutListOptionsSchema, options, 'options');
  const subject = subjectOf(plan, options.units, options.messages);
  const { say, sides } = subject;
  const pieces = options.order === 'fixing' ? inFixingOrder(plan.layout) : inCuttingOrder(plan.layout);
  return tableOf(subject, {
    title: say('cutList.title'),
    columns: [
      say('cutList.piece'),
      say('cutList.length'),
      say('cutList.width'),
      say('cutList.board'),
      say('cutList.stock'),
      say('cutList.along'),
      say('cutList.across'),
      say('cutList.end', { wall: sides.near }),
      say('cutList.end', { wall: sides.far }),
      say('cutList.edge', { wall: sides.low }),
      say('cutList.edge', { wall: sides.high }),
      say('cutList.gives'),
      say('cutList.kg'),
      say('cutList.openings'),
      say('cutList.note'),
    ],
    rows: pieces.map((piece) => rowOf(piece, subject)),
    notes: [say('cutList.face', { unit: say(`unit.${subject.unit}`) }), say('cutList.keep'), ...provisionalText(subject)],
  });
}

/** Board by board, along each board and then across it. */
function inCuttingOrder({ boards, pieces }: CeilingPlan['layout']): Piece[] {
  return boards.flatMap(({ id }) =>
    pieces
      .filter((piece) => piece.board === id)
      .sort((a, b) => a.at.along - b.at.along || a.at.across - b.at.across || pieces.indexOf(a) - pieces.indexOf(b)),
  );
}

function rowOf(piece: Piece, subject: Subject): Cell[] {
  const { plan, say } = subject;
  const board = plan.layout.boards.find(({ id }) => id === piece.board);
  const cut = (mm: number): Cell => (subject.unit === 'mm' ? Number(cutFigure(mm, 'mm')) : cutFigure(mm, subject.unit));
  return [
    piece.id,
    proveBefore(plan, piece).length > 0 ? sizeText(piece, subject).long : cut(piece.cutLength),
    cut(piece.width),
    piece.board,
    board?.stock ?? '',
    lengthCell(subject, piece.at.along),
    lengthCell(subject, piece.at.across),
    endText(piece.ends[0], subject),
    endText(piece.ends[1], subject),
    say(`edge.${piece.edges.low}`),
    say(`edge.${piece.edges.high}`),
    givenToo(piece, subject),
    Math.round(piece.massKg * 10) / 10,
    openingText(piece, subject),
    noteOf(piece, subject, board?.cuts.length === 0),
  ];
}

function endText(end: End, { say }: Subject): string {
  return say(`end.${end.meets}`, { made: say(`end.${end.made}`), joist: end.joist ?? '' });
}

/** The other pieces of the board, and the offcuts that are large enough to become a piece. */
function givenToo(piece: Piece, { plan, say, unit }: Subject): string {
  const others = plan.layout.pieces.filter((other) => other.board === piece.board && other !== piece).map(({ id }) => id);
  const left = plan.layout.boards.find(({ id }) => id === piece.board)?.offcuts ?? [];
  const { rules } = plan.job;
  const large = left.filter(
    ({ length, width }) => length >= numberOf(rules, 'piece.minimumLength') && width >= numberOf(rules, 'row.minimumWidth'),
  );
  const offcuts = large.map(({ length, width }) =>
    say('cutList.offcut', { size: `${cutFigure(length, unit)} × ${cutFigure(width, unit)}` }),
  );
  return [...others, ...offcuts].join(', ');
}

function openingText(piece: Piece, subject: Subject): string {
  const { say, sides, length } = subject;
  return openingsOf(subject, piece)
    .map(({ name, size, across, along }) =>
      say('cutList.opening', { name, size, across: length(across), along: length(along), near: sides.near, low: sides.low }),
    )
    .join('; ');
}

function noteOf(piece: Piece, subject: Subject, uncut: boolean): string {
  const { plan, say } = subject;
  const open = proveBefore(plan, piece).map((joist) => {
    const certainty = certaintyText(subject, joist);
    return certainty === undefined ? say('cutList.notFinalEach', { joist }) : say('cutList.notFinalFigure', { joist, certainty });
  });
  const notes = [
    open.length > 0 ? say('cutList.notFinal', { list: open.join(', ') }) : undefined,
    uncut ? say('cutList.uncut') : undefined,
    piece.tight ? say('cutList.tight') : undefined,
    corners(piece.outline).length > 4 ? say('cutList.shape') : undefined,
  ];
  return notes.filter((note) => note !== undefined).join('; ');
}
