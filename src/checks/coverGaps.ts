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

function coverGap(patch: Patch, ceiling: Ceiling, views: Views): Finding {
  const { value, limit, rule, where } = judged(patch, ceiling, views);
  const { at, words } = placeOf(ceiling.frame, patch.middle.u, patch.middle.v);
  return finding('cover-gap', 'error', {
    where: { ...where, at },
    value: fromGrid(value),
    limit: fromGrid(limit),
    unit: 'mm',
    source: rule.source,
    words,
  });
}

interface Judged {
  readonly value: number;
  readonly limit: number;
  readonly rule: RuleValue;
  readonly where: Where;
}

/** A gap is judged the way it is narrow in its middle: between ends, between long edges, or from the wall. */
function judged(patch: Patch, ceiling: Ceiling, views: Views): Judged {
  const { u, v } = patch.middle;
  const [across, along] = [chordAt(views.across, v, u), chordAt(views.along, u, v)];
  const narrowAcross = across.length <= along.length;
  const { near, far, length } = narrowAcross ? across : along;
  const where = whereBetween(near, far, ceiling);
  if (near?.solid.kind === 'piece' && far?.solid.kind === 'piece') {
    const ends = narrowAcross && near.solid !== far.solid;
    const { rule, steps } = gridRule(ceiling.rules, ends ? 'joint.gap' : 'edgeJoint.gap');
    const limit = ends ? views.allowed.endGap(near, far) : steps;
    const widest = Math.max(...patch.cells.map(({ width }) => width));
    return { value: narrowAcross ? Math.max(length, widest) : length, limit, rule, where };
  }
  const { greatest, rule } = perimeterGap(ceiling.rules);
  const square = [near, far].every((span) => span === undefined || isSquare(span));
  const value = square && length > greatest ? length : views.allowed.reach(patch.cells);
  return { value: value > greatest ? value : Math.min(patch.width, patch.height), limit: greatest, rule, where };
}

/** Whether both sides of a span are square to the section, so that a length along it is the distance from them. */
const isSquare = ({ left, right }: Span): boolean => left.from.u === left.to.u && right.from.u === right.to.u;

interface Chord {
  readonly near: Span | undefined;
  readonly far: Span | undefined;
  readonly length: number;
}

/** What lies on either side of an empty place within its section; `level` runs along the view, `place` within the section. */
function chordAt(sections: readonly Section[], level: number, place: number): Chord {
  const section = sections.find(({ low, high }) => low <= level && level < high);
  if (section === undefined) return { near: undefined, far: undefined, length: 0 };
  const startOf = (span: Span): number => placeAt(section, level, span.leftLow, span.leftHigh);
  const stopOf = (span: Span): number => placeAt(section, level, span.rightLow, span.rightHigh);
  const things = section.spans.filter(({ solid }) => solid.kind === 'piece' || solid.kind === 'opening');
  const room = section.spans.find((span) => span.solid.kind === 'room' && startOf(span) <= place && place <= stopOf(span));
  let [near, far] = [room, room];
  let [from, to] = room ? [startOf(room), stopOf(room)] : [place, place];
  for (const thing of things) {
    const [start, stop] = [startOf(thing), stopOf(thing)];
    if (stop <= place && stop >= from) [near, from] = [thing, stop];
    if (start >= place && start <= to) [far, to] = [thing, start];
  }
  return { near, far, length: Math.round(to - from) };
}

/** Where a side is at a level of its section. */
const placeAt = ({ low, high }: Section, level: number, atLow: number, atHigh: number): number =>
  atLow === atHigh ? atLow : atLow + ((atHigh - atLow) * (level - low)) / (high - low);

function whereBetween(near: Span | undefined, far: Span | undefined, { about, sides }: Ceiling): Where {
  const indices = [near, far].flatMap((span) => (span?.solid.kind === 'piece' ? [span.solid.index] : []));
  const ids = [...new Set(indices)].map((index) => about[index].id);
  const side = near?.solid.kind === 'room' ? near.left : far?.solid.kind === 'room' ? far.right : undefined;
  const wall = side && sides[side.edge].wall;
  return {
    ...(ids.length === 1 && { piece: ids[0] }),
    ...(ids.length === 2 && { pieces: ids }),
    ...(wall !== undefined && { wall }),
  };
}
