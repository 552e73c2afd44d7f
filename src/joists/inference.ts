import type { Finding } from '../rules/finding.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Mark } from '../survey/mark.js';
import type { Room } from '../survey/room.js';
import type { Assumptions } from './assumptions.js';
import type { Candidate } from './candidatesOf.js';

/** What `inferJoists` takes. */
export interface InferRequest {
  readonly room: Room;
  /** Any marks, in any order; up to 50 mm outside the outline. */
  readonly marks: readonly Mark[];
  /** The axis that the joists run along; both are weighed when not given. */
  readonly direction?: Direction;
  /** Spacings the joists may have been set out to, mm; the usual ones when not given. */
  readonly spacings?: readonly number[];
  /** Width of the joists, mm; 47 is assumed, and said, when nobody measured it. */
  readonly width?: number;
  /** Replaces numbers of the statistical model. */
  readonly assume?: Partial<Assumptions>;
}

/** One reading of the marks, in full: enough to continue from. */
export interface Hypothesis {
  readonly probability: number;
  readonly direction: Direction;
  readonly family: 'usual' | 'other' | 'irregular';
  /** Nominal spacing of the family, mm. */
  readonly spacing: number;
  /** Standard deviations: of each joist on its own and of what each bay adds, mm; of the slopes, mm in a metre. */
  readonly straying: number;
  readonly drift: number;
  readonly skew: number;
  readonly fan: number;
  /** For each mark the number of its joist and how many widths it is off the middle; `null`: on none, or a miss. */
  readonly places: readonly ({ readonly joist: number; readonly off: number } | null)[];
  readonly doubled: readonly number[];
}

/** What the marks say of the joists. */
export interface Inference {
  readonly room: Room;
  readonly marks: readonly Mark[];
  readonly direction: Direction;
  /** In order across the room. */
  readonly joists: readonly Joist[];
  /** Mean centre to centre of the first candidate and its standard deviation, mm; `null` when the joists follow no spacing. */
  readonly spacing: { readonly value: number; readonly sd: number } | null;
  /** The most probable first. */
  readonly candidates: readonly Candidate[];
  /** Indices of the marks that are taken to be of something else; they move nothing. */
  readonly outliers: readonly number[];
  /** Probability of the first candidate. */
  readonly confidence: number;
  readonly hypotheses: readonly Hypothesis[];
  readonly findings: readonly Finding[];
  /** The numbers of the model that were used, and the width. */
  readonly assumptions: Assumptions;
  readonly width: { readonly value: number; readonly sd: number };
}
