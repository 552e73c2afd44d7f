import type {
  Board,
  CeilingPlan,
  Direction,
  End,
  FixingLine,
  FixingPosition,
  Joist,
  Piece,
  Point,
  Room,
  Row,
} from 'soffitwright';
import { lineOf, planAround, stockOf } from './drawnPlans.js';
import { roomsToDraw, type ShapedRoom, type ShapedZone } from './roomsToDraw.js';

/**
 * Plans of rooms that are no rectangles, for tests of drawings: the rows and their joints stand in `roomsToDraw`, worked out by
 * hand; here they are cut into pieces. Nothing of it comes from the program.
 */
export function shapedPlan(name: string): CeilingPlan {
  const spec = roomsToDraw[name];
  const room: Room = { ...spec.room, name };
  const laid = spec.zones.reduce<Laid>((before, zone) => layZone(zone, spec, before), { pieces: [], rows: [], joists: [] });
  const stock = stockOf(spec.stock ?? { length: 2400, width: 1200 });
  const { pieces, boards } = onBoards(laid.pieces, stock.id, stock.length, stock.width);
  const screws = spec.zones.flatMap((zone) =>
    pieces
      .filter((piece) => piece.zone === zone.id)
      .flatMap((piece) => zone.joists(spec.room).flatMap((joist) => screwsOn(piece, joist, zone.direction))),
  );
  const holes = (spec.room.openings ?? []).map((opening) => ('outline' in opening ? opening.outline : []));
  const positions = screws
    .flatMap((line) => line.positions)
    .filter((at) => !holes.some((hole) => hole.length > 0 && holds(hole, at)));
  return planAround({
    room,
    joists: laid.joists,
    stock,
    pieces,
    boards,
    rows: laid.rows,
    positions,
    lines: screws.map(({ line }) => line),
    direction: spec.zones[0].direction,
    ...(spec.proveFirst && { proveFirst: spec.proveFirst }),
  });
}

export const shapedNames = Object.keys(roomsToDraw);

interface Laid {
  readonly pieces: readonly Piece[];
  readonly rows: readonly Row[];
  readonly joists: readonly Joist[];
}

const JOINT = 3;
/** Across the joists, along them. */
type Corner = readonly [u: number, v: number];

const turnedInto = (direction: Direction, { x, y }: Point): Corner => (direction === 'y' ? [x, y] : [y, x]);
const turnedBack = (direction: Direction, [u, v]: Corner): Point => (direction === 'y' ? { x: u, y: v } : { x: v, y: u });

function layZone(zone: ShapedZone, { room, stock = { length: 2400, width: 1200 } }: ShapedRoom, before: Laid): Laid {
  const joists = zone.joists(room);
  const rows: Row[] = [];
  const pieces: Piece[] = [];
  for (const [index, runs] of zone.rows.entries()) {
    const row = before.rows.length + index + 1;
    const vs = runs.flatMap(({ region }) => region.map(([, v]) => v));
    const [low, high] = [Math.min(...vs), Math.max(...vs)];
    const of = zone.id === undefined ? {} : { zone: zone.id };
    rows.push({ row, low, high, width: high - low, ripped: high - low < stock.width, ...of });
    const cut = runs.flatMap(({ region, joints = [] }) => {
      const lines = joints.map((id) =>
        jointLine(
          joists.find((joist) => joist.id === id),
          zone,
          low,
          high,
        ),
      );
      return [...lines, undefined].map((line, i) => {
        let ring: readonly Corner[] = region;
        if (i > 0) ring = clipped(ring, lines[i - 1] as JointLine, 1);
        if (line !== undefined) ring = clipped(ring, line, -1);
        const middle = (low + high) / 2;
        return { ring, ids: [joints[i - 1], joints[i]] as const, joints: [lines[i - 1]?.(middle), line?.(middle)] as const };
      });
    });
    for (const [place, { ring, ids, joints }] of cut.entries()) {
      const whole = high - low === stock.width;
      pieces.push({ ...pieceOf({ ring, ids, joints }, zone, whole, stock.length), id: `${row}.${place + 1}`, row, ...of });
    }
  }
  return { pieces: [...before.pieces, ...pieces], rows: [...before.rows, ...rows], joists: [...before.joists, ...joists] };
}

