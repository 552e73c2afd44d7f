import { numberOf } from '../rules/ruleValue.js';
import { rulesOf } from '../rules/withRules.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Direction } from '../survey/joist.js';
import type { Layer } from '../survey/layer.js';
import { attemptPlacement } from './attemptPlacement.js';
import type { BoardLayout, Row } from './boardLayout.js';
import { compareInOrder } from './compareInOrder.js';
import { oldJointLines } from './oldJointLines.js';
import { type JudgedLayout, judgedLayout, layBoards } from './placeBoards.js';
import { placementProblem } from './placementProblem.js';
import type { PlacementRequest } from './placementRequest.js';
import { type BoundedRows, boundedRows, boundReason } from './reasons.js';

/** A layout over another, and how far its joints keep from those beneath. */
export interface ClearLayout {
  readonly layout: BoardLayout;
  /** What lies beneath it, room side first, with the joints of the layer below. */
  readonly lining: readonly Layer[];
  /** The least distance between long joints of the two layers, mm; `null` where one of them has none. */
  readonly apart: number | null;
}

/**
 * Lays a second layer of boards over a first: its long joints as far from those beneath as the rule asks, if that can be, and its
 * butt joints never on a joist where one of the first layer lies beneath, if that can be. Of the ways to begin that keep clear
 * the best by the preference is taken; of those equal but for lengths, cuts and stagger the one whose long joints are furthest apart.
 *
 * The bound is that of a second layer without regard to the first.
 *
 * @throws InfeasibleError when the second layer cannot be laid at all
 */
export function layClear(
  request: PlacementRequest,
  below: BoardLayout,
  directionIn: (zone: string | undefined) => Direction,
): ClearLayout {
  const [{ thickness, massPerArea }] = request.boards;
  const first: Layer = {
    kind: 'plasterboard',
    thickness,
    massPerArea,
    joints: oldJointLines(below, directionIn),
    asbestos: 'none',
  };
  const lining = [first, ...(request.lining ?? [])];
  const over = { ...request, lining };
  const free = layBoards(over);
  const clearance = toGrid(numberOf(rulesOf(request.rules), 'oldJoint.clearance'));
  const ways = request.rowWidths === undefined ? waysToBegin(request, below.rows, free.rows, clearance) : [request.rowWidths];
  const laid = ways.flatMap((rowWidths) => bestOn({ ...over, rowWidths }, below));
  const ranked = laid.map(({ layout, judged, shared }) => {
    const apart = leastApart(below.rows, layout.rows);
    return {
      layout,
      apart,
      order: [apart < clearance ? 1 : 0, shared, ...judged.slice(0, -LAST), -apart, ...judged.slice(-LAST)],
    };
  });
  const [best] = ranked.sort((a, b) => compareInOrder(a.order, b.order));
  const chosen = best ?? { layout: free, apart: leastApart(below.rows, free.rows) };
  const layout = withBoundOf(chosen.layout, free, boundedRows(placementProblem(over)));
  return { layout, lining, apart: chosen.apart === Infinity ? null : fromGrid(chosen.apart) };
}

/** Of the numbers by which a preference judges, the last few: lengths, cuts and stagger matter less than how far apart the joints are. */
const LAST = 4;

/** Off the joists beneath which there is a butt joint, or else with as few over them as the preference leaves. */
function bestOn(request: PlacementRequest, below: BoardLayout): (JudgedLayout & { readonly shared: number })[] {
  for (const offOldJoints of [true, false]) {
    const attempt = attemptPlacement(() => judgedLayout({ ...request, offOldJoints }));
    if (attempt.ok) return [{ ...attempt.value, shared: offOldJoints ? 0 : sharedJoints(below, attempt.value.layout) }];
  }
  return [];
}

/** Butt joints over a butt joint of the layer beneath. */
function sharedJoints(below: BoardLayout, layout: BoardLayout): number {
  const ends = (of: BoardLayout) =>
    of.pieces.flatMap(({ row, ends: [low] }) => (low.joist === undefined ? [] : [{ joist: low.joist, ...of.rows[row - 1] }]));
  const beneath = ends(below);
  return ends(layout).filter((end) => beneath.some((old) => old.joist === end.joist && old.low < end.high && end.low < old.high))
    .length;
}

