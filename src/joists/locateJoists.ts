import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Direction, Joist, JoistDescription, JoistsByMarks } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import { doubledJoists } from './doubledJoists.js';
import { directionOf, frameOf } from './frame.js';
import { type Inference, inferJoistsIn } from './inferJoists.js';
import { ASSUMED_WIDTH, type JoistsWanted } from './joistLine.js';
import { joistsAt } from './joistsFromPositions.js';
import { evenJoists } from './joistsFromSpacing.js';
import { longBays } from './longBays.js';
import { overlappingJoists } from './overlappingJoists.js';
import { spacingDrift } from './spacingDrift.js';

/** The joists of a job, however they were described. */
export interface LocatedJoists {
  readonly joists: readonly Joist[];
  readonly direction: Direction;
  readonly findings: readonly Finding[];
  /** Where the joists come from, when they were inferred from marks. */
  readonly inference?: Inference;
}

/** Turns any description of the joists into joists, and says what was assumed. The input has passed its door. */
export function locateJoists(
  room: Room,
  description: JoistDescription,
  rules: RuleSet,
  wanted: JoistsWanted = {},
): LocatedJoists {
  const { path = 'joists' } = wanted;
  if (isList(description) && description.length === 0)
    refuse(problem('too-small', path, 'at least 1 in the list', 'an empty list'));
  if ('marks' in description) return joistsFromMarks(room, description, rules, wanted);
  const joists = doubledJoists(joistsOf(room, description, wanted));
  const direction = 'direction' in description ? description.direction : directionOf(joists);
  const assumed =
    !isList(description) && description.width === undefined
      ? [finding('joist-width-assumed', 'note', { value: ASSUMED_WIDTH, unit: 'mm' })]
      : [];
  return {
    joists,
    direction,
    findings: [
      ...assumed,
      ...doubledNotes(joists),
      ...overlappingJoists(joists),
      ...('spacing' in description ? spacingDrift(room, description, rules) : []),
      ...longBays(wanted.area ?? [room.outline], room.openings ?? [], joists, direction, rules),
    ],
  };
}

const doubledNotes = (joists: readonly Joist[]): Finding[] =>
  joists
    .filter(({ seams }) => seams !== undefined)
    .map(({ id, width }) => finding('joist-doubled', 'note', { where: { joist: id }, value: width, unit: 'mm' }));

const isList = (description: JoistDescription): description is readonly Joist[] => Array.isArray(description);

function joistsOf(
  room: Room,
  description: Exclude<JoistDescription, JoistsByMarks>,
  { path = 'joists', prefix = '', area }: JoistsWanted,
): readonly Joist[] {
  if (isList(description)) return inOrderAcross(description);
  const locate = { path: `${path}.`, prefix, ...(area && { area }) };
  return 'spacing' in description ? evenJoists(room, description, locate) : joistsAt(room, description, locate);
}

/** A list of joists in order across the room, so that nothing depends on the order in which they were listed. */
function inOrderAcross(joists: readonly Joist[]): Joist[] {
  const frame = frameOf(directionOf(joists));
  const place = ({ start, end }: Joist): number => frame.into(start).u + frame.into(end).u;
  return [...joists].sort((a, b) => place(a) - place(b) || (a.id < b.id ? -1 : 1));
}

function joistsFromMarks(room: Room, description: JoistsByMarks, rules: RuleSet, wanted: JoistsWanted): LocatedJoists {
  const { path = 'joists', prefix = '', area } = wanted;
  const inference = inferJoistsIn({ room, ...description }, { path: `${path}.`, prefix, ...(area && { area }) });
  const { joists, direction, findings } = inference;
  if (joists.length === 0) {
    refuse(problem('no-joists', `${path}.marks`, 'at least one mark on a joist', `${description.marks.length} marks on none`));
  }
  return {
    joists,
    direction,
    inference,
    findings: [...findings, ...longBays(wanted.area ?? [room.outline], room.openings ?? [], joists, direction, rules)],
  };
}
