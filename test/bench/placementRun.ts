import { type BoardStock, type RuleKey, type RulesInput, ruleTable } from 'soffitwright';
import type { RoomToLay } from '../generators/rooms.js';

/** A room to lay; several sizes of board will do. */
export interface RoomToSolve extends Omit<RoomToLay, 'boards' | 'rules'> {
  readonly boards: readonly BoardStock[];
  readonly rules: RulesInput;
}

/** A piece from one place of a row to another. Lengths in whole thousandths of a mm. */
export interface ModelPiece {
  readonly from: number;
  readonly to: number;
  /** Which of the sizes it is. */
  readonly size: number;
}

/** Pieces that take the same length from each board. */
export interface ModelSize {
  /** What it takes from each of the boards; undefined where the board is too short. */
  readonly taken: readonly (number | undefined)[];
  /** So many of them fit in one row without overlap. */
  readonly most: number;
}

/** What every row of a rectangular room has in common. */
export interface ModelRun {
  /** The two ends and the joist centres between them. */
  readonly places: readonly number[];
  readonly pieces: readonly ModelPiece[];
  readonly sizes: readonly ModelSize[];
  readonly stagger: number;
  readonly pieceLength: number;
  readonly kerfs: readonly number[];
  /** Half the gap of a butt joint, and how much wider a gap may be left beside a piece at a joint or a wall. */
  readonly halfGap: number;
  readonly jointGive: number;
  readonly wallGive: number;
}

const thousandths = (length: number): number => Math.round(length * 1000);

/** A piece longer than its board by no more than this may be used uncut, mm. */
const EXCESS = 5;
/** Timber under each side of a butt joint, mm. */
const LEAST_TIMBER = 10;

/** The rules that the model knows, read from the rows of the rule set. */
function modelRules(rules: RulesInput) {
  const first = (key: RuleKey) => ruleTable(rules, key)[0];
  const value = (key: RuleKey): number => first(key).value as number;
  const most = (key: RuleKey): number => first(key).range?.greatest ?? value(key);
  return { value, most };
}

/**
 * Where a row may be divided, and every piece that the rules and a board allow. What a piece takes from its board, with its kerf,
 * is rounded down to the grain, mm; none when 0.
 */
export function modelRun({ room, joists, boards, rules }: RoomToSolve, grain: number): ModelRun {
  const { value, most } = modelRules(rules);
  const along = room.outline.map(({ x, y }) => thousandths(joists.direction === 'y' ? x : y));
  const gap = thousandths(value('perimeter.gap'));
  const [low, high] = [Math.min(...along) + gap, Math.max(...along) - gap];
  const centres = joists.positions.map(thousandths).sort((a, b) => a - b);
  const jointGap = thousandths(value('joint.gap'));
  const spare = (thousandths(joists.width) - jointGap) / 2 - thousandths(LEAST_TIMBER);
  const places = [low, ...(spare < 0 ? [] : centres.filter((at) => at > low && at < high)), high];
  const wallGive = thousandths(most('perimeter.gap')) - gap;
  const jointGive = Math.min(spare, (thousandths(most('joint.gap')) - jointGap) / 2);
  const supports = value('piece.minimumSupports');
  const pieceLength = thousandths(value('piece.minimumLength'));
  const kerfs = boards.map((board) => thousandths(board.kerf ?? value('kerf')));
  const step = Math.max(1, thousandths(grain));
  const rounded = (length: number, stock: number) => length - ((length + kerfs[stock]) % step);
  const sizes: ModelSize['taken'][] = [];
  const known = new Map<string, number>();
  const pieces: ModelPiece[] = [];
  for (let from = 0; from < places.length - 1; from++) {
    for (let to = from + 1; to < places.length; to++) {
      const nominal = places[to] - places[from];
      if (nominal < pieceLength) continue;
      if (centres.filter((at) => at >= places[from] && at <= places[to]).length < supports) continue;
      const joints = (from > 0 ? 1 : 0) + (to < places.length - 1 ? 1 : 0);
      const cut = nominal - (joints * jointGap) / 2;
      const give = joints * jointGive + (2 - joints) * wallGive;
      const taken = boards.map((board, stock) => {
        const length = thousandths(board.length);
        if (cut <= length) return rounded(cut, stock);
        return cut - length <= give && nominal - length <= thousandths(EXCESS) ? rounded(length, stock) : undefined;
      });
      if (taken.every((length) => length === undefined)) continue;
      const key = taken.join(' ');
      const size = known.get(key) ?? sizes.push(taken) - 1;
      known.set(key, size);
      pieces.push({ from, to, size });
    }
  }
  return {
    places,
    pieces,
    sizes: sizes.map((taken, size) => ({ taken, most: disjoint(pieces.filter((piece) => piece.size === size)) })),
    stagger: thousandths(value('stagger.minimum')),
    pieceLength,
    kerfs,
    halfGap: jointGap / 2,
    jointGive,
    wallGive,
  };
}

/** How many of the pieces can lie in one row: the one that ends first, then the first that begins after it. */
function disjoint(pieces: readonly ModelPiece[]): number {
  let [count, end] = [0, 0];
  for (const { from, to } of [...pieces].sort((a, b) => a.to - b.to)) {
    if (from < end) continue;
    count++;
    end = to;
  }
  return count;
}

/**
 * Widths of full rows from the low wall and one ripped row for what is left, mm; undefined where that row is too narrow. What the
 * gaps at the two walls can take up needs no row.
 */
export function fullRows({ room, joists, boards, rules }: RoomToSolve): number[] | undefined {
  const { value, most } = modelRules(rules);
  const across = room.outline.map(({ x, y }) => thousandths(joists.direction === 'y' ? y : x));
  const gap = thousandths(value('perimeter.gap'));
  const depth = Math.max(...across) - Math.min(...across) - 2 * gap;
  const width = thousandths(boards[0].width);
  const rest = depth % width;
  const rows = Array.from({ length: Math.floor(depth / width) }, () => boards[0].width);
  if (rows.length > 0 && rest <= 2 * (thousandths(most('perimeter.gap')) - gap)) return rows;
  return rest < thousandths(value('row.minimumWidth')) ? undefined : [...rows, rest / 1000];
}
