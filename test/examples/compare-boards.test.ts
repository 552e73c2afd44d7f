import { type BoardStock, compareBoards, type Job, placeBoards, planCeiling, rectangle, tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { stock as size } from '../generators/scenario.js';

const job: Job = {
  room: { outline: rectangle(3600, 2390) },
  joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
  lining: [{ kind: 'plasterboard', thickness: 9.5 }],
  boards: [size(2400, 1200)],
};

const served = (given: Job, stocks?: readonly BoardStock[]) =>
  compareBoards(given, stocks).alternatives.flatMap((each) => (each.ok ? [each] : []));

describe('boards compared for one ceiling', () => {
  it('tell what each size costs, as a plan with it would', () => {
    const stocks = [size(2400, 1200, { price: 10 }), size(1800, 900, { price: 6 })];
    for (const stock of stocks) {
      const one = served(job, stocks).find(({ boards }) => boards.length === 1 && boards[0] === stock.id);
      const { layout, fixings } = planCeiling({ ...job, boards: [stock] });
      const { boardsBought, boardsByStock, endJoints, cuts, cost, jointLength, wasteAreaM2, bound, proven } = layout;
      expect(one).toMatchObject({ boardsBought, boardsByStock, endJoints, cuts, cost, jointLength, wasteAreaM2, bound, proven });
      expect(one).toMatchObject({
        pieces: layout.pieces.length,
        screws: fixings.count,
        heaviestKg: Math.max(...layout.pieces.map(({ massKg }) => massKg)),
      });
    }
  });

  it('come in the order of the preference: fewest joints, or least money', () => {
    const stocks = [size(2400, 1200, { price: 10 }), size(3600, 1200, { price: 40 })];
    const order = (prefer: Job['prefer']) => served({ ...job, prefer }, stocks).map(({ boards }) => boards.join(' and '));
    expect(order('joints')[0]).toBe('3600 x 1200');
    expect(order('cost')[0]).toBe('2400 x 1200');
    const costs = served({ ...job, prefer: 'cost' }, stocks).map(({ cost = 0 }) => cost);
    expect(costs).toEqual([...costs].sort((one, other) => one - other));
  });

  it('show a mix where it is better than what it is made of', () => {
    // Wall to wall 3590, rows of 1200 and 590: a board and a strip make 50, two boards 60, three strips 60.
    const room = { outline: rectangle(3600, 1800) };
    const stocks = [size(3600, 1200, { price: 30 }), size(3600, 600, { id: 'strip', price: 20 })];
    const [first] = served({ ...job, room, prefer: 'cost' }, stocks);
    expect(first).toMatchObject({ boards: ['3600 x 1200', 'strip'], boardsBought: 2, cost: 50, endJoints: 0 });
    expect(placeBoards({ room, joists: job.joists, boards: [stocks[0]] }).cost).toBe(60);
  });

  it('leave out a mix of which only one size is laid', () => {
    const stocks = [size(2400, 1200), size(2400, 600)];
    for (const { boards, boardsByStock } of served(job, stocks))
      expect(boardsByStock.map(({ stock }) => stock).sort()).toEqual([...boards].sort());
  });

  it('put last what does not serve, with the reason and with what would do', () => {
    const stocks = [size(600, 600), size(2400, 1200)];
    const { alternatives } = compareBoards(job, stocks);
    const last = alternatives[alternatives.length - 1];
    if (last.ok) throw new Error('boards of 600 serve');
    expect(last.boards).toEqual(['600 x 600']);
    expect(last.words).toContain('No layout of these boards (600 x 600)');
    const attempt = tryPlaceBoards({ room: job.room, joists: job.joists, boards: [stocks[0]], prefer: 'tradesperson' });
    if (attempt.ok || attempt.reason !== 'infeasible') throw new Error('boards of 600 can be laid');
    expect(last.relaxations).toEqual(attempt.relaxations);
  });

  it('of different thickness are no mix, and those too thin for the joists come after those that are not', () => {
    const wide: Job = { ...job, joists: { direction: 'y', first: 25, spacing: 600, last: 3575, width: 50 } };
    const found = served(wide, [
      size(3600, 1200, { thickness: 9.5, id: 'thin' }),
      size(2400, 1200, { thickness: 15, id: 'thick' }),
    ]);
    expect(found.map(({ boards }) => boards)).toEqual([['thick'], ['thin']]);
    expect(found[0].findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(found[1].findings[0]).toMatchObject({ code: 'support-centres-exceeded', severity: 'error' });
  });

  it('are those of the job when no others are given', () => {
    expect(served(job).map(({ boards }) => boards)).toEqual([['2400 x 1200']]);
  });

  it('are refused when only some have a price, or two have one id', () => {
    expect(() => compareBoards(job, [size(2400, 1200, { price: 1 }), size(3000, 1200)])).toThrow(
      'a price for every board or for none',
    );
    expect(() => compareBoards(job, [size(2400, 1200), size(2400, 1200)])).toThrow('boards with different ids');
    expect(() => compareBoards(job, [])).toThrow('stocks: expected at least 1 in the list');
  });
});

describe('common practice, no source: a third-floor flat with a narrow stair', () => {
  it('shows small boards that one person can carry beside large ones with fewer joints and screws', () => {
    const found = served(job, [size(2400, 1200), size(1800, 900)]).filter(({ boards }) => boards.length === 1);
    const [large, small] = ['2400 x 1200', '1800 x 900'].map((id) => found.find(({ boards }) => boards[0] === id));
    if (large === undefined || small === undefined) throw new Error('one of them is not shown');
    expect(small.heaviestKg).toBeLessThan(large.heaviestKg);
    expect(small.endJoints).toBeGreaterThan(large.endJoints);
    expect(small.jointLength).toBeGreaterThan(large.jointLength);
    expect(small.screws).toBeGreaterThan(large.screws);
  });
});
