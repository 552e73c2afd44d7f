import { roomsToLay } from '../generators/rooms.js';
import { type Comparison, comparePlacement } from './placementComparison.js';
import { printGrowth } from './placementGrowth.js';
import { placementOracle } from './placementOracle.js';
import { quantile } from './quantile.js';
import { timesLine } from './timesLine.js';

const ROOMS = Number(process.argv[2] ?? 500);
const FIRST = Number(process.argv[3] ?? 0);
/** Seconds that the solver gets for a model. */
const LIMIT = Number(process.argv[4] ?? 60);
const WARM_UP = 20;

printGrowth();

console.log(`\n${ROOMS} seeded rooms from number ${FIRST}, beside HiGHS with ${LIMIT} s a model`);
const [quick, ask] = [await placementOracle(1), await placementOracle(LIMIT)];
for (const room of roomsToLay(WARM_UP, 1_000_000)) comparePlacement(room, quick);

const compared: { readonly seed: number; readonly room: Comparison }[] = [];
for (const [index, room] of roomsToLay(ROOMS, FIRST).entries()) {
  compared.push({ seed: FIRST + index, room: comparePlacement(room, ask) });
  if (process.stderr.isTTY) process.stderr.write(`\r${index + 1}`);
}

const list = (name: string, holds: (room: Comparison) => boolean): void => {
  const found = compared.filter(({ room }) => holds(room)).map(({ seed, room }) => `${seed} (${told(room)})`);
  console.log(`${name}: ${found.length}${found.length === 0 ? '' : ` — rooms ${found.join(', ')}`}`);
};
const told = ({ ours, bound, ownRows, fullRows }: Comparison): string =>
  `ours ${ours ?? 'none'}${bound === undefined || bound === ours ? '' : `, bound ${bound}`}, own rows ${ownRows?.optimum ?? '-'}, full rows ${fullRows?.optimum ?? '-'}`;
const either = (room: Comparison, outcome: string): boolean =>
  room.ownRows?.outcome === outcome || room.fullRows?.outcome === outcome;

const laid = compared.filter(({ room }) => room.ours !== undefined);
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
console.log(`laid: ${laid.length}, no layout: ${compared.length - laid.length}`);
const equal = laid.filter(({ room }) => room.ownRows?.outcome === 'equal' && !either(room, 'better')).length;
console.log(`equal to the optimum: ${equal} of ${laid.length}`);
list('beaten by the rows of the answer', ({ ownRows }) => ownRows?.outcome === 'better');
list('beaten by full rows', ({ fullRows }) => fullRows?.outcome === 'better');
list('fewer boards than the optimum of their own rows', ({ ownRows }) => ownRows?.outcome === 'impossible');
list('bound above an optimum', ({ bound, fullRows, ownRows }) =>
  [fullRows, ownRows].some((each) => each?.finished === true && each.outcome !== 'between' && (bound ?? 0) > each.optimum),
);
list('layouts that do not pass the check', ({ errors }) => errors.length > 0);
list('two ripped widths, between what is surely needed and surely enough', (room) => either(room, 'between'));
list(`model not finished in ${LIMIT} s`, ({ ownRows, fullRows }) => [ownRows, fullRows].some((each) => each?.finished === false));
list('  and not settled by a bound either', (room) => either(room, 'open'));
const proven = laid.filter(({ room }) => room.proven).length;
console.log(`proven: ${proven} of ${laid.length}, ${percent(proven / laid.length)} (at least 99.5 %)`);
list('not proven', ({ ours, proven }) => ours !== undefined && !proven);

const both = laid.filter(({ room }) => room.ownRows?.time !== undefined);
const ours = both.map(({ room }) => room.time);
const solver = both.map(({ room }) => room.ownRows?.time as number);
console.log(timesLine('placeBoards', ours));
console.log(timesLine('HiGHS, rows given', solver));
const none = compared.filter(({ room }) => room.ours === undefined).map(({ room }) => room.time);
if (none.length > 0) console.log(timesLine('placeBoards, no layout', none));
const ratio = (share: number): string => (quantile(solver, share) / quantile(ours, share)).toFixed(0);
console.log(`HiGHS takes ${ratio(0.5)} times as long at the median, ${ratio(0.95)} times at 95 % (at least 20)`);
