import type { JoistDescription } from './joist.js';
import type { Point } from './point.js';

/** A hole in the ceiling, or something that stands through it. */
export type Opening = OpeningOutline | OpeningCircle;

/** What the opening is: a hatch is trimmed and boarded up to; a light or a vent is cut out after boarding. */
export type OpeningKind = 'hatch' | 'light' | 'flue' | 'column' | 'other';

/** An opening given by its corners. */
export interface OpeningOutline {
  readonly id?: string;
  readonly kind: OpeningKind;
  /** Simple polygon, mm, either winding. */
  readonly outline: readonly Point[];
}

/** A round opening. */
export interface OpeningCircle {
  readonly id?: string;
  readonly kind: OpeningKind;
  readonly centre: Point;
  /** mm. */
  readonly diameter: number;
}

/** A wall of the room. */
export interface Wall {
  /** The wall runs from `outline[edge]` to the next corner. */
  readonly edge: number;
  readonly name?: string;
  readonly window?: boolean;
  readonly door?: boolean;
}

/** A part of the room whose joists run their own way. Zones lie within the room, and share borders at most. */
export interface Zone {
  /** Comes before the ids of the joists that it describes: `bay J3`. */
  readonly id: string;
  /** Simple polygon, mm, either winding. */
  readonly outline: readonly Point[];
  /** `first` and `last` are measured from the zone's own least coordinate. */
  readonly joists: JoistDescription;
}

/** The ceiling as measured, in plan coordinates. */
export interface Room {
  readonly id?: string;
  readonly name?: string;
  /** Corners in order, mm: simple polygon, either winding, first corner repeated at the end or not. */
  readonly outline: readonly Point[];
  readonly openings?: readonly Opening[];
  /** Floor to the old ceiling, mm. */
  readonly height?: number;
  readonly walls?: readonly Wall[];
  readonly zones?: readonly Zone[];
  /** The caller's own labels, carried through untouched. */
  readonly tags?: Readonly<Record<string, string | number | boolean>>;
}
