import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { corners, extentOf, twiceArea } from '../survey/outline.js';
import { type FigureUnit, figure } from './figure.js';
import type { Subject } from './subject.js';
import { namedWalls } from './wallNames.js';
import { type DrawingMessages, sayWith } from './words.js';
import { seenFrom, zonesIn } from './zonesIn.js';

/** Makes a plan ready for paper. */
export function subjectOf(plan: CeilingPlan, unit: FigureUnit = 'mm', messages: DrawingMessages = {}): Subject {
  const say = sayWith(messages);
  const walls = namedWalls(plan.room, say);
  const { outline, zones = [] } = plan.room;
  const turned = twiceArea(corners(outline)) < 0;
  const whole = {
    plan,
    name: '',
    rings: { outline },
    extent: extentOf(outline),
    walls,
    bounds: walls.map(({ name, from, to }) => ({ name, isWall: true, from: turned ? to : from, to: turned ? from : to })),
    unit,
    say,
    length: (mm: number) => figure(mm, unit),
    withUnit: (mm: number) => figure(mm, unit) + (unit === 'mm' ? ' mm' : ''),
    zones: [],
    zoned: zones.length > 0,
  };
  const room = { ...whole, ...seenFrom(plan.meta.direction, whole) };
  return { ...room, zones: zonesIn(room) };
}
