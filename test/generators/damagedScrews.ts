import { type FixingPosition, type FixingsCheck, type Joist, type Piece, placeFixings, type Severity } from 'soffitwright';
import type { RowPlan } from './rowPlans.js';

/** A check of screws that the program placed on a ceiling that it did not lay. */
export interface Screwed {
  readonly check: Omit<FixingsCheck, 'fixings' | 'joists'> & {
    readonly fixings: readonly FixingPosition[];
    readonly joists: readonly Joist[];
  };
  readonly pieces: readonly Piece[];
  /** The axes along the joists and across them. */
  readonly along: 'x' | 'y';
  readonly across: 'x' | 'y';
}

export function screwed({ direction, ...plan }: RowPlan): Screwed {
  const { room, joists, layout, rules, noFix } = plan;
  const fixings = placeFixings({ ...plan, boardThickness: 12.5 }).positions;
  const boards = [{ id: 'B1', stock: '1200 x 2400' }];
  return {
    check: { room, joists, rules, noFix, layout: { ...layout, boards }, fixings },
    pieces: layout.pieces,
    along: direction,
    across: direction === 'y' ? 'x' : 'y',
  };
}

/** One thing done to good screws, and the finding that must come of it. */
export interface ScrewDamage {
  readonly name: string;
  readonly code: string;
  readonly severity: Severity;
  /** Nothing where this ceiling has no place for the damage. */
  readonly hurt: (good: Screwed, pick: number) => { readonly check: FixingsCheck; readonly what: string } | undefined;
}

interface Line {
  readonly joist: Joist;
  readonly piece: Piece;
  /** Whether it is beside one of the piece's butt joints. */
  readonly atJoint: boolean;
  /** In order along the joist. */
  readonly screws: readonly FixingPosition[];
  /** Where the piece's edges are along the joist, and its ends across it. */
  readonly low: number;
  readonly high: number;
  readonly near: number;
  readonly far: number;
}

/** Lines on the joists, those of trimmers left out. */
function linesOf({ check, pieces, along, across }: Screwed): Line[] {
  return pieces.flatMap((piece) => {
    const levels = piece.outline.map((point) => point[along]);
    const ends = piece.outline.map((point) => point[across]);
    const box = { low: Math.min(...levels), high: Math.max(...levels), near: Math.min(...ends), far: Math.max(...ends) };
    return check.joists.flatMap((joist): Line[] => {
      const screws = check.fixings
        .filter((each) => each.piece === piece.id && each.joist === joist.id)
        .sort((a, b) => a[along] - b[along]);
      if (screws.length < 2 || joist.kind === 'trimmer') return [];
      return [{ joist, piece, atJoint: piece.ends.some((end) => end.joist === joist.id), screws, ...box }];
    });
  });
}

type Change = (line: Line, good: Screwed) => FixingPosition | undefined;

const damaged = (
  name: string,
  code: string,
  severity: Severity,
  /** Which lines it can be done to. */
  fits: (line: Line, good: Screwed) => boolean,
  /** The screws of the line afterwards. */
  after: (line: Line, good: Screwed) => readonly FixingPosition[],
): ScrewDamage => ({
  name,
  code,
  severity,
  hurt: (good, pick) => {
    const lines = linesOf(good).filter((line) => fits(line, good));
    if (lines.length === 0) return;
    const line = lines[pick % lines.length];
    const gone = new Set<FixingPosition>(line.screws);
    const fixings = [...good.check.fixings.filter((each) => !gone.has(each)), ...after(line, good)];
    return { check: { ...good.check, fixings }, what: `${line.piece.id} on ${line.joist.id}` };
  },
});

/** The middle screw of a line, changed. */
const middle =
  (change: Change) =>
  (line: Line, good: Screwed): readonly FixingPosition[] => {
    const at = Math.floor(line.screws.length / 2);
    return line.screws.flatMap((each, i) => (i === at ? (change({ ...line, screws: [each] }, good) ?? []) : [each]));
  };

/** The first screw of a line, changed. */
const first =
  (change: Change) =>
  (line: Line, good: Screwed): readonly FixingPosition[] => [
    ...[change(line, good)].filter((each) => each !== undefined),
    ...line.screws.slice(1),
  ];

