import type { Mark } from './mark.js';
import type { Point } from './point.js';

/** The axis along which the joists run; boards are laid across it. */
export type Direction = 'x' | 'y';

/** One timber above the ceiling: its centre line as far as it runs in the room. */
export interface Joist {
  readonly id: string;
  /** Ends of the centre line, plan coordinates in mm, the lesser along the joist first. */
  readonly start: Point;
  readonly end: Point;
  /** Thickness of the timber seen from below, mm. */
  readonly width: number;
  /** Standard deviation of the width, mm, where the joists were inferred. */
  readonly widthSd?: number;
  /**
   * Where joists stand side by side as one: the joints between them, mm from the centre line, positive towards greater coordinates.
   * No screw goes in there.
   */
  readonly seams?: readonly number[];
  /** Depth of the timber, mm. */
  readonly depth?: number;
  /** Standard deviation of the centre at mid-length, mm; 0 where the joist was given. */
  readonly sd: number;
  /** Standard deviation of the centre at `start` and at `end`, mm, on inferred joists. */
  readonly sdAtStart?: number;
  readonly sdAtEnd?: number;
  /** Probability that there is a timber at all. */
  readonly presence: number;
  readonly kind?: 'joist' | 'truss' | 'rafter' | 'trimmer' | 'nogging' | 'batten';
  readonly known: 'given' | 'measured' | 'inferred';
}

/** Joists set out at even centres. */
export interface JoistsBySpacing {
  readonly direction: Direction;
  /** Centre of the first joist, mm from the room's least coordinate across the joists. */
  readonly first: number;
  /** Centre to centre, mm. */
  readonly spacing: number;
  /** mm; 47 is assumed, and said, when not given. */
  readonly width?: number;
  readonly depth?: number;
  /** Centre of a joist beside the far wall, mm from the room's least coordinate across the joists. */
  readonly last?: number;
}

/** One joist centre, plan coordinate in mm: the same at both ends, or one for each end. */
export type JoistPosition = number | { readonly atStart: number; readonly atEnd: number };

/** Joists at measured positions. */
export interface JoistsByPositions {
  readonly direction: Direction;
  /** Plan coordinates on the axis that the joists do not run along, mm. */
  readonly positions: readonly JoistPosition[];
  /** mm; 47 is assumed, and said, when not given. */
  readonly width?: number;
  readonly depth?: number;
}

/** Joists to be inferred from marks. */
export interface JoistsByMarks {
  readonly marks: readonly Mark[];
  readonly direction?: Direction;
  /** mm; 47 is assumed, and said, when not given. */
  readonly width?: number;
}

/** Every way of saying where the joists are. */
export type JoistDescription = JoistsBySpacing | JoistsByPositions | JoistsByMarks | readonly Joist[];
