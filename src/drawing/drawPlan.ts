import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { admit } from '../survey/door.js';
import { problem, refuse } from '../survey/inputError.js';
import { bareInk, bareLabels, bareParts } from './bareParts.js';
import { boardsInk } from './boardsInk.js';
import { fittingSheets, MARGIN } from './chooseSheet.js';
import { hatch, zoneOutline } from './hatch.js';
import { type DrawingLayer, type Ink, inkOn, LAYERS } from './ink.js';
import { joistsInk } from './joistsInk.js';
import { type Box, blankSvg, boxOf, grown, labelSvg } from './label.js';
import { leaderSvg, withLeaders } from './leaders.js';
import { LETTERS, shortened, textWidth } from './lettering.js';
import { DASHES, WIDTH } from './lineTypes.js';
import { MANY } from './notes.js';
import { openingLabels } from './openingLabels.js';
import { namedOpenings, openingsInk } from './openings.js';
import type { DrawOptions } from './options.js';
import { panelHeights, panelInk } from './panel.js';
import { type LetteredPiece, letteredPieces } from './pieceLabels.js';
import { roomInk } from './roomInk.js';
import { dimensionSvg } from './runningDimension.js';
import { drawOptionsSchema, planSchema } from './schemas.js';
import { screwMarks, screwsInk } from './screws.js';
import type { Paper, Sheet, View } from './sheet.js';
import type { Subject } from './subject.js';
import { subjectOf } from './subjectOf.js';
import { surroundOf } from './surround.js';
import { line, rect, strokes } from './svg.js';
import { svgDocument } from './svgDocument.js';
import { wallLabels } from './wallLabels.js';
import { zoneLabels } from './zoneLabels.js';
import { zonesInk } from './zonesInk.js';

/** Usual scales, and two between: nobody measures on the sheet, so keeping it on A4 is worth more than a round number. */
const SCALES = [20, 25, 30, 40, 50] as const;
const SMALL_SCALES = [100, 200, 500] as const;

/**
 * Draws a plan as a reflected ceiling plan to scale, for printing in black on A4 or A3: SVG whose size is in mm, so that it
 * prints to scale.
 *
 * Walls, boards and their numbers, cut edges, joists and their running dimensions from one wall, screws and openings; key,
 * notes and title block. Lines after ISO 128, dimensions after ISO 129. Under a hold the sheet is stamped.
 *
 * @param plan - what `planCeiling` returned
 * @returns the text of an SVG file
 * @throws InputError when the plan or an option is not as described, or the room does not fit the paper at the scale asked for
 * @example
 * ```ts
 * import { planCeiling, rectangle } from 'soffitwright';
 * import { drawPlan } from 'soffitwright/drawing';
 *
 * const plan = planCeiling({
 *   room: { outline: rectangle(3600, 3000) },
 *   joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
 *   lining: [{ kind: 'plasterboard', thickness: 9.5 }],
 *   boards: [{ id: '1200 x 2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
 * });
 * console.log(drawPlan(plan).split('\n')[0]);
 * // <svg xmlns="http://www.w3.org/2000/svg" width="297mm" height="210mm" viewBox="0 0 297 210" role="img">
 * ```
 */
export function drawPlan(plan: CeilingPlan, options: DrawOptions = {}): string {
  admit(planSchema, plan, 'plan');
  admit(drawOptionsSchema, options, 'options');
  const subject = subjectOf(plan, options.units, options.messages);
  const shown = LAYERS.filter((layer) => options.layers?.includes(layer) ?? true);
  const all = { ...options, noFix: [...(plan.job.noFix ?? []), ...(options.noFix ?? [])] };
  const drawings = sheetsFor(subject, shown, all).map((sheet) => drawOn(sheet, subject, shown, all));
  const chosen = drawings.find(({ legible }) => legible) ?? drawings[drawings.length - 1];
  return chosen.svg;
}

