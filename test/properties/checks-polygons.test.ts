import { fc, test } from '@fast-check/vitest';
import { checkLayout, type Finding, type PieceToCheck } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyCutPolygon, areaOf, type CutPolygon, girthOf, pieceArea, thicknessOf } from '../generators/randomPolygons.js';
import { TURNS, turnedAbout } from '../generators/turnedAbout.js';

/** All 5000 are tried with POLYGONS=5000 in the environment; a part of them is enough from day to day. */
const POLYGONS = Number(process.env.POLYGONS ?? 250);
const SEED = 20_261_126;
const runs = (numRuns: number) => ({ seed: SEED, numRuns: Math.ceil(numRuns) });
/** ms */
const LONG = 100 * POLYGONS + 60_000;

const PLACE = ['cover-gap', 'overlap', 'outside-room', 'across-zones', 'over-opening', 'perimeter-gap'];

const placesOf = (
  { check, turn }: CutPolygon,
  change: (pieces: readonly PieceToCheck[]) => readonly PieceToCheck[] = (pieces) => pieces,
): Finding[] => {
  const { pieces, boards } = check.layout;
  const turned = turnedAbout({ ...check, layout: { pieces: change(pieces), boards } }, TURNS[turn][1]);
  return checkLayout(turned).filter(({ code }) => PLACE.includes(code));
};

const anyRoom = anyCutPolygon(TURNS.length);

describe('rooms of any outline with openings, cut up exactly', () => {
  test.prop([anyRoom], runs(POLYGONS))(
    'are covered, and pieces, openings and room agree in area',
    (room) => {
      const { outline } = room.check.room;
      const cut = room.check.layout.pieces.reduce((sum, piece) => sum + pieceArea(piece), 0);
      const open = room.holes.reduce((sum, hole) => sum + areaOf(hole), 0);
      const borders = [outline, ...room.holes, ...room.check.layout.pieces.map((piece) => piece.outline)];
      const rounding = borders.reduce((sum, ring) => sum + girthOf(ring), 0) * 0.001;
      expect(Math.abs(areaOf(outline) - cut - open)).toBeLessThanOrEqual(rounding);
      expect(placesOf(room)).toEqual([]);
    },
    LONG,
  );

  test.prop([anyRoom, fc.nat()], runs(POLYGONS / 5))(
    'are not covered when a piece is missing',
    (room, pick) => {
      const { pieces } = room.check.layout;
      const missing = pieces[pick % pieces.length];
      fc.pre(thicknessOf(missing) > 20);
      expect(placesOf(room, (all) => all.filter((piece) => piece !== missing)).map(({ code }) => code)).toContain('cover-gap');
    },
    LONG,
  );

  test.prop([anyRoom, fc.nat()], runs(POLYGONS / 5))(
    'have a piece twice when it is laid twice',
    (room, pick) => {
      const { pieces } = room.check.layout;
      const again = pieces[pick % pieces.length];
      fc.pre(thicknessOf(again) > 1);
      expect(placesOf(room, (all) => [...all, { ...again, id: 'again' }]).map(({ code }) => code)).toContain('overlap');
    },
    LONG,
  );

  test.prop([anyRoom, fc.nat(), fc.constantFrom([12, 0], [-12, 0], [0, 12], [0, -12], [9, 9])], runs(POLYGONS / 5))(
    'are wrong when a piece is moved by more than any gap',
    (room, pick, [dx, dy]) => {
      const { pieces } = room.check.layout;
      const hit = pieces[pick % pieces.length];
      fc.pre(thicknessOf(hit) > 60);
      const move = (points: PieceToCheck['outline']) => points.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
      const codes = placesOf(room, (all) =>
        all.map((piece) =>
          piece === hit
            ? { ...piece, outline: move(piece.outline), ...(piece.holes && { holes: piece.holes.map(move) }) }
            : piece,
        ),
      ).map(({ code }) => code);
      // Along a wall it may leave no gap behind it.
      expect(codes.some((code) => ['overlap', 'outside-room', 'over-opening'].includes(code))).toBe(true);
    },
    LONG,
  );

  test.prop([anyCutPolygon(TURNS.length, 0.05)], runs(POLYGONS / 5))(
    'show a gap of a twentieth where none is allowed',
    (room) => {
      const { outline } = room.check.room;
      const cut = room.check.layout.pieces.reduce((sum, piece) => sum + pieceArea(piece), 0);
      const open = room.holes.reduce((sum, hole) => sum + areaOf(hole), 0);
      // Beyond what rounding takes away.
      const rounding = room.check.layout.pieces.reduce((sum, piece) => sum + girthOf(piece.outline), 0) * 0.001;
      fc.pre(areaOf(outline) - cut - open > 0.05 * 50 + rounding);
      expect(placesOf(room).map(({ code }) => code)).toContain('cover-gap');
    },
    LONG,
  );
});
