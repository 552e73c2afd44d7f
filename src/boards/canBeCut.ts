import type { Laid } from './laid.js';
import { areaOf, packKinds } from './packKinds.js';
import { kindOf, type PieceKind } from './pieceKinds.js';
import type { PlacementProblem } from './placementProblem.js';

/** Placings tried to find it out. */
const STEPS = 4000;

/** Whether the pieces of a layout can be cut from as many of a problem's boards as the layout has, as far as a short search tells. */
export function canBeCut(problem: PlacementProblem, { wanted, boards }: Laid): boolean {
  const found = new Map<string, { readonly kind: PieceKind; count: number }>();
  const narrowest = Math.min(...wanted.map(({ width }) => width));
  for (const { piece, width } of wanted) {
    const kind = kindOf(problem, piece, width, narrowest);
    const key = `${width} ${kind.sizes.join(' ')}`;
    const known = found.get(key) ?? { kind, count: 0 };
    known.count++;
    found.set(key, known);
  }
  const kinds = [...found.values()].sort((a, b) => b.kind.width - a.kind.width || b.kind.size - a.kind.size);
  if (kinds.some(({ kind }) => kind.sizes.every((size) => size === Infinity))) return false;
  const pieces = kinds.map(({ kind }) => kind);
  const packed = packKinds(
    problem.stocks,
    pieces,
    new Int32Array(kinds.map(({ count }) => count)),
    {
      caps: [{ of: problem.stocks.map(() => 1), most: boards.length }],
      available: problem.stocks.map(({ board }) => board.available ?? Infinity),
    },
    [areaOf(problem, pieces)],
    { left: STEPS },
  );
  return typeof packed !== 'string';
}