/** Where a joint runs: its distance across the joists at a distance along them. */
type JointLine = (v: number) => number;

function jointLine(joist: Joist | undefined, { direction, raked }: ShapedZone, low: number, high: number): JointLine {
  if (joist === undefined) throw new Error('a joint on no joist');
  const [[u0, v0], [u1, v1]] = [turnedInto(direction, joist.start), turnedInto(direction, joist.end)];
  const at = (v: number): number => u0 + ((u1 - u0) * (v - v0)) / (v1 - v0);
  return raked ? at : () => Math.round(at((low + high) / 2));
}

/** What of a region lies beyond a joint, half the gap away from it; `side` 1: further across, -1: nearer. */
function clipped(ring: readonly Corner[], line: JointLine, side: 1 | -1): Corner[] {
  const beyond = ([u, v]: Corner): number => side * (u - line(v)) - JOINT / 2;
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const [da, db] = [beyond(a), beyond(b)];
    const kept: Corner[] = da >= 0 ? [a] : [];
    if (da < 0 === db < 0) return kept;
    const share = da / (da - db);
    const met: Corner = [round(a[0] + (b[0] - a[0]) * share), round(a[1] + (b[1] - a[1]) * share)];
    return [...kept, met];
  });
}

const round = (value: number): number => Math.round(value * 1000) / 1000;

/** A piece cut out of its row: the joists under its ends, and where the joints are halfway across it. */
interface CutOut {
  readonly ring: readonly Corner[];
  readonly ids: readonly [string | undefined, string | undefined];
  readonly joints: readonly [number | undefined, number | undefined];
}

function pieceOf(
  { ring, ids, joints }: CutOut,
  { direction, ripped = 'high' }: ShapedZone,
  whole: boolean,
  boardLength: number,
): Omit<Piece, 'id' | 'row'> {
  const [us, vs] = [ring.map(([u]) => u), ring.map(([, v]) => v)];
  const [near, far, low, high] = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)];
  const edgeAt = (at: number): number =>
    ring.reduce((sum, [u, v], i) => {
      const [nextU, nextV] = ring[(i + 1) % ring.length];
      return v === at && nextV === at ? round(sum + Math.abs(nextU - u)) : sum;
    }, 0);
  const factory = far - near >= boardLength - JOINT;
  const end = (joist: string | undefined, side: 1 | -1): End => {
    const rake = rakeOf(ring, side, low, high);
    return {
      ...(joist === undefined ? { meets: 'wall' as const } : { meets: 'board' as const, joist }),
      position: round((side < 0 ? joints[0] : joints[1]) ?? (side < 0 ? near : far)),
      made: factory && side < 0 ? 'factory' : 'cut',
      ...(rake !== 0 && { rake }),
    };
  };
  const outline = ring.map((corner) => turnedBack(direction, corner));
  const marked = ring.map(([u, v]) => ({ x: round(u - near), y: round(direction === 'y' ? high - v : v - low) }));
  return {
    outline,
    length: far - near,
    cutLength: far - near,
    width: high - low,
    edgeLengths: { low: edgeAt(low), high: edgeAt(high) },
    ...(isHanded(marked) && { hand: { view: 'face up', outline: marked } }),
    board: '',
    at: { along: 0, across: 0 },
    ends: [end(ids[0], -1), end(ids[1], 1)],
    edges: { low: !whole && ripped === 'low' ? 'cut' : 'bound', high: !whole && ripped === 'high' ? 'cut' : 'bound' },
    tight: factory,
    massKg: Math.round((far - near) * (high - low) * 8.4e-5) / 10,
  };
}

/** How far the corner of an end at the high edge lies beyond that at the low edge, where one straight cut joins the two. */
function rakeOf(ring: readonly Corner[], side: 1 | -1, low: number, high: number): number {
  const corner = (at: number): number => {
    const on = ring.flatMap(([u, v], i) => (v === at ? [{ u, i }] : []));
    return on.reduce((best, each) => (side * (each.u - best.u) > 0 ? each : best)).i;
  };
  const [a, b] = [corner(low), corner(high)];
  const apart = Math.abs(a - b);
  return apart === 1 || apart === ring.length - 1 ? round(ring[b][0] - ring[a][0]) : 0;
}

