import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid } from '../survey/grid.js';
import { areaM2 } from '../survey/outline.js';
import { type Ceiling, type GridRule, gridRule, type PieceFacts } from './ceiling.js';
import { joistsUnder } from './joistsUnder.js';
import { middleOf, placeOf } from './place.js';
import type { RowShape } from './rowShapes.js';
import type { PieceShape, Structure } from './structure.js';
import type { Support } from './supports.js';

/** What sizes are held against, looked up once. */
interface Limits {
  readonly length: GridRule;
  readonly preferredLength: GridRule;
  readonly width: GridRule;
  readonly preferredWidth: GridRule;
  readonly supports: RuleValue;
  readonly mass: RuleValue;
}

/** Pieces and rows that are too small, pieces on too few joists, pieces that are too heavy. */
export function sizes(ceiling: Ceiling, structure: Structure): Finding[] {
  const { rules } = ceiling;
  const limits: Limits = {
    length: gridRule(rules, 'piece.minimumLength'),
    preferredLength: gridRule(rules, 'piece.preferredLength'),
    width: gridRule(rules, 'row.minimumWidth'),
    preferredWidth: gridRule(rules, 'row.preferredWidth'),
    supports: lookUp(rules, 'piece.minimumSupports') as RuleValue,
    mass: lookUp(rules, 'piece.maximumMass') as RuleValue,
  };
  return [
    ...structure.pieces.flatMap((piece) => [
      ...tooShort(piece, limits),
      ...tooFewJoists(piece, structure.supports, rules, limits),
      ...tooHeavy(piece, limits),
      ...narrowPart(piece, structure.rows, limits),
    ]),
    ...structure.rows.flatMap((row) => tooNarrow(row, structure, ceiling, limits)),
  ];
}

/** A piece that fills its run from wall to wall cannot be longer, so that it is only said. */
function tooShort(piece: PieceShape, { length: minimum, preferredLength: preferred }: Limits): Finding[] {
  const { facts, length, row } = piece;
  if (length >= minimum.steps && length >= preferred.steps) return [];
  const fills = fillsRun(piece);
  const { at, words } = middleOf(facts);
  const details = { where: { piece: facts.id, row, at }, value: fromGrid(length), unit: 'mm', words };
  if (length < minimum.steps) {
    const limit = fromGrid(minimum.steps);
    return [finding('piece-below-minimum', fills ? 'warning' : 'error', { ...details, limit, source: minimum.rule.source })];
  }
  if (fills) return [];
  const limit = fromGrid(preferred.steps);
  return [finding('piece-below-preferred', 'warning', { ...details, limit, source: preferred.rule.source })];
}

/** A piece that fills its run from wall to wall and lies on one joist cannot be held by more, so that it is only said. */
function tooFewJoists(
  piece: PieceShape,
  supports: readonly Support[],
  rules: RuleSet,
  { supports: { value: limit, source } }: Limits,
): Finding[] {
  const under = joistsUnder(piece, supports, rules);
  if (limit === null || under.length >= limit) return [];
  const { at, words } = middleOf(piece.facts);
  const where = { piece: piece.facts.id, ...(under.length === 1 && { joist: under[0].joist.id }), row: piece.row, at };
  const severity = fillsRun(piece) && under.length > 0 ? 'warning' : 'error';
  return [finding('piece-on-one-support', severity, { where, value: under.length, limit, unit: 'joists', source, words })];
}

const fillsRun = ({ low, high }: PieceShape): boolean =>
  [low, high].every(({ meets }) => meets === 'wall' || meets === 'opening');

function tooHeavy({ facts }: PieceShape, { mass: { value: limit, source } }: Limits): Finding[] {
  const mass = massKg(facts);
  if (limit === null || mass === undefined || mass <= limit) return [];
  const { at, words } = middleOf(facts);
  return [
    finding('piece-too-heavy', 'warning', { where: { piece: facts.id, at }, value: mass, limit, unit: 'kg', source, words }),
  ];
}

/** m2, less its holes. */
export const pieceAreaM2 = ({ claim }: PieceFacts): number =>
  (claim.holes ?? []).reduce((area, hole) => area - areaM2(hole), areaM2(claim.outline));

/** To the gram. */
export const massKg = (facts: PieceFacts): number | undefined =>
  facts.stock && Math.round(pieceAreaM2(facts) * facts.stock.massPerArea * 1000) / 1000;

/** A row that fills its part of the room from wall to wall cannot be wider, so that it is only said. */
function tooNarrow(
  { row, low, high, pieces }: RowShape,
  { edgeFacings, pieces: shapes }: Structure,
  ceiling: Ceiling,
  { width: minimum, preferredWidth: preferred }: Limits,
): Finding[] {
  const width = high - low;
  if (width >= minimum.steps && width >= preferred.steps) return [];
  const fills = edgeFacings.every(({ piece, meets }) => !pieces.includes(piece) || meets === 'wall' || meets === 'opening');
  const boxes = pieces.map((index) => shapes[index].facts.box);
  const middle = (Math.min(...boxes.map(({ u0 }) => u0)) + Math.max(...boxes.map(({ u1 }) => u1))) / 2;
  const { at, words } = placeOf(ceiling.frame, middle, (low + high) / 2);
  const where = { pieces: pieces.map((index) => shapes[index].facts.id), row, at };
  const details = { where, value: fromGrid(width), unit: 'mm', words };
  if (width < minimum.steps) {
    const limit = fromGrid(minimum.steps);
    return [finding('row-below-minimum', fills ? 'warning' : 'error', { ...details, limit, source: minimum.rule.source })];
  }
  if (fills) return [];
  const limit = fromGrid(preferred.steps);
  return [finding('row-below-preferred', 'warning', { ...details, limit, source: preferred.rule.source })];
}

/** A piece much narrower than its row, as beside a breast: the other pieces decide where the row lies, so that it is only said. */
function narrowPart({ facts, row }: PieceShape, rows: readonly RowShape[], { width: { steps, rule } }: Limits): Finding[] {
  const width = facts.box.v1 - facts.box.v0;
  const band = rows.find((each) => each.row === row);
  if (width >= steps || band === undefined || band.high - band.low < steps) return [];
  const { at, words } = middleOf(facts);
  const details = { value: fromGrid(width), limit: fromGrid(steps), unit: 'mm', source: rule.source, words };
  return [
    finding('row-below-minimum', 'warning', { where: { piece: facts.id, row, at }, ...details, sentence: 'piece-of-row-narrow' }),
  ];
}
