import {
  type Board,
  type BoardStock,
  type CeilingPlan,
  type Direction,
  type End,
  type FixingLine,
  type FixingPosition,
  type Joist,
  type JoistPosition,
  joistsFromPositions,
  type Opening,
  type Piece,
  type Point,
  type Room,
  type Row,
  rectangle,
  ruleSets,
} from 'soffitwright';

/**
 * Plans laid by hand for tests of drawings: rows from the low wall, each piece to the furthest joist that its board reaches,
 * every second row started short. No layout to be proud of, but everything a drawing has to show, and it does not change when
 * the placement gets better.
 */
export interface DrawnRoom {
  readonly name?: string;
  readonly width: number;
  readonly depth: number;
  readonly direction: Direction;
  readonly positions: readonly JoistPosition[];
  readonly joistWidth?: number;
  readonly stock?: { readonly length: number; readonly width: number };
  readonly openings?: readonly Opening[];
  readonly walls?: Room['walls'];
  readonly held?: boolean;
  readonly proveFirst?: readonly string[];
  readonly confidence?: CeilingPlan['confidence'];
}

const GAP = 5;
const JOINT = 3;

export function drawnPlan(spec: DrawnRoom): CeilingPlan {
  const { direction } = spec;
  const room: Room = {
    ...(spec.name !== undefined && { name: spec.name }),
    outline: rectangle(spec.width, spec.depth),
    ...(spec.openings && { openings: spec.openings }),
    ...(spec.walls && { walls: spec.walls }),
  };
  const joists = joistsFromPositions({ room, direction, positions: spec.positions, width: spec.joistWidth ?? 47 });
  const stock = stockOf(spec.stock ?? { length: 2400, width: 1200 });
  const rows = rowsOf(direction === 'y' ? spec.depth : spec.width, stock.width);
  const across = direction === 'y' ? spec.width : spec.depth;
  const { pieces, boards } = piecesOf(rows, across, joists, direction, stock);
  const { positions, lines } = screwsOf(pieces, joists, direction);
  const placed = positions.filter(({ x, y }) => !(spec.openings ?? []).some((opening) => covers(opening, x, y)));
  return planAround({ ...spec, room, joists, stock, pieces, boards, rows, positions: placed, lines });
}

export const stockOf = (size: { readonly length: number; readonly width: number }): BoardStock => ({
  id: `${size.width} x ${size.length} x 12.5`,
  ...size,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
});

/** What a plan laid by hand consists of; the rest of it is the same for all. */
export interface LaidByHand extends Pick<DrawnRoom, 'direction' | 'held' | 'proveFirst' | 'confidence'> {
  readonly room: Room;
  readonly joists: readonly Joist[];
  readonly stock: BoardStock;
  readonly pieces: readonly Piece[];
  readonly boards: readonly Board[];
  readonly rows: readonly Row[];
  readonly positions: readonly FixingPosition[];
  readonly lines: readonly FixingLine[];
}

export function planAround({ room, joists, stock, pieces, boards, rows, positions, lines, ...spec }: LaidByHand): CeilingPlan {
  const area = pieces.reduce((sum, piece) => sum + (piece.cutLength * piece.width) / 1e6, 0);
  const held = spec.held ?? false;
  return {
    job: {
      room,
      joists,
      lining: [{ kind: 'plasterboard', thickness: 9.5 }],
      boards: [stock],
      rules: ruleSets.uk,
      prefer: 'tradesperson',
      finish: 'skim',
      packing: 0,
      probed: true,
      screws: { stock: [55], lengthTolerance: 0 },
      noFix: [],
    },
    room,
    joists,
    layout: {
      pieces,
      boards,
      offcuts: [],
      rows,
      endJoints: pieces.filter((piece) => piece.ends[1].meets === 'board').length,
      boardsBought: boards.length,
      boardsAtMinimumLength: boards.length + 1,
      boardsByStock: [{ stock: stock.id, count: boards.length }],
      areaM2: area,
      wasteAreaM2: (boards.length * stock.length * stock.width) / 1e6 - area,
      cuts: boards.length,
      jointLength: 0,
      bound: boards.length,
      proven: true,
      piecesProven: false,
      reasons: [],
      findings: [],
    },
    fixings: { positions, lines, count: positions.length, perSquareMetre: positions.length / area, findings: [] },
    fixingLength: { minimum: 47, preferred: 52, maximum: 67, longest: 65, recommended: 55, embedment: 33, findings: [] },
    takeOff: {
      lines: [
        {
          item: `board ${stock.id}`,
          quantity: boards.length,
          unit: 'boards',
          packs: boards.length + 1,
          basis: 'as laid, one spare',
          perPack: 1,
        },
        {
          item: 'drywall screws 55 mm',
          quantity: positions.length,
          unit: 'screws',
          packs: 1,
          basis: '10 % spare',
          perPack: 1000,
        },
      ],
      wasteKg: 12.5,
    },
    confidence: spec.confidence ?? { onTimber: 1, withinEdgeRules: 1 },
    certainty: [...new Set(pieces.flatMap(({ ends }) => ends.flatMap(({ joist }) => joist ?? [])))].map((joist) =>
      spec.proveFirst?.includes(joist)
        ? { joist, certainty: 'prove first', probability: 0.61 }
        : { joist, certainty: 'sure', probability: 0.99 },
    ),
    proveFirst: spec.proveFirst ?? [],
    nextProbe: null,
    probes: [],
    findings: held
      ? [
          {
            code: 'texture-untested',
            severity: 'hold',
            message:
              'Layer 1 of the old ceiling (texture) has no asbestos test result, and 158 screws would go through it. Do not start.',
          },
        ]
      : [{ code: 'services-unknown', severity: 'warning', message: 'Cables and pipes may run anywhere above the old ceiling.' }],
    meta: { held, direction: spec.direction, ruleSet: ruleSets.uk.title },
  };
}

