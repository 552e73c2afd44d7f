import fc from 'fast-check';
import { type CeilingPlan, type Job, type Replanning, rectangle, tryPlanCeiling } from 'soffitwright';

/** A plan, and what happened after it was made. */
export interface Happening {
  readonly plan: CeilingPlan;
  readonly changes: Replanning;
}

const board = (length: number, width: number) =>
  ({ id: `${width} x ${length}`, length, width, thickness: 12.5, massPerArea: 8.4, edge: 'square' }) as const;

type Kind = 'nothing' | 'board' | 'piece' | 'cut' | 'found' | 'missing' | 'offcut';

interface Drawn {
  readonly across: number;
  readonly along: number;
  readonly direction: 'x' | 'y';
  readonly spacing: number;
  readonly first: number;
  readonly width: number;
  readonly size: readonly number[];
  readonly up: number;
  readonly pick: number;
  readonly shift: number;
  readonly kind: Kind;
}

/** Small rooms with even joists, either way; some pieces up, and a board spoiled, a joist elsewhere, or one not there. */
export const anyHappening: fc.Arbitrary<Happening | undefined> = fc
  .record({
    across: fc.integer({ min: 2000, max: 4600 }),
    along: fc.integer({ min: 1300, max: 3400 }),
    direction: fc.constantFrom('x' as const, 'y' as const),
    spacing: fc.constantFrom(400, 450),
    first: fc.integer({ min: 25, max: 120 }),
    width: fc.constantFrom(47, 50, 63),
    size: fc.constantFrom([2400, 1200], [3000, 1200], [1800, 900]),
    up: fc.integer({ min: 0, max: 100 }),
    pick: fc.integer({ min: 0, max: 99 }),
    shift: fc.integer({ min: -90, max: 90 }),
    kind: fc.constantFrom<Kind[]>('nothing', 'board', 'piece', 'cut', 'found', 'missing', 'offcut'),
  })
  .map(happening);

function happening(drawn: Drawn): Happening | undefined {
  const { across, along, direction, spacing, first, width, size, up, pick, shift, kind } = drawn;
  const job: Job = {
    room: { outline: direction === 'y' ? rectangle(across, along) : rectangle(along, across) },
    joists: { direction, first, spacing, last: across - 60, width },
    lining: [{ kind: 'plasterboard', thickness: 9.5 }],
    boards: [board(size[0], size[1])],
    rules: { kerf: 0 },
  };
  const attempt = tryPlanCeiling(job);
  if (!attempt.ok) return;
  const plan = attempt.value;
  const { pieces, boards } = plan.layout;
  const fixed = pieces.slice(0, Math.floor((pieces.length * up) / 101)).map(({ id }) => id);
  const rest = pieces.slice(fixed.length);
  const piece = rest[pick % rest.length].id;
  const joist = plan.joists[pick % plan.joists.length];
  const at = (direction === 'y' ? joist.start.x : joist.start.y) + shift;
  const changes: Record<Kind, Replanning> = {
    nothing: { fixed },
    board: { fixed, spoiled: [boards[pick % boards.length].id] },
    piece: { fixed, spoiled: [piece] },
    cut: { fixed, cut: [piece], missing: [joist.id] },
    found: { fixed, found: [{ joist: joist.id, at: Math.min(across - 20, Math.max(20, at)) }] },
    missing: { fixed, missing: [joist.id] },
    offcut: { fixed, spoiled: [boards[pick % boards.length].id], offcutsAtHand: [{ length: 1500, width: size[1] }] },
  };
  return { plan, changes: changes[kind] };
}
