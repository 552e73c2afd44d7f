import { isInputError, outlineFromSides } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const taped = (sides: number[], ...diagonals: number[]) => outlineFromSides({ sides, diagonals });

function problemsOf(call: () => unknown) {
  try {
    call();
  } catch (error) {
    if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
  return [];
}

describe('a room of four walls as taped', () => {
  it('3, 4 and 5 are a right angle', () => {
    expect(taped([4000, 3000, 4000, 3000], 5000, 5000)).toEqual({
      outline: [
        { x: 0, y: 0 },
        { x: 4000, y: 0 },
        { x: 4000, y: 3000 },
        { x: 0, y: 3000 },
      ],
      closingError: 0,
      checked: true,
      outOfSquare: 0,
    });
  });

  it('a parallelogram with diagonals of 5120 and 5203 is 51 mm out over 3000, and closes to half a millimetre', () => {
    const { outline, outOfSquare, closingError } = taped([4200, 3000, 4200, 3000], 5120, 5203);
    expect(Math.round(outOfSquare)).toBe(51);
    expect(closingError).toBeCloseTo(0.5, 1);
    // Opposite walls are parallel: both lean alike.
    expect(outline[3].x).toBeCloseTo(outline[2].x - 4200, 2);
    expect(outline[3].y).toBeCloseTo(outline[2].y, 2);
  });

  it('says the same of a room that leans the other way', () => {
    expect(Math.round(taped([4200, 3000, 4200, 3000], 5203, 5120).outOfSquare)).toBe(51);
    expect(taped([4200, 3000, 4200, 3000], 5203, 5120).outline[2].x).toBeGreaterThan(4200);
  });

  it('is as far out as the wall that strays most, whichever that is', () => {
    // 3, 4 and 5: the second wall is square. The third ends 60 beyond the origin, 3000 up: the fourth is 60 out over 3000.6.
    const fourth = taped([4000, 3000, 4060, 3000.6], 5000);
    expect(fourth.outOfSquare).toBeCloseTo(60, 1);
    expect(fourth.outline[3].x).toBeCloseTo(-60, 1);
    // The third falls by 100 over 4000, to the end of a fourth that is square: the root of 4000 and 100, squared, is 4001.25.
    expect(taped([4000, 3000, 4001.25, 2900], 5000).outOfSquare).toBeCloseTo(100, 0);
    // A second wall that leans in by 80, and nothing else: 3920 and 3000 up, the root of which is 4936.233.
    expect(taped([4000, 3001.066, 3920, 3000], 4936.233).outOfSquare).toBeCloseTo(80, 1);
  });

  it('four different walls and one diagonal give corners with exactly these distances, and nothing checks them', () => {
    const sides = [3900, 2810, 3760, 2950];
    const { outline, closingError, checked } = taped(sides, 4800);
    outline.forEach((a, i) => {
      const b = outline[(i + 1) % 4];
      expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeCloseTo(sides[i], 2);
    });
    expect(Math.hypot(outline[2].x, outline[2].y)).toBeCloseTo(4800, 2);
    expect([closingError, checked]).toEqual([0, false]);
  });

  it('a second diagonal that does not fit is reported, and moves nothing', () => {
    const [one, two] = [taped([4000, 3000, 4000, 3000], 5000), taped([4000, 3000, 4000, 3000], 5000, 5030)];
    expect(two.closingError).toBe(30);
    expect(two.outline).toEqual(one.outline);
  });

  it('walls that cannot reach round their diagonal are refused, each pair by itself', () => {
    expect(problemsOf(() => taped([4000, 3000, 4000, 3000], 7000))).toEqual([
      'sides-not-closing diagonals[0]',
      'sides-not-closing diagonals[0]',
    ]);
    expect(problemsOf(() => taped([4000, 3000, 1500, 3000], 4999))).toEqual(['sides-not-closing diagonals[0]']);
    expect(problemsOf(() => taped([4000, 3000, 4000, 3000], 1000))).toHaveLength(2);
    expect(problemsOf(() => taped([4000, 3000, 4000], 5000))).toEqual(['too-small sides']);
    expect(problemsOf(() => taped([4000, 3000, 4000, 3000]))).toEqual(['too-small diagonals']);
    expect(problemsOf(() => taped([4000, 3000, 4000, 3000], 5000, 5000, 5000))).toEqual(['too-large diagonals']);
    expect(problemsOf(() => taped([4000, -3000, 4000, 3000], 5000))).toEqual(['too-small sides[1]']);
  });
});