function sheetsFor(subject: Subject, shown: readonly DrawingLayer[], options: DrawOptions): Sheet[] {
  const { view = 'reflected', scale, paper, noFix = [] } = options;
  const papers: readonly Paper[] = paper === undefined ? ['A4', 'A3'] : [paper];
  const fitting = (scales: readonly number[]): Sheet[] =>
    fittingSheets({
      extent: subject.extent,
      view,
      papers,
      scales,
      surround: (each) => surroundOf(subject, each, view),
      heights: (on, each) => panelHeights({ subject, facts: factsOf(on, each, view, options), shown, noFix: noFix.length > 0 }),
    });
  const sheets = scale === undefined ? fitting(SCALES) : fitting([scale]);
  if (sheets.length > 0) return sheets;
  const smaller = scale === undefined ? fitting(SMALL_SCALES) : [];
  if (smaller.length > 0) return smaller;
  return refuse(
    problem(
      'sheet-too-small',
      scale === undefined ? 'options.paper' : 'options.scale',
      `a room that fits ${papers.join(' or ')} at that scale`,
      scale === undefined ? papers.join(' or ') : `1:${scale}`,
    ),
  );
}

const factsOf = (paper: Paper, scale: number, view: View, options: DrawOptions) => ({
  paper,
  scale,
  view,
  forLegibility: paper === 'A3' && options.paper === undefined,
});

function drawOn(sheet: Sheet, subject: Subject, shown: readonly DrawingLayer[], options: DrawOptions) {
  const { view, scale, paper, room } = sheet;
  const surround = surroundOf(subject, scale, view);
  const noFix = (options.noFix ?? []).map((zone) => zoneOutline(zone).map(sheet.place));
  const walls = wallLabels(subject, sheet, surround.dimensions);
  const openings = namedOpenings(subject, sheet);
  const screws = screwMarks(subject, sheet);
  const seen = shown.includes('screw') ? screws : [];
  const names = shown.includes('opening') ? openingLabels(openings, seen, boardEdges(subject, sheet)) : [];
  const taken = shown.includes('opening') ? [...openings.map(({ box }) => box), ...names.map(boxOf)] : [];
  const edges = boardEdges(subject, sheet);
  const marks = screws.map(({ x, y }) => grown({ left: x, right: x, top: y, bottom: y }, 0.5));
  const zones = zoneLabels(subject, sheet, [...taken, ...marks, ...edges]);
  const bare = bareParts(subject);
  const bareNames = bareLabels(bare, subject, sheet, [...taken, ...zones.map(({ box }) => box)]);
  const named = [...taken, ...zones.map(({ box }) => box), ...bareNames.map(boxOf)];
  const pieces = withLeaders(letteredPieces(subject, sheet, seen, named), subject, sheet, seen, named);
  const panel = { subject, facts: factsOf(paper, scale, view, options), shown, noFix: noFix.length > 0 };
  const ink: Ink[] = [
    ...roomInk(subject, sheet),
    ...inkOn('no-fix', [
      strokes(
        noFix.flatMap((zone) => hatch([zone])),
        { 'stroke-width': WIDTH.narrow },
      ),
    ]),
    ...inkOn('old-joint', oldJoints(subject, sheet)),
    ...joistsInk(subject, sheet),
    ...boardsInk(subject, sheet),
    ...openingsInk(openings, sheet),
    ...bareInk(bare, sheet),
    ...zonesInk(subject, zones, sheet),
    ...screwsInk(screws, scale),
    ...inkOn(
      'dimension',
      surround.dimensions.flatMap((each) =>
        dimensionSvg(each, {
          x: each.side === 'right' ? room.right : room.left,
          y: each.side === 'bottom' ? room.bottom : room.top,
        }),
      ),
    ),
    ...inkOn(
      'text',
      [
        ...walls.flatMap(({ label }) => label ?? []),
        ...names,
        ...zones.map(({ label }) => label),
        ...bareNames,
        ...pieces.flatMap(({ labels }) => labels),
      ].map(labelSvg),
    ),
    ...inkOn('text', pieces.flatMap(leaderSvg)),
    ...(shown.includes('text')
      ? inkOn('clear', [...zones.map(({ box }) => box), ...pieces.flatMap(({ blanks }) => blanks)].map(blankSvg))
      : []),
    ...inkOn('sheet', [...framing(sheet), ...heading(subject, sheet)]),
    ...panelInk(panel, sheet.panel, { pieces, walls }),
  ];
  return {
    svg: document(ink, subject, sheet, shown),
    legible: surround.legible && (isLegible(pieces) || !shown.includes('text')),
  };
}

