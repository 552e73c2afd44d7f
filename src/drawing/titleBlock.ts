import type { FixingLength } from '../fixings/fixingLength.js';
import { screwsToDrive } from '../fixings/screwsToDrive.js';
import { SURE } from '../joists/bearing.js';
import { type Block, beside, paragraph, stacked } from './block.js';
import { LETTERS, shortened, textWidth, wrapped } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import { percentText } from './provisional.js';
import type { Paper, View } from './sheet.js';
import type { Subject } from './subject.js';
import { line } from './svg.js';
import type { WordKey } from './words.js';
import { isCrosswise } from './zonesIn.js';

/** What the title block says of the sheet itself. */
export interface SheetFacts {
  readonly paper: Paper;
  readonly scale: number;
  readonly view: View;
  /** Larger than A4 only because A4 would not be legible. */
  readonly forLegibility: boolean;
}

/** Width of the column of captions, mm. */
const CAPTIONS = 21;

/** The title block: room, view, scale, what the plan consists of, how sure it is, and by which rules. */
export function titleBlock(subject: Subject, facts: SheetFacts, width: number): Block {
  const { plan, say } = subject;
  const name = plan.room.name ?? plan.room.id ?? say('room.unnamed');
  const row = (caption: WordKey, text: string): Block =>
    ruled(beside(paragraph(say(caption), CAPTIONS), paragraph(text, width - CAPTIONS), CAPTIONS), width);
  return stacked([
    roomName(name, width),
    row('title.view', say(`view.${facts.view}.short`)),
    row(
      'title.scale',
      say(facts.forLegibility ? 'title.scale.larger' : 'title.scale.text', { scale: facts.scale, paper: facts.paper }),
    ),
    row('title.figures', figuresText(subject)),
    row('title.joists', joistsText(subject)),
    row('title.boards', boardsText(subject)),
    row('title.screws', screwsText(subject)),
    row('title.ends', endsText(subject)),
    row('title.rules', plan.job.rules.title),
    ruled(paragraph(say('caution'), width, LETTERS.small, true), width),
  ]);
}

/** The room's name as large as it can be on one line, or cut at the end of its second line. */
function roomName(name: string, width: number): Block {
  const large = textWidth(name, LETTERS.large, true) <= width;
  const lines = large ? [name] : wrapped(name, width, LETTERS.medium, true);
  const shown = lines.length > 2 ? [lines[0], shortened(lines.slice(1).join(' '), width, LETTERS.medium, true)] : lines;
  return stacked(shown.map((text) => paragraph(text, width, large ? LETTERS.large : LETTERS.medium, true)));
}

/** A block with a rule above it and a little air. */
const ruled = (block: Block, width: number): Block => ({
  height: block.height + 1.2,
  draw: (x, y) => [
    line({ x, y: y + 0.4 }, { x: x + width, y: y + 0.4 }, { 'stroke-width': WIDTH.narrow }),
    ...block.draw(x, y + 0.9),
  ],
});

const figuresText = ({ say, unit, datum, zones }: Subject): string =>
  zones.length > 0
    ? say('title.figures.zones', { unit: say(`unit.${unit}`) })
    : say('title.figures.text', { unit: say(`unit.${unit}`), across: datum.across, along: datum.along });

function joistsText(subject: Subject): string {
  const { plan, say, length, zones } = subject;
  const width = [...new Set(plan.joists.map((joist) => length(joist.width)))].join(' / ');
  const known = [...new Set(plan.joists.map((joist) => joist.known))].map((each) => say(`known.${each}`)).join(', ');
  const running = (zone: Subject) => ({
    count: zone.plan.joists.filter((joist) => !isCrosswise(zone, joist)).length,
    direction: say(`title.joists.${zone.direction}`),
  });
  if (zones.length === 0) return say('title.joists.text', { ...running(subject), width, known });
  const list = zones.map((zone) => say('title.joists.zone', { zone: zone.name, ...running(zone) }));
  return say('title.joists.zones', { list: list.join('; '), width, known });
}

function boardsText({ plan, say }: Subject): string {
  const { boards, boardsByStock } = plan.layout;
  const atHand = new Set(plan.job.boards.filter((stock) => stock.atHand === true).map(({ id }) => id));
  const opened = boards.filter((board) => board.opened === true).length;
  const there = boards.filter((board) => board.opened !== true && atHand.has(board.stock)).length;
  const list = [
    ...boardsByStock.filter(({ count }) => count > 0).map(({ stock, count }) => say('title.boards.each', { count, stock })),
    ...(there > 0 ? [say('title.boards.atHand', { count: there })] : []),
    ...(opened > 0 ? [say('title.boards.opened', { count: opened })] : []),
  ];
  return say('title.boards.text', { list: list.join('; ') });
}

function screwsText({ plan, say, withUnit }: Subject): string {
  const { recommended, range } = plan.fixingLength;
  const count = screwsToDrive(plan.layout, plan.fixings);
  if (range !== undefined) return say('title.screws.range', { count, ...rangeWords(range, withUnit) });
  return recommended === null
    ? say('title.screws.none', { count })
    : say('title.screws.text', { count, length: withUnit(recommended) });
}

/** A range of screw lengths, a bound that no length serves as a dash. */
export const rangeWords = (
  { shortest, longest }: NonNullable<FixingLength['range']>,
  withUnit: Subject['withUnit'],
): { readonly shortest: string; readonly longest: string } => ({
  shortest: shortest === null ? '-' : withUnit(shortest),
  longest: longest === null ? '-' : withUnit(longest),
});

/** How sure the board ends are: sure, check or prove first, with the figures behind the word. */
export function endsText({ plan, say }: Subject): string {
  const { onTimber, withinEdgeRules } = plan.confidence;
  const { proveFirst, certainty } = plan;
  const onlyCheck = certainty?.every((each) => each.certainty !== 'prove first') ?? false;
  const word = proveFirst.length > 0 ? (onlyCheck ? 'check' : 'prove') : withinEdgeRules >= SURE ? 'sure' : 'check';
  return say('title.ends.text', { word: say(`ends.${word}`), within: percentText(withinEdgeRules), on: percentText(onTimber) });
}
