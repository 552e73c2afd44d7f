import { type Bearing, bearingOf } from '../joists/bearing.js';
import { centreAt, type Frame } from '../joists/frame.js';
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
}

/** The joists that run along the frame, in order across it. Timbers that run the other way carry no board ends. */
export function supportsOf(joists: readonly Joist[], frame: Frame): Support[] {
  return joists
    .flatMap((joist) => {
      const [start, end] = [frame.into(joist.start), frame.into(joist.end)];
      if (Math.abs(start.u - end.u) > Math.abs(start.v - end.v)) return [];
      const [a, b] = [toGrid(start.v), toGrid(end.v)];
      return [{ joist, low: Math.min(a, b), high: Math.max(a, b), centre: (v: number) => centreAt(joist, frame, v) }];
    })
    .sort((a, b) => a.centre(a.low) + a.centre(a.high) - b.centre(b.low) - b.centre(b.high));
}

/** Joists closer than this side by side are one timber to a board end, mm. */
const TOUCHING = 1;

/** The supports and, for every two that lie side by side without a gap, the one that they make together. */
export function withDoubled(supports: readonly Support[]): Support[] {
  const doubled = supports.slice(1).flatMap((second, i) => {
    const first = supports[i];
    const [low, high] = [Math.max(first.low, second.low), Math.min(first.high, second.high)];
    const reach = toGrid((first.joist.width + second.joist.width) / 2 + TOUCHING);
    const apart = Math.max(second.centre(low) - first.centre(low), second.centre(high) - first.centre(high));
    return low < high && apart <= reach ? [pair(first, second, low, high)] : [];
  });
  return [...supports, ...doubled];
}

function pair(first: Support, second: Support, low: number, high: number): Support {
  const middle = (low + high) / 2;
  const [a, b] = [first.joist, second.joist];
  const width = fromGrid(second.centre(middle) - first.centre(middle)) + (a.width + b.width) / 2;
  const lean = toGrid((b.width - a.width) / 4);
  return {
    joist: { ...a, width, sd: Math.max(a.sd, b.sd), presence: Math.min(a.presence, b.presence) },
    low,
    high,
    centre: (v) => Math.round((first.centre(v) + second.centre(v)) / 2) + lean,
  };
}

/** A board end, or the two that meet, at the foot and the head of the joint; grid steps. */
export interface EndLine {
  readonly low: number;
  readonly high: number;
  /** Middle of the gap at the foot and at the head. */
  readonly atLow: number;
  readonly atHigh: number;
  readonly gap: number;
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

export function seatOf(end: EndLine, supports: readonly Support[], slack: number, rules: RuleSet): Seat | undefined {
  const near = supports.map((support) => ({
    support,
    away: Math.max(Math.abs(support.centre(end.low) - end.atLow), Math.abs(support.centre(end.high) - end.atHigh)),
  }));
  const nearest = Math.min(...near.map(({ away }) => away));
  let best: Seat | undefined;
  for (const { support, away } of near) {
    if (away > nearest + toGrid(RIVALS)) continue;
    const bearing = bearingOf(support.joist, fromGrid(away), fromGrid(Math.max(0, end.gap)), rules);
    const beyond = Math.max(0, support.low - slack - end.low) + Math.max(0, end.high - support.high - slack);
    const seat = { support, bearing, unsupported: Math.min(beyond, end.high - end.low) };
    if (best === undefined || better(seat, best)) best = seat;
  }
  return best;
}

function better(a: Seat, b: Seat): boolean {
  const rank = ({ bearing, unsupported }: Seat): number => (unsupported > 0 ? 3 : RANK[bearing.outcome]);
  return rank(a) - rank(b) < 0 || (rank(a) === rank(b) && worth(a) < worth(b));
}

const worth = ({ bearing, unsupported }: Seat): number => bearing.offset + fromGrid(unsupported);
