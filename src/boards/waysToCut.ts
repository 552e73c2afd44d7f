/** What one board gives: pieces of its whole width, and strips from the rest of its length; pieces are told by their kind. */
export interface Way {
  readonly whole: readonly number[];
  readonly strips: readonly { readonly width: number; readonly kinds: readonly number[] }[];
  /** How many of each kind. */
  readonly counts: Int32Array;
  /** How much of a board its pieces fill, by the shares that were given. */
  readonly share: number;
}

/** A board to be cut. */
export interface Blank {
  /** With one cut. */
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
}

/** A board of a stock as it comes. */
export const blankOf = ({ length, width, kerf }: Blank): Blank => ({ length: length + kerf, width, kerf });

/** Pieces that are wanted, by kind, the widest and longest first. */
export interface Wanted {
  readonly widths: readonly number[];
  /** Whether nothing goes beside it. */
  readonly alone: readonly boolean[];
  /** Lengths with one cut. */
  readonly sizes: readonly number[];
  readonly left: readonly number[];
  readonly share: readonly number[];
  /** Per kind: those before it that can be cut down to it wherever they lie. */
  readonly greater: readonly (readonly number[])[];
}

/** Ways to cut one board that are compared, and placings tried for them. */
const MOST_WAYS = 300;
const MOST_PLACINGS = 3000;

interface Lane {
  readonly width: number;
  readonly first: number;
  readonly kinds: number[];
  rest: number;
}

/** A board half cut. */
interface Cutting {
  readonly blank: Blank;
  readonly wanted: Wanted;
  readonly first: number;
  readonly taken: Int32Array;
  readonly whole: number[];
  readonly lanes: Lane[];
  /** By how many of each kind they have: where the pieces lie makes no difference. */
  readonly ways: Map<string, Way>;
  placings: number;
  stopped: boolean;
}

/**
 * The ways to cut one board for a piece of kind `first` and others that are left, to which no other piece could be added and in
 * which none could be changed for a greater one: the two may change places. Least waste first. `all`: whether these are all.
 */
export function waysToCut(blank: Blank, wanted: Wanted, first: number): { ways: Way[]; all: boolean; placings: number } {
  const taken = new Int32Array(wanted.left.length);
  const cutting: Cutting = { blank, wanted, first, taken, whole: [], lanes: [], ways: new Map(), placings: 0, stopped: false };
  const rest = blank.length - wanted.sizes[first];
  if (wanted.alone[first]) {
    put(cutting, first, cutting.whole);
    addWhole(cutting, first, rest);
  } else {
    beginLane(cutting, first, blank.length, blank.width + blank.kerf);
  }
  const ways = [...cutting.ways.values()].sort((a, b) => b.share - a.share);
  return { ways, all: !cutting.stopped, placings: cutting.placings };
}

/** Whether a piece of this kind is left and may lie as a strip, or else as a whole piece, where so much length is left. */
function mayLie({ wanted, taken }: Cutting, kind: number, asStrip: boolean, rest: number): boolean {
  return wanted.left[kind] > taken[kind] && wanted.alone[kind] !== asStrip && wanted.sizes[kind] <= rest;
}

function put(cutting: Cutting, kind: number, into: number[]): void {
  cutting.placings++;
  cutting.stopped ||= cutting.placings > MOST_PLACINGS;
  cutting.taken[kind]++;
  into.push(kind);
}

function back(cutting: Cutting, kind: number, from: number[]): void {
  cutting.taken[kind]--;
  from.pop();
}

function addWhole(cutting: Cutting, from: number, rest: number): void {
  const { wanted, whole, first, blank } = cutting;
  for (let kind = from; kind < wanted.left.length && !cutting.stopped; kind++) {
    if (!mayLie(cutting, kind, false, rest)) continue;
    put(cutting, kind, whole);
    addWhole(cutting, kind, rest - wanted.sizes[kind]);
    back(cutting, kind, whole);
  }
  openLane(cutting, first, rest, blank.width + blank.kerf);
}

