import { screwsToDrive } from '../fixings/screwsToDrive.js';
import { bareParts } from './bareParts.js';
import { type Block, LEADING, paragraph, stacked } from './block.js';
import { cutEdges } from './boardsInk.js';
import { doubleArrow } from './doubleArrow.js';
import type { DrawingLayer } from './ink.js';
import { labelSvg } from './label.js';
import { LETTERS, textWidth } from './lettering.js';
import { DASHES, WIDTH } from './lineTypes.js';
import { screwRadius } from './screws.js';
import { isUp, stillToFix } from './stillToFix.js';
import { type Subject, zoneOf } from './subject.js';
import { circle, line, type PaperPoint, polygon, rect, strokes } from './svg.js';
import type { WordKey } from './words.js';
import { BORDER } from './zonesInk.js';

/** Width of a sample, and where its words begin, mm. */
const SAMPLE = 11;
const WORDS_AT = 13.5;
const narrow = { 'stroke-width': WIDTH.narrow };
const wide = { 'stroke-width': WIDTH.wide };

interface Entry {
  readonly words: WordKey;
  /** Drawn about this point, its left middle. */
  readonly sample: (x: number, y: number) => string[];
  /** Height of the sample where it is more than a line of text, mm. */
  readonly height?: number;
}

/** The key: only what is on this sheet. */
export function legend(subject: Subject, width: number, shown: readonly DrawingLayer[], noFix: boolean): Block {
  const { plan, say } = subject;
  const has = (layer: DrawingLayer): boolean => shown.includes(layer);
  const entries: (Entry | false)[] = [
    has('wall') && wallEntry,
    has('wall') && subject.walls.some(({ window }) => window) && windowEntry,
    has('joist') && joistEntry,
    has('dimension') && runningEntry,
    has('dimension') && plan.proveFirst.length > 0 && proveEntry,
    has('board') && boardEntry,
    has('cut') && stillToFix(plan).some((piece) => cutEdges(piece, zoneOf(subject, piece).frame).length > 0) && cutEntry,
    has('text') && pieceEntry(subject),
    has('text') && plan.layout.pieces.some(isUp) && upEntry(subject),
    has('screw') && screwsToDrive(plan.layout, plan.fixings) > 0 && screwEntry,
    has('opening') && (plan.room.openings ?? []).length > 0 && openingEntry,
    has('zone') && subject.zones.some(({ bounds }) => bounds.some(({ isWall }) => !isWall)) && zoneEntry,
    has('zone') && subject.zones.length > 0 && zoneJoistsEntry,
    has('zone') && bareParts(subject).length > 0 && bareEntry,
    has('no-fix') && noFix && noFixEntry,
    has('old-joint') && plan.job.lining.some(({ joints }) => (joints ?? []).length > 0) && oldJointEntry,
  ];
  const rows = entries
    .filter((entry) => entry !== false)
    .map((entry): Block => {
      const words = paragraph(say(entry.words), width - WORDS_AT);
      const height = Math.max(words.height, entry.height ?? 0);
      const firstLine = (LETTERS.small * LEADING) / 2;
      return {
        height,
        draw: (x, y) => [
          ...entry.sample(x, entry.height === undefined ? y + firstLine : y + height / 2),
          ...words.draw(x + WORDS_AT, y + (entry.height === undefined ? 0 : (height - words.height) / 2)),
        ],
      };
    });
  return stacked([paragraph(say('legend.title'), width, LETTERS.medium, true), ...rows], 0.9);
}

const level = (x: number, y: number): [PaperPoint, PaperPoint] => [
  { x, y },
  { x: x + SAMPLE, y },
];

const wallEntry: Entry = { words: 'legend.wall', sample: (x, y) => [line(...level(x, y), { 'stroke-width': WIDTH.wall })] };

const windowEntry: Entry = {
  words: 'legend.window',
  sample: (x, y) => [rect(x, y - WIDTH.wall / 2, SAMPLE, WIDTH.wall, { ...narrow, fill: '#fff' }), line(...level(x, y), narrow)],
};

const zoneEntry: Entry = {
  words: 'legend.zone',
  sample: (x, y) => [line(...level(x, y), BORDER)],
};

const zoneJoistsEntry: Entry = {
  words: 'legend.zoneJoists',
  sample: (x, y) => doubleArrow({ x: x + SAMPLE / 2, y }, false),
};

