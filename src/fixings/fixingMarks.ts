/** Whole mm, in grid steps. */
const MM = 1000;
const up = (x: number): number => Math.ceil(x / MM) * MM;
const down = (x: number): number => Math.floor(x / MM) * MM;
const clamp = (x: number, least: number, greatest: number): number => Math.max(least, Math.min(greatest, x));

/** A stretch of a line, in grid steps; as something blocked, its two ends are free. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** One line of fixings to be set out, in grid steps from the edge of the piece that a person measures from. */
export interface MarkRequest {
  /** Where the board lies on the timber. */
  readonly low: number;
  readonly high: number;
  /** Where no fixing may go, in order and apart: the edges of the board, zones. */
  readonly blocked: readonly Stretch[];
  /** Greatest distance between fixings. */
  readonly spacing: number;
  /** Greatest distance of the first and last fixing from `low` and `high`, where that saves one. */
  readonly floating: number;
  /** Which way the line leans against the one opposite on the same joist, so that no two fixings face each other. */
  readonly lean?: -1 | 0 | 1;
}

export interface FixingMarks {
  readonly marks: readonly number[];
  /** Stretches longer than the spacing in which nothing may be fixed; the whole line where there are no marks. */
  readonly tooWide: readonly Stretch[];
}

/**
 * Sets out one line of fixings: as few as the spacing allows, in even steps of whole mm where that can be, moved aside from
 * where nothing may be fixed.
 */
export function fixingMarks(request: MarkRequest): FixingMarks {
  const free = freeStretches(request);
  if (free.length === 0) return { marks: [], tooWide: [{ from: request.low, to: request.high }] };
  const even = evenMarks(request, free[0].from, free[free.length - 1].to);
  const bridged = free[0].from - request.low <= request.spacing && request.high - free[free.length - 1].to <= request.spacing;
  if (bridged && even.every((mark) => free.some(({ from, to }) => from <= mark && mark <= to)))
    return { marks: even, tooWide: [] };
  return marksAround(request, free);
}

function freeStretches({ low, high, blocked }: MarkRequest): Stretch[] {
  const free: Stretch[] = [];
  let from = low;
  for (const each of blocked) {
    if (each.to <= low || each.from >= high) continue;
    if (each.from >= from) free.push({ from, to: each.from });
    from = Math.max(from, each.to);
  }
  if (from <= high) free.push({ from, to: high });
  return free;
}

/** Even steps from the first free place to the last, or from further in where that saves a fixing. */
function evenMarks({ low, high, spacing, floating, lean = 0 }: MarkRequest, least: number, greatest: number): number[] {
  const firstAtMost = Math.max(least, low + floating);
  const lastAtLeast = Math.min(greatest, high - floating);
  const gaps = Math.max(0, Math.ceil((lastAtLeast - firstAtMost) / spacing));
  // One serves both edges: no further from either than it must be.
  if (gaps === 0) return [wholeWithin((least + greatest) / 2, Math.max(least, lastAtLeast), Math.min(greatest, firstAtMost))];
  const first = Math.min(up(least), greatest);
  let best: { readonly at: number; readonly step: number; readonly lean: number } | undefined;
  const longest = Math.min(down(spacing), down((greatest - first) / gaps));
  for (let step = longest; step > 0; step -= MM) {
    const [from, to] = [Math.max(first, up(lastAtLeast - gaps * step)), Math.min(firstAtMost, greatest - gaps * step)];
    if (from > down(to)) break;
    const middle = clamp(down((low + high - gaps * step) / 2), from, down(to));
    const at = lean === 0 ? middle : lean > 0 ? from : down(to);
    const leaning = Math.abs(2 * at + gaps * step - low - high);
    if (best === undefined || leaning > best.lean) best = { at, step, lean: leaning };
    if (lean === 0) break;
  }
  if (best !== undefined) return Array.from({ length: gaps + 1 }, (_, i) => best.at + i * best.step);
  return unevenMarks(least, firstAtMost, lastAtLeast, greatest, gaps, spacing);
}

