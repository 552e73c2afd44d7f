import { type BoardLayout, checkLayout, tryPlaceBoards } from 'soffitwright';
import { steppedRoom } from '../generators/steppedRooms.js';
import { timesLine } from './timesLine.js';

const WARM_UP = 10;

/** What came of a room. */
interface Laid {
  readonly seed: number;
  readonly shape: string;
  /** ms of the placement. */
  readonly time: number;
  /** Undefined where it says that no layout meets the rules. */
  readonly layout: BoardLayout | undefined;
  /** Errors that the check of the layout finds. */
  readonly errors: readonly string[];
  /** Nothing was found with boards first, but there is a layout: it was found with butt joints first. */
  readonly missed: boolean;
}

function lay(seed: number): Laid {
  const { shape, ...room } = steppedRoom(seed);
  const start = performance.now();
  const attempt = tryPlaceBoards(room);
  const time = performance.now() - start;
  if (!attempt.ok && attempt.reason === 'input') throw new Error(attempt.problems.map(({ message }) => message).join('\n'));
  const layout = attempt.ok ? attempt.value : undefined;
  const findings = layout === undefined ? [] : checkLayout({ ...room, layout });
  const errors = findings.filter(({ severity }) => severity === 'error').map(({ message }) => message);
  return { seed, shape, time, layout, errors, missed: !attempt.ok && tryPlaceBoards({ ...room, prefer: 'joints' }).ok };
}

/** Lays rooms that are an L, a T or have a chimney breast, and prints the times, what is proven and what passes the check. */
export function printSteppedRooms(count: number, first: number): void {
  for (let seed = 0; seed < WARM_UP; seed++) lay(1_000_000 + seed);
  const rooms = Array.from({ length: count }, (_, index) => {
    const room = lay(first + index);
    if (process.stderr.isTTY) process.stderr.write(`\r${index + 1}`);
    return room;
  });

  const part = (of: readonly Laid[], among: readonly Laid[]): string =>
    `${of.length} of ${among.length}, ${((100 * of.length) / among.length).toFixed(1)} %`;
  const provenAmong = (among: readonly Laid[]) => among.filter(({ layout }) => layout?.proven);
  const timesOf = (those: readonly Laid[]): string => {
    const times = those.map(({ time }) => time);
    return timesLine('placeBoards', times);
  };
  const list = (name: string, those: readonly Laid[], told: (room: Laid) => string = ({ seed }) => String(seed)): void =>
    console.log(`${name}: ${those.length}${those.length === 0 ? '' : ` — rooms ${those.map(told).join(', ')}`}`);

  const laid = rooms.filter(({ layout }) => layout !== undefined);
  console.log(`${count} seeded rooms from number ${first}: L, T and chimney breast`);
  console.log(timesOf(rooms));
  console.log(`laid: ${part(laid, rooms)}`);
  const none = rooms.filter(({ layout }) => layout === undefined);
  list('no layout', none);
  const missed = none.filter((room) => room.missed);
  list('  and yet there is one', missed);
  console.log(`proven: ${part(provenAmong(laid), laid)} (at least 90 %)`);
  const pieces = laid.filter(({ layout }) => layout?.piecesProven);
  console.log(`pieces proven: ${part(pieces, laid)}`);
  const [passing, wrong] = [true, false].map((passes) => laid.filter(({ errors }) => (errors.length === 0) === passes));
  console.log(`checked, without an error: ${part(passing, laid)}`);
  for (const shape of new Set(laid.map((room) => room.shape))) {
    const its = laid.filter((room) => room.shape === shape);
    console.log(`  ${shape}: proven ${part(provenAmong(its), its)}; ${timesOf(its)}`);
  }
  list('layouts that do not pass the check', wrong, ({ seed, errors }) => `${seed} (${errors.join('; ')})`);
  const unproven = laid.filter(({ layout }) => !layout?.proven);
  list('not proven', unproven, ({ seed, layout }) => `${seed} (${layout?.boardsBought}, bound ${layout?.bound})`);
}
