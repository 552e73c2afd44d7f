import * as z from 'zod/mini';
import type { BoardStock } from './boardStock.js';
import { demand, demandNone } from './door.js';
import type { Joist, JoistDescription } from './joist.js';
import type { Layer } from './layer.js';
import type { Mark } from './mark.js';
import { corners, extentOf, isSimple } from './outline.js';
import type { Point } from './point.js';
import type { Opening, Room } from './room.js';
import { zonesInRoom } from './zonesInRoom.js';

/** Coordinates further out than this are not a room, mm. */
const FARTHEST = 1_000_000;
/** The longest room that is planned, mm. */
const LONGEST_ROOM = 100_000;
/** Under this a whole room is taken for metres, mm. */
const METRES_LIMIT = 100;
/** The least room that is planned, either way, mm. */
const LEAST_ROOM = 200;

export const coordinate = z.number().check(z.gte(-FARTHEST), z.lte(FARTHEST));
export const positive = z.number().check(z.gt(0), z.lte(FARTHEST));
export const notNegative = z.number().check(z.gte(0), z.lte(FARTHEST));
export const label = z.string().check(z.minLength(1), z.maxLength(200));
export const probability = z.number().check(z.gte(0), z.lte(1));

export const pointSchema: z.ZodMiniType<Point> = z.strictObject({ x: coordinate, y: coordinate });

export const outlineSchema: z.ZodMiniType<readonly Point[]> = z.array(pointSchema).check(
  z.minLength(3),
  z.maxLength(1000),
  demand((outline) => isSimple(outline), 'outline-crossing', 'an outline that does not cross or touch itself'),
);

const openingKind = z.enum(['hatch', 'light', 'flue', 'column', 'other']);

export const openingSchema: z.ZodMiniType<Opening> = z.union([
  z.strictObject({ id: z.optional(label), kind: openingKind, outline: outlineSchema }),
  z.strictObject({ id: z.optional(label), kind: openingKind, centre: pointSchema, diameter: positive }),
]);

export const markSchema: z.ZodMiniType<Mark> = z.strictObject({
  x: coordinate,
  y: coordinate,
  found: z.optional(z.boolean()),
  kind: z.optional(z.enum(['fixing', 'probe', 'near-edge', 'far-edge', 'detector', 'loft'])),
  centred: z.optional(z.boolean()),
  sd: z.optional(positive),
});

const direction = z.enum(['x', 'y']);
const joistWidth = z.number().check(z.gte(10), z.lte(1000));
const joistDepth = z.number().check(z.gte(20), z.lte(2000));

/** What this library itself returned: known fields are checked, fields it does not read are let through. */
export const joistSchema: z.ZodMiniType<Joist> = z.looseObject({
  id: label,
  start: pointSchema,
  end: pointSchema,
  width: joistWidth,
  widthSd: z.optional(notNegative),
  seams: z.optional(z.array(coordinate).check(z.maxLength(20))),
  depth: z.optional(joistDepth),
  sd: notNegative,
  sdAtStart: z.optional(notNegative),
  sdAtEnd: z.optional(notNegative),
  presence: probability,
  kind: z.optional(z.enum(['joist', 'truss', 'rafter', 'trimmer', 'nogging', 'batten'])),
  known: z.enum(['given', 'measured', 'inferred']),
});

/** Empty where only the zones of a room are boarded; without zones, whoever locates the joists refuses it. */
const joistList = z.array(joistSchema).check(z.maxLength(2000));

export const spacingFields = {
  direction,
  first: coordinate,
  spacing: z.number().check(z.gte(50), z.lte(5000)),
  width: z.optional(joistWidth),
  depth: z.optional(joistDepth),
  last: z.optional(coordinate),
};

export const positionFields = {
  direction,
  positions: z
    .array(z.union([coordinate, z.strictObject({ atStart: coordinate, atEnd: coordinate })]))
    .check(z.minLength(1), z.maxLength(2000)),
  width: z.optional(joistWidth),
  depth: z.optional(joistDepth),
};

export const joistDescriptionSchema: z.ZodMiniType<JoistDescription> = z.union([
  z.strictObject(spacingFields),
  z.strictObject(positionFields),
  z.strictObject({
    marks: z.array(markSchema).check(z.minLength(1), z.maxLength(1000)),
    direction: z.optional(direction),
    width: z.optional(joistWidth),
  }),
  joistList,
]);

const zoneSchema = z.strictObject({ id: label, outline: outlineSchema, joists: joistDescriptionSchema });

const sizeOf = (outline: readonly Point[]): { readonly least: number; readonly greatest: number; readonly text: string } => {
  const { left, right, low, high } = extentOf(outline);
  const [width, depth] = [right - left, high - low];
  return { least: Math.min(width, depth), greatest: Math.max(width, depth), text: `${width} by ${depth}` };
};

const looksLikeMetres = (outline: readonly Point[]): boolean => sizeOf(outline).greatest < METRES_LIMIT;
const sidesOf = (outline: readonly Point[]): number => corners(outline).length;
const sizeText = (outline: readonly Point[]): string => sizeOf(outline).text;

