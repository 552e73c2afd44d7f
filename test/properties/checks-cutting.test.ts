import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { type Blank, cuttable, type Placed, separable } from '../../src/checks/cuttable.js';

const SEED = 20_261_125;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

/** Every way of cutting a small board at whole steps, no matter how slow: what {@link cuttable} is held against. */
function cutByTrying(blanks: readonly Blank[], length: number, width: number, kerf: number): boolean {
  const known = new Map<string, boolean>();
  const gives = (set: number, l: number, w: number): boolean => {
    const key = `${set} ${l} ${w}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const only = blanks.find((_, i) => set === 1 << i);
    const found =
      set === 0 ||
      (only !== undefined && only.length <= l && only.width <= w) ||
      partsOf(set).some((part) => cut(part, set ^ part, l, w));
    known.set(key, found);
    return found;
  };
  const cut = (part: number, other: number, l: number, w: number): boolean =>
    steps(l - kerf).some((at) => gives(part, at, w) && gives(other, l - at - kerf, w)) ||
    steps(w - kerf).some((at) => gives(part, l, at) && gives(other, l, w - at - kerf));
  return gives((1 << blanks.length) - 1, length, width);
}

/** Parts of a set, neither all of it nor nothing. */
const partsOf = (set: number): number[] => steps(set).filter((part) => (part & set) === part);

const steps = (below: number): number[] => Array.from({ length: Math.max(0, below - 1) }, (_, i) => i + 1);

const blank = (length: number, width: number) =>
  fc.record({ length: fc.integer({ min: 1, max: length }), width: fc.integer({ min: 1, max: width }) });

/** Pieces that come from really cutting a board. */
interface CutUp {
  readonly placed: readonly Placed[];
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
}

const cutUp: fc.Arbitrary<CutUp> = fc
  .record({
    length: fc.integer({ min: 300, max: 3000 }),
    width: fc.integer({ min: 300, max: 1200 }),
    kerf: fc.constantFrom(0, 3, 5),
    shares: fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 5, maxLength: 5 }),
    ways: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
  })
  .map(({ length, width, kerf, shares, ways }) => {
    let placed: Placed[] = [{ along: 0, across: 0, length, width }];
    shares.forEach((share, i) => {
      const [first, ...rest] = placed;
      const size = ways[i] ? first.length : first.width;
      const at = Math.floor((size * share) / 100);
      if (at < 1 || at + kerf >= size) placed = [...rest, first];
      else if (ways[i]) {
        const beyond = { ...first, along: first.along + at + kerf, length: first.length - at - kerf };
        placed = [...rest, { ...first, length: at }, beyond];
      } else {
        const beyond = { ...first, across: first.across + at + kerf, width: first.width - at - kerf };
        placed = [...rest, { ...first, width: at }, beyond];
      }
    });
    return { placed, length, width, kerf };
  });

describe('whether a board gives its pieces', () => {
  test.prop([fc.array(blank(8, 5), { minLength: 1, maxLength: 5 }), fc.constantFrom(0, 0, 1)], runs(300))(
    'is decided as by trying every cut',
    (blanks, kerf) => {
      expect(cuttable(blanks, { length: 8, width: 5, kerf })).toBe(cutByTrying(blanks, 8, 5, kerf) ? 'yes' : 'no');
    },
  );

  test.prop([cutUp], runs(300))('is yes for what was cut from it', ({ placed, ...sheet }) => {
    expect(separable(placed, sheet.kerf)).toBe(true);
    expect(cuttable(placed, sheet)).toBe('yes');
  });

  test.prop([cutUp], runs(300))(
    'is no for one step more than was cut from it, where nothing was left',
    ({ placed, ...sheet }) => {
      // Without a kerf the pieces are the whole board.
      fc.pre(sheet.kerf === 0);
      const [first, ...rest] = placed;
      expect(cuttable([{ ...first, length: first.length + 1 }, ...rest], sheet)).toBe('no');
    },
  );

  it('is told apart by the saw: four strips of 300 from 1200 without a kerf, three with one', () => {
    const strips = Array.from({ length: 4 }, () => ({ length: 2400, width: 300 }));
    expect(cuttable(strips, { length: 2400, width: 1200, kerf: 0 })).toBe('yes');
    expect(cuttable(strips, { length: 2400, width: 1200, kerf: 3 })).toBe('no');
    expect(cuttable(strips.slice(1), { length: 2400, width: 1200, kerf: 3 })).toBe('yes');
  });

  it('gives the last piece of a board without a cut', () => {
    const halves = [
      { length: 1198.5, width: 1200 },
      { length: 1198.5, width: 1200 },
    ];
    expect(cuttable(halves, { length: 2400, width: 1200, kerf: 3 })).toBe('yes');
    expect(cuttable(halves, { length: 2400, width: 1200, kerf: 3.5 })).toBe('no');
  });

  it('is left undecided, not guessed, when there are too many pieces of several widths', () => {
    // Twenty-two pieces of 400 to 421 by 183 to 225, four to a strip: six strips of the narrowest are enough, five of the widest not.
    const many = Array.from({ length: 22 }, (_, i) => ({ length: 400 + i, width: 183 + 2 * i }));
    expect(cuttable(many, { length: 1750, width: 1200, kerf: 0 })).toBe('unknown');
  });
});
