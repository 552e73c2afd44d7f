/** A piece on a board: along its length and across it, grid steps. */
export interface Blank {
  readonly length: number;
  readonly width: number;
}

/** A board to cut; `kerf` is what a cut takes, grid steps. */
export interface Sheet {
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
}

/** Steps after which a hard board is left undecided. */
const BUDGET = 200_000;

/**
 * Whether these pieces can be cut from one board with straight cuts from side to side, never turned. Decided exactly, or
 * `unknown` when the budget of steps runs out.
 *
 * A piece that leaves no room beside it for even the narrowest other one has its length of the board to itself, and all such
 * pieces can be pushed to one end. If the rest are of one width, what remains of the board is best ripped into as many strips as
 * it gives: level lines meet at most that many pieces, and intervals that overlap at most so often fill so many strips. Pieces of
 * several widths are tried in every order of cuts.
 */
export function cuttable(blanks: readonly Blank[], sheet: Sheet, steps = BUDGET): 'yes' | 'no' | 'unknown' {
  if (blanks.some(({ length, width }) => length > sheet.length || width > sheet.width)) return 'no';
  if (areaOf(blanks) > sheet.length * sheet.width) return 'no';
  let rest = [...blanks];
  let room = sheet.length + sheet.kerf;
  while (true) {
    const narrowest = Math.min(...rest.map(({ width }) => width));
    const alone = rest.filter(({ width }) => width + sheet.kerf + narrowest > sheet.width);
    if (alone.length === 0) break;
    room -= alone.reduce((sum, { length }) => sum + length + sheet.kerf, 0);
    rest = rest.filter((blank) => !alone.includes(blank));
  }
  if (rest.length === 0) return room >= 0 ? 'yes' : 'no';
  if (room <= 0) return 'no';
  const budget = { steps };
  const strips = (width: number): number => Math.floor((sheet.width + sheet.kerf) / (width + sheet.kerf));
  const lengths = rest.map(({ length }) => length + sheet.kerf).sort((a, b) => b - a);
  const widths = rest.map(({ width }) => width);
  // As if all were as wide as the widest: enough. As if all were as narrow as the narrowest: needed.
  const sure = fitsLanes(lengths, strips(Math.max(...widths)), room, budget);
  if (sure === 'yes') return 'yes';
  if (Math.max(...widths) === Math.min(...widths)) return sure;
  if (fitsLanes(lengths, strips(Math.min(...widths)), room, budget) === 'no') return 'no';
  return fitsCuts(rest, { ...sheet, length: room - sheet.kerf }, budget);
}

/** Square grid steps. */
export const areaOf = (blanks: readonly Blank[]): number => blanks.reduce((sum, { length, width }) => sum + length * width, 0);

interface Budget {
  steps: number;
}

/** Whether lengths can be shared out over lanes of one capacity; longest first, like lanes tried once. */
function fitsLanes(lengths: readonly number[], lanes: number, capacity: number, budget: Budget): 'yes' | 'no' | 'unknown' {
  const free: number[] = Array.from({ length: lanes }, () => capacity);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  if (total > capacity * lanes) return 'no';
  const place = (next: number): boolean => {
    if (next === lengths.length) return true;
    if (budget.steps-- <= 0) return false;
    const tried = new Set<number>();
    for (let lane = 0; lane < lanes; lane++) {
      if (free[lane] < lengths[next] || tried.has(free[lane])) continue;
      tried.add(free[lane]);
      free[lane] -= lengths[next];
      if (place(next + 1)) return true;
      free[lane] += lengths[next];
    }
    return false;
  };
  if (place(0)) return 'yes';
  return budget.steps > 0 ? 'no' : 'unknown';
}

/** More pieces of several widths on one board than this are left undecided. */
const MOST_MIXED = 14;

