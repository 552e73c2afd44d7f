import type { Finding, Where } from '../rules/finding.js';
import type { BoardStock } from '../survey/boardStock.js';
import { toGrid } from '../survey/grid.js';
import type { Ceiling, Work } from './ceiling.js';
import { compared, wrong } from './claimWrong.js';
import type { RowClaim } from './layoutToCheck.js';
import type { RowShape } from './rowShapes.js';
import { onPlan, upright } from './solid.js';
import type { Structure } from './structure.js';

/** How far an edge may be rounded, mm. */
const ROUNDED = 0.002;

/** What a layout says of its rows. */
export function rowClaims(
  { given: { layout } }: Work,
  parts: readonly { readonly ceiling: Ceiling; readonly structure: Structure }[],
): Finding[] {
  if (layout.rows === undefined) return [];
  const found = parts.flatMap(({ ceiling, structure: { rows } }) => rows.map((row) => ({ row, ceiling })));
  const each = layout.rows.flatMap((claim) => {
    const own = found.find(({ row }) => row.row === claim.row);
    const where = { row: claim.row };
    return own === undefined ? [wrong(`row ${claim.row}`, 'a row', 'none', where)] : rowClaim(claim, own.row, own.ceiling, where);
  });
  return [...compared('rows', layout.rows.length, found.length, 0, {}, 'rows'), ...each];
}

function rowClaim(claim: RowClaim, row: RowShape, ceiling: Ceiling, where: Where): Finding[] {
  const { frame, zone } = ceiling;
  const level = (v: number): number => {
    const { x, y } = onPlan(frame, 0, v);
    return frame.direction === 'y' ? y : x;
  };
  const [low, high] = [level(row.low), level(row.high)];
  const within = isBandBeyond(claim, row, ceiling);
  const width = within ? claim.high - claim.low : high - low;
  // Whether an offcut was as wide as its row says nothing of the row.
  const widest = Math.max(...row.pieces.map((index) => wholeWidth(ceiling.about[index].stock)));
  const ripped = toGrid(width) < widest;
  const named = (what: string): string => `row ${claim.row} ${what}`;
  return [
    ...(within ? [] : compared(named('low edge'), claim.low, low, ROUNDED, where, 'mm')),
    ...(within ? [] : compared(named('high edge'), claim.high, high, ROUNDED, where, 'mm')),
    ...compared(named('width'), claim.width, width, ROUNDED, where, 'mm'),
    ...(claim.ripped !== undefined && widest > 0 && claim.ripped !== ripped
      ? [wrong(named('ripped'), claim.ripped, ripped, where)]
      : []),
    ...(claim.zone !== undefined && claim.zone !== zone ? [wrong(named('zone'), claim.zone, zone ?? 'none', where)] : []),
  ];
}

const wholeWidth = (stock: BoardStock | undefined): number => (stock === undefined || stock.atHand ? 0 : toGrid(stock.width));

/** Where walls slant or stand back, no piece need reach the edges of its row's band: enough if the band holds all of them. */
function isBandBeyond(claim: RowClaim, row: RowShape, { room, about }: Ceiling): boolean {
  if (room.rings.length === 1 && room.rings[0].length === 4 && upright(room.rings[0])) return false;
  const [low, high] = [toGrid(claim.low), toGrid(claim.high)];
  const own = new Set(row.pieces);
  const others = about.filter((_, index) => !own.has(index));
  const clear = others.every(({ box }) => box.v1 <= low || box.v0 >= high);
  return low <= row.low && high >= row.high && clear;
}
