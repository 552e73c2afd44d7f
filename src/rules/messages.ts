/** A sentence for a person, with `{blanks}`; and what to do about it. */
export interface Message {
  readonly message: string;
  readonly remedy?: string;
}

/**
 * The one table of what a person reads about a job, in site words: butt joint (end joint), old ceiling (lining), into the
 * joist (embedment), take down (strip), middle of board (field). Codes are stable, sentences may change.
 */
export const messages: Readonly<Record<string, Message>> = {
  // Joists
  'joist-width-assumed': {
    message: 'Joists taken as {value} mm wide: nobody measured them.',
    remedy: 'Probe both edges of one joist and give the width.',
  },
  'joist-probe-last-bay': {
    message: 'The last joist is {value} mm from the far wall; a bay that long may hide one more joist.',
    remedy: 'Probe between the last joist and the wall.',
  },
};

/** Fills the `{blanks}` of a sentence; lengths are shown to a tenth. */
export function fill(sentence: string, blanks: Readonly<Record<string, unknown>>): string {
  return sentence.replace(/\{(\w+)\}/g, (_, key: string) => {
    const value = blanks[key];
    if (typeof value === 'number') return String(Math.round(value * 10) / 10);
    return Array.isArray(value) ? value.join(' and ') : String(value ?? '?');
  });
}
