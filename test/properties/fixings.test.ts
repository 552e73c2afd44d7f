import { fc, test } from '@fast-check/vitest';
import { type FixingPosition, fixingLength, fixingsPerLine, type Piece, placeFixings, ruleSets, withRules } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyHandLaidRows } from '../generators/handLaidRows.js';

const runs = (numRuns: number) => ({ seed: 20_261_125, numRuns });

/** Thousandths of a mm, so that comparing is exact. */
const exact = (mm: number): number => Math.round(mm * 1000);

const boundsOf = ({ outline }: Piece) => {
  const [xs, ys] = [outline.map(({ x }) => exact(x)), outline.map(({ y }) => exact(y))];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
};

/** Places along each joist under each piece, in order. */
function linesOf(positions: readonly FixingPosition[]): Map<string, number[]> {
  const lines = new Map<string, number[]>();
  for (const { piece, joist, y } of positions) {
    const key = `${piece} on ${joist}`;
    lines.set(
      key,
      [...(lines.get(key) ?? []), exact(y)].sort((a, b) => a - b),
    );
  }
  return lines;
}

const spacedAt = (spacing: number) =>
  withRules(ruleSets.uk, { 'fixing.field': spacing, 'fixing.boardEnd': spacing, 'fixing.perimeter': spacing });

describe('screws of rows laid by hand', { timeout: 60_000 }, () => {
  test.prop([anyHandLaidRows], runs(150))('no gap exceeds the rule of its line, and no line is left out', (laid) => {
    const { positions, lines, findings } = placeFixings(laid);
    expect(findings.filter(({ code }) => code === 'fixing-gap')).toEqual([]);
    const placed = linesOf(positions);
    for (const piece of laid.layout.pieces) {
      const { left, right, low, high } = boundsOf(piece);
      const over = laid.joists.filter(({ id, start }) => {
        const at = exact(start.x);
        return (left < at && at < right) || piece.ends.some(({ joist }) => joist === id);
      });
      for (const { id } of over) {
        const kind = lines.find((line) => line.piece === piece.id && line.joist === id)?.kind;
        const most = exact(kind === 'field' ? 230 : 150);
        const marks = placed.get(`${piece.id} on ${id}`) ?? [];
        expect(marks.length).toBeGreaterThanOrEqual(2);
        expect(marks[0] - low).toBeLessThanOrEqual(exact(25));
        expect(high - marks[marks.length - 1]).toBeLessThanOrEqual(exact(25));
        for (let i = 1; i < marks.length; i++) expect(marks[i] - marks[i - 1]).toBeLessThanOrEqual(most);
      }
    }
  });

  test.prop([anyHandLaidRows], runs(150))('every screw is in its board and in its timber by the edge distances', (laid) => {
    const { positions, findings } = placeFixings(laid);
    expect(findings.filter(({ code }) => code === 'fixing-edge' || code === 'fixing-off-timber')).toEqual([]);
    const pieces = new Map(laid.layout.pieces.map((piece) => [piece.id, piece]));
    const joists = new Map(laid.joists.map((joist) => [joist.id, joist]));
    for (const { x, y, piece: pieceId, joist: joistId } of positions) {
      const [piece, joist] = [pieces.get(pieceId), joists.get(joistId)];
      if (piece === undefined || joist === undefined) throw new Error(`${pieceId} or ${joistId} is not there`);
      const { left, right, low, high } = boundsOf(piece);
      const inside = (edge: 'bound' | 'cut'): number => exact(edge === 'bound' ? 10 : 13);
      expect(exact(y) - low).toBeGreaterThanOrEqual(inside(piece.edges.low));
      expect(high - exact(y)).toBeGreaterThanOrEqual(inside(piece.edges.high));
      expect(exact(x) - left).toBeGreaterThanOrEqual(exact(13));
      expect(right - exact(x)).toBeGreaterThanOrEqual(exact(13));
      expect(Math.abs(exact(x) - exact(joist.start.x))).toBeLessThanOrEqual(exact(joist.width / 2 - 6));
    }
  });

  const spacing = fc.integer({ min: 60, max: 400 });
  test.prop([anyHandLaidRows, spacing, spacing, fc.option(fc.integer({ min: 20, max: 200 }))], runs(150))(
    'the count never falls when the spacing shrinks, beside a zone without screws or not',
    (laid, a, b, diameter) => {
      const centre = laid.layout.pieces[0].outline[2];
      const noFix = diameter === null ? [] : [{ centre: { x: laid.joists[1].start.x, y: centre.y / 2 }, diameter }];
      const count = (each: number): number => placeFixings({ ...laid, noFix, rules: spacedAt(each) }).count;
      expect(count(Math.min(a, b))).toBeGreaterThanOrEqual(count(Math.max(a, b)));
    },
  );
});

