import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp, numberOf } from '../rules/ruleValue.js';
import { fromGrid } from '../survey/grid.js';
import { problem, refuse } from '../survey/inputError.js';
import type { Direction, Joist, JoistDescription, JoistsByMarks } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import { centreAt, directionOf, frameOf } from './frame.js';
import { type Inference, inferJoistsIn } from './inferJoists.js';
import { frameExtent } from './joistLine.js';
import { joistsAt } from './joistsFromPositions.js';
import { evenJoists } from './joistsFromSpacing.js';

/** The joists of a job, however they were described. */
export interface LocatedJoists {
  readonly joists: readonly Joist[];
  readonly direction: Direction;
  readonly findings: readonly Finding[];
  /** Where the joists come from, when they were inferred from marks. */
  readonly inference?: Inference;
}

/** Turns any description of the joists into joists, and says what was assumed. The input has passed its door. */
export function locateJoists(room: Room, description: JoistDescription, rules: RuleSet): LocatedJoists {
  if (!Array.isArray(description) && 'marks' in description) return joistsFromMarks(room, description, rules);
  const joists = joistsOf(room, description);
  const direction =
    'direction' in description && description.direction !== undefined ? description.direction : directionOf(joists);
  const assumed =
    !Array.isArray(description) && (description as { width?: number }).width === undefined
      ? [finding('joist-width-assumed', 'note', { value: joists[0].width, unit: 'mm' })]
      : [];
  return { joists, direction, findings: [...assumed, ...longBays(room, joists, direction, rules)] };
}

function joistsOf(room: Room, description: JoistDescription): readonly Joist[] {
  if (Array.isArray(description)) return inOrderAcross(description as readonly Joist[]);
  if ('spacing' in description) return evenJoists(room, description, 'joists.');
  if ('positions' in description) return joistsAt(room, description, 'joists.');
  throw new Error('joists from marks are inferred before');
}

/** A list of joists in order across the room, so that nothing depends on the order in which they were listed. */
function inOrderAcross(joists: readonly Joist[]): Joist[] {
  const frame = frameOf(directionOf(joists));
  const place = ({ start, end }: Joist): number => frame.into(start).u + frame.into(end).u;
  return [...joists].sort((a, b) => place(a) - place(b) || (a.id < b.id ? -1 : 1));
}

function joistsFromMarks(room: Room, description: JoistsByMarks, rules: RuleSet): LocatedJoists {
  const inference = inferJoistsIn({ room, ...description }, 'joists.');
  const { joists, direction, findings } = inference;
  if (joists.length === 0) {
    refuse(problem('no-joists', 'joists.marks', 'at least one mark on a joist', `${description.marks.length} marks on none`));
  }
  return { joists, direction, inference, findings: [...findings, ...longBays(room, joists, direction, rules)] };
}

/** A bay beside a wall that is long enough to hide a joist. */
function longBays(room: Room, joists: readonly Joist[], direction: Direction, rules: RuleSet): Finding[] {
  const { near, far, low, high } = frameExtent(room, direction);
  const frame = frameOf(direction);
  const middle = Math.round((low + high) / 2);
  const centres = joists.map((joist) => ({ joist, centre: centreAt(joist, frame, middle) }));
  const limit = numberOf(rules, 'perimeter.probeBay');
  const { source } = lookUp(rules, 'perimeter.probeBay') as { source: Finding['source'] };
  const first = centres.reduce((least, each) => (each.centre < least.centre ? each : least));
  const last = centres.reduce((greatest, each) => (each.centre > greatest.centre ? each : greatest));
  const bay = (length: number, joist: Joist, beside: number): Finding[] => {
    const value = fromGrid(length);
    if (value <= limit) return [];
    const { x, y } = frame.back(beside, middle);
    const at = { x: fromGrid(x), y: fromGrid(y) };
    return [finding('joist-probe-last-bay', 'warning', { where: { joist: joist.id, at }, value, limit, unit: 'mm', source })];
  };
  return [
    ...bay(first.centre - near, first.joist, Math.round((near + first.centre) / 2)),
    ...bay(far - last.centre, last.joist, Math.round((last.centre + far) / 2)),
  ];
}
