import * as z from 'zod/mini';
import { attemptPlacement } from '../boards/attemptPlacement.js';
import type { BoardLayout } from '../boards/boardLayout.js';
import { compareInOrder } from '../boards/compareInOrder.js';
import { type JudgedLayout, judgedLayout } from '../boards/placeBoards.js';
import { fixingsOf } from '../fixings/placeFixings.js';
import { rulesOf } from '../rules/withRules.js';
import type { BoardStock } from '../survey/boardStock.js';
import { admit, demand } from '../survey/door.js';
import { refuse } from '../survey/inputError.js';
import { boardStockSchema } from '../survey/schemas.js';
import { asBinding } from './asBinding.js';
import type { BoardsComparison, BoardsThatDoNot, BoardsThatServe } from './boardsComparison.js';
import { type Job, jobSchema } from './planCeiling.js';
import { type SettledJoists, settleJoists } from './settleJoists.js';

const stocksSchema: z.ZodMiniType<readonly BoardStock[]> = z.array(boardStockSchema).check(
  z.minLength(1),
  z.maxLength(50),
  demand((stocks) => new Set(stocks.map(({ id }) => id)).size === stocks.length, 'repeated-id', 'boards with different ids'),
  demand(
    (stocks) => new Set(stocks.map(({ price }) => price === undefined)).size <= 1,
    'price-missing',
    'a price for every board or for none',
  ),
);

/** Up to so many sizes that go together every mix is tried; of more only pairs. */
const MOST_MIXED = 3;

/**
 * What boards to buy for one ceiling: each size by itself and mixes of sizes, ranked by the job's preference, with what each costs
 * in boards, joints, cuts, weight to lift and money. What the ceiling cannot be boarded with comes last, with the reason.
 *
 * Only sizes of one thickness and edge go into one mix: up to three of them in every mix, of more in pairs. A mix of which the
 * best layout takes fewer sizes is left out: these stand in the list themselves. Boards on which a rule that must hold is broken
 * come after those that keep all of them.
 *
 * @param job - as for `planCeiling`; its own `boards` are not looked at
 * @param stocks - sizes to compare, also of different thickness; lengths in mm, masses in kg/m2, prices for all or none; the
 *   job's `boards` when not given
 * @returns plain data, the best first
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { compareBoards, rectangle } from 'soffitwright';
 *
 * const size = (length: number, width: number) =>
 *   ({ id: `${length} x ${width}`, length, width, thickness: 12.5, massPerArea: 8.4, edge: 'square' }) as const;
 * const job = {
 *   room: { outline: rectangle(3600, 2390) },
 *   joists: { direction: 'y' as const, first: 25, spacing: 400, last: 3575, width: 50 },
 *   lining: [{ kind: 'plasterboard' as const, thickness: 9.5 }],
 *   boards: [size(2400, 1200)],
 * };
 * for (const { words } of compareBoards(job, [size(1800, 900), size(2400, 1200)]).alternatives) console.log(words);
 * // 3 of 2400 x 1200: 3 butt joints, 8 cuts, 168 screws, heaviest piece 23.8 kg
 * // 7 of 1800 x 900: 6 butt joints, 12 cuts, 198 screws, heaviest piece 12.2 kg
 * ```
 */
