import { type BoardToCheck, checkLayout, type LayoutToCheck, type PieceToCheck } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { claimedRoom } from '../generators/claimedLayout.js';

const errorsOf = (layout: LayoutToCheck) =>
  checkLayout({ ...claimedRoom(), layout }).filter(({ severity }) => severity === 'error');

const { layout } = claimedRoom();

const piece = (id: string, claim: Partial<PieceToCheck>): LayoutToCheck => ({
  ...layout,
  pieces: layout.pieces.map((each) => (each.id === id ? { ...each, ...claim } : each)),
});

const lowEnd = (id: string, claim: Partial<NonNullable<PieceToCheck['ends']>[0]>): LayoutToCheck => {
  const ends = layout.pieces.find((each) => each.id === id)?.ends;
  if (ends === undefined) throw new Error(`no ends of ${id}`);
  return piece(id, { ends: [{ ...ends[0], ...claim }, ends[1]] });
};

const board = (id: string, claim: Partial<BoardToCheck>): LayoutToCheck => ({
  ...layout,
  offcuts: undefined,
  boards: layout.boards.map((each) => (each.id === id ? { ...each, ...claim } : each)),
});

const cutsOf = (id: string) => layout.boards.find((each) => each.id === id)?.cuts ?? [];

/** What is claimed, what was found, in words and, where it is a number, as value and limit. */
const WRONG: readonly (readonly [name: string, layout: LayoutToCheck, says: string, value?: number, limit?: number])[] = [
  ['boards bought', { ...layout, boardsBought: 3 }, 'boards bought: 3', 3, 4],
  ['boards of a stock', { ...layout, boardsByStock: [{ stock: '1200 x 2400', count: 5 }] }, 'boards of 1200 x 2400: 5', 5, 4],
  ['butt joints', { ...layout, endJoints: 3 }, 'butt joints: 3', 3, 4],
  ['cuts', { ...layout, cuts: 8 }, 'cuts: 8', 8, 9],
  ['cost', { ...layout, cost: 30 }, 'cost: 30', 30, 34],
  ['area', { ...layout, areaM2: 10.75 }, 'area of the pieces: 10.75', 10.75, 10.722],
  ['waste', { ...layout, wasteAreaM2: 0.5 }, 'waste: 0.5', 0.5, 0.798],
  // Five ends of butt joints, 3 wide, run into the joints between rows: 11 370 less 15 is where boards really face each other.
  ['joint length', { ...layout, jointLength: 11_000 }, 'joint length: 11000', 11_000, 11_355],
  ['a bound above the boards', { ...layout, bound: 5, proven: false }, 'bound: 5', 5, 4],
  ['proven without a bound that meets', { ...layout, bound: 3 }, 'proven: true'],
  ['not proven though the bound meets', { ...layout, proven: false }, 'proven: false'],
  ['boards at minimum length below the bound', { ...layout, boardsAtMinimumLength: 3 }, 'boards at minimum length: 3', 3, 4],
  ['a cost bound above the cost', { ...layout, costBound: 40 }, 'least cost: 40', 40, 34],
  ['a row too many', { ...layout, rows: [...(layout.rows ?? []), { row: 4, low: 0, high: 1, width: 1 }] }, 'rows: 4', 4, 3],
  ['a row of another width', { ...layout, rows: [{ row: 1, low: 5, high: 1205, width: 1100 }] }, 'row 1 width: 1100', 1100, 1200],
  [
    'a row of another edge',
    { ...layout, rows: [{ row: 2, low: 1200, high: 2405, width: 1200 }] },
    'row 2 low edge: 1200',
    1200,
    1205,
  ],
  [
    'a whole row called ripped',
    { ...layout, rows: [{ row: 1, low: 5, high: 1205, width: 1200, ripped: true }] },
    'row 1 ripped: true',
  ],
  ['the row of a piece', piece('2.1', { row: 3 }), 'piece 2.1, row: 3', 3, 2],
  ['a length', piece('2.1', { length: 1700 }), 'piece 2.1, length: 1700', 1700, 1620],
  ['a length as cut', piece('2.1', { cutLength: 1620 }), 'piece 2.1, length as cut: 1620', 1620, 1618.5],
  ['a width', piece('3.1', { width: 600 }), 'piece 3.1, width: 600', 600, 590],
  ['a mass', piece('1.2', { massKg: 20 }), 'piece 1.2, mass: 20', 20, 24.162],
  ['a full length that is not called tight', piece('1.2', { tight: false }), 'piece 1.2, tight: false'],
  ['a short piece called tight', piece('1.3', { tight: true }), 'piece 1.3, tight: true'],
  ['a cut edge called bound', piece('3.1', { edges: { low: 'bound', high: 'bound' } }), 'piece 3.1, low edge: bound'],
  ['a bound edge called cut', piece('1.1', { edges: { low: 'cut', high: 'bound' } }), 'piece 1.1, low edge: cut'],
  [
    'both edges bound, with no place on the board',
    piece('3.2', { at: undefined, edges: { low: 'bound', high: 'bound' } }),
    'piece 3.2, edges: both bound',
  ],
  ['a joint called a wall', lowEnd('1.3', { meets: 'wall' }), 'piece 1.3, low end meets: wall'],
  ['a wall called an opening', lowEnd('1.1', { meets: 'opening' }), 'piece 1.1, low end meets: opening'],
  ['another joist', lowEnd('1.3', { joist: 'J7' }), 'piece 1.3, low end on: J7'],
  ['another position of a joint', lowEnd('1.3', { position: 2830 }), 'piece 1.3, low end position: 2830', 2830, 2825],
  ['another position of a wall end', lowEnd('1.1', { position: 8 }), 'piece 1.1, low end position: 8', 8, 5],
  ['a cut end called factory', lowEnd('1.1', { made: 'factory' }), 'piece 1.1, low end made: factory'],
  ['a factory end called cut', lowEnd('2.2', { made: 'cut' }), 'piece 2.2, low end made: cut'],
  ['a bearing that is none', lowEnd('2.2', { bearing: { outcome: 'off' } }), 'piece 2.2, low end bearing: off'],
  ['a cut left out', board('B', { cuts: cutsOf('B').slice(1) }), 'board B, cuts: all round piece 1.3'],
  [
    'a cut through a piece',
    board('B', { cuts: [...cutsOf('B'), { kind: 'cross', at: 300, from: 0, to: 1200 }] }),
    'board B, cuts: clear of piece 1.3',
  ],
  [
    'a cut past the board',
    board('A', { cuts: [{ kind: 'cross', at: 2397, from: 0, to: 1300 }] }),
    'board A, cross cut: on the board',
  ],
  [
    'an offcut that is used',
    board('B', { offcuts: [{ length: 500, width: 1200, at: { along: 700, across: 0 } }] }),
    'board B, offcut 1: left over',
  ],
  [
    'an offcut that no board has',
    { ...layout, offcuts: [...(layout.offcuts ?? []), { board: 'A', length: 500, width: 500, at: { along: 0, across: 0 } }] },
    'offcuts: 500 x 500 of board A',
  ],
  ['an offcut forgotten', { ...layout, offcuts: layout.offcuts?.slice(1) }, 'offcuts: none of 3 x 1200'],
  [
    'an offcut past the board',
    board('A', { offcuts: [{ length: 10, width: 1200, at: { along: 2397, across: 0 } }] }),
    'board A, offcut 1: on the board',
  ],
];

