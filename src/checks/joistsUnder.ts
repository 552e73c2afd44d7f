import type { RuleSet } from '../rules/ruleSet.js';
import { gridRule } from './ceiling.js';
import { HAIR } from './hair.js';
import type { Band, PieceShape } from './structure.js';
import type { Support } from './supports.js';

/**
 * Joists that hold a piece: those of its butt joints, and those that lie under it, up to a wall or an opening beside it, for half
 * of its width or for the length that counts.
 */
export function joistsUnder(piece: PieceShape, supports: readonly Support[], rules: RuleSet): Support[] {
  const { v0, v1 } = piece.facts.box;
  const enough = Math.min((v1 - v0) / 2, gridRule(rules, 'piece.supportLength').steps);
  const seats = [piece.low, piece.high].flatMap(({ joint }) =>
    (joint?.stretches ?? []).flatMap(({ seat }) => (seat && seat.bearing.outcome !== 'off' ? [seat.support.joist.id] : [])),
  );
  return supports.filter(
    (support) =>
      seats.includes(support.joist.id) || piece.bands.reduce((sum, band) => sum + lengthUnder(band, support), 0) >= enough - HAIR,
  );
}

/** Length along the frame for which a timber's centre line lies under a band. */
function lengthUnder({ low, high, fromLow, fromHigh, toLow, toHigh }: Band, support: Support): number {
  let [start, stop] = [Math.max(low, support.low), Math.min(high, support.high)];
  if (start >= stop) return 0;
  const at = (v: number, a: number, b: number): number => (a === b ? a : a + ((b - a) * (v - low)) / (high - low));
  const [foot, head] = [start, stop];
  const insides = [
    (v: number) => support.centre(v) - at(v, fromLow, fromHigh) + HAIR,
    (v: number) => at(v, toLow, toHigh) - support.centre(v) + HAIR,
  ];
  for (const inside of insides) {
    const [a, b] = [inside(foot), inside(head)];
    if (a < 0 && b < 0) return 0;
    const turn = Math.round(foot + ((head - foot) * a) / (a - b));
    if (a < 0) start = Math.max(start, turn);
    if (b < 0) stop = Math.min(stop, turn);
  }
  return Math.max(0, stop - start);
}
