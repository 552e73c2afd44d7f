import * as z from 'zod/mini';
import type { BoardLayout, End, Piece } from '../boards/boardLayout.js';
import { coordinate, label, outlineSchema } from '../survey/schemas.js';

/** What this library itself returned: known fields are checked, fields it does not read are let through. */
const endSchema: z.ZodMiniType<End> = z.looseObject({
  meets: z.enum(['board', 'wall', 'opening']),
  joist: z.optional(label),
  position: coordinate,
}) as unknown as z.ZodMiniType<End>;

const side = z.enum(['bound', 'cut']);

const pieceSchema: z.ZodMiniType<Piece> = z.looseObject({
  id: label,
  outline: outlineSchema,
  holes: z.optional(z.array(outlineSchema)),
  ends: z.tuple([endSchema, endSchema]),
  edges: z.looseObject({ low: side, high: side }),
}) as unknown as z.ZodMiniType<Piece>;

/** The parts of a layout that fixings are placed by. */
export type FixedLayout = Pick<BoardLayout, 'pieces'>;

export const fixedLayoutSchema: z.ZodMiniType<FixedLayout> = z.looseObject({
  pieces: z.array(pieceSchema).check(z.maxLength(20_000)),
}) as unknown as z.ZodMiniType<FixedLayout>;
