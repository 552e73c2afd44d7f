import { boards } from './messages/boards.js';
import { decision } from './messages/decision.js';
import { fixings } from './messages/fixings.js';
import { joists } from './messages/joists.js';
import { layoutChecks } from './messages/layoutChecks.js';
import type { Messages } from './messages/message.js';
import { plan } from './messages/plan.js';
import { screwChecks } from './messages/screwChecks.js';

/**
 * The one table of what a person reads about a job, in site words: butt joint (end joint), old ceiling (lining), into the
 * joist (embedment), take down (strip), middle of board (field). Codes are stable, sentences may change. The sentences stand in
 * `messages/`, by what they are about.
 */
export const messages: Messages = {
  ...joists,
  ...decision,
  ...plan,
  ...boards,
  ...layoutChecks,
  ...screwChecks,
  ...fixings,
};

/** Fills the `{blanks}` of a sentence; lengths are shown to a tenth. */
export function fill(sentence: string, blanks: Readonly<Record<string, unknown>>): string {
  return sentence.replace(/\{(\w+)\}/g, (_, key: string) => {
    const value = blanks[key];
    if (typeof value === 'number') return String(Math.round(value * 10) / 10);
    return Array.isArray(value) ? value.join(' and ') : String(value ?? '?');
  });
}
