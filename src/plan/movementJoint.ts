import type { Row } from '../boards/boardLayout.js';
import { centreAt, type Frame, type FramePoint, frameOf } from '../joists/frame.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { type Finding, finding } from '../rules/finding.js';
import { memoryNote } from '../rules/memoryNote.js';
import type { RuleSet } from '../rules/ruleSet.js';
import { lookUp } from '../rules/ruleValue.js';
import { fromGrid, toGrid } from '../survey/grid.js';
import { corners } from '../survey/outline.js';
import { type DividingPlace, dividingPlaces } from './dividingPlaces.js';
import { type LongestRun, longestRun } from './longestRun.js';

/** A part of the ceiling that is boarded without a break. */
export type Field = Pick<LocatedZone, 'zone' | 'outline' | 'holes' | 'joists' | 'direction'>;

/**
 * Says where a field of boards is longer, one way or the other, than one without a movement joint should be, and on which joists or
 * between which rows the joint would go: a joint that runs with the joists has to be on one. The boards are laid as one field
 * all the same. Zones are fields of their own.
 */
export function movementJoint(fields: readonly Field[], rows: readonly Row[], rules: RuleSet): Finding[] {
  const rule = lookUp(rules, 'movementJoint.maximumRun');
  if (rule === undefined || rule.value === null) return [];
  const limit = rule.value;
  const found = fields.flatMap((field) => {
    const frame = frameOf(field.direction);
    const rings = [field.outline, ...(field.holes ?? [])].map((ring) => corners(ring).map(frame.into));
    return [acrossJoists(frame, field, rings), alongJoists(frame, field, rings, rows)].flatMap((way) => {
      const value = fromGrid(way.run.to - way.run.from);
      if (value <= limit) return [];
      const at = dividingPlaces(way.run, way.places, toGrid(limit));
      const where = at.length === 0 ? undefined : way.where(at[0]);
      return [
        finding('movement-joint-wanted', 'warning', {
          ...(where && { where }),
          value,
          limit,
          unit: rule.unit,
          source: rule.source,
          ...(at.length > 0 && { sentence: 'movement-joint-at', words: { place: at.map(({ name }) => name).join(' and ') } }),
        }),
      ];
    });
  });
  return found.length > 0 ? [...found, ...memoryNote(rules, ['movementJoint.maximumRun'])] : [];
}

/** How far a field runs one way, and where it may be divided. */
interface Way {
  readonly run: LongestRun;
  readonly places: readonly DividingPlace[];
  readonly where: (place: DividingPlace) => Finding['where'];
}

type Rings = readonly (readonly FramePoint[])[];

function acrossJoists(frame: Frame, { joists }: Field, rings: Rings): Way {
  const run = longestRun(rings);
  const places = joists
    .filter(({ start, end }) => {
      const [low, high] = [start, end].map((point) => toGrid(frame.into(point).v));
      return low <= run.level + 1 && run.level - 1 <= high;
    })
    .map((joist) => ({ at: centreAt(joist, frame, run.level), name: joist.id, joist: joist.id }));
  const idAt = new Map(places.map(({ at, joist }) => [at, joist]));
  return {
    run,
    places,
    where: ({ at }) => ({ joist: idAt.get(at) as string, at: onPlan(frame, at, run.level) }),
  };
}

function alongJoists(frame: Frame, { zone }: Field, rings: Rings, rows: readonly Row[]): Way {
  const run = longestRun(rings.map((ring) => ring.map(({ u, v }) => ({ u: v, v: u }))));
  const own = rows.filter((row) => row.zone === zone);
  const places = own.slice(1).map(({ row, low }) => ({ at: toGrid(low), name: `the joint of rows ${row - 1} and ${row}` }));
  return { run, places, where: ({ at }) => ({ at: onPlan(frame, run.level, at) }) };
}

function onPlan(frame: Frame, u: number, v: number): { readonly x: number; readonly y: number } {
  return frame.back(fromGrid(u), fromGrid(v));
}
