import { fill, messages } from './messages.js';
import type { Source } from './source.js';

/**
 * - `hold`: do not start
 * - `error`: the plan breaks a rule that must hold
 * - `warning`: departs from a rule that should hold, or needs care
 * - `note`: worth knowing
 */
export type Severity = 'hold' | 'error' | 'warning' | 'note';

/** Where on the job a finding is. */
export interface Where {
  readonly piece?: string;
  readonly pieces?: readonly string[];
  readonly joist?: string;
  readonly row?: number;
  /** 2: piece and row are of the second layer of new boards. */
  readonly layer?: 1 | 2;
  readonly board?: string;
  /** Index into the marks. */
  readonly mark?: number;
  /** Index of the outline's edge. */
  readonly wall?: number;
  /** Plan coordinates, mm. */
  readonly at?: { readonly x: number; readonly y: number };
}

/** What the trade would say about a job. */
export interface Finding {
  /** Stable; see the list of codes in the README. */
  readonly code: string;
  readonly severity: Severity;
  /** For a person, in site words; may change between versions. */
  readonly message: string;
  readonly where?: Where;
  readonly value?: number;
  readonly limit?: number;
  /** Of `value` and `limit`. */
  readonly unit?: string;
  readonly source?: Source;
  readonly remedy?: string;
}

type Details = Omit<Finding, 'code' | 'severity' | 'message' | 'remedy'> & {
  /** Values for the blanks of the message that are not already in the finding. */
  readonly words?: Readonly<Record<string, string | number>>;
  /** The entry of the message table, where one code is said in several ways. Default: the code. */
  readonly sentence?: string;
};

/**
 * A finding whose message, and remedy if the table has one, come from the message table. Blanks are filled from `words`,
 * from `value`, `limit` and `unit`, and from `where`.
 */
export function finding(code: string, severity: Severity, { words, sentence = code, ...details }: Details = {}): Finding {
  const entry = messages[sentence];
  if (entry === undefined) throw new Error(`no message for ${sentence}`);
  const blanks = { ...details.where, ...details, ...words };
  return {
    code,
    severity,
    message: fill(entry.message, blanks),
    ...details,
    ...(entry.remedy === undefined ? {} : { remedy: fill(entry.remedy, blanks) }),
  };
}

const SEVERITIES: readonly Severity[] = ['hold', 'error', 'warning', 'note'];

/** Findings in order of severity, otherwise in the order they came; repeated ones once. */
export function inOrderOfSeverity(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  const once = findings.filter((each) => {
    const text = JSON.stringify(each);
    return !seen.has(text) && seen.add(text);
  });
  return SEVERITIES.flatMap((severity) => once.filter((each) => each.severity === severity));
}
