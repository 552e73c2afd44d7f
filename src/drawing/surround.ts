import { toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import { LETTERS, shortened } from './lettering.js';
import { type LaidDimension, layDimension, type Side, type Station } from './runningDimension.js';
import type { View } from './sheet.js';
import { fromDatum, type Subject } from './subject.js';

/** What stands round the room at a scale: the running dimensions, and how much of the sheet each side takes. */
export interface Surround {
  readonly dimensions: readonly LaidDimension[];
  /** mm on paper, from the room outward. */
  readonly bands: Readonly<Record<Side, number>>;
  readonly legible: boolean;
}

/** A side without dimensions still carries the name of its wall. */
const NAME_BAND = 8;
/** A joist's name is cut to this width, mm on paper. */
const NAME_WIDTH = 12;

/**
 * Joists are dimensioned below the room when they run up the sheet, at its left when they run across it; also at their other
 * end when they are not parallel. The edges of the rows are dimensioned on the side between.
 */
export function surroundOf(subject: Subject, scale: number, view: View): Surround {
  const { direction, plan } = subject;
  const upward = direction === 'y';
  const fanned = plan.joists.some((joist) => across(subject, joist, 'start') !== across(subject, joist, 'end'));
  // Looking up swaps left and right, so joists across the sheet show their other end at its left.
  const near = upward || view === 'reflected' ? 'start' : 'end';
  const [joistSide, otherSide, rowSide]: Side[] = upward ? ['bottom', 'top', 'left'] : ['left', 'right', 'bottom'];
  const toSheet = onSheet(subject, scale, view);
  const joists = (side: Side, end: 'start' | 'end'): LaidDimension =>
    layDimension(side, toSheet(upward ? 'x' : 'y', joistStations(subject, end, scale)));
  const dimensions = [
    joists(joistSide, near),
    layDimension(rowSide, toSheet(upward ? 'y' : 'x', rowStations(subject))),
    ...(fanned ? [joists(otherSide, near === 'start' ? 'end' : 'start')] : []),
  ];
  const band = (side: Side): number => {
    const beside = dimensions.filter((each) => isUpright(each.side) !== isUpright(side)).map(({ overhang }) => overhang);
    return Math.max(NAME_BAND, ...beside, ...dimensions.filter((each) => each.side === side).map(({ depth }) => depth));
  };
  return {
    dimensions,
    bands: { left: band('left'), right: band('right'), top: band('top'), bottom: band('bottom') },
    legible: dimensions.every(({ legible }) => legible),
  };
}

const isUpright = (side: Side): boolean => side === 'left' || side === 'right';

/** Distance of a joist's end from the wall that the figures run from, mm. */
const across = (subject: Subject, joist: Joist, end: 'start' | 'end'): number => fromDatum(subject, joist[end]).across;

function joistStations(subject: Subject, end: 'start' | 'end', scale: number): Station[] {
  const { plan, length, extent, direction } = subject;
  const span = direction === 'y' ? extent.high - extent.low : extent.right - extent.left;
  const joists = plan.joists.map((joist) => {
    const { across: at, along } = fromDatum(subject, joist[end]);
    return {
      at,
      value: length(at),
      id: shortened(joist.id, NAME_WIDTH, LETTERS.medium, true),
      framed: plan.proveFirst.includes(joist.id),
      inset: (end === 'start' ? along : span - along) / scale,
    };
  });
  const wall = direction === 'y' ? extent.right - extent.left : extent.high - extent.low;
  return [...bothWalls(wall, length), ...joists];
}

function rowStations({ plan, length, extent, direction }: Subject): Station[] {
  const from = direction === 'y' ? extent.low : extent.left;
  const wall = (direction === 'y' ? extent.high : extent.right) - from;
  const edges = plan.layout.rows.flatMap(({ low, high }) => [toGrid(low - from), toGrid(high - from)]);
  const between = [...new Set(edges)].filter((edge) => edge > 0 && edge < toGrid(wall)).map((edge) => edge / 1000);
  return [...bothWalls(wall, length), ...between.map((at) => ({ at, value: length(at) }))];
}

const bothWalls = (wall: number, length: (mm: number) => string): Station[] => [
  { at: 0, value: '0', origin: true },
  { at: wall, value: length(wall) },
];

/** Distances in mm from the zero line to mm on paper from the room's left or upper edge on the sheet. */
const onSheet =
  ({ extent }: Subject, scale: number, view: View) =>
  (axis: 'x' | 'y', stations: readonly Station[]): Station[] => {
    const span = axis === 'x' ? extent.right - extent.left : extent.high - extent.low;
    const reversed = axis === 'y' || view === 'looking-up';
    return stations.map((station) => ({ ...station, at: (reversed ? span - station.at : station.at) / scale }));
  };