/** Begins another strip in a rest of the board, or leaves it as it is. */
function openLane(cutting: Cutting, from: number, rest: number, across: number): void {
  const { wanted, blank } = cutting;
  for (let kind = from; kind < wanted.left.length && !cutting.stopped; kind++) {
    if (!mayLie(cutting, kind, true, rest) || wanted.widths[kind] + blank.kerf > across) continue;
    beginLane(cutting, kind, rest, across);
  }
  close(cutting, rest, across);
}

function beginLane(cutting: Cutting, kind: number, rest: number, across: number): void {
  const { wanted, lanes, blank } = cutting;
  const lane: Lane = { width: wanted.widths[kind], first: kind, kinds: [], rest: rest - wanted.sizes[kind] };
  put(cutting, kind, lane.kinds);
  lanes.push(lane);
  fillLane(cutting, kind, rest, across - lane.width - blank.kerf);
  lanes.pop();
  back(cutting, kind, lane.kinds);
}

function fillLane(cutting: Cutting, from: number, rest: number, across: number): void {
  const { wanted, lanes } = cutting;
  const lane = lanes[lanes.length - 1];
  for (let kind = from; kind < wanted.left.length && !cutting.stopped; kind++) {
    if (!mayLie(cutting, kind, true, lane.rest) || wanted.widths[kind] > lane.width) continue;
    put(cutting, kind, lane.kinds);
    lane.rest -= wanted.sizes[kind];
    fillLane(cutting, kind, rest, across);
    lane.rest += wanted.sizes[kind];
    back(cutting, kind, lane.kinds);
  }
  openLane(cutting, lane.first, rest, across);
}

/** Keeps the way unless some piece that is left would fit in besides, or in the place of a smaller one. */
function close(cutting: Cutting, rest: number, across: number): void {
  const { wanted, taken, whole, lanes, ways, first } = cutting;
  if (cutting.stopped || mayTakeMore(cutting, rest, across) || mayTakeGreater(cutting, rest, across)) return;
  const key = taken.join(' ');
  if (ways.has(key)) return;
  let share = 0;
  for (let kind = first; kind < taken.length; kind++) share += taken[kind] * wanted.share[kind];
  ways.set(key, {
    whole: [...whole],
    strips: lanes.map((lane) => ({ width: lane.width, kinds: [...lane.kinds] })),
    counts: taken.slice(),
    share,
  });
  cutting.stopped ||= ways.size >= MOST_WAYS;
}

/** How much of a rest of the board its longest strip takes. */
const usedOf = ({ lanes }: Cutting, rest: number): number => lanes.reduce((most, lane) => Math.max(most, rest - lane.rest), 0);

function mayTakeMore(cutting: Cutting, rest: number, across: number): boolean {
  const { wanted, taken, lanes, blank, first } = cutting;
  const used = usedOf(cutting, rest);
  for (let kind = first; kind < taken.length; kind++) {
    if (mayLie(cutting, kind, false, rest - used)) return true;
    if (!mayLie(cutting, kind, true, rest)) continue;
    if (wanted.widths[kind] + blank.kerf <= across) return true;
    for (const lane of lanes) if (wanted.widths[kind] <= lane.width && wanted.sizes[kind] <= lane.rest) return true;
  }
  return false;
}

function mayTakeGreater(cutting: Cutting, rest: number, across: number): boolean {
  const { whole, lanes } = cutting;
  const beyond = rest - usedOf(cutting, rest);
  return (
    whole.some((kind) => changesFor(cutting, kind, beyond)) ||
    // The first piece of a strip is as wide as the strip.
    lanes.some((lane) =>
      lane.kinds.some((kind, at) => changesFor(cutting, kind, lane.rest, lane.width + (at === 0 ? across : 0))),
    )
  );
}

/** Whether a greater piece that is left fits in the place of this one, where so much more length is left. */
function changesFor({ wanted, taken }: Cutting, kind: number, longer: number, width = Infinity): boolean {
  return wanted.greater[kind].some(
    (other) =>
      wanted.left[other] > taken[other] && wanted.sizes[other] - wanted.sizes[kind] <= longer && wanted.widths[other] <= width,
  );
}
