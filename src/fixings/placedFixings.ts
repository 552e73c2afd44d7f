import type { Finding } from '../rules/finding.js';
import type { Point } from '../survey/point.js';

/** One screw, plan coordinates in mm. */
export interface FixingPosition {
  readonly x: number;
  readonly y: number;
  readonly piece: string;
  readonly joist: string;
}

/** The screws of one piece along one joist, as a person marks them. */
export interface FixingLine {
  readonly piece: string;
  readonly joist: string;
  /** `end`: beside a butt joint or an opening; `perimeter`: the line nearest a wall that runs along the joists; `field`: any other. */
  readonly kind: 'field' | 'end' | 'perimeter';
  readonly count: number;
  /** First screw from the piece's low edge, mm; from its low end on a timber that runs across the joists. */
  readonly first: number;
  /** Steps from each screw to the next, mm. */
  readonly steps: readonly number[];
  /** "first at 12, then every 196". */
  readonly text: string;
  /**
   * Present beside a butt joint whose other board is fixed to the same joist. `offset`: the two lines of screws are set out so
   * that no two face each other; `angled`: they face each other, so drive them at an angle.
   */
  readonly pair?: 'offset' | 'angled';
  /** How far beside the middle of the joist the line runs, mm, where it keeps off the old lath nails or the joint of a doubled joist. */
  readonly offCentre?: number;
  /** With nails in pairs: from the first of each pair to the second, mm. */
  readonly pairDistance?: number;
}

/** Every screw of a layout. */
export interface PlacedFixings {
  readonly positions: readonly FixingPosition[];
  readonly lines: readonly FixingLine[];
  readonly count: number;
  /** Of board, to two decimals. */
  readonly perSquareMetre: number;
  readonly findings: readonly Finding[];
}

/** Somewhere no screw may go: a pipe in a notch, a run of cable. A circle or a simple polygon, plan coordinates in mm. */
export type NoFixZone =
  | { readonly id?: string; readonly outline: readonly Point[] }
  | { readonly id?: string; readonly centre: Point; readonly diameter: number };
