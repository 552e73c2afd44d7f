import type { Point } from '../survey/point.js';

/**
 * A layout from anybody. Only what the boards look like and which board each comes from is needed; everything else is a claim
 * that is checked where it is present. Lengths in mm.
 */
export interface LayoutToCheck {
  readonly pieces: readonly PieceToCheck[];
  readonly boards: readonly BoardToCheck[];
  readonly rows?: readonly RowClaim[];
  readonly endJoints?: number;
  readonly boardsBought?: number;
  readonly boardsAtMinimumLength?: number | null;
  readonly boardsByStock?: readonly { readonly stock: string; readonly count: number }[];
  readonly cost?: number;
  readonly areaM2?: number;
  readonly wasteAreaM2?: number;
  readonly cuts?: number;
  readonly jointLength?: number;
  readonly bound?: number;
  readonly costBound?: number;
  readonly proven?: boolean;
  readonly offcuts?: readonly (OffcutClaim & { readonly board: string })[];
}

/** A piece as cut, and what is claimed of it. */
export interface PieceToCheck {
  readonly id: string;
  /** As cut, plan coordinates. */
  readonly outline: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
  /** Id of the board it is cut from. */
  readonly board: string;
  readonly row?: number;
  readonly length?: number;
  readonly cutLength?: number;
  readonly width?: number;
  readonly at?: { readonly along: number; readonly across: number };
  readonly ends?: readonly [low: EndClaim, high: EndClaim];
  readonly edges?: { readonly low: 'bound' | 'cut'; readonly high: 'bound' | 'cut' };
  readonly tight?: boolean;
  readonly massKg?: number;
  /** Of the two long edges as cut. */
  readonly edgeLengths?: { readonly low: number; readonly high: number };
  /** The outline as marked on the board lying face up: x along the board, y across it. */
  readonly hand?: { readonly view: 'face up'; readonly outline: readonly Point[] };
  /** Id of the zone it lies in. */
  readonly zone?: string;
}

/** What is claimed of an end. */
export interface EndClaim {
  readonly meets?: 'board' | 'wall' | 'opening';
  readonly joist?: string;
  readonly position?: number;
  readonly made?: 'factory' | 'cut';
  readonly bearing?: { readonly outcome?: 'secure' | 'tight' | 'short' | 'off' };
  /** How far the end's corner at the high edge lies beyond that at the low edge, towards higher coordinates. */
  readonly rake?: number;
}

/** A board, and what is claimed of how it is cut. */
export interface BoardToCheck {
  readonly id: string;
  /** Id of the stock. */
  readonly stock: string;
  readonly cuts?: readonly CutClaim[];
  readonly offcuts?: readonly OffcutClaim[];
  /** Cut up before this layout, and not counted as bought. */
  readonly opened?: boolean;
}

/** One cut that a layout claims; lengths on the board in mm. */
export interface CutClaim {
  readonly kind: 'cross' | 'rip';
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** One offcut that a layout claims; lengths in mm. */
export interface OffcutClaim {
  readonly length: number;
  readonly width: number;
  readonly at: { readonly along: number; readonly across: number };
}

/** One row that a layout claims; plan coordinates along the joists, mm. */
export interface RowClaim {
  readonly row: number;
  readonly low: number;
  readonly high: number;
  readonly width: number;
  readonly ripped?: boolean;
  readonly zone?: string;
}