/** A piece no wider than this has no room for its number at any scale, mm; its number stands beside it. */
const SLIVER = 100;

/** Every piece has its number, slivers beside them, and the few that have no more than that are listed on the sheet. */
const isLegible = (pieces: readonly LetteredPiece[]): boolean =>
  pieces.every(
    ({ labels, leader, piece }) =>
      labels.length > 0 && (leader === undefined || Math.min(piece.width, piece.cutLength) <= SLIVER),
  ) && pieces.filter(({ full }) => !full).length <= MANY;

const oldJoints = ({ plan }: Subject, sheet: Sheet): string[] =>
  plan.job.lining.flatMap(({ joints = [] }) =>
    joints.map(([a, b]) =>
      line(sheet.place(a), sheet.place(b), { 'stroke-width': WIDTH.narrow, 'stroke-dasharray': DASHES.doubleChain }),
    ),
  );

/** The edges of the pieces as thin boxes, for texts that should not stand on them. */
const boardEdges = ({ plan }: Subject, sheet: Sheet): Box[] =>
  plan.layout.pieces.flatMap((piece) =>
    piece.outline.map((from, i) => {
      const [a, b] = [sheet.place(from), sheet.place(piece.outline[(i + 1) % piece.outline.length])];
      return { left: Math.min(a.x, b.x), right: Math.max(a.x, b.x), top: Math.min(a.y, b.y), bottom: Math.max(a.y, b.y) };
    }),
  );

/** The frame of the sheet, and the line between the plan and what stands beside or below it. */
function framing({ width, height, panel }: Sheet): string[] {
  const border =
    'column' in panel
      ? line({ x: panel.column.left - 3, y: MARGIN }, { x: panel.column.left - 3, y: height - MARGIN }, FINE)
      : line({ x: MARGIN, y: panel.key.top - 3 }, { x: width - MARGIN, y: panel.key.top - 3 }, FINE);
  return [rect(MARGIN, MARGIN, width - 2 * MARGIN, height - 2 * MARGIN, { 'stroke-width': WIDTH.wide }), border];
}

const FINE = { 'stroke-width': WIDTH.narrow };

/** The name of the view over the plan, as large as there is room for, and the hold where nobody can miss it. */
function heading({ plan, say }: Subject, { area, view }: Sheet): string[] {
  const y = area.top + LETTERS.medium / 2;
  const hold = { text: say('hold.stamp'), x: area.right, y, height: LETTERS.large, anchor: 'end', bold: true } as const;
  const room = area.right - area.left - (plan.meta.held ? textWidth(hold.text, hold.height, true) + 3 : 0);
  const ways = [
    { text: say(`view.${view}`), height: LETTERS.medium },
    { text: say(`view.${view}`), height: LETTERS.small },
    { text: say(`view.${view}.short`), height: LETTERS.small },
  ];
  const fits = ways.find(({ text, height }) => textWidth(text, height, true) <= room) ?? {
    text: shortened(ways[2].text, room, LETTERS.small, true),
    height: LETTERS.small,
  };
  const name = { ...fits, x: area.left, y, anchor: 'start', bold: true } as const;
  return (plan.meta.held ? [name, hold] : [name]).map(labelSvg);
}

/** The blanks for lettering lie over the joists and under everything else. */
const ON_JOISTS = LAYERS.indexOf('chalk') + 1;

function document(ink: readonly Ink[], { plan, say }: Subject, sheet: Sheet, shown: readonly DrawingLayer[]): string {
  const name = plan.room.name ?? plan.room.id ?? say('room.unnamed');
  const order = [...LAYERS.slice(0, ON_JOISTS), 'clear' as const, ...LAYERS.slice(ON_JOISTS), 'sheet' as const];
  return svgDocument({
    width: sheet.width,
    height: sheet.height,
    title: `${name}: ${say(`view.${sheet.view}`)}, 1:${sheet.scale}`,
    layers: order
      .filter((layer) => layer === 'clear' || layer === 'sheet' || shown.includes(layer))
      .map((layer) => ({ name: layer, parts: ink.filter((each) => each.layer === layer).map(({ svg }) => svg) })),
  });
}
