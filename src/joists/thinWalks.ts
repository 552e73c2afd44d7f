import { addCopy, FACTS, OF_FACTS, OF_STATE, roomFor, STATE, type Walks } from './walks.js';

/** Walks kept at each step: in all, and of one family. */
const KEPT = 64;
const KEPT_OF_FAMILY = 14;
/** A walk this many times (as a logarithm) less likely than the best is dropped. */
const BEHIND = 12;
/** Walks that stand alike, and how far (as a logarithm) the others may be behind the best of them. */
const ALIKE = 3;
const ALIKE_BEHIND = 4;

/** The walks worth going on with, the best first; ties in the order in which they were made. */
export function thinned(walks: Walks): Walks {
  const score = (walk: number): number => walks.state[walk * STATE + OF_STATE.SCORE];
  let best = -Infinity;
  for (let walk = 0; walk < walks.count; walk++) best = Math.max(best, score(walk));
  const near: number[] = [];
  for (let walk = 0; walk < walks.count; walk++) if (score(walk) >= best - BEHIND) near.push(walk);
  near.sort((one, other) => score(other) - score(one) || one - other);
  const kept = roomFor(KEPT);
  const ofFamily = new Map<number, number>();
  const alike = new Map<number, { best: number; count: number }>();
  for (const walk of near) {
    const family = walks.facts[walk * FACTS + OF_FACTS.FAMILY];
    const count = ofFamily.get(family) ?? 0;
    if (count >= KEPT_OF_FAMILY || !isNew(alike, stand(walks, walk), score(walk))) continue;
    ofFamily.set(family, count + 1);
    if (addCopy(kept, walks, walk) < 0 || kept.count === KEPT) break;
  }
  return kept;
}

/**
 * Where a walk stands: its family, where it began, its last reading and joist. Walks that stand alike differ only in what they
 * made of readings in between, and what comes after treats them alike.
 */
function stand({ facts }: Walks, walk: number): number {
  const at = walk * FACTS;
  const { FAMILY, FIRST, LAST, JOIST, DOUBLES } = OF_FACTS;
  const places = (facts[at + FIRST] + 1) * 1024 + facts[at + LAST] + 1;
  return ((places * 2048 + facts[at + JOIST] + 1024) * 64 + facts[at + FAMILY]) * 2 + facts[at + DOUBLES];
}

function isNew(alike: Map<number, { best: number; count: number }>, key: number, score: number): boolean {
  const known = alike.get(key);
  if (known === undefined) {
    alike.set(key, { best: score, count: 1 });
    return true;
  }
  known.count++;
  return known.count <= ALIKE && score >= known.best - ALIKE_BEHIND;
}
