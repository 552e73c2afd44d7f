import type { PieceToCheck, Point } from 'soffitwright';

/** A butt joint: where its centre line is at the foot and at the head of its row, mm. */
export interface CutJoint {
  readonly row: number;
  readonly foot: number;
  readonly head: number;
}

/** What is to be cut into rows along x, joists along y. Lengths in mm. */
export interface RowCut {
  readonly outline: readonly Point[];
  /** Cut out of whatever lies there. */
  readonly openings?: readonly (readonly Point[])[];
  /** Left to every wall, square to it. */
  readonly gap?: number;
  /** Edges of the rows, from the low wall to the high one: one more than there are rows. */
  readonly levels: readonly number[];
  readonly joints?: readonly CutJoint[];
  /** Left at every butt joint, along the row. */
  readonly jointGap?: number;
  /** Number of the first row. Default 1. */
  readonly firstRow?: number;
}

/** A straight, not level stretch between two levels, grid steps. */
interface Slab {
  readonly low: number;
  readonly high: number;
}

/** Part of a row between two levels: its left and right side at the foot and at the head. */
interface Trapezoid extends Slab {
  readonly leftLow: number;
  readonly leftHigh: number;
  readonly rightLow: number;
  readonly rightHigh: number;
  piece: number;
}

interface Line {
  readonly from: Point;
  readonly to: Point;
}

const step = (mm: number): number => Math.round(mm * 1000);
const onGrid = ({ x, y }: Point): Point => ({ x: step(x), y: step(y) });

/**
 * Cuts a ceiling into rows and these into pieces, each with its true outline: level cuts at every corner and crossing make
 * trapezoids, those that share a stretch of level line are one piece, and the sides that none of its trapezoids shares are its
 * outline. Pieces are numbered `row.place` from the low end; each has a board of its own name.
 */
export function cutRows({
  outline,
  openings = [],
  gap = 0,
  levels,
  joints = [],
  jointGap = 0,
  firstRow = 1,
}: RowCut): PieceToCheck[] {
  const rings = [inset(outline, gap), ...openings].map((ring) => ring.map(onGrid));
  const sides = rings.flatMap((ring) => ring.map((from, i): Line => ({ from, to: ring[(i + 1) % ring.length] })));
  return levels.slice(1).flatMap((top, row) => {
    const [foot, head] = [step(levels[row]), step(top)];
    const cuts = joints
      .filter((joint) => joint.row === row + 1)
      .sort((a, b) => a.foot + a.head - b.foot - b.head)
      .map((joint) => halves(joint, foot, head, jointGap));
    const pieces = piecesOf(trapezoidsOf(sides, cuts, foot, head));
    return pieces
      .sort((a, b) => Math.min(...a[0].map(({ x }) => x)) - Math.min(...b[0].map(({ x }) => x)) || a[0][0].y - b[0][0].y)
      .map(([whole, ...holes], place): PieceToCheck => {
        const id = `${firstRow + row}.${place + 1}`;
        return { id, outline: whole, ...(holes.length > 0 && { holes }), board: id };
      });
  });
}

/** The outline moved inwards by the gap to each wall. */
export function inset(outline: readonly Point[], gap: number): Point[] {
  const ring = twiceArea(outline) < 0 ? [...outline].reverse() : outline;
  const normal = (a: Point, b: Point): Point => {
    const length = Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2);
    return { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
  };
  return ring.map((at, i) => {
    const before = normal(ring[(i + ring.length - 1) % ring.length], at);
    const after = normal(at, ring[(i + 1) % ring.length]);
    const share = gap / (1 + before.x * after.x + before.y * after.y);
    return { x: at.x + share * (before.x + after.x), y: at.y + share * (before.y + after.y) };
  });
}

/** Twice the area, positive when the corners run anticlockwise. */
export const twiceArea = (ring: readonly Point[]): number =>
  ring.reduce((sum, { x, y }, i) => {
    const next = ring[(i + 1) % ring.length];
    return sum + (x - ring[0].x) * (next.y - ring[0].y) - (next.x - ring[0].x) * (y - ring[0].y);
  }, 0);

