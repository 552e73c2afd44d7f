import { corners, twiceArea } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Room } from '../survey/room.js';
import type { Say } from './words.js';

/** A wall with what it is called on paper. */
export interface NamedWall {
  /** Index of the outline's edge. */
  readonly edge: number;
  /** `A`, `B`, … clockwise on the plan. */
  readonly letter: string;
  /** `A hall wall (door)`. */
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  readonly window: boolean;
}

/**
 * Names the walls: A has the door, or is the lowest on the plan where no door is known; the others follow clockwise on the plan.
 * Clockwise on the plan is anticlockwise to somebody who looks up, so the names stand on every drawing.
 */
export function namedWalls(room: Room, say: Say): NamedWall[] {
  const ring = corners(room.outline);
  const count = ring.length;
  const facts = ring.map((_, edge) => (room.walls ?? []).filter((wall) => wall.edge === edge));
  const has = (edge: number, what: 'door' | 'window'): boolean => facts[edge].some((wall) => wall[what] === true);
  const lowness = (edge: number): number => ring[edge].y + ring[(edge + 1) % count].y;
  const order = ring.map((_, edge) => edge);
  const doors = order.filter((edge) => has(edge, 'door'));
  const first = doors[0] ?? order.reduce((best, edge) => (lowness(edge) < lowness(best) ? edge : best));
  const step = twiceArea(ring) > 0 ? count - 1 : 1;
  return order.map((_, place) => {
    const edge = (first + place * step) % count;
    const letter = letterOf(place);
    const given = facts[edge].find((wall) => wall.name !== undefined)?.name;
    const asides = (['door', 'window'] as const)
      .filter((what) => has(edge, what))
      .map((what) => say(`wall.${what}`))
      .filter((word) => !given?.toLowerCase().includes(word.toLowerCase()));
    const aside = asides.length === 0 ? undefined : given === undefined ? asides.join(', ') : `(${asides.join(', ')})`;
    return {
      edge,
      letter,
      name: [letter, given, aside].filter((part) => part !== undefined).join(' '),
      from: room.outline[edge],
      to: room.outline[(edge + 1) % count],
      window: has(edge, 'window'),
    };
  });
}

const letterOf = (place: number): string =>
  (place >= 26 ? String.fromCharCode(64 + Math.floor(place / 26)) : '') + String.fromCharCode(65 + (place % 26));
