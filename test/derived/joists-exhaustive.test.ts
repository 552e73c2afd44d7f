import { inferJoists, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { usualAssumptions } from '../../src/joists/assumptions.js';
import { type Case, exhaustivePosterior } from '../generators/exhaustivePosterior.js';

/*
 * Derived: small cases whose exact posterior is found by exhaustion, held against the library. What differs is the library's
 * search (placings far behind are dropped), the sampling of the misses, and the grid's step of half a millimetre.
 */
const { spurious, repeated, missing, falseMiss, falseHit, wander } = usualAssumptions;
const common = { spurious, repeated, missing, falseMiss, falseHit, wander, width: 47 };

const mark = (at: number, sd = 4): Case['marks'][number] => ({ at, sd });
const CASES: readonly (readonly [name: string, problem: Case])[] = [
  [
    'three marks',
    { ...common, length: 4000, spacings: [400, 450, 600], straying: 3, misses: [], marks: [mark(210), mark(612), mark(1805)] },
  ],
  [
    'every other joist of 400',
    {
      ...common,
      length: 3600,
      spacings: [400, 450, 600],
      straying: 3,
      misses: [],
      marks: [mark(200), mark(1000, 6), mark(1403)],
    },
  ],
  [
    'alike at multiples of 1200',
    {
      ...common,
      length: 3600,
      spacings: [600, 400, 300],
      straying: 4,
      misses: [],
      marks: [mark(300), mark(1502), mark(2695, 8)],
    },
  ],
  [
    'a spurious mark among four',
    {
      ...common,
      length: 3600,
      spacings: [400, 600],
      straying: 3,
      misses: [],
      marks: [mark(201), mark(603), mark(1180), mark(1396)],
    },
  ],
  [
    'one joist marked twice',
    {
      ...common,
      length: 3000,
      spacings: [400, 406.4],
      straying: 5,
      misses: [],
      marks: [mark(203, 6), mark(196, 10), mark(1402, 6)],
    },
  ],
  [
    'a miss where 300 would have a joist',
    { ...common, length: 3000, spacings: [600, 300], straying: 4, misses: [605], marks: [mark(301), mark(905), mark(2098)] },
  ],
  [
    'a miss beside an edge',
    { ...common, length: 2600, spacings: [400], straying: 4, misses: [980], marks: [mark(203, 10), mark(603, 10)] },
  ],
  [
    'two misses, two spacings',
    { ...common, length: 3400, spacings: [450, 400], straying: 4, misses: [1080, 1590], marks: [mark(205, 6), mark(1999, 6)] },
  ],
];

describe('the posterior is the exact one', () => {
  it.each(CASES)('%s', (_, problem) => {
    const exact = exhaustivePosterior(problem);
    const inference = inferJoists({
      room: { outline: rectangle(problem.length, 3000) },
      marks: [
        ...problem.marks.map(({ at, sd }) => ({ x: at, y: 1500, sd })),
        ...problem.misses.map((x) => ({ x, y: 1500, found: false })),
      ],
      direction: 'y',
      width: problem.width,
      spacings: problem.spacings,
      assume: {
        otherSpacing: 0,
        irregular: 0,
        spacingSd: 0,
        straying: [problem.straying],
        drift: [0],
        doubled: 1e-9,
        givenWidthSd: 0,
      },
    });
    problem.spacings.forEach((spacing, i) => {
      const stated = inference.candidates.find((candidate) => candidate.spacing === spacing)?.probability ?? 0;
      expect(Math.abs(stated - exact.spacings[i]), `${spacing}: ${stated} for ${exact.spacings[i]}`).toBeLessThan(0.02);
    });
    exact.spurious.forEach((probability, i) => {
      if (Math.abs(probability - 0.5) > 0.1) expect(inference.outliers.includes(i), `mark ${i}`).toBe(probability > 0.5);
    });
    // Where another spacing has its joists is not asked of the exact posterior.
    if (exact.spacings[0] < 0.99) return;
    const places = inference.joists.map(({ start, end }) => (start.x + end.x) / 2);
    exact.centres(places).forEach(({ mean, sd }, i) => {
      expect(Math.abs(places[i] - mean), `place of joist ${i}`).toBeLessThan(0.15 * sd);
      expect(Math.abs(inference.joists[i].sd - sd), `sd of joist ${i}: ${inference.joists[i].sd} for ${sd}`).toBeLessThan(
        0.06 * sd + 0.1,
      );
    });
  });
});
