import { widestBay } from '../fixings/widestBay.js';
import { frameOf } from '../joists/frame.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { greatestOf, lookUp } from '../rules/ruleValue.js';
import { snap, toGrid } from '../survey/grid.js';

/** Board, and whether plaster goes on it. */
interface Finished {
  readonly thickness: number;
  readonly finish: 'skim' | 'tape';
}

/**
 * Plaster wets a board while it hangs: says where a rule set that tells a wet finish apart wants closer joists for it, or does not
 * permit it on this board.
 */
export function wetFinish({ thickness, finish }: Finished, parts: readonly LocatedZone[], rules: RuleSet): Finding[] {
  if (finish === 'tape') return [];
  const given = { boardThickness: thickness, orientation: 'across', noggings: false } as const;
  const dry = lookUp(rules, 'support.centres', given);
  const wet = lookUp(rules, 'support.centres', { ...given, finish: 'textured' });
  if (dry === undefined) return [];
  if (wet === undefined) {
    const words = { thickness, set: rules.title };
    return [finding('wet-finish', 'warning', { source: dry.source, sentence: 'wet-finish-unlisted', words })];
  }
  const centres = snap(Math.max(...parts.map(({ joists, direction }) => widestBay(joists, frameOf(direction)))));
  if (wet.value === null || toGrid(centres) <= toGrid(greatestOf(wet))) return [];
  return [
    finding('wet-finish', 'warning', { value: centres, limit: wet.value, unit: 'mm', source: wet.source, words: { thickness } }),
  ];
}
