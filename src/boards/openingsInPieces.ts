/** A rectangle in grid steps. */
export interface Box {
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

/** A corner in the problem's coordinates, grid steps. */
export interface Corner {
  readonly u: number;
  readonly v: number;
}

/** What is left of a rectangle: its outline and the holes in it, anticlockwise. */
export interface CutOut {
  readonly outline: readonly Corner[];
  readonly holes: readonly (readonly Corner[])[];
}

/** Takes rectangles out of a rectangle; nothing when what is left is not in one piece. */
export function cutOut(box: Box, openings: readonly Box[]): CutOut | undefined {
  const inside = openings
    .map((each) => ({
      near: Math.max(box.near, each.near),
      far: Math.min(box.far, each.far),
      low: Math.max(box.low, each.low),
      high: Math.min(box.high, each.high),
    }))
    .filter(({ near, far, low, high }) => near < far && low < high);
  const us = lines(inside.flatMap(({ near, far }) => [near, far]).concat(box.near, box.far));
  const vs = lines(inside.flatMap(({ low, high }) => [low, high]).concat(box.low, box.high));
  const stays = (i: number, k: number): boolean =>
    i >= 0 &&
    k >= 0 &&
    i < us.length - 1 &&
    k < vs.length - 1 &&
    !inside.some(({ near, far, low, high }) => near <= us[i] && us[i] < far && low <= vs[k] && vs[k] < high);
  const rings = ringsOf(edgesAround(us, vs, stays));
  const outlines = rings.filter((ring) => twiceAreaOf(ring) > 0);
  if (outlines.length !== 1) return undefined;
  return {
    outline: outlines[0],
    holes: rings.filter((ring) => twiceAreaOf(ring) < 0).map((ring) => [...ring].reverse()),
  };
}

const lines = (at: readonly number[]): number[] => [...new Set(at)].sort((a, b) => a - b);

type Ends = Map<string, Corner[]>;

/** The edges between cells that stay and cells that do not, the staying cell on the left: where each leads from its start. */
function edgesAround(us: readonly number[], vs: readonly number[], stays: (i: number, k: number) => boolean): Ends {
  const next: Ends = new Map();
  const edge = (a: readonly [number, number], b: readonly [number, number]): void => {
    const key = `${us[a[0]]} ${vs[a[1]]}`;
    next.set(key, [...(next.get(key) ?? []), { u: us[b[0]], v: vs[b[1]] }]);
  };
  for (let i = 0; i < us.length - 1; i++) {
    for (let k = 0; k < vs.length - 1; k++) {
      if (!stays(i, k)) continue;
      if (!stays(i, k - 1)) edge([i, k], [i + 1, k]);
      if (!stays(i + 1, k)) edge([i + 1, k], [i + 1, k + 1]);
      if (!stays(i, k + 1)) edge([i + 1, k + 1], [i, k + 1]);
      if (!stays(i - 1, k)) edge([i, k + 1], [i, k]);
    }
  }
  return next;
}

/** Edges joined to rings. */
function ringsOf(next: Ends): Corner[][] {
  const rings: Corner[][] = [];
  for (const [key, ends] of next) {
    while (ends.length > 0) {
      const [u, v] = key.split(' ').map(Number);
      const ring: Corner[] = [{ u, v }];
      let at = ends.pop() as Corner;
      while (at.u !== u || at.v !== v) {
        ring.push(at);
        at = (next.get(`${at.u} ${at.v}`) as Corner[]).pop() as Corner;
      }
      rings.push(withoutStraightCorners(ring));
    }
  }
  return rings;
}

const withoutStraightCorners = (ring: readonly Corner[]): Corner[] =>
  ring.filter((here, i) => {
    const before = ring[(i + ring.length - 1) % ring.length];
    const after = ring[(i + 1) % ring.length];
    return (before.u === here.u) !== (here.u === after.u);
  });

function twiceAreaOf(ring: readonly Corner[]): number {
  return ring.reduce((sum, { u, v }, i) => {
    const after = ring[(i + 1) % ring.length];
    const [du, dv] = [u - ring[0].u, v - ring[0].v];
    return sum + du * (after.v - ring[0].v) - (after.u - ring[0].u) * dv;
  }, 0);
}