/** The two sides of a joint. */
function halves({ foot: atFoot, head: atHead }: CutJoint, foot: number, head: number, jointGap: number): readonly [Line, Line] {
  const line = (aside: number): Line => ({
    from: { x: step(atFoot + aside), y: foot },
    to: { x: step(atHead + aside), y: head },
  });
  return [line(-jointGap / 2), line(jointGap / 2)];
}

/** Where lines pass the levels at which they cross others, the grid point nearest to the crossing. */
type Crossings = ReadonlyMap<Line, Map<number, number>>;

function placeAt(line: Line, y: number, crossings: Crossings): number {
  const { from, to } = line;
  const known = crossings.get(line)?.get(y);
  if (known !== undefined) return known;
  return from.y === to.y ? from.x : Math.round(from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y));
}

function trapezoidsOf(sides: readonly Line[], cuts: readonly (readonly [Line, Line])[], foot: number, head: number): Trapezoid[] {
  const lines = cuts.flat();
  const crossings = crossingsOf(sides, lines);
  const at = (line: Line, y: number): number => placeAt(line, y, crossings);
  const crossed = [...crossings.values()].flatMap((known) => [...known.keys()]);
  const inner = [...sides.flatMap(({ from, to }) => [from.y, to.y]), ...crossed];
  const levels = [...new Set([foot, ...inner.filter((y) => foot < y && y < head), head])].sort((a, b) => a - b);
  return levels.slice(1).flatMap((high, i) => {
    const low = levels[i];
    const across = sides
      .filter(({ from, to }) => Math.min(from.y, to.y) <= low && Math.max(from.y, to.y) >= high)
      .map((side) => ({ low: at(side, low), high: at(side, high) }))
      .sort((a, b) => a.low + a.high - b.low - b.high);
    return across.flatMap((left, k) => {
      if (k % 2 === 1 || k + 1 === across.length) return [];
      const ends = cuts.map((cut) => cut.map((line) => ({ low: at(line, low), high: at(line, high) })));
      return parted(left, across[k + 1], ends).map(([from, to]): Trapezoid => {
        const [leftLow, leftHigh] = [from.low, from.high];
        return {
          low,
          high,
          leftLow,
          leftHigh,
          rightLow: Math.max(leftLow, to.low),
          rightHigh: Math.max(leftHigh, to.high),
          piece: 0,
        };
      });
    });
  });
}

/** Where a side is at the foot and at the head of a slab. */
interface Place {
  readonly low: number;
  readonly high: number;
}

/** A stretch of a slab less the joints that lie in it. */
function parted(left: Place, right: Place, joints: readonly (readonly Place[])[]): (readonly [Place, Place])[] {
  const further = (a: Place, b: Place): boolean => a.low + a.high > b.low + b.high;
  const parts: (readonly [Place, Place])[] = [];
  let from = left;
  for (const [end, start] of joints) {
    if (!further(start, from) || !further(right, from)) continue;
    if (further(end, from)) parts.push([from, further(end, right) ? right : end]);
    from = start;
  }
  return further(right, from) ? [...parts, [from, right]] : parts;
}

/** Where sides and joints cross. */
function crossingsOf(sides: readonly Line[], lines: readonly Line[]): Crossings {
  const crossings = new Map<Line, Map<number, number>>();
  const note = (line: Line, { x, y }: Point): void => {
    crossings.set(line, (crossings.get(line) ?? new Map<number, number>()).set(y, x));
  };
  for (const side of sides) {
    for (const line of lines) {
      const aside = ({ x, y }: Point): number =>
        (line.to.x - line.from.x) * (y - line.from.y) - (line.to.y - line.from.y) * (x - line.from.x);
      const [a, b] = [aside(side.from), aside(side.to)];
      if (a > 0 === b > 0 || a === 0 || b === 0 || side.from.y === side.to.y) continue;
      const share = a / (a - b);
      const place = {
        x: Math.round(side.from.x + (side.to.x - side.from.x) * share),
        y: Math.round(side.from.y + (side.to.y - side.from.y) * share),
      };
      if (place.y <= line.from.y || place.y >= line.to.y) continue;
      note(side, place);
      note(line, place);
    }
  }
  return crossings;
}

