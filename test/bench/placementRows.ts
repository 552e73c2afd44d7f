import { type BoardStock, type Room, type RuleKey, type RulesInput, ruleTable } from 'soffitwright';
import type { RoomToLay } from '../generators/rooms.js';
import { rowStretches, type Stretch } from './placementStretches.js';

/** A room to lay, its walls and openings along the joists and across them; several sizes of board will do. */
export interface RoomToSolve extends Pick<RoomToLay, 'joists'> {
  readonly room: Pick<Room, 'outline' | 'openings'>;
  readonly boards: readonly BoardStock[];
  readonly rules: RulesInput;
}

/** Where a piece of a row may end. Lengths in whole thousandths of a mm. */
export interface ModelPlace {
  readonly at: number;
  /** The ends of a run, at a wall or an opening, and the joist centres between them. */
  readonly kind: 'start' | 'joint' | 'end';
  /** How far before the place a piece ends, and how much wider than nominal its gap there may be left. */
  readonly back: number;
  readonly give: number;
  /** A joist this far beyond the place still carries what ends there. */
  readonly reach: number;
}

/** A piece from one place of a row to another. */
export interface ModelPiece {
  readonly from: number;
  readonly to: number;
  /** Which of the sizes it is. */
  readonly size: number;
}

/** One row: the places of its runs, one run after another, and every piece that the rules and a board allow. */
export interface ModelRow {
  readonly places: readonly ModelPlace[];
  readonly pieces: readonly ModelPiece[];
}

/** What pieces of one size take from each of the boards; undefined where the board is too short. */
export type ModelSize = readonly (number | undefined)[];

export interface ModelRows {
  readonly rows: readonly ModelRow[];
  readonly sizes: readonly ModelSize[];
  readonly stagger: number;
  readonly pieceLength: number;
  readonly kerfs: readonly number[];
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
 * Where rows of these widths may be divided, and every piece that the rules and a board allow. What a piece takes from its board,
 * with its kerf, is rounded down to the grain, mm; none when 0.
 */
export function modelRows(room: RoomToSolve, rowWidths: readonly number[], grain: number): ModelRows {
  const { boards } = room;
  const { value } = modelRules(room.rules);
  const kerfs = boards.map((board) => thousandths(board.kerf ?? value('kerf')));
  const step = Math.max(1, thousandths(grain));
  const sizes: ModelSize[] = [];
  const known = new Map<string, number>();
  const sizeOf = (taken: ModelSize): number => {
    const rounded = taken.map((length, stock) => length && length - ((length + kerfs[stock]) % step));
    const key = rounded.join(' ');
    const size = known.get(key) ?? sizes.push(rounded) - 1;
    known.set(key, size);
    return size;
  };
  const alike = new Map<string, ModelRow>();
  const rows = rowStretches(room, rowWidths, thousandths(value('perimeter.gap'))).map((stretches, row) => {
    const key = JSON.stringify([rowWidths[row], stretches]);
    const found = alike.get(key) ?? modelRow(room, rowWidths[row], stretches, sizeOf);
    alike.set(key, found);
    return found;
  });
  return {
    rows,
    sizes,
    stagger: thousandths(value('stagger.minimum')),
    pieceLength: thousandths(value('piece.minimumLength')),
    kerfs,
  };
}

function modelRow(
  { joists, boards, rules }: RoomToSolve,
  width: number,
  stretches: readonly Stretch[],
  sizeOf: (taken: ModelSize) => number,
): ModelRow {
  const { value } = modelRules(rules);
  const centres = joists.positions.map(thousandths).sort((a, b) => a - b);
  const places = stretches.flatMap((stretch) => placesOf(rules, stretch, centres, joists.width));
  const supports = value('piece.minimumSupports');
  const pieceLength = thousandths(value('piece.minimumLength'));
  const pieces: ModelPiece[] = [];
  places.forEach((low, from) => {
    if (low.kind === 'end') return;
    for (let to = from + 1; to < places.length && places[to].kind !== 'start'; to++) {
      const high = places[to];
      const nominal = high.at - low.at;
      const under = centres.filter((at) => at >= low.at - low.reach && at <= high.at + high.reach).length;
      // What fills its run by itself cannot be longer, nor lie on more joists: one is enough.
      const fills = low.kind === 'start' && high.kind === 'end';
      if (!fills && nominal < pieceLength) continue;
      if (under < (fills ? Math.min(1, supports) : supports)) continue;
      const cut = nominal - low.back - high.back;
      const taken = boards.map((board): number | undefined => {
        const length = thousandths(board.length);
        const isShort = cut - length <= low.give + high.give && nominal - length <= thousandths(EXCESS);
        return board.width >= width && (cut <= length || isShort) ? Math.min(cut, length) : undefined;
      });
      if (taken.some((length) => length !== undefined)) pieces.push({ from, to, size: sizeOf(taken) });
    }
  });
  return { places, pieces };
}

/** The two ends of a run and the joist centres between them. */
function placesOf(rules: RulesInput, { from, to }: Stretch, centres: readonly number[], timber: number): ModelPlace[] {
  const { value, most } = modelRules(rules);
  const [wallGap, jointGap] = [thousandths(value('perimeter.gap')), thousandths(value('joint.gap'))];
  const spare = (thousandths(timber) - jointGap) / 2 - thousandths(LEAST_TIMBER);
  const end = ({ at, meets }: Stretch['from'], kind: 'start' | 'end'): ModelPlace =>
    meets === 'wall'
      ? { at, kind, back: 0, give: thousandths(most('perimeter.gap')) - wallGap, reach: wallGap }
      : { at, kind, back: 0, give: 0, reach: 0 };
  const give = Math.min(spare, (thousandths(most('joint.gap')) - jointGap) / 2);
  const inside = spare < 0 ? [] : centres.filter((at) => at > from.at && at < to.at);
  return [
    end(from, 'start'),
    ...inside.map((at): ModelPlace => ({ at, kind: 'joint', back: jointGap / 2, give, reach: 0 })),
    end(to, 'end'),
  ];
}

/** How many of these pieces can lie in one row: the one that ends first, then the first that begins after it. */
export function disjoint(pieces: readonly ModelPiece[]): number {
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
