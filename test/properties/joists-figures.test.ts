import { describe, expect, it } from 'vitest';
import { calibrationFigures, coverageFigures, errorFigures, rightFigures, surveysFrom } from '../bench/inferenceFigures.js';

/*
 * The figures of the bench on fewer surveys, with the slack that fewer surveys need: 300 intervals of a survey's joists go together,
 * so that a share of 95 % strays by about 1 %, and a calibration error has a floor of about 0.03 at 300 surveys.
 */
const SEED = 4_000_000;
const surveys = surveysFrom(SEED, 300);

describe('300 simulated surveys', { timeout: 120_000 }, () => {
  it('joists are placed about as well as the bound allows when no mark is spurious', () => {
    expect(errorFigures(surveysFrom(SEED, 120, { genuine: true })).all).toBeLessThan(1.08);
    expect(errorFigures(surveysFrom(SEED, 120, { genuine: true, spread: true })).all).toBeLessThan(1.08);
  });

  it('95 % intervals hold about 95 times in 100, at measured and at inferred joists', () => {
    const { measured, inferred } = coverageFigures(surveys);
    expect(measured).toBeGreaterThan(0.925);
    expect(measured).toBeLessThan(0.975);
    expect(inferred).toBeGreaterThan(0.915);
    expect(inferred).toBeLessThan(0.975);
  });

  it('the first candidate is right where the marks can tell', () => {
    const { share, ideal, exactly, idealExactly } = rightFigures(surveys);
    expect(share).toBeGreaterThan(0.96);
    expect(share).toBeGreaterThan(ideal - 0.025);
    expect(exactly).toBeGreaterThan(idealExactly - 0.03);
  });

  it('stated probabilities mean what they say', () => {
    const { first, every } = calibrationFigures(surveys);
    expect(first).toBeLessThan(0.06);
    expect(every).toBeLessThan(0.04);
  });
});
