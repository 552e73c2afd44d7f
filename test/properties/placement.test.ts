import { fc, test } from '@fast-check/vitest';
import {
  type BoardStock,
  checkLayout,
  InfeasibleError,
  type Job,
  type PlacementRequest,
  placeBoards,
  rectangle,
  ruleSets,
  tryPlaceBoards,
  tryPlanCeiling,
  withRules,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';

const runs = { seed: 20_261_125, numRuns: 8 };

const size = (length: number, width: number, factor = 1): BoardStock => ({
  id: `${length} x ${width}`,
  length: length * factor,
  width: width * factor,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
  kerf: 0,
  lengthTolerance: 5 * factor,
  widthTolerance: 4 * factor,
});

/** Small rooms, so that many are laid in little time. */
const anyRoom = fc.record({
  width: fc.integer({ min: 1800, max: 4200 }),
  depth: fc.integer({ min: 1500, max: 3200 }),
  first: fc.integer({ min: 30, max: 100 }),
  spacing: fc.constantFrom(400, 450, 600),
});

const requestOf = (
  { width, depth, first, spacing }: { width: number; depth: number; first: number; spacing: number },
  factor = 1,
) => ({
  room: { outline: rectangle(width * factor, depth * factor) },
  joists: {
    direction: 'y' as const,
    first: first * factor,
    spacing: spacing * factor,
    last: (width - 60) * factor,
    width: 50 * factor,
  },
});

const LENGTHS = Object.entries(ruleSets.uk.rules).filter(
  ([, { unit, rows }]) => unit === 'mm' && typeof rows[0].value === 'number',
);

/** The set with every length multiplied; given as plain numbers, so that no range is left. */
const scaled = (factor: number) =>
  withRules(ruleSets.uk, Object.fromEntries(LENGTHS.map(([key, { rows }]) => [key, (rows[0].value as number) * factor])));

describe('placing boards', { timeout: 120_000 }, () => {
  it('finds the four boards of a room that wants five when every row starts from the same wall', () => {
    const { boardsBought, bound, proven } = placeBoards({
      room: { outline: rectangle(3600, 3000) },
      joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
      boards: [size(2400, 1200)],
      prefer: 'boards',
    });
    expect({ boardsBought, bound, proven }).toEqual({ boardsBought: 4, bound: 4, proven: true });
  });

  it('lays a hall of 20 m by 12 m, within one board of the bound', () => {
    const hall = requestOf({ width: 20_000, depth: 12_000, first: 60, spacing: 400 });
    const { boardsBought, bound } = placeBoards({ ...hall, boards: [size(2400, 1200)] });
    expect(boardsBought - bound).toBeLessThanOrEqual(1);
  });

  test.prop([anyRoom], runs)('with every length and length rule doubled gives the same counts', (room) => {
    const counts = (factor: number) => {
      const attempt = tryPlaceBoards({ ...requestOf(room, factor), boards: [size(2400, 1200, factor)], rules: scaled(factor) });
      if (!attempt.ok) return attempt.reason;
      const { boardsBought, endJoints, bound, cuts, pieces } = attempt.value;
      return { boardsBought, endJoints, bound, cuts, pieces: pieces.length };
    };
    expect(counts(2)).toEqual(counts(1));
  });

  test.prop([anyRoom], runs)('an added board size never costs a board where the answer is proven', (room) => {
    const lay = (boards: BoardStock[]) => tryPlaceBoards({ ...requestOf(room), boards });
    const [one, two] = [lay([size(2400, 1200)]), lay([size(2400, 1200), size(3000, 1200)])];
    if (!one.ok || !two.ok || !two.value.proven) return;
    expect(two.value.boardsBought).toBeLessThanOrEqual(one.value.boardsBought);
  });

  test.prop([anyRoom], runs)('no board gives more than itself, and the bound is never passed', (room) => {
    const boards = [size(2400, 1200)];
    const attempt = tryPlaceBoards({ ...requestOf(room), boards });
    if (!attempt.ok) return;
    const { value: layout } = attempt;
    for (const { id } of layout.boards) {
      const pieces = layout.pieces.filter(({ board }) => board === id);
      expect(pieces.reduce((sum, { cutLength, width }) => sum + cutLength * width, 0)).toBeLessThanOrEqual(2400 * 1200 + 1e-6);
    }
    expect(layout.bound).toBeLessThanOrEqual(layout.boardsBought);
    expect(checkLayout({ ...requestOf(room), layout, boards }).filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

describe('a room that no layout can fill', { timeout: 120_000 }, () => {
  it.each<[string, Omit<PlacementRequest, 'boards'>]>([
    ['joists too far apart for the board', { ...requestOf({ width: 3600, depth: 2000, first: 60, spacing: 2600 }) }],
    [
      'a stagger that cannot be kept',
      { ...requestOf({ width: 3600, depth: 3000, first: 60, spacing: 400 }), rules: { 'stagger.minimum': 3000 } },
    ],
  ])('%s: each change that is offered works alone', (_, request) => {
    const boards = [size(2400, 1200)];
    let caught: unknown;
    try {
      placeBoards({ ...request, boards });
    } catch (error) {
      caught = error;
    }
    if (!(caught instanceof InfeasibleError)) throw new Error('a layout was found');
    expect(caught.findings.length).toBeGreaterThan(0);
    expect(caught.relaxations.length).toBeGreaterThan(0);
    for (const { kind, key, value } of caught.relaxations) {
      const rules = kind === 'rule' && key !== undefined ? { ...request.rules, [key]: value } : request.rules;
      const stock = kind === 'board' ? [{ ...boards[0], length: value }] : boards;
      if (kind === 'joist') continue;
      expect(tryPlaceBoards({ ...request, boards: stock, rules: rules as PlacementRequest['rules'] }).ok).toBe(true);
    }
  });
});

describe('a job that cannot be planned', () => {
  const job: Job = {
    ...requestOf({ width: 3600, depth: 3000, first: 60, spacing: 400 }),
    lining: [],
    boards: [size(2400, 1200)],
  };
  const problemsOf = (change: object) => {
    const attempt = tryPlanCeiling({ ...job, ...change } as Job);
    if (attempt.ok || attempt.reason !== 'input') throw new Error('the job was accepted');
    return attempt.problems.map(({ code, path }) => `${code} ${path}`);
  };

  it('names every mistake', () => {
    expect(problemsOf({ boards: [] })).toEqual(['too-small boards']);
    expect(problemsOf({ joists: [] })).toEqual(['too-small joists']);
    expect(problemsOf({ rules: { 'perimeter.gap': Number.NaN } })).toEqual(['not-finite rules["perimeter.gap"]']);
    expect(problemsOf({ lining: [{ kind: 'plasterboard', thickness: -1, colour: 'grey' }] })).toEqual([
      'too-small lining[0].thickness',
      'unknown-field lining[0].colour',
    ]);
    expect(problemsOf({ room: { outline: rectangle(3.6, 3) }, boards: [{ ...size(2400, 1200), price: '12' }] })).toEqual([
      'looks-like-metres room.outline',
      'wrong-type boards[0].price',
    ]);
  });

  it('refuses gaps larger than the room', () => {
    const attempt = tryPlanCeiling({ ...job, rules: { 'perimeter.gap': 2000 } });
    expect(attempt.ok).toBe(false);
  });
});
