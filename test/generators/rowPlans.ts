import fc from 'fast-check';
import {
  type Direction,
  type Joist,
  joistsFromPositions,
  type NoFixZone,
  type Opening,
  type Piece,
  type Point,
  type Room,
  type RuleSet,
  rectangle,
  ruleSets,
} from 'soffitwright';
import { handLaidPiece, joint, wall } from './handLaid.js';

/** A ceiling in rows of boards, each row cut on joists, laid by the generator and not by the program. */
export interface RowPlan {
  readonly room: Room;
  readonly direction: Direction;
  readonly joists: readonly Joist[];
  readonly layout: { readonly pieces: readonly Piece[] };
  readonly rules: RuleSet;
  readonly noFix: readonly NoFixZone[];
}

const GAP = 5;

/** Running dimensions from the first, step by step. */
function running(first: number, steps: readonly number[]): number[] {
  const marks = [first];
  for (const step of steps) marks.push(marks[marks.length - 1] + step);
  return marks;
}

const BAYS = fc.oneof(
  fc
    .tuple(fc.constantFrom(300, 400, 406, 450, 600), fc.integer({ min: 3, max: 9 }))
    .map(([bay, n]) => new Array<number>(n).fill(bay)),
  fc.array(fc.integer({ min: 310, max: 610 }), { minLength: 3, maxLength: 9 }),
);

/**
 * Two to four pieces' worth of joists and one to four rows, the last ripped; joists 35 to 75 wide, even or not, square or a little
 * askew; a hatch with trimmers in some, and up to two zones without screws. The butt joints of neighbouring rows are at least
 * 300 apart.
 */
export const anyRowPlan: fc.Arbitrary<RowPlan> = fc
  .record({
    direction: fc.constantFrom<Direction>('x', 'y'),
    first: fc.integer({ min: 30, max: 150 }),
    bays: BAYS,
    width: fc.constantFrom(35, 38, 41, 44, 47, 50, 63, 75),
    askew: fc.constantFrom(0, 0, 0, 3, 8),
    boardWidth: fc.constantFrom(900, 1200),
    rows: fc.integer({ min: 0, max: 3 }),
    ripped: fc.integer({ min: 200, max: 900 }),
    cutEdges: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
    choices: fc.array(fc.nat(), { minLength: 24, maxLength: 24 }),
    hatch: fc.option(fc.record({ bay: fc.nat(), row: fc.nat(), from: fc.integer({ min: 60, max: 300 }) })),
    zones: fc.array(
      fc.record({ joist: fc.nat(), at: fc.integer({ min: 0, max: 1000 }), diameter: fc.integer({ min: 10, max: 500 }) }),
      {
        maxLength: 2,
      },
    ),
    rules: fc.constantFrom(...Object.values(ruleSets)),
  })
  .map((made) => turned(laid(made), made.direction));

interface Made {
  readonly first: number;
  readonly bays: readonly number[];
  readonly width: number;
  readonly askew: number;
  readonly boardWidth: number;
  readonly rows: number;
  readonly ripped: number;
  readonly cutEdges: readonly boolean[];
  readonly choices: readonly number[];
  readonly hatch: { readonly bay: number; readonly row: number; readonly from: number } | null;
  readonly zones: readonly { readonly joist: number; readonly at: number; readonly diameter: number }[];
  readonly rules: RuleSet;
}

