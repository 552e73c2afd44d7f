import type { Mark } from '../survey/mark.js';

/** A spacing that the joists may have been set out to. */
export interface UsualSpacing {
  /** Centre to centre, mm. */
  readonly spacing: number;
  /** How common it is beside the others; any positive number. */
  readonly weight: number;
}

/**
 * What the inference takes for granted: every number of its statistical model. Each can be replaced. Unless said otherwise they
 * are common practice, with no source.
 */
export interface Assumptions {
  /** Standard deviation of a mark by its kind, mm, for marks that do not say. */
  readonly spread: Readonly<Record<NonNullable<Mark['kind']>, number>>;
  /** Spacings that joists are usually set out to. */
  readonly usual: readonly UsualSpacing[];
  /** Probability that the joists are even, but at none of the usual spacings. */
  readonly otherSpacing: number;
  /** Probability that the joists follow no spacing. */
  readonly irregular: number;
  /** How far a set-out spacing may be from its nominal value, standard deviation, mm. */
  readonly spacingSd: number;
  /** How far each joist strays from its place on its own: equally likely standard deviations, mm. */
  readonly straying: readonly number[];
  /** What each bay adds to the error of the one before: equally likely standard deviations, mm. */
  readonly drift: readonly number[];
  /** The same for joists that follow no spacing. */
  readonly irregularDrift: readonly number[];
  /** Slope of all the joists together against the walls, standard deviation, mm in a metre. */
  readonly skew: number;
  /** The same where the joists run askew or fan out. */
  readonly skewAskew: number;
  /** What each bay adds to the slope where the joists fan out, standard deviation, mm in a metre. */
  readonly fan: number;
  /** Probabilities that the joists run askew, and that they fan out. */
  readonly askew: number;
  readonly fanned: number;
  /** Slope of each joist on its own, standard deviation, mm in a metre. */
  readonly ownSkew: number;
  /** Probability that a mark is of something else: a nogging, a pipe, a nail in a lath. */
  readonly spurious: number;
  /** Probability that a mark is of a joist that has been marked before, where there is a choice. */
  readonly repeated: number;
  /** Probability that a joist is missing from its place, or cut off by a trimmer. */
  readonly missing: number;
  /** Probability that two joists stand side by side as one. */
  readonly doubled: number;
  /** Width of a joist when it was not given: mean and standard deviation, mm. */
  readonly width: number;
  readonly widthSd: number;
  /** The standard deviation when it was given, mm. */
  readonly givenWidthSd: number;
  /** How far the width of one joist differs from that of the others, standard deviation, mm. */
  readonly ownWidthSd: number;
  /** Probability that a probe into timber reports none: a gap, a notch, a soft place. */
  readonly falseMiss: number;
  /** Probability that a probe clear of the joists reports timber. */
  readonly falseHit: number;
  /** How far a probe wanders sideways in the plaster, standard deviation, mm. */
  readonly wander: number;
  /** Probability that joists span the shorter way of a room that is clearly longer one way. */
  readonly shorterWay: number;
}

/**
 * Four-foot wood laths divide into 12, 16 and 24 in centres (Building Trades Pocketbook, Lathing, read), so that the imperial
 * centres of lathed ceilings are 304.8, 406.4 and 609.6; 14, 15 and 18 in are old stock, common practice without a source.
 */
const inInches = [304.8, 355.6, 381, 406.4, 457.2, 609.6];
const inMillimetres = [300, 400, 450, 600];

export const usualAssumptions: Assumptions = {
  spread: { probe: 3, 'near-edge': 3, 'far-edge': 3, fixing: 6, detector: 10, loft: 15 },
  usual: [...inMillimetres, ...inInches].sort((a, b) => a - b).map((spacing) => ({ spacing, weight: 1 })),
  otherSpacing: 0.06,
  irregular: 0.03,
  spacingSd: 0.5,
  straying: [1, 3, 5, 7],
  drift: [0, 1, 2],
  irregularDrift: [15, 35, 70],
  skew: 2,
  skewAskew: 15,
  fan: 2.5,
  askew: 0.15,
  fanned: 0.05,
  ownSkew: 0.7,
  spurious: 0.05,
  repeated: 0.2,
  missing: 0.03,
  doubled: 0.02,
  width: 47,
  widthSd: 6,
  givenWidthSd: 1,
  ownWidthSd: 1.5,
  falseMiss: 0.05,
  falseHit: 0.005,
  wander: 1.5,
  shorterWay: 0.8,
};
