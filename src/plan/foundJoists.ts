import { frameOf } from '../joists/frame.js';
import { frameExtent, joistLine } from '../joists/joistLine.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { InputError, type Problem, problem } from '../survey/inputError.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import type { FoundJoist, Replanning } from './replanRequest.js';

/**
 * The joists of a plan as they turned out to be: those that were found where somebody found them, those that are not there left
 * out. A joist that somebody found is as good as measured.
 *
 * @throws InputError when a joist that is not there is none of the plan's, one is found outside the room, or none is left
 */
export function foundJoists(
  room: Room,
  direction: Direction,
  joists: readonly Joist[],
  { found = [], missing = [] }: Pick<Replanning, 'found' | 'missing'>,
): Joist[] {
  const problems: Problem[] = [];
  const known = new Set(joists.map(({ id }) => id));
  missing.forEach((id, i) => {
    if (!known.has(id)) problems.push(problem('joist-unknown', `changes.missing[${i}]`, 'the id of a joist of the plan', id));
  });
  found.forEach((each, i) => {
    problems.push(...problemsOf(each, `changes.found[${i}]`, found.slice(0, i), missing, frameExtent(room, direction)));
  });
  const moved = new Map(found.map((each) => [each.joist, each]));
  const added = found.filter(({ joist }) => !known.has(joist)).flatMap((each) => lineOf(room, direction, each, joists[0]));
  const left = [
    ...joists
      .filter(({ id }) => !missing.includes(id))
      .map((joist) => {
        const to = moved.get(joist.id);
        return to === undefined ? joist : movedTo(joist, to, direction);
      }),
    ...added,
  ];
  if (left.length === 0)
    problems.push(problem('no-joists', 'changes.missing', 'at least one joist that is there', 'all of them'));
  if (problems.length > 0) throw new InputError(problems);
  return left;
}

function problemsOf(
  { joist, at, atStart, atEnd }: FoundJoist,
  path: string,
  before: readonly FoundJoist[],
  missing: readonly string[],
  { near, far }: { readonly near: number; readonly far: number },
): Problem[] {
  const both = atStart !== undefined && atEnd !== undefined;
  const some = atStart !== undefined || atEnd !== undefined;
  if ((at === undefined && !both) || (at !== undefined && some)) {
    return [problem('missing', path, 'either at, or atStart and atEnd', at === undefined ? 'one of two' : 'both')];
  }
  if (missing.includes(joist) || before.some((each) => each.joist === joist)) {
    return [problem('repeated-joist', `${path}.joist`, 'each joist once, found or missing', joist)];
  }
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

/** A joist that nobody expected runs through the whole room. */
function lineOf(room: Room, direction: Direction, { joist, at, atStart, atEnd, width }: FoundJoist, like: Joist): Joist[] {
  const places = { atStart: at ?? atStart ?? 0, atEnd: at ?? atEnd ?? 0 };
  return joistLine(room, direction, places, { id: joist, width: width ?? like.width, ...MEASURED }).map(
    (stretch) => stretch.joist,
  );
}
