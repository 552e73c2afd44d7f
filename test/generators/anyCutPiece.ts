import { fc } from '@fast-check/vitest';
import type { End, Joist, Opening, Piece, Point, Room } from 'soffitwright';
import { handLaidPiece, joint, wall } from './handLaid.js';

/** One piece of any cut over joists that run any way, and what it lies among. */
export interface CutPiece {
  readonly room: Room;
  readonly piece: Piece;
  readonly joists: readonly Joist[];
  readonly direction: 'x' | 'y';
}

const REACH = 3000;

interface Wanted {
  readonly depth: number;
  readonly length: number;
  readonly rakes: readonly [number, number];
  readonly onJoist: boolean;
  readonly notch: 'none' | 'low' | 'high' | 'end';
  readonly splay: boolean;
  readonly hole: boolean;
  readonly light: boolean;
  readonly spacing: number;
  readonly width: number;
  readonly slope: number;
  readonly fan: number;
  readonly trimmed: boolean;
  readonly nogging: 'none' | 'middle' | 'edge';
  readonly turned: boolean;
}

const whole = (min: number, max: number) => fc.integer({ min, max });

/** A piece with raked ends, a notch, a splayed corner, a hole; over joists askew, fanned or cut short; over a nogging. */
export const anyCutPiece: fc.Arbitrary<CutPiece> = fc
  .record({
    depth: whole(450, 1200),
    length: whole(1500, 2400),
    rakes: fc.tuple(whole(-200, 200), whole(-200, 200)),
    onJoist: fc.boolean(),
    notch: fc.constantFrom('none' as const, 'low' as const, 'high' as const, 'end' as const),
    splay: fc.boolean(),
    hole: fc.boolean(),
    light: fc.boolean(),
    spacing: whole(300, 500),
    width: fc.constantFrom(38, 47, 50, 75),
    slope: whole(-60, 60),
    fan: whole(-15, 15),
    trimmed: fc.boolean(),
    nogging: fc.constantFrom('none' as const, 'middle' as const, 'edge' as const),
    turned: fc.boolean(),
  })
  .map(cutPiece);

function cutPiece(wanted: Wanted): CutPiece {
  const joists = joistsOf(wanted);
  const outline = outlineOf(wanted, joists);
  const { depth, length, onJoist } = wanted;
  const xs = outline.map(({ x }) => x);
  const ends: [End, End] = [onJoist ? joint(joists[0].start.x, 'J1') : wall(Math.min(...xs)), wall(Math.max(...xs))];
  const base = handLaidPiece({ id: '1.1', ends, low: 0, high: depth, edges: { low: 'bound', high: 'cut' } });
  const hole = [
    { x: length / 2 - 90, y: depth / 2 - 60 },
    { x: length / 2 + 90, y: depth / 2 - 60 },
    { x: length / 2 + 60, y: depth / 2 + 70 },
  ];
  const light: Opening = { kind: 'light', centre: { x: length * 0.7, y: depth * 0.3 }, diameter: 90 };
  const turn = <T extends Point>({ x, y, ...rest }: T): T => (wanted.turned ? { ...rest, x: y, y: x } : { ...rest, x, y }) as T;
  return {
    direction: wanted.turned ? 'x' : 'y',
    room: {
      outline: [
        { x: -REACH, y: -REACH },
        { x: 2 * REACH, y: -REACH },
        { x: 2 * REACH, y: 2 * REACH },
        { x: -REACH, y: 2 * REACH },
      ],
      openings: wanted.light ? [{ ...light, centre: turn(light.centre) }] : [],
    },
    piece: { ...base, outline: outline.map(turn), ...(wanted.hole && { holes: [hole.map(turn)] }) },
    joists: joists.map((joist) => ({ ...joist, start: turn(joist.start), end: turn(joist.end) })),
  };
}

/** The ends raked, the low one along its joist if it lies on one; a notch out of a long edge or the high end; a corner cut off. */
function outlineOf({ depth, length, rakes, onJoist, notch, splay }: Wanted, [first]: readonly Joist[]): Point[] {
  const along = (y: number): number =>
    first.start.x + ((first.end.x - first.start.x) * (y - first.start.y)) / (first.end.y - first.start.y);
  const low = onJoist ? [along(0) + 1.5, along(depth) + 1.5] : [0, rakes[0]];
  const high = [length, length + rakes[1]];
  const third = Math.round(depth / 3);
  return [
    { x: low[0], y: 0 },
    ...(notch === 'low'
      ? [
          { x: 500, y: 0 },
          { x: 500, y: third },
          { x: 900, y: third },
          { x: 900, y: 0 },
        ]
      : []),
    { x: high[0], y: 0 },
    ...(notch === 'end'
      ? [
          { x: length + (rakes[1] * third) / depth, y: third },
          { x: length - 320, y: third },
          { x: length - 320, y: 2 * third },
          { x: length + (rakes[1] * 2 * third) / depth, y: 2 * third },
        ]
      : []),
    ...(splay
      ? [
          { x: length + (rakes[1] * 3) / 4, y: (depth * 3) / 4 },
          { x: high[1] - 250, y: depth },
        ]
      : [{ x: high[1], y: depth }]),
    ...(notch === 'high'
      ? [
          { x: 1000, y: depth },
          { x: 1000, y: depth - third },
          { x: 600, y: depth - third },
          { x: 600, y: depth },
        ]
      : []),
    { x: low[1], y: depth },
  ].map(({ x, y }) => ({ x: Math.round(x * 1000) / 1000, y: Math.round(y * 1000) / 1000 }));
}

/** None whose middle is beyond the piece: in a room there is a wall. */
function joistsOf({ depth, length, rakes, spacing, width, slope, fan, trimmed, nogging }: Wanted): Joist[] {
  const facts = { width, sd: 0, presence: 1, known: 'given' as const };
  const joists: Joist[] = [];
  for (let k = 0; k * spacing < length + 300; k++) {
    const [x, lean] = [60 + k * spacing, slope + fan * k];
    const cut = trimmed && k % 3 === 1;
    if (x + lean / 2 > length + Math.max(0, rakes[1])) break;
    const end = cut ? 0.45 * depth : depth + 200;
    joists.push({
      id: `J${k + 1}`,
      start: { x, y: -200 },
      end: { x: x + (lean * (end + 200)) / (depth + 400), y: end },
      ...facts,
    });
  }
  if (nogging === 'none') return joists;
  const y = nogging === 'middle' ? Math.round(depth * 0.55) : depth;
  const middle = { x: joists[1].start.x + 20, y };
  return [...joists, { id: 'N1', start: middle, end: { x: middle.x + spacing - 40, y }, ...facts, kind: 'nogging' }];
}
