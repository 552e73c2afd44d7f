import { type Finding, finding, type Where } from '../rules/finding.js';
import { fromGrid } from '../survey/grid.js';
import type { Layer } from '../survey/layer.js';
import { type Ceiling, type GridRule, gridRule } from './ceiling.js';
import { distance } from './distance.js';
import { placeOf } from './place.js';
import { type Box, boxOf, type GridPoint, ringOf } from './solid.js';
import type { Structure } from './structure.js';

/** A new joint as a line on the ceiling. */
interface JointLine {
  readonly kind: 'butt joint' | 'long joint';
  readonly from: GridPoint;
  readonly to: GridPoint;
  readonly where: Where;
  /** Joints of one row line are one joint to whatever is near. */
  readonly key: string;
}

/** New joints too near joints of the old ceiling, openings, or corners of a hatch. */
export function nearby(ceiling: Ceiling, structure: Structure, lining: readonly Layer[]): Finding[] {
  const lines = jointLines(ceiling, structure);
  return [...overOldJoints(ceiling, lines, lining), ...nearOpenings(ceiling, lines), ...nearHatchCorners(ceiling, lines)];
}

function jointLines({ about }: Ceiling, { endJoints, edgeJoints, pieces }: Structure): JointLine[] {
  const id = (index: number): string => about[index].id;
  const ends = endJoints.map(({ first, second, low, high, atLow, atHigh }): JointLine => {
    const where = { pieces: [id(first), id(second)], row: pieces[first].row };
    return { kind: 'butt joint', from: { u: atLow, v: low }, to: { u: atHigh, v: high }, where, key: `end ${first} ${second}` };
  });
  const edges = edgeJoints.map(({ first, second, low, high, firstLow, secondLow, firstHigh, secondHigh }): JointLine => {
    const [from, to] = [Math.round((firstLow + secondLow) / 2), Math.round((firstHigh + secondHigh) / 2)];
    const where = { pieces: [id(first), id(second)], row: pieces[first].row };
    return {
      kind: 'long joint',
      from: { u: low, v: from },
      to: { u: high, v: to },
      where,
      key: `edge ${pieces[first].row} ${from}`,
    };
  });
  return [...ends, ...edges];
}

interface Near {
  readonly line: JointLine;
  readonly away: number;
  readonly place: GridPoint;
}

/** The nearest line of each joint that is nearer than the rule allows. */
function tooNear(
  lines: readonly JointLine[],
  rule: GridRule,
  measure: (line: JointLine) => Omit<Near, 'line'> | undefined,
): Near[] {
  const nearest = new Map<string, Near>();
  for (const line of lines) {
    const near = measure(line);
    if (near && near.away < rule.steps && near.away < (nearest.get(line.key)?.away ?? Infinity))
      nearest.set(line.key, { line, ...near });
  }
  return [...nearest.values()];
}

function told(code: string, { line, away, place }: Near, { steps, rule }: GridRule, { frame }: Ceiling, other: string): Finding {
  const { at, words } = placeOf(frame, place.u, place.v);
  return finding(code, rule.level === 'must' ? 'error' : 'warning', {
    where: { ...line.where, at },
    value: fromGrid(away),
    limit: fromGrid(steps),
    unit: 'mm',
    source: rule.source,
    words: { ...words, joint: line.kind, other },
  });
}

/** Joints that run the same way, one over the other. */
function overOldJoints(ceiling: Ceiling, lines: readonly JointLine[], lining: readonly Layer[]): Finding[] {
  const rule = gridRule(ceiling.rules, 'oldJoint.clearance');
  const old = lining.flatMap(({ joints = [] }, layer) => joints.map((ends) => ({ layer, ends: ringOf(ends, ceiling.frame) })));
  return old.flatMap(({ layer, ends }) => {
    const [a, b] = ends.length === 2 ? ends : [ends[0], ends[0]];
    return tooNear(lines, rule, (line) => beside(line, a, b)).map((near) =>
      told('joint-over-old-joint', near, rule, ceiling, `layer ${layer + 1} of the old ceiling`),
    );
  });
}

