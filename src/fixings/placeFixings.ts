import * as z from 'zod/mini';
import type { Piece } from '../boards/boardLayout.js';
import { frameOf } from '../joists/frame.js';
import { locateZones } from '../joists/locateZones.js';
import { inOrderOfSeverity } from '../rules/finding.js';
import { memoryNote } from '../rules/memoryNote.js';
import type { RuleKey, RuleSet } from '../rules/ruleSet.js';
import { greatestOf, lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import { admit } from '../survey/door.js';
import { toGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { JoistDescription } from '../survey/joist.js';
import type { Layer } from '../survey/layer.js';
import { areaM2 } from '../survey/outline.js';
import type { Room } from '../survey/room.js';
import {
  joistDescriptionSchema,
  label,
  liningSchema,
  outlineSchema,
  pointSchema,
  positive,
  roomSchema,
} from '../survey/schemas.js';
import { spacingOf } from './fixingSpacing.js';
import { fixPiece } from './fixPiece.js';
import { type FixedLayout, fixedLayoutSchema } from './layoutSchema.js';
import { type LineJob, type PlacedTimber, placedTimber } from './lineJob.js';
import { type FixedPart, pieceParts } from './pieceParts.js';
import type { NoFixZone, PlacedFixings } from './placedFixings.js';
import type { SetOut } from './setOutLine.js';
import { widestBay } from './widestBay.js';

/** What {@link placeFixings} takes. */
export interface FixingsRequest {
  readonly room: Room;
  readonly layout: FixedLayout;
  readonly joists: JoistDescription;
  readonly rules?: RulesInput;
  /** Default `screw`. */
  readonly fixing?: 'screw' | 'nail';
  /** Nails in pairs in the middle of the board, where the rule set has a rule for them. Default false. */
  readonly doubleNailing?: boolean;
  /** The old ceiling: through lath and plaster, screws keep off the line of the old nails. */
  readonly lining?: readonly Layer[];
  /** Whether the ceiling is relied on to brace the building; only some rule sets ask. Default false. */
  readonly diaphragm?: boolean;
  /** Where no screw may go. */
  readonly noFix?: readonly NoFixZone[];
  /** mm; only some rule sets ask. Default 12.5. */
  readonly boardThickness?: number;
}

const zoneSchema: z.ZodMiniType<NoFixZone> = z.union([
  z.strictObject({ id: z.optional(label), outline: outlineSchema }),
  z.strictObject({ id: z.optional(label), centre: pointSchema, diameter: positive }),
]);

export const noFixSchema: z.ZodMiniType<readonly NoFixZone[]> = z.array(zoneSchema).check(z.maxLength(1000));

const requestSchema: z.ZodMiniType<FixingsRequest> = z.strictObject({
  room: roomSchema,
  layout: fixedLayoutSchema,
  joists: joistDescriptionSchema,
  rules: z.optional(rulesInputSchema),
  fixing: z.optional(z.enum(['screw', 'nail'])),
  doubleNailing: z.optional(z.boolean()),
  lining: z.optional(liningSchema),
  diaphragm: z.optional(z.boolean()),
  noFix: z.optional(noFixSchema),
  boardThickness: z.optional(z.number().check(z.gt(0), z.lte(100))),
});

/**
 * Places every screw of a layout: on each joist under each piece, in lines across the piece.
 *
 * Along a line the screws are as few as the spacing allows, in steps of whole mm where that can be; the first and the last lie
 * the rule's distance from a bound or a cut edge, or as far in as `fixing.floatingEdgeDistance` where that saves a screw. At a
 * butt joint they lie the rule's distance from the cut end and stay on the timber; where narrow timber has no room for both
 * they stay on the timber, and a finding says so. Screws keep clear of openings and of `noFix` zones. The two lines at a butt joint
 * lean opposite ways so that no two screws face each other across the joist.
 *
 * @param request - room, layout and joists in plan coordinates, mm; rules; zones without screws
 * @returns positions in mm, lines as a person marks them, counts, and findings where a rule could not be kept
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { placeBoards, placeFixings, joistsFromPositions, rectangle } from 'soffitwright';
 *
 * const room = { outline: rectangle(2390, 1190) };
 * const joists = joistsFromPositions({ room, direction: 'y', positions: [45, 445, 845, 1245, 1645, 2045, 2345], width: 47 });
 * const boards = [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }];
 * const { count, lines } = placeFixings({ room, joists, layout: placeBoards({ room, joists, boards }) });
 * console.log(count, lines[1].text);
 * // 48 first at 15, then every 230
 * ```
 */
export function placeFixings(request: FixingsRequest): PlacedFixings {
  admit(requestSchema, request);
  const rules = rulesOf(request.rules);
  if (request.doubleNailing === true && (request.fixing !== 'nail' || pairsOf(rules) === undefined)) {
    refuse(problem('no-such-row', 'doubleNailing', 'nails, and a rule set with a rule for pairs of them', rules.title));
  }
  return fixingsOf({ ...request, rules, parts: locateZones(request.room, request.joists, rules) });
}

type Located = Omit<FixingsRequest, 'rules' | 'joists'> & { readonly rules: RuleSet; readonly parts: readonly FixedPart[] };

/** Rules of distance that every line of screws rests on. */
const DISTANCES: readonly RuleKey[] = [
  'fixing.field',
  'fixing.boardEnd',
  'fixing.perimeter',
  'fixing.boundEdgeDistance',
  'fixing.cutEdgeDistance',
  'fixing.timberEdgeDistance',
];

/** {@link placeFixings} without its door. Each piece is fixed to the joists of its part of the ceiling, by the centres there. */
export function fixingsOf(request: Located): PlacedFixings {
  const { layout, parts, rules } = request;
  const jobs = new Map(parts.map((part) => [part, { job: lineJob(request, part), timbers: part.joists.map(placedTimber) }]));
  const fixed = pieceParts(layout.pieces, parts).map(({ piece, part }) => {
    const { job, timbers } = jobs.get(part) as { job: LineJob; timbers: PlacedTimber[] };
    return fixPiece(piece, timbers, frameOf(part.direction), job);
  });
  const set = withPairs(fixed.flatMap((each) => each.lines));
  const positions = set.flatMap((each) => each.positions);
  const area = layout.pieces.reduce((sum, piece) => sum + pieceArea(piece), 0);
  return {
    positions,
    lines: set.flatMap(({ line }) => line ?? []),
    count: positions.length,
    perSquareMetre: area > 0 ? Math.round((positions.length / area) * 100) / 100 : 0,
    findings: [
      ...fixed.flatMap((each) => each.findings),
      ...set.flatMap((each) => each.findings),
      ...inOrderOfSeverity([...jobs.values()].flatMap(({ job }) => memoryNote(rules, DISTANCES, job.given))),
    ],
  };
}

/** What the lines in one part of a ceiling are set out by. */
function lineJob(request: Located, { joists, direction }: FixedPart): LineJob {
  const { room, rules, noFix = [], boardThickness = 12.5, fixing = 'screw', lining = [], diaphragm } = request;
  const given = {
    fixing,
    boardThickness,
    centres: widestBay(joists, frameOf(direction)),
    ...(diaphragm !== undefined && { diaphragm }),
  };
  const throughLath = lining.some(({ kind }) => kind === 'lath-and-plaster');
  const pairs = request.doubleNailing === true ? pairsOf(rules) : undefined;
  return {
    rules,
    given,
    spacing: spacingOf(rules, given),
    floating: numberOf(rules, 'fixing.floatingEdgeDistance', given),
    wallGap: toGrid(greatestOf(lookUp(rules, 'perimeter.gap') as RuleValue)),
    offCentre: throughLath ? toGrid(numberOf(rules, 'fixing.nailLineClearance', given)) : 0,
    ...(pairs && { pairs }),
    openings: room.openings ?? [],
    noFix,
  };
}

/** Nails in pairs, if the set has rules for them, mm. */
function pairsOf(rules: RuleSet): LineJob['pairs'] {
  const [spacing, distance] = [lookUp(rules, 'fixing.pairField')?.value, lookUp(rules, 'fixing.pairDistance')?.value];
  return typeof spacing === 'number' && typeof distance === 'number' ? { spacing, distance } : undefined;
}

const pieceArea = ({ outline, holes = [] }: Piece): number => holes.reduce((area, hole) => area - areaM2(hole), areaM2(outline));

/** Facing screws of two ends on one joist nearer than this along it are driven at an angle, grid steps; common practice, no source. */
const OFFSET_ENOUGH = 10_000;

/** Says of each line at a shared joist whether its screws face those of the board opposite. */
function withPairs(set: readonly SetOut[]): SetOut[] {
  const onJoist = new Map<string, SetOut[]>();
  for (const each of set) {
    if (each.line === undefined || !each.shared) continue;
    const there = onJoist.get(each.line.joist);
    if (there === undefined) onJoist.set(each.line.joist, [each]);
    else there.push(each);
  }
  return set.map((each) => {
    const { line, shared, levels } = each;
    if (line === undefined || !shared) return each;
    const opposite = (onJoist.get(line.joist) ?? []).filter((other) => other.line?.piece !== line.piece);
    const facing = opposite.some((other) => other.levels.some((a) => levels.some((b) => Math.abs(a - b) < OFFSET_ENOUGH)));
    return { ...each, line: { ...line, pair: facing ? 'angled' : 'offset' } };
  });
}