/** Shares of a board's width by which the rows of the second layer may be pushed along from those of the first. */
const SHARES: readonly (readonly [number, number])[] = [
  [1, 2],
  [1, 3],
  [2, 3],
  [1, 4],
  [3, 4],
];

/** Widths of rows that begin elsewhere than the first layer's do, and those that a layer by itself would have. */
function waysToBegin(request: PlacementRequest, below: readonly Row[], own: readonly Row[], clearance: number): number[][] {
  const rules = rulesOf(request.rules);
  const least = toGrid(numberOf(rules, 'row.minimumWidth'));
  const edge = toGrid(numberOf(rules, 'edgeJoint.gap'));
  const widest = Math.max(...request.boards.map(({ width }) => toGrid(width)));
  const pushes = [...SHARES.map(([part, of]) => Math.round((widest * part) / of)), clearance, widest - clearance];
  const begun = (field: readonly Row[], tried: readonly number[]): number[][] => {
    const [low, high] = [toGrid(field[0].low), toGrid(field[field.length - 1].high)];
    const starts = new Set(
      field
        .slice(0, -1)
        .flatMap(({ high: joint }) => tried.map((push) => (((toGrid(joint) - push - low) % widest) + widest) % widest)),
    );
    const ways = [...starts, widest].map((first) => {
      const widths = [first];
      let left = high - low - first - edge;
      for (; left >= widest; left -= widest + edge) widths.push(widest);
      return left <= 0 ? widths : [...widths, left];
    });
    return ways.filter((widths) => widths.every((width) => width >= least && width <= widest)).map((each) => each.map(fromGrid));
  };
  const [fields, ownFields] = [fieldsOf(below), fieldsOf(own)];
  const alone = own.map(({ width }) => width);
  // Where there are several fields, all of them are pushed along by the same, those that can be.
  const pushed = (push: number): number[] =>
    fields.flatMap((field, i) => begun(field, [push])[0] ?? (ownFields[i] ?? field).map(({ width }) => width));
  const all = fields.length > 1 ? [...pushes.map(pushed), alone] : [...begun(below, pushes), alone, [...alone].reverse()];
  return [...new Map(all.map((widths) => [widths.join(' '), widths])).values()];
}

/** Rows that lie one beside the other, zone by zone. */
function fieldsOf(rows: readonly Row[]): Row[][] {
  const fields: Row[][] = [];
  rows.forEach((row, i) => {
    const before = rows[i - 1];
    if (before === undefined || before.zone !== row.zone || row.low < before.high) fields.push([row]);
    else fields[fields.length - 1].push(row);
  });
  return fields;
}

/** The least distance between long joints of two layers, grid steps. */
function leastApart(below: readonly Row[], above: readonly Row[]): number {
  const edges = (rows: readonly Row[]): { readonly zone: string | undefined; readonly at: number }[] =>
    rows.slice(0, -1).flatMap(({ high, zone }, i) => (rows[i + 1].zone === zone ? [{ zone, at: toGrid(high) }] : []));
  const old = edges(below);
  return Math.min(
    Infinity,
    ...edges(above).flatMap(({ zone, at }) => old.filter((each) => each.zone === zone).map((each) => Math.abs(at - each.at))),
  );
}

/** What no second layer can be below, clear of the first or not. */
function withBoundOf(layout: BoardLayout, free: BoardLayout, rows: BoundedRows): BoardLayout {
  const bound = Math.min(free.bound, layout.boardsBought);
  const more = layout.boardsBought - free.boardsBought;
  return {
    ...layout,
    bound,
    ...(free.costBound !== undefined &&
      layout.costBound !== undefined && { costBound: Math.min(free.costBound, layout.costBound) }),
    proven: bound === layout.boardsBought,
    piecesProven: false,
    reasons: [
      ...layout.reasons.slice(0, -1),
      ...(more > 0 ? [`To keep clear of the joints beneath takes ${more} more.`] : []),
      boundReason(layout.boardsBought, bound, rows),
    ],
  };
}
