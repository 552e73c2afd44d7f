import { fromGrid, toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Joist } from '../survey/joist.js';
import { centreAt, frameOf } from './frame.js';
import type { Inference } from './inferJoists.js';
import type { EndJoint } from './jointConfidence.js';

/**
 * A joist that a layout uses for a butt joint: its id, the joist itself, or its id with the place of the joint, plan coordinates in mm:
 * across the joists (where it is believed to be, when not given) and along them (mid-length, when not given).
 */
export type EndJoist = string | Joist | { readonly joist: string; readonly across?: number; readonly along?: number };

/** A joist of an inference with the butt joints on it. */
export interface JoistWithEnds {
  readonly joist: Joist;
  readonly ends: readonly EndJoint[];
}

/**
 * The butt joints joist by joist, in the order of the joists.
 *
 * @throws InputError for a joist that the inference does not have
 */
export function endJointsOf({ joists, direction }: Inference, given: readonly EndJoist[]): JoistWithEnds[] {
  const frame = frameOf(direction);
  const strangers = given.flatMap((each, index) =>
    joists.some(({ id }) => id === idOf(each))
      ? []
      : [problem('joist-unknown', `options.endJoints[${index}]`, 'the id of a joist of the inference', idOf(each))],
  );
  if (strangers.length > 0) refuse(...strangers);
  return joists.flatMap((joist) => {
    const ends = given
      .filter((each) => idOf(each) === joist.id)
      .map((each): EndJoint => {
        const place: Partial<EndJoint> = typeof each === 'string' || 'id' in each ? {} : each;
        const along = place.along ?? (frame.into(joist.start).v + frame.into(joist.end).v) / 2;
        return { joist: joist.id, along, across: place.across ?? fromGrid(centreAt(joist, frame, toGrid(along))) };
      });
    return ends.length === 0 ? [] : [{ joist, ends }];
  });
}

const idOf = (each: EndJoist): string => (typeof each === 'string' ? each : 'id' in each ? each.id : each.joist);
