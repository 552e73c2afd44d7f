import type { Board, Piece } from '../boards/boardLayout.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { numberOf } from '../rules/ruleValue.js';
import { admit } from '../survey/door.js';
import { facingBound } from './facingBound.js';
import { cutFigure } from './figure.js';
import { inFixingOrder } from './fixingOrder.js';
import { isWhole } from './isWhole.js';
import type { CutListOptions } from './options.js';
import { openingsOf } from './pieceOpenings.js';
import { ABOUT, certaintyText, proveBefore, provisionalText } from './provisional.js';
import { cutListOptionsSchema, planSchema } from './schemas.js';
import { shapeText } from './shapeText.js';
import type { SideNames } from './sideNames.js';
import { isUp, stillToFix, upText } from './stillToFix.js';
import { type Subject, zoneOf } from './subject.js';
import { subjectOf } from './subjectOf.js';
import { type Cell, lengthCell, type Table, tableOf } from './table.js';

/**
 * What to cut, piece by piece: size, what each edge and end is and which wall it faces, both long edges and the rake where an end
 * is raked, notches, the board it comes from and what else that board gives, mass and openings. Pieces that are up are left out.
 * Under a hold the table says so.
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
  const { say, sides, zoned } = subject;
  const pieces = options.order === 'fixing' ? inFixingOrder(subject) : inCuttingOrder(plan);
  const facing = (side: keyof SideNames, what: 'end' | 'edge'): string =>
    zoned ? say(`cutList.${side}`) : say(`cutList.${what}`, { wall: sides[side] });
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
      facing('near', 'end'),
      facing('far', 'end'),
      facing('low', 'edge'),
      facing('high', 'edge'),
      say('cutList.gives'),
      say('cutList.kg'),
      say('cutList.openings'),
      say('cutList.shape'),
      say('cutList.note'),
    ],
    rows: pieces.map((piece) => rowOf(piece, zoneOf(subject, piece), subject)),
    notes: [
      ...upText(subject),
      say('cutList.face', { unit: say(`unit.${subject.unit}`) }),
      say('cutList.keep'),
      ...provisionalText(subject),
    ],
  });
}

/** Board by board, along each board and then across it. */
function inCuttingOrder(plan: CeilingPlan): Piece[] {
  const pieces = stillToFix(plan);
  return plan.layout.boards.flatMap(({ id }) =>
    pieces
      .filter((piece) => piece.board === id)
      .sort((a, b) => a.at.along - b.at.along || a.at.across - b.at.across || pieces.indexOf(a) - pieces.indexOf(b)),
  );
}

function rowOf(piece: Piece, zone: Subject, subject: Subject): Cell[] {
  const { plan } = subject;
  const board = plan.layout.boards.find(({ id }) => id === piece.board);
  const cut = (mm: number): Cell => (zone.unit === 'mm' ? Number(cutFigure(mm, 'mm')) : cutFigure(mm, zone.unit));
  const named = (side: keyof SideNames, text: string): string =>
    zone.zoned ? zone.say('cutList.to', { wall: zone.sides[side], text }) : text;
  return [
    piece.id,
    proveBefore(plan, piece).length > 0 ? ABOUT + cutFigure(piece.cutLength, zone.unit) : cut(piece.cutLength),
    cut(piece.width),
    piece.board,
    board?.stock ?? '',
    lengthCell(zone, piece.at.along),
    lengthCell(zone, piece.at.across),
    named('near', endText(piece, 0, zone)),
    named('far', endText(piece, 1, zone)),
    named('low', edgeText(piece, 'low', zone)),
    named('high', edgeText(piece, 'high', zone)),
    givenToo(piece, plan, zone),
    Math.round(piece.massKg * 10) / 10,
    openingText(piece, zone),
    shapeText(piece, zone),
    noteOf(piece, zone, board),
  ];
}

/** How an end is made and what it meets; a raked one with its rake, and the edge at which the piece is the longer for it. */
function endText(piece: Piece, side: 0 | 1, zone: Subject): string {
  const { say, sides, length } = zone;
  const { meets, made, joist = '', rake } = piece.ends[side];
  const bound = meets === 'wall' ? facingBound(piece, side, zone) : undefined;
  const word = {
    made: say(`end.${made}`),
    joist,
    wall: bound?.name ?? '',
  };
  const named = bound !== undefined && bound.name !== (side === 0 ? sides.near : sides.far);
  const onJoist = meets === 'board' && piece.ends[side].joist === undefined ? 'noJoist' : meets;
  const text = bound?.isWall === false ? say('end.border', word) : say(named ? 'end.wallNamed' : `end.${onJoist}`, word);
  if (rake === undefined) return text;
  // An end that leans outward towards the high edge makes the high edge the longer.
  const longer = rake > 0 === (side === 1) ? sides.high : sides.low;
  return say('end.raked', { text, rake: length(Math.abs(rake)), wall: longer });
}

/** Bound or cut, with the length of the edge where the two long edges differ; one that runs out to a point has none. */
function edgeText(piece: Piece, edge: 'low' | 'high', { say, unit }: Subject): string {
  const word = say(`edge.${piece.edges[edge]}`);
  const { low, high } = piece.edgeLengths ?? { low: 0, high: 0 };
  const own = edge === 'low' ? low : high;
  return low === high || own === 0 ? word : say('edge.length', { length: cutFigure(own, unit), word });
}

/** The other pieces of the board, and the offcuts that are large enough to become a piece. */
function givenToo(piece: Piece, plan: CeilingPlan, { say, unit }: Subject): string {
  const others = plan.layout.pieces.filter((other) => other.board === piece.board && other !== piece);
  const left = plan.layout.boards.find(({ id }) => id === piece.board)?.offcuts ?? [];
  const { rules } = plan.job;
  const large = left.filter(
    ({ length, width }) => length >= numberOf(rules, 'piece.minimumLength') && width >= numberOf(rules, 'row.minimumWidth'),
  );
  const offcuts = large.map(({ length, width }) =>
    say('cutList.offcut', { size: `${cutFigure(length, unit)} × ${cutFigure(width, unit)}` }),
  );
  return [...others.map((other) => (isUp(other) ? say('cutList.up', { piece: other.id }) : other.id)), ...offcuts].join(', ');
}

function openingText(piece: Piece, subject: Subject): string {
  const { say, sides, length } = subject;
  return openingsOf(subject, piece)
    .map(({ name, size, across, along }) =>
      say('cutList.opening', { name, size, across: length(across), along: length(along), near: sides.near, low: sides.low }),
    )
    .join('; ');
}

function noteOf(piece: Piece, subject: Subject, board: Board | undefined): string {
  const { plan, say } = subject;
  const open = proveBefore(plan, piece).map((joist) => {
    const certainty = certaintyText(subject, joist);
    return certainty === undefined ? say('cutList.notFinalEach', { joist }) : say('cutList.notFinalFigure', { joist, certainty });
  });
  const notes = [
    open.length > 0 ? say('cutList.notFinal', { list: open.join(', ') }) : undefined,
    board !== undefined && isWhole(subject, board) ? say('cutList.uncut') : undefined,
    board?.opened ? say('cutList.opened', { board: board.id }) : undefined,
    piece.tight ? say('cutList.tight') : undefined,
    piece.hand === undefined ? undefined : say('cutList.hand'),
  ];
  return notes.filter((note) => note !== undefined).join('; ');
}
