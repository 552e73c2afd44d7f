import type { Assumptions } from './assumptions.js';

/** One way the joists may have been set out: a spacing with its prior, and the straying that goes with it. */
export interface Family {
  readonly kind: 'usual' | 'other' | 'irregular';
  /** Mean and standard deviation of the spacing beforehand, mm. */
  readonly spacing: number;
  readonly spread: number;
  /** Probability beforehand. */
  readonly prior: number;
  /** Equally likely standard deviations: of each joist on its own, and of what each bay adds; mm. */
  readonly straying: readonly number[];
  readonly drift: readonly number[];
}

/** What an unusual spacing may be: broad enough for half and for twice the usual ones, and seldom as close as that, mm. */
const OTHER = { spacing: 450, spread: 110 };
/** Joists that follow no spacing still stand about this far apart, mm. */
const IRREGULAR = { spacing: 400, spread: 80 };

/** The families that are weighed, most probable beforehand first only by accident: in order of spacing, then the broad ones. */
export function familiesOf(assumptions: Assumptions): Family[] {
  const { usual, otherSpacing, irregular, spacingSd, straying, drift, irregularDrift } = assumptions;
  const total = usual.reduce((sum, { weight }) => sum + weight, 0);
  const named = 1 - otherSpacing - irregular;
  const families: Family[] = usual.map(({ spacing, weight }) => ({
    kind: 'usual',
    spacing,
    spread: spacingSd,
    prior: (named * weight) / total,
    straying,
    drift,
  }));
  if (otherSpacing > 0) families.push({ kind: 'other', ...OTHER, prior: otherSpacing, straying, drift });
  if (irregular > 0) {
    families.push({ kind: 'irregular', ...IRREGULAR, prior: irregular, straying: [4], drift: irregularDrift });
  }
  return families;
}

/** The least and greatest spacing that is considered at all, mm. */
export const SPACING_LIMITS = { least: 150, greatest: 1300 };
