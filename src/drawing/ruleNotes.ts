import { requirementsOf } from '../fixings/fixingRequirements.js';
import { widestBay } from '../fixings/widestBay.js';
import { RULE_KEYS, type RuleKey } from '../rules/ruleSet.js';
import { lookUp } from '../rules/ruleValue.js';
import { snap } from '../survey/grid.js';
import { type Subject, zonesOf } from './subject.js';

/** The rule of thumb and the rule side by side: screws a line and a board, of a whole board over the widest bay. */
export function sideBySide(subject: Subject): string[] {
  const { plan, say, withUnit } = subject;
  const { rules, boards } = plan.job;
  const [{ id, length, width, thickness }] = boards;
  const joistSpacing = snap(widestBayOf(subject));
  // A plan that was kept may be older than a rule.
  if (joistSpacing === 0 || RULE_KEYS.some((key) => rules.rules[key] === undefined)) return [];
  const { words } = requirementsOf({
    rules,
    joistSpacing,
    boardThickness: thickness,
    boardWidth: width,
    boardLength: length,
  });
  return [say('screws.sideBySide', { board: id, centres: withUnit(joistSpacing), words })];
}

/** The widest bay of any part of the ceiling, mm. */
const widestBayOf = (subject: Subject): number =>
  Math.max(...zonesOf(subject).map(({ plan, frame }) => widestBay(plan.joists, frame)));

/** A rule with its value, whether it must hold, and where it comes from. */
export function ruleText(key: RuleKey, subject: Subject): string {
  const { plan, say, withUnit } = subject;
  const { rules, boards } = plan.job;
  const given = { fixing: 'screw', boardThickness: boards[0]?.thickness, centres: widestBayOf(subject) } as const;
  const found = lookUp(rules, key, given);
  const { title, sense, level } = rules.rules[key];
  const value = found?.value;
  return say('screws.rule', {
    title,
    sense,
    level: say(`level.${level}`),
    value: value === undefined || value === null ? '-' : withUnit(value),
    source:
      found === undefined ? '-' : [found.source.standard, found.source.edition, found.source.clause].filter(Boolean).join(', '),
  });
}
