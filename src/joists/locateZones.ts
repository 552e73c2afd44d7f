import type { RuleSet } from '../rules/ruleSet.js';
import { toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Joist, JoistDescription } from '../survey/joist.js';
import { corners } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { type Part, restOfRoom } from '../survey/restOfRoom.js';
import type { Room } from '../survey/room.js';
import { centreAt, directionOf, frameOf } from './frame.js';
import { type LocatedJoists, locateJoists } from './locateJoists.js';
import { stretchesIn } from './stretchesIn.js';

/** A part of the ceiling that is boarded by joists of its own. */
export interface LocatedZone extends LocatedJoists {
  /** Id of the zone; absent for what lies outside all zones. */
  readonly zone?: string;
  /** mm. */
  readonly outline: readonly Point[];
  /** Zones that lie wholly within this part, mm. Absent where there are none. */
  readonly holes?: readonly (readonly Point[])[];
}

/**
 * The joists of every part of a ceiling: first of what lies outside all zones, one entry for each part of it in one piece, then of
 * the zones in the order given. Where `joists` is an empty list, only the zones are boarded. A zone's `first` and `last` are
 * measured from the zone's own least coordinate, and the ids of joists that a zone describes begin with the zone's: `bay J3`.
 * The input has passed its door.
 *
 * @throws InputError when there are no joists at all, or two of them have the same id
 */
export function locateZones(room: Room, joists: JoistDescription, rules: RuleSet): LocatedZone[] {
  const { zones = [], ...whole } = room;
  if (zones.length === 0) return [{ outline: room.outline, ...locateJoists(room, joists, rules) }];
  const rest = Array.isArray(joists) && joists.length === 0 ? [] : locateRest(whole, restOfRoom(room), joists, rules);
  const inZones = zones.map(({ id, outline, joists: its }, index): LocatedZone => {
    const path = `room.zones[${index}].joists`;
    return { zone: id, outline, ...locateJoists({ ...whole, outline }, its, rules, { path, prefix: `${id} ` }) };
  });
  demandDifferentIds([...rest, ...inZones]);
  return [...rest, ...inZones];
}

function locateRest(room: Room, parts: readonly Part[], description: JoistDescription, rules: RuleSet): LocatedZone[] {
  const area = parts.flatMap(({ outline, holes }) => [outline, ...holes]);
  const located = locateJoists(room, description, rules, { area });
  return parts.map(({ outline, holes }) => {
    const ring = corners(outline);
    const joists = located.joists.filter((joist) => runsIn(ring, joist));
    if (joists.length === 0) {
      const { x, y } = outline[0];
      refuse(problem('no-joists', 'joists', 'a joist in every part outside the zones', `none in the part at ${x}, ${y}`));
    }
    return { ...located, outline, ...(holes.length > 0 && { holes }), joists };
  });
}

/** Whether some of a joist's centre line runs in a part of the room, or along its border. */
function runsIn(ring: readonly Point[], joist: Joist): boolean {
  const frame = frameOf(directionOf([joist]));
  const [start, end] = [joist.start, joist.end].map(({ x, y }) => frame.into({ x: toGrid(x), y: toGrid(y) }).v);
  const stretches = stretchesIn([ring.map(frame.into)], (v) => centreAt(joist, frame, v));
  return stretches.some(({ from, to }) => Math.max(from, Math.min(start, end)) < Math.min(to, Math.max(start, end)));
}

function demandDifferentIds(located: readonly LocatedZone[]): void {
  const known = new Map<string, Joist>();
  for (const { zone, joists } of located) {
    for (const joist of joists) {
      const before = known.get(joist.id) ?? joist;
      // A joist on the border of two parts is in both.
      if (before !== joist) {
        const number = located.filter((each) => each.zone !== undefined).findIndex((each) => each.zone === zone);
        const path = number < 0 ? 'joists' : `room.zones[${number}].joists`;
        refuse(problem('repeated-id', path, 'joists with different ids', joist.id));
      }
      known.set(joist.id, joist);
    }
  }
}