function rowsOf(length: number, width: number): Row[] {
  const rows: Row[] = [];
  for (let low = GAP; low < length - GAP; low += width) {
    const high = Math.min(low + width, length - GAP);
    rows.push({ row: rows.length + 1, low, high, width: high - low, ripped: high - low < width });
  }
  return rows;
}

/** Whether a place lies in an opening or within 15 mm of it, taking the opening by its extent. */
function covers(opening: Opening, x: number, y: number): boolean {
  const points =
    'outline' in opening
      ? opening.outline
      : [-1, 1].map((side) => ({
          x: opening.centre.x + (side * opening.diameter) / 2,
          y: opening.centre.y + (side * opening.diameter) / 2,
        }));
  const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
  return x > Math.min(...xs) - 15 && x < Math.max(...xs) + 15 && y > Math.min(...ys) - 15 && y < Math.max(...ys) + 15;
}

/** Centre of a joist at a distance along it. */
function centre({ start, end }: Joist, direction: Direction, along: number): number {
  const [a, b] = direction === 'y' ? [start, end] : [turned(start), turned(end)];
  return Math.round(a.x + ((b.x - a.x) * (along - a.y)) / (b.y - a.y));
}

const turned = ({ x, y }: Point): Point => ({ x: y, y: x });

/** A stretch of a row between two butt joints or walls. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly low?: string;
  readonly high?: string;
}

/** From the near wall on, each stretch to the furthest joist in reach; every second row starts short. */
function stretchesOf(row: Row, across: number, joists: readonly Joist[], direction: Direction, length: number): Stretch[] {
  const far = across - GAP;
  const centres = joists.map((joist) => ({ id: joist.id, at: centre(joist, direction, (row.low + row.high) / 2) }));
  const stretches: Stretch[] = [];
  let [from, low, reach]: [number, string | undefined, number] = [GAP, undefined, row.row % 2 === 0 ? length * 0.6 : length];
  while (from < far) {
    const [least, most] = [from + 300, Math.min(from + reach, far - 300)];
    const stop = far - from <= reach ? undefined : centres.filter(({ at }) => at > least && at <= most).pop();
    const to = stop?.at ?? far;
    stretches.push({ from, to, ...(low !== undefined && { low }), ...(stop && { high: stop.id }) });
    [from, low, reach] = [to, stop?.id, length];
  }
  return stretches;
}

function piecesOf(rows: readonly Row[], across: number, joists: readonly Joist[], direction: Direction, stock: BoardStock) {
  const pieces: Piece[] = [];
  const boards: Board[] = [];
  let left = { length: 0, width: 0 };
  for (const row of rows) {
    for (const [place, stretch] of stretchesOf(row, across, joists, direction, stock.length).entries()) {
      const length = stretch.to - stretch.from;
      const cutLength = length - (stretch.low ? JOINT / 2 : 0) - (stretch.high ? JOINT / 2 : 0);
      if (left.length < cutLength || left.width < row.width) {
        boards.push({ id: `B${boards.length + 1}`, stock: stock.id, cuts: [], offcuts: [] });
        left = { length: stock.length, width: stock.width };
      }
      const board = boards[boards.length - 1];
      const at = { along: stock.length - left.length, across: 0 };
      left = { ...left, length: left.length - cutLength };
      const whole = left.length <= 5;
      if (!whole) {
        const cut = { kind: 'cross' as const, at: at.along + cutLength, from: 0, to: stock.width };
        boards[boards.length - 1] = { ...board, cuts: [...board.cuts, cut] };
      }
      pieces.push({
        id: `${row.row}.${place + 1}`,
        row: row.row,
        outline: outlineOf(stretch, row, direction),
        length,
        cutLength,
        width: row.width,
        board: board.id,
        at,
        ends: [endOf(stretch.from, stretch.low, at.along === 0), endOf(stretch.to, stretch.high, whole)],
        edges: { low: 'bound', high: row.ripped ? 'cut' : 'bound' },
        tight: whole && at.along === 0,
        massKg: Math.round(cutLength * row.width * 8.4e-5) / 10,
      });
    }
  }
  return { pieces, boards };
}

function outlineOf({ from, to, low, high }: Stretch, row: Row, direction: Direction): Point[] {
  const [left, right] = [from + (low ? JOINT / 2 : 0), to - (high ? JOINT / 2 : 0)];
  const corners = [
    { x: left, y: row.low },
    { x: right, y: row.low },
    { x: right, y: row.high },
    { x: left, y: row.high },
  ];
  return direction === 'y' ? corners : corners.map(turned).reverse();
}

