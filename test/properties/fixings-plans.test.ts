import { test } from '@fast-check/vitest';
import { type Finding, type FixingLine, type Joist, type Piece, placeFixings, type RuleKey, ruleValue } from 'soffitwright';
import { describe, expect } from 'vitest';
import { anyRowPlan, type RowPlan } from '../generators/rowPlans.js';

const SEED = 20_261_125;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

/** Thousandths of a mm, so that comparing is exact. */
const exact = (mm: number): number => Math.round(mm * 1000);

interface Place {
  /** Across the joists and along them. */
  readonly u: number;
  readonly v: number;
}

interface Box {
  readonly near: number;
  readonly far: number;
  readonly low: number;
  readonly high: number;
}

interface Seen {
  readonly plan: RowPlan;
  readonly place: (point: { readonly x: number; readonly y: number }) => Place;
  readonly limit: (key: RuleKey) => number;
}

/** A plan as somebody sees it who checks it by hand. Shares nothing with the code that placed the screws. */
function seen(plan: RowPlan): Seen {
  const place: Seen['place'] = ({ x, y }) =>
    plan.direction === 'y' ? { u: exact(x), v: exact(y) } : { u: exact(y), v: exact(x) };
  const middles = plan.joists
    .filter(({ kind }) => kind !== 'trimmer')
    .map(({ start, end }) => (place(start).u + place(end).u) / 2)
    .sort((a, b) => a - b);
  const centres = Math.max(...middles.slice(1).map((at, i) => at - middles[i])) / 1000;
  const found = new Map<RuleKey, number>();
  const limit = (key: RuleKey): number => {
    const known =
      found.get(key) ?? exact(ruleValue(plan.rules, key, { fixing: 'screw', boardThickness: 12.5, centres }).value ?? 0);
    found.set(key, known);
    return known;
  };
  return { plan, place, limit };
}

function boxOf(outline: readonly { readonly x: number; readonly y: number }[], place: Seen['place']): Box {
  const places = outline.map(place);
  const [us, vs] = [places.map(({ u }) => u), places.map(({ v }) => v)];
  return { near: Math.min(...us), far: Math.max(...us), low: Math.min(...vs), high: Math.max(...vs) };
}

const distanceTo = ({ near, far, low, high }: Box, { u, v }: Place): number => {
  const [du, dv] = [Math.max(near - u, u - far, 0), Math.max(low - v, v - high, 0)];
  return Math.sqrt(du * du + dv * dv);
};

function centreOf(joist: Joist, v: number, place: Seen['place']): number {
  const [start, end] = [place(joist.start), place(joist.end)];
  return start.u + ((end.u - start.u) * (v - start.v)) / (end.v - start.v);
}

const isTrimmer = ({ kind }: Joist): boolean => kind === 'trimmer';

/** Joists under a piece in order across it: those beneath it, and those that its butt joints are on. */
function under(piece: Piece, { plan, place }: Seen): Joist[] {
  const { near, far, low, high } = boxOf(piece.outline, place);
  const at = (joist: Joist): number => centreOf(joist, (low + high) / 2, place);
  return plan.joists
    .filter((joist) => !isTrimmer(joist))
    .filter((joist) => (near < at(joist) && at(joist) < far) || piece.ends.some((end) => end.joist === joist.id))
    .sort((a, b) => at(a) - at(b));
}

/** The greatest spacing that the rules allow on a joist under a piece. */
function spacingOn(joist: Joist, piece: Piece, joists: readonly Joist[], { limit }: Seen): number {
  const ends = [...(joist === joists[0] ? [piece.ends[0]] : []), ...(joist === joists[joists.length - 1] ? [piece.ends[1]] : [])];
  const closer = ends.some(({ meets }) => meets !== 'wall')
    ? limit('fixing.boardEnd')
    : ends.length > 0
      ? limit('fixing.perimeter')
      : limit('fixing.field');
  return Math.min(closer, limit('fixing.field'));
}

/** Stretches without a screw that are longer than the rule, one for each that nothing is said of. */
function gapFaults(piece: Piece, screws: readonly Place[], joist: Joist, spacing: number, said: boolean, at: Seen): string[] {
  const { low, high } = boxOf(piece.outline, at.place);
  const marks = screws.map(({ v }) => v).sort((a, b) => a - b);
  const who = `${piece.id} on ${joist.id}`;
  if (marks.length === 0) return said ? [] : [`${who}: no screws`];
  const floating = at.limit('fixing.floatingEdgeDistance');
  const places = [low, ...marks, high];
  return places.slice(1).flatMap((to, i) => {
    const from = places[i];
    const isEdge = i === 0 || i === places.length - 2;
    const most = isEdge && !isClosed(from, to, joist, at) ? Math.min(floating, Math.max(spacing, exact(13))) : spacing;
    return to - from <= most || (to - from > spacing && said) ? [] : [`${who}: ${to - from} of ${most} at ${from}`];
  });
}

/** Whether a zone without screws reaches the joist between two places. */
function isClosed(from: number, to: number, joist: Joist, { plan, place }: Seen): boolean {
  return plan.noFix.some((zone) => {
    if (!('centre' in zone)) return true;
    const { u, v } = place(zone.centre);
    const [reach, half] = [exact(zone.diameter / 2), exact(joist.width / 2)];
    return v + reach >= from && v - reach <= to && Math.abs(u - centreOf(joist, v, place)) <= reach + half;
  });
}

