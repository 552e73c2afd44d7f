import { frameOf } from '../joists/frame.js';
import { frameExtent, joistLine } from '../joists/joistLine.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { InputError, type Problem, problem } from '../survey/inputError.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Point } from '../survey/point.js';
import type { Room } from '../survey/room.js';
import type { FoundJoist, Replanning } from './replanRequest.js';
import type { SettledJoists } from './settleJoists.js';

/** The joists of a zone, or of what lies outside all zones. */
interface Listed {
  readonly zone: string | undefined;
  readonly outline: readonly Point[];
  readonly direction: Direction;
  readonly joists: readonly Joist[];
}

/**
 * The joists of a plan as they turned out to be: those that were found where somebody found them, those that are not there left
 * out. A joist that somebody found is as good as measured. One that nobody expected is of the zone that its id begins with, or
 * else of the first part of the ceiling.
 *
 * @throws InputError when a joist that is not there is none of the plan's, one is found outside the room, or none is left
 */
export function foundJoists(
  { room, joists, parts }: SettledJoists,
  { found = [], missing = [] }: Pick<Replanning, 'found' | 'missing'>,
): Pick<SettledJoists, 'room' | 'joists'> {
  const problems: Problem[] = [];
  const lists = listsOf(room, joists, parts);
  const known = new Map(lists.flatMap((list) => list.joists.map(({ id }) => [id, list] as const)));
  missing.forEach((id, i) => {
    if (!known.has(id)) problems.push(problem('joist-unknown', `changes.missing[${i}]`, 'the id of a joist of the plan', id));
  });
  const listOf = ({ joist }: FoundJoist): Listed =>
    known.get(joist) ?? lists.find(({ zone }) => zone !== undefined && joist.startsWith(`${zone} `)) ?? lists[0];
  found.forEach((each, i) => {
    problems.push(...problemsOf(each, `changes.found[${i}]`, found.slice(0, i), missing, listOf(each)));
  });
  const anew = lists.map((list) => {
    const its = found.filter((each) => listOf(each) === list);
    return { ...list, joists: list.joists.length === 0 ? [] : joistsLeft(list, its, missing) };
  });
  anew.forEach(({ joists: left }, i) => {
    if (left.length === 0 && lists[i].joists.length > 0)
      problems.push(problem('no-joists', 'changes.missing', 'at least one joist that is there', 'all of them'));
  });
  if (problems.length > 0) throw new InputError(problems);
  const leftOf = (zone: string | undefined): readonly Joist[] => anew.find((each) => each.zone === zone)?.joists ?? [];
  const zones = room.zones?.map((each) => ({ ...each, joists: leftOf(each.id) }));
  return { room: zones ? { ...room, zones } : room, joists: leftOf(undefined) };
}

function listsOf({ outline }: Room, joists: readonly Joist[], parts: SettledJoists['parts']): Listed[] {
  const rest = parts.find(({ zone }) => zone === undefined);
  return [
    ...(rest ? [{ zone: undefined, outline, direction: rest.direction, joists }] : []),
    ...parts.flatMap((part) => (part.zone === undefined ? [] : [{ ...part, zone: part.zone }])),
  ];
}

function joistsLeft(list: Listed, found: readonly FoundJoist[], missing: readonly string[]): Joist[] {
  const { joists, direction } = list;
  const moved = new Map(found.map((each) => [each.joist, each]));
  const known = new Set(joists.map(({ id }) => id));
  const there = joists.filter(({ id }) => !missing.includes(id));
  const added = found.filter(({ joist }) => !known.has(joist));
  return [
    ...there.map((joist) => {
      const to = moved.get(joist.id);
      return to === undefined ? joist : movedTo(joist, to, direction);
    }),
    ...added.flatMap((each) => lineOf(list, each)),
  ];
}

function problemsOf(
  { joist, at, atStart, atEnd }: FoundJoist,
  path: string,
  before: readonly FoundJoist[],
  missing: readonly string[],
  { outline, direction }: Listed,
): Problem[] {
  const both = atStart !== undefined && atEnd !== undefined;
  const some = atStart !== undefined || atEnd !== undefined;
  if ((at === undefined && !both) || (at !== undefined && some)) {
    return [problem('missing', path, 'either at, or atStart and atEnd', at === undefined ? 'one of two' : 'both')];
  }
  if (missing.includes(joist) || before.some((each) => each.joist === joist)) {
    return [problem('repeated-joist', `${path}.joist`, 'each joist once, found or missing', joist)];
  }
  const { near, far } = frameExtent({ outline }, direction);
  const places = [at ?? atStart ?? 0, at ?? atEnd ?? 0];
  if (places.every((place) => toGrid(place) >= near && toGrid(place) <= far)) return [];
  return [
    problem('joist-outside-room', path, `a place within the room, ${fromGrid(near)} to ${fromGrid(far)}`, places.join(' to ')),
  ];
}

const MEASURED = { sd: 0, presence: 1, known: 'measured' } as const;

/** The joist runs as far as it did, elsewhere. */
function movedTo(
  { sdAtStart: _start, sdAtEnd: _end, ...joist }: Joist,
  { at, atStart, atEnd, width }: FoundJoist,
  direction: Direction,
): Joist {
  const frame = frameOf(direction);
  const end = (point: Joist['start'], across: number) => frame.back(across, frame.into(point).v);
  return {
    ...joist,
    ...MEASURED,
    start: end(joist.start, at ?? atStart ?? 0),
    end: end(joist.end, at ?? atEnd ?? 0),
    ...(width !== undefined && { width }),
  };
}

/** A joist that nobody expected runs through the whole of its part. */
function lineOf({ outline, direction, joists }: Listed, { joist, at, atStart, atEnd, width }: FoundJoist): Joist[] {
  const places = { atStart: at ?? atStart ?? 0, atEnd: at ?? atEnd ?? 0 };
  return joistLine({ outline }, direction, places, { id: joist, width: width ?? joists[0].width, ...MEASURED }).map(
    (stretch) => stretch.joist,
  );
}
