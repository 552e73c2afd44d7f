import { type Finding, finding } from '../rules/finding.js';
import { memoryNote } from '../rules/memoryNote.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { corners, extentOf } from '../survey/outline.js';
import type { Room } from '../survey/room.js';

/** Says where a ceiling is longer than one without a movement joint should be; the boards are laid as one field all the same. */
export function movementJoint(room: Room, rules: RuleSet): Finding[] {
  const rule = lookUp(rules, 'movementJoint.maximumRun');
  if (rule === undefined || rule.value === null) return [];
  const { left, right, low, high } = extentOf(corners(room.outline));
  const longest = Math.max(right - left, high - low);
  if (longest <= toGrid(rule.value)) return [];
  return [
    finding('movement-joint-wanted', 'warning', {
      value: fromGrid(longest),
      limit: rule.value,
      unit: rule.unit,
      source: rule.source,
    }),
    ...memoryNote(rules, ['movementJoint.maximumRun']),
  ];
}
