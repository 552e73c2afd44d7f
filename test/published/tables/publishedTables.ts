import type { PublishedTable } from '../publishedTable.js';
import { australasia } from './australasia.js';
import { canada } from './canada.js';
import { capacity } from './capacity.js';
import { europe } from './europe.js';
import { screwLengths } from './screwLengths.js';
import { unitedKingdom } from './unitedKingdom.js';
import { unitedStates } from './unitedStates.js';

/** Every table of published values, by its file. */
export const publishedTables: Readonly<Record<string, readonly PublishedTable[]>> = {
  unitedKingdom,
  europe,
  canada,
  unitedStates,
  australasia,
  capacity,
  screwLengths,
};
