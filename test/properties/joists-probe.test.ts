import { fc, test } from '@fast-check/vitest';
import { inferJoists, type Mark, nextProbe, type Point, type Probe, rectangle } from 'soffitwright';
import { describe, expect } from 'vitest';
import { surveyOf } from '../generators/surveys.js';

const runs = { numRuns: 12, seed: 3 };
const seeds = fc.integer({ min: 0, max: 1_000_000 });

/** A survey, with a hatch somewhere in the room. */
function surveyed(seed: number): {
  outline: Point[];
  marks: readonly Mark[];
  width: number;
  openings: { kind: 'hatch'; outline: Point[] }[];
} {
  const { room, marks, width } = surveyOf(seed, { least: 2, greatest: 5 });
  const far = room.outline[2];
  const corner = { x: Math.round(far.x * 0.3), y: Math.round(far.y / 2) - 200 };
  const outline = rectangle(500, 400).map(({ x, y }) => ({ x: x + corner.x, y: y + corner.y }));
  return { outline: [...room.outline], marks, width, openings: [{ kind: 'hatch', outline }] };
}

const probeOf = (
  { outline, marks, width, openings }: ReturnType<typeof surveyed>,
  direction: 'x' | 'y' | undefined,
  move: (point: Point) => Point,
  ends: boolean,
): Probe | null => {
  const room = {
    outline: outline.map(move),
    openings: openings.map((each) => ({ ...each, outline: each.outline.map(move) })),
  };
  const moved = marks.map((mark) => ({ ...mark, ...move(mark) }));
  const inference = inferJoists({ room, marks: moved, width, ...(direction && { direction }) });
  const joists = inference.joists.filter((_, i) => i % 3 === 1).map(({ id }) => id);
  return nextProbe(inference, ends ? { endJoints: joists } : {});
};

const stay = ({ x, y }: Point): Point => ({ x, y });

describe('wherever the next probe is, it', () => {
  test.prop([seeds, fc.boolean()], runs)('is in the room, clear of its walls and openings', (seed, ends) => {
    const survey = surveyed(seed);
    const probe = probeOf(survey, 'y', stay, ends);
    if (probe === null) return;
    const far = survey.outline[2];
    expect(Math.min(probe.x, probe.y, far.x - probe.x, far.y - probe.y)).toBeGreaterThanOrEqual(20);
    const [hatch] = survey.openings;
    const [low, , high] = hatch.outline;
    const outside = Math.max(low.x - probe.x, probe.x - high.x, low.y - probe.y, probe.y - high.y);
    expect(outside).toBeGreaterThanOrEqual(20);
    expect(probe.x % 10).toBe(0);
    expect(probe.gain).toBeGreaterThan(0);
    expect(probe.certainty.after).toBeGreaterThanOrEqual(probe.certainty.now);
    if (probe.find === 'timber') expect(probe.gain).toBeLessThanOrEqual(1);
  });

  test.prop([seeds, fc.boolean()], runs)('turns with the room', (seed, ends) => {
    const survey = surveyed(seed);
    const upright = probeOf(survey, 'y', stay, ends);
    const level = probeOf(survey, 'x', ({ x, y }) => ({ x: y, y: x }), ends);
    expect(level && { x: level.x, y: level.y, gain: level.gain, reason: level.reason }).toEqual(
      upright && { x: upright.y, y: upright.x, gain: upright.gain, reason: upright.reason },
    );
  });

  test.prop([seeds, fc.boolean()], runs)('moves with the room', (seed, ends) => {
    const survey = surveyed(seed);
    const here = probeOf(survey, 'y', stay, ends);
    const there = probeOf(survey, 'y', ({ x, y }) => ({ x: x + 4096, y: y - 2048 }), ends);
    expect(there && { x: there.x, y: there.y }).toEqual(here && { x: here.x + 4096, y: here.y - 2048 });
  });

  test.prop([seeds], runs)('is found without a direction too', (seed) => {
    const survey = surveyed(seed);
    const probe = probeOf(survey, undefined, stay, false);
    if (probe !== null) expect(Number.isFinite(probe.gain)).toBe(true);
  });
});