const joistEntry: Entry = {
  words: 'legend.joist',
  sample: (x, y) => [
    line(...level(x, y - 1), { ...narrow, 'stroke-dasharray': DASHES.dashed }),
    line(...level(x, y), { ...narrow, 'stroke-dasharray': DASHES.chain }),
    line(...level(x, y + 1), { ...narrow, 'stroke-dasharray': DASHES.dashed }),
  ],
};

const boardEntry: Entry = { words: 'legend.board', sample: (x, y) => [line(...level(x, y), wide)] };

const cutEntry: Entry = {
  words: 'legend.cut',
  sample: (x, y) => {
    const ticks = [0, 1, 2, 3].map((i) => {
      const foot = { x: x + 1.2 + i * 2.4, y: y - 0.6 };
      return [foot, { x: foot.x + 0.9, y: foot.y + 1.6 }] as const;
    });
    return [line(...level(x, y - 0.6), wide), strokes(ticks, narrow)];
  },
};

const screwEntry: Entry = {
  words: 'legend.screw',
  sample: (x, y) => [2, 5.5, 9].map((dx) => circle({ x: x + dx, y }, screwRadius(25), { fill: '#000', stroke: 'none' })),
};

const openingEntry: Entry = {
  words: 'legend.opening',
  sample: (x, y) => [
    rect(x + 2.5, y - 1.4, 6, 2.8, { ...wide, fill: '#fff' }),
    line({ x: x + 2.5, y: y - 1.4 }, { x: x + 8.5, y: y + 1.4 }, narrow),
    line({ x: x + 2.5, y: y + 1.4 }, { x: x + 8.5, y: y - 1.4 }, narrow),
  ],
};

const bareEntry: Entry = {
  words: 'legend.bare',
  sample: (x, y) => [
    strokes(
      [0, 1].map((i) => [
        { x: x + 1.5 + i * 5.6, y: y - 1.3 },
        { x: x + 4.1 + i * 5.6, y: y + 1.3 },
      ]),
      narrow,
    ),
  ],
};

const noFixEntry: Entry = {
  words: 'legend.noFix',
  sample: (x, y) => [
    strokes(
      [0, 1, 2, 3].map((i) => [
        { x: x + i * 2.6, y: y + 1.3 },
        { x: x + i * 2.6 + 2.6, y: y - 1.3 },
      ]),
      narrow,
    ),
  ],
};

const oldJointEntry: Entry = {
  words: 'legend.oldJoint',
  sample: (x, y) => [line(...level(x, y), { ...narrow, 'stroke-dasharray': DASHES.doubleChain })],
};

const runningEntry: Entry = {
  words: 'legend.running',
  sample: (x, y) => [
    line({ x: x + 1, y }, { x: x + SAMPLE, y }, narrow),
    circle({ x: x + 1, y }, 0.9, { ...narrow, fill: '#fff' }),
    polygon(
      [
        { x: x + SAMPLE, y },
        { x: x + SAMPLE - 2, y: y - 0.35 },
        { x: x + SAMPLE - 2, y: y + 0.35 },
      ],
      { fill: '#000', stroke: 'none' },
    ),
  ],
};

const proveEntry: Entry = {
  words: 'legend.prove',
  sample: (x, y) => [
    rect(x + 2.6, y - 1.9, 6, 3.8, narrow),
    labelSvg({ text: 'J1', x: x + 5.6, y, height: LETTERS.small, anchor: 'middle', bold: true }),
  ],
};

const upEntry = ({ say }: Subject): Entry => ({
  words: 'legend.up',
  sample: (x, y) => [labelSvg({ text: say('piece.up'), x: x + SAMPLE / 2, y, height: LETTERS.small, anchor: 'middle' })],
});

/** A real piece's number and board stand in for all. */
const pieceEntry = ({ plan }: Subject): Entry => {
  const raked = plan.layout.pieces.some(({ ends }) => ends.some(({ rake }) => rake !== undefined));
  const piece = plan.layout.pieces[0];
  const id = textWidth(piece?.id ?? '', LETTERS.medium, true) <= SAMPLE ? (piece?.id ?? '1.1') : '1.1';
  return {
    words: raked ? 'legend.pieceRaked' : 'legend.piece',
    sample: (x, y) => [labelSvg({ text: id, x: x + SAMPLE / 2, y, height: LETTERS.medium, anchor: 'middle', bold: true })],
  };
};
