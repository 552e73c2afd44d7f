import { checkLayout, tryPlaceBoards } from 'soffitwright';
import { steppedRoom } from '../generators/steppedRooms.js';
import { printSplitRows } from './splitRows.js';
import { timesLine } from './timesLine.js';

const ROOMS = Number(process.argv[2] ?? 300);
const FIRST = Number(process.argv[3] ?? 0);
/** Smaller rooms that are laid beside the solver. */
const BESIDE = Number(process.argv[4] ?? 40);
const WARM_UP = 10;

/** What came of a room. */
interface Laid {
  readonly seed: number;
  readonly shape: string;
  /** ms of the placement. */
  readonly time: number;
  /** Boards, and what is proven of them; undefined where there is no layout. */
  readonly layout?: { readonly boards: number; readonly bound: number; readonly proven: boolean; readonly piecesProven: boolean };
  /** Errors that the check of the layout finds. */
  readonly errors: readonly string[];
}

function lay(seed: number): Laid {
  const { shape, ...room } = steppedRoom(seed);
  const start = performance.now();
  const attempt = tryPlaceBoards(room);
  const time = performance.now() - start;
  if (!attempt.ok && attempt.reason === 'input') throw new Error(attempt.problems.map(({ message }) => message).join('\n'));
  if (!attempt.ok) return { seed, shape, time, errors: [] };
  const { boardsBought: boards, bound, proven, piecesProven } = attempt.value;
  const errors = checkLayout({ ...room, layout: attempt.value }).filter(({ severity }) => severity === 'error');
  return {
    seed,
    shape,
    time,
    layout: { boards, bound, proven, piecesProven },
    errors: errors.map(({ message }) => message),
  };
}

for (let seed = 0; seed < WARM_UP; seed++) tryPlaceBoards(steppedRoom(1_000_000 + seed));
const rooms = Array.from({ length: ROOMS }, (_, index) => {
  const room = lay(FIRST + index);
  if (process.stderr.isTTY) process.stderr.write(`\r${index + 1}`);
  return room;
});

const laid = rooms.flatMap(({ layout, ...room }) => (layout === undefined ? [] : [{ ...room, ...layout }]));
const none = rooms.filter(({ layout }) => layout === undefined);
const part = (of: readonly unknown[], among: readonly unknown[] = laid): string =>
  `${of.length} of ${among.length}, ${((100 * of.length) / among.length).toFixed(1)} %`;
const list = (name: string, told: readonly string[]): void =>
  console.log(`${name}: ${told.length}${told.length === 0 ? '' : ` — rooms ${told.join(', ')}`}`);

console.log(`${ROOMS} seeded rooms from number ${FIRST}: L, T and chimney breast`);
console.log(
  timesLine(
    'placeBoards',
    rooms.map(({ time }) => time),
  ),
);
console.log(`laid: ${part(laid, rooms)}`);
list(
  'no layout meets the rules',
  none.map(({ seed }) => String(seed)),
);
console.log(`proven: ${part(laid.filter(({ proven }) => proven))} (at least 90 %)`);
console.log(`pieces proven: ${part(laid.filter(({ piecesProven }) => piecesProven))}`);
console.log(`checked, without an error: ${part(laid.filter(({ errors }) => errors.length === 0))}`);
for (const shape of new Set(rooms.map((room) => room.shape))) {
  const its = laid.filter((room) => room.shape === shape);
  console.log(
    `  ${shape}: proven ${part(
      its.filter(({ proven }) => proven),
      its,
    )}`,
  );
  console.log(
    `    ${timesLine(
      'placeBoards',
      its.map(({ time }) => time),
    )}`,
  );
}
const wrong = laid.filter(({ errors }) => errors.length > 0);
list(
  'layouts that do not pass the check',
  wrong.map(({ seed, errors }) => `${seed} (${errors.join('; ')})`),
);
const unproven = laid.filter(({ proven }) => !proven);
list(
  'not proven',
  unproven.map(({ seed, boards, bound }) => `${seed} (${boards}, bound ${bound})`),
);

console.log('');
await printSplitRows(BESIDE, FIRST);
