/**
 * Lengths and positions are snapped once to a grid of 0.001 mm and decided on as integers: a cross product of a room of
 * 30 m stays below 2^53, so no comparison depends on rounding.
 */
export const GRID_PER_MM = 1000;

/** mm to whole grid steps. */
export const toGrid = (mm: number): number => Math.round(mm * GRID_PER_MM);

/** Whole grid steps to mm; exact to the third decimal. */
export const fromGrid = (steps: number): number => steps / GRID_PER_MM;

/** A length in mm snapped to the grid, so that equal lengths print and compare equal. */
export const snap = (mm: number): number => fromGrid(toGrid(mm));
