import type { Bearing } from '../joists/bearing.js';
import type { Finding } from '../rules/finding.js';
import type { Point } from '../survey/point.js';
import type { Certificate } from './certificate.js';

/** Boards in their places, the cuts that make them, and how good the answer is. Lengths in mm. */
export interface BoardLayout {
  readonly pieces: readonly Piece[];
  readonly boards: readonly Board[];
  /** What is left of the boards, largest first. */
  readonly offcuts: readonly Offcut[];
  readonly rows: readonly Row[];
  /** Number of butt joints that land on a joist. */
  readonly endJoints: number;
  /** Boards of this layout that are not cut up yet; those that pieces already up were cut from, and what is at hand, do not count. */
  readonly boardsBought: number;
  /** Boards needed if every board came as short as its tolerance allows: what to order. `null`: no layout then. */
  readonly boardsAtMinimumLength: number | null;
  /** The boards that `boardsBought` counts, by size. */
  readonly boardsByStock: readonly { readonly stock: string; readonly count: number }[];
  /** Present when prices were given. */
  readonly cost?: number;
  /** Area of the pieces as cut, m2. */
  readonly areaM2: number;
  /** Area of the boards less that of the pieces, m2. */
  readonly wasteAreaM2: number;
  readonly cuts: number;
  /** Length of all joints between boards, mm. */
  readonly jointLength: number;
  /**
   * No layout under these rules uses fewer boards, on full rows with at most one ripped at each side; around pieces that are up, on
   * the rows that go on from them; boards cut into whole pieces and one length that is ripped. docs/placement.md says what is left
   * out, and of rare rooms that are no rectangles in which it is a board too high.
   */
  readonly bound: number;
  /**
   * No layout on those rows costs less: the price of as many of the cheapest boards as `bound` says. Where boards
   * cost more than one price it may be well below the least.
   */
  readonly costBound?: number;
  /** Whether the bound meets the answer: there is no layout with fewer boards on those rows. */
  readonly proven: boolean;
  /** Whether it is proven of this number of boards, and of these end joints, that there can be no fewer: never where `proven` is not. */
  readonly piecesProven: boolean;
  readonly certificate?: Certificate;
  /** Why the number of boards is what it is, in words. */
  readonly reasons: readonly string[];
  readonly findings: readonly Finding[];
}

/** A band of boards across the joists. Rows are numbered from 1 at the low wall. */
export interface Row {
  readonly row: number;
  /** Edges of the row, plan coordinates along the joists, mm. */
  readonly low: number;
  readonly high: number;
  /** mm. */
  readonly width: number;
  /** Whether the row is narrower than its boards. */
  readonly ripped: boolean;
  /** Id of the zone that it lies in, where the room has zones. */
  readonly zone?: string;
}

/** One piece of board as fixed. */
export interface Piece {
  /** Row and place in the row, from the low end: `2.3`. */
  readonly id: string;
  readonly row: number;
  /** As cut, plan coordinates. */
  readonly outline: readonly Point[];
  /** Holes cut in the piece, plan coordinates. */
  readonly holes?: readonly (readonly Point[])[];
  /** Nominal: joist centre to joist centre, or to the wall less its gap. */
  readonly length: number;
  /** As cut. */
  readonly cutLength: number;
  readonly width: number;
  /** Lengths of the two long edges as cut; 0 where the piece comes to a point. */
  readonly edgeLengths?: { readonly low: number; readonly high: number };
  /** Id of the zone that it lies in, where the room has zones. */
  readonly zone?: string;
  /**
   * Present where the piece differs from its mirror image: its outline as marked on the board lying face up, x along the board, y
   * across it.
   */
  readonly hand?: { readonly view: 'face up'; readonly outline: readonly Point[] };
  /** The board it is cut from. */
  readonly board: string;
  /** Place on the board, from its low end and its low edge, the board lying the way it is fixed. */
  readonly at: { readonly along: number; readonly across: number };
  readonly ends: readonly [low: End, high: End];
  readonly edges: { readonly low: 'bound' | 'cut'; readonly high: 'bound' | 'cut' };
  /** Takes the whole length of a board: needs one that is not short. */
  readonly tight: boolean;
  readonly massKg: number;
  /** It is up already. */
  readonly locked?: true;
}

/** One end of a piece. */
export interface End {
  readonly meets: 'board' | 'wall' | 'opening';
  /** The joist under an end joint. */
  readonly joist?: string;
  /** Plan coordinate across the joists: the joint's centre line, or the end of the piece at a wall or opening. */
  readonly position: number;
  readonly made: 'factory' | 'cut';
  /**
   * How far the end's corner at the high edge lies beyond its corner at the low edge, mm, positive towards the high end of the
   * row; absent for a square end.
   */
  readonly rake?: number;
  readonly bearing?: Bearing;
}

/** One board bought, and how it is cut. Places are measured on the board: along from its low end, across from its low edge. */
export interface Board {
  readonly id: string;
  /** Id of the stock. */
  readonly stock: string;
  readonly cuts: readonly Cut[];
  readonly offcuts: readonly Offcut[];
  /** Cut up already before this layout, and not counted as bought. */
  readonly opened?: true;
}

/** `cross`: at a distance along the board, from one distance across it to another; `rip`: the other way about. */
export interface Cut {
  readonly kind: 'cross' | 'rip';
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** What is left of a board, mm. */
export interface Offcut {
  readonly board: string;
  readonly length: number;
  readonly width: number;
  readonly at: { readonly along: number; readonly across: number };
}
