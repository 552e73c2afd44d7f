import * as z from 'zod/mini';
import type { BoardLayout } from '../boards/boardLayout.js';
import type { FixingLength } from '../fixings/fixingLength.js';
import type { PlacedFixings } from '../fixings/placedFixings.js';
import { screwsToDrive } from '../fixings/screwsToDrive.js';
import type { BoardStock } from '../survey/boardStock.js';
import { admit, demand } from '../survey/door.js';
import type { Layer } from '../survey/layer.js';
import { areaM2 } from '../survey/outline.js';
import type { Room } from '../survey/room.js';
import { boardsSchema, liningSchema, roomSchema } from '../survey/schemas.js';
import { boardLines, type OrderedBoards, orderedBoards } from './boardLines.js';
import { packFor, packsOf, rounded } from './packs.js';
import { completed, type TakeOffOptions, takeOffOptionsSchema } from './takeOffOptions.js';
import type { TakeOff, TakeOffLine } from './takeOffResult.js';

/** What a take-off reads of a plan; a whole `CeilingPlan` will do. */
export interface TakeOffPlan {
  readonly room: Room;
  readonly layout: Pick<
    BoardLayout,
    'pieces' | 'boards' | 'boardsBought' | 'boardsAtMinimumLength' | 'boardsByStock' | 'jointLength'
  >;
  /** With their places, screws of pieces that are up are left out. */
  readonly fixings: Pick<PlacedFixings, 'count'> & Partial<Pick<PlacedFixings, 'positions'>>;
  readonly fixingLength: Pick<FixingLength, 'recommended' | 'range'>;
  readonly job: { readonly boards: readonly BoardStock[]; readonly lining?: readonly Layer[] };
  /** Layers of new boards, where there are two; then they are what is bought. */
  readonly layers?: readonly TakeOffLayer[];
}

/** What a take-off reads of one layer of new boards. */
export type TakeOffLayer = Pick<TakeOffPlan, 'layout' | 'fixings' | 'fixingLength'> & { readonly boards: readonly BoardStock[] };

const count = z.int().check(z.gte(0), z.lte(1_000_000));

/** What this library itself returned: known fields are checked, fields it does not read are let through. */
const readFields = {
  layout: z.looseObject({
    pieces: z.array(
      z.looseObject({
        id: z.optional(z.string()),
        massKg: z.number().check(z.gte(0), z.lte(10_000)),
        board: z.optional(z.string()),
        locked: z.optional(z.boolean()),
      }),
    ),
    boards: z.array(z.looseObject({ stock: z.string(), id: z.optional(z.string()), opened: z.optional(z.boolean()) })),
    boardsBought: count,
    boardsAtMinimumLength: z.nullable(count),
    boardsByStock: z.array(z.looseObject({ stock: z.string(), count })),
    jointLength: z.number().check(z.gte(0), z.lte(1e9)),
  }),
  fixings: z.looseObject({ count, positions: z.optional(z.array(z.looseObject({ piece: z.string() }))) }),
  fixingLength: z.looseObject({
    recommended: z.nullable(z.number()),
    range: z.optional(z.looseObject({ shortest: z.nullable(z.number()), longest: z.nullable(z.number()) })),
  }),
};

const readSchema = z.looseObject({
  room: roomSchema,
  ...readFields,
  job: z.looseObject({ boards: boardsSchema, lining: z.optional(liningSchema) }),
  layers: z.optional(z.array(z.looseObject({ ...readFields, boards: boardsSchema })).check(z.minLength(1), z.maxLength(2))),
});

const planSchema: z.ZodMiniType<TakeOffPlan> = readSchema.check(
  demand(
    ({ layout, job }) => layout.boardsByStock.every(({ stock }) => job.boards.some(({ id }) => id === stock)),
    'board-unknown',
    'a layout whose boards are all in job.boards',
    ({ layout }) => layout.boardsByStock.map(({ stock }) => stock).join(', '),
  ),
) as unknown as z.ZodMiniType<TakeOffPlan>;

