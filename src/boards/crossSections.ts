import { extentOf, twiceArea } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import { sidesOf } from '../survey/traceRings.js';
import type { Edges } from './box.js';
import type { Part } from './partsOf.js';
import type { PlacementRules } from './placementRules.js';

/** From the near to the far end of what lies on a line across the joists. */
export type Span = readonly [from: number, to: number];

/** A stretch along the joists, and where there is ceiling at all of its levels. */
export interface Slab extends Edges {
  readonly spans: readonly Span[];
  /** Whether the ceiling ends where the spans do, and not a little beyond. */
  readonly isExact: boolean;
}

/** What slanting walls are divided into, so that little is lost between one level and the next. */
const SLANTED = 150_000;
const MOST_SLABS = 16;

/** A part cut at the levels of its corners: no more of it than boards must cover, whatever gap is left at walls out of square. */
export function crossSections(
  part: Part,
  { low, high }: Edges,
  gap: number,
  { nominal, greatest }: PlacementRules['wallGap'],
): Slab[] {
  const rings = part.clear?.(gap) ?? [];
  if (rings.length === 0) return [{ low, high, spans: [[nominal, part.length - nominal]], isExact: true }];
  const around = rings.filter((ring) => twiceArea(ring) > 0);
  const holes = rings.filter((ring) => twiceArea(ring) < 0).map((ring) => ({ ...extentOf(ring), isBox: isBox(ring) }));
  const sides = around.flatMap(sidesOf);
  // The gap at the end of a row takes up steps and slants that are no more than it may be wider.
  const most = greatest - nominal;
  const isStraight = sides.every(([a, b]) => (a.x === b.x || a.y === b.y) && Math.abs(a.x - b.x) + Math.abs(a.y - b.y) > most);
  const levels = [...around.flat().map(({ y }) => y), ...holes.flatMap((hole) => [hole.low, hole.high]), low, high];
  const all = [...new Set(isStraight ? levels : finer(levels))].filter((y) => y >= low && y <= high).sort((a, b) => a - b);
  const slabs = all.slice(1).map((to, i): Slab => {
    const from = all[i];
    const solid = spansBetween(sides, from, to, isStraight ? 0 : most + 1);
    const beside = holes.filter((hole) => hole.low < to && hole.high > from);
    return {
      low: from,
      high: to,
      spans: beside.reduce((spans, { left, right }) => without(spans, [left, right]), solid),
      isExact: isStraight && beside.every((hole) => hole.isBox),
    };
  });
  return fewer(slabs);
}

const isBox = (ring: readonly Point[]): boolean =>
  ring.length === 4 && sidesOf(ring).every(([a, b]) => a.x === b.x || a.y === b.y);

function finer(levels: readonly number[]): number[] {
  const sorted = [...new Set(levels)].sort((a, b) => a - b);
  return sorted.flatMap((level, i) => {
    const height = (sorted[i + 1] ?? level) - level;
    const parts = Math.max(1, Math.min(6, Math.ceil(height / SLANTED)));
    return Array.from({ length: parts }, (_, k) => level + Math.floor((height * k) / parts));
  });
}

/** Where an area lies all the way from one level to another, no corner between them. */
function spansBetween(sides: ReturnType<typeof sidesOf>, low: number, high: number, less: number): Span[] {
  const crossing = sides
    .filter(([a, b]) => Math.min(a.y, b.y) <= low && Math.max(a.y, b.y) >= high)
    .map(([a, b]) => {
      const at = (y: number): number => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
      const xs = [at(low), at(high)];
      return { from: Math.ceil(Math.max(...xs)) + less, to: Math.floor(Math.min(...xs)) - less, middle: xs[0] + xs[1] };
    })
    .sort((p, q) => p.middle - q.middle);
  const spans: Span[] = [];
  for (let i = 0; i + 1 < crossing.length; i += 2) {
    const span: Span = [crossing[i].from, crossing[i + 1].to];
    if (span[0] < span[1]) spans.push(span);
  }
  return spans;
}

const without = (spans: readonly Span[], [left, right]: Span): Span[] =>
  spans.flatMap(([from, to]) =>
    (
      [
        [from, Math.min(to, left)],
        [Math.max(from, right), to],
      ] as Span[]
    ).filter(([a, b]) => a < b),
  );

const common = (one: readonly Span[], other: readonly Span[]): Span[] =>
  one.flatMap(([a, b]) =>
    other.flatMap(([c, d]) => (Math.max(a, c) < Math.min(b, d) ? [[Math.max(a, c), Math.min(b, d)] as Span] : [])),
  );

/** The thinnest slabs joined with those above them until there are few. */
function fewer(slabs: readonly Slab[]): Slab[] {
  const kept = [...slabs];
  while (kept.length > MOST_SLABS) {
    let thinnest = 0;
    for (let i = 1; i + 1 < kept.length; i++) {
      if (kept[i + 1].high - kept[i].low < kept[thinnest + 1].high - kept[thinnest].low) thinnest = i;
    }
    const [a, b] = [kept[thinnest], kept[thinnest + 1]];
    kept.splice(thinnest, 2, { low: a.low, high: b.high, spans: common(a.spans, b.spans), isExact: false });
  }
  return kept;
}
