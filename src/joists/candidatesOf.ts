import type { Direction } from '../survey/joist.js';
import type { Component } from './components.js';
import { predict } from './predict.js';

/** One way of reading the marks, whatever the straying: a spacing and a direction. */
export interface Candidate {
  /** Centre to centre, mm; `'irregular'` when the joists follow no spacing. */
  readonly spacing: number | 'irregular';
  readonly direction: Direction;
  readonly probability: number;
}

/** A candidate with the components that make it up, the most probable of them first. */
export interface CandidateGroup extends Candidate {
  readonly components: readonly Component[];
}

/** Unusual spacings this near to each other are one candidate, as a share of the spacing. */
const ALIKE = 0.015;

/** Mean spacing of a component over its marked joists, mm, and its variance. */
export function spacingOf(component: Component): { mean: number; variance: number } {
  const { fit } = component.weighed;
  const last = Math.max(1, ...fit.system.joist);
  const { means, covariance } = predict(fit, [
    { of: 'node', joist: 0, v: 0 },
    { of: 'node', joist: last, v: 0 },
  ]);
  const variance = covariance(0, 0) + covariance(1, 1) - 2 * covariance(0, 1);
  return { mean: (means[1] - means[0]) / last, variance: variance / (last * last) };
}

const usualOf = ({ weighed }: Component): readonly number[] => weighed.fit.system.assumptions.usual.map(({ spacing }) => spacing);
const isUsual = (spacing: number, component: Component): boolean => usualOf(component).includes(spacing);

/** A spacing, or the usual one that it cannot be told from: within two standard deviations of how it is set out. */
function nearUsual(spacing: number, component: Component): number {
  const within = 2 * component.weighed.fit.system.assumptions.spacingSd;
  return usualOf(component).find((usual) => Math.abs(usual - spacing) <= within) ?? spacing;
}

/** The components grouped into candidates, the most probable first. */
export function candidatesOf(components: readonly Component[]): CandidateGroup[] {
  const groups: { spacing: number | 'irregular'; other: boolean; direction: Direction; components: Component[] }[] = [];
  for (const component of components) {
    const { placing, sight } = component.weighed;
    const { kind } = placing.family;
    const mean = kind === 'other' ? nearUsual(spacingOf(component).mean, component) : placing.family.spacing;
    const group = groups.find(
      (each) =>
        each.direction === sight.direction &&
        (kind === 'irregular'
          ? each.spacing === 'irregular'
          : isUsual(mean, component)
            ? each.spacing === mean
            : each.other && Math.abs((each.spacing as number) - mean) <= ALIKE * mean),
    );
    if (group) group.components.push(component);
    else {
      const spacing = kind === 'irregular' ? kind : mean;
      groups.push({
        spacing,
        other: kind === 'other' && !isUsual(mean, component),
        direction: sight.direction,
        components: [component],
      });
    }
  }
  return groups
    .map(({ spacing, other, direction, components: members }) => ({
      spacing: other ? Math.round((spacing as number) * 10) / 10 : spacing,
      direction,
      probability: members.reduce((sum, { probability }) => sum + probability, 0),
      components: members,
    }))
    .map((group, index) => ({ group, index }))
    .sort((a, b) => b.group.probability - a.group.probability || a.index - b.index)
    .map(({ group }) => group);
}
