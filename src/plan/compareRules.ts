import * as z from 'zod/mini';
import { attemptPlacement } from '../boards/attemptPlacement.js';
import type { BoardLayout } from '../boards/boardLayout.js';
import { layBoards } from '../boards/placeBoards.js';
import { layoutFindings } from '../checks/checkLayout.js';
import { asbestosFindings } from '../decision/asbestosFindings.js';
import { type Requirement, requirementsOf } from '../fixings/fixingRequirements.js';
import { widestBay } from '../fixings/widestBay.js';
import { frameOf } from '../joists/frame.js';
import { finding, inOrderOfSeverity } from '../rules/finding.js';
import { memoryNote } from '../rules/memoryNote.js';
import type { RuleSet, Sense } from '../rules/ruleSet.js';
import { type RuleSets, ruleSets } from '../rules/ruleSets.js';
import { greatestOf, lookUp } from '../rules/ruleValue.js';
import { rulesInputSchema } from '../rules/schemas.js';
import { type RulesInput, rulesOf } from '../rules/withRules.js';
import { admit, demand } from '../survey/door.js';
import { snap, toGrid } from '../survey/grid.js';
import { refuse } from '../survey/inputError.js';
import { completeFixing, fixCeiling, lengthForCeiling } from './fixCeiling.js';
import { type Job, jobSchema } from './planCeiling.js';
import type { ComparedRule, RulesComparison, RulesForCeiling } from './rulesComparison.js';
import { joistsOf, type SettledJoists, settleJoists } from './settleJoists.js';
import { wetFinish } from './wetFinish.js';

/** Rule sets to compare, in a list or by name. */
export type RuleSetsToCompare = readonly RulesInput[] | RuleSets | { readonly [name: string]: RulesInput };

const setsSchema: z.ZodMiniType<RuleSetsToCompare> = z
  .union([z.array(rulesInputSchema), z.record(z.string(), rulesInputSchema)])
  .check(demand((sets) => Object.keys(sets).length > 0, 'too-small', 'at least one rule set'));

/**
 * What several rule sets would require for the same ceiling, side by side: joist centres, distances between screws and from edges,
 * depth into the joist, counts and lengths of screws, each value with its level and source.
 *
 * The boards are laid once, by the job's own rules, and judged by each set. Nothing here says that a ceiling is safe or complies:
 * values from memory are marked so, and each set's notes say what it does not reach.
 *
 * @param job - as for `planCeiling`; lengths in mm, masses in kg/m2
 * @param sets - rule sets or overrides of `ruleSets.uk`, in a list or by name; all of `ruleSets` when not given
 * @returns plain data: for each set its counts, screw length, departures and notes, and each rule as the sets have it; mm
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { compareRules, rectangle, ruleSets } from 'soffitwright';
 *
 * const job = {
 *   room: { outline: rectangle(3600, 3000) },
 *   joists: { direction: 'y' as const, first: 25, spacing: 400, last: 3575, width: 50 },
 *   lining: [{ kind: 'plasterboard' as const, thickness: 9.5 }],
 *   boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }],
 * };
 * for (const { name, words } of compareRules(job, { uk: ruleSets.uk, din: ruleSets.din }).sets) console.log(`${name}: ${words}`);
 * // uk: 5 a line at 300, common practice, 35 a board; 6 to 7 a line at 230, specification, 42 to 49
 * // din: 5 a line at 300, common practice, 35 a board; 8 a line at 170, specification, from memory, 56
 * ```
 */
export function compareRules(job: Job, sets: RuleSetsToCompare = ruleSets): RulesComparison {
  admit(jobSchema, job);
  admit(setsSchema, sets, 'sets');
  const { boards, prefer = 'tradesperson' } = job;
  const own = rulesOf(job.rules);
  const settled = settleJoists(job.room, job.joists, own);
  const { parts, room, joists } = settled;
  const centres = snap(Math.max(...parts.map((part) => widestBay(part.joists, frameOf(part.direction)))));
  const laid = attemptPlacement(() => layBoards({ room, boards, joists, rules: own, lining: job.lining, prefer }));
  if (!laid.ok && laid.reason === 'input') refuse(...laid.problems);
  const layout = laid.ok ? laid.value : undefined;
  const compared = Object.entries(sets).map(([name, input]) => {
    const rules = rulesOf(input);
    return ofSet({ ...job, rules }, Array.isArray(sets) ? rules.id : name, { settled, centres, layout });
  });
  const [{ id, thickness, width, length }] = boards;
  return {
    ceiling: { board: id, thickness, width, length, centres },
    sets: compared.map(({ set }) => set),
    rules: sideBySide(compared),
    findings: inOrderOfSeverity([
      ...asbestosFindings(job.lining, Math.max(...compared.map(({ set }) => set.total ?? 0))),
      ...new Set(parts.flatMap((part) => part.findings)),
      ...(laid.ok || laid.reason === 'input' ? [] : laid.findings),
    ]),
  };
}

