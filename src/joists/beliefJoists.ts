import { toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import { frameExtent, joistLine } from './joistLine.js';
import type { JoistBelief } from './joistsOfComponents.js';
import { rounded } from './rounded.js';

/** Joists from what is believed of them, in order across the room; `width` (mm) as far as it was given. */
export function beliefJoists(
  room: Room,
  direction: Direction,
  beliefs: readonly JoistBelief[],
  width: number | undefined,
): Joist[] {
  const near = frameExtent(room, direction).near;
  const offset = near / toGrid(1);
  const joists: Joist[] = [];
  for (const belief of beliefs) {
    const facts = {
      id: `J${joists.length + 1}`,
      width: belief.doubled || width === undefined ? rounded(belief.width, 2) : width,
      sd: rounded(belief.sd, 100),
      sdAtStart: rounded(belief.sdAtStart, 100),
      sdAtEnd: rounded(belief.sdAtEnd, 100),
      presence: Math.min(1, rounded(belief.presence, 1e4)),
      known: belief.measured ? ('measured' as const) : ('inferred' as const),
    };
    const joist = joistLine(room, direction, rounded(offset + belief.atStart, 10), rounded(offset + belief.atEnd, 10), facts);
    if (joist) joists.push(joist);
  }
  return joists;
}