describe('fixings on one line', () => {
  const line = fc.record({
    width: fc.integer({ min: 50, max: 3000 }),
    edgeDistance: fc.integer({ min: 0, max: 25 }),
    a: fc.integer({ min: 10, max: 400 }),
    b: fc.integer({ min: 10, max: 400 }),
  });
  test.prop([line], runs(500))('never fewer for a smaller spacing, never further apart than it, never one too many', (given) => {
    const { width, edgeDistance, a, b } = given;
    const at = (spacing: number) => fixingsPerLine({ width, spacing, edgeDistance });
    const [small, large] = [Math.min(a, b), Math.max(a, b)];
    expect(at(small).count).toBeGreaterThanOrEqual(at(large).count);
    const { count, pitch } = at(small);
    expect(exact(pitch)).toBeLessThanOrEqual(exact(small));
    const between = width - 2 * edgeDistance;
    if (between > 0) expect((count - 2) * small).toBeLessThan(between);
  });
});

/** An over-boarded ceiling: a lining at least as thick as the thinnest board. Tenths of a mm. */
const tenths = (least: number, greatest: number) => fc.integer({ min: least * 10, max: greatest * 10 }).map((x) => x / 10);
const stack = fc.record({
  thicknesses: fc.array(fc.constantFrom<number>(9.5, 12.5, 15), { minLength: 1, maxLength: 2 }),
  lining: fc.array(tenths(9.5, 15), { minLength: 1, maxLength: 2 }),
  packing: tenths(0, 8),
  serviceDepth: fc.option(tenths(32, 60), { nil: undefined }),
  joistDepth: fc.option(fc.integer({ min: 60, max: 220 }), { nil: undefined }),
  lengthTolerance: fc.constantFrom(0, 1, 1.5),
});
type Stack = typeof stack extends fc.Arbitrary<infer Each> ? Each : never;
const given = ({ serviceDepth, joistDepth, ...rest }: Stack) => ({
  ...rest,
  ...(serviceDepth !== undefined && { serviceDepth }),
  ...(joistDepth !== undefined && { joistDepth }),
});

