import { probingGame, SPACINGS } from '../generators/probingGames.js';
import { type Played, play, playIdeal, type Rule } from './probingRun.js';
import { type Proved, prove } from './proving.js';
import { quantile } from './quantile.js';

const SEED = 20_261_125;
const GAMES = Number(process.argv[2] ?? 500);
const FEWER = Math.ceil(GAMES / 5);

const games = Array.from({ length: GAMES }, (_, i) => probingGame(SEED + i));

function report(name: string, played: readonly (Omit<Played, 'times'> & { times?: readonly number[] })[]): void {
  const probes = played.map((each) => each.probes);
  const mean = probes.reduce((sum, each) => sum + each, 0) / played.length;
  const right = played.filter((each) => each.right).length / played.length;
  const times = played.flatMap((each) => each.times ?? []);
  const ms = times.length === 0 ? '' : `, ${quantile(times, 0.5).toFixed(1)} ms a hole (median)`;
  console.log(
    `${name}: ${played.length} games, ${mean.toFixed(2)} probes (nine in ten at most ${quantile(probes, 0.9)}), right ${(100 * right).toFixed(1)} %${ms}`,
  );
}

const all = (rule: Rule, certainty: number, spacings?: readonly number[], of = games): Played[] =>
  of.map((game) => play(game, rule, certainty, spacings));

console.log(`probing game: 5 m, centres of ${SPACINGS.join(', ')}, from two marks; seed ${SEED}`);
report('next probe, 90 % (at most 4.8 probes, right 97 %)', all('next', 0.9));
report('next probe, 95 %', all('next', 0.95));
report('next probe, 90 %, told the three spacings', all('next', 0.9, SPACINGS));
report('exact posterior, told everything, one step ahead', games.slice(0, FEWER).map(playIdeal));
report('evenly spaced, 90 %', all('even', 0.9, undefined, games.slice(0, FEWER)));
report('nearest joist, 90 %', all('nearest', 0.9, undefined, games.slice(0, FEWER)));

const proved = Array.from({ length: Math.ceil(GAMES * 0.6) }, (_, i) => prove(SEED + i)).filter((each) => each !== undefined);
const total = (of: (each: Proved) => number): number => proved.reduce((sum, each) => sum + of(each), 0);
console.log(
  `six butt joints proved in ${proved.length} surveys: ${(total((each) => each.foreseen) / proved.length).toFixed(2)} probes foreseen, enough as foreseen in ${((100 * total((each) => (each.asForeseen ? 1 : 0))) / proved.length).toFixed(0)} %, ${(total((each) => each.done) / proved.length).toFixed(2)} in all`,
);
console.log(
  `of ${total((each) => each.sure)} butt joints then called sure, ${total((each) => each.held)} are within the rules in truth (95 %)`,
);
