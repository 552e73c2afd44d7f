import type { LaidRows } from './laidRows.js';
import { leastByPairs } from './leastByPairs.js';
import type { Steps } from './packKinds.js';
import { pairedRows } from './pairedRows.js';
import { provenBoards } from './provenBoards.js';
import { type First, type QuickLook, quickBound, quickLayouts } from './quickLook.js';
import { relax } from './relax.js';
import type { Cap, Relaxation } from './relaxation.js';
import type { RowSpace } from './rowSpace.js';
import { searchRows } from './searchRows.js';
import { solve } from './solveRelaxation.js';
import type { UsualPrices } from './usualPrices.js';
import { PARTS } from './wholePrices.js';

/** One division into rows while the objectives are gone through, and what is known of it. */
export interface Candidate {
  readonly space: RowSpace;
  readonly look: QuickLook;
  /** Under the objective at hand: no layout within the caps is below. */
  least: number;
  /** What the programme has been asked for at most: it stops where it says that this will not do. */
  asked: number;
  root: Relaxation | undefined;
  /** Whether the programme has been solved for its best prices. */
  sharp: boolean;
  /** The same rows two by two, once they have been looked at so. */
  pairs: RowSpace | undefined;
  inPairs: boolean;
  /** Searches that found nothing: for no more than so much, in so many steps. */
  tried: { readonly most: number; readonly round: number }[];
  /** What asks for most boards, and how many; nothing where a search found that fewer will not do. */
  proof: { readonly prices: UsualPrices | undefined; readonly boards: number };
}

/** What is to come to little, and what the objectives before it may come to. */
export interface Aim {
  readonly objective: number;
  readonly caps: readonly Cap[];
}

/** A layout on one division into rows, and what it comes to by each objective. */
export interface Layout {
  readonly space: RowSpace;
  readonly laid: LaidRows;
  readonly values: readonly number[];
}

/** Steps for a first search: more than that are led by sharp prices. */
export const STEPS_AT_FIRST = 3_000;
const WORK = 30_000;

export function candidateOf(space: RowSpace): Candidate {
  const look = quickBound(space);
  const proof = { prices: look.prices[0], boards: look.boards };
  return {
    space,
    look,
    proof,
    least: 0,
    asked: -Infinity,
    root: undefined,
    sharp: false,
    pairs: undefined,
    inPairs: false,
    tried: [],
  };
}

/** Begins with another objective. */
export function turnTo(candidate: Candidate, objective: number): void {
  const { space, look } = candidate;
  candidate.least = space.least[objective] + Math.min(...space.objectives[objective].boards) * look.boards;
  candidate.asked = -Infinity;
  candidate.sharp = false;
  candidate.inPairs = false;
  candidate.tried = [];
}

/** The layouts within the caps, on no more than so many boards, that prices lead to at once. */
function* layoutsWithin(
  { space, look }: Pick<Candidate, 'space' | 'look'>,
  { caps }: Aim,
  boards: number,
  first?: First,
): Generator<Layout> {
  for (const laid of quickLayouts(space, look, boards, caps, first)) {
    const values = valuesOf(space, laid);
    if (caps.every(({ objective, most }) => values[objective] <= most)) yield { space, laid, values };
  }
}

/** The best of these that comes to no more than `most`. */
export function quickBetter(candidate: Pick<Candidate, 'space' | 'look' | 'least'>, aim: Aim, most: number): Layout | undefined {
  const { objective } = aim;
  const boards = boardsIn(candidate);
  let best: Layout | undefined;
  const atMost = (): number => Math.min(most, (best?.values[objective] ?? Infinity) - 1);
  const found =
    objective === boards
      ? layoutsWithin(candidate, aim, most)
      : layoutsWithin(candidate, aim, mostOf(aim, boards), { objective, most: atMost });
  for (const layout of found) {
    if (layout.values[objective] <= atMost()) best = layout;
    if (best !== undefined && best.values[objective] <= candidate.least) break;
  }
  return best;
}

/** The best of these by the objective, or else the first by the prices alone. */
export function firstWithin(candidate: Candidate, aim: Aim): Layout | undefined {
  const quick = quickBetter(candidate, aim, Infinity);
  if (quick !== undefined) return quick;
  for (const layout of layoutsWithin(candidate, aim, mostOf(aim, boardsIn(candidate)))) return layout;
  return undefined;
}

const boardsIn = ({ space }: Pick<Candidate, 'space'>): number => space.objectives.findIndex(({ name }) => name === 'boards');

const mostOf = ({ caps }: Aim, objective: number): number => caps.find((cap) => cap.objective === objective)?.most ?? Infinity;

