import type { FramePoint } from '../../joists/frame.js';
import type { RuleSet } from '../../rules/ruleSet.js';
import { numberOf } from '../../rules/ruleValue.js';
import { toGrid } from '../../survey/grid.js';
import { buttJoints } from './buttJoints.js';
import type { LaidPart, PieceUp } from './laidCeiling.js';
import { lineAt } from './stretchesAt.js';

/** A joint between two boards as a line on the ceiling. */
export interface JointLine {
  readonly kind: 'butt joint' | 'long joint';
  readonly pieces: readonly [string, string];
  readonly row: number;
  readonly joist?: string;
  /** The end with the lesser coordinate along the joint first. */
  readonly from: FramePoint;
  readonly to: FramePoint;
}

/** All joints of a part of the ceiling. */
export const jointLines = (part: LaidPart, set: RuleSet): JointLine[] => [
  ...buttLines(part),
  ...longLines(part, toGrid(numberOf(set, 'edgeJoint.gap') + numberOf(set, 'cut.tolerance'))),
];

/** The middle of the gap at each butt joint, as far as both boards reach along it. */
export function buttLines({ pieces }: LaidPart): JointLine[] {
  return buttJoints(pieces).flatMap(([before, after]): JointLine[] => {
    const [ends, starts] = [endOf(before, 1), endOf(after, 0)];
    const { joist, position } = after.piece.ends[0];
    const low = Math.max(before.low, after.low, ends?.low.v ?? -Infinity, starts?.low.v ?? -Infinity);
    const high = Math.min(before.high, after.high, ends?.high.v ?? Infinity, starts?.high.v ?? Infinity);
    if (low >= high) return [];
    const at = (v: number): FramePoint => {
      const sides = [ends, starts].flatMap((each) => (each === undefined ? [] : [lineAt(each.low, each.high, v)]));
      const u = sides.length === 2 ? Math.round((sides[0] + sides[1]) / 2) : toGrid(position);
      return { u, v };
    };
    const { row } = before.piece;
    return [
      {
        kind: 'butt joint',
        pieces: [before.piece.id, after.piece.id],
        row,
        ...(joist !== undefined && { joist }),
        from: at(low),
        to: at(high),
      },
    ];
  });
}

/** How far the cut of an end may be from the middle of its joint, mm: more than half of any gap, less than any notch. */
const BESIDE = 20;

/** The side of a piece that lies along its butt joint: its two corners, the lower first. */
function endOf({ piece, outline }: PieceUp, end: 0 | 1): { readonly low: FramePoint; readonly high: FramePoint } | undefined {
  const { position, rake = 0 } = piece.ends[end];
  const reach = toGrid(BESIDE + Math.abs(rake) / 2);
  const corners = outline.filter(({ u }) => Math.abs(u - toGrid(position)) <= reach);
  if (corners.length < 2) return undefined;
  const low = corners.reduce((least, each) => (each.v < least.v ? each : least));
  const high = corners.reduce((greatest, each) => (each.v > greatest.v ? each : greatest));
  return low.v < high.v ? { low, high } : undefined;
}

/** Where long edges of neighbouring rows lie together; one line for each two pieces, or more where something parts them. */
function longLines({ pieces, rows }: LaidPart, gap: number): JointLine[] {
  return rows.slice(1).flatMap(({ row }) => {
    const [below, above] = [row - 1, row].map((number) => pieces.filter(({ piece }) => piece.row === number));
    return below.flatMap((lower) =>
      above
        .filter((upper) => Math.max(lower.near, upper.near) < Math.min(lower.far, upper.far))
        .flatMap((upper) => meeting(lower, upper, gap)),
    );
  });
}

function meeting(lower: PieceUp, upper: PieceUp, gap: number): JointLine[] {
  return levelSides(lower).flatMap(([a, b]) =>
    levelSides(upper).flatMap(([c, d]): JointLine[] => {
      const [from, to] = [Math.max(a.u, c.u), Math.min(b.u, d.u)];
      if (from >= to || c.v < a.v || c.v - a.v > gap) return [];
      const v = Math.round((a.v + c.v) / 2);
      return [
        {
          kind: 'long joint',
          pieces: [lower.piece.id, upper.piece.id],
          row: lower.piece.row,
          from: { u: from, v },
          to: { u: to, v },
        },
      ];
    }),
  );
}

/** Sides of a piece that run square to the joists, each from its lesser end. */
const levelSides = ({ outline }: PieceUp): (readonly [FramePoint, FramePoint])[] =>
  outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length];
    return a.v === b.v ? [a.u < b.u ? ([a, b] as const) : ([b, a] as const)] : [];
  });
