import type { Finding, Severity } from '../rules/finding.js';
import { type Block, indented, paragraph, stacked } from './block.js';
import { LETTERS } from './lettering.js';
import { openingPlace } from './openingPlace.js';
import type { LetteredPiece } from './pieceLabels.js';
import { openingName, openingSize } from './pieceOpenings.js';
import { certaintyText, provisionalText, sizeText } from './provisional.js';
import { boardOrUp } from './stillToFix.js';
import { type Subject, zoneOf } from './subject.js';
import { circle } from './svg.js';
import type { WallLabel } from './wallLabels.js';
import type { Say } from './words.js';

const INDENT = 3;
/** More pieces or openings than this are not listed on the sheet: the cut list and the setting-out sheet have them all. */
export const MANY = 8;

/** What found no place on the plan itself. */
export interface Lettered {
  readonly pieces: readonly LetteredPiece[];
  readonly walls: readonly WallLabel[];
}

/** What has to be read before work starts, the gravest first, as much as there is room for. */
export function notes(subject: Subject, { pieces, walls }: Lettered, width: number, room: number): Block {
  const texts = [
    ...chief(subject),
    ...smallPieces(subject, pieces),
    ...unnamedWalls(subject, walls),
    ...found(subject, 'warning'),
    ...found(subject, 'note'),
  ];
  const blocks: Block[] = [heading(subject, width)];
  let left = 0;
  for (const [i, text] of texts.entries()) {
    const next = bullet(text, width);
    const after = i === texts.length - 1 && left === 0 ? 0 : more(subject, texts.length, width).height + GAP;
    if (stacked([...blocks, next], GAP).height + after > room) left++;
    else blocks.push(next);
  }
  if (left > 0) blocks.push(more(subject, left, width));
  return stacked(blocks, GAP);
}

/** What may not be left out: holds, joists to prove, errors, openings. */
const chief = (subject: Subject): string[] => [
  ...found(subject, 'hold'),
  ...proveText(subject),
  ...found(subject, 'error'),
  ...openingsText(subject),
];

/** Height that a sheet keeps for its notes, mm: what may not be left out, within reason. */
export function notesHeight(subject: Subject, width: number): number {
  const blocks = [heading(subject, width), ...chief(subject).map((text) => bullet(text, width)), more(subject, 10, width)];
  return Math.min(Math.max(stacked(blocks, GAP).height, LEAST), GREATEST);
}

const LEAST = 24;
const GREATEST = 75;

const heading = ({ say }: Subject, width: number): Block => paragraph(say('notes.title'), width, LETTERS.medium, true);
const more = ({ say }: Subject, count: number, width: number): Block =>
  paragraph(say('notes.more', { count }), width, LETTERS.small, true);

const found = ({ plan, say }: Subject, severity: Severity): string[] =>
  grouped(
    plan.findings.filter((each) => each.severity === severity),
    say,
  );

function proveText(subject: Subject): string[] {
  const { plan, say } = subject;
  const each = plan.proveFirst.map((joist) => {
    const certainty = certaintyText(subject, joist);
    return certainty === undefined ? joist : say('notes.proveEach', { joist, certainty });
  });
  return each.length === 0 ? [] : [say('notes.prove', { list: each.join(', ') }), ...provisionalText(subject)];
}

const GAP = 0.7;

/** Findings of one kind as one sentence: the first of them, and how many more there are. */
function grouped(findings: readonly Finding[], say: Say): string[] {
  const codes = [...new Set(findings.map(({ code }) => code))];
  return codes.map((code) => {
    const same = findings.filter((each) => each.code === code);
    const { message } = same[0];
    return same.length === 1 ? message : say('notes.same', { message, count: same.length - 1 });
  });
}

function bullet(text: string, width: number): Block {
  const words = indented(paragraph(text, width - INDENT), INDENT);
  return {
    height: words.height,
    draw: (x, y) => [circle({ x: x + 0.9, y: y + 2 }, 0.5, { fill: '#000', stroke: 'none' }), ...words.draw(x, y)],
  };
}

function openingsText(subject: Subject): string[] {
  const { plan, say, length, datum } = subject;
  const { openings = [] } = plan.room;
  if (openings.length === 0) return [];
  if (openings.length > MANY) return [say('notes.openingsMany', { count: openings.length })];
  const places = openings.map((opening, index) => ({
    ...openingPlace(subject, opening),
    name: openingName(subject, opening, index),
    size: openingSize(subject, opening),
  }));
  const fromSame = places.every(({ across, along }) => across.wall === datum.across && along.wall === datum.along);
  const list = places.map(({ name, size, across, along }) =>
    say(fromSame ? 'notes.openingEach' : 'notes.openingNamed', {
      name,
      size,
      across: length(across.distance),
      along: length(along.distance),
      acrossWall: across.wall,
      alongWall: along.wall,
    }),
  );
  return fromSame
    ? [say('notes.openings', { across: datum.across, along: datum.along, list: list.join('; ') })]
    : [say('notes.openingsNamed', { list: list.join('; ') })];
}

function unnamedWalls({ say }: Subject, walls: readonly WallLabel[]): string[] {
  const letters = walls.flatMap(({ letter, label }) => (label === undefined ? [letter] : []));
  return letters.length === 0 ? [] : [say('notes.wallsUnnamed', { list: letters.join(', ') })];
}

function smallPieces(subject: Subject, pieces: readonly LetteredPiece[]): string[] {
  const { say } = subject;
  const small = pieces.filter(({ full }) => !full);
  if (small.length > MANY) return [say('notes.many', { count: small.length })];
  const list = small.map(({ piece }) => {
    const { long, wide } = sizeText(piece, zoneOf(subject, piece));
    return say('notes.smallEach', { piece: piece.id, size: `${long} × ${wide}`, board: boardOrUp(piece, subject) });
  });
  return list.length === 0 ? [] : [say('notes.small', { list: list.join(', ') })];
}
