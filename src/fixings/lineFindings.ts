import { type Finding, finding, type Severity, type Where } from '../rules/finding.js';
import type { RuleKey } from '../rules/ruleSet.js';
import { lookUp, numberOf, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Joist } from '../survey/joist.js';
import type { Stretch } from './fixingMarks.js';
import type { LineJob, PlacedTimber } from './lineJob.js';
import type { FixingLine } from './placedFixings.js';

const SPACING_RULES = { end: 'fixing.boardEnd', perimeter: 'fixing.perimeter', field: 'fixing.field' } as const;

/** The screw stays on the timber, nearer the cut end than the rule; what to do about it can be done from below. */
export const nearCutEnd = (distance: number, { joist }: PlacedTimber, isJoint: boolean, where: Where, job: LineJob): Finding =>
  broken('fixing-edge', 'warning', 'fixing.cutEdgeDistance', fromGrid(Math.round(distance)), where, job, {
    sentence: isJoint ? sentenceFor(joist, job) : 'wall-timber',
    words: { width: joist.width, tight: numberOf(job.rules, 'fixing.tightButtDistance') },
  });

/** Timber is narrow where even a joint over its middle has no room; two ends butted tight want some of it all the same. */
function sentenceFor({ width }: Joist, { rules, spacing }: LineJob): string {
  const needed =
    2 * (toGrid(spacing.cutEdgeDistance) + toGrid(spacing.timberEdgeDistance)) + toGrid(numberOf(rules, 'joint.gap'));
  if (toGrid(width) >= needed) return 'fixing-edge';
  return toGrid(width) >= toGrid(numberOf(rules, 'fixing.tightButtTimber')) ? 'narrow-timber' : 'too-narrow-timber';
}

/** Through lath and plaster: the screw nearest to the line of the old nails, where the timber has no room to keep off it. */
export function nearNailLine(
  beside: readonly number[],
  where: (index: number) => Where,
  { rules, given, offCentre }: LineJob,
): Finding[] {
  if (offCentre === 0 || beside.length === 0) return [];
  const away = beside.map((each) => Math.abs(each));
  const nearest = away.indexOf(Math.min(...away));
  const { value, range, unit, source } = lookUp(rules, 'fixing.nailLineClearance', given) as RuleValue;
  const limit = range?.least ?? (value as number);
  // A place is moved to the grid, by up to half a step each way.
  if (away[nearest] >= toGrid(limit) - 1) return [];
  const details = { where: where(nearest), value: fromGrid(away[nearest]), limit, unit, source };
  return [finding('nail-line-near', 'warning', details)];
}

/** A stretch without screws that is longer than the rule allows, or a line on which none may be driven. */
export function tooWideGap(stretch: Stretch, kind: FixingLine['kind'], whole: boolean, where: Where, job: LineJob): Finding {
  const value = fromGrid(stretch.to - stretch.from);
  const key = whole || value > job.spacing.field ? 'fixing.field' : SPACING_RULES[kind];
  const severity = job.rules.rules[key].level === 'should' ? 'warning' : 'error';
  return broken('fixing-gap', severity, key, value, where, job, whole ? { sentence: 'fixing-line-closed' } : {});
}

function broken(
  code: string,
  severity: Severity,
  key: RuleKey,
  value: number,
  where: Where,
  { rules, given }: LineJob,
  said: Pick<Parameters<typeof finding>[2] & object, 'sentence' | 'words'> = {},
): Finding {
  const rule = lookUp(rules, key, given) ?? lookUp(rules, key);
  if (rule === undefined || rule.value === null) throw new Error(`${key} has no number here`);
  return finding(code, severity, { where, value, limit: rule.value, unit: rule.unit, source: rule.source, ...said });
}