/** How far apart two lines are where they run side by side; nothing where they do not, or run across each other. */
function beside({ kind, from, to }: JointLine, a: GridPoint, b: GridPoint): Omit<Near, 'line'> | undefined {
  const turn = kind === 'butt joint';
  const view = ({ u, v }: GridPoint) => (turn ? { across: u, along: v } : { across: v, along: u });
  const [p, q, r, s] = [from, to, a, b].map(view);
  if (Math.abs(s.along - r.along) < Math.abs(s.across - r.across)) return undefined;
  const low = Math.max(Math.min(p.along, q.along), Math.min(r.along, s.along));
  const high = Math.min(Math.max(p.along, q.along), Math.max(r.along, s.along));
  if (low >= high) return undefined;
  const apart = (level: number): number => Math.round(acrossAt(r, s, level) - acrossAt(p, q, level));
  const [start, end] = [apart(low), apart(high)];
  const level = Math.abs(start) <= Math.abs(end) ? low : high;
  const across = Math.round(acrossAt(p, q, level));
  const away = start > 0 === end > 0 ? Math.min(Math.abs(start), Math.abs(end)) : 0;
  return { away, place: turn ? { u: across, v: level } : { u: level, v: across } };
}

interface Slant {
  readonly across: number;
  readonly along: number;
}

const acrossAt = (a: Slant, b: Slant, level: number): number =>
  a.along === b.along ? a.across : a.across + ((b.across - a.across) * (level - a.along)) / (b.along - a.along);

/** A hatch has a rule of its own, about its corners. */
function nearOpenings(ceiling: Ceiling, lines: readonly JointLine[]): Finding[] {
  const rule = gridRule(ceiling.rules, 'opening.jointClearance');
  return ceiling.openings.flatMap(({ index, rings: [ring] }) => {
    const { kind, id } = (ceiling.given.room.openings ?? [])[index];
    if (kind === 'hatch') return [];
    return tooNear(lines, rule, ({ from, to }) => {
      const away = Math.min(...ring.map((corner, i) => apart(from, to, corner, ring[(i + 1) % ring.length])));
      return { away, place: nearestOn(from, to, boxOf(ring)) };
    }).map((near) => told('joint-near-opening', near, rule, ceiling, `${kind} ${id ?? index + 1}`));
  });
}

/** Distance between two segments. */
function apart(a: GridPoint, b: GridPoint, c: GridPoint, d: GridPoint): number {
  const side = (p: GridPoint, q: GridPoint, r: GridPoint): number =>
    Math.sign((q.u - p.u) * (r.v - p.v) - (q.v - p.v) * (r.u - p.u));
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(
    distance(a, { from: c, to: d }),
    distance(b, { from: c, to: d }),
    distance(c, { from: a, to: b }),
    distance(d, { from: a, to: b }),
  );
}

/** The place of a segment that is level with the middle of a box, as near as the segment goes. */
function nearestOn(from: GridPoint, to: GridPoint, { u0, u1, v0, v1 }: Box): GridPoint {
  const within = (value: number, a: number, b: number): number => Math.max(Math.min(a, b), Math.min(Math.max(a, b), value));
  return { u: within((u0 + u1) / 2, from.u, to.u), v: within((v0 + v1) / 2, from.v, to.v) };
}

/** A joint in line with a corner of a hatch, or nearly, that reaches to within the same distance of it. */
function nearHatchCorners(ceiling: Ceiling, lines: readonly JointLine[]): Finding[] {
  const rule = gridRule(ceiling.rules, 'hatch.cornerClearance');
  return ceiling.openings.flatMap(({ index, rings: [ring] }) => {
    const { kind, id } = (ceiling.given.room.openings ?? [])[index];
    if (kind !== 'hatch') return [];
    return tooNear(lines, rule, (line) => {
      const gaps = ring.flatMap((corner) => {
        const turn = line.kind === 'butt joint';
        const inLine = turn ? line.from.u - corner.u : line.from.v - corner.v;
        const beyond = turn
          ? Math.max(line.from.v - corner.v, corner.v - line.to.v, 0)
          : Math.max(line.from.u - corner.u, corner.u - line.to.u, 0);
        return beyond < rule.steps ? [{ away: Math.abs(inLine), place: corner }] : [];
      });
      return gaps.reduce<Omit<Near, 'line'> | undefined>((best, gap) => (best && best.away <= gap.away ? best : gap), undefined);
    }).map((near) => told('joint-near-hatch-corner', near, rule, ceiling, `hatch ${id ?? index + 1}`));
  });
}
