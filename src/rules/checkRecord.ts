import type { Finding } from './finding.js';
import type { Source } from './source.js';

/** One line of a calculation, as a person would write it down. */
export interface CheckStep {
  /** What it is, with its symbol where the standard has one. */
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The figures it came from. */
  readonly working: string;
  readonly source: Source;
}

/** An engineering check: what is asked of something against what it can do. A check that fails is a result, not an exception. */
export interface CheckRecord {
  /** In `unit`. */
  readonly demand: number;
  /** In `unit`; 0 where no rule gives one. */
  readonly capacity: number;
  readonly unit: string;
  /** Demand over capacity, to three decimals; `null` without a capacity. */
  readonly ratio: number | null;
  readonly ok: boolean;
  readonly steps: readonly CheckStep[];
  /** Of the capacity. */
  readonly source: Source;
  readonly findings: readonly Finding[];
}