interface Ceiling {
  readonly settled: SettledJoists;
  readonly centres: number;
  readonly layout: BoardLayout | undefined;
}

interface Compared {
  readonly set: RulesForCeiling;
  readonly requirements: readonly Requirement[];
}

function ofSet(job: Job & { readonly rules: RuleSet }, name: string, { settled, centres, layout }: Ceiling): Compared {
  const { rules, boards, finish = 'skim', fireRating, ...rest } = job;
  const { parts, room, joists } = settled;
  const [{ thickness, width, length }] = boards;
  const { requirements, screws, words } = requirementsOf({
    rules,
    boardThickness: thickness,
    boardWidth: width,
    boardLength: length,
    joistSpacing: centres,
    finish,
    ...(fireRating !== undefined && { fireRating }),
  });
  const rated = fireRating !== undefined && lookUp(rules, 'fixing.embedment', { fixing: 'screw', fireRating }) === undefined;
  const screwed = { ...rest, boards, finish, ...(fireRating !== undefined && !rated && { fireRating }) };
  const toFix = { ...screwed, ...completeFixing(screwed, rules) };
  const fixed = layout && fixCeiling(toFix, layout, parts, rules);
  const { findings: lengthFindings, ...fixingLength } = fixed?.fixingLength ?? lengthForCeiling(toFix, joistsOf(parts), rules);
  const checked = { room, joists, boards, rules, lining: job.lining };
  return {
    requirements,
    set: {
      name,
      ruleSet: rules.title,
      notes: rules.notes ?? [],
      centresWithin: carriedAt(rules, thickness, centres, finish),
      screws,
      total: fixed?.fixings.count ?? null,
      fixingLength: rated ? null : fixingLength,
      words,
      fromMemory: requirements.filter(({ fromMemory }) => fromMemory).map(({ title }) => title),
      findings: inOrderOfSeverity([
        ...(rated ? [finding('fire-rating-unruled', 'warning', { value: fireRating, words: { set: rules.title } })] : []),
        ...(layout === undefined ? [] : layoutFindings({ ...checked, layout })),
        ...wetFinish({ thickness, finish }, parts, rules),
        ...(fixed?.findings ?? lengthFindings).filter(({ code }) => code !== 'rule-from-memory'),
        ...memoryNote(
          rules,
          requirements.map(({ key }) => key),
          { fixing: 'screw', boardThickness: thickness, orientation: 'across', noggings: false },
        ),
      ]),
    },
  };
}

/** Whether the joists are close enough to carry the board without noggings between them; `null`: the set has no figure. */
function carriedAt(rules: RuleSet, boardThickness: number, centres: number, finish: 'skim' | 'tape'): boolean | null {
  const wet = finish === 'skim' ? ({ finish: 'textured' } as const) : {};
  const rule = lookUp(rules, 'support.centres', { boardThickness, orientation: 'across', noggings: false, ...wet });
  return rule === undefined ? null : toGrid(centres) <= toGrid(greatestOf(rule));
}

function sideBySide(compared: readonly Compared[]): ComparedRule[] {
  return compared[0].requirements.map(({ key, title, unit, sense }, i) => {
    const values = compared.map(({ set, requirements }) => {
      const { key: _key, title: _title, unit: _unit, sense: _sense, ...value } = requirements[i];
      return { name: set.name, ...value };
    });
    return { key, title, unit, sense, values, strictest: strictest(sense, values) };
  });
}

function strictest(sense: Sense, values: ComparedRule['values']): string[] {
  if (sense === 'nominal') return [];
  const limits = values.flatMap(({ value }) => (value === null ? [] : [toGrid(value)]));
  if (limits.every((limit) => limit === limits[0])) return [];
  const most = sense === 'at most' ? Math.min(...limits) : Math.max(...limits);
  return values.filter(({ value }) => value !== null && toGrid(value) === most).map(({ name }) => name);
}
