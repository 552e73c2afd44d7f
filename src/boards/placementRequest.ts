import * as z from 'zod/mini';
import type { RulesInput } from '../rules/rulesInput.js';
import { rulesInputSchema } from '../rules/schemas.js';
import type { BoardStock } from '../survey/boardStock.js';
import { demand } from '../survey/door.js';
import type { JoistDescription } from '../survey/joist.js';
import type { Layer } from '../survey/layer.js';
import type { Room } from '../survey/room.js';
import { boardsSchema, joistDescriptionSchema, liningSchema, positive, roomSchema } from '../survey/schemas.js';
import { type LockedPiece, lockedPieceSchema } from './lockedPieces.js';
import { type Preference, preferenceSchema } from './preference.js';

/** One ceiling to lay boards on. Lengths in mm. */
export interface PlacementRequest {
  readonly room: Room;
  readonly joists: JoistDescription;
  /** One or several sizes of one thickness and edge. */
  readonly boards: readonly BoardStock[];
  /** A rule set, or overrides of `ruleSets.uk`. */
  readonly rules?: RulesInput;
  /** Layers of the old ceiling, room side first. */
  readonly lining?: readonly Layer[];
  /** What a better layout is; `boards` when not given. */
  readonly prefer?: Preference;
  /** Widths of the rows from the low wall, mm, where they are not to be chosen. */
  readonly rowWidths?: readonly number[];
  /** Pieces that are up already: they stay, take no board, and what is laid keeps its stagger to them. */
  readonly locked?: readonly LockedPiece[];
  /** Steps of search allowed before the best so far is returned. */
  readonly budget?: number;
}

export const placementRequestSchema: z.ZodMiniType<PlacementRequest> = z
  .strictObject({
    room: roomSchema,
    joists: joistDescriptionSchema,
    boards: boardsSchema,
    rules: z.optional(rulesInputSchema),
    lining: z.optional(liningSchema),
    prefer: z.optional(preferenceSchema),
    rowWidths: z.optional(z.array(positive).check(z.minLength(1), z.maxLength(500))),
    locked: z.optional(z.array(lockedPieceSchema).check(z.maxLength(20_000))),
    budget: z.optional(z.int().check(z.gte(1))),
  })
  .check(
    demand(
      ({ prefer, boards }) => prefer !== 'cost' || boards.every((board) => board.price !== undefined),
      'price-missing',
      'a price for every board, when money comes first',
    ),
  );
