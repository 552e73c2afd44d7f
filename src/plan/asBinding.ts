import type { Finding } from '../rules/finding.js';

/** Laying boards over joists too far apart is a departure; planning a ceiling on them breaks the rule. */
export const asBinding = (each: Finding): Finding =>
  each.code === 'support-centres-exceeded' ? { ...each, severity: 'error' } : each;
