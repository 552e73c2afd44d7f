import type { FixingLine } from '../fixings/placedFixings.js';
import { screwsToDrive } from '../fixings/screwsToDrive.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { toGrid } from '../survey/grid.js';
import { ruleText, sideBySide } from './ruleNotes.js';
import { planSchema, tableOptionsSchema } from './schemas.js';
import { stillToFix, upText } from './stillToFix.js';
import { type Subject, zoneOf } from './subject.js';
import { subjectOf } from './subjectOf.js';
import { type Cell, type Table, type TableOptions, tableOf } from './table.js';
import { rangeWords } from './titleBlock.js';

/**
 * Where the screws go, piece by piece as a person marks them: which joists, how many a line, and where along the line. Notes
 * give the total, the length and what is to be known about it, and the rules with their sources beside the rule of thumb. Pieces that
 * are up are left out.
 *
 * @param plan - what `planCeiling` returned
 * @returns a table; marks in mm from the piece's low edge
 * @throws InputError when the plan or an option is not as described
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 * import { screwSummary } from 'soffitwright/drawing';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 25, spacing: 390, last: 2365, width: 50 },
 *   lining: [],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * const { rows } = screwSummary(plan);
 * console.log(rows[1].join(' | '));
 * // 1.1 | middle of board | J2, J3, J4, J5, J6 | 6 | first at 15, then every 230 | 30
 * ```
 */
export function screwSummary(plan: CeilingPlan, options: TableOptions = {}): Table {
  admit(planSchema, plan, 'plan');
  admit(tableOptionsSchema, options, 'options');
  const subject = subjectOf(plan, options.units, options.messages);
  const { say, sides } = subject;
  return tableOf(subject, {
    title: say('screws.title'),
    columns: [
      say('screws.piece'),
      say('screws.where'),
      say('screws.joists'),
      say('screws.each'),
      subject.zoned ? say('screws.marksZoned') : say('screws.marks', { low: sides.low }),
      say('screws.count'),
    ],
    rows: stillToFix(plan).flatMap((piece) => rowsOf(piece.id, zoneOf(subject, piece))),
    notes: notesOf(subject),
  });
}

/** Lines of one piece that are marked alike share a row. */
function rowsOf(piece: string, { plan, say, zoned, sides }: Subject): Cell[][] {
  const lines = plan.fixings.lines.filter((line) => line.piece === piece);
  const alike = new Map<string, FixingLine[]>();
  for (const line of lines) {
    const key = JSON.stringify([line.kind, line.pair ?? '', line.count, line.text]);
    alike.set(key, [...(alike.get(key) ?? []), line]);
  }
  return [...alike.values()].map((group) => {
    const { kind, pair, count, text } = group[0];
    return [
      piece,
      say(kind === 'end' && pair !== undefined ? `screws.end.${pair}` : `screws.${kind}`),
      group.map(({ joist }) => joist).join(', '),
      count,
      zoned ? say('screws.markedFrom', { text, low: sides.low }) : text,
      count * group.length,
    ];
  });
}

function notesOf(subject: Subject): string[] {
  const { plan, say } = subject;
  return [
    ...upText(subject),
    say('screws.total', {
      count: screwsToDrive(plan.layout, plan.fixings),
      rate: Math.round(plan.fixings.perSquareMetre * 10) / 10,
    }),
    lengthText(subject),
    ...sideBySide(subject),
    ...(['fixing.field', 'fixing.boardEnd', 'fixing.perimeter'] as const).map((key) => ruleText(key, subject)),
    say('screws.acrossWall'),
    ...plan.fixingLength.findings.map(({ message, remedy }) => [message, remedy].filter(Boolean).join(' ')),
  ];
}

function lengthText(subject: Subject): string {
  const { plan, say, withUnit } = subject;
  const { recommended, embedment, range } = plan.fixingLength;
  if (range !== undefined) return say('screws.range', rangeWords(range, withUnit));
  if (recommended === null) return say('screws.noLength');
  return say('screws.length', {
    length: withUnit(recommended),
    embedment: embedment === null ? '?' : intoJoist(embedment, subject),
  });
}

/** To a tenth, and never more than it is. */
const intoJoist = (mm: number, { unit, withUnit }: Subject): string =>
  unit === 'mm' ? `${Math.floor(toGrid(mm) / 100) / 10} mm` : withUnit(mm);
