import { LEAST_TIMBER } from '../joists/bearing.js';
import { centreAt, type Frame, frameOf } from '../joists/frame.js';
import { frameExtent } from '../joists/joistLine.js';
import { type LocatedJoists, locateJoists } from '../joists/locateJoists.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf } from '../rules/ruleValue.js';
import { rulesOf } from '../rules/withRules.js';
import type { BoardStock } from '../survey/boardStock.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Joist } from '../survey/joist.js';
import { corners, extentOf } from '../survey/outline.js';
import type { Point } from '../survey/point.js';
import type { Opening, Room } from '../survey/room.js';
import type { IntoProblem } from './lockedPieces.js';
import type { Preference } from './preference.js';
import { keyOf, type LayingRequest, type Standing, standingOf } from './standing.js';

/** A board that can be bought, in grid steps. */
export interface Stock {
  readonly board: BoardStock;
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
  /** How much shorter it may come. */
  readonly lengthTolerance: number;
  /** Length times width, in square mm, so that it stays a whole number of a sensible size. */
  readonly area: number;
}

/** One joist in the problem's own coordinates. */
export interface PlacedJoist {
  readonly joist: Joist;
  /** Where its centre line is, `v` being the distance along it. */
  readonly centre: (v: number) => number;
  readonly low: number;
  readonly high: number;
}

/** The rules that decide where boards go, in grid steps. */
export interface PlacementRules {
  readonly stagger: number;
  readonly preferredStagger: number;
  readonly pieceLength: number;
  readonly preferredPieceLength: number;
  readonly pieceSupports: number;
  readonly pieceMass: number | null;
  readonly rowWidth: number;
  readonly preferredRowWidth: number;
  readonly wallGap: { readonly nominal: number; readonly least: number; readonly greatest: number };
  readonly jointGap: number;
  readonly edgeGap: number;
  /** How much a piece used uncut may fall short at a wall, and at its side of a butt joint. */
  readonly wallGive: number;
  readonly jointGive: number;
  /** How much longer than its board a piece may be, by its nominal length. */
  readonly greatestExcess: number;
  /** Timber that each side of a butt joint must have. */
  readonly leastTimber: number;
}

