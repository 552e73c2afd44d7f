import type { Finding } from '../../rules/finding.js';
import { toGrid } from '../../survey/grid.js';
import type { Opening } from '../../survey/room.js';
import type { Corner } from '../openingsInPieces.js';
import { distanceToOpening } from './distanceToOpening.js';
import { givenRule } from './givenRule.js';
import { buttLines, type JointLine, longLines } from './jointLines.js';
import { inFrame, type LaidCeiling, type LaidPart } from './laidCeiling.js';
import { type Near, nearestLines } from './nearestLines.js';
import { lineAt } from './stretchesAt.js';
import { tellNear } from './tellNear.js';
import { turnedAbout } from './wallsFaced.js';

/** Joints too near a light or another opening, and joints in line with a corner of a hatch, from which they would crack. */
export function openingJointFindings({ set, room, parts }: LaidCeiling): Finding[] {
  const openings = room.openings ?? [];
  if (openings.length === 0) return [];
  const [beside, inLine] = [givenRule(set, 'opening.jointClearance'), givenRule(set, 'hatch.cornerClearance')];
  const gap = givenRule(set, 'edgeJoint.gap').steps + givenRule(set, 'cut.tolerance').steps;
  return parts.flatMap((part) => {
    const lines = [...buttLines(part), ...longLines(part, gap)];
    return openings.flatMap((opening, index) => {
      const other = `${opening.kind} ${opening.id ?? index + 1}`;
      const [code, rule, measure] =
        opening.kind === 'hatch'
          ? (['joint-near-hatch-corner', inLine, nearCorner] as const)
          : (['joint-near-opening', beside, nearSide] as const);
      return nearestLines(lines, (line) => measure(part, opening, line, rule.steps)).map((near) =>
        tellNear(code, part.frame, near, rule, { other }),
      );
    });
  });
}

function nearSide({ frame }: LaidPart, opening: Opening, { from, to }: JointLine, limit: number): Near | undefined {
  const near = distanceToOpening(frame, opening, from, to);
  return near.away < limit ? near : undefined;
}

/** A joint in line with a corner, or nearly, that reaches to within the same distance of it. */
function nearCorner({ frame }: LaidPart, opening: Opening, { kind, from, to }: JointLine, limit: number): Near | undefined {
  const turn = kind === 'butt joint' ? (corner: Corner): Corner => corner : turnedAbout;
  const [p, q] = [from, to].map(turn);
  let nearest: Near | undefined;
  for (const given of cornersOf(frame, opening)) {
    const corner = turn(given);
    const level = Math.max(p.v, Math.min(q.v, corner.v));
    const away = Math.abs(lineAt(p, q, corner.v) - corner.u);
    if (Math.abs(level - corner.v) >= limit || away >= Math.min(limit, nearest?.away ?? limit)) continue;
    nearest = { away, place: given };
  }
  return nearest;
}

/** Of a round hatch, those of the square about it. */
function cornersOf(frame: LaidPart['frame'], opening: Opening): Corner[] {
  if ('outline' in opening) return opening.outline.map((point) => inFrame(frame, point));
  const { u, v } = inFrame(frame, opening.centre);
  const half = toGrid(opening.diameter / 2);
  return [-half, half].flatMap((du) => [-half, half].map((dv) => ({ u: u + du, v: v + dv })));
}
