import { type Finding, finding } from '../rules/finding.js';
import { greatestOf, lookUp, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Ceiling, gridRule } from './ceiling.js';
import { placeOf } from './place.js';
import type { Band, PieceShape, Structure } from './structure.js';
import type { Support } from './supports.js';

/** Two timbers next to each other under a piece, where they are furthest apart. */
interface Bay {
  readonly from: Support;
  readonly to: Support;
  readonly width: number;
  readonly piece: PieceShape;
  readonly level: number;
  /** Length along the joists over which they are neighbours. */
  readonly length: number;
}

/**
 * Bays wider than the board may span. Noggings cannot be added from below, so that the table's rows without intermediate noggings
 * judge. Where a joist is cut short, a bay is wider beyond its end; a strip of that no longer than a board may reach past its last
 * joist at a wall is carried by what lies on either side of it.
 */
export function wideBays(ceiling: Ceiling, { pieces, supports }: Structure): Finding[] {
  const widest = new Map<string, Bay>();
  const strip = gridRule(ceiling.rules, 'perimeter.overhang').steps;
  const limitOf = limits(ceiling);
  const ends = [...new Set(supports.flatMap(({ low, high }) => [low, high]))].sort((a, b) => a - b);
  for (const piece of pieces) {
    const limit = limitOf(piece);
    if (limit === undefined) continue;
    const { v0, v1 } = piece.facts.box;
    for (const bay of baysOf(piece, supports, ends, toGrid(greatestOf(limit)))) {
      const key = `${bay.from.joist.id} ${bay.to.joist.id}`;
      if (bay.length <= Math.min(strip, (v1 - v0) / 2)) continue;
      if (bay.width > (widest.get(key)?.width ?? 0)) widest.set(key, bay);
    }
  }
  return [...widest.values()].map((bay) => wideBay(bay, limitOf(bay.piece) as RuleValue, ceiling));
}

/** The limit for each piece's thickness, looked up once. */
function limits({ rules }: Ceiling): (piece: PieceShape) => RuleValue | undefined {
  const known = new Map<number, RuleValue | undefined>();
  return ({ facts: { stock } }) => {
    if (stock === undefined) return;
    const { thickness } = stock;
    if (!known.has(thickness)) {
      const limit = lookUp(rules, 'support.centres', { boardThickness: thickness, orientation: 'across', noggings: false });
      known.set(thickness, limit?.value === null ? undefined : limit);
    }
    return known.get(thickness);
  };
}

/** The bays wider than a limit that a piece lies over from timber to timber, each once. */
function baysOf(piece: PieceShape, supports: readonly Support[], ends: readonly number[], limit: number): Bay[] {
  const bays = new Map<string, Bay>();
  for (const { low, high, from, to } of levelsOf(piece.bands, ends)) {
    const level = Math.round((low + high) / 2);
    const order = inOrderAt(supports, level);
    for (let i = 1; i < order.length; i++) {
      const [left, right] = [order[i - 1], order[i]];
      const width = Math.max(right.centre(low) - left.centre(low), right.centre(high) - left.centre(high));
      if (width <= limit || left.centre(level) < from - half(left) || right.centre(level) > to + half(right)) continue;
      const key = `${left.joist.id} ${right.joist.id}`;
      const before = bays.get(key);
      const length = (before?.length ?? 0) + high - low;
      bays.set(key, {
        from: left,
        to: right,
        width: Math.max(width, before?.width ?? 0),
        piece,
        level: before?.level ?? level,
        length,
      });
    }
  }
  return [...bays.values()];
}

const half = ({ joist }: Support): number => toGrid(joist.width / 2);

/** The timbers that run past a level, from left to right there. */
function inOrderAt(supports: readonly Support[], level: number): Support[] {
  const near = supports.filter(({ low, high }) => low <= level && level <= high);
  const ordered = near.every((each, i) => i === 0 || near[i - 1].centre(level) <= each.centre(level));
  return ordered ? near : near.sort((a, b) => a.centre(level) - b.centre(level));
}

interface Level {
  readonly low: number;
  readonly high: number;
  readonly from: number;
  readonly to: number;
}

/** The bands of a piece, parted where a joist begins or ends. */
function levelsOf(bands: readonly Band[], ends: readonly number[]): Level[] {
  return bands.flatMap(({ low, high, fromLow, fromHigh, toLow, toHigh }) => {
    const [from, to] = [Math.round((fromLow + fromHigh) / 2), Math.round((toLow + toHigh) / 2)];
    const cuts = [low, ...ends.filter((end) => low < end && end < high), high];
    return cuts.slice(1).map((top, i) => ({ low: cuts[i], high: top, from, to }));
  });
}

function wideBay({ from, to, width, piece, level }: Bay, limit: RuleValue, { frame }: Ceiling): Finding {
  const { at, words } = placeOf(frame, (from.centre(level) + to.centre(level)) / 2, level);
  return finding('support-centres-exceeded', 'warning', {
    where: { piece: piece.facts.id, joist: from.joist.id, at },
    value: fromGrid(width),
    limit: limit.value as number,
    unit: 'mm',
    source: limit.source,
    words: { ...words, thickness: piece.facts.stock?.thickness ?? 0 },
  });
}
