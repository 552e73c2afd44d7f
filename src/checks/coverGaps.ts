import { type Finding, finding, type Where } from '../rules/finding.js';
import type { RuleValue } from '../rules/ruleValue.js';
import { fromGrid } from '../survey/grid.js';
import { type Ceiling, gridRule, perimeterGap } from './ceiling.js';
import type { Section, Span } from './crossSections.js';
import { HAIR } from './hair.js';
import { type Patch, patchesOf } from './patch.js';
import { placeOf } from './place.js';
import type { Views } from './views.js';

/** One finding for each part of the ceiling that nothing covers and no rule leaves open. */
export function coverGaps(ceiling: Ceiling, views: Views): Finding[] {
  return patchesOf(views.bare)
    .filter(({ thickness }) => thickness > HAIR)
    .map((patch) => coverGap(patch, ceiling, views));
}

interface Judged {
  readonly value: number;
  readonly limit: number;
  readonly rule: RuleValue;
  readonly where: Where;
}

function coverGap(patch: Patch, ceiling: Ceiling, views: Views): Finding {
  const { value, limit, rule, where } = judged(patch, ceiling, views);
  const { at, words } = placeOf(ceiling.frame, patch.middle.u, patch.middle.v);
  return finding('cover-gap', 'error', {
    where: { ...where, at },
    value: fromGrid(value),
    limit: fromGrid(limit),
    unit: 'mm',
    source: rule.source,
    words: { ...words, width: fromGrid(patch.width), height: fromGrid(patch.height) },
  });
}

/** A gap is judged the way it is narrow: between ends, between long edges, or from the wall. */
function judged(patch: Patch, ceiling: Ceiling, views: Views): Judged {
  const narrowAcross = patch.width <= patch.height;
  const [near, far] = narrowAcross
    ? [patch.largest.left, patch.largest.right]
    : besides(views.along, patch.middle.u, patch.middle.v);
  const where = whereBetween(near, far, ceiling);
  if (near?.solid.kind === 'piece' && far?.solid.kind === 'piece') {
    const rule = gridRule(ceiling.rules, narrowAcross ? 'joint.gap' : 'edgeJoint.gap');
    const limit = narrowAcross ? views.allowed.endGap(near, far) : rule.steps;
    const value = narrowAcross ? Math.max(...patch.cells.map(({ width }) => width)) : patch.height;
    return { value, limit, rule: rule.rule, where };
  }
  const { greatest, rule } = perimeterGap(ceiling.rules);
  const reach = views.allowed.reach(patch.cells);
  return { value: reach > greatest ? reach : Math.min(patch.width, patch.height), limit: greatest, rule, where };
}

/** What lies below and above a place in the view along the joists. */
function besides(sections: readonly Section[], u: number, v: number): [Span | undefined, Span | undefined] {
  const section = sections.find(({ low, high }) => low <= u && u < high);
  const things = section?.spans.filter(({ solid }) => solid.kind === 'piece' || solid.kind === 'opening') ?? [];
  const room = section?.spans.find(
    ({ solid, leftLow, leftHigh, rightLow, rightHigh }) =>
      solid.kind === 'room' && leftLow + leftHigh <= 2 * v && 2 * v <= rightLow + rightHigh,
  );
  let [below, above] = [room, room];
  for (const thing of things) {
    const [start, stop] = [thing.leftLow + thing.leftHigh, thing.rightLow + thing.rightHigh];
    if (stop <= 2 * v && (below === room || stop > (below as Span).rightLow + (below as Span).rightHigh)) below = thing;
    if (start >= 2 * v && (above === room || start < (above as Span).leftLow + (above as Span).leftHigh)) above = thing;
  }
  return [below, above];
}

function whereBetween(near: Span | undefined, far: Span | undefined, { about }: Ceiling): Where {
  const ids = [near, far].flatMap((span) => (span?.solid.kind === 'piece' ? [about[span.solid.index].id] : []));
  const wall = near?.solid.kind === 'room' ? near.left.edge : far?.solid.kind === 'room' ? far.right.edge : undefined;
  return {
    ...(ids.length === 1 && { piece: ids[0] }),
    ...(ids.length === 2 && { pieces: ids }),
    ...(wall !== undefined && { wall }),
  };
}
