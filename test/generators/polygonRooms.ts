import type { Joist, Opening, PlacementRequest, Point } from 'soffitwright';

/** A room of any outline to lay boards in. */
export type PolygonRoom = Pick<PlacementRequest, 'room' | 'joists' | 'boards'> & { readonly rectilinear: boolean };

/** Draws whole numbers, the same for the same seed in every engine. */
type Draw = (least: number, greatest: number) => number;

function drawFrom(seed: number): Draw {
  let state = Math.imul(seed + 1, 0x85ebca6b) | 0;
  return (least, greatest) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x7feb352d);
    mixed ^= mixed >>> 15;
    return least + ((mixed >>> 0) % (greatest - least + 1));
  };
}

/**
 * A room with openings for a number: every other one has all its walls along the axes, the rest have walls in any direction.
 * Joists are even or a little askew. Lengths are whole mm or tenths.
 */
export function polygonRoom(seed: number): PolygonRoom {
  const draw = drawFrom(seed);
  const rectilinear = seed % 2 === 0;
  const outline = rectilinear ? notched(draw) : bent(draw, notched(draw));
  const direction = draw(0, 1) === 0 ? 'x' : 'y';
  const openings: Opening[] = [];
  for (let k = draw(0, 2); k > 0; k--) openings.push(...openingIn(draw, outline, rectilinear, openings));
  const askew = !rectilinear && draw(0, 2) === 0 ? draw(-40, 40) : 0;
  const first = draw(30, 380);
  const spacing = [350, 400, 450, 600][draw(0, 3)];
  const [near, far] = reach(outline, direction === 'y' ? 'x' : 'y');
  const [low, high] = reach(outline, direction);
  const joists = Array.from({ length: 60 }, (_, k): Joist => {
    const at = near + first + k * spacing;
    const [start, end] = [low, high].map((v, i) => {
      const u = at + (i === 0 ? 0 : Math.round((askew * k) / 10));
      return direction === 'y' ? { x: u, y: v } : { x: v, y: u };
    });
    return { id: `J${k + 1}`, start, end, width: 50, sd: 0, presence: 1, known: 'given' };
  }).filter(({ start }) => (direction === 'y' ? start.x : start.y) < far);
  const board = { thickness: 12.5, massPerArea: 8.4, edge: 'square' as const };
  return {
    rectilinear,
    room: { outline, openings },
    joists,
    boards: [{ ...board, id: 'long', length: draw(0, 1) === 0 ? 2400 : 3000, width: draw(0, 3) === 0 ? 900 : 1200 }],
  };
}

function reach(outline: readonly Point[], axis: 'x' | 'y'): readonly [number, number] {
  const all = outline.map((point) => point[axis]);
  return [Math.min(...all), Math.max(...all)];
}

/** A rectangle whose walls step in and out again up to six times. */
function notched(draw: Draw): Point[] {
  const [width, depth] = [draw(1800, 6000), draw(1500, 5000)];
  let outline: Point[] = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: depth },
    { x: 0, y: depth },
  ];
  for (let k = draw(0, 6); k > 0; k--) {
    const edge = draw(0, outline.length - 1);
    const [a, b] = [outline[edge], outline[(edge + 1) % outline.length]];
    const length = Math.abs(b.x - a.x) + Math.abs(b.y - a.y);
    if (length < 900) continue;
    const from = draw(1, 4) === 1 ? 0 : draw(200, length - 600);
    const to = Math.min(length, from + draw(300, 1800));
    const inwards = draw(-600, 1200);
    const [dx, dy] = [Math.sign(b.x - a.x), Math.sign(b.y - a.y)];
    const step = (along: number, across: number): Point => ({
      x: a.x + dx * along - dy * across,
      y: a.y + dy * along + dx * across,
    });
    const next = [
      ...outline.slice(0, edge + 1),
      step(from, 0),
      step(from, inwards),
      step(to, inwards),
      step(to, 0),
      ...outline.slice(edge + 1),
    ];
    const distinct = withoutStraight(next);
    if (inwards !== 0 && isSimple(distinct)) outline = distinct;
  }
  return outline;
}

