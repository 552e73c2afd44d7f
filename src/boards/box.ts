/** A rectangle in grid steps. */
export interface Box extends Edges {
  readonly near: number;
  readonly far: number;
}

/** The edges of a row. */
export interface Edges {
  readonly low: number;
  readonly high: number;
}