/** An opening's rectangle, or the square about a round one. */
export interface PlacedOpening {
  readonly opening: Opening;
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

/**
 * What has to be laid, in whole grid steps and in coordinates of its own: `u` runs from 0 across the joists, `v` from 0 along
 * them. Of the four ways to look at a room (from either side, from either end) the one whose numbers come first is taken, so
 * that a mirrored room is the same problem and gets the same answer.
 */
export interface PlacementProblem {
  readonly request: LayingRequest;
  readonly set: RuleSet;
  readonly located: LocatedJoists;
  readonly prefer: Preference;
  readonly frame: Frame;
  readonly mirrored: { readonly u: boolean; readonly v: boolean };
  readonly length: number;
  readonly depth: number;
  readonly joists: readonly PlacedJoist[];
  /** Whether every joist keeps the same place from one end of the room to the other. */
  readonly parallel: boolean;
  readonly stocks: readonly Stock[];
  readonly rules: PlacementRules;
  readonly openings: readonly PlacedOpening[];
  readonly standing: Standing;
  readonly rowWidths: readonly number[] | undefined;
  /** From the plan, in grid steps. */
  readonly into: IntoProblem;
  /** Back to the plan, mm. */
  readonly toPlan: (u: number, v: number) => Point;
}

/** Turns a request that has passed its door into whole numbers. */
export function placementProblem(request: LayingRequest): PlacementProblem {
  const set = rulesOf(request.rules);
  refuseOtherShapes(request.room);
  const located = locateJoists(request.room, request.joists, set);
  const frame = frameOf(located.direction);
  const { near, far, low, high } = frameExtent(request.room, located.direction);
  const views = [false, true].flatMap((u) => [false, true].map((v) => ({ u, v })));
  const placed = views.map((mirrored) => {
    const lines = request.rowWidths?.map(toGrid) ?? [];
    return {
      mirrored,
      joists: placeJoists(located.joists, frame, mirrored, { near, far, low, high }),
      openings: placeOpenings(request.room.openings ?? [], frame, mirrored, { near, far, low, high }),
      rowWidths: mirrored.v ? lines.reverse() : lines,
      into: intoProblem(frame, mirrored, { near, far, low, high }),
      standing: standingOf(request, intoProblem(frame, mirrored, { near, far, low, high }), {
        length: far - near,
        depth: high - low,
      }),
    };
  });
  const depth = high - low;
  const keys = placed.map(({ joists, openings, rowWidths, standing }) => [
    ...rowWidths,
    ...joists.flatMap((each) => [each.centre(0), each.centre(depth), each.low, each.high, each.joist.width, each.joist.sd]),
    ...openings.flatMap((each) => [each.near, each.far, each.low, each.high]),
    ...keyOf(standing),
  ]);
  let best = 0;
  for (let i = 1; i < keys.length; i++) if (comesFirst(keys[i], keys[best])) best = i;
  const { mirrored, joists, openings, rowWidths, into, standing } = placed[best];
  return {
    request,
    set,
    located,
    prefer: request.prefer ?? 'boards',
    frame,
    mirrored,
    length: far - near,
    depth,
    joists,
    parallel: joists.every((each) => each.centre(0) === each.centre(depth)),
    stocks: stocksOf(request.boards, set),
    rules: placementRules(set),
    openings,
    standing,
    into,
    rowWidths: request.rowWidths === undefined ? undefined : rowWidths,
    toPlan: (u, v) => {
      const { x, y } = frame.back(mirrored.u ? far - u : near + u, mirrored.v ? high - v : low + v);
      return { x: fromGrid(x), y: fromGrid(y) };
    },
  };
}

/** Rectangles with sides along the axes, and no zones. */
function refuseOtherShapes(room: Room): void {
  const points = corners(room.outline);
  const { left, right, low, high } = extentOf(points);
  const straight = points.every(({ x, y }) => (x === left || x === right) && (y === low || y === high));
  const area = new Set(points.map(({ x, y }) => `${x} ${y}`)).size === 4;
  if (!straight || !area) {
    refuse(problem('room-shape', 'room.outline', 'a rectangle with its sides along the axes', `${points.length} corners`));
  }
  if (room.zones !== undefined && room.zones.length > 0) {
    refuse(problem('room-shape', 'room.zones', 'no zones', `${room.zones.length} zones`));
  }
}

interface Extent {
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

interface Mirrored {
  readonly u: boolean;
  readonly v: boolean;
}

function placeJoists(joists: readonly Joist[], frame: Frame, mirrored: Mirrored, extent: Extent): PlacedJoist[] {
  const { near, far, low, high } = extent;
  const middle = Math.round((high - low) / 2);
  return joists
    .map((joist): PlacedJoist => {
      const ends = [joist.start, joist.end].map(({ x, y }) => frame.into({ x: toGrid(x), y: toGrid(y) }).v - low);
      const [from, to] = [Math.min(...ends), Math.max(...ends)];
      return {
        joist,
        centre: (v) => {
          const u = centreAt(joist, frame, mirrored.v ? high - v : low + v);
          return mirrored.u ? far - u : u - near;
        },
        low: mirrored.v ? high - low - to : from,
        high: mirrored.v ? high - low - from : to,
      };
    })
    .sort((a, b) => a.centre(middle) - b.centre(middle) || (a.joist.id < b.joist.id ? -1 : 1));
}

const intoProblem =
  (frame: Frame, mirrored: Mirrored, { near, far, low, high }: Extent) =>
  (point: Point) => {
    const { u, v } = frame.into(point);
    return { u: mirrored.u ? far - u : u - near, v: mirrored.v ? high - v : v - low };
  };

function placeOpenings(openings: readonly Opening[], frame: Frame, mirrored: Mirrored, extent: Extent): PlacedOpening[] {
  const { near, far, low, high } = extent;
  return openings
    .map((opening): PlacedOpening => {
      const box = extentOf(
        ('outline' in opening ? opening.outline : squareAbout(opening)).map(({ x, y }) => {
          const { u, v } = frame.into({ x: toGrid(x), y: toGrid(y) });
          return { x: u, y: v };
        }),
      );
      return {
        opening,
        near: mirrored.u ? far - box.right : box.left - near,
        far: mirrored.u ? far - box.left : box.right - near,
        low: mirrored.v ? high - box.high : box.low - low,
        high: mirrored.v ? high - box.low : box.high - low,
      };
    })
    .sort((a, b) => a.near - b.near || a.low - b.low || a.far - b.far || a.high - b.high);
}

const squareAbout = ({ centre, diameter }: { readonly centre: Point; readonly diameter: number }): Point[] => [
  { x: centre.x - diameter / 2, y: centre.y - diameter / 2 },
  { x: centre.x + diameter / 2, y: centre.y + diameter / 2 },
];

function comesFirst(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i] < b[i];
  return false;
}

/** How much shorter and narrower a board may come when nobody says, mm. */
const LENGTH_TOLERANCE = 5;

export function stocksOf(boards: readonly BoardStock[], set: RuleSet): Stock[] {
  return boards
    .map((given) =>
      given.atHand ? { ...given, available: given.available ?? 1, lengthTolerance: given.lengthTolerance ?? 0 } : given,
    )
    .map((board) => ({
      board,
      length: toGrid(board.length),
      width: toGrid(board.width),
      kerf: toGrid(board.kerf ?? numberOf(set, 'kerf')),
      lengthTolerance: toGrid(board.lengthTolerance ?? LENGTH_TOLERANCE),
      area: Math.round(board.length * board.width),
    }))
    .sort((a, b) => b.length - a.length || b.width - a.width || (a.board.id < b.board.id ? -1 : 1));
}

function placementRules(set: RuleSet): PlacementRules {
  const grid = (key: Parameters<typeof numberOf>[1]): number => toGrid(numberOf(set, key));
  const nominal = grid('perimeter.gap');
  const range = lookUp(set, 'perimeter.gap')?.range;
  const wallGap = {
    nominal,
    least: range === undefined ? nominal : toGrid(range.least),
    greatest: range === undefined ? nominal : toGrid(range.greatest),
  };
  // Even, so that both sides of a joint get the same half.
  const jointGap = 2 * Math.round(grid('joint.gap') / 2);
  const jointGreatest = toGrid(lookUp(set, 'joint.gap')?.range?.greatest ?? fromGrid(jointGap));
  const mass = lookUp(set, 'piece.maximumMass')?.value ?? null;
  return {
    stagger: grid('stagger.minimum'),
    preferredStagger: grid('stagger.preferred'),
    pieceLength: grid('piece.minimumLength'),
    preferredPieceLength: grid('piece.preferredLength'),
    pieceSupports: numberOf(set, 'piece.minimumSupports'),
    pieceMass: mass,
    rowWidth: grid('row.minimumWidth'),
    preferredRowWidth: grid('row.preferredWidth'),
    wallGap,
    jointGap,
    edgeGap: grid('edgeJoint.gap'),
    // A board used uncut leaves the gap at its ends wider than nominal; how much wider is the range of those two gaps. A
    // caller who fixes a gap by a plain number leaves no range, and then no piece may be longer than its board.
    wallGive: wallGap.greatest - nominal,
    jointGive: Math.floor((jointGreatest - jointGap) / 2),
    greatestExcess: Math.max(jointGreatest > jointGap ? jointGreatest : 0, wallGap.greatest - nominal),
    leastTimber: toGrid(LEAST_TIMBER),
  };
}
