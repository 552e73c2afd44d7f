import { describe, expect, it } from 'vitest';
import { necksOf } from '../../src/boards/necksOf.js';

/** Corners in turn, mm. */
const ring = (...at: readonly (readonly [number, number])[]) => at.map(([u, v]) => ({ u: u * 1000, v: v * 1000 }));
const board = ring([0, 0], [2400, 0], [2400, 1200], [0, 1200]);
const box = (near: number, far: number, low: number, high: number) => ring([near, low], [far, low], [far, high], [near, high]);
const ALL = { under: Number.POSITIVE_INFINITY, rest: 100_000 };
const neck = (outline: Parameters<typeof necksOf>[0], holes: Parameters<typeof necksOf>[1] = []) => {
  const widths = necksOf(outline, holes, ALL).map(({ width }) => width / 1000);
  return widths.length === 0 ? undefined : Math.min(...widths);
};

describe('the neck of a piece', () => {
  it('is what a notch from a long edge leaves', () => {
    const notched = ring([0, 0], [800, 0], [800, 920], [1400, 920], [1400, 0], [2400, 0], [2400, 1200], [0, 1200]);
    expect(neck(notched)).toBe(280);
    expect(neck([...notched].reverse())).toBe(280);
  });

  it('is beside a hole the wider side, which holds the piece', () => {
    expect(neck(board, [box(800, 1400, 300, 1000)])).toBe(300);
    expect(neck(board, [box(800, 1400, 200, 1000)])).toBe(200);
  });

  it('is the narrowest where there are several', () => {
    expect(neck(board, [box(300, 600, 200, 1000), box(900, 1500, 100, 1050)])).toBe(150);
  });

  it('is between slanting sides where they come nearest', () => {
    expect(neck(board, [ring([1200, 300], [1700, 700], [1200, 1100], [700, 700])])).toBe(300);
  });

  it('is none in a plain piece, a tapered one, a scribed one, or one with a corner cut out', () => {
    expect(neck(board)).toBeUndefined();
    expect(neck(ring([0, 0], [2400, 0], [2400, 30], [0, 1200]))).toBeUndefined();
    expect(neck(ring([0, 0], [1200, 0], [2400, 400], [1200, 600]))).toBeUndefined();
    expect(neck(ring([0, 0], [1200, 18], [2400, 0], [2400, 300], [0, 300]))).toBeUndefined();
    expect(neck(ring([0, 0], [2400, 0], [2400, 200], [900, 200], [900, 1200], [0, 1200]))).toBeUndefined();
  });

  it('reaches from one side of the opening to the other', () => {
    const [found, ...others] = necksOf(board, [box(800, 1400, 200, 1000)], { ...ALL, under: 300_000 });
    expect(found).toEqual({ width: 200_000, from: 800_000, to: 1_400_000 });
    expect(others).toEqual([]);
    expect(necksOf(board, [box(800, 1400, 200, 1000)], { ...ALL, under: 200_000 })).toEqual([]);
  });

  it('reaches between slanting sides as far as it is narrow', () => {
    // From 1200 at 700 down to 300 at 1200: 480 are left where four fifths of the way are gone.
    const [found] = necksOf(ring([0, 0], [700, 0], [1200, 900], [1700, 0], [2400, 0], [2400, 1200], [0, 1200]), [], {
      ...ALL,
      under: 480_000,
    });
    expect(found).toEqual({ width: 300_000, from: 1_100_000, to: 1_300_000 });
  });

  it('is none beside a lip that rests on the timber beside the opening', () => {
    const withLip = (lip: number) =>
      ring([0, 0], [lip, 0], [lip, 1000], [lip + 600, 1000], [lip + 600, 0], [2400, 0], [2400, 1200], [0, 1200]);
    expect(neck(withLip(100))).toBeUndefined();
    expect(neck(withLip(101))).toBe(200);
    expect(necksOf(withLip(101), [], { ...ALL, rest: 101_000 })).toEqual([]);
  });

  it('is none where a tongue reaches the end of the piece', () => {
    expect(neck(ring([0, 0], [1800, 0], [1800, 1000], [2400, 1000], [2400, 1200], [0, 1200]))).toBeUndefined();
  });
});