/** Trapezoids joined into pieces: each an outline and its holes, mm. */
function piecesOf(trapezoids: readonly Trapezoid[]): Point[][][] {
  trapezoids.forEach((each, i) => {
    each.piece = i;
  });
  const rename = (from: number, to: number): void => {
    for (const each of trapezoids) if (each.piece === from) each.piece = to;
  };
  for (const lower of trapezoids) {
    for (const upper of trapezoids) {
      const touch =
        upper.low === lower.high && Math.max(lower.leftHigh, upper.leftLow) < Math.min(lower.rightHigh, upper.rightLow);
      if (touch && upper.piece !== lower.piece) rename(upper.piece, lower.piece);
    }
  }
  const names = [...new Set(trapezoids.map(({ piece }) => piece))];
  return names
    .map((name) => {
      const rings = ringsOf(borderOf(trapezoids.filter(({ piece }) => piece === name)));
      // The outline first, and what is too thin to be drawn left out.
      const drawn = rings.filter((ring) => ring.length > 2 && twiceArea(ring) !== 0).sort((a, b) => twiceArea(b) - twiceArea(a));
      return drawn.map((ring) => ring.map(({ x, y }) => ({ x: x / 1000, y: y / 1000 })));
    })
    .filter((rings) => rings.length > 0);
}

/** The sides of a piece, the piece on their left. */
function borderOf(parts: readonly Trapezoid[]): Line[] {
  const upright = parts.flatMap(({ low, high, leftLow, leftHigh, rightLow, rightHigh }): Line[] => [
    { from: { x: leftHigh, y: high }, to: { x: leftLow, y: low } },
    { from: { x: rightLow, y: low }, to: { x: rightHigh, y: high } },
  ]);
  const levels = [...new Set(parts.flatMap(({ low, high }) => [low, high]))];
  const level = levels.flatMap((y) => {
    const tops = parts.filter(({ high }) => high === y).map(({ leftHigh, rightHigh }) => [leftHigh, rightHigh] as const);
    const feet = parts.filter(({ low }) => low === y).map(({ leftLow, rightLow }) => [leftLow, rightLow] as const);
    const places = [...new Set([...tops, ...feet].flat())].sort((a, b) => a - b);
    return places.slice(1).flatMap((right, i): Line[] => {
      const left = places[i];
      const within = (spans: readonly (readonly [number, number])[]): boolean => spans.some(([a, b]) => a <= left && right <= b);
      const [below, above] = [within(tops), within(feet)];
      if (below === above) return [];
      const [from, to] = above ? [left, right] : [right, left];
      return [{ from: { x: from, y }, to: { x: to, y } }];
    });
  });
  return [...upright, ...level].filter(({ from, to }) => from.x !== to.x || from.y !== to.y);
}

/** Sides strung together; where a ring comes back to a place, it is parted there. Corners on a straight line are left out. */
function ringsOf(sides: readonly Line[]): Point[][] {
  const key = ({ x, y }: Point): string => `${x} ${y}`;
  const next = new Map<string, Point[]>();
  for (const { from, to } of sides) next.set(key(from), [...(next.get(key(from)) ?? []), to]);
  const rings: Point[][] = [];
  for (const { from } of sides) {
    let path: Point[] = [];
    for (let here: Point | undefined = from; here !== undefined; ) {
      const place = path.findIndex((each) => key(each) === key(here as Point));
      if (place >= 0) {
        rings.push(path.slice(place));
        path = path.slice(0, place);
      }
      path.push(here);
      here = next.get(key(here))?.shift();
    }
  }
  return rings.map((ring) =>
    ring.filter((here, i) => {
      const [a, b] = [ring[(i + ring.length - 1) % ring.length], ring[(i + 1) % ring.length]];
      return (here.x - a.x) * (b.y - a.y) !== (b.x - a.x) * (here.y - a.y);
    }),
  );
}
