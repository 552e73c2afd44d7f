import { type Finding, finding, type Where } from '../rules/finding.js';
import { numberOf } from '../rules/ruleValue.js';
import type { BoardStock } from '../survey/boardStock.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { PieceFacts, Work } from './ceiling.js';
import { areaOf, type Blank, cuttable, type Placed, type Sheet, separable } from './cuttable.js';
import { fullStretch, isShaped, lieOverEachOther } from './nesting.js';
import { asGiven, middleOf } from './place.js';
import { pieceAreaM2 } from './sizes.js';

/** Whether each piece comes from a board that is there, and each board gives its pieces. */
export function cutting(work: Work, boards: readonly BoardStock[]): Finding[] {
  return [...namedTwice(work), ...unknownBoards(work, boards), ...boardsCut(work, boards), ...tooMany(work, boards)];
}

function namedTwice({ given: { layout } }: Work): Finding[] {
  const repeated = (ids: readonly string[]): string[] => [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];
  const named = { source: asGiven };
  return [
    ...repeated(layout.pieces.map(({ id }) => id)).map((piece) =>
      finding('repeated-id', 'error', { where: { piece }, ...named, words: { thing: `piece ${piece}` } }),
    ),
    ...repeated(layout.boards.map(({ id }) => id)).map((board) =>
      finding('repeated-id', 'error', { where: { board }, ...named, words: { thing: `board ${board}` } }),
    ),
  ];
}

function unknownBoards({ about, given: { layout } }: Work, boards: readonly BoardStock[]): Finding[] {
  const stocks = new Set(boards.map(({ id }) => id));
  const known = new Set(layout.boards.map(({ id }) => id));
  const used = new Set(layout.pieces.map(({ board }) => board));
  const pieces = about
    .filter(({ claim }) => !known.has(claim.board))
    .map((facts) => {
      const { id, claim } = facts;
      const { at } = middleOf(facts);
      const words = { what: `Piece ${id} comes from board ${claim.board}, which is not in the layout.` };
      return finding('board-unknown', 'error', { where: { piece: id, board: claim.board, at }, source: asGiven, words });
    });
  const unsold = layout.boards
    .filter(({ stock }) => !stocks.has(stock))
    .map(({ id, stock }) => {
      const words = { what: `Board ${id} is of stock ${stock}, which is not among the boards given.` };
      return finding('board-unknown', 'error', { where: { board: id }, source: asGiven, words });
    });
  const unused = layout.boards
    .filter(({ id }) => !used.has(id))
    .map(({ id }) => finding('board-unused', 'warning', { where: { board: id }, source: asGiven }));
  return [...pieces, ...unsold, ...unused];
}

const sheetOf = ({ length, width, kerf }: BoardStock, { rules }: Work): Sheet => ({
  length: toGrid(length),
  width: toGrid(width),
  kerf: toGrid(kerf ?? numberOf(rules, 'kerf')),
});

function boardsCut(work: Work, boards: readonly BoardStock[]): Finding[] {
  const stockOf = new Map(boards.map((stock) => [stock.id, stock]));
  return work.given.layout.boards.flatMap((board) => {
    const stock = stockOf.get(board.stock);
    if (stock === undefined) return [];
    const pieces = work.about.filter(({ claim }) => claim.board === board.id);
    const sheet = sheetOf(stock, work);
    const oversize = pieces.flatMap((piece) => tooLarge(piece, sheet, board.id));
    return oversize.length > 0 ? oversize : sharedBoard(pieces, sheet, board.id);
  });
}

const sizeOf = ({ box }: PieceFacts) => ({ length: box.u1 - box.u0, width: box.v1 - box.v0 });

/** A piece that its board cannot give; if it would fit turned, it may run the wrong way. */
function tooLarge(piece: PieceFacts, sheet: Sheet, board: string): Finding[] {
  const { length, width } = sizeOf(piece);
  if (length <= sheet.length && width <= sheet.width) return [];
  const { id } = piece;
  const { at, words } = middleOf(piece);
  const details = { where: { piece: id, board, at }, unit: 'mm', source: asGiven };
  const long = length > sheet.length;
  const [value, limit] = long ? [fromGrid(length), fromGrid(sheet.length)] : [fromGrid(width), fromGrid(sheet.width)];
  const what = `piece ${id} is ${value} ${long ? 'long' : 'wide'}, the board ${limit}`;
  const overcut = finding('board-overcut', 'error', { ...details, value, limit, words: { ...words, what } });
  if (width > sheet.length || length > sheet.width) return [overcut];
  const across = { value: fromGrid(width), limit: fromGrid(sheet.width), words };
  return [finding('board-parallel-to-supports', 'error', { ...details, ...across }), overcut];
}

function sharedBoard(pieces: readonly PieceFacts[], sheet: Sheet, board: string): Finding[] {
  const placed = pieces.map((piece) => placedOn(piece));
  if (placed.every((each) => each !== undefined)) return placesOn(pieces, placed as readonly Placed[], sheet, board);
  const outcome = cuttable(pieces.map(sizeOf), sheet);
  if (outcome === 'yes') return [];
  const where = { pieces: pieces.map(({ id }) => id), board };
  if (outcome === 'unknown' || mayNest(pieces, sheet)) return [unproven(where)];
  const [value, limit] = [fromGrid(lengthNeeded(pieces.map(sizeOf), sheet)), fromGrid(sheet.length)];
  const words = { what: `pieces ${where.pieces.join(', ')} need a board of ${value}, it is ${limit} long` };
  return [finding('board-overcut', 'error', { where, value, limit, unit: 'mm', source: asGiven, words })];
}

