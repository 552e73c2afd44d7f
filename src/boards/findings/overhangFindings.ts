import type { FramePoint } from '../../joists/frame.js';
import { type Finding, finding } from '../../rules/finding.js';
import { numberOf } from '../../rules/ruleValue.js';
import { fromGrid, toGrid } from '../../survey/grid.js';
import { givenRule } from './givenRule.js';
import type { LaidCeiling, LaidPart, PieceUp, Support, Wall } from './laidCeiling.js';
import { lineAt, stretchesAt } from './stretchesAt.js';
import { type FacedWall, turnedAbout, wallsFaced } from './wallsFaced.js';

/** How far the boards reach past the last timber towards a wall, at the worst place along it; grid steps. */
interface Overhang {
  /** Index of the side of the room; beyond them, those of the borders of the part. */
  readonly wall: number;
  readonly reach: number;
  readonly joist: string;
  readonly piece: string;
  /** On the wall. */
  readonly place: FramePoint;
}

/**
 * At each wall, the greatest distance from it to the last timber that really lies under the boards there, where that is too much.
 * A wall that a joist under the same piece runs into is carried from both sides there, and the board hangs over neither.
 */
export function overhangFindings(ceiling: LaidCeiling): Finding[] {
  const { limit, steps, source } = givenRule(ceiling.set, 'perimeter.overhang');
  // A joist said to run from wall to wall may be given as ending at the gap.
  const slack = toGrid(numberOf(ceiling.set, 'perimeter.gap')) + toGrid(numberOf(ceiling.set, 'cut.tolerance'));
  return ceiling.parts.flatMap((part) => {
    const worst = new Map<number, Overhang>();
    const about = [...part.walls, ...part.borders].map(([a, b]): Wall => [turnedAbout(a), turnedAbout(b)]);
    for (const piece of part.pieces) {
      for (const each of [...beyondEnds(part, piece, slack), ...beyondEdges(part, piece, about)]) {
        if (each.reach > (worst.get(each.wall)?.reach ?? steps)) worst.set(each.wall, each);
      }
    }
    return [...worst.values()]
      .sort((a, b) => a.wall - b.wall)
      .map(({ wall, reach, joist, piece, place }) => {
        const { x, y } = part.frame.back(fromGrid(place.u), fromGrid(place.v));
        const isWall = wall < part.walls.length;
        return finding('perimeter-overhang', 'warning', {
          where: { piece, joist, ...(isWall && { wall }), at: { x, y } },
          ...(!isWall && { sentence: 'border-overhang' }),
          value: fromGrid(reach),
          limit,
          unit: 'mm',
          source,
        });
      });
  });
}

const runsWithJoists = ({ a, b }: FacedWall): boolean => Math.abs(b.v - a.v) >= Math.abs(b.u - a.u);

/** Where a piece faces walls that run with the joists. */
function beyondEnds({ supports, walls, borders }: LaidPart, up: PieceUp, slack: number): Overhang[] {
  const faced = (['low', 'high'] as const).flatMap((side) =>
    wallsFaced(up.outline, [...walls, ...borders], side)
      .filter(runsWithJoists)
      .map((each) => ({ ...each, inwards: side === 'low' ? 1 : -1 })),
  );
  if (faced.length === 0) return [];
  const under = supports.filter((support) => reachesUnder(support, up));
  return faced.flatMap(({ wall, a, b, from, to, inwards }) => {
    const away = ({ centre }: Support, level: number): number => inwards * (centre(level) - lineAt(a, b, level));
    if (under.some((support) => away(support, from) <= 0 !== away(support, to) <= 0)) return [];
    return [from, to].flatMap((v): Overhang[] => {
      const here = under.filter((each) => each.low - slack <= v && v <= each.high + slack && away(each, v) >= 0);
      const nearest = leastBy(here, (support) => away(support, v));
      if (nearest === undefined) return [];
      const place = { u: lineAt(a, b, v), v };
      return [{ wall, reach: away(nearest, v), joist: nearest.joist.id, piece: up.piece.id, place }];
    });
  });
}

/** Whether some of a timber's centre line lies under a piece, its ends counted. */
function reachesUnder({ low, high, centre }: Support, { outline, piece, ...up }: PieceUp): boolean {
  const [from, to] = [Math.max(low, up.low), Math.min(high, up.high)];
  if (from >= to) return false;
  const [first, last] = [centre(from), centre(to)];
  if (Math.max(first, last) < up.near - toGrid(JOINT) || Math.min(first, last) > up.far + toGrid(JOINT)) return false;
  const joints = piece.ends.map(({ joist }) => joist);
  return [from + 1, Math.round((from + to) / 2), to - 1].some((level) =>
    stretchesAt(outline, level).some(([start, end]) => {
      // Half of the gap at a butt joint is no part of the piece, and its joist is under it all the same.
      const [before, after] = joints.map((joist) => (joist === undefined ? 0 : toGrid(JOINT)));
      return start - before <= centre(level) && centre(level) <= end + after;
    }),
  );
}

/** More than half of any gap at a butt joint, mm, and less than any bay. */
const JOINT = 10;

/** Where the long edges of a piece face walls that run across the joists: joists that stop short of them. */
function beyondEdges({ supports, crosspieces }: LaidPart, up: PieceUp, about: readonly Wall[]): Overhang[] {
  return (['low', 'high'] as const).flatMap((side) => {
    const inwards = side === 'low' ? 1 : -1;
    return wallsFaced(up.outline.map(turnedAbout), about, side)
      .filter(({ a, b }) => Math.abs(b.v - a.v) > Math.abs(b.u - a.u))
      .flatMap((faced) =>
        supports.flatMap((support): Overhang[] => {
          const end = side === 'low' ? Math.max(support.low, up.low) : Math.min(support.high, up.high);
          const u = support.centre(end);
          if (support.low >= up.high || support.high <= up.low || u < faced.from || u > faced.to) return [];
          const wall = lineAt(faced.a, faced.b, u);
          const across = crosspieces.filter(({ near, far }) => near <= u && u <= far).map(({ level }) => level);
          const reaches = [side === 'low' ? support.low : support.high, ...across].map((level) => inwards * (level - wall));
          const reach = Math.min(...reaches.map((each) => Math.max(0, each)));
          return [{ wall: faced.wall, reach, joist: support.joist.id, piece: up.piece.id, place: { u, v: wall } }];
        }),
      );
  });
}

function leastBy<T>(all: readonly T[], measure: (each: T) => number): T | undefined {
  let least: T | undefined;
  for (const each of all) if (least === undefined || measure(each) < measure(least)) least = each;
  return least;
}
