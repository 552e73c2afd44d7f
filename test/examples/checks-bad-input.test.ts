import { checkFixings, checkLayout, isInputError, type LayoutCheck } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { claimedRoom } from '../generators/claimedLayout.js';
import { plainRoom } from '../generators/layoutsByHand.js';

function problemsOf(act: () => unknown): string[] {
  try {
    act();
  } catch (error) {
    if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`).sort();
    throw error;
  }
  return [];
}

const layoutWith = (change: (layout: Record<string, never>) => unknown): LayoutCheck => {
  const check = JSON.parse(JSON.stringify(claimedRoom()));
  check.layout = change(check.layout);
  return check;
};

describe('what checkLayout is given', () => {
  it('may carry fields that nobody knows, at every depth of the layout', () => {
    const check = JSON.parse(JSON.stringify(claimedRoom()));
    for (const thing of [check.layout, check.layout.pieces[0], check.layout.pieces[0].ends[0], check.layout.boards[0]])
      thing.mine = { a: 1 };
    expect(checkLayout(check)).toEqual(checkLayout(claimedRoom()));
  });

  it('may not carry them anywhere else', () => {
    const check = { ...plainRoom(), extra: 1, room: { ...plainRoom().room, colour: 'white' } };
    expect(problemsOf(() => checkLayout(check))).toEqual(['unknown-field extra', 'unknown-field room.colour']);
  });

  const WRONG: readonly (readonly [string, (layout: never) => unknown, string[]])[] = [
    ['no layout', () => undefined, ['missing layout']],
    ['a text for a layout', () => 'none', ['wrong-type layout']],
    ['no pieces', ({ boards }) => ({ boards }), ['missing layout.pieces']],
    ['no boards', ({ pieces }) => ({ pieces }), ['missing layout.boards']],
    ['pieces that are no list', (layout) => ({ ...(layout as object), pieces: 7 }), ['wrong-type layout.pieces']],
    [
      'pieces without what is needed',
      (layout) => ({ ...(layout as object), pieces: [{}] }),
      ['missing layout.pieces[0].board', 'missing layout.pieces[0].id', 'missing layout.pieces[0].outline'],
    ],
    [
      'a corner that is no number',
      (layout) => ({
        ...(layout as object),
        pieces: [
          {
            id: 'p',
            board: 'A',
            outline: [
              { x: 0, y: 0 },
              { x: '5', y: 0 },
              { x: 5, y: 5 },
            ],
          },
        ],
      }),
      ['wrong-type layout.pieces[0].outline[1].x'],
    ],
    [
      'an outline that crosses itself',
      (layout) => ({
        ...(layout as object),
        pieces: [
          {
            id: 'p',
            board: 'A',
            outline: [
              { x: 0, y: 0 },
              { x: 9, y: 9 },
              { x: 9, y: 0 },
              { x: 0, y: 9 },
            ],
          },
        ],
      }),
      ['outline-crossing layout.pieces[0].outline'],
    ],
    [
      'claims of the wrong type',
      (layout) => ({ ...(layout as object), boardsBought: '4', proven: 1, bound: 3.5, areaM2: null }),
      ['wrong-type layout.areaM2', 'wrong-type layout.boardsBought', 'wrong-type layout.bound', 'wrong-type layout.proven'],
    ],
    [
      'ends of the wrong number and kind',
      ({ pieces, ...layout }: { pieces: object[] }) => ({
        ...layout,
        pieces: [
          { ...pieces[0], ends: [] },
          { ...pieces[1], ends: [{ meets: 'air' }, { position: 'there' }] },
        ],
      }),
      [
        'not-one-of layout.pieces[1].ends[0].meets',
        'too-small layout.pieces[0].ends',
        'wrong-type layout.pieces[1].ends[1].position',
      ],
    ],
  ];

  for (const [name, change, problems] of WRONG) {
    it(`is refused, with every mistake named: ${name}`, () => {
      expect(problemsOf(() => checkLayout(layoutWith(change as never)))).toEqual(problems);
    });
  }

  it('may hold no pieces at all: that is a ceiling that is not covered, and nothing is thrown', () => {
    const findings = checkLayout({ ...plainRoom(), layout: { pieces: [], boards: [] } });
    expect(findings.map(({ code }) => code)).toEqual(['cover-gap']);
  });

  it('takes joists in any form, and says when their width is assumed', () => {
    const joists = { direction: 'y' as const, first: 25, spacing: 400, last: 3575 };
    const codes = checkLayout({ ...plainRoom(), joists }).map(({ code, severity }) => `${severity} ${code}`);
    expect(codes).toContain('note joist-width-assumed');
    expect(codes.filter((code) => code.startsWith('error'))).toEqual([]);
  });

  it('is left as it was, and gives the same each time', () => {
    const check = claimedRoom();
    const before = JSON.stringify(check);
    const first = checkLayout(check);
    expect(checkLayout(check)).toEqual(first);
    expect(JSON.stringify(check)).toBe(before);
    expect(JSON.parse(JSON.stringify(first))).toEqual(first);
  });
});

describe('what checkFixings is given', () => {
  const { room, layout, joists } = plainRoom();

  it('may be a list of places, or the whole of what was returned', () => {
    const positions = [{ x: 425, y: 100 }];
    expect(checkFixings({ room, layout, joists, fixings: { positions, more: 'of it' } as never })).toEqual(
      checkFixings({ room, layout, joists, fixings: positions }),
    );
  });

  it('is refused, with every mistake named', () => {
    const fixings = [{ x: 1 }, { x: 1, y: Number.NaN }, { x: 1, y: 2, piece: 7 }];
    expect(problemsOf(() => checkFixings({ room, layout, joists, fixings } as never))).toEqual([
      'missing fixings[0].y',
      'not-finite fixings[1].y',
      'wrong-type fixings[2].piece',
    ]);
    expect(
      problemsOf(() => checkFixings({ room, layout, joists, fixings: [], noFix: [{ centre: { x: 0, y: 0 } }] } as never)),
    ).toEqual(['missing noFix[0].diameter']);
  });
});
