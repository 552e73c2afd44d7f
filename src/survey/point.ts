/** A point on the plan, seen from above: x to the right, y up the sheet, in mm from any origin. */
export interface Point {
  /** mm, to the right. */
  readonly x: number;
  /** mm, up the sheet. */
  readonly y: number;
}
