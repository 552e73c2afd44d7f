import { type Finding, finding } from '../rules/finding.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import type { CandidateGroup } from './candidatesOf.js';
import type { Component } from './components.js';
import { frameOf } from './frame.js';
import { frameExtent } from './joistLine.js';
import { joistsInRoom } from './joistsInRoom.js';
import { type JoistBelief, shiftBetween } from './joistsOfComponents.js';
import { middleInRoom } from './middleInRoom.js';
import { nodeMeansOf } from './nodeMeans.js';

/** What the findings are made from. */
interface Told {
  readonly room: Room;
  readonly direction: Direction;
  readonly joists: readonly Joist[];
  readonly outliers: readonly number[];
  readonly believed: readonly { readonly belief: JoistBelief; readonly joist: Joist }[];
  /** Joists that probes looked for in vain. */
  readonly missed: readonly JoistBelief[];
  readonly groups: readonly CandidateGroup[];
  readonly width: { readonly value: number };
  readonly widthKnown: boolean;
}

/** A second candidate at least this probable leaves the first undecided. */
const UNDECIDED = 0.1;
/** Slope that is worth telling, mm in a metre. */
const ASKEW = 3;

/** What a person should know of the joists before anything is cut. */
export function inferenceFindings(told: Told): Finding[] {
  const { joists, groups, outliers, width, widthKnown } = told;
  if (joists.length === 0) return [finding('no-joist-found', 'warning')];
  const inferred = joists.filter(({ known }) => known === 'inferred');
  return [
    ...(widthKnown ? [] : [finding('joist-width-assumed', 'note', { value: width.value, unit: 'mm' })]),
    ...undecided(told),
    ...(groups[0].spacing === 'irregular' ? [finding('joists-irregular', 'warning')] : []),
    ...(inferred.length === 0
      ? []
      : [
          finding('joists-inferred', 'warning', {
            value: inferred.length,
            words: { joists: inferred.map(({ id }) => id).join(', ') },
          }),
        ]),
    ...missing(told),
    ...outliers.map((mark) => finding('mark-outlier', 'note', { where: { mark }, words: { number: mark + 1 } })),
    ...askew(told),
    ...doubled(told),
  ];
}

/** Two candidates that the marks do not tell apart, and where the next hole would. */
function undecided(told: Told): Finding[] {
  const [first, second] = told.groups;
  if (second === undefined || second.probability < UNDECIDED) return [];
  const limit = Math.round(first.probability * 100);
  const value = Math.round(second.probability * 100);
  if (first.direction !== second.direction) {
    return [
      finding('direction-undecided', 'warning', {
        value,
        limit,
        unit: '%',
        words: { first: first.direction, second: second.direction },
      }),
    ];
  }
  const words = { first: nameOf(first), second: nameOf(second), firstShare: limit, secondShare: value };
  const apart = farthestApart(told, first.components[0], second.components[0]);
  if (apart === undefined) return [finding('spacing-undecided', 'warning', { words })];
  return [finding('spacing-drifts-apart', 'warning', { ...apart, unit: 'mm', words })];
}

const nameOf = ({ spacing }: CandidateGroup): string => (spacing === 'irregular' ? 'no even spacing' : String(spacing));

/** The joist at the wall where two candidates that count the joists alike are farthest apart, and by how much. */
function farthestApart(
  { room, direction }: Told,
  one: Component,
  other: Component,
): Pick<Finding, 'value' | 'where'> | undefined {
  const shift = shiftBetween(one, other);
  if (shift === undefined) return undefined;
  const { fit, sight } = one.weighed;
  const { first, last } = joistsInRoom(fit, sight);
  const place = ({ weighed }: Component, number: number): number => nodeMeansOf(weighed.fit)(number - weighed.fit.system.origin);
  const ends = [first, last].map((joist) => {
    const number = joist + fit.system.origin;
    const at = place(one, number);
    return { at, apart: Math.abs(at - place(other, number + shift)) };
  });
  const worst = ends[1].apart >= ends[0].apart ? ends[1] : ends[0];
  return { value: Math.round(worst.apart), where: { at: placeOn(room, direction, worst.at) } };
}

/** A place on the line of a joist, so far from the near wall: in the middle of what of it is in the room; whole mm. */
function placeOn(room: Room, direction: Direction, fromWall: number): { readonly x: number; readonly y: number } {
  const frame = frameOf(direction);
  const { near, low, high } = frameExtent(room, direction);
  const v = middleInRoom(room, frame, near + toGrid(fromWall)) ?? (low + high) / 2;
  const { x, y } = frame.back(fromGrid(near) + fromWall, fromGrid(v));
  return { x: Math.round(x), y: Math.round(y) };
}

/** Where a joist of the row was looked for and not met: cut by a trimmer, or never there. */
const missing = ({ missed, room, direction }: Told): Finding[] =>
  missed.map(({ atMiddle, presence }) => {
    const at = placeOn(room, direction, atMiddle);
    return finding('joist-missing', 'warning', {
      value: Math.max(1, Math.round(presence * 100)),
      unit: '%',
      where: { at },
      words: at,
    });
  });

/** Joists that run off square, or that fan out. */
function askew({ believed, room, direction }: Told): Finding[] {
  const { low, high } = frameExtent(room, direction);
  const metres = fromGrid(high - low) / 1000;
  const slopes = believed.map(({ belief: { atStart, atEnd } }) => (atEnd - atStart) / metres);
  const [least, greatest] = [Math.min(...slopes), Math.max(...slopes)];
  const steepest = Math.round(Math.max(-least, greatest));
  const findings: Finding[] = [];
  if (steepest >= ASKEW) findings.push(finding('joists-askew', 'note', { value: steepest, unit: 'mm in a metre' }));
  const spread = Math.round((greatest - least) * metres);
  if (greatest - least >= ASKEW) findings.push(finding('joists-fan', 'note', { value: spread, unit: 'mm' }));
  return findings;
}

const doubled = ({ believed }: Told): Finding[] =>
  believed.flatMap(({ belief, joist: { id, width } }) =>
    belief.doubled ? [finding('joist-doubled', 'note', { where: { joist: id }, value: width, unit: 'mm' })] : [],
  );
