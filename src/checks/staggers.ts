import { type Finding, finding, type Where } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Ceiling, gridRule } from './ceiling.js';
import { placeOf } from './place.js';
import type { EndJoint, Structure } from './structure.js';

/** Rows further apart than this at the two joints are not neighbours there, mm. */
const BESIDE = 50;

/** Butt joints of neighbouring rows that are too near each other, or on the same joist. */
export function staggers(ceiling: Ceiling, { endJoints, pieces }: Structure): Finding[] {
  const rowOf = (joint: EndJoint): number => pieces[joint.first].row;
  return endJoints.flatMap((lower) =>
    endJoints
      .filter((upper) => rowOf(upper) === rowOf(lower) + 1 && Math.abs(upper.low - lower.high) <= toGrid(BESIDE))
      .flatMap((upper) => stagger(lower, upper, rowOf(lower), ceiling)),
  );
}

function stagger(lower: EndJoint, upper: EndJoint, row: number, ceiling: Ceiling): Finding[] {
  const minimum = gridRule(ceiling.rules, 'stagger.minimum');
  const preferred = gridRule(ceiling.rules, 'stagger.preferred');
  const apart = Math.abs(upper.atLow - lower.atHigh);
  const joist = joistUnder(lower);
  const shared = joist !== undefined && joist === joistUnder(upper);
  const id = (index: number): string => ceiling.about[index].id;
  const { at } = placeOf(ceiling.frame, (upper.atLow + lower.atHigh) / 2, (upper.low + lower.high) / 2);
  const where: Where = {
    pieces: [lower.first, lower.second, upper.first, upper.second].map(id),
    ...(shared && { joist }),
    row,
    at,
  };
  const words = { rows: `${row} and ${row + 1}` };
  const details = { where, value: fromGrid(apart), unit: 'mm', words };
  if (apart < minimum.steps || shared || apart === 0) {
    const sentence = shared ? 'stagger-same-joist' : 'stagger';
    return [finding('stagger', 'error', { ...details, sentence, limit: fromGrid(minimum.steps), source: minimum.rule.source })];
  }
  if (apart >= preferred.steps) return [];
  const { source } = preferred.rule;
  return [finding('stagger', 'warning', { ...details, limit: fromGrid(preferred.steps), source })];
}

/** The joist that a joint lies on; none where it misses. */
const joistUnder = ({ seat }: EndJoint): string | undefined =>
  seat !== undefined && seat.bearing.outcome !== 'off' ? seat.support.joist.id : undefined;
