import type { Problem } from './inputError.js';

/** What a `try…` function returns instead of throwing: plain data, so that it survives JSON and workers. */
export type Attempt<T, F = never> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly reason: 'input'; readonly problems: readonly Problem[] }
  | F;
