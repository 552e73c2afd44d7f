import type { BoardLayout, End, Piece } from '../boards/boardLayout.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { sizeText } from './provisional.js';
import { sideBySide } from './ruleNotes.js';
import { planSchema, tableOptionsSchema } from './schemas.js';
import { type Subject, subjectOf } from './subject.js';
import { type Cell, type Table, type TableOptions, tableOf } from './table.js';

/**
 * The order in which the pieces go up: a row at a time, ripped rows last, in each row from the end with the longer piece;
 * which joists take the first screws, and which pieces are closers that cannot be slid.
 *
 * @param plan - what `planCeiling` returned
 * @returns a table, one step a row
 * @throws InputError when the plan or an option is not as described
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 * import { fixingOrder } from 'soffitwright/drawing';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 25, spacing: 390, last: 2365, width: 50 },
 *   lining: [],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(fixingOrder(plan).rows[0].slice(0, 4).join(' | '));
 * // 1 | 1.1 | B1 | 2380 × 1180
 * ```
 */
export function fixingOrder(plan: CeilingPlan, options: TableOptions = {}): Table {
  admit(planSchema, plan, 'plan');
  admit(tableOptionsSchema, options, 'options');
  const subject = subjectOf(plan, options.units, options.messages);
  const { say } = subject;
  const up = new Set<string>();
  return tableOf(subject, {
    title: say('order.title'),
    columns: [
      say('order.step'),
      say('order.piece'),
      say('order.board'),
      say('order.size'),
      say('order.kg'),
      say('order.from'),
      say('order.to'),
      say('order.first'),
      say('order.screws'),
      say('order.note'),
    ],
    rows: inFixingOrder(plan.layout).map((piece, index) => {
      const row = stepOf(piece, index + 1, subject, isCloser(piece, plan.layout, up));
      up.add(piece.id);
      return row;
    }),
    notes: [say('order.rows'), ...sideBySide(subject)],
  });
}

/** Pieces in the order in which they go up. */
export function inFixingOrder({ rows, pieces }: Pick<BoardLayout, 'rows' | 'pieces'>): Piece[] {
  const rising = [...rows].sort((a, b) => a.low - b.low || a.row - b.row);
  const first = rising[0]?.ripped && !rising[rising.length - 1].ripped ? [...rising].reverse() : rising;
  const order = [...first.filter(({ ripped }) => !ripped), ...first.filter(({ ripped }) => ripped)];
  return order.flatMap(({ row }) => {
    const line = pieces.filter((piece) => piece.row === row).sort((a, b) => a.ends[0].position - b.ends[0].position);
    return line.length > 1 && line[line.length - 1].length > line[0].length ? line.reverse() : line;
  });
}

/** Whether a piece's two ends are both settled when it goes up: a wall or opening, or a neighbour that is up. */
function isCloser(piece: Piece, { pieces }: BoardLayout, up: ReadonlySet<string>): boolean {
  const neighbours = pieces.filter((other) => other.row === piece.row && up.has(other.id));
  const settled = (end: End, side: 0 | 1): boolean =>
    end.meets !== 'board' || neighbours.some((other) => other.ends[1 - side].position === end.position);
  return neighbours.length > 0 && settled(piece.ends[0], 0) && settled(piece.ends[1], 1);
}

function stepOf(piece: Piece, step: number, subject: Subject, closer: boolean): Cell[] {
  const { plan, say, sides } = subject;
  const side = (end: End, wall: string): string =>
    end.meets === 'board'
      ? say('order.joist', { joist: end.joist ?? '?' })
      : end.meets === 'wall'
        ? say('order.wall', { name: wall })
        : say('order.opening');
  const lines = plan.fixings.lines.filter((line) => line.piece === piece.id);
  const fields = [...new Set(lines.filter(({ kind }) => kind === 'field').map(({ joist }) => joist))];
  const middle = fields.slice(Math.floor((fields.length - 1) / 2), Math.floor(fields.length / 2) + 1);
  const cut = [...(piece.edges.low === 'cut' ? [sides.low] : []), ...(piece.edges.high === 'cut' ? [sides.high] : [])];
  const notes = [
    closer ? say('order.closer') : undefined,
    cut.length > 0 ? say('order.ripped', { sides: cut.join(', ') }) : undefined,
    piece.tight ? say('order.tight') : undefined,
  ];
  const { long, wide } = sizeText(piece, subject);
  return [
    step,
    piece.id,
    piece.board,
    `${long} × ${wide}`,
    Math.round(piece.massKg * 10) / 10,
    side(piece.ends[0], sides.near),
    side(piece.ends[1], sides.far),
    middle.length === 0 ? '' : say('order.middle', { joists: middle.join(', ') }),
    lines.reduce((sum, { count }) => sum + count, 0),
    notes.filter((note) => note !== undefined).join('; '),
  ];
}
