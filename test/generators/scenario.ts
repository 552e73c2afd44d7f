import {
  type BoardLayout,
  type BoardStock,
  checkLayout,
  type Finding,
  type Joist,
  type JoistsBySpacing,
  type PlacementRequest,
  type Point,
} from 'soffitwright';

/** Rooms as people bring them, told in numbers. */

/** Gaps of 3 at the walls and at butt joints. */
export const GAPS = { 'perimeter.gap': 3, 'joint.gap': 3 } as const;

export const stock = (length: number, width = 1200, more: Partial<BoardStock> = {}): BoardStock => ({
  id: `${length} x ${width}`,
  length,
  width,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
  ...more,
});

/** Joists along y from the first on, and one beside the far wall. */
export const even = (first: number, spacing: number, last?: number, width = 50): JoistsBySpacing => ({
  direction: 'y',
  first,
  spacing,
  width,
  ...(last !== undefined && { last }),
});

/** A joist along y, from one place to another of it. */
export const joistAt = (id: string, x: number, from: number, to: number): Joist => ({
  id,
  start: { x, y: from },
  end: { x, y: to },
  width: 50,
  sd: 0,
  presence: 1,
  known: 'given',
});

/** Corners in turn. */
export const ring = (...at: readonly (readonly [number, number])[]): Point[] => at.map(([x, y]) => ({ x, y }));

/** Errors that the verifier finds in a layout of the placement: there must be none. */
export function errorsIn({ room, joists, boards, rules, lining }: PlacementRequest, layout: BoardLayout): string[] {
  const findings = checkLayout({ room, joists, boards, layout, ...(rules && { rules }), ...(lining && { lining }) });
  return findings.filter(({ severity }) => severity === 'error').map(({ message }) => message);
}

/** Where the butt joints are across the joists, in order. */
export const buttJoints = ({ pieces }: BoardLayout): number[] =>
  pieces.flatMap(({ ends }) => (ends[0].meets === 'board' ? [ends[0].position] : [])).sort((a, b) => a - b);

export const rowsOf = ({ rows }: BoardLayout): number[] => rows.map(({ width }) => width).sort((a, b) => b - a);

export const codesOf = ({ findings }: { readonly findings: readonly Finding[] }): string[] => findings.map(({ code }) => code);
