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

/**
 * The longest distance between two crossings of lines that can be taped without leaving the part: it comes right only where the
 * row edges are square to the joists.
 */
export function checkDiagonal(zone: Subject): string[] {
  const { plan, say, withUnit, frame, rings } = zone;
  const joists = plan.joists.filter((joist) => !isCrosswise(zone, joist));
  const crossings = rowEdges(zone).map((edge) => crossingsOn(edge, joists, zone));
  const [first, last] = [crossings[0], crossings[crossings.length - 1]];
  if (first === undefined || first === last) return [];
  const pairs = first
    .flatMap((a) => last.filter((b) => a.joist.id !== b.joist.id).map((b) => ({ a, b, length: distance(a, b) })))
    .sort((one, other) => other.length - one.length || one.a.u - other.a.u);
  const seen = pairs.find(({ a, b }) => isClear(a, b, (u, v) => isIn(rings, frame.back(fromGrid(u), fromGrid(v)))));
  if (seen === undefined) return [];
  const name = ({ joist, edge }: Crossing): string =>
    say('setting.crossing', { joist: joist.id, row: `${edge.low}/${edge.high}` });
  const length = withUnit(fromGrid(Math.round(seen.length)));
  return [say('setting.lines.diagonal', { from: name(seen.a), to: name(seen.b), length })];
}

function crossingsOn(edge: RowEdge, joists: readonly Joist[], { frame }: Subject): Crossing[] {
  return joists.flatMap((joist) => {
    const [from, to] = [joist.start, joist.end].map((point) => toGrid(frame.into(point).v));
    if (edge.at < from || edge.at > to) return [];
    const u = centreAt(joist, frame, edge.at);
    return u < edge.near || u > edge.far ? [] : [{ u, v: edge.at, joist, edge }];
  });
}

const distance = (a: Crossing, b: Crossing): number => Math.sqrt((b.u - a.u) * (b.u - a.u) + (b.v - a.v) * (b.v - a.v));

const isClear = (a: Crossing, b: Crossing, isCeiling: (u: number, v: number) => boolean): boolean =>
  Array.from({ length: LOOKS - 1 }, (_, i) => (i + 1) / LOOKS).every((share) =>
    isCeiling(a.u + (b.u - a.u) * share, a.v + (b.v - a.v) * share),
  );
