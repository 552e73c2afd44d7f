import { SURE } from '../joists/bearing.js';
import { type Finding, finding } from '../rules/finding.js';
import type { RuleKey, RuleSet } from '../rules/ruleSet.js';
import { greatestOf, lookUp, type RuleValue } from '../rules/ruleValue.js';
import { fromGrid } from '../survey/grid.js';
import type { Piece } from './boardLayout.js';
import type { Described } from './describeLayout.js';
import type { PlacementProblem } from './placementProblem.js';
import { isUnproven } from './unproven.js';
import { zoneBorderFindings } from './zoneBorderFindings.js';

/** What the trade would say of a layout that breaks no rule that must hold. */
export function placementFindings(problem: PlacementProblem, layout: Described): Finding[] {
  return [
    ...new Set(problem.located.flatMap(({ findings }) => findings)),
    ...zoneBorderFindings(problem),
    ...bearings(problem, layout),
    ...closeJoints(problem, layout),
    ...shortPieces(problem, layout),
    ...narrowRows(problem, layout),
    ...wideCentres(problem),
    ...overhangs(problem, layout),
    ...heavyPieces(problem, layout),
  ];
}

const given = ({ set }: { readonly set: RuleSet }, key: RuleKey): RuleValue => lookUp(set, key) as RuleValue;

/** Pieces that meet at each butt joint, the one on its low side first. */
function butts(pieces: readonly Piece[]): (readonly [Piece, Piece])[] {
  return pieces.slice(1).flatMap((piece, i) => {
    const before = pieces[i];
    return before.row === piece.row && piece.ends[0].meets === 'board' ? [[before, piece] as const] : [];
  });
}

function bearings(problem: PlacementProblem, { pieces }: Described): Finding[] {
  const rule = given(problem, 'fixing.cutEdgeDistance');
  return butts(pieces).flatMap(([before, piece]): Finding[] => {
    const { joist: id, bearing } = piece.ends[0];
    const joist = problem.joists.find((each) => each.joist.id === id)?.joist;
    if (bearing === undefined || joist === undefined) return [];
    const where = { pieces: [before.id, piece.id], joist: joist.id, row: piece.row };
    const measured = { where, value: bearing.offset, limit: bearing.tolerance, unit: 'mm', source: rule.source };
    if (bearing.outcome === 'off') return [finding('end-off-timber', 'error', measured)];
    return [
      ...(bearing.outcome === 'short' ? [finding('bearing-short', 'warning', measured)] : []),
      ...(isUnproven(joist, bearing.withinEdgeRules)
        ? [finding('end-unproven', 'warning', { where, value: bearing.withinEdgeRules, limit: SURE })]
        : []),
    ];
  });
}

function closeJoints(problem: PlacementProblem, { pieces }: Described): Finding[] {
  const { value, source } = given(problem, 'stagger.preferred');
  const joints = butts(pieces).map(([before, piece]) => ({ before, piece, at: piece.ends[0].position }));
  return joints.flatMap((here) =>
    joints
      .filter((above) => above.piece.row === here.piece.row + 1)
      .map((above) => ({ above, apart: fromGrid(Math.round(Math.abs(above.at - here.at) * 1000)) }))
      .filter(({ apart }) => apart < (value as number))
      .map(({ above, apart }) =>
        finding('stagger', 'warning', {
          where: { pieces: [here.piece.id, above.piece.id], row: here.piece.row },
          value: apart,
          limit: value as number,
          unit: 'mm',
          source,
          words: { rows: `${here.piece.row} and ${above.piece.row}` },
        }),
      ),
  );
}

function shortPieces(problem: PlacementProblem, { pieces }: Described): Finding[] {
  const { value, source } = given(problem, 'piece.preferredLength');
  return pieces
    .filter(({ length }) => length < (value as number))
    .map(({ id, length, row }) =>
      finding('piece-below-preferred', 'warning', {
        where: { piece: id, row },
        value: length,
        limit: value as number,
        unit: 'mm',
        source,
      }),
    );
}

function narrowRows(problem: PlacementProblem, { rows }: Described): Finding[] {
  const { value, source } = given(problem, 'row.preferredWidth');
  return rows
    .filter(({ width }) => width < (value as number))
    .map(({ row, width }) =>
      finding('row-below-preferred', 'warning', { where: { row }, value: width, limit: value as number, unit: 'mm', source }),
    );
}

function wideCentres(problem: PlacementProblem): Finding[] {
  const { thickness } = problem.stocks[0].board;
  const rule = lookUp(problem.set, 'support.centres', { boardThickness: thickness, orientation: 'across', noggings: false });
  if (rule === undefined || rule.value === null) return [finding('support-centres-unknown', 'warning', { words: { thickness } })];
  const limit = greatestOf(rule);
  return problem.parts.flatMap(({ joists, depth }) => {
    const middle = Math.round(depth / 2);
    let widest = 0;
    let at = 0;
    for (let i = 1; i < joists.length; i++) {
      const bay = joists[i].centre(middle) - joists[i - 1].centre(middle);
      if (bay > widest) [widest, at] = [bay, i];
    }
    const value = fromGrid(widest);
    if (value <= limit) return [];
    return [
      finding('support-centres-exceeded', 'warning', {
        where: { joist: joists[at].joist.id },
        value,
        limit: rule.value as number,
        unit: 'mm',
        source: rule.source,
        words: { thickness },
      }),
    ];
  });
}

/** At each wall that the joists run along, the greatest length of board beyond the last joist. */
function overhangs(problem: PlacementProblem, { pieces }: Described): Finding[] {
  const { value: limit, source } = given(problem, 'perimeter.overhang');
  return problem.parts.flatMap(({ joists, depth, frame, zone, toPlan }) => {
    const own = pieces.filter((piece) => piece.zone === zone);
    const across = ({ x, y }: { readonly x: number; readonly y: number }): number => (frame.direction === 'y' ? x : y);
    const middle = Math.round(depth / 2);
    const centres = joists
      .map(({ joist, centre }) => ({ joist, at: across(toPlan(centre(middle), middle)) }))
      .sort((a, b) => a.at - b.at);
    const [first, last] = [centres[0], centres[centres.length - 1]];
    const low = Math.min(...own.map(({ ends }) => ends[0].position));
    const high = Math.max(...own.map(({ ends }) => ends[1].position));
    return [
      { joist: first.joist, value: fromGrid(Math.round((first.at - low) * 1000)), at: low },
      { joist: last.joist, value: fromGrid(Math.round((high - last.at) * 1000)), at: high },
    ]
      .filter(({ value }) => value > (limit as number))
      .map(({ joist, value, at }) => {
        const { x, y } = toPlan(0, middle);
        const point = frame.direction === 'y' ? { x: at, y } : { x, y: at };
        return finding('perimeter-overhang', 'warning', {
          where: { joist: joist.id, at: point },
          value,
          limit: limit as number,
          unit: 'mm',
          source,
        });
      });
  });
}

function heavyPieces(problem: PlacementProblem, { pieces }: Described): Finding[] {
  const { value, source } = given(problem, 'piece.maximumMass');
  if (value === null) return [];
  return pieces
    .filter(({ massKg }) => massKg > value)
    .map(({ id, massKg }) =>
      finding('piece-too-heavy', 'warning', { where: { piece: id }, value: massKg, limit: value, unit: 'kg', source }),
    );
}
