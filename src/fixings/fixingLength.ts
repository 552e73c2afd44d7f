import type { Finding } from '../rules/finding.js';

/** How long the screws must be, mm. */
export interface FixingLength {
  /** Shortest length that holds. */
  readonly minimum: number;
  readonly preferred: number;
  /** Longest length that stays below where services may run. */
  readonly maximum: number;
  /** Stock length to buy; `null`: none satisfies both limits. */
  readonly recommended: number | null;
  /** Into the joist with the recommended length. */
  readonly embedment: number | null;
  readonly findings: readonly Finding[];
}
