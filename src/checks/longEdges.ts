import { type Box, type Ring, upright } from './solid.js';

/** One of the two long edges of a piece as cut, grid steps. */
export interface LongEdge {
  /** Length that lies at the very edge of the piece; 0 where it comes to a point, or is scribed. */
  readonly level: number;
  /** Length of everything that faces that way and runs along the board rather than across it. */
  readonly whole: number;
}

/** The low edge of a piece and the high one. */
export function longEdges(ring: Ring, { u0, u1, v0, v1 }: Box): readonly [low: LongEdge, high: LongEdge] {
  if (ring.length === 4 && upright(ring)) {
    const edge = { level: u1 - u0, whole: u1 - u0 };
    return [edge, edge];
  }
  const edges = [
    { level: 0, whole: 0 },
    { level: 0, whole: 0 },
  ] as const;
  const turn = isAnticlockwise(ring) ? 1 : -1;
  ring.forEach((from, i) => {
    const to = ring[(i + 1) % ring.length];
    const [du, dv] = [to.u - from.u, to.v - from.v];
    if (Math.abs(du) <= Math.abs(dv)) return;
    const [edge, at] = du * turn > 0 ? ([edges[0], v0] as const) : ([edges[1], v1] as const);
    const length = Math.round(Math.sqrt(du * du + dv * dv));
    add(edge, length, from.v === at && to.v === at);
  });
  return edges;
}

function add(edge: { level: number; whole: number }, length: number, isLevel: boolean): void {
  edge.whole += length;
  if (isLevel) edge.level += length;
}

const isAnticlockwise = (ring: Ring): boolean => {
  const [origin] = ring;
  return (
    ring.reduce((sum, { u, v }, i) => {
      const next = ring[(i + 1) % ring.length];
      return sum + (u - origin.u) * (next.v - origin.v) - (next.u - origin.u) * (v - origin.v);
    }, 0) > 0
  );
};