describe('length of screws', { timeout: 60_000 }, () => {
  const anyStock = fc.uniqueArray(fc.integer({ min: 20, max: 140 }), { minLength: 1, maxLength: 14 });
  test.prop([stack, anyStock, tenths(5, 45), tenths(5, 45)], runs(500))(
    'a longer embedment never gives a shorter screw, whatever the stock',
    (ceiling, stock, a, b) => {
      const into = (embedment: number) => fixingLength({ ...given(ceiling), stock, rules: { 'fixing.embedment': embedment } });
      const [shallow, deep] = [into(Math.min(a, b)), into(Math.max(a, b))];
      expect(deep.minimum).toBeGreaterThanOrEqual(shallow.minimum);
      expect(deep.preferred).toBeGreaterThanOrEqual(shallow.preferred);
      // Where nothing serves the lesser embedment, nothing serves the greater.
      if (shallow.recommended === null) expect(deep.recommended).toBeNull();
      else if (deep.recommended !== null) expect(deep.recommended).toBeGreaterThanOrEqual(shallow.recommended);
    },
  );

  /** The stack with one of its layers thicker: a board, a layer of the old ceiling, or the packing. */
  const thickened = (ceiling: Stack, which: number, more: number): Stack => {
    const { thicknesses, lining } = ceiling;
    const place = which % (thicknesses.length + lining.length + 1);
    const thicker = (lengths: readonly number[], from: number) =>
      lengths.map((each, i) => (i + from === place ? each + more : each));
    const [packing] = thicker([ceiling.packing], thicknesses.length + lining.length);
    return { ...ceiling, thicknesses: thicker(thicknesses, 0), lining: thicker(lining, thicknesses.length), packing };
  };

  test.prop([stack, tenths(0, 6), fc.nat()], runs(500))(
    'thickening any layer moves every limit by as much, and with the usual lengths never gives a shorter screw',
    (ceiling, more, which) => {
      const [before, after] = [ceiling, thickened(ceiling, which, more)].map((each) => fixingLength(given(each)));
      expect(exact(after.minimum) - exact(before.minimum)).toBe(exact(more));
      expect(exact(after.preferred) - exact(before.preferred)).toBe(exact(more));
      // Where no length keeps clear of a hole that may be there, the limit that counts is the next one.
      if (ceiling.joistDepth === undefined) expect(exact(after.maximum) - exact(before.maximum)).toBe(exact(more));
      if (before.recommended === null || after.recommended === null) return;
      expect(after.recommended).toBeGreaterThanOrEqual(before.recommended);
    },
  );

  test.prop([stack, tenths(0, 6), tenths(0, 6)], runs(300))(
    'a reading that may be further out never gives a shorter screw',
    (ceiling, a, b) => {
      const of = (tolerance: number) =>
        fixingLength({
          ...given(ceiling),
          lining: ceiling.lining.map((thickness) => ({ kind: 'lath-and-plaster' as const, thickness, tolerance })),
        });
      const [sure, unsure] = [of(Math.min(a, b)), of(Math.max(a, b))];
      expect(unsure.minimum).toBeGreaterThanOrEqual(sure.minimum);
      expect(unsure.maximum).toBeLessThanOrEqual(sure.maximum + (ceiling.joistDepth === undefined ? 0 : 100));
      if (sure.recommended === null || unsure.recommended === null) return;
      expect(unsure.recommended).toBeGreaterThanOrEqual(sure.recommended);
    },
  );

  test.prop([stack, tenths(0, 6), fc.nat(), anyStock], runs(1000))(
    'whatever the stock: a thicker layer gives a shorter screw only where the preferred embedment is lost, and by less than it is above the least',
    (ceiling, more, which, stock) => {
      const [before, after] = [ceiling, thickened(ceiling, which, more)].map((each) => fixingLength({ ...given(each), stock }));
      if (before.recommended === null || after.recommended === null || after.recommended >= before.recommended) return;
      expect(before.recommended).toBeGreaterThanOrEqual(before.preferred);
      expect(after.recommended).toBeLessThan(after.preferred);
      expect(exact(before.recommended) - exact(after.recommended)).toBeLessThan(exact(before.preferred) - exact(before.minimum));
      expect(after.findings.map(({ code }) => code)).toContain('embedment-below-preferred');
    },
  );

  test.prop([stack], runs(300))('what is recommended holds, and stays below its upper limit', (ceiling) => {
    const { minimum, maximum, recommended, embedment } = fixingLength(given(ceiling));
    if (recommended === null) return;
    expect(exact(recommended)).toBeGreaterThanOrEqual(exact(minimum));
    expect(exact(recommended)).toBeLessThanOrEqual(exact(maximum));
    const through = [...ceiling.thicknesses, ...ceiling.lining, ceiling.packing].reduce((sum, each) => sum + exact(each), 0);
    expect(exact(embedment ?? 0)).toBe(exact(recommended) - through - exact(ceiling.lengthTolerance));
    // The longest that the screw may be stays below where cables may run.
    const deepest = exact(recommended) + exact(ceiling.lengthTolerance) - through;
    expect(deepest).toBeLessThanOrEqual(Math.min(exact(45), exact((ceiling.serviceDepth ?? Infinity) - 5)));
  });
});
