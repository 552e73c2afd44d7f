import {
  type CeilingPlan,
  checkLayout,
  type Job,
  planCeiling,
  type Replanning,
  rectangle,
  replanCeiling,
  tryReplanCeiling,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';

const size = (length: number) =>
  ({ id: `${length}`, length, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }) as const;

/** 3600 across the joists by 3000; joists J1 to J9 at 25 + 400 k, J10 at 3575. Rows 1200, 1200 and 590 of boards of 2400: four boards. */
const job: Job = {
  room: { outline: rectangle(3600, 3000) },
  joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
  lining: [{ kind: 'plasterboard', thickness: 9.5 }],
  boards: [size(2400)],
};

const plan = planCeiling(job);
const lowRow = plan.layout.pieces.filter(({ row }) => row === 1).map(({ id }) => id);

/** The joist under the butt joint at the low end of a piece, and where it is. */
const underLowEnd = (id: string) => {
  const joist = plan.layout.pieces.find((piece) => piece.id === id)?.ends[0].joist as string;
  return { joist, at: plan.joists.find((each) => each.id === joist)?.start.x as number };
};

const placesOf = ({ layout }: CeilingPlan, rows: readonly number[]) =>
  layout.pieces.filter(({ row }) => rows.includes(row)).map(({ id, outline }) => ({ id, outline }));

const errorsOf = ({ room, joists, layout, job: { boards, rules } }: CeilingPlan) =>
  checkLayout({ room, joists, layout, boards, rules }).filter(({ severity }) => severity === 'error');

const problemsOf = (changes: object) => {
  const attempt = tryReplanCeiling(plan, changes as Replanning);
  if (attempt.ok || attempt.reason !== 'input') throw new Error('the changes were accepted');
  return attempt.problems.map(({ code, path }) => `${code} ${path}`);
};

describe('a plan made once more', () => {
  it('is the same plan when nothing has happened', () => {
    const { changed, ...again } = replanCeiling(plan);
    expect(changed).toEqual([]);
    expect(again.layout.pieces).toEqual(plan.layout.pieces);
    expect(again.takeOff).toEqual(plan.takeOff);
  });

  it('asks for less once a row is up: boards not cut into, and screws not driven', () => {
    const again = replanCeiling(plan, { fixed: lowRow });
    expect(again.changed).toEqual([]);
    expect(again.layout.pieces.filter(({ locked }) => locked).map(({ id }) => id)).toEqual(lowRow);
    const driven = plan.fixings.positions.filter(({ piece }) => lowRow.includes(piece)).length;
    const [boards, screws] = again.takeOff.lines;
    expect(boards.packs).toBe(again.layout.boards.filter(({ opened }) => !opened).length);
    expect(boards.packs).toBeLessThan(plan.takeOff.lines[0].packs);
    expect(screws.quantity).toBeCloseTo((plan.fixings.count - driven) * 1.1, 6);
  });

  it('moves a joint off a joist that is 40 away, and leaves the rows alone that have none there', () => {
    const { joist, at } = underLowEnd('2.2');
    const now = at + 40;
    const again = replanCeiling(plan, { found: [{ joist, at: now }] });
    expect(placesOf(again, [1, 3])).toEqual(placesOf(plan, [1, 3]));
    expect(again.changed[0]).toEqual({ joist, what: 'joist', was: at, now, message: `${joist} is at ${now}, not at ${at}.` });
    expect(again.changed.flatMap(({ piece, what }) => (what === 'length' ? [piece] : []))).toEqual(['2.1', '2.2']);
    expect(new Set(again.changed.map(({ piece }) => piece))).toEqual(new Set([undefined, '2.1', '2.2']));
    expect(again.joists.find(({ id }) => id === joist)).toMatchObject({
      start: { x: now },
      known: 'measured',
      sd: 0,
      presence: 1,
    });
    expect(errorsOf(again)).toEqual([]);
  });

  it('takes a joist that nobody expected', () => {
    const again = replanCeiling(plan, { found: [{ joist: 'extra', atStart: 600, atEnd: 604 }] });
    expect(again.joists.map(({ id }) => id)).toContain('extra');
    expect(again.changed.map(({ message }) => message)).toEqual(['extra is at 600 to 604.']);
  });

  it('says where two joists stand side by side now, and not that the one is gone', () => {
    const { joist, at } = underLowEnd('2.2');
    const again = replanCeiling(plan, { found: [{ joist: 'extra', at: at + 50 }] });
    expect(again.changed[0]).toEqual({
      joist: `${joist}+extra`,
      what: 'joist',
      was: at,
      now: at + 25,
      message: `${joist}+extra is at ${at + 25}; ${joist} was planned at ${at}.`,
    });
    expect(again.changed.filter((change) => change.joist === joist)).toEqual([]);
  });

  it('leaves every piece in its place when a board is spoiled, and cuts those of it from another', () => {
    const again = replanCeiling(plan, { fixed: lowRow, spoiled: ['B3'] });
    expect(placesOf(again, [1, 2, 3])).toEqual(placesOf(plan, [1, 2, 3]));
    expect(again.changed.map(({ what, piece, was }) => [what, piece, was])).toContainEqual(['cut from', '2.2', 'B3']);
    expect(again.layout.boards.map(({ id }) => id)).not.toContain('B3');
    expect(errorsOf(again)).toEqual([]);
  });

  it('uses the rest of a board that has been cut into before a new one', () => {
    const before = plan.layout.pieces.find(({ id }) => id === '2.1');
    const again = replanCeiling(plan, { fixed: lowRow, found: [{ joist: 'J1', at: 40 }] });
    expect(again.layout.pieces.find(({ id }) => id === '2.1')).toEqual(before);
    expect(again.layout.boards.find(({ id }) => id === before?.board)).toMatchObject({ opened: true });
    expect(again.layout.boardsBought).toBe(2);
  });

  it('cuts what lies there cut, when it cannot go where it was meant to', () => {
    // One row of two pieces, and the joist under their joint is not there.
    const passage = planCeiling({ ...job, room: { outline: rectangle(3600, 1200) }, boards: [{ ...size(2400), width: 1190 }] });
    const { pieces } = passage.layout;
    const first = pieces[0].length > pieces[1].length ? pieces[0] : pieces[1];
    const joint = pieces[0].length;
    const missing = passage.joists.filter(({ start }) => Math.abs(start.x - joint) < 25).map(({ id }) => id);
    const again = replanCeiling(passage, { cut: [first.id], missing });
    expect(again.changed).toContainEqual(expect.objectContaining({ joist: missing[0], what: 'joist' }));
    const [shorter] = again.layout.pieces.filter(({ board }) => board === first.board);
    expect(shorter.length).toBeLessThan(first.length);
    expect(shorter.at.along).toBeGreaterThanOrEqual(first.at.along);
    expect(shorter.at.along + shorter.cutLength).toBeLessThanOrEqual(first.at.along + first.cutLength);
    expect(again.layout).toMatchObject({ boardsBought: 1, bound: 1, proven: true });
    expect(errorsOf(again)).toEqual([]);
  });

  it('uses offcuts at hand, and counts them as stock that costs nothing', () => {
    const changes = {
      fixed: lowRow,
      spoiled: ['B4'],
      offcutsAtHand: [
        { length: 2400, width: 600 },
        { length: 1700, width: 600 },
        { length: 250, width: 1200 },
      ],
    };
    const again = replanCeiling(plan, changes);
    expect(again.job.boards.filter(({ atHand }) => atHand).map(({ id }) => id)).toEqual([
      'offcut 2400 x 600',
      'offcut 1700 x 600',
    ]);
    expect(
      again.layout.pieces
        .filter(({ row }) => row === 3)
        .map(({ board }) => again.layout.boards.find(({ id }) => id === board)?.stock)
        .sort(),
    ).toEqual(['offcut 1700 x 600', 'offcut 2400 x 600']);
    expect(again.layout.boardsBought).toBe(replanCeiling(plan, { fixed: lowRow }).layout.boardsBought - 1);
    expect(errorsOf(again)).toEqual([]);
  });

  it('takes another size when one has run out', () => {
    const two = planCeiling({ ...job, boards: [size(2400), size(3000)] });
    const fixed = two.layout.pieces.filter(({ row }) => row === 1).map(({ id }) => id);
    const again = replanCeiling(two, { fixed, available: { 3000: 0 } });
    expect(placesOf(again, [1])).toEqual(placesOf(two, [1]));
    expect(again.layout.boardsByStock).toEqual([{ stock: '2400', count: again.layout.boardsBought }]);
    expect(errorsOf(again)).toEqual([]);
  });

  it('says what is wrong where a joist is missing under a joint that is up, and what can be done from below', () => {
    const again = replanCeiling(plan, { fixed: lowRow, missing: [underLowEnd('1.2').joist] });
    const [error] = again.findings.filter(({ code }) => code === 'end-off-timber');
    expect(error).toMatchObject({ severity: 'error', where: { pieces: ['1.1', '1.2'], row: 1 } });
    expect(error.remedy).toContain('cut out a strip of the old ceiling');
    expect(again.layout.pieces.filter(({ locked }) => locked).map(({ outline }) => outline)).toEqual(
      placesOf(plan, [1]).map(({ outline }) => outline),
    );
  });

  it('cannot be made when there is too little left to buy, and says how much would do', () => {
    const attempt = tryReplanCeiling(plan, { fixed: lowRow, available: { 2400: 0 } });
    if (attempt.ok || attempt.reason !== 'infeasible') throw new Error('it was planned without boards');
    expect(attempt.relaxations).toContainEqual({ kind: 'board', key: '2400.available', value: 2, message: '2 of 2400' });
  });

  it('carries on from one time to the next: what was up is up, whatever is said', () => {
    const once = replanCeiling(plan, { fixed: lowRow });
    const twice = replanCeiling(once, { fixed: ['2.1'] });
    expect(twice.layout.pieces.filter(({ locked }) => locked).map(({ id }) => id)).toEqual([...lowRow, '2.1']);
  });

  it('keeps what was inferred of the joists while nothing is said of them', () => {
    const marks = [25, 425, 825, 1225, 1625, 2025, 2425, 2825, 3225, 3575].flatMap((x) =>
      [500, 2500].map((y) => ({ x, y, kind: 'probe' as const })),
    );
    const inferred = planCeiling({ ...job, joists: { marks, direction: 'y', width: 50 } });
    const fixed = inferred.layout.pieces.slice(0, 1).map(({ id }) => id);
    expect(replanCeiling(inferred, { fixed }).confidence).toEqual(inferred.confidence);
    expect(replanCeiling(inferred, { missing: [inferred.joists[3].id] }).inference).toBeUndefined();
  });
});

describe('what has happened is refused', () => {
  it('when it names what the plan does not have', () => {
    expect(problemsOf({ fixed: ['9.9'], cut: ['9.8'], spoiled: ['B9'] })).toEqual([
      'piece-unknown changes.fixed[0]',
      'piece-unknown changes.cut[0]',
      'piece-unknown changes.spoiled[0]',
    ]);
    expect(problemsOf({ missing: ['J77'] })).toEqual(['joist-unknown changes.missing[0]']);
    expect(problemsOf({ available: { 3000: 1 } })).toEqual(['board-unknown changes.available.3000']);
    expect(problemsOf({ sold: ['B1'] })).toEqual(['unknown-field changes.sold']);
  });

  it('when it cannot be', () => {
    expect(problemsOf({ fixed: ['1.1'], spoiled: ['1.1'] })).toEqual(['contradiction changes.spoiled[0]']);
    expect(problemsOf({ found: [{ joist: 'J2', at: 4000 }] })).toEqual(['joist-outside-room changes.found[0]']);
    expect(problemsOf({ found: [{ joist: 'J2' }] })).toEqual(['missing changes.found[0]']);
    expect(problemsOf({ found: [{ joist: 'J2', at: 430, atEnd: 431 }] })).toEqual(['missing changes.found[0]']);
    expect(problemsOf({ found: [{ joist: 'J2', at: 430 }], missing: ['J2'] })).toEqual(['repeated-joist changes.found[0].joist']);
    expect(problemsOf({ missing: plan.joists.map(({ id }) => id) })).toEqual(['no-joists changes.missing']);
  });
});
