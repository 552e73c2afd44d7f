import { arePrices } from './arePrices.js';
import type { Proof } from './bestLayout.js';
import type { Certificate, CertifiedRows } from './certificate.js';

/** What a search has proven, for others to check. */
export function certificateOf(proofs: readonly Proof[]): Certificate {
  const divisions = proofs.map(({ space, prices }): CertifiedRows => {
    const rowWidths = space.set.layout.bands.map(({ width }) => width / 1000);
    if (prices === undefined || !arePrices(space, prices)) return { rowWidths };
    return { rowWidths, pieces: [...prices.kinds], boards: prices.boards };
  });
  return { kind: divisions.every(({ pieces }) => pieces !== undefined) ? 'prices' : 'search', divisions };
}