export function compareBoards(job: Job, stocks: readonly BoardStock[] = job.boards): BoardsComparison {
  admit(jobSchema, job);
  admit(stocksSchema, stocks, 'stocks');
  const settled = settleJoists(job.room, job.joists, rulesOf(job.rules));
  const tried = mixesOf(stocks).map((boards) => {
    const attempt = attemptPlacement(() => laidWith(job, settled, boards));
    if (!attempt.ok && attempt.reason === 'input') refuse(...attempt.problems);
    return { boards, attempt };
  });
  const served = tried.flatMap(({ boards, attempt }) => (attempt.ok ? [{ boards, ...attempt.value }] : []));
  const own = served.filter(({ boards, layout }) => layout.boardsByStock.length === boards.length);
  const ranked = own
    .map((each) => ({ judged: each.judged, told: told(job, settled, each) }))
    .sort((a, b) => {
      const broken = ({ findings }: BoardsThatServe): number => (findings.some(({ severity }) => severity === 'error') ? 1 : 0);
      return compareInOrder([broken(a.told), ...a.judged], [broken(b.told), ...b.judged]);
    })
    .map((each) => each.told);
  const failed = tried.flatMap(({ boards, attempt }): BoardsThatDoNot[] =>
    attempt.ok || attempt.reason === 'input'
      ? []
      : [
          {
            ok: false,
            boards: boards.map(({ id }) => id),
            words: [...attempt.findings.map(({ message }) => message), ...wouldDo(attempt.relaxations)].join(' '),
            relaxations: attempt.relaxations,
          },
        ],
  );
  return { alternatives: [...ranked, ...failed] };
}

const wouldDo = (relaxations: BoardsThatDoNot['relaxations']): string[] =>
  relaxations.length === 0 ? [] : [`Would do: ${relaxations.map(({ message }) => message).join('; ')}.`];

function laidWith(
  { lining, rules, prefer = 'tradesperson' }: Job,
  { room, joists }: SettledJoists,
  boards: readonly BoardStock[],
): JudgedLayout {
  return judgedLayout({
    room,
    joists,
    boards,
    rules: rulesOf(rules),
    lining,
    prefer,
  });
}

/** Every size by itself, and mixes of those that go together, in the order of the list. */
function mixesOf(stocks: readonly BoardStock[]): (readonly BoardStock[])[] {
  const groups = new Map<string, BoardStock[]>();
  for (const stock of stocks) {
    const key = `${stock.thickness} ${stock.edge}`;
    groups.set(key, [...(groups.get(key) ?? []), stock]);
  }
  return [...groups.values()].flatMap((group) => {
    const most = group.length <= MOST_MIXED ? group.length : 2;
    let mixes: BoardStock[][] = [[]];
    for (const stock of group) mixes = mixes.concat(mixes.map((mix) => [...mix, stock]));
    return mixes.filter((mix) => mix.length > 0 && mix.length <= most).sort((a, b) => a.length - b.length);
  });
}

function told(
  job: Job,
  { room, parts }: SettledJoists,
  { boards, layout }: { readonly boards: readonly BoardStock[]; readonly layout: BoardLayout },
): BoardsThatServe {
  const { lining, noFix = [] } = job;
  const { boardsBought, boardsByStock, endJoints, cuts, jointLength, cost, wasteAreaM2, bound, proven, pieces } = layout;
  const rules = rulesOf(job.rules);
  const screws = fixingsOf({ room, layout, parts, rules, lining, boardThickness: boards[0].thickness, noFix }).count;
  const heaviestKg = Math.max(...pieces.map(({ massKg }) => massKg));
  const counts = boardsByStock.map(({ stock, count }) => `${count} of ${stock}`).join(' and ');
  const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
  return {
    ok: true,
    boards: boards.map(({ id }) => id),
    boardsBought,
    boardsByStock,
    endJoints,
    pieces: pieces.length,
    cuts,
    jointLength,
    screws,
    heaviestKg,
    liftedKg: Math.round(pieces.reduce((sum, { massKg }) => sum + massKg, 0) * 10) / 10,
    ...(cost !== undefined && { cost }),
    wasteAreaM2,
    bound,
    proven,
    words: `${counts}: ${plural(endJoints, 'butt joint')}, ${plural(cuts, 'cut')}, ${plural(screws, 'screw')}, heaviest piece ${Math.round(heaviestKg * 10) / 10} kg${cost === undefined ? '' : `, ${cost} for the boards`}`,
    findings: layout.findings.map(asBinding),
  };
}
