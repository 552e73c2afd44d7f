import { centreAt } from '../joists/frame.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Opening } from '../survey/room.js';
import { type Measured, openingPlace } from './openingPlace.js';
import { openingExtent, openingName, openingSize } from './pieceOpenings.js';
import type { Subject } from './subject.js';
import { type Cell, lengthCell, type Table, tableOf } from './table.js';
import { isCrosswise } from './zonesIn.js';

/** Every opening with its size, its middle measured from two walls, and the joist nearest to it. */
export function openingTable(subject: Subject): Table {
  const { plan, say, datum, length } = subject;
  const cell = ({ wall, distance }: Measured, from: string): Cell =>
    wall === from ? lengthCell(subject, distance) : say('setting.mark', { distance: length(distance), wall });
  const rows = (plan.room.openings ?? []).map((opening, index): Cell[] => {
    const { zone, across, along } = openingPlace(subject, opening);
    return [
      openingName(subject, opening, index),
      say(`opening.${opening.kind}`),
      openingSize(subject, opening),
      cell(across, datum.across),
      cell(along, datum.along),
      clearance(zone, opening),
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

/** The joist nearest to an opening, and the room between the two; joists that end before it are not in its way. */
function clearance(zone: Subject, opening: Opening): string {
  const { plan, frame, say, withUnit } = zone;
  const { left, right, low, high } = openingExtent(opening);
  const [a, b] = [frame.into({ x: left, y: low }), frame.into({ x: right, y: high })];
  const middle = toGrid((a.v + b.v) / 2);
  const distances = plan.joists.flatMap((joist) => {
    const [from, to] = [joist.start, joist.end].map((point) => toGrid(frame.into(point).v));
    if (isCrosswise(zone, joist) || to < toGrid(a.v) || from > toGrid(b.v)) return [];
    const centre = centreAt(joist, frame, middle);
    const half = toGrid(joist.width / 2);
    return [{ joist: joist.id, distance: Math.max(toGrid(a.u) - centre - half, centre - half - toGrid(b.u)) }];
  });
  if (distances.length === 0) return '';
  const { joist, distance } = distances.reduce((best, each) => (each.distance < best.distance ? each : best));
  return distance < 0
    ? say('setting.clear.not', { joist })
    : say('setting.clear.by', { joist, distance: withUnit(fromGrid(distance)) });
}