/** A layout that comes to no more than `most`, if one is found in so many steps. */
export function layoutWithin(
  candidate: Candidate,
  aim: Aim,
  most: number,
  { round, steps }: { readonly round: number; readonly steps: Steps },
): Layout | undefined {
  const { space } = candidate;
  if (candidate.least > most) return undefined;
  if (candidate.tried.some((before) => before.most >= most && before.round >= round)) return undefined;
  if (candidate.asked < most) {
    const priced = boundBelow(candidate, aim, most);
    steps.left -= candidate.root?.work ?? 0;
    if (candidate.least > most) return undefined;
    const quick = quickBetter({ ...candidate, look: mixedWith(candidate, priced) }, aim, most);
    if (quick !== undefined) return quick;
  }
  const allowed = { left: Math.min(round, steps.left) };
  const before = allowed.left;
  if (round > STEPS_AT_FIRST) sharpened(candidate, aim);
  const answer = searchRows(space, { ...aim, most }, candidate.root as Relaxation, allowed, candidate.look.prices);
  steps.left -= before - allowed.left;
  if (answer === 'none') candidate.least = most + 1;
  if (answer === 'unknown') {
    // Where steps were left over, more of them would find no more.
    candidate.tried.push({ most, round: allowed.left > 0 && candidate.sharp ? Infinity : round });
    // For what comes after the first objective it takes more time than it saves.
    if (!candidate.inPairs && aim.caps.length === 0) boundInPairs(candidate, aim, steps);
  }
  return typeof answer === 'string' ? undefined : { space, laid: answer, values: valuesOf(space, answer) };
}

/** The prices of the programme, alone and mixed with those known beforehand. */
function mixedWith({ look }: Candidate, priced: UsualPrices): QuickLook {
  const whole = Math.max(...priced.boards, 1);
  const mixed = look.prices.map((each): UsualPrices => {
    const most = Math.max(...each.boards);
    return { kinds: each.kinds.map((value, kind) => value / most + priced.kinds[kind] / whole), boards: [2] };
  });
  return { ...look, prices: [priced, ...mixed] };
}

/** What the programme comes to with the best prices there are: they lead a long search, and not only those that were enough for a whole number. */
export function sharpened(candidate: Candidate, aim: Aim): number {
  if (!candidate.sharp) {
    candidate.sharp = true;
    candidate.root = relax(candidate.space, aim.objective, aim.caps);
    priceWith(candidate, candidate.root, aim, Infinity, 'best');
  }
  return candidate.root?.best?.bound ?? 0;
}

/** The best that the programme can say, or that more than `enough` is needed. */
export function boundBelow(candidate: Candidate, aim: Aim, enough: number): UsualPrices {
  candidate.root = relax(candidate.space, aim.objective, aim.caps, candidate.root);
  return priceWith(candidate, candidate.root, aim, enough + 1e-3, 'whole');
}

function priceWith(
  candidate: Candidate,
  root: Relaxation,
  { objective, caps }: Aim,
  enough: number,
  aim: 'whole' | 'best',
): UsualPrices {
  const { space } = candidate;
  const { bound, arcs, least, kinds, boards } = solve(root, WORK, enough, aim);
  candidate.asked = (root.best?.bound ?? 0) > enough ? enough : Infinity;
  // The same prices, with neighbouring rows kept apart two by two.
  const apart = leastByPairs(space, [...space.sorts.keys()], (sort) => arcs[sort.group]);
  const alone = space.groups.reduce((sum, { count }, at) => sum + count * least[at], 0);
  const proven = apart === undefined ? bound : bound - alone + Math.max(alone, apart);
  candidate.least = Math.max(candidate.least, Math.ceil(proven / PARTS));
  // More boards than pieces: there are not enough of some stock.
  if (space.objectives[objective].name === 'boards' && candidate.least > root.mostBoards) candidate.least = Infinity;
  keepProof(candidate, { objective, caps }, { kinds, boards });
  return { kinds, boards };
}

/** The best that the programme can say of rows that are divided two by two: more, where the stagger leaves little choice. */
export function boundInPairs(candidate: Candidate, { objective, caps }: Aim, steps: Steps): void {
  candidate.inPairs = true;
  candidate.pairs ??= pairedRows(candidate.space);
  if (candidate.pairs === undefined) return;
  const root = relax(candidate.pairs, objective, caps);
  const { bound, kinds, boards } = solve(root, WORK, Infinity, 'best');
  steps.left -= root.work;
  candidate.least = Math.max(candidate.least, Math.ceil(bound / PARTS));
  keepProof(candidate, { objective, caps }, { kinds, boards });
}

/** Keeps prices that ask for more boards than those before, whatever the other objectives. */
function keepProof(candidate: Candidate, { objective, caps }: Aim, prices: UsualPrices): void {
  const { space, proof } = candidate;
  if (space.objectives[objective].name !== 'boards' || caps.length > 0) return;
  const asked = provenBoards(space, prices);
  if (asked > proof.boards) candidate.proof = { prices, boards: asked };
}

/** What a layout comes to by each objective. */
export function valuesOf({ objectives }: RowSpace, { paths, packed }: LaidRows): number[] {
  return objectives.map(({ fixed, boards }, at) => {
    const ofBoards = packed.reduce((sum, { stock }) => sum + boards[stock], 0);
    return paths.reduce((sum, path) => sum + path.costs[at], fixed + ofBoards);
  });
}
