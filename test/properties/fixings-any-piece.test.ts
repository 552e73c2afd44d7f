import { test } from '@fast-check/vitest';
import { checkFixings, type FixingPosition, type Joist, type Point, placeFixings } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyCutPiece, type CutPiece } from '../generators/anyCutPiece.js';

const runs = (numRuns: number) => ({ seed: 20_261_126, numRuns });

/** Half a thousandth each way: places are moved to whole thousandths. */
const ROUNDING = 0.002;

const fix = ({ room, piece, joists }: CutPiece) => placeFixings({ room, layout: { pieces: [piece] }, joists });

function toSide({ x, y }: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const share = Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
}

const sidesOf = (ring: readonly Point[]): (readonly [Point, Point])[] => ring.map((a, i) => [a, ring[(i + 1) % ring.length]]);

function isInside({ x, y }: Point, rings: readonly (readonly Point[])[]): boolean {
  const crossed = rings.flatMap(sidesOf).filter(([a, b]) => {
    if (a.y > y === b.y > y) return false;
    return a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y) > x;
  });
  return crossed.length % 2 === 1;
}

/** How much further from the sides of the piece a place is than it must be, mm: 10 at the bound low edge, 13 elsewhere. */
function spare(at: Point, { piece, direction }: CutPiece): number {
  const rings = [piece.outline, ...(piece.holes ?? [])];
  if (!isInside(at, rings)) return -Infinity;
  const across = (point: Point): number => (direction === 'y' ? point.y : point.x);
  return Math.min(...rings.flatMap(sidesOf).map(([a, b]) => toSide(at, a, b) - (across(a) === 0 && across(b) === 0 ? 10 : 13)));
}

/** How far a place is from the nearest of the sides that run across the row. */
const fromEnds = (at: Point, { piece: { outline }, direction }: CutPiece): number => {
  const [u, v] = direction === 'y' ? (['x', 'y'] as const) : (['y', 'x'] as const);
  const us = outline.map((point) => point[u]);
  const extremes = [Math.min(...us), Math.max(...us)];
  const atEnds = sidesOf(outline).filter(([a, b]) => a[v] !== b[v] && extremes.some((end) => a[u] === end || b[u] === end));
  return Math.min(...atEnds.map(([a, b]) => toSide(at, a, b)));
};

/** How far a place is beside the middle of a joist, straight across, and along it from its start. */
function onJoist({ x, y }: Point, { start, end, kind }: Joist, direction: 'x' | 'y') {
  const alongY = (direction === 'y') !== (kind === 'nogging');
  const turn = (point: Point): Point => (alongY ? point : { x: point.y, y: point.x });
  const [from, to, at] = [turn(start), turn(end), turn({ x, y })];
  const centre = from.x + ((to.x - from.x) * (at.y - from.y)) / (to.y - from.y);
  return { beside: Math.abs(at.x - centre), fromStart: at.y - Math.min(from.y, to.y), fromEnd: Math.max(from.y, to.y) - at.y };
}

const fromLight = ({ x, y }: Point, { room }: CutPiece): number => {
  const [light] = room.openings ?? [];
  return light !== undefined && 'centre' in light
    ? Math.hypot(x - light.centre.x, y - light.centre.y) - light.diameter / 2
    : Infinity;
};

/** Steps along a joist at which a screw could be driven by all the distances, with a little to spare. */
function fixable(
  laid: CutPiece,
  joist: Joist,
): { readonly from: number; readonly to: number; readonly at: (along: number) => Point }[] {
  const alongY = (laid.direction === 'y') !== (joist.kind === 'nogging');
  const turn = (point: Point): Point => (alongY ? point : { x: point.y, y: point.x });
  const [start, end] = [turn(joist.start), turn(joist.end)];
  const centre = (along: number): number => start.x + ((end.x - start.x) * (along - start.y)) / (end.y - start.y);
  const at = (along: number): Point => turn({ x: centre(along), y: along });
  const free = (along: number): boolean => {
    for (let beside = -joist.width / 2 + 7; beside <= joist.width / 2 - 7; beside += 2) {
      const place = turn({ x: centre(along) + beside, y: along });
      if (spare(place, laid) >= 1 && fromLight(place, laid) >= 14) return true;
    }
    return false;
  };
  const stretches: { from: number; to: number; at: (along: number) => Point }[] = [];
  for (let along = Math.ceil(start.y) + 7; along <= end.y - 7; along += 5) {
    if (!free(along)) continue;
    const last = stretches[stretches.length - 1];
    if (last !== undefined && last.to === along - 5) last.to = along;
    else stretches.push({ from: along, to: along, at });
  }
  return stretches;
}