/**
 * What to buy for one ceiling: boards, screws, joint tape and finish plaster, in whole packs, and what is left of the boards.
 *
 * The boards are those of the layout, as many as it takes when every board comes as short as it may; cutting waste is in that
 * number already, and no percentage is put on top. Boards that were cut into already, and screws of pieces that are up, are left out. Each line says how it came about, and packs are rounded up once, at the end.
 *
 * @param plan - a `CeilingPlan`, or the parts of one that are read
 * @param options - allowances as shares, packs and coverages; each default is common practice
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { planCeiling, rectangle, takeOff } from 'soffitwright';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(2390, 1190) },
 *   joists: { direction: 'y', first: 45, spacing: 400, last: 2345, width: 47 },
 *   lining: [{ kind: 'plasterboard', thickness: 9.5 }],
 *   boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * for (const { item, packs } of takeOff(plan, { screwAllowance: 0.15 }).lines) console.log(packs, item);
 * // 1 board 2400 x 1200 x 12.5 (2400)
 * // 1 drywall screws 55 mm
 * // 1 joint tape
 * // 1 finish plaster
 * ```
 */
export function takeOff(plan: TakeOffPlan, options: TakeOffOptions = {}): TakeOff {
  admit(planSchema, plan, 'plan');
  admit(takeOffOptionsSchema, options, 'options');
  return takeOffOf(plan, options);
}

/** {@link takeOff} without its door. */
export function takeOffOf(plan: TakeOffPlan, options: TakeOffOptions): TakeOff {
  const constants = completed(options, isThroughLath(plan));
  // Who says so: a number that a person gave is no rule of thumb.
  const by: Said = (key) => (options[key] === undefined ? 'common practice' : 'as asked');
  const layers = plan.layers ?? [{ ...plan, boards: plan.job.boards }];
  const ordered = orderedTogether(layers, constants.breakage);
  const boughtKg = ordered.reduce((sum, { stock, toBuy }) => sum + toBuy * boardKg(stock), 0);
  const fixedKg = layers.reduce((sum, layer) => sum + cutFromBought(layer), 0);
  return {
    lines: [
      ...boardLines(ordered),
      ...screwLines(plan, layers, constants, by),
      tape({ ...plan, ...layers[layers.length - 1] }, constants, by),
      plaster(plan.room, constants, by),
    ],
    wasteKg: rounded(Math.max(0, boughtKg - fixedKg), 1),
  };
}

/** The boards of all layers; those that share their stock are rounded up together. */
function orderedTogether(layers: readonly TakeOffLayer[], breakage: number): OrderedBoards[] {
  const [{ boards }] = layers;
  const share = layers.every((layer) => JSON.stringify(layer.boards) === JSON.stringify(boards));
  if (!share) return layers.flatMap((layer) => orderedBoards(layer.layout, layer.boards, breakage));
  const counted = layers.map(({ layout }) => layout);
  const least = counted.map(({ boardsAtMinimumLength }) => boardsAtMinimumLength);
  const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);
  return orderedBoards(
    {
      boards: counted.flatMap((layout) => layout.boards),
      boardsBought: sum(counted.map(({ boardsBought }) => boardsBought)),
      boardsAtMinimumLength: least.includes(null) ? null : sum(least.map((each) => each ?? 0)),
      boardsByStock: boards.map(({ id }) => ({
        stock: id,
        count: sum(
          counted.flatMap(({ boardsByStock }) => boardsByStock.filter(({ stock }) => stock === id).map(({ count }) => count)),
        ),
      })),
    },
    boards,
    breakage,
  );
}

/** Mass of the pieces that come from boards to be bought, not from what was cut up before or lay there. */
function cutFromBought({ layout: { pieces, boards }, boards: stocks }: TakeOffLayer): number {
  const atHand = new Set(stocks.filter(({ atHand }) => atHand).map(({ id }) => id));
  const before = new Set(boards.filter(({ opened, stock }) => opened === true || atHand.has(stock)).map(({ id }) => id));
  return pieces.filter(({ board }) => !before.has(board)).reduce((sum, { massKg }) => sum + massKg, 0);
}

