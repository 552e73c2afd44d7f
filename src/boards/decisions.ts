import { addRow, price, restore, type Snapshot, snapshotOf } from './linearProgram.js';
import { addKind, cutAlone } from './relax.js';
import { type BoardCut, cutEntry, type Entry, type Relaxation, SMALL } from './relaxation.js';
import type { RowPath } from './rowPath.js';

/** Divides the next row in this way. */
export function fixNext(relaxation: Relaxation, path: RowPath): void {
  const { caps, capRow, kindRow, open, fixed } = relaxation;
  const { group } = path.sort;
  for (const kind of path.kinds) if (kindRow[kind] < 0) addKind(relaxation, kind, 0);
  const rows = [group, ...path.kinds.map((kind) => kindRow[kind])];
  const changes = [-1, ...path.counts];
  for (const [at, cap] of caps.entries()) {
    rows.push(capRow[at]);
    changes.push(-path.costs[cap.objective]);
  }
  changeRight(relaxation, rows, changes);
  open[group]--;
  fixed.push(path);
}

/** Cuts one board in this way. */
export function fixCut(relaxation: Relaxation, cut: BoardCut): void {
  const { space, caps, capRow, kindRow, stockRow, made } = relaxation;
  const rows = cut.kinds.map((kind) => kindRow[kind]);
  const changes = cut.counts.map((count) => -count);
  for (const [at, cap] of caps.entries()) {
    rows.push(capRow[at]);
    changes.push(-space.objectives[cap.objective].boards[cut.stock]);
  }
  if (stockRow[cut.stock] >= 0) {
    rows.push(stockRow[cut.stock]);
    changes.push(-1);
  }
  changeRight(relaxation, rows, changes);
  made.push(cut);
}

/** What the rows of the programme ask for changes, and with it what the basis comes to. */
function changeRight({ program, forbidden }: Relaxation, rows: readonly number[], changes: readonly number[]): void {
  const { size, stride, inverse, values } = program;
  for (let row = 0; row < size; row++) {
    const from = row * stride;
    let change = 0;
    for (let at = 0; at < rows.length; at++) change += changes[at] * inverse[from + rows[at]];
    values[row] += change;
    if (values[row] > -TINY) {
      values[row] = Math.max(0, values[row]);
      continue;
    }
    // Less than none of a column: as much of its opposite, which must not be.
    values[row] = -values[row];
    for (let k = 0; k < size; k++) inverse[from + k] = -inverse[from + k];
    program.basis[row] = { cost: forbidden, rows: [], values: [] };
  }
  price(program);
}

const TINY = 1e-9;

/** A programme with what is decided in it, to be gone back to. */
export interface Standing {
  readonly snapshot: Snapshot;
  readonly fixed: number;
  readonly made: number;
}

export const standingOf = ({ program, fixed, made }: Relaxation): Standing => ({
  snapshot: snapshotOf(program),
  fixed: fixed.length,
  made: made.length,
});

/** Goes back to how things stood; rows of the programme that have been added since stay. */
export function goBack(relaxation: Relaxation, { snapshot, fixed, made }: Standing): void {
  const { program, present, kindRow, open } = relaxation;
  for (const path of relaxation.fixed.splice(fixed)) open[path.sort.group]++;
  relaxation.made.length = made;
  restore(program, snapshot);
  forgetOldest(relaxation.cuts);
  forgetOldest(relaxation.paths);
  for (const kind of present) {
    if (kindRow[kind] < program.size) continue;
    const entry = cutEntry(relaxation, cutAlone(relaxation, kind));
    addRow(program, entry, entry.values[0], 0);
  }
}

/** Columns that are kept in mind; others are found again when they are worth it. */
const MOST_KEPT = 250;

function forgetOldest(kept: Map<string, unknown>): void {
  let over = kept.size - MOST_KEPT;
  for (const key of kept.keys()) {
    if (over-- <= 0) return;
    kept.delete(key);
  }
}

/** The board's cut of which the programme uses most, and how much. */
export function mostUsedCut({ program }: Relaxation): { readonly cut: BoardCut; readonly used: number } | undefined {
  let best: { cut: BoardCut; used: number } | undefined;
  for (let at = 0; at < program.size; at++) {
    const { cut } = program.basis[at] as Entry;
    const used = program.values[at];
    if (cut !== undefined && used > SMALL && (best === undefined || used > best.used)) best = { cut, used };
  }
  return best;
}