const roomOutline = outlineSchema.check(
  demand((outline) => !looksLikeMetres(outline), 'looks-like-metres', 'lengths in mm, and this looks like metres', sizeText),
  demand(
    (outline) => looksLikeMetres(outline) || sizeOf(outline).least >= LEAST_ROOM,
    'room-too-small',
    `a room of at least ${LEAST_ROOM} mm each way`,
    sizeText,
  ),
  demand(
    (outline) => sizeOf(outline).greatest <= LONGEST_ROOM,
    'room-too-large',
    `a room of at most ${LONGEST_ROOM} mm each way`,
    sizeText,
  ),
);

/** Zones lie within the room, apart from each other, and have names of their own. */
function zoneFaults({ outline, zones = [] }: Room) {
  if (zones.length === 0 || [outline, ...zones.map((zone) => zone.outline)].some((each) => !isSimple(each))) return [];
  const { outside, over } = zonesInRoom(
    outline,
    zones.map((zone) => zone.outline),
  );
  const repeated = zones.flatMap(({ id }, index) => (zones.findIndex((each) => each.id === id) < index ? [index] : []));
  const fault = (code: string, expected: string) => (index: number) => ({
    code,
    path: ['zones', index],
    expected,
    received: zones[index].id,
  });
  return [
    ...repeated.map(fault('repeated-id', 'zones with different ids')),
    ...outside.map(fault('zone-outside-room', 'a zone within the room')),
    ...over.map(fault('zones-overlap', 'zones that do not lie over each other')),
  ];
}

export const roomSchema: z.ZodMiniType<Room> = z
  .strictObject({
    id: z.optional(label),
    name: z.optional(label),
    outline: roomOutline,
    openings: z.optional(z.array(openingSchema).check(z.maxLength(500))),
    height: z.optional(positive),
    walls: z.optional(
      z.array(
        z.strictObject({
          edge: z.int().check(z.gte(0)),
          name: z.optional(label),
          window: z.optional(z.boolean()),
          door: z.optional(z.boolean()),
        }),
      ),
    ),
    zones: z.optional(z.array(zoneSchema)),
    tags: z.optional(z.record(z.string(), z.union([z.string(), z.number(), z.boolean()]))),
  })
  .check(
    demand(
      ({ walls = [], outline }) => walls.every(({ edge }) => edge < sidesOf(outline)),
      'no-such-wall',
      'walls whose edge is an index into the outline',
      ({ walls = [], outline }) => `edge ${Math.max(...walls.map(({ edge }) => edge))} of ${sidesOf(outline)} sides`,
    ),
    demandNone(zoneFaults),
  );

export const layerSchema: z.ZodMiniType<Layer> = z.strictObject({
  kind: z.enum([
    'plasterboard',
    'lath-and-plaster',
    'skim',
    'texture',
    'fibreboard',
    'unknown-board',
    'tiles',
    'boarding',
    'insulation',
    'batten-void',
    'metal-bar',
    'other',
  ]),
  thickness: z.number().check(z.gte(0), z.lte(500)),
  tolerance: z.optional(z.number().check(z.gte(0), z.lte(100))),
  massPerArea: z.optional(z.number().check(z.gte(0), z.lte(500))),
  joints: z.optional(z.array(z.tuple([pointSchema, pointSchema])).check(z.maxLength(2000))),
  asbestos: z.optional(z.enum(['none', 'untested', 'tested negative', 'tested positive'])),
});

export const liningSchema: z.ZodMiniType<readonly Layer[]> = z.array(layerSchema).check(z.maxLength(50));

/** Smaller than this it is no board, and an offcut that nothing is cut from, mm. */
export const LEAST_BOARD = { length: 300, width: 200 } as const;

export const boardStockSchema: z.ZodMiniType<BoardStock> = z.strictObject({
  id: label,
  length: z.number().check(z.gte(LEAST_BOARD.length), z.lte(10_000)),
  width: z.number().check(z.gte(LEAST_BOARD.width), z.lte(3000)),
  thickness: z.number().check(z.gt(0), z.lte(100)),
  massPerArea: z.number().check(z.gt(0), z.lte(200)),
  edge: z.enum(['square', 'tapered']),
  price: z.optional(z.number().check(z.gte(0), z.lte(1e9))),
  available: z.optional(z.int().check(z.gte(0), z.lte(1e6))),
  kerf: z.optional(z.number().check(z.gte(0), z.lte(50))),
  lengthTolerance: z.optional(z.number().check(z.gte(0), z.lte(100))),
  widthTolerance: z.optional(z.number().check(z.gte(0), z.lte(100))),
  atHand: z.optional(z.literal(true)),
});

export const boardsSchema: z.ZodMiniType<readonly BoardStock[]> = z.array(boardStockSchema).check(
  z.minLength(1),
  z.maxLength(50),
  demand((boards) => new Set(boards.map((board) => board.id)).size === boards.length, 'repeated-id', 'boards with different ids'),
  demand((boards) => new Set(boards.map((board) => board.thickness)).size <= 1, 'mixed-boards', 'boards of one thickness'),
  demand((boards) => new Set(boards.map((board) => board.edge)).size <= 1, 'mixed-boards', 'boards of one edge profile'),
  demand(
    (boards) => new Set(boards.filter((board) => !board.atHand).map((board) => board.price === undefined)).size <= 1,
    'price-missing',
    'a price for every board or for none',
  ),
);

export const rectangleSchema: z.ZodMiniType<{ width: number; depth: number }> = z.strictObject({
  width: positive,
  depth: positive,
});
