import { checkLayout, type EndClaim, type Finding, type PieceToCheck, type Point } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import type { CheckByHand } from '../generators/layoutsByHand.js';
import { bayZone, bowedRoom, breastRoom, strongFan, timber } from '../generators/shapedRooms.js';

const points = (...places: readonly (readonly [number, number])[]): Point[] => places.map(([x, y]) => ({ x, y }));

const claiming = (room: CheckByHand, claims: Readonly<Record<string, Partial<PieceToCheck>>>): CheckByHand => ({
  ...room,
  layout: { ...room.layout, pieces: room.layout.pieces.map((piece) => ({ ...piece, ...claims[piece.id] })) },
});

const saysOf = (room: CheckByHand): string[] =>
  checkLayout(room)
    .filter(({ code }) => code === 'claim-wrong')
    .map(({ message }) => message);

const ends = (low: EndClaim, high: EndClaim): Pick<PieceToCheck, 'ends'> => ({ ends: [low, high] });

/**
 * The fourth joist of the fan is at 1400 + y / 90: 1400.056 at the foot of row 1, 1413.389 at its head. Piece 1.1 lies from 5 to
 * 1.5 short of it; its longer edge is the higher one.
 */
const RAKED: Partial<PieceToCheck> = {
  row: 1,
  length: 1408.389,
  cutLength: 1406.889,
  width: 1200,
  edgeLengths: { low: 1393.556, high: 1406.889 },
  ...ends(
    { meets: 'wall', position: 5 },
    { meets: 'board', joist: 'J4', position: 1406.722, rake: 13.333, bearing: { outcome: 'secure' } },
  ),
  // Seen from below, the higher edge at the foot of the sheet.
  hand: { view: 'face up', outline: points([0, 1200], [1393.556, 1200], [1406.889, 0], [0, 0]) },
};

const fan = (more: Partial<PieceToCheck> = {}): CheckByHand => claiming(strongFan(), { '1.1': { ...RAKED, ...more } });

const highEnd = (claim: Partial<EndClaim>): Partial<PieceToCheck> => {
  const [low, high] = RAKED.ends as [EndClaim, EndClaim];
  return ends(low, { ...high, ...claim });
};

describe('what a piece with a raked end says of itself', () => {
  it('is accepted when its outline bears it out', () => {
    expect(saysOf(fan())).toEqual([]);
  });

  it('may mark the board lying either way round', () => {
    const outline = points([1406.889, 0], [13.333, 0], [0, 1200], [1406.889, 1200]);
    expect(saysOf(fan({ hand: { view: 'face up', outline } }))).toEqual([]);
  });

  const wrong: readonly (readonly [string, Partial<PieceToCheck>, string])[] = [
    ['the length of the shorter edge', { edgeLengths: { low: 1400, high: 1406.889 } }, 'piece 1.1, low edge length: 1400'],
    [
      'the length of the longer edge',
      { edgeLengths: { low: 1393.556, high: 1393.556 } },
      'piece 1.1, high edge length: 1393.556',
    ],
    ['a point where there is none', { edgeLengths: { low: 0, high: 1406.889 } }, 'piece 1.1, low edge length: 0'],
    ['the rake', highEnd({ rake: 12 }), 'piece 1.1, high end rake: 12'],
    ['the way of the rake', highEnd({ rake: -13.333 }), 'piece 1.1, high end rake: -13.333'],
    ['a rake of a square end', ends({ rake: 4 }, {}), 'piece 1.1, low end rake: 4'],
    ['the length, by more than the gap', { length: 1415 }, 'piece 1.1, length: 1415'],
    ['a position past the joint', highEnd({ position: 1420 }), 'piece 1.1, high end position: 1420'],
    ['a joist that it does not meet', highEnd({ joist: 'J5' }), 'piece 1.1, high end on: J5'],
    [
      'a factory end where it is raked',
      { at: { along: 993.111, across: 0 }, ...highEnd({ made: 'factory' }) },
      'piece 1.1, high end made: factory',
    ],
    [
      'the other hand',
      { hand: { view: 'face up', outline: points([0, 0], [1393.556, 0], [1406.889, 1200], [0, 1200]) } },
      'piece 1.1, hand: its mirror image',
    ],
    [
      'another outline',
      { hand: { view: 'face up', outline: points([0, 0], [1400, 0], [1400, 1200], [0, 1200]) } },
      'piece 1.1, hand: another outline',
    ],
    ['no hand', { hand: undefined }, 'piece 1.1, hand: none'],
    ['a zone where there is none', { zone: 'bay' }, 'piece 1.1, zone: bay'],
  ];
  for (const [name, claim, says] of wrong) {
    it(`is refused when it is wrong: ${name}`, () => {
      expect(saysOf(fan(claim)).join('\n')).toContain(`The layout says ${says};`);
    });
  }
});

