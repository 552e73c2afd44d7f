import type { Point } from './point.js';

/** What a layer of the old ceiling is made of. */
export type LayerKind =
  | 'plasterboard'
  | 'lath-and-plaster'
  | 'skim'
  | 'texture'
  | 'fibreboard'
  | 'unknown-board'
  | 'tiles'
  | 'boarding'
  | 'insulation'
  | 'batten-void'
  | 'metal-bar'
  | 'other';

/** One layer of the old ceiling; lists run from the room side upwards. */
export interface Layer {
  readonly kind: LayerKind;
  /** Thickest reading, mm. */
  readonly thickness: number;
  /** How much thicker it may be, mm. Default 0. */
  readonly tolerance?: number;
  /** kg/m2. */
  readonly massPerArea?: number;
  /** Known joints of this layer, plan coordinates. */
  readonly joints?: readonly (readonly [Point, Point])[];
  /** Result of a laboratory test. A `texture` or `unknown-board` without one counts as `untested`. */
  readonly asbestos?: 'none' | 'untested' | 'tested negative' | 'tested positive';
}
