import { inferJoists } from 'soffitwright';
import { calibrationFigures, coverageFigures, errorFigures, longSurveys, rightFigures, surveysFrom } from './inferenceFigures.js';
import { quantile } from './quantile.js';

const SEED = 20_261_125;
const SURVEYS = Number(process.argv[2] ?? 2000);

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
console.log(`${SURVEYS} simulated surveys, seed ${SEED}`);

const surveys = surveysFrom(SEED, SURVEYS);
for (const [name, spread] of [
  ['on one line', false],
  ['anywhere', true],
] as const) {
  const error = errorFigures(surveysFrom(SEED, SURVEYS, { genuine: true, spread }));
  console.log(
    `error over the bound, ${error.joists} joists, 6 marks or more ${name}: all ${error.all.toFixed(3)}, measured ${error.measured.toFixed(3)}, inferred ${error.inferred.toFixed(3)} (at most 1.08)`,
  );
}
for (const [name, drawn] of [
  ['on one line', surveys],
  ['anywhere', surveysFrom(SEED, SURVEYS, { spread: true })],
] as const) {
  const coverage = coverageFigures(drawn);
  console.log(
    `95 % intervals, ${coverage.joists} joists, marks ${name}: measured ${percent(coverage.measured)}, inferred ${percent(coverage.inferred)} (93 to 97 %)`,
  );
}
const wrong: string[] = [];
const right = rightFigures(surveys, (survey, index) => wrong.push(`${index}:${survey.spacing}`));
console.log(
  `first candidate right, ${right.surveys} surveys of 5 marks or more over 6 bays or more: ${percent(right.share)} (at least 97 %); with the joists known ${percent(right.ideal)}; to the very spacing ${percent(right.exactly)}, with the joists known ${percent(right.idealExactly)}`,
);
console.log(`  wrong (survey:spacing): ${wrong.join(' ')}`);
const calibration = calibrationFigures(surveys);
console.log(
  `expected calibration error: first candidate ${calibration.first.toFixed(3)} (at most 0.04), every candidate ${calibration.every.toFixed(3)}`,
);
for (const { surveys: count, stated, right: held } of calibration.bins) {
  if (count > 0) console.log(`  stated ${percent(stated)}: right ${percent(held)} of ${count}`);
}
/** Least time of three runs: what else the machine does is no figure of the library. */
function leastTime({ room, marks }: (typeof surveys)[number]): number {
  const runs = [0, 1, 2].map(() => {
    const start = performance.now();
    inferJoists({ room, marks, direction: 'y' });
    return performance.now() - start;
  });
  return Math.min(...runs);
}

for (const misses of [0, 4]) {
  const long = longSurveys(SEED, 60, misses);
  long.forEach(leastTime);
  const ms = long.map(leastTime);
  const at = (share: number): string => quantile(ms, share).toFixed(1);
  console.log(
    `30 marks on timber, ${misses} misses, ms, least of three runs: median ${at(0.5)} (at most 5), middle half ${at(0.25)} to ${at(0.75)}, greatest ${at(1)}`,
  );
}
