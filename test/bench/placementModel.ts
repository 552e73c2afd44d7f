import { type CuttingModel, cuttingModel } from './placementCutting.js';
import { type ModelRun, modelRun, type RoomToSolve } from './placementRun.js';
import { balance, sum } from './placementTerms.js';

/** What the model is asked for. */
export interface ModelQuestion {
  /** Widths of the rows, mm, from the low wall. */
  readonly rowWidths: readonly number[];
  /** Whether strips of two widths are cut as boards are, or a bound is wanted; the same with one ripped width. */
  readonly strips: 'cut' | 'bound';
  /** Lengths are rounded down to multiples of this, mm, so that there are fewer of them: a bound then, never more than the optimum. */
  readonly grain?: number;
  /** The fewest pieces with this many boards, instead of the fewest boards. */
  readonly mostBoards?: number;
}

export interface PlacementModel {
  /** In the LP format. */
  readonly text: string;
  readonly run: ModelRun;
  /** For each row the pieces that it can have; `x0_3` says whether row 0 has piece 3. */
  readonly rows: readonly (readonly number[])[];
  readonly cutting: CuttingModel;
}

/**
 * A mixed-integer model of one room with given rows, undefined where a row has no piece to start with.
 *
 * Rows: every row is a path from wall to wall over the joist centres, one binary variable for each piece; `y` says whether a row
 * has a butt joint on a joist, and neighbouring rows have none closer than the stagger, nor on the same joist.
 *
 * Cutting: see `cuttingModel`. For each width and size of piece as many are cut as the rows ask for, or more.
 */
export function placementModel(
  room: RoomToSolve,
  { rowWidths, strips, mostBoards, grain }: ModelQuestion,
): PlacementModel | undefined {
  const run = modelRun(room, grain ?? 0);
  const rows = rowWidths.map((width) => rowPieces(room, run, width));
  if (rows.some((pieces) => pieces.length === 0)) return undefined;
  const cutting = cuttingModel(room.boards, run, rowWidths, strips);
  const pieces = rows.flatMap((indices, row) => indices.map((piece) => `x${row}_${piece}`));
  const boards = cutting.boards.map(({ name }) => name);
  const lines = [
    ...rows.flatMap((indices, row) => pathLines(run, indices, row)),
    ...staggerLines(run, rowWidths.length),
    ...demandLines(run, rows, rowWidths, cutting),
    ...cutting.lines,
  ];
  if (mostBoards !== undefined) lines.push(`${sum(boards)} <= ${mostBoards}`);
  const text = [
    'Minimize',
    ` obj: ${sum(mostBoards === undefined ? boards : pieces)}`,
    'Subject To',
    ...lines.map((line, index) => ` c${index}: ${line}`),
    'Bounds',
    ...rows.flatMap((_, row) => joints(run).map((place) => ` 0 <= y${row}_${place} <= 1`)),
    ...cutting.boards
      .filter(({ available }) => available !== undefined)
      .map(({ name, available }) => ` 0 <= ${name} <= ${available}`),
    'Binaries',
    ...pieces.map((name) => ` ${name}`),
    'Generals',
    ...cutting.whole.map((name) => ` ${name}`),
    'End',
    '',
  ].join('\n');
  return { text, run, rows, cutting };
}

const joints = ({ places }: ModelRun): number[] => places.slice(1, -1).map((_, index) => index + 1);

/** The pieces that a row of this width can have from a board wide and long enough. */
const rowPieces = ({ boards }: RoomToSolve, { pieces, sizes }: ModelRun, width: number): number[] =>
  pieces.flatMap(({ size }, index) =>
    boards.some((board, stock) => board.width >= width && sizes[size].taken[stock] !== undefined) ? [index] : [],
  );

function pathLines({ places, pieces }: ModelRun, indices: readonly number[], row: number): string[] {
  const name = (index: number) => `x${row}_${index}`;
  const leaving = (place: number) => indices.filter((index) => pieces[index].from === place).map(name);
  const arriving = (place: number) => indices.filter((index) => pieces[index].to === place).map(name);
  const lines: string[] = [`${leaving(0).length === 0 ? `0 ${name(indices[0])}` : sum(leaving(0))} = 1`];
  for (let place = 1; place < places.length - 1; place++) {
    lines.push(balance(arriving(place), [`y${row}_${place}`], '='), balance(leaving(place), [`y${row}_${place}`], '='));
  }
  return lines;
}

/**
 * No joint within the stagger of one in the row below. Joints of one row that are closer than the least piece exclude each
 * other, so they share a line.
 */
function staggerLines(run: ModelRun, rows: number): string[] {
  const { places, stagger, pieceLength } = run;
  const lines: string[] = [];
  for (let row = 0; row < rows - 1; row++) {
    for (const place of joints(run)) {
      let group: number[] = [];
      const flush = (): void => {
        if (group.length > 0) lines.push(`y${row}_${place} + ${sum(group.map((near) => `y${row + 1}_${near}`))} <= 1`);
        group = [];
      };
      for (const near of joints(run)) {
        if (near !== place && Math.abs(places[near] - places[place]) >= stagger) continue;
        if (group.length > 0 && places[near] - places[group[0]] >= pieceLength) flush();
        group.push(near);
      }
      flush();
    }
  }
  return lines;
}

function demandLines(
  { pieces, sizes }: ModelRun,
  rows: readonly (readonly number[])[],
  rowWidths: readonly number[],
  { cut }: CuttingModel,
): string[] {
  const lines: string[] = [];
  for (const width of new Set(rowWidths)) {
    sizes.forEach((_, size) => {
      const wanted = rows.flatMap((indices, row) =>
        rowWidths[row] === width ? indices.filter((index) => pieces[index].size === size).map((index) => `x${row}_${index}`) : [],
      );
      if (wanted.length > 0) lines.push(balance(cut(width, size), wanted, '>='));
    });
  }
  return lines;
}
