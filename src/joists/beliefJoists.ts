import { toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import { frameExtent, type JoistStretch, type JoistsWanted, joistLine } from './joistLine.js';
import type { JoistBelief } from './joistsOfComponents.js';
import { rounded } from './rounded.js';

/** Joists from what is believed of them, in order across the room; `width` (mm) as far as it was given. */
export function beliefJoists(
  room: Room,
  direction: Direction,
  beliefs: readonly JoistBelief[],
  width: number | undefined,
  { prefix = '', area }: JoistsWanted,
): { readonly belief: JoistBelief; readonly joist: Joist }[] {
  const near = frameExtent(room, direction).near;
  const offset = near / toGrid(1);
  let number = 0;
  return beliefs.flatMap((belief) => {
    const facts = {
      id: `${prefix}J${number + 1}`,
      width: belief.doubled || width === undefined ? rounded(belief.width, 2) : width,
      ...(belief.doubled && { seams: [0] }),
      sd: rounded(belief.sd, 100),
      sdAtStart: rounded(belief.sdAtStart, 100),
      sdAtEnd: rounded(belief.sdAtEnd, 100),
      presence: Math.min(1, rounded(belief.presence, 1e4)),
      known: belief.measured ? ('measured' as const) : ('inferred' as const),
    };
    const places = { atStart: rounded(offset + belief.atStart, 10), atEnd: rounded(offset + belief.atEnd, 10) };
    const stretches = joistLine(room, direction, places, facts, area);
    if (stretches.length > 0) number++;
    return stretches.map((stretch) => ({ belief, joist: { ...stretch.joist, ...spreadOf(belief, stretch) } }));
  });
}

/**
 * The spread of a joist that does not run from one end of the room to the other. The variance of a straight line is quadratic
 * along it, so that what is known of it at three places gives it anywhere.
 */
function spreadOf({ sdAtStart, sd, sdAtEnd }: JoistBelief, { begins, ends }: JoistStretch): Partial<Joist> {
  if (begins === 0 && ends === 1) return {};
  const [start, middle, end] = [sdAtStart * sdAtStart, sd * sd, sdAtEnd * sdAtEnd];
  const at = (share: number): number => {
    const t = 2 * share - 1;
    const variance = middle + (t * (end - start)) / 2 + t * t * ((start + end) / 2 - middle);
    return rounded(Math.sqrt(Math.max(0, variance)), 100);
  };
  return { sd: at((begins + ends) / 2), sdAtStart: at(begins), sdAtEnd: at(ends) };
}