/** One line for each length of screw. */
function screwLines(plan: TakeOffPlan, layers: readonly TakeOffLayer[], constants: Constants, by: Said): TakeOffLine[] {
  const byLength = new Map<string, TakeOffPlan>();
  for (const { layout, fixings, fixingLength } of layers) {
    const text = lengthText({ fixingLength });
    const before = byLength.get(text)?.fixings.count ?? 0;
    byLength.set(text, { ...plan, fixingLength, fixings: { count: before + screwsToDrive(layout, fixings) } });
  }
  return [...byLength.values()].map((each) => screws(each, constants, by));
}

type Said = (key: keyof TakeOffOptions) => string;
type Constants = Required<TakeOffOptions>;

const isThroughLath = ({ job: { lining = [] } }: TakeOffPlan): boolean => lining.some(({ kind }) => kind === 'lath-and-plaster');

const boardKg = ({ length, width, massPerArea }: BoardStock): number => ((length * width) / 1e6) * massPerArea;

const percent = (share: number): string => `${rounded(share * 100, 1)} %`;

function screws(plan: TakeOffPlan, { screwAllowance, screwBoxes }: Constants, by: Said): TakeOffLine {
  const quantity = rounded(plan.fixings.count * (1 + screwAllowance), 3);
  const perPack = packFor(quantity, screwBoxes);
  const spare = `${percent(screwAllowance)} spare${isThroughLath(plan) ? ' through lath and plaster' : ''}, ${by('screwAllowance')}`;
  return {
    item: `drywall screws${lengthText(plan)}`,
    quantity,
    unit: 'screws',
    packs: packsOf(quantity, perPack),
    perPack,
    basis: `${plan.fixings.count} screws and ${spare}; boxes of ${perPack}, ${by('screwBoxes')}`,
  };
}

function lengthText({ fixingLength: { recommended, range } }: Pick<TakeOffPlan, 'fixingLength'>): string {
  if (range !== undefined) return `, ${range.shortest ?? '?'} to ${range.longest ?? '?'} mm: open a probe hole before buying`;
  return recommended === null ? ', no stock length serves: see the screw summary' : ` ${recommended} mm`;
}

function tape({ room, layout }: TakeOffPlan, { tapeAllowance, tapeRoll, tapeWallAngle }: Constants, by: Said): TakeOffLine {
  const joints = layout.jointLength / 1000;
  const angle = tapeWallAngle ? perimeter(room) / 1000 : 0;
  const quantity = rounded((joints + angle) * (1 + tapeAllowance), 3);
  const taped = tapeWallAngle ? ` and ${rounded(angle, 2)} m of wall and ceiling angle` : ', wall and ceiling angle not taped';
  return {
    item: 'joint tape',
    quantity,
    unit: 'm',
    packs: packsOf(quantity, tapeRoll),
    perPack: tapeRoll,
    basis:
      `${rounded(joints, 2)} m of joints${taped}; ${percent(tapeAllowance)} for cutting, ${by('tapeAllowance')}; ` +
      `rolls of ${tapeRoll} m, ${by('tapeRoll')}`,
  };
}

/** Length of the walls along the ceiling, mm. */
function perimeter({ outline }: Room): number {
  let length = 0;
  for (let i = 0; i < outline.length; i++) {
    const [a, b] = [outline[i], outline[(i + 1) % outline.length]];
    length += Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
  }
  return length;
}

function plaster(room: Room, { plasterCoverage, plasterBag }: Constants, by: Said): TakeOffLine {
  const area = plasteredArea(room);
  return {
    item: 'finish plaster',
    quantity: rounded((area / plasterCoverage) * plasterBag, 3),
    unit: 'kg',
    packs: packsOf(area, plasterCoverage),
    perPack: plasterBag,
    basis: `${rounded(area, 2)} m2 of ceiling, ${plasterCoverage} m2 to a bag of ${plasterBag} kg, ${by('plasterCoverage')}`,
  };
}

/** The ceiling less what is not boarded, m2; lights are cut out afterwards and not taken off. */
function plasteredArea({ outline, openings = [] }: Room): number {
  return openings.reduce((area, opening) => {
    if (opening.kind === 'light' || opening.kind === 'other') return area;
    return area - ('outline' in opening ? areaM2(opening.outline) : (Math.PI * opening.diameter * opening.diameter) / 4e6);
  }, areaM2(outline));
}