describe('what a layout says of itself', () => {
  it('is accepted when its outlines bear it out', () => {
    expect(errorsOf(layout)).toEqual([]);
  });

  for (const [name, wrong, says, value, limit] of WRONG) {
    it(`is refused when it is wrong: ${name}`, () => {
      const found = errorsOf(wrong).filter(({ code }) => code === 'claim-wrong');
      expect(found.map(({ message }) => message).join('\n')).toContain(`The layout says ${says};`);
      const told = found.find(({ message }) => message.includes(says));
      expect(told?.source?.standard).toBe('arithmetic on the values given');
      expect([told?.value, told?.limit]).toEqual([value, limit]);
    });
  }
});

/** Places on boards are no claims to be believed: each is tried. */
const PLACES: readonly (readonly [name: string, layout: LayoutToCheck, says: string, value?: number, limit?: number])[] = [
  [
    'past the end of the board',
    piece('1.1', { at: { along: 1982, across: 0 } }),
    'piece 1.1 lies past an end of it',
    2400.5,
    2400,
  ],
  ['before the board', piece('1.1', { at: { along: -1, across: 0 } }), 'piece 1.1 lies past an end of it', -1, 0],
  [
    'past the edge of the board',
    piece('3.1', { at: { along: 1181.5, across: 611 } }),
    'piece 3.1 lies past an edge of it',
    1201,
    1200,
  ],
  ['over another piece', piece('1.3', { at: { along: 100, across: 0 } }), 'pieces 1.3 and 2.1 lie over each other on it', -87, 0],
];

describe('places on boards', () => {
  for (const [name, wrong, says, value, limit] of PLACES) {
    it(`are refused: ${name}`, () => {
      const told = errorsOf(wrong).find(({ code, message }) => code === 'board-overcut' && message.includes(says));
      expect(told, JSON.stringify(errorsOf(wrong))).toBeDefined();
      expect([told?.value, told?.limit, told?.unit]).toEqual([value, limit, 'mm']);
    });
  }

  it('are refused where the saw has no room between pieces', () => {
    const { boards, ...check } = claimedRoom();
    const sawn = boards.map((each) => ({ ...each, kerf: 14 }));
    const messages = checkLayout({ ...check, boards: sawn }).map(({ message }) => message);
    expect(messages).toContain('Board B cannot be cut like that: no saw passes between pieces 1.3 and 2.1.');
  });

  it('are refused where no cut goes from side to side', () => {
    // Four pieces round a hole in the middle, as on a pinwheel: 1600 x 400, 800 x 800, and the same again turned about.
    const outlines = [
      [5, 1605, 5, 405],
      [1608, 2408, 5, 805],
      [5, 805, 405, 1205],
      [808, 2408, 805, 1205],
    ];
    const at = [
      { along: 0, across: 0 },
      { along: 1600, across: 0 },
      { along: 0, across: 400 },
      { along: 800, across: 800 },
    ];
    const pieces = outlines.map(([x0, x1, y0, y1], i) => ({
      id: `p${i + 1}`,
      outline: [
        { x: x0, y: y0 },
        { x: x1, y: y0 },
        { x: x1, y: y1 },
        { x: x0, y: y1 },
      ],
      board: 'P',
      at: at[i],
    }));
    const findings = checkLayout({ ...claimedRoom(), layout: { pieces, boards: [{ id: 'P', stock: '1200 x 2400' }] } });
    expect(findings.map(({ message }) => message)).toContain(
      'Board P cannot be cut like that: no cut from side to side parts pieces p1, p2, p3, p4.',
    );
  });
});
