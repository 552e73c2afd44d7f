import { type Finding, finding, type Where } from '../rules/finding.js';
import { asGiven } from './place.js';

type Claimed = number | string | boolean | null;

/** A claim that is wrong: `value` is what was claimed, `limit` what was found. */
export function wrong(what: string, claimed: Claimed, found: Claimed, where: Where = {}, unit?: string): Finding {
  const numbers = typeof claimed === 'number' && typeof found === 'number' ? { value: claimed, limit: found } : {};
  return finding('claim-wrong', 'error', {
    ...(Object.keys(where).length > 0 && { where }),
    ...numbers,
    ...(unit !== undefined && { unit }),
    source: asGiven,
    words: { what, claimed: shown(claimed), found: shown(found) },
  });
}

const shown = (value: Claimed): string => (typeof value === 'number' ? String(Math.round(value * 1000) / 1000) : String(value));

/** A claim of a number, if it is made, against what was found and how far it may be rounded. */
export function compared(
  what: string,
  claimed: number | undefined,
  found: number | undefined,
  allowance: number,
  where?: Where,
  unit?: string,
): Finding[] {
  if (claimed === undefined || found === undefined) return [];
  // On whole thousandths, so that no comparison hangs on the last bit.
  return Math.abs(Math.round(claimed * 1000) - Math.round(found * 1000)) <= Math.round(allowance * 1000)
    ? []
    : [wrong(what, claimed, Math.round(found * 1000) / 1000, where, unit)];
}
