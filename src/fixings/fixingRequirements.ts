import * as z from 'zod/mini';
import type { Conditions, Level, RuleKey, RuleSet, Sense } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import { rulesInputSchema } from '../rules/schemas.js';
import type { Source, Standing } from '../rules/source.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import { admit } from '../survey/door.js';
import { countBetween, countsOf, type FixingCount, type FixingCounts, timesLines } from './fixingCounts.js';
import { type FixingSpacing, spacingOf } from './fixingSpacing.js';

/** What {@link fixingRequirements} takes; lengths in mm. */
export interface FixingRequirementsRequest {
  readonly rules?: RulesInput;
  readonly boardThickness: number;
  readonly boardWidth: number;
  readonly boardLength: number;
  /** Joist centres. */
  readonly joistSpacing: number;
  /** `skim`: plaster wets the board, and some sets want closer joists then. Default `skim`. */
  readonly finish?: 'skim' | 'tape';
  /** Minutes of fire resistance that the ceiling is declared to have. */
  readonly fireRating?: number;
}

/** One thing that a rule set asks for. */
export interface Requirement {
  readonly key: RuleKey;
  /** In site words. */
  readonly title: string;
  /** In `unit`; `null`: the set has no figure for this job. */
  readonly value: number | null;
  readonly unit: string;
  readonly sense: Sense;
  /** Whether it must hold or should. */
  readonly level: Level;
  /** Of the value; of nothing where there is none. */
  readonly source?: Source;
  /** Nobody has read the value in its standard or in a quotation. */
  readonly fromMemory: boolean;
  readonly note?: string;
}

/** What a rule set asks of the fixings of one board, with what the trade does beside it. */
export interface FixingRequirements {
  /** Title of the rule set. */
  readonly ruleSet: string;
  readonly requirements: readonly Requirement[];
  readonly screws: FixingCounts;
  /** The rule of thumb for the middle of the board; common practice, no source. */
  readonly practice: { readonly spacing: number; readonly line: FixingCount; readonly board: FixingCount };
  /** The rule of thumb and the rule side by side. */
  readonly words: string;
}

const size = z.number().check(z.gt(0), z.lte(10_000));

const requestSchema: z.ZodMiniType<FixingRequirementsRequest> = z.strictObject({
  rules: z.optional(rulesInputSchema),
  boardThickness: z.number().check(z.gt(0), z.lte(100)),
  boardWidth: z.number().check(z.gte(100), z.lte(10_000)),
  boardLength: size,
  joistSpacing: z.number().check(z.gte(100), z.lte(5000)),
  finish: z.optional(z.enum(['skim', 'tape'])),
  fireRating: z.optional(z.number().check(z.gte(0), z.lte(600))),
});

/**
 * What a rule set asks of the screws of one board laid across the joists: distances, depth into the joist, joist centres, how
 * many on a line and on a board, each with its level and source; and the rule of thumb beside it.
 *
 * The counts are of a whole board with its ends on joists. As few as `least` need the first screw further from the edge than
 * the rule's least.
 *
 * @param request - board and joist centres in mm, rules; fire resistance in minutes
 * @returns values in the unit of each rule, counts of screws
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { fixingRequirements } from 'soffitwright';
 *
 * const { words } = fixingRequirements({ boardThickness: 12.5, boardWidth: 1200, boardLength: 2400, joistSpacing: 400 });
 * console.log(words);
 * // 5 a line at 300, common practice, 35 a board; 6 to 7 a line at 230, specification, 42 to 49
 * ```
 */
export function fixingRequirements(request: FixingRequirementsRequest): FixingRequirements {
  admit(requestSchema, request);
  return requirementsOf({ ...request, rules: rulesOf(request.rules) });
}

type Ruled = Omit<FixingRequirementsRequest, 'rules'> & { readonly rules: RuleSet };

/** What is asked of the fixings, in the order in which the work goes. */
const KEYS: readonly RuleKey[] = [
  'support.centres',
  'stagger.minimum',
  'stagger.preferred',
  'joint.gap',
  'fixing.field',
  'fixing.boardEnd',
  'fixing.perimeter',
  'fixing.boundEdgeDistance',
  'fixing.cutEdgeDistance',
  'fixing.timberEdgeDistance',
  'fixing.floatingEdgeDistance',
  'fixing.embedment',
  'fixing.preferredEmbedment',
  'fixing.maximumEmbedment',
  'movementJoint.maximumRun',
];

/** {@link fixingRequirements} without its door. */
export function requirementsOf(request: Ruled): FixingRequirements {
  const { rules, boardThickness, joistSpacing, finish = 'skim', fireRating } = request;
  const given: Conditions = {
    fixing: 'screw',
    boardThickness,
    centres: joistSpacing,
    orientation: 'across',
    noggings: false,
    finish: finish === 'skim' ? 'textured' : 'painted',
    ...(fireRating !== undefined && { fireRating }),
  };
  const spacing = spacingOf(rules, given);
  const requirements = KEYS.map((key) => requirement(rules, key, given, spacing));
  const screws = countsOf(request, spacing, numberOf(rules, 'fixing.floatingEdgeDistance', given));
  const practice = practiceOf(request, screws.lines, spacing.boundEdgeDistance);
  return {
    ruleSet: rules.title,
    requirements,
    screws,
    practice,
    words: sideBySide(practice, screws, spacing),
  };
}

function requirement(rules: RuleSet, key: RuleKey, given: Conditions, spacing: FixingSpacing): Requirement {
  const { title, unit, sense, level } = rules.rules[key];
  const found = asked(rules, key, given, spacing);
  const about = { key, title, value: found?.value ?? null, unit, sense, level, fromMemory: found?.source.standing === 'memory' };
  if (found === undefined) return about;
  const { source, note } = found;
  return { ...about, source, ...(note !== undefined && { note }) };
}

/** The value for this job; at ends and walls that of the middle of the board, where that is closer. */
function asked(rules: RuleSet, key: RuleKey, given: Conditions, spacing: FixingSpacing): RuleValue | undefined {
  const own = lookUp(rules, key, given);
  const there = key === 'fixing.boardEnd' ? spacing.boardEnd : key === 'fixing.perimeter' ? spacing.perimeter : undefined;
  return own !== undefined && there !== undefined && own.value !== there ? lookUp(rules, 'fixing.field', given) : own;
}

function practiceOf({ rules, boardWidth }: Ruled, lines: number, edgeDistance: number): FixingRequirements['practice'] {
  const spacing = numberOf(rules, 'fixing.practiceField');
  const line = countBetween(boardWidth, spacing, edgeDistance, numberOf(rules, 'fixing.floatingEdgeDistance'));
  return { spacing, line, board: timesLines(line, lines) };
}

function sideBySide(practice: FixingRequirements['practice'], { line, board }: FixingCounts, spacing: FixingSpacing): string {
  const thumb = `${range(practice.line)} a line at ${shown(practice.spacing)}, common practice, ${range(practice.board)} a board`;
  const { standing } = spacing.sources.field;
  return `${thumb}; ${range(line)} a line at ${shown(spacing.field)}, ${STANDINGS[standing]}, ${range(board)}`;
}

const range = ({ least, most }: FixingCount): string => (least === most ? `${most}` : `${least} to ${most}`);

/** To a tenth: sizes in inches are not whole. */
const shown = (mm: number): string => `${Math.round(mm * 10) / 10}`;

const STANDINGS: Readonly<Record<Standing, string>> = {
  read: 'specification',
  secondary: 'specification',
  memory: 'specification, from memory',
  derived: 'derived',
  practice: 'common practice',
};