/** Every order of cuts: the least length of board that a set of pieces needs at a given width, cut along or across. */
function fitsCuts(blanks: readonly Blank[], { length, width, kerf }: Sheet, budget: Budget): 'yes' | 'no' | 'unknown' {
  if (blanks.length > MOST_MIXED) return 'unknown';
  const widths = sumsOf(
    blanks.map((blank) => blank.width),
    width,
    kerf,
  );
  const sets = factsOfSets(blanks);
  const known = new Map<number, number>();
  const least = (set: number, across: number): number => {
    const { widest, longest, area, one } = sets[set];
    if (widest > across) return Infinity;
    if (one) return longest;
    const key = set * (width + 1) + across;
    const before = known.get(key);
    if (before !== undefined) return before;
    const best = leastOfSplits(set, across, Math.max(longest, Math.ceil(area / across)));
    known.set(key, best);
    return best;
  };
  const leastOfSplits = (set: number, across: number, bound: number): number => {
    let best = Infinity;
    const first = set & -set;
    for (let part = (set - 1) & set; part > 0 && best > bound; part = (part - 1) & set) {
      if ((part & first) === 0) continue;
      if (budget.steps-- <= 0) return Infinity;
      const other = set ^ part;
      best = Math.min(best, least(part, across) + kerf + least(other, across));
      const highest = across - kerf - sets[other].widest;
      for (const low of widths) {
        if (low > highest) break;
        if (low >= sets[part].widest) best = Math.min(best, Math.max(least(part, low), least(other, across - kerf - low)));
      }
    }
    return best;
  };
  if (least((1 << blanks.length) - 1, width) <= length) return 'yes';
  return budget.steps > 0 ? 'no' : 'unknown';
}

interface SetFacts {
  readonly widest: number;
  readonly longest: number;
  readonly area: number;
  readonly one: boolean;
}

/** For every set of pieces, by the bits of its number. */
function factsOfSets(blanks: readonly Blank[]): SetFacts[] {
  const sets: SetFacts[] = [{ widest: 0, longest: 0, area: 0, one: false }];
  for (let set = 1; set < 1 << blanks.length; set++) {
    const rest = set & (set - 1);
    const { length, width } = blanks[31 - Math.clz32(set ^ rest)];
    const { widest, longest, area } = sets[rest];
    sets.push({
      widest: Math.max(widest, width),
      longest: Math.max(longest, length),
      area: area + length * width,
      one: rest === 0,
    });
  }
  return sets;
}

/** Widths that strips side by side can take up together, in order. */
function sumsOf(widths: readonly number[], limit: number, kerf: number): number[] {
  let sums = new Set<number>();
  for (const width of widths) {
    sums = new Set([...sums, width, ...[...sums].map((sum) => sum + kerf + width)].filter((sum) => sum <= limit));
  }
  return [...sums].sort((a, b) => a - b);
}

/** A piece at its place on a board, grid steps. */
export interface Placed extends Blank {
  readonly along: number;
  readonly across: number;
}

/** Whether placed pieces can be parted by cuts from side to side, each with room for the saw. */
export function separable(placed: readonly Placed[], kerf: number): boolean {
  if (placed.length <= 1) return true;
  const parts = parted(placed, kerf, 'along') ?? parted(placed, kerf, 'across');
  return parts?.every((part) => separable(part, kerf)) ?? false;
}

/** The pieces on either side of every straight cut one way; nothing where there is no such cut. */
function parted(placed: readonly Placed[], kerf: number, way: 'along' | 'across'): Placed[][] | undefined {
  const end = (each: Placed): number => (way === 'along' ? each.along + each.length : each.across + each.width);
  const sorted = [...placed].sort((a, b) => a[way] - b[way]);
  const parts: Placed[][] = [];
  let reached = -Infinity;
  for (const each of sorted) {
    if (each[way] >= reached + kerf) parts.push([each]);
    else parts[parts.length - 1].push(each);
    reached = Math.max(reached, end(each));
  }
  return parts.length > 1 ? parts : undefined;
}