describe('a piece that tells its ends and its long edges, and no hand', () => {
  const stock = { id: 's', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const };
  const told = { edgeLengths: { low: 2000, high: 2000 }, ...ends({ meets: 'wall' }, { meets: 'wall' }) };
  /** One piece 1200 wide in a room as large as it. */
  const alone = (outline: Point[], claim: Partial<PieceToCheck>): string[] =>
    saysOf({
      room: { outline },
      joists: [50, 450, 850, 1250, 1650, 1950].map((x, i) => timber(`J${i + 1}`, [x, 0], [x, 1200])),
      boards: [stock],
      layout: { pieces: [{ id: 'a', outline, board: '1', ...claim }], boards: [{ id: '1', stock: 's' }] },
      rules: { 'perimeter.gap': 0 },
    });
  const block = points([0, 0], [2000, 0], [2000, 1200], [0, 1200]);
  const square = (x: number, y: number) => points([x, y], [x + 200, y], [x + 200, y + 200], [x, y + 200]);
  const none = 'The layout says piece a, hand: none; its outlines say its mirror image does not fit.';

  it('says that its mirror image fits: of two ends that lean apart it does, of two that lean alike it does not', () => {
    const trapezoid = points([300, 0], [1700, 0], [2000, 1200], [0, 1200]);
    expect(alone(trapezoid, { ...told, edgeLengths: { low: 1400, high: 2000 } })).toEqual([]);
    const leaning = points([0, 0], [1700, 0], [2000, 1200], [300, 1200]);
    expect(alone(leaning, { ...told, edgeLengths: { low: 1700, high: 1700 } })).toEqual([none]);
  });

  it('has its holes seen too: one on a centre line may be turned over, one in a corner may not', () => {
    expect(alone(block, told)).toEqual([]);
    expect(alone(block, { ...told, holes: [square(300, 500)] })).toEqual([]);
    expect(alone(block, { ...told, holes: [square(300, 300)] })).toEqual([none]);
  });

  it('is asked for nothing where its outline is all that it tells', () => {
    const outline = points([0, 0], [2000, 0], [2000, 900], [0, 1200]);
    expect(alone(outline, {})).toEqual([]);
    expect(alone(outline, { edgeLengths: { low: 2000, high: 2022.375 } })).toEqual([]);
  });
});

describe('what a layout with zones says of itself', () => {
  const zoned = (rows: readonly number[], zone = 'bay'): CheckByHand => {
    const room = bayZone();
    const pieces = room.layout.pieces.map((piece) => {
      const row = rows[Number(piece.id.split('.')[0]) - 1];
      return { ...piece, row, ...(piece.id.startsWith('4') && { zone }) };
    });
    return { ...room, layout: { ...room.layout, pieces } };
  };

  it('may number the rows of its parts in any order', () => {
    expect(saysOf(zoned([1, 2, 3, 4, 5]))).toEqual([]);
    expect(saysOf(zoned([3, 4, 5, 1, 2]))).toEqual([]);
  });

  it('may not number two rows alike, or leave a number out', () => {
    expect(saysOf(zoned([1, 2, 3, 3, 4])).join('\n')).toContain('piece 4.1, row: 3; its outlines say 4');
    expect(saysOf(zoned([1, 2, 3, 5, 6])).join('\n')).toContain('piece 4.1, row: 5; its outlines say 4');
  });

  it('may not put a piece into another zone', () => {
    expect(saysOf(zoned([1, 2, 3, 4, 5], 'alcove')).join('\n')).toContain('piece 4.1, zone: alcove; its outlines say bay');
  });
});