/** What is wrong with one screw: out of its timber, too near an edge, in a zone. */
function screwFaults(at: Place, piece: Piece, joist: Joist, excused: boolean, { plan, place, limit }: Seen): string[] {
  const { near, far, low, high } = boxOf(piece.outline, place);
  const edge = { bound: limit('fixing.boundEdgeDistance'), cut: limit('fixing.cutEdgeDistance') };
  const who = `${piece.id} on ${joist.id} at ${at.u}, ${at.v}: `;
  const off = isTrimmer(joist) ? Math.abs(at.v - place(joist.start).v) : Math.abs(at.u - centreOf(joist, at.v, place));
  const toEnd = Math.min(at.u - near, far - at.u);
  const zone = plan.noFix.find((each) => {
    if (!('centre' in each)) return false;
    const { u, v } = place(each.centre);
    return (at.u - u) * (at.u - u) + (at.v - v) * (at.v - v) < exact(each.diameter / 2) * exact(each.diameter / 2);
  });
  return [
    // A place is rounded to a thousandth, the line of an askew joist is not.
    ...(off > exact(joist.width / 2) - limit('fixing.timberEdgeDistance') + 1 ? [`${who}${off} from the middle`] : []),
    ...(at.v - low < edge[piece.edges.low] ? [`${who}${at.v - low} from the low edge`] : []),
    ...(high - at.v < edge[piece.edges.high] ? [`${who}${high - at.v} from the high edge`] : []),
    ...(toEnd < (excused ? 1 : edge.cut - 1) ? [`${who}${toEnd} from the end`] : []),
    ...(piece.holes ?? []).flatMap((hole) =>
      distanceTo(boxOf(hole, place), at) < edge.cut - 1 ? [`${who}too near the hatch`] : [],
    ),
    ...(zone ? [`${who}in a zone`] : []),
  ];
}

const isSaid = (findings: readonly Finding[], code: string, piece: Piece, joist: Joist): boolean =>
  findings.some(({ code: each, where }) => each === code && where?.piece === piece.id && where.joist === joist.id);

/** The marks that a person makes who reads "first at 12, then every 196" along a board that is so wide. */
function readAloud(text: string, count: number): number[] {
  const one = /^one at ([\d.]+)$/.exec(text);
  if (one) return [exact(Number(one[1]))];
  const read = /^first at ([\d.]+), then (.*)$/.exec(text);
  if (!read) throw new Error(text);
  const marks = [exact(Number(read[1]))];
  const every = /^every ([\d.]+)$/.exec(read[2]);
  const steps = every
    ? new Array<number>(count - 1).fill(Number(every[1]))
    : read[2].split(', ').flatMap((part) => {
        const times = /^(\d+) times ([\d.]+)$/.exec(part);
        return times ? new Array<number>(Number(times[1])).fill(Number(times[2])) : [Number(part)];
      });
  for (const step of steps) marks.push(marks[marks.length - 1] + exact(step));
  return marks;
}

/** Everything wrong with the screws of a plan, in words. */
function faultsOf(plan: RowPlan): string[] {
  const { direction: _, ...request } = plan;
  const { positions, lines, count, findings } = placeFixings({ ...request, boardThickness: 12.5 });
  const view = seen(plan);
  const { place } = view;
  const byLine = new Map<string, Place[]>();
  for (const screw of positions) {
    const key = `${screw.piece} ${screw.joist}`;
    byLine.set(key, [...(byLine.get(key) ?? []), place(screw)]);
  }
  const faults: string[] = [];
  for (const piece of plan.layout.pieces) {
    const joists = under(piece, view);
    for (const joist of plan.joists) {
      const screws = byLine.get(`${piece.id} ${joist.id}`) ?? [];
      const excused = isSaid(findings, 'fixing-edge', piece, joist);
      for (const screw of screws) faults.push(...screwFaults(screw, piece, joist, excused, view));
      if (!joists.includes(joist)) continue;
      const said = isSaid(findings, 'fixing-gap', piece, joist);
      faults.push(...gapFaults(piece, screws, joist, spacingOn(joist, piece, joists, view), said, view));
    }
  }
  if (count !== positions.length) faults.push('the count is wrong');
  const dry = findings.filter(({ code }) => code === 'fixing-gap' && plan.noFix.length === 0);
  return [...faults, ...dry.map(({ message }) => message), ...lines.flatMap((line) => textFaults(line, lines, byLine, view))];
}

/** A line read aloud must give the same marks as the positions. */
function textFaults(
  line: FixingLine,
  lines: readonly FixingLine[],
  byLine: ReadonlyMap<string, Place[]>,
  { plan, place }: Seen,
): string[] {
  const piece = plan.layout.pieces.find(({ id }) => id === line.piece);
  const joist = plan.joists.find(({ id }) => id === line.joist);
  if (piece === undefined || joist === undefined) return [`${line.piece} or ${line.joist} is not there`];
  if (isTrimmer(joist) || lines.filter((each) => each.piece === line.piece && each.joist === line.joist).length > 1) return [];
  const { low } = boxOf(piece.outline, place);
  const marks = (byLine.get(`${line.piece} ${line.joist}`) ?? []).map(({ v }) => v - low).sort((a, b) => a - b);
  const read = readAloud(line.text, line.count);
  return JSON.stringify(read) === JSON.stringify(marks)
    ? []
    : [`${line.piece} on ${line.joist}: ${line.text}, but ${marks.join(' ')}`];
}

describe('screws of 2,000 ceilings laid in rows', { timeout: 180_000 }, () => {
  test.prop([anyRowPlan], runs(2000))(
    'no gap exceeds the rule, every screw is in its timber and its board by the stated distances, every line reads as it is placed',
    (plan) => {
      expect(faultsOf(plan)).toEqual([]);
    },
  );
});
