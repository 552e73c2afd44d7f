import * as z from 'zod/mini';
import { locateZones } from '../joists/locateZones.js';
import { type Finding, finding, inOrderOfSeverity } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import type { BoardStock } from '../survey/boardStock.js';
import { admit } from '../survey/door.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { JoistDescription } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import { boardsSchema, joistDescriptionSchema, roomSchema } from '../survey/schemas.js';
import type { Ceiling } from './ceiling.js';
import { ceilingParts } from './ceilingParts.js';
import { compared } from './claimWrong.js';
import { distance } from './distance.js';
import { type FixingJob, fixingJob, isInside } from './fixingJob.js';
import { type ClosedZone, closedZonesSchema, type FixingsToCheck, type FixingToCheck, fixingsSchema } from './fixingsToCheck.js';
import { layoutSchema } from './layoutSchema.js';
import type { LayoutToCheck } from './layoutToCheck.js';
import { asGiven, placeOf } from './place.js';
import { screwLines } from './screwLines.js';
import { placedScrew } from './screwPlaces.js';
import { circleRing, type GridPoint, type Ring, ringOf } from './solid.js';
import { structureOf } from './structure.js';
import { viewsOf } from './views.js';

/** What {@link checkFixings} takes. */
export interface FixingsCheck {
  readonly room: Room;
  readonly layout: LayoutToCheck;
  readonly joists: JoistDescription;
  readonly fixings: FixingsToCheck;
  readonly rules?: RulesInput;
  /** Default `screw`. */
  readonly fixing?: 'screw' | 'nail';
  /** Where no screw may go. */
  readonly noFix?: readonly ClosedZone[];
  /** The stock that the layout's boards name: says which edges of a piece are bound where the layout does not. */
  readonly boards?: readonly BoardStock[];
}

const requestSchema: z.ZodMiniType<FixingsCheck> = z.strictObject({
  room: roomSchema,
  layout: layoutSchema,
  joists: joistDescriptionSchema,
  fixings: fixingsSchema,
  rules: z.optional(rulesInputSchema),
  fixing: z.optional(z.enum(['screw', 'nail'])),
  noFix: z.optional(closedZonesSchema),
  boards: z.optional(boardsSchema),
});

/**
 * Checks the screws of a layout: each in timber and in its board by the distances that the rules ask for, no gap along a joist
 * over the spacing, no line left out, none where no screw may go. Shares no code with the placing of screws.
 *
 * An edge counts as bound where the layout says so; else both long edges of a piece as wide as its board. Of a narrower piece one
 * edge at least is cut; where nothing says which, a screw too near for a cut edge is a warning. Where narrow timber cannot give a butt
 * joint both edge distances, screws that break one of them are a warning. The joint between joists that stand side by side is an edge of
 * either. The closer spacings at ends and walls have their own level.
 *
 * @param request - plan coordinates in mm; `joists` in any of their forms; `fixings` as positions, or as they were returned
 * @returns findings in order of severity; screws that keep the rules that must hold give no `error`
 * @throws InputError when a value is missing or of the wrong type, or a field outside `layout` and `fixings` is unknown
 * @example
 * ```ts
 * import { checkFixings, rectangle } from 'soffitwright';
 *
 * const outline = [{ x: 5, y: 5 }, { x: 1095, y: 5 }, { x: 1095, y: 495 }, { x: 5, y: 495 }];
 * const screws = [50, 450, 850, 1050].flatMap((x) => [20, 250, 480].map((y) => ({ x, y })));
 * const findings = checkFixings({
 *   room: { outline: rectangle(1100, 500) },
 *   layout: { pieces: [{ id: '1.1', outline, board: '1' }], boards: [{ id: '1', stock: 'b' }] },
 *   joists: { direction: 'y', positions: [50, 450, 850, 1050], width: 50 },
 *   fixings: screws.filter(({ x, y }) => x !== 450 || y !== 250),
 * });
 * console.log(findings.filter(({ severity }) => severity === 'error').map(({ message }) => message).join('\n'));
 * // Piece 1.1 on J2: 460 mm between screws at 450, 250; 230 is the most.
 * ```
 */
export function checkFixings(request: FixingsCheck): Finding[] {
  admit(requestSchema, request);
  return fixingFindings({ ...request, rules: rulesOf(request.rules) });
}