function endOf(position: number, joist: string | undefined, factory: boolean): End {
  const made = factory ? 'factory' : 'cut';
  return joist === undefined ? { meets: 'wall', position, made } : { meets: 'board', joist, position, made };
}

function screwsOf(pieces: readonly Piece[], joists: readonly Joist[], direction: Direction) {
  const positions: FixingPosition[] = [];
  const lines: FixingLine[] = [];
  for (const piece of pieces) {
    const corners = direction === 'y' ? piece.outline : piece.outline.map(turned);
    const low = Math.min(...corners.map(({ y }) => y));
    const [near, far] = [Math.min(...corners.map(({ x }) => x)), Math.max(...corners.map(({ x }) => x))];
    for (const joist of joists) {
      const at = centre(joist, direction, low + piece.width / 2);
      if (at < near - 2 || at > far + 2) continue;
      const line = lineOf(piece, joist);
      const u = Math.min(Math.max(at, near + 13), far - 13);
      const marks = Array.from({ length: line.count }, (_, k) => low + line.first + k * line.steps[0]);
      lines.push(line);
      for (const v of marks) {
        positions.push({ ...(direction === 'y' ? { x: u, y: v } : { x: v, y: u }), piece: piece.id, joist: joist.id });
      }
    }
  }
  return { positions, lines };
}

export function lineOf(piece: Piece, joist: Joist): FixingLine {
  const kind = piece.ends.some((end) => end.joist === joist.id) ? 'end' : 'field';
  const first = 12;
  const run = piece.width - 2 * first;
  const count = Math.ceil(run / (kind === 'end' ? 150 : 230)) + 1;
  const pitch = Math.floor(run / (count - 1));
  const steps = new Array<number>(count - 1).fill(pitch);
  return { piece: piece.id, joist: joist.id, kind, count, first, steps, text: `first at ${first}, then every ${pitch}` };
}

export const every = (first: number, spacing: number, last: number): number[] => {
  const positions: number[] = [];
  for (let at = first; at < last - 60; at += spacing) positions.push(at);
  return [...positions, last];
};

const centred = (id: string, kind: Opening['kind'], x: number, y: number, diameter: number): Opening => ({
  id,
  kind,
  centre: { x, y },
  diameter,
});

/** Rooms that are hard to draw in different ways, by name. */
export const drawnRooms: Readonly<Record<string, DrawnRoom>> = {
  'back bedroom': {
    name: 'Back bedroom',
    width: 3600,
    depth: 3000,
    direction: 'y',
    positions: every(25, 400, 3575),
    walls: [
      { edge: 0, door: true },
      { edge: 2, window: true },
    ],
  },
  landing: {
    name: 'Landing',
    width: 5200,
    depth: 880,
    direction: 'y',
    positions: every(100, 400, 5100),
    walls: [{ edge: 3, name: 'stair head' }],
  },
  'box room': {
    name: 'Box room',
    width: 2390,
    depth: 2380,
    direction: 'y',
    positions: every(80, 400, 2310),
    openings: [
      centred('L1', 'light', 700, 600, 70),
      centred('L2', 'light', 1580, 600, 70),
      centred('L3', 'light', 700, 1750, 70),
      centred('L4', 'light', 1580, 1750, 70),
      {
        id: 'H1',
        kind: 'hatch',
        outline: [
          { x: 905, y: 1000 },
          { x: 1655, y: 1000 },
          { x: 1655, y: 1550 },
          { x: 905, y: 1550 },
        ],
      },
    ],
    held: true,
  },
  hall: {
    name: 'Village hall committee room',
    width: 9000,
    depth: 6000,
    direction: 'y',
    positions: [
      60, 390, 770, 1100, 1530, 1880, 2310, 2650, 3090, 3420, 3800, 4190, 4600, 4930, 5350, 5700, 6120, 6480, 6880, 7210, 7640,
      7990, 8420, 8700, 8945,
    ],
    stock: { length: 1800, width: 900 },
    proveFirst: ['J7', 'J15'],
    confidence: { onTimber: 0.971, withinEdgeRules: 0.894 },
    walls: [
      { edge: 3, name: 'street wall', window: true },
      { edge: 1, name: 'corridor wall', door: true },
    ],
  },
  'joists along x': {
    name: 'Dining room',
    width: 3940,
    depth: 4320,
    direction: 'x',
    positions: [95, 460, 815, 1190, 1545, 1918, 2290, 2655, 3010, 3394, 3758, 4212],
    openings: [centred('pendant', 'light', 1970, 2160, 60)],
    walls: [
      { edge: 1, name: 'hall wall', door: true },
      { edge: 3, name: 'garden wall', window: true },
    ],
  },
  fan: {
    name: 'Attic room',
    width: 3600,
    depth: 3000,
    direction: 'y',
    positions: every(25, 400, 3575).map((at, index) => ({ atStart: at, atEnd: Math.max(25, at - 2 * index) })),
  },
};
