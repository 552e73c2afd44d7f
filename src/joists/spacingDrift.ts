import { type Finding, finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { numberOf } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import type { JoistsBySpacing } from '../survey/joist.js';
import type { Room } from '../survey/room.js';
import { usualAssumptions } from './assumptions.js';
import { frameOf } from './frame.js';
import { ASSUMED_WIDTH, frameExtent } from './joistLine.js';
import { middleInRoom } from './middleInRoom.js';

/** Usual spacings no further apart than this, in mm, are taken for each other: 400 for 16 in; common practice, no source. */
const ALIKE = 10;
/** How near its place under a spacing the last joist stands for it to speak for that spacing, mm; common practice, no source. */
const NEAR = 10;

/**
 * Joists set out from the first one only, at a spacing that is easily taken for another: how far apart the two put the joist by the
 * far wall. Where the last joist was given it says which: nothing is said where it bears the spacing out, or neither.
 */
export function spacingDrift(room: Room, description: JoistsBySpacing, rules: RuleSet): Finding[] {
  const { direction, first, spacing, width = ASSUMED_WIDTH, last } = description;
  const frame = frameOf(direction);
  const { near, far, low, high } = frameExtent(room, direction);
  const start = first + Math.max(0, Math.ceil(-first / spacing)) * spacing;
  const end = last ?? fromGrid(far - near);
  const others = usualAssumptions.usual
    .map((usual) => usual.spacing)
    .filter((other) => other !== spacing && Math.abs(other - spacing) <= ALIKE);
  const bays = Math.floor((end - start) / spacing);
  // What an end joint may be off on this timber: less than that and the spacing does not matter.
  const edges = numberOf(rules, 'fixing.cutEdgeDistance') + numberOf(rules, 'fixing.timberEdgeDistance');
  const tolerance = Math.max(0, (width - numberOf(rules, 'joint.gap')) / 2 - edges);
  const findings = others.flatMap((other): Finding[] => {
    const contradicted = last !== undefined && isMultiple(last - start, other) && !isMultiple(last - start, spacing);
    if (last !== undefined && !contradicted) return [];
    const count = contradicted ? Math.round((last - start) / other) : bays;
    const value = Math.round(contradicted ? Math.abs(last - start - count * spacing) : count * Math.abs(other - spacing));
    if (value <= tolerance) return [];
    const u = near + toGrid(start + count * spacing);
    const { x, y } = frame.back(fromGrid(u), fromGrid(middleInRoom(room, frame, u) ?? (low + high) / 2));
    const words = { first: spacing, second: other };
    return [
      finding(contradicted ? 'spacing-contradicted' : 'spacing-drift', 'warning', {
        where: { at: { x, y } },
        value,
        unit: 'mm',
        words,
      }),
    ];
  });
  // Of two that it may be taken for, the one that drifts furthest says enough.
  return findings.sort((a, b) => (b.value ?? 0) - (a.value ?? 0)).slice(0, 1);
}

const isMultiple = (length: number, spacing: number): boolean =>
  Math.round(length / spacing) > 0 && Math.abs(length - Math.round(length / spacing) * spacing) <= NEAR;