describe('edges and rows beside walls that are not straight', () => {
  it('may count the level part of a notched edge, or all of it', () => {
    // 3.2 under the breast: level for 293.5 and 393.5 at its head; 1305 more at the foot of the notch.
    const claim = (high: number): string[] => saysOf(claiming(breastRoom(), { '3.2': { edgeLengths: { low: 1997, high } } }));
    expect(claim(687)).toEqual([]);
    expect(claim(1997)).toEqual([]);
    expect(claim(600).join()).toContain('piece 3.2, high edge length: 600');
    expect(claim(2100).join()).toContain('piece 3.2, high edge length: 2100');
  });

  it('may not call a scribed edge bound', () => {
    const at = { along: 0, across: 12 };
    const room = (high: 'bound' | 'cut'): CheckByHand => claiming(bowedRoom(), { '2.1': { at, edges: { low: 'cut', high } } });
    expect(saysOf(room('cut'))).toEqual([]);
    expect(saysOf(room('bound')).join()).toContain('piece 2.1, high edge: bound');
  });

  it('may give a row the band in which its pieces lie', () => {
    const rows = (high: number) => [
      { row: 1, low: 5, high: 1205, width: 1200 },
      { row: 2, low: 1205, high, width: high - 1205 },
    ];
    const room = bowedRoom();
    const banded = (high: number): string[] => saysOf({ ...room, layout: { ...room.layout, rows: rows(high) } });
    expect(banded(2393)).toEqual([]);
    expect(banded(2400)).toEqual([]);
    expect(banded(2300).join()).toContain('row 2 high edge: 2300');
  });
});

describe('raked pieces on one board', () => {
  /** A row of two pieces that meet in a rake of 300, and the two halves of a board that a cut at that rake makes. */
  const raked = (places: readonly PieceToCheck['at'][], by = 300, length = 2400): Finding[] => {
    const room = { outline: points([0, 0], [length, 0], [length, 1200], [0, 1200]) };
    const joists = [50, 450, 850].map((x, i) => timber(`J${i + 1}`, [x, 0], [x, 1200]));
    const pieces = [
      { id: 'a', outline: points([0, 0], [1000, 0], [1000 + by, 1200], [0, 1200]), board: '1', at: places[0] },
      { id: 'b', outline: points([1000, 0], [length, 0], [length, 1200], [1000 + by, 1200]), board: '1', at: places[1] },
    ];
    const stock = { id: 's', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const };
    const rules = { 'perimeter.gap': 0, 'joint.gap': 0 };
    return checkLayout({ room, joists, boards: [stock], layout: { pieces, boards: [{ id: '1', stock: 's' }] }, rules }).filter(
      ({ code }) => code.startsWith('board-'),
    );
  };
  const codes = (findings: readonly Finding[]): string[] => findings.map(({ code, severity }) => `${severity} ${code}`);

  it('may share the cut between them, which no rectangles do', () => {
    expect(codes(raked([undefined, undefined]))).toEqual(['warning board-cutting-unproven']);
    expect(
      codes(
        raked([
          { along: 0, across: 0 },
          { along: 1000, across: 0 },
        ]),
      ),
    ).toEqual(['warning board-cutting-unproven']);
  });

  it('may not lie over each other', () => {
    expect(
      codes(
        raked([
          { along: 0, across: 0 },
          { along: 900, across: 0 },
        ]),
      ),
    ).toEqual(['error board-overcut']);
  });

  it('are told where they are more than the board', () => {
    expect(codes(raked([undefined, undefined], 300, 2600))).toEqual(['error board-overcut']);
  });
});
