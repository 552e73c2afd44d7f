import { type LocatedZone, locateZones } from '../joists/locateZones.js';
import type { RuleSet } from '../rules/ruleSet.js';
import type { Joist, JoistDescription } from '../survey/joist.js';
import type { Room } from '../survey/room.js';

/** The parts of a ceiling with the joists that each is boarded by. */
export interface SettledJoists {
  readonly parts: readonly LocatedZone[];
  /** The room, its zones with the joists that were found for them. */
  readonly room: Room;
  /** Joists of what lies outside all zones; none where only the zones are boarded. */
  readonly joists: readonly Joist[];
}

/**
 * Turns every description of joists, the room's and its zones', into joists. What it returns can be settled again.
 *
 * @throws InputError when there are no joists at all, or two of them have the same id
 */
export function settleJoists(room: Room, description: JoistDescription, rules: RuleSet): SettledJoists {
  const parts = locateZones(room, description, rules);
  const zones = room.zones?.map((zone) => ({ ...zone, joists: joistsOf(parts.filter((part) => part.zone === zone.id)) }));
  return { parts, room: zones ? { ...room, zones } : room, joists: joistsOf(parts.filter(({ zone }) => zone === undefined)) };
}

/** All joists of some parts; one on the border of two of them once. */
export const joistsOf = (parts: readonly Pick<LocatedZone, 'joists'>[]): readonly Joist[] => [
  ...new Set(parts.flatMap(({ joists }) => joists)),
];
