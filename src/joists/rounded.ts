/** To the nearest of so many parts of a unit: what comes out is the same on every engine. */
export const rounded = (value: number, perUnit: number): number => Math.round(value * perUnit) / perUnit;
