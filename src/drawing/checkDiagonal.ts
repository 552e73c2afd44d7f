import { centreAt } from '../joists/frame.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { isIn } from './bounds.js';
import { type RowEdge, rowEdges } from './rowEdges.js';
import type { Subject } from './subject.js';
import { isCrosswise } from './zonesIn.js';

/** Where a row edge crosses a joist, on the grid. */
interface Crossing {
  readonly u: number;
  readonly v: number;
  readonly joist: Joist;
  readonly edge: RowEdge;
}

/** How many places between its ends a diagonal is looked at: all of them have to lie on the ceiling. */
const LOOKS = 8;

/** How far along a joist a part with one row edge is checked, mm: as far as a board is wide, or in whole hundreds what there is. */
const ARM = { longest: 1200, step: 100, shortest: 300 } as const;

/**
 * The longest distance between two crossings of lines that can be taped without leaving the part: it comes right only where the
 * row edges are square to the joists. With one row edge, from it to a mark along the joist farthest away.
 */
export function checkDiagonal(zone: Subject): string[] {
  const joists = zone.plan.joists.filter((joist) => !isCrosswise(zone, joist));
  const crossings = rowEdges(zone).map((edge) => crossingsOn(edge, joists, zone));
  const [first, last] = [crossings[0], crossings[crossings.length - 1]];
  if (first === undefined) return [];
  return first === last ? fromMark(first, zone) : betweenEdges(first, last, zone);
}

function betweenEdges(first: readonly Crossing[], last: readonly Crossing[], zone: Subject): string[] {
  const pairs = first
    .flatMap((a) => last.filter((b) => a.joist.id !== b.joist.id).map((b) => ({ a, b, length: distance(a, b) })))
    .sort((one, other) => other.length - one.length || one.a.u - other.a.u);
  const seen = pairs.find(({ a, b }) => isClear(a, b, zone));
  if (seen === undefined) return [];
  const length = zone.withUnit(fromGrid(Math.round(seen.length)));
  return [zone.say('setting.lines.diagonal', { from: nameOf(seen.a, zone), to: nameOf(seen.b, zone), length })];
}

/** From the first crossing of the only row edge to a mark on the last joist that it crosses. */
function fromMark(crossings: readonly Crossing[], zone: Subject): string[] {
  const [a, b] = [crossings[0], crossings[crossings.length - 1]];
  if (a === undefined || a === b) return [];
  const ends = [b.joist.start, b.joist.end].map((point) => toGrid(zone.frame.into(point).v));
  const [under, over] = [b.v - ends[0], ends[1] - b.v];
  const arm = Math.min(ARM.longest, Math.floor(fromGrid(Math.max(under, over)) / ARM.step) * ARM.step);
  if (arm < ARM.shortest) return [];
  const v = b.v + (over >= under ? 1 : -1) * toGrid(arm);
  const mark = { ...b, v, u: centreAt(b.joist, zone.frame, v) };
  if (!isClear(a, mark, zone)) return [];
  return [
    zone.say('setting.lines.mark', {
      arm: zone.withUnit(arm),
      joist: b.joist.id,
      wall: over >= under ? zone.sides.high : zone.sides.low,
      row: `${b.edge.low}/${b.edge.high}`,
      from: nameOf(a, zone),
      length: zone.withUnit(fromGrid(Math.round(distance(a, mark)))),
    }),
  ];
}

const nameOf = ({ joist, edge }: Crossing, { say }: Subject): string =>
  say('setting.crossing', { joist: joist.id, row: `${edge.low}/${edge.high}` });

function crossingsOn(edge: RowEdge, joists: readonly Joist[], { frame }: Subject): Crossing[] {
  return joists.flatMap((joist) => {
    const [from, to] = [joist.start, joist.end].map((point) => toGrid(frame.into(point).v));
    if (edge.at < from || edge.at > to) return [];
    const u = centreAt(joist, frame, edge.at);
    return u < edge.near || u > edge.far ? [] : [{ u, v: edge.at, joist, edge }];
  });
}

type Spot = Pick<Crossing, 'u' | 'v'>;

const distance = (a: Spot, b: Spot): number => Math.sqrt((b.u - a.u) * (b.u - a.u) + (b.v - a.v) * (b.v - a.v));

/** Whether the straight line between two places stays on the part. */
const isClear = (a: Spot, b: Spot, { rings, frame }: Subject): boolean =>
  Array.from({ length: LOOKS - 1 }, (_, i) => (i + 1) / LOOKS).every((share) => {
    const [u, v] = [a.u + (b.u - a.u) * share, a.v + (b.v - a.v) * share];
    return isIn(rings, frame.back(fromGrid(u), fromGrid(v)));
  });
