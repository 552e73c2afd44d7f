import { centreAt } from '../joists/frame.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Opening } from '../survey/room.js';
import { openingExtent, openingName, openingSize } from './pieceOpenings.js';
import { certaintyText } from './provisional.js';
import { planSchema, tableOptionsSchema } from './schemas.js';
import { fromDatum, type Subject, subjectOf } from './subject.js';
import { type Cell, lengthCell, type Table, type TableOptions, tableOf } from './table.js';

/** The three tables of a setting-out sheet. */
export interface SettingOut {
  /** Where each joist is at both ends, how it was found, and what it is for. */
  readonly joists: Table;
  /** Lines to chalk, in order, with a diagonal to check them. */
  readonly lines: Table;
  readonly openings: Table;
}

/**
 * What to measure and chalk before anything goes up: joists and row edges as running dimensions from two named walls at both
 * ends, a diagonal that proves the lines square, and the openings.
 *
 * @param plan - what `planCeiling` returned
 * @returns three tables, lengths in mm
 * @throws InputError when the plan or an option is not as described
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 * import { settingOut } from 'soffitwright/drawing';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 25, spacing: 390, last: 2365, width: 50 },
 *   lining: [],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(settingOut(plan).joists.rows[1].slice(0, 4).join(' | '));
 * // J2 | 415 | 415 | 50
 * ```
 */
export function settingOut(plan: CeilingPlan, options: TableOptions = {}): SettingOut {
  admit(planSchema, plan, 'plan');
  admit(tableOptionsSchema, options, 'options');
  const subject = subjectOf(plan, options.units, options.messages);
  return { joists: joistTable(subject), lines: lineTable(subject), openings: openingTable(subject) };
}

const fromText = ({ say, unit }: Subject, wall: string): string => say('setting.from', { unit: say(`unit.${unit}`), wall });

function joistTable(subject: Subject): Table {
  const { plan, say, sides, datum } = subject;
  const rows = plan.joists.map((joist): Cell[] => {
    const ends = plan.layout.pieces.filter((piece) => piece.ends.some((end) => end.joist === joist.id)).map(({ row }) => row);
    const inRows = [...new Set(ends)].sort((a, b) => a - b);
    return [
      joist.id,
      lengthCell(subject, fromDatum(subject, joist.start).across),
      lengthCell(subject, fromDatum(subject, joist.end).across),
      lengthCell(subject, joist.width),
      say(`known.${joist.known}`),
      inRows.length === 0 ? say('setting.use.screws') : say('setting.use.ends', { rows: inRows.join(', ') }),
      noteOf(subject, joist),
    ];
  });
  return tableOf(subject, {
    title: say('setting.joists.title'),
    columns: [
      say('setting.joist'),
      say('setting.at', { wall: sides.low }),
      say('setting.at', { wall: sides.high }),
      say('setting.width'),
      say('setting.known'),
      say('setting.use'),
      say('setting.note'),
    ],
    rows,
    notes: [fromText(subject, datum.across)],
  });
}

/** How sure the butt joints on a joist are, and what is to be done about it. */
function noteOf(subject: Subject, { id }: Joist): string {
  const { plan, say } = subject;
  const certainty = certaintyText(subject, id);
  if (!plan.proveFirst.includes(id)) return certainty ?? '';
  return certainty === undefined ? say('setting.note.prove') : say('setting.note.figure', { certainty });
}

function lineTable(subject: Subject): Table {
  const { plan, say, datum, sides } = subject;
  const joists = plan.joists.map((joist): Cell[] => [
    say('setting.line.joist', { joist: joist.id }),
    datum.across,
    sides.low,
    sides.high,
    lengthCell(subject, fromDatum(subject, joist.start).across),
    lengthCell(subject, fromDatum(subject, joist.end).across),
  ]);
  const edges = rowEdges(subject);
  const rows = edges.map(({ at, low, high }): Cell[] => [
    say('setting.line.row', { low, high }),
    datum.along,
    sides.near,
    sides.far,
    lengthCell(subject, at),
    lengthCell(subject, at),
  ]);
  return tableOf(subject, {
    title: say('setting.lines.title'),
    columns: [
      say('setting.line'),
      say('setting.line.from'),
      say('setting.line.start'),
      say('setting.line.end'),
      say('setting.line.atStart'),
      say('setting.line.atEnd'),
    ],
    rows: [...joists, ...rows],
    notes: [say('setting.lines.order'), ...diagonal(subject, edges)],
  });
}

