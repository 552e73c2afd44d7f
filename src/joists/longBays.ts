import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import { corners, extentOf } from '../survey/outline.js';
import type { Opening } from '../survey/room.js';
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
 * corner, or end of a joist, and the next; of one bay the longest look is told. What an opening takes of a bay can hide nothing.
 */
export function longBays(
  area: Area,
  openings: readonly Opening[],
  joists: readonly Joist[],
  direction: Direction,
  rules: RuleSet,
): Finding[] {
  const { value, source } = lookUp(rules, 'perimeter.probeBay') as RuleValue;
  const frame = frameOf(direction);
  const ours = joists.filter((joist) => directionOf([joist]) === direction).map((joist) => ({ joist, ...endsOf(joist, frame) }));
  const sides = area.flatMap((outline) => {
    const ring = corners(outline).map(frame.into);
    return ring.map((a, i) => [a, ring[(i + 1) % ring.length]] as const);
  });
  const taken = openings.map((opening) => squareAbout(opening, frame));
  const ends = [...ours, ...taken].flatMap(({ low, high }) => [low, high]);
  const levels = [...new Set([...sides.map(([{ v }]) => v), ...ends])].sort((a, b) => a - b);
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
      const across = taken.filter(({ low, high }) => low <= v && v <= high);
      note({ joist: first.joist, ...longestLeft(from, first.u, across), v }, 'before');
      note({ joist: last.joist, ...longestLeft(last.u, to, across), v }, 'after');
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

interface Square {
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

function squareAbout(opening: Opening, frame: Frame): Square {
  if ('outline' in opening) {
    const ring = corners(opening.outline).map(frame.into);
    const { left, right, low, high } = extentOf(ring.map(({ u, v }) => ({ x: u, y: v })));
    return { near: left, far: right, low, high };
  }
  const { u, v } = frame.into({ x: toGrid(opening.centre.x), y: toGrid(opening.centre.y) });
  const half = toGrid(opening.diameter / 2);
  return { near: u - half, far: u + half, low: v - half, high: v + half };
}

/** The longest stretch of a bay that openings leave, and its middle. */
function longestLeft(from: number, to: number, openings: readonly Square[]): Pick<Bay, 'length' | 'u'> {
  let longest = { length: 0, u: from };
  let start = from;
  const inOrder = [...openings].sort((a, b) => a.near - b.near);
  for (const { near, far } of [...inOrder, { near: to, far: to }]) {
    const end = Math.min(near, to);
    if (end - start > longest.length) longest = { length: end - start, u: Math.round((start + end) / 2) };
    start = Math.max(start, far);
  }
  return longest;
}

/** Where a line across the joists is in the area. */
function runsAt(sides: readonly (readonly [FramePoint, FramePoint])[], v: number): [number, number][] {
  const crossed = sides
    .filter(([a, b]) => Math.min(a.v, b.v) <= v && v < Math.max(a.v, b.v))
    .map(([a, b]) => Math.round(a.u + ((b.u - a.u) * (v - a.v)) / (b.v - a.v)))
    .sort((a, b) => a - b);
  return crossed.flatMap((from, i): [number, number][] => (i % 2 === 0 ? [[from, crossed[i + 1]]] : []));
}
