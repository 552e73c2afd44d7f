import { type BoardLayout, rectangle, tryPlaceBoards } from 'soffitwright';
import { boardOf } from '../generators/rooms.js';

/** Metres across the joists and along them, and the boards that the first placement needed, joists even or not. */
const SIZES = [
  [3, 2.4, 3],
  [4.5, 3.6, 6],
  [6, 4.8, 11],
  [9, 6, 19],
  [12, 8, 34],
  [15, 10, 53],
  [20, 12, 84],
  [24, 16, 134],
  [30, 20, 210],
] as const;

/** Off the even place, mm; the same for each joist at every run. */
const stray = (k: number): number => ((k * 7919) % 11) - 5;

/** Prints time, gap and memory as rooms grow; before anything else has used memory. */
export function printGrowth(): void {
  for (const even of [true, false]) {
    console.log(`growth, joists at 400${even ? '' : ', each up to 5 off'}, boards of 2400 x 1200:`);
    for (const [across, along, first] of SIZES) {
      const positions: number[] = [];
      for (let k = 0; 60 + k * 400 < across * 1000 - 30; k++) positions.push(60 + k * 400 + (even ? 0 : stray(k)));
      const outline = rectangle(across * 1000, along * 1000);
      const start = performance.now();
      const attempt = tryPlaceBoards({
        room: { outline },
        joists: { direction: 'y', positions, width: 47 },
        boards: [boardOf(2400, 1200)],
      });
      const time = performance.now() - start;
      const rows = Math.ceil((along * 1000 - 10) / 1200);
      const memory = Math.round(process.resourceUsage().maxRSS / 1024);
      console.log(
        `  ${across} x ${along} m, ${rows} rows, ${positions.length} joists: ${time.toFixed(1)} ms, ${attempt.ok ? told(attempt.value, first) : 'no layout'}, ${memory} MB at most so far`,
      );
    }
  }
}

const told = ({ boardsBought, bound, proven }: BoardLayout, first: number): string =>
  `${boardsBought} boards${boardsBought > first ? ` (first placement ${first})` : ''}, gap ${boardsBought - bound}, ${proven ? 'proven' : 'not proven'}`;
