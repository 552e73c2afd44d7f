import type { Finding } from '../rules/finding.js';

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
  /** `end`: beside a butt joint; `perimeter`: the line nearest a wall that runs along the joists; `field`: any other. */
  readonly kind: 'field' | 'end' | 'perimeter';
  readonly count: number;
  /** First screw from the piece's low edge, mm. */
  readonly first: number;
  /** Steps from each screw to the next, mm. */
  readonly steps: readonly number[];
  /** "first at 12, then every 196". */
  readonly text: string;
}

/** Every screw of a layout. */
export interface PlacedFixings {
  readonly positions: readonly FixingPosition[];
  readonly lines: readonly FixingLine[];
  readonly count: number;
  readonly perSquareMetre: number;
  readonly findings: readonly Finding[];
}
