import { type Finding, finding, type Where } from '../rules/finding.js';
import { fromGrid } from '../survey/grid.js';
import type { Ceiling } from './ceiling.js';
import type { Section, Span } from './crossSections.js';
import { type Cell, partsBeside } from './emptyCells.js';
import { HAIR } from './hair.js';
import { patchesOf } from './patch.js';
import { geometry, placeOf } from './place.js';
import type { Views } from './views.js';

/** Where something lies that may not lie there, in one section. */
interface Clash {
  readonly code: 'overlap' | 'outside-room' | 'over-opening';
  readonly where: Where;
  readonly opening?: string;
  readonly cell: Cell;
}

/** Pieces over each other, beyond the walls, or over openings: one finding for each piece, or pair, and place. */
export function overlaps(ceiling: Ceiling, { across }: Views): Finding[] {
  const groups = new Map<string, Clash[]>();
  for (const clash of across.flatMap((section) => clashesIn(section, ceiling))) {
    const key = JSON.stringify([clash.code, clash.where, clash.opening]);
    const group = groups.get(key);
    if (group) group.push(clash);
    else groups.set(key, [clash]);
  }
  return [...groups.values()].flatMap((clashes) => {
    const [{ code, where, opening }] = clashes;
    return patchesOf(clashes.map(({ cell }) => cell))
      .filter(({ thickness }) => thickness > HAIR)
      .map(({ thickness, middle }) => {
        const { at, words } = placeOf(ceiling.frame, middle.u, middle.v);
        const value = fromGrid(Math.round(thickness));
        const more = { ...words, ...(opening !== undefined && { opening }) };
        return finding(code, 'error', { where: { ...where, at }, value, limit: 0, unit: 'mm', source: geometry, words: more });
      });
  });
}

function clashesIn({ low, high, spans }: Section, { about, given }: Ceiling): Clash[] {
  const of = (kind: Span['solid']['kind']): Span[] => spans.filter(({ solid }) => solid.kind === kind);
  const [pieces, rooms, cores] = [of('piece'), of('room'), of('core')];
  const id = ({ solid }: Span): string => about[solid.index].id;
  const clashes: Clash[] = [];
  pieces.forEach((piece, place) => {
    for (const other of pieces.slice(place + 1)) {
      if (Math.min(other.leftLow, other.leftHigh) >= Math.max(piece.rightLow, piece.rightHigh)) break;
      const cell = common(piece, other, low, high);
      const [first, second] = piece.solid.index <= other.solid.index ? [piece, other] : [other, piece];
      if (cell) clashes.push({ code: 'overlap', where: { pieces: [id(first), id(second)] }, cell });
    }
    for (const cell of partsBeside(piece, rooms, low, high)) {
      clashes.push({ code: 'outside-room', where: { piece: id(piece) }, cell });
    }
    for (const core of cores) {
      const cell = common(piece, core, low, high);
      const opening = given.room.openings?.[core.solid.index];
      const name = `${opening?.kind} ${opening?.id ?? core.solid.index + 1}`;
      if (cell) clashes.push({ code: 'over-opening', where: { piece: id(piece) }, opening: name, cell });
    }
  });
  return clashes;
}

/** What two spans of a section share. */
function common(a: Span, b: Span, low: number, high: number): Cell | undefined {
  const [leftLow, leftHigh] = [Math.max(a.leftLow, b.leftLow), Math.max(a.leftHigh, b.leftHigh)];
  const foot = Math.max(0, Math.min(a.rightLow, b.rightLow) - leftLow);
  const head = Math.max(0, Math.min(a.rightHigh, b.rightHigh) - leftHigh);
  if (a.solid === b.solid || Math.max(foot, head) <= HAIR) return undefined;
  const corners: Cell['corners'] = [
    { u: leftLow, v: low },
    { u: leftLow + foot, v: low },
    { u: leftHigh + head, v: high },
    { u: leftHigh, v: high },
  ];
  return { corners, left: a, right: b, width: Math.max(foot, head) };
}
