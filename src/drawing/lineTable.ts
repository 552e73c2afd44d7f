import { fromGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { checkDiagonal } from './checkDiagonal.js';
import { markCell } from './markCell.js';
import { type RowEdge, rowEdges } from './rowEdges.js';
import { type Subject, zonesOf } from './subject.js';
import { type Cell, type Table, tableOf } from './table.js';
import { isCrosswise } from './zonesIn.js';

/** Lines to chalk, in order, with a diagonal to check them: joists, timbers across them, row edges. */
export function lineTable(subject: Subject): Table {
  const { say, zoned } = subject;
  return tableOf(subject, {
    title: say('setting.lines.title'),
    columns: [
      ...(zoned ? [say('setting.zone')] : []),
      say('setting.line'),
      say('setting.line.from'),
      say('setting.line.start'),
      say('setting.line.end'),
      say('setting.line.atStart'),
      say('setting.line.atEnd'),
    ],
    rows: zonesOf(subject).flatMap((zone) => linesOf(zone).map((line) => [...(zoned ? [zone.name] : []), ...line])),
    notes: [
      say('setting.lines.order'),
      ...zonesOf(subject).flatMap((zone) =>
        checkDiagonal(zone).map((text) => (zoned ? say('setting.inZone', { zone: zone.name, text }) : text)),
      ),
    ],
  });
}

function linesOf(zone: Subject): Cell[][] {
  const { plan, say, sides, datum, frame } = zone;
  const up = ({ id, start, end }: Joist): Cell[] => [
    say('setting.line.joist', { joist: id }),
    datum.across,
    sides.low,
    sides.high,
    markCell(zone, start, 'near', 1),
    markCell(zone, end, 'near', -1),
  ];
  const across = ({ id, start, end }: Joist): Cell[] => [
    say('setting.line.joist', { joist: id }),
    datum.along,
    sides.near,
    sides.far,
    markCell(zone, start, 'low', 1),
    markCell(zone, end, 'low', -1),
  ];
  const edge = ({ at, low, high, near, far }: RowEdge): Cell[] => [
    say('setting.line.row', { low, high }),
    datum.along,
    sides.near,
    sides.far,
    markCell(zone, frame.back(fromGrid(near), fromGrid(at)), 'low', 1),
    markCell(zone, frame.back(fromGrid(far), fromGrid(at)), 'low', -1),
  ];
  return [
    ...plan.joists.filter((joist) => !isCrosswise(zone, joist)).map(up),
    ...plan.joists.filter((joist) => isCrosswise(zone, joist)).map(across),
    ...rowEdges(zone).map(edge),
  ];
}
