import {
  type BoardStock,
  type Finding,
  type JoistDescription,
  type Layer,
  type Piece,
  type Room,
  type Row,
  ruleSets,
} from 'soffitwright';
import type { Described } from '../../src/boards/describeLayout.js';
import { placementFindings } from '../../src/boards/placementFindings.js';
import type { PlacementProblem } from '../../src/boards/placementProblem.js';
import { locateZones } from '../../src/joists/locateZones.js';

/** A ceiling with pieces and rows laid by hand, joists along y. */
export interface CeilingByHand {
  readonly room: Room;
  readonly joists: JoistDescription;
  readonly pieces: readonly Piece[];
  readonly rows: readonly Row[];
  readonly lining?: readonly Layer[];
}

const board: BoardStock = { id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' };

/** What the placement would say of a layout that it had no part in. */
export function findingsByHand({ room, joists, pieces, rows, lining = [] }: CeilingByHand): Finding[] {
  const set = ruleSets.uk;
  const problem = { request: { room, joists, boards: [board], lining }, set, located: locateZones(room, joists, set) };
  return placementFindings(problem as unknown as PlacementProblem, { pieces, rows } as unknown as Described);
}

/** A row between two levels. */
export const rowByHand = (row: number, low: number, high: number, ripped = false): Row => ({
  row,
  low,
  high,
  width: high - low,
  ripped,
});