/** The same with every corner moved, and corners added in the walls. */
function bent(draw: Draw, outline: readonly Point[]): Point[] {
  const more = outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length];
    const t = draw(1, 9) / 10;
    return draw(0, 2) === 0 ? [a, { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }] : [a];
  });
  for (const most of [700, 200, 40, 5]) {
    const moved = more.map(({ x, y }) => ({
      x: tenth(x + draw(-most * 10, most * 10) / 10),
      y: tenth(y + draw(-most * 10, most * 10) / 10),
    }));
    if (isSimple(moved)) return moved;
  }
  return [...outline];
}

const tenth = (mm: number): number => Math.round(mm * 10) / 10;

/** An opening within the outline, perhaps against a wall, and apart from the others; or none. */
function openingIn(draw: Draw, outline: readonly Point[], rectilinear: boolean, others: readonly Opening[]): Opening[] {
  const [left, right] = reach(outline, 'x');
  const [low, high] = reach(outline, 'y');
  const [x, y] = [draw(Math.ceil(left), Math.floor(right)), draw(Math.ceil(low), Math.floor(high))];
  const [width, depth] = [draw(60, 900), draw(60, 900)];
  const box = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + depth },
    { x, y: y + depth },
  ];
  const slanted = box.map((corner, i) => ({ x: corner.x + (i % 2) * draw(1, 200), y: corner.y + (i > 1 ? draw(0, 150) : 0) }));
  const its = rectilinear ? box : slanted;
  const isApart = others.every((other) => {
    const ring = 'outline' in other ? other.outline : [];
    const [a, b, c, d] = [...reach(ring, 'x'), ...reach(ring, 'y')];
    const [p, q, r, t] = [...reach(its, 'x'), ...reach(its, 'y')];
    return q < a || b < p || t < c || d < r;
  });
  const isIn = its.every((corner) => isInside(outline, corner)) && !its.some((a, i) => crosses(outline, a, its[(i + 1) % 4]));
  return isApart && isIn && isSimple(its) ? [{ id: `O${others.length + 1}`, kind: 'other', outline: its }] : [];
}

const cross = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function withoutStraight(ring: readonly Point[]): Point[] {
  const distinct = ring.filter((at, i) => {
    const before = ring[(i + ring.length - 1) % ring.length];
    return at.x !== before.x || at.y !== before.y;
  });
  return distinct.filter(
    (at, i) => cross(distinct[(i + distinct.length - 1) % distinct.length], at, distinct[(i + 1) % distinct.length]) !== 0,
  );
}

const meets = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const [p, q, r, s] = [cross(a, b, c), cross(a, b, d), cross(c, d, a), cross(c, d, b)].map(Math.sign);
  if (p * q < 0 && r * s < 0) return true;
  const on = (m: Point, n: Point, o: Point): boolean =>
    Math.min(m.x, n.x) <= o.x && o.x <= Math.max(m.x, n.x) && Math.min(m.y, n.y) <= o.y && o.y <= Math.max(m.y, n.y);
  return (p === 0 && on(a, b, c)) || (q === 0 && on(a, b, d)) || (r === 0 && on(c, d, a)) || (s === 0 && on(c, d, b));
};

function isSimple(ring: readonly Point[]): boolean {
  const count = ring.length;
  for (let i = 0; i < count; i++) {
    for (let k = i + 2; k < count; k++) {
      if (i === 0 && k === count - 1) continue;
      if (meets(ring[i], ring[i + 1], ring[k], ring[(k + 1) % count])) return false;
    }
  }
  return count > 2;
}

const crosses = (outline: readonly Point[], a: Point, b: Point): boolean =>
  outline.some((c, i) => {
    const d = outline[(i + 1) % outline.length];
    return cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0;
  });

function isInside(outline: readonly Point[], { x, y }: Point): boolean {
  return outline.reduce((inside, a, i) => {
    const b = outline[(i + 1) % outline.length];
    return a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y) ? !inside : inside;
  }, false);
}
