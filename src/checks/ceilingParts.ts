import { frameOf } from '../joists/frame.js';
import type { LocatedZone } from '../joists/locateZones.js';
import type { RuleSet } from '../rules/ruleSet.js';
import type { BoardStock } from '../survey/boardStock.js';
import type { Room } from '../survey/room.js';
import { type Ceiling, ceilingOf } from './ceiling.js';
import { crossSections } from './crossSections.js';
import type { LayoutToCheck, PieceToCheck } from './layoutToCheck.js';
import { shared } from './overlaps.js';
import { ringOf, type Solid } from './solid.js';

/** The parts of a ceiling, each with the pieces that belong to it. */
export function ceilingParts(
  room: Room,
  layout: LayoutToCheck,
  boards: readonly BoardStock[],
  parts: readonly LocatedZone[],
  rules: RuleSet,
): Ceiling[] {
  const given = { room, layout };
  if (parts.length === 1) return [ceilingOf(given, parts[0], layout.pieces, boards, rules)];
  const homes = homesOf(layout.pieces, parts);
  return parts.map((part, home) => {
    const pieces = layout.pieces.filter((_, index) => homes[index] === home);
    return ceilingOf(given, part, pieces, boards, rules);
  });
}

/** For each piece the part in which most of it lies, whatever it says of itself; the first of them where none has any of it. */
function homesOf(pieces: readonly PieceToCheck[], parts: readonly LocatedZone[]): number[] {
  const frame = frameOf('y');
  const solids = [
    ...parts.map(({ outline, holes = [] }, index): Solid => {
      return { kind: 'room', index, rings: [outline, ...holes].map((each) => ringOf(each, frame)) };
    }),
    ...pieces.map((piece, index): Solid => ({ kind: 'piece', index, rings: [ringOf(piece.outline, frame)] })),
  ];
  const areas = pieces.map(() => parts.map(() => 0));
  for (const { low, high, spans } of crossSections(solids)) {
    const regions = spans.filter(({ solid }) => solid.kind === 'room');
    for (const piece of spans.filter(({ solid }) => solid.kind === 'piece')) {
      for (const region of regions) {
        const both = shared(piece, region);
        if (both === undefined) continue;
        const width = both.rightLow + both.rightHigh - both.leftLow - both.leftHigh;
        areas[piece.solid.index][region.solid.index] += width * (high - low);
      }
    }
  }
  return areas.map((own) => own.indexOf(Math.max(...own)));
}
