import { type PlacementRequest, type Point, rectangle } from 'soffitwright';
import { Draw } from './rooms.js';
import { even, ring, stock } from './scenario.js';

/** A room, and how far across its rows reach in each part of it, in the order in which rows are numbered. */
export interface BoundedRoom {
  readonly name: string;
  readonly request: PlacementRequest;
  readonly depths: readonly number[];
}

const SIZES = [
  [2400, 1200],
  [3000, 1200],
  [1800, 900],
  [2400, 900],
] as const;
const SHAPES = ['light', 'L', 'T', 'breast', 'zones'] as const;
const GAP = 5;

/** Rooms that are no plain rectangles, one for each seed. */
export function boundedRoom(seed: number): BoundedRoom {
  const draw = new Draw(seed);
  const tens = (from: number, to: number): number => 10 * draw.between(Math.ceil(from / 10), Math.floor(to / 10));
  const shape = SHAPES[seed % SHAPES.length];
  const [length, across] = draw.from(SIZES);
  const boards = [stock(length, across)];
  const [width, depth] = [tens(2400, 5200), tens(1800, 4200)];
  const joists = () => even(tens(40, 390), draw.from([400, 450, 600]), width - draw.between(25, 45), 47);
  const name = `${shape} ${seed}`;
  if (shape === 'zones') {
    const border = tens(1100, 2400);
    const all = border + tens(1100, 2400);
    const outlines = [rectangle(width, border), ring([0, border], [width, border], [width, all], [0, all])];
    const zones = outlines.map((outline, i) => ({ id: `Z${i + 1}`, outline, joists: joists() }));
    const room = { outline: rectangle(width, all), zones };
    return { name, request: { room, joists: [], boards }, depths: [border - GAP, all - border - GAP] };
  }
  const plain = { room: { outline: rectangle(width, depth) }, joists: joists(), boards };
  const depths = [depth - 2 * GAP];
  if (shape === 'light') {
    const centre = { x: tens(500, width - 500), y: tens(500, depth - 500) };
    return { name, request: { ...plain, room: { ...plain.room, openings: [{ kind: 'light', centre, diameter: 70 }] } }, depths };
  }
  return { name, request: { ...plain, room: { outline: outlineOf(shape, tens, width, depth) } }, depths };
}

function outlineOf(shape: 'L' | 'T' | 'breast', tens: (from: number, to: number) => number, x: number, y: number): Point[] {
  if (shape === 'L') {
    const [a, b] = [tens(600, x - 900), tens(500, y - 700)];
    return ring([0, 0], [x, 0], [x, y - b], [x - a, y - b], [x - a, y], [0, y]);
  }
  if (shape === 'T') {
    const [a, b, c] = [tens(400, x / 3), tens(400, y - 800), tens(400, x / 3)];
    return ring([a, 0], [x - c, 0], [x - c, b], [x, b], [x, y], [0, y], [0, b], [a, b]);
  }
  const breast = tens(800, 1400);
  const [at, out] = [tens(400, x - breast - 400), tens(250, 500)];
  return ring([0, 0], [x, 0], [x, y], [at + breast, y], [at + breast, y - out], [at, y - out], [at, y], [0, y]);
}

/** Rows for a room: full ones, and at most one ripped at each side of each part, the first of them drawn. */
export function drawnRows({ depths, request }: BoundedRoom, draw: Draw): number[] | undefined {
  const [{ width }] = request.boards;
  const rows = depths.flatMap((depth) => {
    const widths = [Math.min(depth, 5 * draw.between(40, width / 5))];
    let left = depth - widths[0];
    for (; left > width; left -= width) widths.push(width);
    return left > 0 ? [...widths, left] : widths;
  });
  return rows.every((each) => each >= 200) ? rows : undefined;
}
