import type { FramePoint } from '../../joists/frame.js';
import { type Finding, finding } from '../../rules/finding.js';
import { fromGrid, toGrid } from '../../survey/grid.js';
import { furthestPlace } from './furthestPlace.js';
import { givenRule } from './givenRule.js';
import type { LaidCeiling, LaidPart, PieceUp, Support, Wall } from './laidCeiling.js';
import { lineAt } from './stretchesAt.js';
import { gapAtEnds, timbersTowards, timbersUnder } from './timbersUnder.js';
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
 * Along a wall that runs with the joists it is the distance from each place of it to the timber nearest to that place: a joist that
 * runs into the wall carries the boards about its end, and a nogging those on both sides of it, but neither the whole wall.
 */
export function overhangFindings(ceiling: LaidCeiling): Finding[] {
  const { limit, steps, source } = givenRule(ceiling.set, 'perimeter.overhang');
  const gap = gapAtEnds(ceiling.set);
  return ceiling.parts.flatMap((part) => {
    const worst = new Map<number, Overhang>();
    const about = [...part.walls, ...part.borders].map(([a, b]): Wall => [turnedAbout(a), turnedAbout(b)]);
    for (const piece of part.pieces) {
      for (const each of [...beyondEnds(part, piece, gap), ...beyondEdges(part, piece, about)]) {
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
function beyondEnds(part: LaidPart, up: PieceUp, gap: number): Overhang[] {
  const faced = (['low', 'high'] as const).flatMap((side) =>
    wallsFaced(up.outline, [...part.walls, ...part.borders], side)
      .filter(runsWithJoists)
      .map((each) => ({ ...each, inwards: side === 'low' ? (1 as const) : (-1 as const) })),
  );
  if (faced.length === 0) return [];
  const under = timbersUnder(part, up, gap);
  return faced.flatMap((each): Overhang[] => {
    const { wall, a, b, from, to, inwards } = each;
    const ends = [from, to].map((v) => ({ u: lineAt(a, b, v), v }));
    const furthest = furthestPlace(timbersTowards(part, under, each, inwards), ends[0], ends[1]);
    if (furthest === undefined) return [];
    const { timber, away, place } = furthest;
    return [{ wall, reach: away, joist: timber.joist.id, piece: up.piece.id, place }];
  });
}

/** Where the long edges of a piece face walls that run across the joists: joists that stop short of them. */
function beyondEdges({ supports, crosspieces }: LaidPart, up: PieceUp, about: readonly Wall[]): Overhang[] {
  return (['low', 'high'] as const).flatMap((side) => {
    const inwards = side === 'low' ? 1 : -1;
    const endOf = ({ low, high }: Support): number => (side === 'low' ? low : high);
    return wallsFaced(up.outline.map(turnedAbout), about, side)
      .filter(({ a, b }) => Math.abs(b.v - a.v) > Math.abs(b.u - a.u))
      .flatMap((faced) =>
        supports.flatMap((support): Overhang[] => {
          const end = side === 'low' ? Math.max(support.low, up.low) : Math.min(support.high, up.high);
          const u = support.centre(end);
          if (support.low >= up.high || support.high <= up.low || u < faced.from || u > faced.to) return [];
          // Cut for an opening, a joist goes on beyond it.
          const goesOn = supports.some((each) => inwards * (endOf(each) - endOf(support)) < 0 && runsOn(each, support, end));
          if (goesOn) return [];
          const wall = lineAt(faced.a, faced.b, u);
          const across = crosspieces.filter(({ near, far }) => near <= u && u <= far).map(({ level }) => level);
          const reaches = [endOf(support), ...across].map((level) => inwards * (level - wall));
          const reach = Math.min(...reaches.map((each) => Math.max(0, each)));
          return [{ wall: faced.wall, reach, joist: support.joist.id, piece: up.piece.id, place: { u, v: wall } }];
        }),
      );
  });
}

/** Whether a timber lies in the line of another, or side by side with it, at a level. */
const runsOn = (timber: Support, other: Support, level: number): boolean =>
  Math.abs(timber.centre(level) - other.centre(level)) <= toGrid(Math.max(timber.joist.width, other.joist.width));