const placesAlong = (screws: readonly FixingPosition[], laid: CutPiece, joist: Joist): number[] => {
  const alongY = (laid.direction === 'y') !== (joist.kind === 'nogging');
  return screws
    .filter((screw) => screw.joist === joist.id)
    .map(({ x, y }) => (alongY ? y : x))
    .sort((a, b) => a - b);
};

describe('screws of a piece of any cut', { timeout: 60_000 }, () => {
  test.prop([anyCutPiece], runs(400))('are in the piece and in the timber, by all their distances', (laid) => {
    const { positions, findings } = fix(laid);
    for (const screw of positions) {
      const joist = laid.joists.find(({ id }) => id === screw.joist) as Joist;
      const { beside, fromStart, fromEnd } = onJoist(screw, joist, laid.direction);
      expect(beside).toBeLessThanOrEqual(joist.width / 2 - 6 + ROUNDING);
      expect(Math.min(fromStart, fromEnd)).toBeGreaterThanOrEqual(6 - ROUNDING);
      expect(fromLight(screw, laid)).toBeGreaterThanOrEqual(13 - ROUNDING);
      // At an end on timber too narrow for both distances the screw stays on the timber, and it is said.
      const told = findings.some(({ code, where }) => code === 'fixing-edge' && where?.joist === screw.joist);
      expect(spare(screw, laid)).toBeGreaterThanOrEqual(told ? -13 : -ROUNDING);
      if (spare(screw, laid) < -ROUNDING) expect(fromEnds(screw, laid)).toBeLessThan(13);
    }
  });

  test.prop([anyCutPiece], runs(100))('leave no stretch of timber out in which one could be driven', (laid) => {
    const { positions, findings } = fix(laid);
    for (const joist of laid.joists) {
      const places = placesAlong(positions, laid, joist);
      for (const { from, to } of fixable(laid, joist)) {
        if (to - from < 60) continue;
        const within = places.filter((place) => place >= from - 15 && place <= to + 15);
        expect(within.length, `${joist.id} from ${from} to ${to}`).toBeGreaterThan(0);
        const told = findings.some(({ code, where }) => code === 'fixing-gap' && where?.joist === joist.id);
        const steps = [from, ...within, to].slice(1).map((place, i, all) => place - (i === 0 ? from : all[i - 1]));
        if (!told)
          expect(Math.max(...steps), `${joist.id} from ${from} to ${to}: ${places.join(' ')}`).toBeLessThanOrEqual(
            230 + ROUNDING,
          );
      }
    }
  });

  test.prop([anyCutPiece], runs(300))('pass the verifier, but for what was told of them', (laid) => {
    const fixings = fix(laid);
    const findings = checkFixings({
      room: laid.room,
      joists: laid.joists,
      layout: { pieces: [laid.piece], boards: [{ id: laid.piece.board, stock: 'any' }] },
      fixings,
    });
    const told = fixings.findings.map(({ code, where }) => `${code} ${where?.joist}`);
    const errors = findings.filter(({ severity }) => severity === 'error');
    expect(errors.filter(({ code, where }) => !told.includes(`${code} ${where?.joist}`))).toEqual([]);
  });

  test.prop([anyCutPiece], runs(200))(
    'are as many as their lines say, and the same in a piece that is listed the other way round',
    (laid) => {
      const { positions, lines, count } = fix(laid);
      expect(lines.reduce((sum, line) => sum + line.count, 0)).toBe(count);
      expect(positions).toHaveLength(count);
      const { outline } = laid.piece;
      const other = { ...laid.piece, outline: [...outline.slice(2), ...outline.slice(0, 2)].reverse() };
      expect(fix({ ...laid, piece: other }).positions).toEqual(positions);
    },
  );
});
