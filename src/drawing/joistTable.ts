import type { Joist } from '../survey/joist.js';
import { markCell } from './markCell.js';
import { certaintyText } from './provisional.js';
import { type Subject, zonesOf } from './subject.js';
import { type Cell, lengthCell, type Table, tableOf } from './table.js';
import { isCrosswise } from './zonesIn.js';

/** Where each joist is at both ends, how it was found, and what it is for; zone by zone. */
export function joistTable(subject: Subject): Table {
  const { say, sides, unit, zoned } = subject;
  const ends = zoned
    ? [say('setting.atFirst'), say('setting.atSecond')]
    : [say('setting.at', { wall: sides.low }), say('setting.at', { wall: sides.high })];
  return tableOf(subject, {
    title: say('setting.joists.title'),
    columns: [
      ...(zoned ? [say('setting.zone')] : []),
      say('setting.joist'),
      ...ends,
      say('setting.width'),
      say('setting.known'),
      say('setting.use'),
      say('setting.note'),
    ],
    rows: zonesOf(subject).flatMap((zone) =>
      zone.plan.joists
        .filter((joist) => !isCrosswise(zone, joist))
        .map((joist) => [...(zoned ? [zone.name] : []), ...rowOf(zone, joist)]),
    ),
    notes: zonesOf(subject).map((zone) =>
      zoned
        ? say('setting.fromIn', {
            zone: zone.name,
            unit: say(`unit.${unit}`),
            wall: zone.datum.across,
            low: zone.sides.low,
            high: zone.sides.high,
          })
        : say('setting.from', { unit: say(`unit.${unit}`), wall: zone.datum.across }),
    ),
  });
}

function rowOf(zone: Subject, joist: Joist): Cell[] {
  const { plan, say } = zone;
  const ends = plan.layout.pieces.filter((piece) => piece.ends.some((end) => end.joist === joist.id)).map(({ row }) => row);
  const inRows = [...new Set(ends)].sort((a, b) => a - b);
  return [
    joist.id,
    markCell(zone, joist.start, 'near', 1),
    markCell(zone, joist.end, 'near', -1),
    lengthCell(zone, joist.width),
    say(`known.${joist.known}`),
    inRows.length === 0
      ? say('setting.use.screws')
      : say(inRows.length === 1 ? 'setting.use.endsInOne' : 'setting.use.ends', { rows: inRows.join(', ') }),
    noteOf(zone, joist),
  ];
}

/** How sure the butt joints on a joist are, and what is to be done about it. */
function noteOf(zone: Subject, { id }: Joist): string {
  const { plan, say } = zone;
  const certainty = certaintyText(zone, id);
  if (!plan.proveFirst.includes(id)) return certainty ?? '';
  return certainty === undefined ? say('setting.note.prove') : say('setting.note.figure', { certainty });
}
