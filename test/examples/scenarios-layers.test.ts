import { planCeiling, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { errorsIn, even, GAPS, rowsOf, stock } from '../generators/scenario.js';

describe('two layers of dense board, 2380 by 3594', () => {
  const dense = stock(2400, 1200, { massPerArea: 10.5 });
  const job = {
    room: { outline: rectangle(2380, 3594) },
    joists: even(40, 400, 2340),
    boards: [dense],
    rules: GAPS,
    lining: [
      { kind: 'skim' as const, thickness: 3 },
      { kind: 'plasterboard' as const, thickness: 9.5 },
    ],
    layers: 2 as const,
  };
  const { layers = [], findings } = planCeiling(job);

  it('take six boards in all, without a butt joint, the second begun with half a board so that its long joints are 600 from the first', () => {
    expect(layers.map(({ layout }) => rowsOf(layout))).toEqual([
      [1200, 1200, 1188],
      [1200, 1200, 600, 588],
    ]);
    expect(layers.reduce((sum, { layout }) => sum + layout.boardsBought, 0)).toBe(6);
    expect(layers.reduce((sum, { layout }) => sum + layout.endJoints, 0)).toBe(0);
    const [first, second] = layers.map(({ layout }) => layout.rows.slice(1).map(({ low }) => low));
    const apart = first.flatMap((low) => second.map((other) => Math.abs(low - other)));
    expect(Math.min(...apart)).toBeGreaterThanOrEqual(588);
    const narrow = layers[1].layout.pieces.filter(({ width }) => width < 1200);
    expect(new Set(narrow.map(({ board }) => board)).size).toBe(1);
    for (const { layout } of layers) expect(errorsIn(job, layout)).toEqual([]);
  });

  it('add the mass of both', () => {
    expect(findings.find(({ code }) => code === 'load-unchecked')?.value).toBe(21);
  });
});
