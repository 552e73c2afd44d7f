import type { Piece } from '../boards/boardLayout.js';
import type { Frame } from '../joists/frame.js';
import { toGrid } from '../survey/grid.js';
import type { Point } from '../survey/point.js';
import type { Subject } from './subject.js';

/** A place on a piece: along it from its near end, across it from its low edge, on the grid. */
export interface Spot {
  readonly along: number;
  readonly across: number;
}

/** A rectangle that is missing from a piece, on the grid. */
export interface Notch {
  readonly kind: 'corner' | 'edge' | 'end';
  /** The side or sides that it is cut into. */
  readonly end?: 'near' | 'far';
  readonly edge?: 'low' | 'high';
  readonly from: Spot;
  readonly to: Spot;
}

/** What a piece is cut to: a rectangle, one with raked ends, one less notches, or something that only its corners describe. */
export interface PieceShape {
  readonly kind: 'rectangle' | 'raked' | 'notched' | 'other';
  readonly length: number;
  readonly width: number;
  /** In order round the piece. */
  readonly corners: readonly Spot[];
  readonly notches: readonly Notch[];
}

export function pieceShape({ outline }: Pick<Piece, 'outline'>, { frame }: Pick<Subject, 'frame'>): PieceShape {
  const corners = outline.map(spotsOn({ outline }, frame));
  const [length, width] = [Math.max(...corners.map(({ along }) => along)), Math.max(...corners.map(({ across }) => across))];
  const size = { length, width };
  const whole = { ...size, corners, notches: [] };
  if (corners.length === 4 && corners.every((corner) => isOnEnd(corner, size) && isOnEdge(corner, size))) {
    return { ...whole, kind: 'rectangle' };
  }
  if (corners.length <= 4 && corners.every((corner) => isOnEdge(corner, size))) return { ...whole, kind: 'raked' };
  const notches = notchesOf(corners, size);
  return notches === undefined ? { ...whole, kind: 'other' } : { ...whole, kind: 'notched', notches };
}

/** Brings points of the plan to their places on a piece. */
export function spotsOn({ outline }: Pick<Piece, 'outline'>, frame: Frame): (point: Point) => Spot {
  const points = outline.map(frame.into);
  const near = toGrid(Math.min(...points.map(({ u }) => u)));
  const low = toGrid(Math.min(...points.map(({ v }) => v)));
  return (point) => {
    const { u, v } = frame.into(point);
    return { along: toGrid(u) - near, across: toGrid(v) - low };
  };
}

type Size = Pick<PieceShape, 'length' | 'width'>;

const isOnEnd = ({ along }: Spot, { length }: Size): boolean => along === 0 || along === length;
const isOnEdge = ({ across }: Spot, { width }: Size): boolean => across === 0 || across === width;
const isLevel = (a: Spot, b: Spot): boolean => a.along === b.along || a.across === b.across;

/** The notches of a piece whose sides all run along it or across it; nothing of any other. */
function notchesOf(corners: readonly Spot[], size: Size): Notch[] | undefined {
  const count = corners.length;
  const at = (i: number): Spot => corners[(i + count) % count];
  if (!corners.every((corner, i) => isLevel(corner, at(i + 1)))) return undefined;
  const isInner = (i: number): boolean => !isOnEnd(at(i), size) && !isOnEdge(at(i), size);
  const notches: Notch[] = [];
  for (let i = 0; i < count; i++) {
    if (!isInner(i) || isInner(i - 1)) continue;
    let run = 1;
    while (isInner(i + run)) run++;
    const notch = notchBetween(at(i - 1), at(i), at(i + run - 1), at(i + run), run, size);
    if (notch === undefined) return undefined;
    notches.push(notch);
  }
  return notches.length === 0 ? undefined : notches;
}

/** The notch from one corner on the piece's rectangle to the next, with one or two corners inside between them. */
function notchBetween(before: Spot, first: Spot, last: Spot, after: Spot, run: number, size: Size): Notch | undefined {
  const end = (spot: Spot): Notch['end'] => (spot.along === 0 ? 'near' : spot.along === size.length ? 'far' : undefined);
  const edge = (spot: Spot): Notch['edge'] => (spot.across === 0 ? 'low' : spot.across === size.width ? 'high' : undefined);
  const all = [before, first, last, after];
  const [alongs, acrosses] = [all.map(({ along }) => along), all.map(({ across }) => across)];
  const from = { along: Math.min(...alongs), across: Math.min(...acrosses) };
  const to = { along: Math.max(...alongs), across: Math.max(...acrosses) };
  if (run === 1) {
    const [ends, edges] = [end(before) ?? end(after), edge(before) ?? edge(after)];
    return ends === undefined || edges === undefined ? undefined : { kind: 'corner', end: ends, edge: edges, from, to };
  }
  if (run !== 2) return undefined;
  const [edges, ends] = [edge(before), end(before)];
  if (edges !== undefined && edges === edge(after)) return { kind: 'edge', edge: edges, from, to };
  return ends !== undefined && ends === end(after) ? { kind: 'end', end: ends, from, to } : undefined;
}
