import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import { corners } from '../survey/outline.js';
import { centreAt, directionOf, type Frame, type FramePoint, frameOf } from './frame.js';
import type { Area } from './joistLine.js';

interface Bay {
  readonly joist: string;
  readonly length: number;
  /** Its middle. */
  readonly u: number;
  readonly v: number;
}

/**
 * Bays beside a wall that are long enough to hide one more joist. The ceiling is looked at across the joists half way between each
 * corner, or end of a joist, and the next; of one bay the longest look is told.
 */
export function longBays(area: Area, joists: readonly Joist[], direction: Direction, rules: RuleSet): Finding[] {
  const { value, source } = lookUp(rules, 'perimeter.probeBay') as RuleValue;
  const frame = frameOf(direction);
  const ours = joists.filter((joist) => directionOf([joist]) === direction).map((joist) => ({ joist, ...endsOf(joist, frame) }));
  const sides = area.flatMap((outline) => {
    const ring = corners(outline).map(frame.into);
    return ring.map((a, i) => [a, ring[(i + 1) % ring.length]] as const);
  });
  const levels = [...new Set([...sides.map(([{ v }]) => v), ...ours.flatMap(({ low, high }) => [low, high])])].sort(
    (a, b) => a - b,
  );
  const longest = new Map<string, Bay>();
  const note = (bay: Bay, wall: string): void => {
    const known = longest.get(`${wall} ${bay.joist}`);
    if (known === undefined || known.length < bay.length) longest.set(`${wall} ${bay.joist}`, bay);
  };
  for (let i = 1; i < levels.length; i++) {
    const v = Math.round((levels[i - 1] + levels[i]) / 2);
    const there = ours
      .filter(({ low, high }) => low <= v && v <= high)
      .map(({ joist }) => ({ joist: joist.id, u: centreAt(joist, frame, v) }));
    for (const [from, to] of runsAt(sides, v)) {
      const within = there.filter(({ u }) => from <= u && u <= to).sort((a, b) => a.u - b.u);
      const [first, last] = [within[0], within[within.length - 1]];
      if (first === undefined) continue;
      note({ joist: first.joist, length: first.u - from, u: Math.round((from + first.u) / 2), v }, 'before');
      note({ joist: last.joist, length: to - last.u, u: Math.round((last.u + to) / 2), v }, 'after');
    }
  }
  return [...longest.values()]
    .filter(({ length }) => length > toGrid(value as number))
    .map(({ joist, length, u, v }) => {
      const { x, y } = frame.back(fromGrid(u), fromGrid(v));
      const details = { where: { joist, at: { x, y } }, value: fromGrid(length), limit: value as number, unit: 'mm', source };
      return finding('joist-probe-last-bay', 'warning', details);
    });
}

function endsOf({ start, end }: Joist, frame: Frame): { readonly low: number; readonly high: number } {
  const [a, b] = [frame.into(start).v, frame.into(end).v].map(toGrid);
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

/** Where a line across the joists is in the area. */
function runsAt(sides: readonly (readonly [FramePoint, FramePoint])[], v: number): [number, number][] {
  const crossed = sides
    .filter(([a, b]) => Math.min(a.v, b.v) <= v && v < Math.max(a.v, b.v))
    .map(([a, b]) => Math.round(a.u + ((b.u - a.u) * (v - a.v)) / (b.v - a.v)))
    .sort((a, b) => a - b);
  return crossed.flatMap((from, i): [number, number][] => (i % 2 === 0 ? [[from, crossed[i + 1]]] : []));
}
