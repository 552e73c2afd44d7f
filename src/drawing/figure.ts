import { toGrid } from '../survey/grid.js';

/** What the figures on a sheet are in. */
export type FigureUnit = 'mm' | 'inch';

/** Steps of the grid in one sixteenth of an inch. */
const SIXTEENTH = 25_400 / 16;

/** A length as it is written on a sheet: the nearest whole mm, or feet and inches to the nearest sixteenth. */
export const figure = (mm: number, unit: FigureUnit): string => inWhole(mm, unit, Math.round);

/** The size that a piece is cut to: what is less than a mm or a sixteenth is left to the gap, never forced into it. */
export const cutFigure = (mm: number, unit: FigureUnit): string => inWhole(mm, unit, Math.floor);

function inWhole(mm: number, unit: FigureUnit, whole: (value: number) => number): string {
  const steps = toGrid(mm);
  if (unit === 'mm') return String(whole(steps / 1000) + 0);
  const sixteenths = whole(Math.abs(steps) / SIXTEENTH);
  const sign = steps < 0 && sixteenths > 0 ? '-' : '';
  const feet = Math.floor(sixteenths / 192);
  const inches = Math.floor((sixteenths % 192) / 16);
  const rest = sixteenths % 16;
  const fraction = rest === 0 ? '' : ` ${rest / commonPart(rest)}/${16 / commonPart(rest)}`;
  return sign + (feet === 0 ? `${inches}${fraction}"` : `${feet}' ${inches}${fraction}"`);
}

const commonPart = (sixteenths: number): number => [8, 4, 2].find((part) => sixteenths % part === 0) ?? 1;
