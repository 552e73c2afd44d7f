import { fc } from '@fast-check/vitest';
import type { Point } from 'soffitwright';

/** A room whose walls are square to each other: a strip of bays, each from a lower to an upper wall of its own, mm. */
export const anySquareOutline: fc.Arbitrary<Point[]> = fc
  .array(
    fc.record({
      width: fc.integer({ min: 400, max: 1800 }),
      low: fc.integer({ min: 0, max: 8 }),
      high: fc.integer({ min: 0, max: 8 }),
    }),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  .map((bays) => {
    const lower: Point[] = [];
    const upper: Point[] = [];
    let x = 0;
    for (const { width, low, high } of bays) {
      const [from, to] = [low * 150, 3600 - high * 150];
      lower.push({ x, y: from }, { x: x + width, y: from });
      upper.push({ x, y: to }, { x: x + width, y: to });
      x += width;
    }
    return withoutRepeats([...lower, ...upper.reverse()]);
  });

/** A room whose walls go any way: corners in order round a middle, each at a distance of its own, mm. */
export const anySlantedOutline: fc.Arbitrary<Point[]> = fc
  .array(fc.integer({ min: 700, max: 3000 }), { minLength: 5, maxLength: 12 })
  .map((distances) =>
    distances.map((distance, i) => {
      const angle = (2 * Math.PI * i) / distances.length;
      return { x: Math.round(distance * Math.cos(angle)), y: Math.round(distance * Math.sin(angle)) };
    }),
  );

export const anyOutline: fc.Arbitrary<Point[]> = fc.oneof(anySquareOutline, anySlantedOutline);

const withoutRepeats = (points: readonly Point[]): Point[] =>
  points.filter(({ x, y }, i) => {
    const before = points[(i + points.length - 1) % points.length];
    return before.x !== x || before.y !== y;
  });

/** Where a point is: exact, by whole numbers of any size. Corners in mm; the point in thousandths, or finer by `per`. */
export function whereIs(outline: readonly Point[], x: bigint, y: bigint, per = 1000n): 'inside' | 'border' | 'outside' {
  const at = (mm: number): bigint => (BigInt(Math.round(mm * 1000)) * per) / 1000n;
  let inside = false;
  for (let i = 0; i < outline.length; i++) {
    const [a, b] = [outline[i], outline[(i + 1) % outline.length]].map((point) => ({ x: at(point.x), y: at(point.y) }));
    const side = (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
    const [dot, length] = [
      (x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y),
      (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y),
    ];
    if (side === 0n && dot >= 0n && dot <= length) return 'border';
    if (a.x <= x !== b.x <= x && side > 0n === b.x > a.x) inside = !inside;
  }
  return inside ? 'inside' : 'outside';
}
