import { type CuttingModel, cuttingModel } from './placementCutting.js';
import { type ModelRow, type ModelRows, modelRows, type RoomToSolve } from './placementRows.js';
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
  /** From the low wall; `x0_3` says whether row 0 has its piece 3. */
  readonly rows: readonly ModelRow[];
  readonly cutting: CuttingModel;
}

/**
 * A mixed-integer model of one room with given rows, undefined where a row has no piece to start with.
 *
 * Rows: every run of a row is a path over the joist centres from one of its ends to the other, one binary variable for each
 * piece; `y` says whether a row has a butt joint on a joist, and neighbouring rows have none closer than the stagger, nor on the
 * same joist, whichever runs they are in.
 *
 * Cutting: see `cuttingModel`. For each width and size of piece as many are cut as the rows ask for, or more.
 */
export function placementModel(
  room: RoomToSolve,
  { rowWidths, strips, mostBoards, grain }: ModelQuestion,
): PlacementModel | undefined {
  const model = modelRows(room, rowWidths, grain ?? 0);
  const { rows } = model;
  if (rows.some(({ pieces }) => pieces.length === 0)) return undefined;
  const cutting = cuttingModel(room.boards, model, rowWidths, strips);
  const pieces = rows.flatMap((each, row) => each.pieces.map((_, piece) => `x${row}_${piece}`));
  const boards = cutting.boards.map(({ name }) => name);
  const lines = [...rows.flatMap(pathLines), ...staggerLines(model), ...demandLines(model, rowWidths, cutting), ...cutting.lines];
  if (mostBoards !== undefined) lines.push(`${sum(boards)} <= ${mostBoards}`);
  const text = [
    'Minimize',
    ` obj: ${sum(mostBoards === undefined ? boards : pieces)}`,
    'Subject To',
    ...lines.map((line, index) => ` c${index}: ${line}`),
    'Bounds',
    ...rows.flatMap((each, row) => joints(each).map((place) => ` 0 <= y${row}_${place} <= 1`)),
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
  return { text, rows, cutting };
}

const joints = ({ places }: ModelRow): number[] => places.flatMap(({ kind }, place) => (kind === 'joint' ? [place] : []));

function pathLines({ places, pieces }: ModelRow, row: number): string[] {
  const named = (end: 'from' | 'to', place: number) =>
    pieces.flatMap((piece, index) => (piece[end] === place ? [`x${row}_${index}`] : []));
  return places.flatMap(({ kind }, place) => {
    const [arriving, leaving] = [named('to', place), named('from', place)];
    if (kind === 'start') return [`${leaving.length === 0 ? `0 x${row}_0` : sum(leaving)} = 1`];
    const joint = [`y${row}_${place}`];
    return kind === 'joint' ? [balance(arriving, joint, '='), balance(leaving, joint, '=')] : [];
  });
}

/**
 * No joint within the stagger of one in the row below. Joints of one row that are closer than the least piece exclude each
 * other, so they share a line.
 */
function staggerLines({ rows, stagger, pieceLength }: ModelRows): string[] {
  const lines: string[] = [];
  for (let row = 0; row < rows.length - 1; row++) {
    const [lower, upper] = [rows[row], rows[row + 1]];
    for (const place of joints(lower)) {
      const { at } = lower.places[place];
      let group: number[] = [];
      const flush = (): void => {
        if (group.length > 0) lines.push(`y${row}_${place} + ${sum(group.map((near) => `y${row + 1}_${near}`))} <= 1`);
        group = [];
      };
      for (const near of joints(upper)) {
        const its = upper.places[near].at;
        if (its !== at && Math.abs(its - at) >= stagger) continue;
        if (group.length > 0 && its - upper.places[group[0]].at >= pieceLength) flush();
        group.push(near);
      }
      flush();
    }
  }
  return lines;
}

function demandLines({ rows, sizes }: ModelRows, rowWidths: readonly number[], { cut }: CuttingModel): string[] {
  const lines: string[] = [];
  for (const width of new Set(rowWidths)) {
    sizes.forEach((_, size) => {
      const wanted = rows.flatMap(({ pieces }, row) =>
        rowWidths[row] === width ? pieces.flatMap((piece, index) => (piece.size === size ? [`x${row}_${index}`] : [])) : [],
      );
      if (wanted.length > 0) lines.push(balance(cut(width, size), wanted, '>='));
    });
  }
  return lines;
}