/** Joists along y. */
function laid(made: Made): Omit<RowPlan, 'direction'> {
  const { first, bays, width, askew, boardWidth, rows, ripped, cutEdges, rules } = made;
  const positions = running(first, bays);
  const far = positions[positions.length - 1] + first;
  const levels = running(GAP, [...new Array<number>(rows).fill(boardWidth), Math.min(ripped, boardWidth)]);
  const depth = levels[levels.length - 1] + GAP;
  const outline = rectangle(far, depth);
  const placed = positions.map((at, i) =>
    i % 2 === 0 ? { atStart: at, atEnd: at + askew } : { atStart: at, atEnd: at - askew },
  );
  const joists = joistsFromPositions({ room: { outline }, direction: 'y', positions: placed, width });
  const hatch = hatchOf(made, positions, levels);
  let before: readonly number[] = [];
  const pieces = levels.slice(1).flatMap((high, row) => {
    const low = levels[row];
    const joints = jointsOf(positions, far, before, made.choices.slice(row * 6), hatch?.row === row ? hatch.bay : undefined);
    before = joints.map((joist) => positions[joist]);
    const ends = [wall(GAP), ...joints.map((i) => joint(centreAt(joists[i], (low + high) / 2), joists[i].id)), wall(far - GAP)];
    const edges = { low: cutEdges[2 * row] ? 'cut' : 'bound', high: cutEdges[2 * row + 1] ? 'cut' : 'bound' } as const;
    return ends.slice(1).map((end, i) => {
      const holed = hatch?.row === row && ends[i].position < hatch.outline[0].x && hatch.outline[0].x < end.position;
      return handLaidPiece({
        id: `${row + 1}.${i + 1}`,
        ends: [ends[i], end],
        low,
        high,
        edges,
        ...(holed && { holes: [hatch.outline] }),
      });
    });
  });
  const noFix = made.zones.map(({ joist, at, diameter }) => ({
    centre: { x: positions[joist % positions.length], y: Math.round((depth * at) / 1000) },
    diameter,
  }));
  const openings: Opening[] = hatch ? [{ kind: 'hatch', outline: hatch.outline }] : [];
  return { room: { outline, openings }, joists: [...joists, ...(hatch?.trimmers ?? [])], layout: { pieces }, rules, noFix };
}

const centreAt = ({ start, end }: Joist, y: number): number =>
  start.x + Math.round((((end.x - start.x) * (y - start.y)) / (end.y - start.y)) * 1000) / 1000;

/** Which joists a row is cut on: at least 300 from the joints of the row before, no piece over 2400, two joists under each. */
function jointsOf(
  positions: readonly number[],
  far: number,
  before: readonly number[],
  choices: readonly number[],
  closedBay: number | undefined,
): number[] {
  const joints: number[] = [];
  let from = 0;
  for (const choice of choices) {
    const here = joints[joints.length - 1] ?? -1;
    const open = positions.flatMap((at, i) =>
      i >= here + 2 &&
      i > 0 &&
      i < positions.length - 1 &&
      at - from <= 2400 &&
      i !== closedBay &&
      i - 1 !== closedBay &&
      before.every((other) => Math.abs(other - at) >= 300)
        ? [i]
        : [],
    );
    if (open.length === 0 || (far - from <= 2400 && choice % 2 === 0)) break;
    const next = open[choice % open.length];
    joints.push(next);
    from = positions[next];
  }
  return joints;
}

/** A hatch between the faces of two joists, in a row wide enough for it, with a trimmer at each end of it. */
function hatchOf({ hatch, width, askew }: Made, positions: readonly number[], levels: readonly number[]) {
  if (hatch === null || askew > 0) return;
  const row = hatch.row % (levels.length - 1);
  const bay = hatch.bay % (positions.length - 1);
  const [low, high] = [levels[row] + hatch.from, levels[row] + hatch.from + 400];
  if (high + 60 > levels[row + 1]) return;
  const [left, right] = [positions[bay] + width / 2, positions[bay + 1] - width / 2];
  const outline = [
    { x: left, y: low },
    { x: right, y: low },
    { x: right, y: high },
    { x: left, y: high },
  ];
  const trimmers = [low - width / 2, high + width / 2].map(
    (y, i): Joist => ({
      id: `T${i + 1}`,
      start: { x: positions[bay], y },
      end: { x: positions[bay + 1], y },
      width,
      sd: 0,
      presence: 1,
      kind: 'trimmer',
      known: 'given',
    }),
  );
  return { row, bay, outline, trimmers };
}

function turned(plan: Omit<RowPlan, 'direction'>, direction: Direction): RowPlan {
  if (direction === 'y') return { ...plan, direction };
  const swap = ({ x, y }: Point): Point => ({ x: y, y: x });
  const { openings = [] } = plan.room;
  return {
    ...plan,
    direction,
    room: {
      outline: plan.room.outline.map(swap),
      openings: openings.map((each) => ('outline' in each ? { ...each, outline: each.outline.map(swap) } : each)),
    },
    joists: plan.joists.map((joist) => ({ ...joist, start: swap(joist.start), end: swap(joist.end) })),
    layout: {
      pieces: plan.layout.pieces.map((piece) => ({
        ...piece,
        outline: piece.outline.map(swap),
        ...(piece.holes && { holes: piece.holes.map((hole) => hole.map(swap)) }),
      })),
    },
    noFix: plan.noFix.map((zone) => ('centre' in zone ? { ...zone, centre: swap(zone.centre) } : zone)),
  };
}
