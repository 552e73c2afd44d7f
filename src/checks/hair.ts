/** Thinner than this is rounding where slanting sides meet the grid, grid steps. */
export const HAIR = 2;
