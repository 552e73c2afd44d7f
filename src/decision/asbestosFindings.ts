import { type Finding, finding } from '../rules/finding.js';
import type { Layer, LayerKind } from '../survey/layer.js';

/** Layers that may hold asbestos, and that nobody can tell by eye. */
const SUSPECT: readonly LayerKind[] = ['texture', 'unknown-board'];

const isUntested = ({ kind, asbestos }: Layer): boolean =>
  asbestos === 'untested' || (asbestos === undefined && SUSPECT.includes(kind));

/**
 * What is known of asbestos in the old ceiling: a hold for each layer without a test result, a caution that stays for each that
 * was tested positive.
 *
 * @param penetrations - how many fixings would go through the layer
 */
export function asbestosFindings(lining: readonly Layer[], penetrations: number): Finding[] {
  return lining.flatMap((layer, index) => {
    const details = { value: penetrations, unit: 'screws', words: { layer: layer.kind, number: index + 1 } };
    if (isUntested(layer)) return [finding('texture-untested', 'hold', details)];
    return layer.asbestos === 'tested positive' ? [finding('asbestos-positive', 'warning', details)] : [];
  });
}
