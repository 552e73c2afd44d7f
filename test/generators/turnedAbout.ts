import type { Joist, Layer, LayoutCheck, Opening, Point, Zone } from 'soffitwright';
import type { CheckByHand } from './layoutsByHand.js';

/** A way of turning or mirroring the plan. */
export type Turn = (point: Point) => Point;

/** The eight ways of laying a sheet on its own outline. */
export const TURNS: readonly (readonly [name: string, turn: Turn])[] = [
  ['as it is', ({ x, y }) => ({ x, y })],
  ['turned by 90', ({ x, y }) => ({ x: -y, y: x })],
  ['turned by 180', ({ x, y }) => ({ x: -x, y: -y })],
  ['turned by 270', ({ x, y }) => ({ x: y, y: -x })],
  ['mirrored', ({ x, y }) => ({ x: -x, y })],
  ['mirrored and turned by 90', ({ x, y }) => ({ x: -y, y: -x })],
  ['mirrored and turned by 180', ({ x, y }) => ({ x, y: -y })],
  ['mirrored and turned by 270', ({ x, y }) => ({ x: y, y: x })],
];

/** A check of a bare layout, turned; what a layout says of itself names ends and edges, and is left behind. */
export function turnedAbout({ room, joists, layout, lining, ...rest }: CheckByHand, turn: Turn): CheckByHand {
  const outline = (points: readonly Point[]): Point[] => points.map(turn);
  const opening = (each: Opening): Opening =>
    'outline' in each ? { ...each, outline: outline(each.outline) } : { ...each, centre: turn(each.centre) };
  const bare: LayoutCheck['layout'] = {
    pieces: layout.pieces.map(({ id, outline: points, holes, board }) => ({
      id,
      outline: outline(points),
      ...(holes && { holes: holes.map(outline) }),
      board,
    })),
    boards: layout.boards.map(({ id, stock }) => ({ id, stock })),
  };
  return {
    ...rest,
    room: {
      ...room,
      outline: outline(room.outline),
      ...(room.openings && { openings: room.openings.map(opening) }),
      ...(room.zones && { zones: room.zones.map((zone) => turnedZone(zone, turn)) }),
    },
    joists: joists.map((joist) => turnedJoist(joist, turn)),
    layout: bare,
    ...(lining && { lining: lining.map((layer) => turnedLayer(layer, turn)) }),
  };
}

/** Zones whose joists are listed one by one. */
const turnedZone = (zone: Zone, turn: Turn): Zone => ({
  ...zone,
  outline: zone.outline.map(turn),
  joists: (zone.joists as readonly Joist[]).map((joist) => turnedJoist(joist, turn)),
});

export function turnedJoist(joist: Joist, turn: Turn): Joist {
  const [start, end] = [turn(joist.start), turn(joist.end)];
  return start.x + start.y <= end.x + end.y ? { ...joist, start, end } : { ...joist, start: end, end: start };
}

const turnedLayer = (layer: Layer, turn: Turn): Layer => ({
  ...layer,
  ...(layer.joints && { joints: layer.joints.map(([a, b]) => [turn(a), turn(b)] as const) }),
});
