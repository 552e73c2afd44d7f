import type { BoardStock, Direction, Opening, Overrides, Point } from 'soffitwright';
import { block } from './layoutsByHand.js';
import { boardOf, Draw } from './rooms.js';

/** A room with rows that a chimney breast or an opening parts into two runs, every piece of them a plain rectangle. */
export interface SplitRoom {
  readonly room: { readonly outline: readonly Point[]; readonly openings: readonly Opening[] };
  readonly joists: { readonly direction: Direction; readonly positions: readonly number[]; readonly width: number };
  readonly boards: readonly BoardStock[];
  readonly rules: Overrides;
  /** From the low wall, mm. */
  readonly rowWidths: readonly number[];
}

/** Length and width of the boards, mm; the most usual stands twice. */
const SIZES = [
  [1800, 900],
  [2400, 1200],
  [2400, 1200],
  [3000, 1200],
] as const;

/** Least length of a run beside what parts its row, mm. */
const BESIDE = 200;

/** What parts rows: across the joists from one place to another, beginning with one row and as many rows deep. */
interface Parting {
  readonly near: number;
  readonly far: number;
  readonly row: number;
  readonly deep: number;
}

/**
 * One small room for each seed: two to four rows, the first or the last ripped, or both alike; a breast as deep as one row or two at
 * its far wall or its near one, or an opening as deep as one, or both of them; joists either way. Whole mm.
 */
export function splitRoom(seed: number): SplitRoom {
  const draw = new Draw(seed);
  const [length, width] = draw.from(SIZES);
  const [count, across] = [draw.between(2, 4), draw.between(2600, 5200)];
  const [ripped, rips] = [draw.between(200, width), draw.from([[0], [count - 1], [0, count - 1]])];
  const rowWidths = Array.from({ length: count }, (_, row) => (rips.includes(row) ? ripped : width));
  const gaps = draw.from([[0, 0], [3, 3], [5, 3], null, null]);
  const gap = gaps?.[0] ?? 5;
  const within = (least: number, greatest: number): Pick<Parting, 'near' | 'far'> => {
    const near = draw.between(gap + BESIDE, across - least - gap - BESIDE);
    return { near, far: near + draw.between(least, Math.min(greatest, across - near - gap - BESIDE)) };
  };
  const kind = draw.from(['breast', 'breast', 'opening', 'both'] as const);
  const deep = kind === 'opening' ? 0 : draw.between(1, Math.min(2, count - 1));
  const breast = deep === 0 ? undefined : { ...within(400, 1600), row: count - deep, deep };
  const opening = kind === 'breast' ? undefined : { ...within(150, 700), row: draw.between(0, count - deep - 1), deep: 1 };

  const [isSwapped, isTurned] = [draw.between(0, 1) === 1, draw.between(0, 1) === 1];
  const depth = levelOf(rowWidths, gap, count) + gap;
  const onPlan = ({ x, y }: Point): Point => {
    const v = isTurned ? depth - y : y;
    return isSwapped ? { x: v, y: x } : { x, y: v };
  };
  const spacing = draw.from([400, 400, 450, 600]);
  const positions: number[] = [];
  for (let at = draw.between(30, spacing); at < across - 30; at += spacing) positions.push(at);
  return {
    room: {
      outline: outlineWith(breast, rowWidths, gap, across).map(onPlan),
      openings: opening === undefined ? [] : [{ kind: 'flue', outline: sidesOf(opening, rowWidths, gap).map(onPlan) }],
    },
    joists: { direction: isSwapped ? 'x' : 'y', positions, width: draw.from([47, 50, 63]) },
    boards: [boardOf(length, width, draw.from([0, 0, 3]))],
    rules: {
      ...(gaps !== null && { 'perimeter.gap': gaps[0], 'joint.gap': gaps[1] }),
      ...(draw.between(0, 2) === 0 && { 'stagger.minimum': draw.between(300, 800) }),
      ...(draw.between(0, 2) === 0 && { 'piece.minimumLength': draw.between(200, 600) }),
    },
    rowWidths: isTurned ? [...rowWidths].reverse() : rowWidths,
  };
}

/** Where a row begins, from the near wall. */
const levelOf = (rowWidths: readonly number[], gap: number, row: number): number =>
  rowWidths.slice(0, row).reduce((sum, width) => sum + width, gap);

/** The front of a breast is the gap beyond the row before it, so that this row is as wide there as elsewhere. */
function outlineWith(breast: Parting | undefined, rowWidths: readonly number[], gap: number, across: number): Point[] {
  const depth = levelOf(rowWidths, gap, rowWidths.length) + gap;
  const [near, far, farAtBack, nearAtBack] = block(0, across, 0, depth);
  if (breast === undefined) return [near, far, farAtBack, nearAtBack];
  const [left, right, rightAtBack, leftAtBack] = block(breast.near, breast.far, levelOf(rowWidths, gap, breast.row) + gap, depth);
  return [near, far, farAtBack, rightAtBack, right, left, leftAtBack, nearAtBack];
}

const sidesOf = ({ near, far, row, deep }: Parting, rowWidths: readonly number[], gap: number): Point[] =>
  block(near, far, levelOf(rowWidths, gap, row), levelOf(rowWidths, gap, row + deep));
