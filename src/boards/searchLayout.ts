import { type BestLayout, bestAlone, bestLayout, type Outcome } from './bestLayout.js';
import type { Certificate } from './certificate.js';
import { certificateOf } from './certificateOf.js';
import { compareInOrder } from './compareInOrder.js';
import { areAllSearched } from './holdsOnAnyRows.js';
import type { Laid } from './laid.js';
import { laidFrom } from './laidFrom.js';
import { inOrder } from './measures.js';
import { namesFor, type ObjectiveName } from './objectives.js';
import type { PlacementProblem } from './placementProblem.js';
import { rowSets } from './rowSets.js';
import { shareReason } from './shareReason.js';
import { staggering } from './staggering.js';

/** What a search found. */
export interface Found {
  /** Nothing when no way to lay the room was found. */
  readonly laid: Laid | undefined;
  /** No layout has fewer boards; Infinity when there is none at all. */
  readonly bound: number;
  /** Whether no layout of as many boards has fewer butt joints. */
  readonly jointsProven: boolean;
  /** What proves the bound. */
  readonly certificate?: Certificate;
  /** The proof in words, where it can be told. */
  readonly why?: string;
}

/** Looks for the best layout over all ways to divide the room into rows. */
export function searchLayout(problem: PlacementProblem): Found {
  const { best, others, bound, jointsProven, proofs } = surest(problem, someLayout(problem));
  const found = { bound, jointsProven, certificate: certificateOf(proofs) };
  if (best === undefined) return { ...found, laid: undefined };
  let laid = laidFrom(problem, best.space, best.laid);
  for (const other of others) {
    const next = laidFrom(problem, other.space, other.laid);
    if (compareInOrder(inOrder(next.measures, problem.prefer), inOrder(laid.measures, problem.prefer)) < 0) laid = next;
  }
  const why = bound === laid.boards.length ? shareReason(best, proofs, bound) : undefined;
  return { ...found, laid, ...(why !== undefined && { why }) };
}

/** The best layout that is found; where steps run out before there is any, one that is best in butt joints first. */
function someLayout(problem: PlacementProblem): Outcome {
  const names = namesFor(problem);
  const found = bestLayout(problem, names);
  if (found.best !== undefined || found.bound === Infinity || names[0] === 'joints') return found;
  const fewJoints = bestLayout(problem, ['joints', ...names.filter((name) => name !== 'joints')]);
  return { ...fewJoints, jointsProven: false };
}

/** Where certainty is preferred and one more board avoids every butt joint on an unproven joist, that layout instead. */
function surest(problem: PlacementProblem, fewest: Outcome): Outcome {
  const { best } = fewest;
  if (problem.prefer !== 'certainty' || best === undefined) return fewest;
  const names = best.space.objectives.map(({ name }) => name);
  const measured = ({ values }: BestLayout, name: ObjectiveName): number => values[names.indexOf(name)];
  if (measured(best, 'unproven ends') === 0) return fewest;
  const order: ObjectiveName[] = ['unproven ends', ...names.filter((name) => name !== 'unproven ends')];
  const sure = bestAlone(problem, order);
  if (sure === undefined || sure.values[0] > 0 || sure.values[order.indexOf('boards')] > measured(best, 'boards') + 1)
    return fewest;
  return { ...fewest, best: sure, others: [], jointsProven: false };
}

/** Whether some layout keeps the rules, as far as a short search can tell. */
export function hasLayout(problem: PlacementProblem): boolean {
  const endless = problem.stocks.every(({ board }) => board.available === undefined);
  const may = rowSets(problem).map(staggering());
  if (endless && may.includes(true)) return true;
  if (areAllSearched(problem) && may.every((each) => each === false)) return false;
  return bestAlone({ ...problem, request: { ...problem.request, budget: STEPS_OF_ANY } }, ['boards']) !== undefined;
}

const STEPS_OF_ANY = 20_000;
