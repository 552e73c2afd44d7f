import type { KindsOnBoard } from './packKinds.js';
import type { RowPath } from './rowPath.js';

/** A division of every row, and how its pieces are cut. */
export interface LaidRows {
  readonly paths: readonly RowPath[];
  readonly packed: readonly KindsOnBoard[];
}
