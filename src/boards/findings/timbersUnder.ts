import type { RuleSet } from '../../rules/ruleSet.js';
import { greatestOf, lookUp, numberOf, type RuleValue } from '../../rules/ruleValue.js';
import { toGrid } from '../../survey/grid.js';
import type { Joist } from '../../survey/joist.js';
import type { Timber } from './furthestPlace.js';
import { type Crosspiece, inFrame, type LaidPart, type PieceUp, type Support } from './laidCeiling.js';
import { lineAt, stretchesAt } from './stretchesAt.js';
import { bandsOf, type FacedWall } from './wallsFaced.js';

/** A timber that runs along a wall, no further from its line than this, is on this side of it, mm: a wall may be measured short. */
const AT_WALL = 50;

/** How far beyond an end of a piece timber may be that carries it, grid steps: the gap that is left there, as wide as it may come out. */
export function gapAtEnds(set: RuleSet): number {
  const widest = Math.max(...GAPS.map((key) => greatestOf(lookUp(set, key) as RuleValue)));
  return toGrid(widest) + toGrid(numberOf(set, 'cut.tolerance'));
}

const GAPS = ['perimeter.gap', 'joint.gap', 'edgeJoint.gap'] as const;

/** The timbers that some of a piece lies on, those that run the way of the rows too; `gap` as in {@link gapAtEnds}. */
export function timbersUnder({ frame, supports, crosspieces }: LaidPart, up: PieceUp, gap: number): Timber[] {
  const under = [
    ...supports.filter((support) => reachesUnder(support, up, gap)),
    ...crosspieces.filter((crosspiece) => crossesUnder(crosspiece, up, gap)),
  ];
  return under.map(({ joist }) => timberOf(joist, frame));
}

/** Of the timbers under a piece, what lies this side of a wall that the piece faces, and the timbers that run along that wall. */
export function timbersTowards(
  { frame, supports }: LaidPart,
  under: readonly Timber[],
  faced: FacedWall,
  inwards: 1 | -1,
): Timber[] {
  const along = supports.filter((support) => runsAlong(support, faced));
  return [...under.flatMap((timber) => thisSide(timber, faced, inwards)), ...along.map(({ joist }) => timberOf(joist, frame))];
}

function runsAlong({ low, high, centre }: Support, { a, b, from, to }: FacedWall): boolean {
  const [foot, head] = [Math.max(low, from), Math.min(high, to)];
  return foot < head && [foot, head].every((v) => Math.abs(centre(v) - lineAt(a, b, v)) <= toGrid(AT_WALL));
}

/** As much of a timber as lies this side of the line of a wall. */
function thisSide(timber: Timber, { a, b }: FacedWall, inwards: 1 | -1): Timber[] {
  const { from, to } = timber;
  const [first, last] = [from, to].map(({ u, v }) => inwards * (u - lineAt(a, b, v)));
  if (first < 0 && last < 0) return [];
  if (first >= 0 && last >= 0) return [timber];
  const share = first / (first - last);
  const cut = { u: Math.round(from.u + share * (to.u - from.u)), v: Math.round(from.v + share * (to.v - from.v)) };
  return [first < 0 ? { ...timber, from: cut } : { ...timber, to: cut }];
}

const timberOf = (joist: Joist, frame: LaidPart['frame']): Timber => ({
  joist,
  from: inFrame(frame, joist.start),
  to: inFrame(frame, joist.end),
});

/** Whether some of a timber's centre line lies under a piece, its ends counted. */
function reachesUnder({ low, high, centre }: Support, { outline, ...up }: PieceUp, gap: number): boolean {
  const [from, to] = [Math.max(low, up.low), Math.min(high, up.high)];
  if (from >= to) return false;
  const [first, last] = [centre(from), centre(to)];
  if (Math.max(first, last) < up.near - gap || Math.min(first, last) > up.far + gap) return false;
  return bandsOf(outline, from, to).some(([foot, head]) =>
    [foot + 1, Math.round((foot + head) / 2), head - 1].some((level) =>
      stretchesAt(outline, level).some(([start, end]) => start - gap <= centre(level) && centre(level) <= end + gap),
    ),
  );
}

/** Whether a timber that runs the way of the rows lies under a piece, or under the long joint at an edge of it. */
function crossesUnder({ near, far, level }: Crosspiece, { outline, low, high }: PieceUp, gap: number): boolean {
  if (level < low - gap || level > high + gap) return false;
  const within = Math.max(low + 1, Math.min(high - 1, level));
  return stretchesAt(outline, within).some(([start, end]) => near <= end && start <= far);
}
