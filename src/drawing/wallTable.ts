import type { Subject } from './subject.js';
import { lengthCell, type Table, tableOf } from './table.js';
import { wallLength } from './wallLength.js';

/** The walls by the names that they have on every sheet, with their lengths. */
export function wallTable(subject: Subject): Table {
  const { say, walls } = subject;
  return tableOf(subject, {
    title: say('setting.walls.title'),
    columns: [say('setting.wall'), say('setting.length')],
    rows: walls.map((wall) => [wall.name, lengthCell(subject, wallLength(wall))]),
    notes: [say('setting.walls.order')],
  });
}
