import { type JoistDescription, planCeiling, type Room, rectangle } from 'soffitwright';
import { buttJoints, codesOf, errorsIn, even, GAPS, rowsOf, stock } from './scenario.js';

/** A bedroom of 4250 by 3380 with a window in a wall that its joists run with. */
export const windowBedroom: { readonly room: Room; readonly joists: JoistDescription; readonly rules: typeof GAPS } = {
  room: { outline: rectangle(4250, 3380), walls: [{ edge: 3, window: true }] },
  joists: even(140, 400, undefined, 47),
  rules: GAPS,
};

/** It, boarded with boards of a length: what it takes, and what is wrong with it. */
export function boardedBedroom(length: number) {
  const request = { ...windowBedroom, boards: [stock(length)] };
  const { layout } = planCeiling({ ...request, lining: [{ kind: 'plasterboard', thickness: 9.5 }] });
  return {
    boards: layout.boardsBought,
    joints: layout.endJoints,
    rows: rowsOf(layout),
    inLight: buttJoints(layout).filter((at) => at < 1200),
    told: codesOf(layout).filter((code) => code === 'raking-light'),
    errors: errorsIn(request, layout),
  };
}