interface RowEdge {
  /** From the low wall, mm. */
  readonly at: number;
  readonly low: number;
  readonly high: number;
}

/** The edges that two rows share. */
function rowEdges({ plan, extent, direction }: Subject): RowEdge[] {
  const from = direction === 'y' ? extent.low : extent.left;
  const rows = [...plan.layout.rows].sort((a, b) => a.low - b.low);
  return rows.slice(1).map((row, i) => ({ at: fromGrid(toGrid(row.low - from)), low: rows[i].row, high: row.row }));
}

/** The longest distance between two crossings of lines: it comes right only where the row edges are square to the joists. */
function diagonal(subject: Subject, edges: readonly RowEdge[]): string[] {
  const { plan, say, withUnit, frame, extent, direction } = subject;
  const from = direction === 'y' ? extent.low : extent.left;
  const [one, other] = [edges[0], edges[edges.length - 1]];
  const [first, last] = [plan.joists[0], plan.joists[plan.joists.length - 1]];
  if (one === undefined || one === other || first === last) return [];
  const crossing = (joist: Joist, edge: RowEdge) => ({ u: fromGrid(centreAt(joist, frame, toGrid(edge.at + from))), v: edge.at });
  const [a, b] = [crossing(first, one), crossing(last, other)];
  const length = Math.sqrt((b.u - a.u) * (b.u - a.u) + (b.v - a.v) * (b.v - a.v));
  const name = (joist: Joist, edge: RowEdge): string =>
    say('setting.crossing', { joist: joist.id, row: `${edge.low}/${edge.high}` });
  return [say('setting.lines.diagonal', { from: name(first, one), to: name(last, other), length: withUnit(length) })];
}

function openingTable(subject: Subject): Table {
  const { plan, say, datum } = subject;
  const rows = (plan.room.openings ?? []).map((opening, index): Cell[] => {
    const { left, right, low, high } = openingExtent(opening);
    const { across, along } = fromDatum(subject, { x: (left + right) / 2, y: (low + high) / 2 });
    return [
      openingName(subject, opening, index),
      say(`opening.${opening.kind}`),
      openingSize(subject, opening),
      lengthCell(subject, across),
      lengthCell(subject, along),
      clearance(subject, opening),
    ];
  });
  return tableOf(subject, {
    title: say('setting.openings.title'),
    columns: [
      say('setting.opening'),
      say('setting.kind'),
      say('setting.size'),
      say('setting.from.wall', { wall: datum.across }),
      say('setting.from.wall', { wall: datum.along }),
      say('setting.clear'),
    ],
    rows,
    notes: [],
  });
}

/** The joist nearest to an opening, and the room between the two. */
function clearance({ plan, frame, say, withUnit }: Subject, opening: Opening): string {
  const { left, right, low, high } = openingExtent(opening);
  const [a, b] = [frame.into({ x: left, y: low }), frame.into({ x: right, y: high })];
  const middle = toGrid((a.v + b.v) / 2);
  const distances = plan.joists.map((joist) => {
    const centre = centreAt(joist, frame, middle);
    const half = toGrid(joist.width / 2);
    return { joist: joist.id, distance: Math.max(toGrid(a.u) - centre - half, centre - half - toGrid(b.u)) };
  });
  const nearest = distances.reduce((best, each) => (each.distance < best.distance ? each : best));
  const { joist, distance } = nearest;
  return distance < 0
    ? say('setting.clear.not', { joist })
    : say('setting.clear.by', { joist, distance: withUnit(fromGrid(distance)) });
}