const always = (): boolean => true;
/** Beside a hatch the first screw may stand further from the edge, and one moved off its joist may be in a trimmer. */
const noHatch = ({ piece }: Line): boolean => piece.holes === undefined;
const inField = ({ atJoint }: Line): boolean => !atJoint;

/** Middle of a joist at a place along it. */
function centreAt({ start, end }: Joist, at: number, along: 'x' | 'y', across: 'x' | 'y'): number {
  return start[across] + ((end[across] - start[across]) * (at - start[along])) / (end[along] - start[along]);
}

/** A screw moved sideways to so far from the middle of its joist, away from the nearer end of the piece. */
const sideways =
  (from: (joist: Joist) => number): Change =>
  ({ joist, screws: [screw], near, far }, { along, across }) => {
    const centre = centreAt(joist, screw[along], along, across);
    const way = centre - near < far - centre ? 1 : -1;
    return { ...screw, [across]: centre + way * from(joist) };
  };

const stepOver =
  (limit: number) =>
  ({ screws }: Line, { along }: Screwed): boolean => {
    const at = Math.floor(screws.length / 2);
    return at > 0 && at < screws.length - 1 && screws[at + 1][along] - screws[at - 1][along] > limit;
  };

/** Greatest spacing of any rule set in the middle of a board. */
const WIDEST = 305;

/** The ten kinds of damage, and one or two more. */
export const SCREW_DAMAGES: readonly ScrewDamage[] = [
  damaged('a screw moved off its joist', 'fixing-off-timber', 'error', noHatch, middle(sideways(({ width }) => width / 2 + 30))),
  damaged(
    'a screw at the very edge of its joist',
    'fixing-edge',
    'error',
    inField,
    middle(sideways(({ width }) => width / 2 - 2)),
  ),
  damaged(
    'a screw past the long edge of its board',
    'fixing-edge',
    'error',
    always,
    first(({ screws: [screw], low }, { along }) => ({ ...screw, [along]: low - 2 })),
  ),
  damaged(
    'a screw too near the long edge of its board',
    'fixing-edge',
    'error',
    always,
    first(({ screws: [screw], low }, { along }) => ({ ...screw, [along]: low + 4 })),
  ),
  damaged(
    'a screw too near the cut end at a butt joint',
    'fixing-edge',
    'error',
    // On narrow timber the distances cannot be kept anyway, and it is a warning.
    ({ atJoint, joist }) => atJoint && joist.width >= 50,
    middle(({ screws: [screw], near, far }, { across }) => ({
      ...screw,
      [across]: screw[across] - near < far - screw[across] ? near + 3 : far - 3,
    })),
  ),
  damaged(
    'a gap widened',
    'fixing-gap',
    'error',
    stepOver(WIDEST),
    middle(() => undefined),
  ),
  damaged(
    'the first screw of a line left out',
    'fixing-gap',
    'error',
    noHatch,
    first(() => undefined),
  ),
  damaged(
    'a line left out',
    'fixing-gap',
    'error',
    ({ low, high }) => high - low > WIDEST,
    () => [],
  ),
  {
    name: 'a screw into a zone where none may go',
    code: 'fixing-in-no-fix-zone',
    severity: 'error',
    hurt: ({ check }, pick) => {
      const { x, y } = check.fixings[pick % check.fixings.length];
      const zone = { id: 'pipe', centre: { x: x + 3, y: y - 4 }, diameter: 40 };
      return { check: { ...check, noFix: [zone] }, what: `${x}, ${y}` };
    },
  },
  damaged(
    'a screw that holds no board',
    'fixing-off-board',
    'error',
    always,
    first(({ screws: [screw] }) => ({ ...screw, x: -300, y: -300 })),
  ),
  damaged(
    'a screw that names another joist',
    'claim-wrong',
    'error',
    (_, { check }) => check.joists.length > 1,
    middle(({ screws: [screw] }, { check }) => ({
      ...screw,
      joist: check.joists.find(({ id }) => id !== screw.joist)?.id ?? '',
    })),
  ),
  {
    name: 'a screw counted that is not there',
    code: 'claim-wrong',
    severity: 'error',
    hurt: ({ check }, pick) => {
      const positions = check.fixings.filter((_, i) => i !== pick % check.fixings.length);
      return { check: { ...check, fixings: { positions, count: check.fixings.length } }, what: 'the count' };
    },
  },
];
