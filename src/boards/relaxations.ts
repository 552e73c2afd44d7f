import { type Finding, finding } from '../rules/finding.js';
import { lookUp, type RuleValue } from '../rules/ruleValue.js';
import { rulesOf, withRules } from '../rules/withRules.js';
import { fromGrid } from '../survey/grid.js';
import { isInputError } from '../survey/inputError.js';
import { askewOver } from './findings/askewFindings.js';
import { groupsOf, supportsOf } from './findings/laidCeiling.js';
import type { Relaxation } from './infeasibleError.js';
import { type PlacementProblem, placementProblem } from './placementProblem.js';
import type { PlacementRequest } from './placementRequest.js';
import { hasLayoutAtHand } from './searchAtHand.js';

/** What stands in the way of a room that cannot be laid, and what would be enough by itself. */
export function whyInfeasible(problem: PlacementProblem): { findings: Finding[]; relaxations: Relaxation[] } {
  const relaxations = new Map<string, Relaxation>();
  for (const { relaxation, request } of suggestionsOf(problem)) {
    const { kind, key = '' } = relaxation;
    if (!relaxations.has(kind + key) && canBeLaid(request)) relaxations.set(kind + key, relaxation);
  }
  const bought = problem.stocks.flatMap(({ board }) => (board.atHand === true ? [] : [board]));
  return {
    findings: [
      finding('no-layout', 'error', {
        words: {
          boards: bought.map(({ length, width }) => `${length} x ${width}`).join(', '),
        },
      }),
      ...groupsOf(problem.located).flatMap((group) =>
        askewOver(supportsOf(group), Math.max(...bought.map(({ width }) => width))),
      ),
    ],
    relaxations: [...relaxations.values()],
  };
}

interface Suggestion {
  readonly relaxation: Relaxation;
  readonly request: PlacementRequest;
}

function canBeLaid(request: PlacementRequest): boolean {
  try {
    return hasLayoutAtHand(placementProblem(request));
  } catch (error) {
    if (isInputError(error)) return false;
    throw error;
  }
}

/** Changes to try, those that change least first within each kind. */
function* suggestionsOf(problem: PlacementProblem): Generator<Suggestion> {
  const { request } = problem;
  const set = rulesOf(request.rules);
  const rule = (key: 'stagger.minimum' | 'piece.minimumLength' | 'piece.minimumSupports' | 'row.minimumWidth', value: number) => {
    const { unit } = lookUp(set, key) as RuleValue;
    const name = { 'stagger.minimum': 'stagger', 'piece.minimumLength': 'shortest piece' }[key as string] ?? key;
    return {
      relaxation: { kind: 'rule' as const, key, value, message: `${name} ${value}${unit === 'mm' ? '' : ` ${unit}`}` },
      request: { ...request, rules: withRules(set, { [key]: value }) },
    };
  };
  yield* moreBoards(request);
  for (const apart of distances(problem, problem.rules.stagger)) yield rule('stagger.minimum', fromGrid(apart));
  for (const length of distances(problem, problem.rules.pieceLength)) yield rule('piece.minimumLength', fromGrid(length));
  for (let supports = problem.rules.pieceSupports - 1; supports >= 0; supports--) yield rule('piece.minimumSupports', supports);
  for (const width of [150, 100, 50, 0]) if (width * 1000 < problem.rules.rowWidth) yield rule('row.minimumWidth', width);
  for (const length of [1800, 2400, 2700, 3000, 3600, 4200, 4800, 6000]) {
    const [board] = request.boards;
    if (length <= board.length) continue;
    yield {
      relaxation: { kind: 'board', key: board.id, value: length, message: `a board of ${length}` },
      request: { ...request, boards: [{ ...board, length }, ...request.boards.slice(1)] },
    };
  }
}

/** More boards of a stock that has run out. */
function* moreBoards(request: PlacementRequest): Generator<Suggestion> {
  for (const board of request.boards) {
    if (board.available === undefined || board.atHand === true) continue;
    for (let available = board.available + 1; available <= board.available + MOST_MORE; available++) {
      const boards = request.boards.map((each) => (each === board ? { ...each, available } : each));
      const relaxation = {
        kind: 'board' as const,
        key: `${board.id}.available`,
        value: available,
        message: `${available} of ${board.id}`,
      };
      yield { relaxation, request: { ...request, boards } };
    }
  }
}

const MOST_MORE = 6;

/** Distances between places at which a row could end or be divided, below a limit, greatest first. */
function distances({ parts, rules }: PlacementProblem, below: number): number[] {
  const { nominal } = rules.wallGap;
  const apart = new Set<number>([0]);
  for (const { joists, openings, length, depth } of parts) {
    const middle = Math.round(depth / 2);
    const ends = openings.flatMap(({ near, far }) => [near, far]);
    const places = [nominal, ...ends, ...joists.map((joist) => joist.centre(middle)), length - nominal];
    for (const a of places) for (const b of places) if (b > a && b - a < below) apart.add(b - a);
  }
  return [...apart].sort((a, b) => b - a).slice(0, 12);
}
