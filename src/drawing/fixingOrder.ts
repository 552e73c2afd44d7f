import type { BoardLayout, Piece, Row } from '../boards/boardLayout.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { facingBound } from './facingBound.js';
import { sizeText } from './provisional.js';
import { sideBySide } from './ruleNotes.js';
import { planSchema, tableOptionsSchema } from './schemas.js';
import { isUp, upText } from './stillToFix.js';
import { type Subject, zoneOf, zonesOf } from './subject.js';
import { subjectOf } from './subjectOf.js';
import { type Cell, type Table, type TableOptions, tableOf } from './table.js';

/**
 * The order in which the pieces go up: zone by zone, a row at a time, ripped rows last, in each row from the end with the longer piece;
 * which joists take the first screws, and which pieces are closers that cannot be slid. Where some pieces are up already, the others
 * follow from them outward.
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
  const up = new Set(plan.layout.pieces.filter(isUp).map(({ id }) => id));
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
    rows: inFixingOrder(subject).map((piece, index) => {
      const row = stepOf(piece, index + 1, zoneOf(subject, piece), isCloser(piece, plan.layout, up));
      up.add(piece.id);
      return row;
    }),
    notes: [...upText(subject), say('order.rows'), ...sideBySide(subject)],
  });
}

/** Pieces that are not up in the order in which they go up, one part of the ceiling after another. */
export const inFixingOrder = (subject: Subject): Piece[] => zonesOf(subject).flatMap(({ plan }) => rowByRow(plan.layout));

function rowByRow({ rows, pieces }: BoardLayout): Piece[] {
  const rising = [...rows].sort((a, b) => a.low - b.low || a.row - b.row);
  const first = rising[0]?.ripped && !rising[rising.length - 1].ripped ? [...rising].reverse() : rising;
  const begun = rising.flatMap(({ row }, at) => (pieces.some((piece) => piece.row === row && isUp(piece)) ? [at] : []));
  const toBegun = (row: Row): number => Math.min(...begun.map((at) => Math.abs(at - rising.indexOf(row))));
  const order =
    begun.length > 0
      ? [...rising].sort((a, b) => toBegun(a) - toBegun(b))
      : [...first.filter(({ ripped }) => !ripped), ...first.filter(({ ripped }) => ripped)];
  return order.flatMap(({ row }) => alongRow(pieces.filter((piece) => piece.row === row)));
}

/** From the end with the longer piece, or from the first piece that is up to either side. */
function alongRow(pieces: readonly Piece[]): Piece[] {
  const line = [...pieces].sort((a, b) => a.ends[0].position - b.ends[0].position);
  const up = line.findIndex(isUp);
  if (up >= 0) return [...line.slice(0, up).reverse(), ...line.slice(up)].filter((piece) => !isUp(piece));
  return line.length > 1 && line[line.length - 1].length > line[0].length ? line.reverse() : line;
}

/** Whether a piece goes up against a neighbour and has no room to slide: a wall or opening, or another neighbour, at its far end. */
function isCloser(piece: Piece, { pieces }: BoardLayout, up: ReadonlySet<string>): boolean {
  const neighbours = pieces.filter((other) => other.row === piece.row && up.has(other.id));
  const meets = (side: 0 | 1): boolean =>
    piece.ends[side].meets === 'board' && neighbours.some((other) => other.ends[1 - side].position === piece.ends[side].position);
  const settled = (side: 0 | 1): boolean => piece.ends[side].meets !== 'board' || meets(side);
  return (meets(0) || meets(1)) && settled(0) && settled(1);
}

function stepOf(piece: Piece, step: number, subject: Subject, closer: boolean): Cell[] {
  const { plan, say, sides } = subject;
  const side = (which: 0 | 1, wall: string): string => {
    const end = piece.ends[which];
    if (end.meets === 'board') return end.joist === undefined ? say('order.noJoist') : say('order.joist', { joist: end.joist });
    if (end.meets === 'opening') return say('order.opening');
    const bound = facingBound(piece, which, subject);
    return bound?.isWall === false ? bound.name : say('order.wall', { name: bound?.name ?? wall });
  };
  const lines = plan.fixings.lines.filter((line) => line.piece === piece.id);
  const fields = [...new Set(lines.filter(({ kind }) => kind === 'field').map(({ joist }) => joist))];
  const middle = fields.slice(Math.floor((fields.length - 1) / 2), Math.floor(fields.length / 2) + 1);
  const cut = [...(piece.edges.low === 'cut' ? [sides.low] : []), ...(piece.edges.high === 'cut' ? [sides.high] : [])];
  const rakes = ([0, 1] as const)
    .filter((which) => piece.ends[which].rake !== undefined)
    .map((which) => [sides.near, sides.far][which]);
  const notes = [
    closer ? say('order.closer') : undefined,
    cut.length > 0 ? say('order.ripped', { sides: cut.join(', ') }) : undefined,
    piece.tight ? say('order.tight') : undefined,
    rakes.length > 0 ? say('order.raked', { ends: rakes.join(', ') }) : undefined,
  ];
  const { long, wide } = sizeText(piece, subject);
  return [
    step,
    piece.id,
    piece.board,
    `${long} × ${wide}`,
    Math.round(piece.massKg * 10) / 10,
    side(0, sides.near),
    side(1, sides.far),
    middle.length === 0 ? '' : say('order.middle', { joists: middle.join(', ') }),
    lines.reduce((sum, { count }) => sum + count, 0),
    notes.filter((note) => note !== undefined).join('; '),
  ];
}
