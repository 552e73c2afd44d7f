import { toGrid } from '../survey/grid.js';
import { type LaidDimension, layDimension, type Side, type Station } from './runningDimension.js';
import type { View } from './sheet.js';
import { joistStations, type PlanStation, rowStations } from './stations.js';
import { type Subject, zonesOf } from './subject.js';

/** What stands round the room at a scale: the running dimensions, and how much of the sheet each side takes. */
export interface Surround {
  readonly dimensions: readonly LaidDimension[];
  /** mm on paper, from the room outward. */
  readonly bands: Readonly<Record<Side, number>>;
  readonly legible: boolean;
}

/** A side without dimensions still carries the name of its wall. */
const NAME_BAND = 8;
/** Two dimensions follow one another on a line when they share no more than this of it, mm on paper. */
const TOUCHING = 0.01;
const SIDES: readonly Side[] = ['left', 'right', 'top', 'bottom'];

/**
 * Joists are dimensioned below the room when they run up the sheet, at its left when they run across it; also at their other
 * end when the figures there are not the same. The edges of the rows are dimensioned on the side between. Every zone has its own
 * dimensions, on the sides that no other zone hides.
 */
export function surroundOf(subject: Subject, scale: number, view: View): Surround {
  const wanted = zonesOf(subject).flatMap((zone) => dimensionsOf(zone, subject, scale, view));
  const dimensions = SIDES.flatMap((side) =>
    inLanes(
      side,
      wanted.filter((each) => each.side === side),
    ),
  );
  const band = (side: Side): number => {
    const beside = dimensions.filter((each) => isUpright(each.side) !== isUpright(side)).map(({ overhang }) => overhang);
    const own = dimensions.filter((each) => each.side === side).map(({ lane, depth }) => lane + depth);
    return Math.max(NAME_BAND, ...beside, ...own);
  };
  return {
    dimensions,
    bands: { left: band('left'), right: band('right'), top: band('top'), bottom: band('bottom') },
    legible: dimensions.every(({ legible }) => legible),
  };
}

const isUpright = (side: Side): boolean => side === 'left' || side === 'right';

/** A running dimension on its side of the room. */
interface Chain {
  readonly side: Side;
  readonly stations: readonly Station[];
}

function dimensionsOf(zone: Subject, room: Subject, scale: number, view: View): Chain[] {
  const upward = zone.direction === 'y';
  // Looking up swaps left and right, so joists across the sheet show their other end at its left.
  const swapped = view === 'looking-up';
  const least: Side = upward ? 'bottom' : swapped ? 'right' : 'left';
  const joistSides: readonly Side[] = upward ? ['bottom', 'top'] : ['left', 'right'];
  const rowSides: readonly Side[] = upward ? ['left', 'right'] : ['bottom', 'top'];
  const lay = (side: Side, axis: 'x' | 'y', stations: readonly PlanStation[]): Chain[] => {
    // Where another zone lies between, extension lines stay out of it.
    const hidden = isHidden(zone, room, side, view);
    const seen = stations.map(({ inset = 0, ...station }) => ({ ...station, inset: hidden ? 0 : inset }));
    return seen.length === 0 ? [] : [{ side, stations: seen.map(onSheet(room, axis, scale, view)) }];
  };
  const both = (sides: readonly Side[], stationsAt: (side: Side) => readonly PlanStation[]): [Side, readonly PlanStation[]][] => {
    const [first, other] = [...sides].sort(
      (a, b) => Number(isHidden(zone, room, a, view)) - Number(isHidden(zone, room, b, view)),
    );
    const [shown, beyond] = [stationsAt(first), stationsAt(other)];
    const known = new Set(shown.map(told));
    const alike = beyond.every((each) => known.has(told(each)));
    return alike || isHidden(zone, room, other, view)
      ? [[first, shown]]
      : [
          [first, shown],
          [other, beyond],
        ];
  };
  const joists = both(joistSides, (side) => joistStations(zone, room, side === least ? 'start' : 'end', scale));
  const rows = both(rowSides, (side) =>
    rowStations(zone, side === (upward ? (swapped ? 'right' : 'left') : 'bottom') ? 'near' : 'far'),
  );
  return [
    ...joists.flatMap(([side, stations]) => lay(side, upward ? 'x' : 'y', stations)),
    ...rows.flatMap(([side, stations]) => lay(side, upward ? 'y' : 'x', stations)),
  ];
}

const told = ({ value, id = '' }: PlanStation): string => `${id} ${value}`;

/** Whether another zone lies between a zone and a side of the sheet. */
function isHidden(zone: Subject, room: Subject, side: Side, view: View): boolean {
  const swapped = view === 'looking-up' && isUpright(side);
  const beyond = (side === 'left' || side === 'bottom') === swapped ? 1 : -1;
  const [along, beside] = isUpright(side) ? (['x', 'y'] as const) : (['y', 'x'] as const);
  const range = ({ extent }: Subject, axis: 'x' | 'y') =>
    axis === 'x' ? { from: extent.left, to: extent.right } : { from: extent.low, to: extent.high };
  const own = { along: range(zone, along), beside: range(zone, beside) };
  return room.zones.some((other) => {
    const its = { along: range(other, along), beside: range(other, beside) };
    const overlaps = its.beside.from < own.beside.to && own.beside.from < its.beside.to;
    const reach = beyond > 0 ? its.along.to - own.along.to : own.along.from - its.along.from;
    return other !== zone && overlaps && toGrid(reach) > 0;
  });
}

/** Dimensions of one side on as few lines as they need: those that stand over one another go further out. */
function inLanes(side: Side, chains: readonly Chain[]): LaidDimension[] {
  const from = ({ stations }: Chain): number => Math.min(...stations.map(({ at }) => at));
  const to = ({ stations }: Chain): number => Math.max(...stations.map(({ at }) => at));
  const lanes: Chain[][] = [];
  for (const chain of chains) {
    const free = lanes.find((lane) =>
      lane.every((other) => to(other) <= from(chain) + TOUCHING || to(chain) <= from(other) + TOUCHING),
    );
    if (free === undefined) lanes.push([chain]);
    else free.push(chain);
  }
  let out = 0;
  return lanes.map((lane) => {
    const laid = layDimension(
      side,
      lane.map(({ stations }) => stations),
    );
    const here = { ...laid, lane: out };
    out += laid.depth;
    return here;
  });
}

/** A station of the plan to its place in mm on paper from the room's left or upper edge on the sheet. */
const onSheet =
  ({ extent }: Subject, axis: 'x' | 'y', scale: number, view: View) =>
  ({ coordinate, ...station }: PlanStation): Station => {
    const at =
      axis === 'y' ? extent.high - coordinate : view === 'looking-up' ? extent.right - coordinate : coordinate - extent.left;
    return { ...station, at: at / scale };
  };
