import { centreAt, directionOf, type Frame, frameOf } from '../joists/frame.js';
import type { Conditions, RuleSet } from '../rules/ruleSet.js';
import { toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Opening } from '../survey/room.js';
import type { FixingSpacing } from './fixingSpacing.js';
import type { NoFixZone } from './placedFixings.js';
import type { Timber } from './timberUnder.js';

/** What every line of a job is set out by. */
export interface LineJob {
  readonly rules: RuleSet;
  readonly given: Conditions;
  readonly spacing: FixingSpacing;
  /** mm. */
  readonly floating: number;
  /** Widest gap to a wall, grid steps. */
  readonly wallGap: number;
  /** How far beside the middle of a joist screws go to keep off old lath nails, grid steps; 0 where there are none. */
  readonly offCentre: number;
  /** Nails in pairs, in the middle of the board; mm. */
  readonly pairs?: { readonly spacing: number; readonly distance: number };
  readonly openings: readonly Opening[];
  readonly noFix: readonly NoFixZone[];
}

/** A joist as a timber in the frame of its own direction. */
export interface PlacedTimber extends Timber {
  readonly joist: Joist;
  readonly frame: Frame;
  /** As far as its edges reach across its own direction, grid steps. */
  readonly near: number;
  readonly far: number;
}

export function placedTimber(joist: Joist): PlacedTimber {
  const frame = frameOf(directionOf([joist]));
  const [start, end] = [joist.start, joist.end].map((point) => frame.into({ x: toGrid(point.x), y: toGrid(point.y) }));
  const width = toGrid(joist.width);
  return {
    joist,
    frame,
    centreAt: (v) => centreAt(joist, frame, v),
    low: Math.min(start.v, end.v),
    high: Math.max(start.v, end.v),
    near: Math.min(start.u, end.u) - width / 2,
    far: Math.max(start.u, end.u) + width / 2,
    width,
  };
}
