import { type Bearing, bearingOf, LEAST_TIMBER } from '../joists/bearing.js';
import { centreAt, type Frame, frameOf } from '../joists/frame.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';

/** A timber that boards lie across, in the frame; grid steps. */
export interface Support {
  readonly joist: Joist;
  /** Its ends along the joists. */
  readonly low: number;
  readonly high: number;
  readonly centre: (v: number) => number;
  /** Length along the frame over its own length: 1 where it runs straight up. */
  readonly steepness: number;
}

/** The joists that run along the frame, in order across it. Timbers that run the other way carry no board ends. */
export function supportsOf(joists: readonly Joist[], frame: Frame): Support[] {
  return joists
    .flatMap((joist) => {
      const [start, end] = [frame.into(joist.start), frame.into(joist.end)];
      const [du, dv] = [toGrid(end.u) - toGrid(start.u), toGrid(end.v) - toGrid(start.v)];
      if (Math.abs(du) > Math.abs(dv)) return [];
      const [a, b] = [toGrid(start.v), toGrid(end.v)];
      const centre = du === 0 ? () => toGrid(start.u) : (v: number) => centreAt(joist, frame, v);
      const steepness = du === 0 ? 1 : Math.abs(dv) / Math.sqrt(du * du + dv * dv);
      return [{ joist, low: Math.min(a, b), high: Math.max(a, b), centre, steepness }];
    })
    .sort((a, b) => a.centre(a.low) + a.centre(a.high) - b.centre(b.low) - b.centre(b.high));
}

/** Timbers that run the other way, in the frame turned: noggings, trimmers and battens between joists. */
export const crossingOf = (joists: readonly Joist[], { direction }: Frame): Support[] =>
  supportsOf(joists, frameOf(direction === 'y' ? 'x' : 'y')).filter(({ steepness }) => steepness * steepness > 0.5);

/** A stretch of a board end, or of the two that meet: the middle of the gap at its foot and its head; grid steps. */
export interface EndPart {
  readonly low: number;
  readonly high: number;
  readonly atLow: number;
  readonly atHigh: number;
}

/** A board end, or the two that meet, from its foot to its head. */
export interface EndLine extends EndPart {
  readonly gap: number;
  /** Where there is board: without what an opening takes out of it. */
  readonly parts: readonly EndPart[];
}

/** The timber that serves an end best, and how the end sits on it. */
export interface Seat {
  readonly support: Support;
  readonly bearing: Bearing;
  /** Length of the end that lies beyond the timber's own ends, grid steps. */
  readonly unsupported: number;
}

const RANK = { secure: 0, tight: 1, short: 2, off: 3 };

/** Timber further off than the nearest by more than this is not looked at, mm: only what lies side by side competes. */
const RIVALS = 150;

/** The bearing is that at the worst place of the end, square to the timber. */
export function seatOf(
  end: EndLine,
  supports: readonly Support[],
  crossing: readonly Support[],
  slack: number,
  rules: RuleSet,
): Seat | undefined {
  const rough = supports.map((support) => ({ support, away: away(support, end) }));
  const nearest = Math.min(...rough.map((each) => each.away));
  const gap = fromGrid(Math.max(0, end.gap));
  let best: Seat | undefined;
  for (const { support, away: first } of rough) {
    if (first > nearest + toGrid(RIVALS)) continue;
    const worst = Math.max(...end.parts.map((part) => away(support, part)));
    const offset = support.steepness === 1 ? worst : Math.round(worst * support.steepness);
    const bearing = bearingOf(support.joist, fromGrid(offset), gap, rules);
    const unsupported = end.parts.reduce((sum, part) => sum + beyond(support, part, crossing, slack), 0);
    const seat = { support, bearing, unsupported };
    if (best === undefined || better(seat, best)) best = seat;
  }
  if (best !== undefined && rank(best) < RANK.off) return best;
  return overCrossing(end, crossing, rules) ?? best;
}

const away = ({ centre }: Support, { low, high, atLow, atHigh }: EndPart): number =>
  Math.max(Math.abs(centre(low) - atLow), Math.abs(centre(high) - atHigh));

/** Length of a part that lies past the timber's own ends, and on no timber that it is cut off by. */
function beyond(support: Support, { low, high, atLow, atHigh }: EndPart, crossing: readonly Support[], slack: number): number {
  const past = [
    { from: low, to: Math.min(high, support.low - slack) },
    { from: Math.max(low, support.high + slack), to: high },
  ].filter(({ from, to }) => from < to);
  if (past.length === 0) return 0;
  const at = Math.round((atLow + atHigh) / 2);
  const across = crossing.filter((each) => each.low <= at && at <= each.high);
  const bare = across.reduce(
    (stretches, { centre, joist }) =>
      stretches.flatMap(({ from, to }) => {
        const half = toGrid(joist.width / 2) + slack;
        const [start, stop] = [centre(at) - half, centre(at) + half];
        return [
          { from, to: Math.min(to, start) },
          { from: Math.max(from, stop), to },
        ].filter((each) => each.from < each.to);
      }),
    past,
  );
  return bare.reduce((sum, { from, to }) => sum + to - from, 0);
}

/** A timber that runs the other way carries an end that lies upon it from edge to edge. */
function overCrossing(end: EndLine, crossing: readonly Support[], rules: RuleSet): Seat | undefined {
  const { low, high, gap, parts } = end;
  const reach = Math.max(0, gap) / 2 + toGrid(LEAST_TIMBER);
  const carries = ({ joist, centre, low: from, high: to }: Support): boolean =>
    parts.every((part) =>
      [
        { at: part.atLow, level: part.low },
        { at: part.atHigh, level: part.high },
      ].every(
        ({ at, level }) => from + reach <= at && at <= to - reach && Math.abs(centre(at) - level) <= toGrid(joist.width / 2),
      ),
    );
  const found = crossing.find(carries);
  if (found === undefined) return undefined;
  const { joist } = found;
  const support = { joist, low, high, centre: () => Math.round((end.atLow + end.atHigh) / 2), steepness: 1 };
  return { support, bearing: bearingOf(joist, 0, fromGrid(Math.max(0, gap)), rules), unsupported: 0 };
}

const better = (a: Seat, b: Seat): boolean => rank(a) - rank(b) < 0 || (rank(a) === rank(b) && worth(a) < worth(b));

const rank = ({ bearing, unsupported }: Seat): number => (unsupported > 0 ? RANK.off : RANK[bearing.outcome]);

const worth = ({ bearing, unsupported }: Seat): number => bearing.offset + fromGrid(unsupported);