const unproven = (where: Where): Finding => finding('board-cutting-unproven', 'warning', { where, source: asGiven });

/** Pieces with rakes or notches may reach into what their neighbours leave; over their full width they may not. */
function mayNest(pieces: readonly PieceFacts[], sheet: Sheet): boolean {
  if (!pieces.some(isShaped)) return false;
  const area = pieces.reduce((sum, piece) => sum + pieceAreaM2(piece), 0);
  const whole = (fromGrid(sheet.length) * fromGrid(sheet.width)) / 1e6;
  return area <= whole && cuttable(pieces.flatMap(fullStretch), sheet) !== 'no';
}

/** Steps for each length that is tried. */
const STEPS_PER_LENGTH = 5000;

/** The shortest board of this width that is found to give the pieces; it is longer than the one there is. */
function lengthNeeded(blanks: readonly Blank[], sheet: Sheet): number {
  let low = Math.max(sheet.length, Math.ceil(areaOf(blanks) / sheet.width) - 1);
  let high = blanks.reduce((sum, { length }) => sum + length + sheet.kerf, -sheet.kerf);
  while (high - low > 1) {
    const length = Math.floor((low + high) / 2);
    if (cuttable(blanks, { ...sheet, length }, STEPS_PER_LENGTH) === 'yes') high = length;
    else low = length;
  }
  return high;
}

function placedOn(piece: PieceFacts): Placed | undefined {
  const { at } = piece.claim;
  return at && { ...sizeOf(piece), along: toGrid(at.along), across: toGrid(at.across) };
}

/** Places that are claimed: on the board, clear of each other, and to be parted by cuts from side to side. */
function placesOn(pieces: readonly PieceFacts[], placed: readonly Placed[], sheet: Sheet, board: string): Finding[] {
  const pairs = placed.flatMap((_, i) => placed.slice(i + 1).map((_, k) => [i, i + 1 + k] as const));
  const near = pairs.filter(([i, k]) => apart(placed[i], placed[k]) < sheet.kerf);
  const nested = near.filter(
    ([i, k]) =>
      apart(placed[i], placed[k]) < 0 &&
      (isShaped(pieces[i]) || isShaped(pieces[k])) &&
      !lieOverEachOther(pieces[i], placed[i], pieces[k], placed[k]),
  );
  const findings = [
    ...placed.flatMap((each, i) => pastBoard(pieces[i].id, each, sheet, board)),
    ...near
      .filter((pair) => !nested.includes(pair))
      .map(([i, k]) => {
        const [first, second] = [pieces[i].id, pieces[k].id];
        const distance = apart(placed[i], placed[k]);
        const what =
          distance < 0
            ? `pieces ${first} and ${second} lie over each other on it`
            : `no saw passes between pieces ${first} and ${second}`;
        return overcut({ pieces: [first, second], board }, distance, sheet.kerf, what);
      }),
  ];
  if (findings.length > 0) return findings;
  const ids = pieces.map(({ id }) => id);
  const where = { pieces: ids, board };
  if (nested.length > 0) return [unproven(where)];
  if (separable(placed, sheet.kerf)) return [];
  const words = { what: `no cut from side to side parts pieces ${ids.join(', ')}` };
  return [finding('board-overcut', 'error', { where, source: asGiven, words })];
}

function pastBoard(piece: string, { along, across, length, width }: Placed, sheet: Sheet, board: string): Finding[] {
  const past = (from: number, to: number, limit: number, what: string): Finding[] =>
    from >= 0 && to <= limit ? [] : [overcut({ piece, board }, from < 0 ? from : to, from < 0 ? 0 : limit, what)];
  return [
    ...past(along, along + length, sheet.length, `piece ${piece} lies past an end of it`),
    ...past(across, across + width, sheet.width, `piece ${piece} lies past an edge of it`),
  ];
}

const overcut = (where: Where, value: number, limit: number, what: string): Finding =>
  finding('board-overcut', 'error', {
    where,
    value: fromGrid(value),
    limit: fromGrid(limit),
    unit: 'mm',
    source: asGiven,
    words: { what },
  });

const apart = (a: Placed, b: Placed): number =>
  Math.max(distanceApart(a, b, 'along', 'length'), distanceApart(a, b, 'across', 'width'));

const distanceApart = (a: Placed, b: Placed, way: 'along' | 'across', size: 'length' | 'width'): number =>
  Math.max(b[way] - a[way] - a[size], a[way] - b[way] - b[size]);

function tooMany({ given: { layout } }: Work, boards: readonly BoardStock[]): Finding[] {
  return boards.flatMap(({ id, atHand, available = atHand ? 1 : undefined }) => {
    const taken = layout.boards.filter(({ stock, opened }) => stock === id && opened !== true);
    if (available === undefined || taken.length <= available) return [];
    const where = { board: taken[available].id };
    return [
      finding('stock-exceeded', 'error', {
        where,
        value: taken.length,
        limit: available,
        unit: 'boards',
        source: asGiven,
        words: { stock: id },
      }),
    ];
  });
}
