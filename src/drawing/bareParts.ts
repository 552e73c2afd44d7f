import { extentOf } from '../survey/outline.js';
import { restOfRoom } from '../survey/restOfRoom.js';
import { type Borders, isIn } from './bounds.js';
import { extentOnSheet } from './extentOnSheet.js';
import { hatch } from './hatch.js';
import { heartOf } from './heartOf.js';
import { type Ink, inkOn } from './ink.js';
import { type Box, boxOf, grown, type Label, overlap } from './label.js';
import { LETTERS } from './lettering.js';
import { WIDTH } from './lineTypes.js';
import type { Sheet } from './sheet.js';
import type { Subject } from './subject.js';
import { type PaperPoint, strokes } from './svg.js';

/** What of a room with zones no board covers: a beam between two ceilings, or old ceiling that is left. */
export function bareParts({ plan: { room, layout } }: Pick<Subject, 'plan'>): readonly Borders[] {
  if ((room.zones ?? []).length === 0) return [];
  const middles = layout.pieces
    .filter(({ zone }) => zone === undefined)
    .map(({ outline }) => {
      const { left, right, low, high } = extentOf(outline);
      return { x: (left + right) / 2, y: (low + high) / 2 };
    });
  return restOfRoom(room).filter((part) => !middles.some((middle) => isIn(part, middle)));
}

/** Lines that fall to the right, twice as far apart as those of a zone without screws. */
export const BARE = { pitch: 4, falling: true } as const;

export const bareInk = (parts: readonly Borders[], sheet: Sheet): Ink[] =>
  inkOn(
    'zone',
    parts.map((part) => strokes(hatch(ringsOf(part, sheet), BARE), { 'stroke-width': WIDTH.narrow, 'data-bare': 'true' })),
  );

const ringsOf = ({ outline, holes = [] }: Borders, { place }: Sheet): PaperPoint[][] =>
  [outline, ...holes].map((ring) => ring.map(place));

/** Clear paper round the words, and the step of the search for a place; mm on paper. */
const ROOM = 0.6;
const STEP = 1;

/** What each part is, in as many words as go into it, level or upright; nothing in one that is too narrow. */
export function bareLabels(parts: readonly Borders[], { say }: Subject, sheet: Sheet, taken: readonly Box[]): Label[] {
  return parts.flatMap((part) => {
    const rings = ringsOf(part, sheet);
    const heart = heartOf(rings[0]);
    const places = placesIn(extentOnSheet(rings[0]), heart);
    for (const text of [say('bare.full'), say('bare.short')]) {
      for (const upright of [false, true]) {
        const common = { text, height: LETTERS.small, anchor: 'middle', upright, clear: true } as const;
        const found = places.find((place) => fits(boxOf({ ...common, ...place }), rings, taken));
        if (found !== undefined) return [{ ...common, ...found }];
      }
    }
    return [];
  });
}

/** Places all over a box, the nearest to its heart first. */
function placesIn({ left, right, top, bottom }: Box, heart: PaperPoint): PaperPoint[] {
  const away = ({ x, y }: PaperPoint): number => (x - heart.x) ** 2 + (y - heart.y) ** 2;
  const along = (from: number, to: number, middle: number): number[] => {
    const first = Math.ceil((from - middle) / STEP);
    return Array.from(
      { length: Math.max(0, Math.floor((to - middle) / STEP) - first + 1) },
      (_, i) => middle + (first + i) * STEP,
    );
  };
  return along(left, right, heart.x)
    .flatMap((x) => along(top, bottom, heart.y).map((y) => ({ x, y })))
    .sort((a, b) => away(a) - away(b) || a.x - b.x || a.y - b.y);
}

function fits(box: Box, [outline, ...holes]: readonly (readonly PaperPoint[])[], taken: readonly Box[]): boolean {
  const { left, right, top, bottom } = grown(box, ROOM);
  const corners = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  const isClear = [...holes, outline].every((ring) => !ring.some(({ x, y }) => x > left && x < right && y > top && y < bottom));
  return isClear && corners.every((corner) => isIn({ outline, holes }, corner)) && !taken.some((other) => overlap(box, other));
}
