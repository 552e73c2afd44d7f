import { describe, expect, it } from 'vitest';
import { neckOf } from '../../src/boards/neckOf.js';

/** Corners in turn, mm. */
const ring = (...at: readonly (readonly [number, number])[]) => at.map(([u, v]) => ({ u: u * 1000, v: v * 1000 }));
const board = ring([0, 0], [2400, 0], [2400, 1200], [0, 1200]);
const box = (near: number, far: number, low: number, high: number) => ring([near, low], [far, low], [far, high], [near, high]);
const neck = (...of: Parameters<typeof neckOf>) => {
  const found = neckOf(...of);
  return found === undefined ? undefined : found / 1000;
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

  it('is none where a tongue reaches the end of the piece', () => {
    expect(neck(ring([0, 0], [1800, 0], [1800, 1000], [2400, 1000], [2400, 1200], [0, 1200]))).toBeUndefined();
  });
});
