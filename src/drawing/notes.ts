import type { Finding, Severity } from '../rules/finding.js';
import { type Block, indented, paragraph, stacked } from './block.js';
import { cutFigure } from './figure.js';
import { LETTERS } from './lettering.js';
import type { NamedOpening } from './openings.js';
import type { LetteredPiece } from './pieceLabels.js';
import { fromDatum, type Subject } from './subject.js';
import { circle } from './svg.js';
import type { Say } from './words.js';

const INDENT = 3;
/** More pieces than this are not listed on the sheet: the cut list has them all. */
export const MANY = 8;

/** What has to be read before work starts, the gravest first, as much as there is room for. */
export function notes(
  subject: Subject,
  openings: readonly NamedOpening[],
  pieces: readonly LetteredPiece[],
  width: number,
  room: number,
): Block {
  const { plan, say } = subject;
  const found = (severity: Severity): string[] =>
    grouped(
      plan.findings.filter((each) => each.severity === severity),
      say,
    );
  const prove = plan.proveFirst.length > 0 ? [say('notes.prove', { list: plan.proveFirst.join(', ') })] : [];
  const texts = [
    ...found('hold'),
    ...prove,
    ...found('error'),
    ...openings.map((opening) => openingText(subject, opening)),
    ...smallPieces(subject, pieces),
    ...found('warning'),
    ...found('note'),
  ];
  const title = paragraph(say('notes.title'), width, LETTERS.medium, true);
  const more = (count: number): Block => paragraph(say('notes.more', { count }), width, LETTERS.small, true);
  const blocks: Block[] = [title];
  let left = 0;
  for (const [i, text] of texts.entries()) {
    const next = bullet(text, width);
    const after = i === texts.length - 1 && left === 0 ? 0 : more(texts.length).height + GAP;
    if (stacked([...blocks, next], GAP).height + after > room) left++;
    else blocks.push(next);
  }
  if (left > 0) blocks.push(more(left));
  return stacked(blocks, GAP);
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

function openingText(subject: Subject, { name, size, centre }: NamedOpening): string {
  const { across, along } = fromDatum(subject, centre);
  return subject.say('notes.opening', {
    name,
    size,
    across: subject.length(across),
    acrossFrom: subject.datum.across,
    along: subject.length(along),
    alongFrom: subject.datum.along,
  });
}

function smallPieces({ say, unit }: Subject, pieces: readonly LetteredPiece[]): string[] {
  const small = pieces.filter(({ full }) => !full);
  if (small.length > MANY) return [say('notes.many', { count: small.length })];
  const list = small.map(({ piece }) =>
    say('notes.smallEach', {
      piece: piece.id,
      size: `${cutFigure(piece.cutLength, unit)} × ${cutFigure(piece.width, unit)}`,
      board: piece.board,
    }),
  );
  return list.length === 0 ? [] : [say('notes.small', { list: list.join(', ') })];
}
