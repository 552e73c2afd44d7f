import { splitRoom } from '../generators/splitRooms.js';
import { type Comparison, comparePlacement } from './placementComparison.js';
import { placementOracle } from './placementOracle.js';

/** Seconds that the solver gets for a model. */
const LIMIT = 60;

/** Lays small rooms with rows that a breast or an opening parts, and prints where the solver's count is another. */
export async function printSplitRooms(count: number, first: number): Promise<void> {
  const ask = await placementOracle(LIMIT);
  const compared = Array.from({ length: count }, (_, index) => {
    const { rowWidths, ...room } = splitRoom(first + index);
    return { seed: first + index, room: comparePlacement(room, ask, rowWidths) };
  });
  const agree = compared.filter(({ room }) => room.fullRows?.outcome === 'equal');
  console.log(
    `\n${count} seeded rooms from number ${first}, a breast or an opening parting their rows, the rows given, beside HiGHS`,
  );
  console.log(`as many boards as the solver's: ${agree.length} of ${count}`);
  const list = (name: string, holds: (room: Comparison) => boolean): void => {
    const told = compared.filter(({ room }) => holds(room)).map(({ seed, room }) => `${seed} (${toldOf(room)})`);
    console.log(`${name}: ${told.length}${told.length === 0 ? '' : ` — rooms ${told.join(', ')}`}`);
  };
  const outcome = (wanted: string) => (room: Comparison) => room.fullRows?.outcome === wanted;
  list('  no layout, and none there', (room) => room.ours === undefined && outcome('equal')(room));
  list('fewer boards are enough', outcome('better'));
  list('fewer boards than the optimum', outcome('impossible'));
  list('not settled by the solver', (room) => outcome('open')(room) || outcome('between')(room));
  list('bound above the optimum', ({ bound, fullRows }) => fullRows?.finished === true && (bound ?? 0) > fullRows.optimum);
  list('layouts that do not pass the check', ({ errors }) => errors.length > 0);
}

const toldOf = ({ ours, bound, fullRows }: Comparison): string =>
  `ours ${ours ?? 'none'}${bound === undefined || bound === ours ? '' : `, bound ${bound}`}, optimum ${fullRows?.optimum}`;