/** Whether an outline differs from its mirror image, however that is turned end for end. */
function isHanded(outline: readonly Point[]): boolean {
  const [length, width] = [Math.max(...outline.map(({ x }) => x)), Math.max(...outline.map(({ y }) => y))];
  const told = (turn: (point: Point) => Point): string =>
    outline
      .map(turn)
      .map(({ x, y }) => `${round(x)} ${round(y)}`)
      .sort()
      .join();
  const own = told((point) => point);
  return own !== told(({ x, y }) => ({ x: length - x, y })) && own !== told(({ x, y }) => ({ x, y: width - y }));
}

/** Cut from boards in their order, a new one wherever what is left is too short. */
function onBoards(given: readonly Piece[], stock: string, length: number, width: number) {
  const boards: Board[] = [];
  const pieces: Piece[] = [];
  let left = 0;
  for (const piece of given) {
    const fits = left >= piece.cutLength;
    if (!fits) {
      boards.push({ id: `B${boards.length + 1}`, stock, cuts: [], offcuts: [] });
      left = length;
    }
    const board = boards[boards.length - 1];
    const along = length - left;
    left -= piece.cutLength;
    const [end, whole] = [length - left, piece.cutLength >= length - 5];
    const ripped = piece.width < width;
    const rip = ripped ? [{ kind: 'rip' as const, at: piece.width, from: along, to: end }] : [];
    boards[boards.length - 1] = {
      ...board,
      cuts: [...board.cuts, ...(whole ? [] : [{ kind: 'cross' as const, at: end, from: 0, to: width }]), ...rip],
      offcuts: ripped
        ? [
            ...board.offcuts,
            { board: board.id, length: end - along, width: width - piece.width, at: { along, across: piece.width } },
          ]
        : board.offcuts,
    };
    pieces.push({ ...piece, board: board.id, at: { along, across: 0 } });
  }
  return { pieces, boards };
}

function screwsOn(
  piece: Piece,
  joist: Joist,
  direction: Direction,
): { readonly line: FixingLine; readonly positions: readonly FixingPosition[] }[] {
  const ring = piece.outline.map((point) => turnedInto(direction, point));
  const [[u0, v0], [u1, v1]] = [turnedInto(direction, joist.start), turnedInto(direction, joist.end)];
  if (v0 === v1) return [];
  const [near, far] = [Math.min(...ring.map(([u]) => u)), Math.max(...ring.map(([u]) => u))];
  const middle = ring.reduce((sum, [, v]) => sum + v, 0) / ring.length;
  const centre = u0 + ((u1 - u0) * (middle - v0)) / (v1 - v0);
  if (centre < near - 2 || centre > far + 2) return [];
  const at = Math.min(Math.max(centre, near + 13), far - 13);
  const met = ring
    .flatMap(([u, v], i) => {
      const [nextU, nextV] = ring[(i + 1) % ring.length];
      return u > at === nextU > at ? [] : [v + ((nextV - v) * (at - u)) / (nextU - u)];
    })
    .sort((a, b) => a - b);
  const { line } = { line: lineOf(piece, joist) };
  const [from, to] = [Math.max(met[0], v0), Math.min(met[met.length - 1], v1)];
  if (to - from < 100) return [];
  const steps = Math.max(1, Math.ceil((to - from - 24) / 230));
  const marks = Array.from({ length: steps + 1 }, (_, k) => from + 12 + ((to - from - 24) * k) / steps);
  return [
    {
      line: { ...line, count: marks.length },
      positions: marks.map((v) => ({ ...turnedBack(direction, [at, v]), piece: piece.id, joist: joist.id })),
    },
  ];
}

/** Whether a place lies in a ring. */
export function holds(ring: readonly Point[], { x, y }: Point): boolean {
  return ring.reduce((inside, a, i) => {
    const b = ring[(i + 1) % ring.length];
    return a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y) ? !inside : inside;
  }, false);
}
