import { LEAST_TIMBER, SURE } from '../joists/bearing.js';
import { type Finding, finding, type Where } from '../rules/finding.js';
import { lookUp } from '../rules/ruleValue.js';
import { commonPractice, type Source } from '../rules/source.js';
import { fromGrid } from '../survey/grid.js';
import type { Ceiling } from './ceiling.js';
import { placeOf } from './place.js';
import type { SeatedLine, Structure } from './structure.js';

/** Whether each board end that is no wall's and no opening's has its timber. */
export function bearings(ceiling: Ceiling, { endJoints, pieces }: Structure): Finding[] {
  const id = (index: number): string => ceiling.about[index].id;
  const joints = endJoints.flatMap(({ first, second, stretches }) =>
    stretches.flatMap((line) => seatFindings(line, { pieces: [id(first), id(second)], row: pieces[first].row }, ceiling)),
  );
  const loose = pieces.flatMap(({ low, high, facts, row }) =>
    [low, high].flatMap(({ loose }) => (loose ? seatFindings(loose, { piece: facts.id, row }, ceiling) : [])),
  );
  return [...joints, ...loose];
}

function seatFindings(line: SeatedLine, who: Where, ceiling: Ceiling): Finding[] {
  const { seat } = line;
  const { at, words: place } = placeOf(ceiling.frame, (line.atLow + line.atHigh) / 2, (line.low + line.high) / 2);
  const pieces = who.pieces?.join(' and ') ?? who.piece ?? '';
  const words = { ...place, who: pieces, pieces };
  const ruled = { unit: 'mm', source: commonPractice, words };
  if (seat === undefined) return [finding('end-off-timber', 'error', { where: { ...who, at }, sentence: 'no-timber', ...ruled })];
  const { support, bearing, unsupported } = seat;
  const { joist } = support;
  const where: Where = { ...who, joist: joist.id, at };
  if (unsupported > 0 && bearing.outcome !== 'off') {
    const sentence = 'end-beyond-joist';
    return [finding('end-off-timber', 'error', { where, value: fromGrid(unsupported), limit: 0, sentence, ...ruled })];
  }
  const { offset: value, tolerance, outcome, withinEdgeRules } = bearing;
  if (outcome === 'off') {
    const limit = Math.max(0, (joist.width - fromGrid(Math.max(0, line.gap))) / 2 - LEAST_TIMBER);
    const sentence = who.pieces ? 'end-off-timber' : 'loose-end-off-timber';
    return [finding('end-off-timber', 'error', { where, value, limit, sentence, ...ruled })];
  }
  if (outcome === 'short') {
    const { source } = lookUp(ceiling.rules, 'fixing.cutEdgeDistance') as { source: Source };
    return [finding('bearing-short', 'warning', { where, value, limit: tolerance, unit: 'mm', source, words })];
  }
  if (outcome === 'secure' && joist.known !== 'inferred') return [];
  const sure = { where, value: withinEdgeRules, limit: SURE, unit: 'probability', source: commonPractice };
  return [finding('end-unproven', 'warning', { ...sure, words })];
}
