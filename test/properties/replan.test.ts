import { test } from '@fast-check/vitest';
import {
  type CeilingPlan,
  checkFixings,
  checkLayout,
  type Finding,
  type Piece,
  replanCeiling,
  tryReplanCeiling,
} from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyHappening } from '../generators/replannedJobs.js';

const runs = { seed: 20_261_126, numRuns: 40 };

const byId = (pieces: readonly Piece[]) => new Map(pieces.map((piece) => [piece.id, piece]));

/** What the verifier finds wrong, less what is wrong with pieces that are up. */
function errorsOf({ room, joists, layout, job }: CeilingPlan): Finding[] {
  const up = new Set(layout.pieces.filter(({ locked }) => locked === true).map(({ id }) => id));
  const found = checkLayout({ room, joists, layout, boards: job.boards, rules: job.rules });
  const isOfUp = ({ where = {} }: Finding): boolean =>
    [where.piece, ...(where.pieces ?? [])].some((id) => id !== undefined && up.has(id));
  return found.filter((each) => each.severity === 'error' && !isOfUp(each));
}

describe('a ceiling planned once more', { timeout: 240_000 }, () => {
  test.prop([anyHappening], runs)('keeps what is up, breaks no rule beside it, and says all that changed', (happening) => {
    if (happening === undefined) return;
    const { plan, changes } = happening;
    const attempt = tryReplanCeiling(plan, changes);
    if (!attempt.ok) {
      expect(attempt.reason).toBe('infeasible');
      return;
    }
    const { value: again } = attempt;
    expect(errorsOf(again)).toEqual([]);
    const [before, after] = [byId(plan.layout.pieces), byId(again.layout.pieces)];
    for (const id of changes.fixed ?? []) {
      const { outline, board, at } = before.get(id) as Piece;
      expect(after.get(id)).toMatchObject({ outline, board, at, locked: true });
    }
    const told = new Set(again.changed.map(({ piece }) => piece));
    for (const [id, piece] of after) {
      if (told.has(id)) continue;
      const { locked: _, ...same } = piece;
      const { outline, length, board } = before.get(id) as Piece;
      expect(same).toMatchObject({ outline, length, board });
    }
    for (const id of before.keys()) if (!after.has(id)) expect(told.has(id)).toBe(true);
    expect(new Set(after.keys()).size).toBe(again.layout.pieces.length);
  });

  test.prop([anyHappening], { ...runs, numRuns: 25 })(
    'counts the boards that are not cut into, never under the bound',
    (happening) => {
      if (happening === undefined) return;
      const attempt = tryReplanCeiling(happening.plan, happening.changes);
      if (!attempt.ok) return;
      const { layout, job } = attempt.value;
      const atHand = new Set(job.boards.filter((stock) => stock.atHand).map(({ id }) => id));
      const bought = layout.boards.filter(({ opened, stock }) => opened !== true && !atHand.has(stock));
      expect(layout.boardsBought).toBe(bought.length);
      expect(layout.bound).toBeLessThanOrEqual(layout.boardsBought);
      expect(layout.proven).toBe(layout.bound === layout.boardsBought);
    },
  );

  test.prop([anyHappening], { ...runs, numRuns: 25 })(
    'changes nothing when nothing has happened, whatever is up',
    (happening) => {
      if (happening === undefined) return;
      const { plan, changes } = happening;
      const { changed, layout } = replanCeiling(plan, { fixed: changes.fixed });
      expect(changed).toEqual([]);
      expect(layout.pieces.map(({ locked: _, ...piece }) => piece)).toEqual(plan.layout.pieces);
    },
  );

  test.prop([anyHappening], { ...runs, numRuns: 12 })(
    'gives the same plan again, also from a plan that went through JSON',
    (happening) => {
      if (happening === undefined) return;
      const { plan, changes } = happening;
      const attempt = () => JSON.stringify(tryReplanCeiling(JSON.parse(JSON.stringify(plan)), changes));
      expect(attempt()).toBe(attempt());
    },
  );

  test.prop([anyHappening], { ...runs, numRuns: 15 })('has screws in every piece, on what joists there are', (happening) => {
    if (happening === undefined) return;
    const attempt = tryReplanCeiling(happening.plan, happening.changes);
    if (!attempt.ok || attempt.value.findings.some(({ severity }) => severity === 'error')) return;
    const { room, layout, joists, fixings, job } = attempt.value;
    const found = checkFixings({ room, layout, joists, fixings, rules: job.rules, boards: job.boards });
    expect(found.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

test.prop([anyHappening], { ...runs, numRuns: 12 })('what is up from the first plan is up in the one after next', (happening) => {
  if (happening === undefined) return;
  const attempt = tryReplanCeiling(happening.plan, happening.changes);
  if (!attempt.ok) return;
  const { pieces } = attempt.value.layout;
  const next = tryReplanCeiling(attempt.value, { fixed: pieces.slice(0, Math.ceil(pieces.length / 2)).map(({ id }) => id) });
  if (!next.ok) throw new Error('the second time nothing fits');
  expect(next.value.changed).toEqual([]);
});
