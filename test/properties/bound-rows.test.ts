import { rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { anyRowsOf } from '../../src/boards/anyRows.js';
import { type LengthWeight, lengthWeights, weightOf } from '../../src/boards/lengthWeights.js';
import { leastOf, sizeOf } from '../../src/boards/lineAcross.js';
import { type PlacementProblem, placementProblem } from '../../src/boards/placementProblem.js';
import { widthOn } from '../../src/boards/possiblePieces.js';
import { leastToEnd } from '../../src/boards/rowGraph.js';
import { rowFamilies } from '../../src/boards/rowLayouts.js';
import { rangedRows } from '../../src/boards/rowRange.js';
import { rowSets } from '../../src/boards/rowSets.js';
import { boardOf, Draw } from '../generators/rooms.js';
import { joistAt } from '../generators/scenario.js';

const ROOMS = 120;

/** A room of about 2 to 4 m by 2 to 6 m, a few mm or more out of square, a round light in some, upright joists at any places. */
function slanting(seed: number): PlacementProblem {
  const draw = new Draw(seed);
  const [w, d] = [draw.between(2000, 4000), draw.between(2000, 6000)];
  const out = (): number => draw.from([0, 1, 2, 5, 40, 150]);
  const [a, b] = rectangle(w, d);
  const outline = [a, b, { x: w - out(), y: d - out() }, { x: out(), y: d }];
  const places: number[] = [];
  for (let x = draw.between(20, 60); x < w - 200; x += draw.between(250, 620)) places.push(x);
  const joists = [...places, w - 210].map((x, at) => joistAt(`J${at + 1}`, x, 0, d));
  const [x, y, r] = [draw.between(700, w - 700), draw.between(700, d - 700), draw.from([60, 300])];
  const round = Array.from({ length: 12 }, (_, k) => ({
    x: x + r * Math.cos((k * Math.PI) / 6),
    y: y + r * Math.sin((k * Math.PI) / 6),
  }));
  const openings = draw.between(0, 1) === 1 ? [{ kind: 'flue' as const, outline: round }] : [];
  return placementProblem({ room: { outline, openings }, joists, boards: [boardOf(2400, draw.from([900, 1200]))] });
}

/** Rows that can be divided so that they weigh less than is claimed of all such rows. */
function tooHeavy(problem: PlacementProblem): string[] {
  const any = anyRowsOf(
    problem,
    rowSets(problem).map(({ layout }) => layout),
  );
  const [part] = problem.parts;
  return rowFamilies(problem, 0).flatMap((family) => {
    const bands = family.bands(family.from);
    const widths = bands.map(({ width }) => width);
    const [set] = rowSets({ ...problem, rowWidths: widths, parts: [{ ...part, rowWidths: { widths, from: 0 } }] });
    if (set === undefined || set.layout.bands.some(({ low }, row) => low !== bands[row].low)) return [];
    const range = { part: 0, family, from: family.from, to: Math.min(family.to, family.from + 50_000) };
    return rangedRows(any, [range]).flatMap(({ row, line, heights }) => {
      const { graph, band } = set.rows[row];
      const area = (weight: LengthWeight, cut: number, width: number): number =>
        weightOf(weight, sizeOf(problem, cut), any.long) * (width + any.kerf);
      const sizes = line.pieces.flatMap(({ cut }) => (cut === undefined ? [] : [sizeOf(problem, cut)]));
      return lengthWeights(sizes, any.long).flatMap((weight) => {
        const ofPiece = graph.piece.map((piece) => (piece ? area(weight, piece.cut, widthOn(piece, band.width)) : 0));
        const [real] = leastToEnd(graph, Float64Array.from(ofPiece));
        const claimed = leastOf(line, ({ cut, height }) => (cut === undefined ? 0 : area(weight, cut, heights[height])));
        return claimed > real ? [`row ${row} of ${widths.join()}: ${real} by ${weight.family}, ${claimed} claimed`] : [];
      });
    });
  });
}

describe('what is claimed of all rows alike', () => {
  it(`is no more than any row of ${ROOMS} rooms out of square comes to`, () => {
    for (let seed = 0; seed < ROOMS; seed++) expect(tooHeavy(slanting(seed)), `room ${seed}`).toEqual([]);
  }, 60_000);
});
