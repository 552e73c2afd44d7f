import * as z from 'zod/mini';
import type { BoardLayout } from '../boards/boardLayout.js';
import type { FixingLength } from '../fixings/fixingLength.js';
import type { PlacedFixings } from '../fixings/placedFixings.js';
import type { BoardStock } from '../survey/boardStock.js';
import { boardsSchema, positive } from '../survey/schemas.js';

/** One of two layers of new boards. */
export interface LayerOfBoards {
  /** One or several sizes of one thickness and edge; the job's when not given. */
  readonly boards?: readonly BoardStock[];
  /** Widths of its rows from the low wall, mm, where they are not to be chosen. */
  readonly rowWidths?: readonly number[];
}

/** Two layers of new boards: `2`, or what is to be known of the second, or of both in the order in which they are fixed. */
export type Layers = 2 | readonly [LayerOfBoards] | readonly [LayerOfBoards, LayerOfBoards];

const layerOfBoards = z.strictObject({
  boards: z.optional(boardsSchema),
  rowWidths: z.optional(z.array(positive).check(z.minLength(1), z.maxLength(500))),
});

export const layersSchema: z.ZodMiniType<Layers> = z.union([
  z.literal(2),
  z.array(layerOfBoards).check(z.minLength(1), z.maxLength(2)),
]) as unknown as z.ZodMiniType<Layers>;

/** A layer of a job, with its boards. */
export type CompletedLayer = LayerOfBoards & Required<Pick<LayerOfBoards, 'boards'>>;

/** Both layers in the order in which they are fixed. */
export function completedLayers(layers: Layers, boards: readonly BoardStock[]): readonly [CompletedLayer, CompletedLayer] {
  const [first, second] = layers === 2 ? [{}, {}] : layers.length === 1 ? [{}, layers[0]] : layers;
  return [
    { boards, ...first },
    { boards, ...second },
  ];
}

/** One layer of a plan that has two. */
export interface PlannedLayer {
  /** 1 is fixed first. */
  readonly layer: 1 | 2;
  readonly boards: readonly BoardStock[];
  readonly layout: BoardLayout;
  readonly fixings: PlacedFixings;
  /** Through this layer and all that is above it. */
  readonly fixingLength: FixingLength;
  /** Of the second layer: the least distance between its long joints and those of the first, mm; `null` where one of them has none. */
  readonly apart?: number | null;
}
