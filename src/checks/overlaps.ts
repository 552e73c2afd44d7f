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
  readonly code: 'overlap' | 'outside-room' | 'across-zones' | 'over-opening';
  readonly where: Where;
  readonly opening?: string;
  readonly cell: Cell;
}

/** Pieces over each other, beyond the walls, across the border of a zone, or over openings: one finding for each piece, or pair, and place. */
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
        const zone = ceiling.zone === undefined ? 'the part outside the zones' : `zone ${ceiling.zone}`;
        const more = { ...words, zone, ...(opening !== undefined && { opening }) };
        return finding(code, 'error', { where: { ...where, at }, value, limit: 0, unit: 'mm', source: geometry, words: more });
      });
  });
}

function clashesIn(section: Section, ceiling: Ceiling): Clash[] {
  const of = (kind: Span['solid']['kind']): Span[] => section.spans.filter(({ solid }) => solid.kind === kind);
  const [pieces, parts, cores] = [of('piece'), of('room'), of('core')];
  const wholes = ceiling.whole ? of('whole') : parts;
  return pieces.flatMap((piece, place) => [
    ...overOthers(piece, pieces, place + 1, section, ceiling),
    ...partsBeside(piece, wholes, section.low, section.high).map((cell): Clash => {
      return { code: 'outside-room', where: { piece: ceiling.about[piece.solid.index].id }, cell };
    }),
    ...(ceiling.whole ? acrossBorders(piece, wholes, parts, section, ceiling) : []),
    ...overCores(piece, cores, section, ceiling),
  ]);
}

/** Pieces further to the right in a section that begin before this one ends. */
function overOthers(piece: Span, pieces: readonly Span[], next: number, { low, high }: Section, { about }: Ceiling): Clash[] {
  const clashes: Clash[] = [];
  for (let i = next; i < pieces.length; i++) {
    const other = pieces[i];
    if (Math.min(other.leftLow, other.leftHigh) >= Math.max(piece.rightLow, piece.rightHigh)) break;
    const cell = common(piece, other, low, high);
    const indices = [piece.solid.index, other.solid.index].sort((a, b) => a - b);
    if (cell) clashes.push({ code: 'overlap', where: { pieces: indices.map((index) => about[index].id) }, cell });
  }
  return clashes;
}

/** What lies in the room and beyond the part of it to which the piece belongs. */
const acrossBorders = (
  piece: Span,
  wholes: readonly Span[],
  parts: readonly Span[],
  { low, high }: Section,
  { about }: Ceiling,
): Clash[] =>
  wholes.flatMap((room) => {
    const inside = shared(piece, room);
    const cells = inside ? partsBeside(inside, parts, low, high) : [];
    return cells.map((cell): Clash => ({ code: 'across-zones', where: { piece: about[piece.solid.index].id }, cell }));
  });

function overCores(piece: Span, cores: readonly Span[], { low, high }: Section, { about, given }: Ceiling): Clash[] {
  return cores.flatMap((core) => {
    const cell = common(piece, core, low, high);
    const opening = given.room.openings?.[core.solid.index];
    const name = `${opening?.kind} ${opening?.id ?? core.solid.index + 1}`;
    return cell ? [{ code: 'over-opening', where: { piece: about[piece.solid.index].id }, opening: name, cell }] : [];
  });
}

/** What a span has in common with another. */
export function shared(a: Span, b: Span): Span | undefined {
  const { left, leftLow, leftHigh } = a.leftLow + a.leftHigh >= b.leftLow + b.leftHigh ? a : b;
  const { right, rightLow, rightHigh } = a.rightLow + a.rightHigh <= b.rightLow + b.rightHigh ? a : b;
  if (leftLow + leftHigh >= rightLow + rightHigh) return undefined;
  return { solid: a.solid, left, right, leftLow, leftHigh, rightLow, rightHigh };
}

/** What two spans of a section share, as a cell. */
function common(a: Span, b: Span, low: number, high: number): Cell | undefined {
  const both = shared(a, b);
  if (both === undefined || a.solid === b.solid) return undefined;
  const foot = Math.max(0, both.rightLow - both.leftLow);
  const head = Math.max(0, both.rightHigh - both.leftHigh);
  if (Math.max(foot, head) <= HAIR) return undefined;
  const corners: Cell['corners'] = [
    { u: both.leftLow, v: low },
    { u: both.leftLow + foot, v: low },
    { u: both.leftHigh + head, v: high },
    { u: both.leftHigh, v: high },
  ];
  return { corners, left: a, right: b, width: Math.max(foot, head) };
}
