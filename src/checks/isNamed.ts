import type { Joist } from '../survey/joist.js';

/** Whether a layout may mean a joist by this name: of joists side by side, which are one support, any may be named. */
export const isNamed = ({ id, seams }: Joist, name: string | undefined): boolean =>
  id === name || (seams !== undefined && id.split('+').some((each) => each === name));
