/**
 * How a value is known.
 *
 * - `read`: seen in the source's own text
 * - `secondary`: quoted by somebody else
 * - `practice`: common practice, no source
 * - `memory`: from memory, not seen
 * - `derived`: arithmetic on other values
 */
export type Standing = 'read' | 'secondary' | 'practice' | 'memory' | 'derived';

/** Where a value comes from. */
export interface Source {
  readonly standard: string;
  readonly edition?: string;
  readonly clause?: string;
  readonly standing: Standing;
}

/** A rule of thumb. */
export const commonPractice: Source = { standard: 'common practice, no source', standing: 'practice' };