/** {@link checkFixings} without its door. */
export function fixingFindings(request: Omit<FixingsCheck, 'rules'> & { readonly rules: RuleSet }): Finding[] {
  const { room, layout, fixings, rules, fixing = 'screw', noFix = [], boards = [] } = request;
  const ceilings = ceilingParts(room, layout, boards, locateZones(room, request.joists, rules), rules);
  const positions = 'positions' in fixings ? fixings.positions : fixings;
  const homes = positions.map((position) => homeOf(position, ceilings));
  return inOrderOfSeverity([
    ...ceilings.flatMap((ceiling, part) => {
      const job = fixingJob(ceiling, structureOf(ceiling, viewsOf(ceiling)), fixing, boards[0]?.thickness);
      const own = positions.filter((_, i) => homes[i] === part);
      return partFindings(own, noFix, job);
    }),
    ...('positions' in fixings ? fixingClaims(fixings) : []),
  ]);
}

/** The part of the ceiling that a screw is in: that of the piece it names, else that in which it lies. */
function homeOf({ piece, x, y }: FixingToCheck, ceilings: readonly Ceiling[]): number {
  if (ceilings.length === 1) return 0;
  const named = ceilings.findIndex(({ about }) => about.some(({ id }) => id === piece));
  if (named >= 0) return named;
  const at = { x: toGrid(x), y: toGrid(y) };
  return Math.max(
    0,
    ceilings.findIndex(({ frame, room }) => isInside(frame.into(at), room.rings)),
  );
}

function partFindings(positions: readonly FixingToCheck[], noFix: readonly ClosedZone[], job: FixingJob): Finding[] {
  const screws = positions.map((position) => placedScrew(position, job));
  const zones = noFix.map((zone) => zoneOf(zone, job));
  return [
    ...screws.flatMap(({ findings }) => findings),
    ...screws.flatMap(({ at }, i) => zones.flatMap((zone) => inZone(at, positions[i], zone, job))),
    ...screwLines(
      screws,
      zones.map(({ ring }) => [ring]),
      job,
    ),
  ];
}

interface GridZone {
  readonly name: string;
  readonly ring: Ring;
  /** Of a circle, grid steps. */
  readonly centre?: GridPoint;
  readonly radius?: number;
}

function zoneOf(zone: ClosedZone, { ceiling: { frame } }: FixingJob): GridZone {
  const name = zone.id ?? 'a zone without screws';
  if ('outline' in zone) return { name, ring: ringOf(zone.outline, frame) };
  const { centre, diameter } = zone;
  const middle = frame.into({ x: toGrid(centre.x), y: toGrid(centre.y) });
  return { name, ring: circleRing(centre, diameter / 2, frame, true), centre: middle, radius: toGrid(diameter / 2) };
}

/** A screw on the edge of a zone is not in it. */
function inZone(
  at: GridPoint,
  fixing: FixingToCheck,
  { name, ring, centre, radius }: GridZone,
  { ceiling }: FixingJob,
): Finding[] {
  const toEdge = Math.min(...ring.map((from, i) => distance(at, { from, to: ring[(i + 1) % ring.length] })));
  const depth =
    centre !== undefined && radius !== undefined
      ? radius - distance(at, { from: centre, to: centre })
      : isInside(at, [ring])
        ? toEdge
        : 0;
  if (depth <= 0) return [];
  const { at: place, words } = placeOf(ceiling.frame, at.u, at.v);
  const where = {
    ...(fixing.piece !== undefined && { piece: fixing.piece }),
    ...(fixing.joist !== undefined && { joist: fixing.joist }),
    at: place,
  };
  const value = fromGrid(depth);
  return [
    finding('fixing-in-no-fix-zone', 'error', {
      where,
      value,
      limit: 0,
      unit: 'mm',
      source: asGiven,
      words: { ...words, zone: name },
    }),
  ];
}

/** A hole parts a joist under a piece into several lines, which are counted together. */
function fixingClaims({ positions, count, lines = [] }: Exclude<FixingsToCheck, readonly unknown[]>): Finding[] {
  const totals = new Map<string, number>();
  const keyOf = (piece: string | undefined, joist: string | undefined): string => JSON.stringify([piece, joist]);
  for (const line of lines)
    totals.set(keyOf(line.piece, line.joist), (totals.get(keyOf(line.piece, line.joist)) ?? 0) + line.count);
  return [
    ...compared('screws', count, positions.length, 0, {}, 'screws'),
    ...[...totals].flatMap(([key, claimed]) => {
      const [piece, joist] = JSON.parse(key) as [string, string];
      const found = positions.filter((each) => each.piece === piece && each.joist === joist).length;
      return compared(`screws of piece ${piece} on ${joist}`, claimed, found, 0, { piece, joist }, 'screws');
    }),
  ];
}
