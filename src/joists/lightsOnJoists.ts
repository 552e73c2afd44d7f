import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { corners } from '../survey/outline.js';
import type { OpeningCircle, Room } from '../survey/room.js';
import { clearPlace, timberFrom } from './clearPlace.js';

/**
 * Round holes, for lights and the like, that would be cut where there is a joist, each with the nearest place clear of timber, walls
 * and other openings, straight across or straight along the joists.
 */
export function lightsOnJoists(room: Room, joists: readonly Joist[], rules: RuleSet): Finding[] {
  const { value, source } = lookUp(rules, 'opening.joistClearance') as RuleValue;
  const clearance = toGrid(value as number);
  const openings = room.openings ?? [];
  return openings.flatMap((opening, index): Finding[] => {
    if (!isHole(opening)) return [];
    const centre = { x: toGrid(opening.centre.x), y: toGrid(opening.centre.y) };
    const radius = Math.ceil(toGrid(opening.diameter) / 2);
    const gaps = joists.map((joist) => ({ joist, gap: timberFrom(joist, centre) - radius }));
    const nearest = gaps.reduce((least, each) => (each.gap < least.gap ? each : least), { joist: joists[0], gap: Infinity });
    if (nearest.gap >= clearance) return [];
    const others = openings.filter((other) => other !== opening);
    const place = clearPlace(centre, radius + clearance, radius, { ring: corners(room.outline), joists, openings: others });
    const details = { value: fromGrid(nearest.gap), limit: value as number, unit: 'mm', source };
    const name = opening.id ?? `opening ${index + 1}`;
    return [
      finding('light-on-joist', 'warning', {
        where: { joist: nearest.joist.id, at: opening.centre },
        ...details,
        ...(place === undefined
          ? { sentence: 'light-on-joist-nowhere', words: { name } }
          : { words: { name, place: `${fromGrid(place.x)}, ${fromGrid(place.y)}` } }),
      }),
    ];
  });
}

/** A light, or anything else round that is cut out after boarding; a flue or a column cannot be moved. */
const isHole = (opening: NonNullable<Room['openings']>[number]): opening is OpeningCircle =>
  'centre' in opening && (opening.kind === 'light' || opening.kind === 'other');
