import { type Finding, finding, type Where } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { type Ceiling, gridRule } from './ceiling.js';
import { placeOf } from './place.js';
import type { EndJoint, SeatedLine, Structure } from './structure.js';

/** Boards further apart than this do not touch, mm. */
const BESIDE = 50;

/**
 * Butt joints of neighbouring rows that are too near each other, or on the same joist. Two joints are neighbours where both come
 * out on one row edge, and boards meet along that edge all the way from one to the other: nothing cracks across a chimney breast.
 * They are as far apart as their centre lines are at that edge.
 */
export function staggers(ceiling: Ceiling, structure: Structure): Finding[] {
  const { endJoints, pieces } = structure;
  const rowOf = (joint: EndJoint): number => pieces[joint.first].row;
  const touch = toGrid(BESIDE);
  let edges: Map<number, Stretch[]> | undefined;
  const meetBetween = (lower: EndJoint, upper: EndJoint): boolean => {
    edges ??= rowEdges(structure);
    const stretches = edges.get(rowOf(lower)) ?? [];
    return stretches.some(({ from, to }) => [lower.atHigh, upper.atLow].every((at) => from - touch <= at && at <= to + touch));
  };
  return endJoints.flatMap((lower) =>
    endJoints.flatMap((upper) => {
      if (rowOf(upper) !== rowOf(lower) + 1 || Math.abs(upper.low - lower.high) > touch) return [];
      const found = stagger(lower, upper, rowOf(lower), ceiling);
      return found.length > 0 && meetBetween(lower, upper) ? found : [];
    }),
  );
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** By lower row, where its boards meet those of the next row; butt joints do not part a stretch. */
function rowEdges({ edgeJoints, pieces }: Structure): Map<number, Stretch[]> {
  const edges = new Map<number, { from: number; to: number }[]>();
  const parts = edgeJoints.flatMap(({ parts }) => parts).sort((a, b) => a.low - b.low);
  for (const { piece, other, low, high } of parts) {
    const { row } = pieces[piece];
    if (pieces[other].row !== row + 1) continue;
    const stretches = edges.get(row) ?? [];
    const before = stretches[stretches.length - 1];
    if (before && low <= before.to + toGrid(BESIDE)) before.to = Math.max(before.to, high);
    else stretches.push({ from: low, to: high });
    edges.set(row, stretches);
  }
  return edges;
}

function stagger(lower: EndJoint, upper: EndJoint, row: number, ceiling: Ceiling): Finding[] {
  const minimum = gridRule(ceiling.rules, 'stagger.minimum');
  const preferred = gridRule(ceiling.rules, 'stagger.preferred');
  const apart = Math.abs(upper.atLow - lower.atHigh);
  const joist = joistUnder(lower.stretches[lower.stretches.length - 1]);
  const shared = joist !== undefined && joist === joistUnder(upper.stretches[0]);
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

/** The joist that a stretch of a joint lies on; none where it misses. */
const joistUnder = ({ seat }: SeatedLine): string | undefined =>
  seat !== undefined && seat.bearing.outcome !== 'off' ? seat.support.joist.id : undefined;
