import { fromGrid } from '../survey/grid.js';
import { sidesOf } from '../survey/traceRings.js';
import type { LaidPiece, Span } from './laidPieces.js';

/** Length of all joints between boards, mm: butt joints, and the edges along which pieces of neighbouring rows lie together. */
export function jointLength(pieces: readonly LaidPiece[]): number {
  let length = 0;
  for (const piece of pieces) {
    if (piece.ends[1].meets !== 'board') continue;
    const met = pieces.filter(
      (other) => other.row === piece.row && other.ends[0].joist === piece.ends[1].joist && other.box.near > piece.box.near,
    );
    for (const other of met) length += common(piece.ends[1].along, other.ends[0].along);
  }
  const rows = byRow(pieces);
  for (const [row, below] of rows) {
    const above = rows.get(row + 1);
    if (above === undefined || above[0].band.part !== below[0].band.part) continue;
    const [lower, upper] = [merged(below, below[0].band.high), merged(above, above[0].band.low)];
    for (const mine of lower)
      for (const its of upper) length += Math.max(0, Math.min(mine[1], its[1]) - Math.max(mine[0], its[0]));
  }
  return fromGrid(length);
}

const common = (some: readonly Span[], others: readonly Span[]): number =>
  some.reduce(
    (sum, [from, to]) => others.reduce((its, [start, end]) => its + Math.max(0, Math.min(to, end) - Math.max(from, start)), sum),
    0,
  );

function byRow(pieces: readonly LaidPiece[]): Map<number, LaidPiece[]> {
  const rows = new Map<number, LaidPiece[]>();
  for (const piece of pieces) {
    const row = rows.get(piece.row) ?? [];
    row.push(piece);
    rows.set(piece.row, row);
  }
  return rows;
}

/** Where the pieces of a row reach its edge, over the gaps of their butt joints. */
function merged(pieces: readonly LaidPiece[], level: number): Span[] {
  const spans = pieces.flatMap((piece) => {
    const at = sidesOf(piece.shape.outline).flatMap(([a, b]): Span[] =>
      a.y === level && b.y === level ? [[Math.min(a.x, b.x), Math.max(a.x, b.x)]] : [],
    );
    const [low, high] = piece.ends;
    const reach = Math.max(low.gap, high.gap);
    return at.map(
      ([from, to]): Span => [
        low.meets === 'board' && from <= piece.box.near + reach ? from - reach : from,
        high.meets === 'board' && to >= piece.box.far - reach ? to + reach : to,
      ],
    );
  });
  spans.sort((a, b) => a[0] - b[0]);
  const stretches: Span[] = [];
  for (const span of spans) {
    const last = stretches[stretches.length - 1];
    if (last !== undefined && span[0] <= last[1]) stretches[stretches.length - 1] = [last[0], Math.max(last[1], span[1])];
    else stretches.push(span);
  }
  return stretches;
}