/** Steps that differ by 1 mm, or fractions of a mm where even that cannot be. */
function unevenMarks(
  least: number,
  firstAtMost: number,
  lastAtLeast: number,
  greatest: number,
  gaps: number,
  spacing: number,
): number[] {
  const first = up(Math.max(least, lastAtLeast - gaps * down(spacing)));
  const last = Math.min(down(greatest), first + gaps * down(spacing));
  const whole = first <= firstAtMost && last >= lastAtLeast;
  const [from, to, unit] = whole ? [first, last, MM] : [firstAtMost, lastAtLeast, 1];
  const short = Math.floor((to - from) / unit / gaps);
  const longer = (to - from) / unit - short * gaps;
  return Array.from({ length: gaps + 1 }, (_, i) => from + (i * short + Math.min(i, longer)) * unit);
}

/**
 * A line with places where nothing may be fixed. Working back from the far end gives, for each fixing, how near it may be for
 * the rest to reach; working forward, each goes as near its even place as that allows.
 */
function marksAround(request: MarkRequest, free: readonly Stretch[]): FixingMarks {
  const { low, high, spacing } = request;
  const tooWide: Stretch[] = free[0].from - low > spacing ? [{ from: low, to: free[0].from }] : [];
  const groups: Stretch[][] = [[free[0]]];
  for (let i = 1; i < free.length; i++) {
    const between = { from: free[i - 1].to, to: free[i].from };
    if (between.to - between.from <= spacing) groups[groups.length - 1].push(free[i]);
    else {
      tooWide.push(between);
      groups.push([free[i]]);
    }
  }
  const end = free[free.length - 1].to;
  if (high - end > spacing) tooWide.push({ from: end, to: high });
  const marks = groups.flatMap((group, index) => {
    const [least, greatest] = [group[0].from, group[group.length - 1].to];
    // Beside a stretch that cannot be bridged the fixing goes as near to it as it may.
    const firstAtMost = index === 0 ? Math.max(least, low + request.floating) : least;
    const lastAtLeast = index === groups.length - 1 ? Math.min(greatest, high - request.floating) : greatest;
    return marksInGroup(group, firstAtMost, lastAtLeast, spacing);
  });
  return { marks, tooWide };
}

function marksInGroup(free: readonly Stretch[], firstAtMost: number, lastAtLeast: number, spacing: number): number[] {
  const [least, greatest] = [free[0].from, free[free.length - 1].to];
  const nextFree = (x: number): number => {
    for (const { from, to } of free) if (to >= x) return Math.max(from, x);
    return greatest;
  };
  const earliest = [nextFree(Math.max(least, lastAtLeast))];
  while (earliest[0] > firstAtMost) earliest.unshift(nextFree(Math.max(least, earliest[0] - spacing)));
  const gaps = earliest.length - 1;
  const marks: number[] = [];
  for (let i = 0; i <= gaps; i++) {
    const before = marks[i - 1];
    const from = Math.max(earliest[i], before === undefined ? least : Math.min(before + 1, greatest));
    const to = before === undefined ? firstAtMost : Math.min(greatest, before + spacing);
    const even = gaps === 0 ? (least + greatest) / 2 : least + ((greatest - least) * i) / gaps;
    marks.push(nearestFree(free, even, from, Math.max(from, to)));
  }
  return marks;
}

/** The free place nearest to where a fixing is wanted, on a whole mm if there is one in that stretch. */
function nearestFree(free: readonly Stretch[], wanted: number, least: number, greatest: number): number {
  let best: number | undefined;
  for (const stretch of free) {
    const [from, to] = [Math.max(stretch.from, least), Math.min(stretch.to, greatest)];
    if (from > to) continue;
    const at = wholeWithin(wanted, from, to);
    if (best === undefined || Math.abs(at - wanted) < Math.abs(best - wanted)) best = at;
  }
  return best ?? least;
}

/** Nearest whole mm within bounds; without one, the nearest place. */
function wholeWithin(wanted: number, least: number, greatest: number): number {
  const at = clamp(Math.round(wanted / MM) * MM, least, greatest);
  if (at % MM === 0) return at;
  const whole = at === least ? up(least) : down(greatest);
  return least <= whole && whole <= greatest ? whole : clamp(Math.round(wanted), least, greatest);
}
