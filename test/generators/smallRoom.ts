import { rectangle } from 'soffitwright';

/** A box room, quick to plan: for tests that ask whether a plan is the same everywhere, not whether it is good. */
export const smallRoom = {
  room: { outline: rectangle(2600, 1900) },
  joists: { direction: 'x' as const, first: 40, spacing: 400, last: 1860, width: 47 },
  lining: [{ kind: 'plasterboard' as const, thickness: 9.5 }],
  boards: [{ id: '900 x 1800', length: 1800, width: 900, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }],
};
