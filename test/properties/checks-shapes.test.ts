import { fc, test } from '@fast-check/vitest';
import { checkLayout, type Finding, type PieceToCheck } from 'soffitwright';
import { describe, expect } from 'vitest';
import type { CheckByHand } from '../generators/layoutsByHand.js';
import { anyShapedRoom } from '../generators/randomShapes.js';
import { TURNS, turnedAbout } from '../generators/turnedAbout.js';

const SEED = 20_261_127;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });
/** ms */
const LONG = 120_000;

const anyRoom = anyShapedRoom(TURNS.length);

const errorsOf = (check: CheckByHand, turn: number): Finding[] =>
  checkLayout(turnedAbout(check, TURNS[turn][1])).filter(({ severity }) => severity === 'error');

const withPieces = (check: CheckByHand, pieces: readonly PieceToCheck[]): CheckByHand => ({
  ...check,
  layout: { ...check.layout, pieces },
});

const moved = (piece: PieceToCheck, dx: number, dy: number): PieceToCheck => ({
  ...piece,
  outline: piece.outline.map(({ x, y }) => ({ x: x + dx, y: y + dy })),
});

const HURTS: Readonly<Record<string, (piece: PieceToCheck) => readonly PieceToCheck[]>> = {
  'left out': () => [],
  'laid twice': (piece) => [piece, { ...piece, id: `${piece.id} again` }],
  'moved 16 to the right': (piece) => [moved(piece, 16, 0)],
  'moved 16 to the left': (piece) => [moved(piece, -16, 0)],
  'moved 16 up': (piece) => [moved(piece, 0, 16)],
  'moved 16 down': (piece) => [moved(piece, 0, -16)],
};

describe('rooms as they are found, cut into rows', () => {
  test.prop([anyRoom], runs(60))(
    'have no error',
    ({ check, turn }) => {
      expect(errorsOf(check, turn)).toEqual([]);
    },
    LONG,
  );

  test.prop([anyRoom, fc.nat(), fc.constantFrom(...Object.keys(HURTS))], runs(60))(
    'have one once a piece is hurt',
    ({ check, turn }, pick, name) => {
      const { pieces } = check.layout;
      const hurt = pieces.flatMap((piece, i) => (i === pick % pieces.length ? HURTS[name](piece) : [piece]));
      const codes = errorsOf(withPieces(check, hurt), turn).map(({ code }) => code);
      expect(codes.some((code) => ['cover-gap', 'overlap', 'outside-room'].includes(code))).toBe(true);
    },
    LONG,
  );

  test.prop([anyRoom, fc.nat()], runs(60))(
    'have one once the joist of a butt joint is not there',
    ({ check, turn }, pick) => {
      const ends = check.layout.pieces.flatMap(({ outline }) => [Math.max(...outline.map(({ x }) => x)) + 1.5]);
      const jointed = check.joists.filter(({ start }) => ends.some((end) => Math.abs(end - start.x) < 0.01));
      fc.pre(jointed.length > 0);
      const gone = jointed[pick % jointed.length].start.x;
      const joists = check.joists.filter(({ start }) => start.x !== gone);
      expect(errorsOf({ ...check, joists }, turn).map(({ code }) => code)).toContain('end-off-timber');
    },
    LONG,
  );

  test.prop([anyRoom, fc.nat(), fc.integer({ min: 14, max: 90 })], runs(60))(
    'have one once a joist under a joint stands elsewhere at one end',
    ({ check, turn }, pick, by) => {
      const ends = check.layout.pieces.flatMap(({ outline }) => [Math.max(...outline.map(({ x }) => x)) + 1.5]);
      const jointed = check.joists.filter(({ start }) => ends.some((end) => Math.abs(end - start.x) < 0.01));
      fc.pre(jointed.length > 0);
      const leans = jointed[pick % jointed.length];
      const rows = [...new Set(check.layout.pieces.flatMap(({ outline }) => outline.map(({ y }) => y)))];
      const span = Math.max(...rows) - Math.min(...rows);
      // So that over every row the joist is out by 14 and more at one end of the joint at least.
      const out = (by * 2 * span) / 300;
      const joists = check.joists.map((joist) =>
        joist.start.x === leans.start.x ? { ...joist, end: { ...joist.end, x: joist.end.x + out } } : joist,
      );
      fc.pre(out < leans.end.y - leans.start.y);
      expect(errorsOf({ ...check, joists }, turn).map(({ code }) => code)).toContain('end-off-timber');
    },
    LONG,
  );
});
