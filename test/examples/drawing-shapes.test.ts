import { type CeilingPlan, type Piece, type Point, planCeiling } from 'soffitwright';
import { drawCutting, drawPlan } from 'soffitwright/drawing';
import { describe, expect, it } from 'vitest';
import {
  boxesTouch,
  everyElement,
  extentOf,
  layerOf,
  pointsOf,
  readSvg,
  type SvgElement,
  type TextBox,
  textBoxes,
} from '../generators/readSvg.js';
import { roomsToDraw } from '../generators/roomsToDraw.js';
import { holds, shapedNames, shapedPlan } from '../generators/shapedPlans.js';

const VIEWS = ['reflected', 'looking-up'] as const;
type View = (typeof VIEWS)[number];

const plans = new Map(shapedNames.map((name) => [name, shapedPlan(name)]));
const planOf = (name: string): CeilingPlan => plans.get(name) ?? shapedPlan(name);
/** Sheets are read once for all tests. */
const sheets = new Map<string, SvgElement>();
function sheetOf(name: string, view: View = 'reflected'): SvgElement {
  const key = `${name} ${view}`;
  const sheet = sheets.get(key) ?? readSvg(drawPlan(planOf(name), { view }));
  sheets.set(key, sheet);
  return sheet;
}
const cases = shapedNames.flatMap((name) => VIEWS.map((view) => [name, view] as const));
const textsOf = (elements: readonly SvgElement[]): string[] =>
  elements.flatMap(everyElement).flatMap(({ name, text }) => (name === 'text' ? [text] : []));
const wallRing = (root: SvgElement): Point[] => pointsOf(layerOf(root, 'wall')[0]);
const scaleOf = (root: SvgElement): number => Number(/1:(\d+) on/.exec(textsOf(layerOf(root, 'sheet')).join(' '))?.[1]);
const touching = (boxes: readonly TextBox[]): string[] =>
  boxes.flatMap((box, i) =>
    boxes.slice(i + 1).flatMap((other) => (boxesTouch(box, other) ? [`${box.text} on ${other.text}`] : [])),
  );
const cornersOf = ({ left, right, top, bottom }: TextBox): Point[] => [
  { x: left, y: top },
  { x: right, y: top },
  { x: right, y: bottom },
  { x: left, y: bottom },
];
/** Whether a line from one point to another runs through a box, looked at in small steps. */
function runsThrough(a: Point, b: Point, box: TextBox): boolean {
  const beside = Math.max(a.x, b.x) <= box.left || Math.min(a.x, b.x) >= box.right;
  if (beside || Math.max(a.y, b.y) <= box.top || Math.min(a.y, b.y) >= box.bottom) return false;
  return Array.from({ length: 401 }, (_, i) => i / 400).some((share) => {
    const [x, y] = [a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share];
    return x > box.left && x < box.right && y > box.top && y < box.bottom;
  });
}
const piecePolygon = (root: SvgElement, id: string): Point[] => {
  const found = everyElement(root).find(({ name, attributes }) => name === 'polygon' && attributes['data-piece'] === id);
  if (found === undefined) throw new Error(`no piece ${id}`);
  return pointsOf(found);
};
const sides = (ring: readonly Point[]): (readonly [Point, Point])[] => ring.map((a, i) => [a, ring[(i + 1) % ring.length]]);
const figuresIn = (root: SvgElement): string[] => textsOf(layerOf(root, 'dimension'));

describe('a room of any shape', () => {
  it.each(cases)('is drawn to the scale that it states, corner by corner: %s, %s', (name, view) => {
    const root = sheetOf(name, view);
    const { outline } = planOf(name).room;
    const ring = wallRing(root);
    const scale = scaleOf(root);
    expect(ring).toHaveLength(outline.length);
    const turn = view === 'reflected' ? 1 : -1;
    for (const [i, { x, y }] of ring.entries()) {
      expect((x - ring[0].x) * scale * turn).toBeCloseTo(outline[i].x - outline[0].x, 0);
      expect((ring[0].y - y) * scale).toBeCloseTo(outline[i].y - outline[0].y, 0);
    }
  });

  it.each(cases)('has no text on another, and all of it within the frame: %s, %s', (name, view) => {
    const root = sheetOf(name, view);
    const boxes = textBoxes(everyElement(root));
    const [width, height] = root.attributes.viewBox.split(' ').slice(2).map(Number);
    const outside = boxes.filter(
      ({ left, right, top, bottom }) => left < 7 || right > width - 7 || top < 7 || bottom > height - 7,
    );
    expect(outside).toEqual([]);
    expect(touching(boxes)).toEqual([]);
  });

  it.each(cases)('letters each piece inside its own outline, off the screws: %s, %s', (name, view) => {
    const root = sheetOf(name, view);
    const plan = planOf(name);
    const screws = layerOf(root, 'screw').map(({ attributes }) => ({ x: Number(attributes.cx), y: Number(attributes.cy) }));
    const boxes = textBoxes(layerOf(root, 'text'));
    const listed = textsOf(layerOf(root, 'sheet')).join(' ');
    for (const piece of plan.layout.pieces) {
      const ring = piecePolygon(root, piece.id);
      const inside = boxes.filter((box) => cornersOf(box).every((corner) => holds(ring, corner)));
      const text = inside.map((box) => box.text).join(' ');
      expect(`${text} `).toContain(`${piece.id} `);
      if (!listed.includes(`${piece.id} (`)) expect(text.split(/\s+/)).toContain(piece.board);
      const edges = sides(ring);
      const crossed = inside.filter((box) => edges.some(([a, b]) => runsThrough(a, b, box)));
      expect(crossed).toEqual([]);
      const onScrews = inside.filter((box) =>
        screws.some(({ x, y }) => x > box.left && x < box.right && y > box.top && y < box.bottom),
      );
      expect(onScrews).toEqual([]);
    }
  });

  it('numbers even a sliver, and lists its size', () => {
    const plan = planOf('Landing with a hatch');
    const pieces = plan.layout.pieces.map((piece) =>
      piece.row === 3 ? { ...piece, width: 110, outline: piece.outline.map(({ x, y }) => ({ x, y: Math.min(y, 2515) })) } : piece,
    );
    const root = readSvg(drawPlan({ ...plan, layout: { ...plan.layout, pieces } }));
    const boxes = textBoxes(layerOf(root, 'text'));
    for (const id of ['3.1', '3.2']) {
      const ring = piecePolygon(root, id);
      const inside = boxes.filter((box) => cornersOf(box).every((corner) => holds(ring, corner)));
      expect(inside.map(({ text }) => text)).toEqual([id]);
      expect(textsOf(layerOf(root, 'sheet')).join(' ')).toContain(`${id} (`);
    }
  });

  it('gives the number of a sliver that has no room for it beside it, at the end of a leader', () => {
    const plan = planOf('Landing with a hatch');
    const pieces = plan.layout.pieces.map((piece) =>
      piece.row === 3 ? { ...piece, width: 40, outline: piece.outline.map(({ x, y }) => ({ x, y: Math.min(y, 2445) })) } : piece,
    );
    for (const view of VIEWS) {
      const root = readSvg(drawPlan({ ...plan, layout: { ...plan.layout, pieces } }, { view }));
      const boxes = textBoxes(everyElement(root));
      expect(touching(boxes)).toEqual([]);
      const screws = layerOf(root, 'screw').map(({ attributes }) => ({ x: Number(attributes.cx), y: Number(attributes.cy) }));
      for (const id of ['3.1', '3.2']) {
        const [leader, ...more] = layerOf(root, 'text').filter(({ attributes }) => attributes['data-leader'] === id);
        expect(more).toEqual([]);
        const { x1, y1, x2, y2 } = leader.attributes;
        const [from, to] = [x1, x2].map((x, i) => ({ x: Number(x), y: Number([y1, y2][i]) }));
        expect(holds(piecePolygon(root, id), to)).toBe(true);
        expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeGreaterThan(2);
        const own = boxes.filter(({ text }) => text === id);
        const beside = own.filter((box) =>
          holds(cornersOf({ ...box, left: box.left - 1, right: box.right + 1, top: box.top - 1, bottom: box.bottom + 1 }), from),
        );
        expect(beside).toHaveLength(1);
        expect(cornersOf(beside[0]).every((corner) => holds(wallRing(root), corner))).toBe(true);
        expect(boxes.filter((box) => box !== beside[0] && runsThrough(from, to, box))).toEqual([]);
        const onScrew = ({ x, y }: Point) =>
          x > beside[0].left && x < beside[0].right && y > beside[0].top && y < beside[0].bottom;
        expect(screws.filter(onScrew)).toEqual([]);
        expect(textsOf(layerOf(root, 'sheet')).join(' ')).toContain(`${id} (`);
      }
    }
  });

  it.each(cases)('keeps the names of walls outside the room and off its walls, and leaves none out: %s, %s', (name, view) => {
    const root = sheetOf(name, view);
    const ring = wallRing(root);
    const walls = textBoxes(layerOf(root, 'text')).filter(({ text }) => /^[A-M]( |$)/.test(text));
    expect(walls.map(({ text }) => text[0]).sort()).toEqual(
      planOf(name)
        .room.outline.map((_, i) => String.fromCharCode(65 + i))
        .sort(),
    );
    for (const box of walls) {
      expect(cornersOf(box).some((corner) => holds(ring, corner))).toBe(false);
      expect(sides(ring).some(([a, b]) => runsThrough(a, b, box))).toBe(false);
    }
  });

  it('gives every wall its length, but not where the running dimensions do', () => {
    const names = textsOf(layerOf(sheetOf('L-shaped kitchen'), 'text'));
    expect(names).toEqual(
      expect.arrayContaining([
        'A hall wall (door)  4800',
        'B garden wall (window)  3600',
        'C  3300',
        'D  1200',
        'E  1500',
        'F  2400',
      ]),
    );
    // Splays of a bay: 500 out over 700.
    expect(
      textsOf(layerOf(sheetOf('Front room with a splayed bay'), 'text')).filter((text) => text.includes('860')),
    ).toHaveLength(2);
    expect(textsOf(layerOf(sheetOf('Landing with a hatch'), 'text'))).toEqual(expect.arrayContaining(['A door', 'B', 'C', 'D']));
  });

  it('marks walls with a window, and says in the key what the mark is', () => {
    for (const [name, count] of [
      ['Study with a curved bay', 8],
      ['Front room with a splayed bay', 3],
      ['Attic with a fan', 0],
    ] as const) {
      const root = sheetOf(name);
      const marks = layerOf(root, 'wall').filter(
        ({ name: tag, attributes }) => tag === 'polygon' && attributes['data-window'] !== undefined,
      );
      expect(marks).toHaveLength(count);
      expect(textsOf(layerOf(root, 'sheet')).join(' ').includes('wall with a window')).toBe(count > 0);
      // The mark lies in the thickness of its wall, outside the room.
      const ring = wallRing(root);
      for (const mark of marks) {
        const points = pointsOf(mark);
        const middle = {
          x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
          y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
        };
        expect(holds(ring, middle)).toBe(false);
      }
    }
  });

  it('leaves out windows, zones and their key with their layers', () => {
    const root = readSvg(drawPlan(planOf('Front room with a splayed bay'), { layers: ['board'] }));
    expect(layerOf(root, 'wall')).toEqual([]);
    expect(layerOf(root, 'zone')).toEqual([]);
    expect(textsOf([root]).join(' ')).not.toMatch(/window;|border of a zone/);
  });

  it('draws ticks on the piece that was cut, along rakes, notches and curves too', () => {
    for (const name of ['Attic with a fan', 'Landing with a hatch', 'Study with a curved bay', 'Out of square']) {
      for (const view of VIEWS) {
        const root = sheetOf(name, view);
        for (const path of layerOf(root, 'cut')) {
          const ring = piecePolygon(root, path.attributes['data-piece']);
          const tips = [...path.attributes.d.matchAll(/M(\S+) (\S+)L(\S+) (\S+?)(?=M|$)/g)];
          expect(tips.length).toBeGreaterThan(3);
          const outside = tips.filter(([, , , x, y]) => !holds(ring, { x: Number(x), y: Number(y) }));
          expect(outside).toEqual([]);
        }
      }
    }
  });
});

describe('running dimensions', () => {
  it('stand at both ends where the wall that they run from leans, each from the wall at that end', () => {
    // The wall leans 51 over 3000: the joist 200 from its foot is 149 from its head.
    const root = sheetOf('Out of square');
    const ring = extentOf(wallRing(root));
    const boxes = textBoxes(layerOf(root, 'dimension'));
    const at = (top: boolean): string[] =>
      boxes.filter(({ top: t, bottom }) => (top ? bottom < ring.top : t > ring.bottom)).map(({ text }) => text);
    expect(at(false)).toEqual(expect.arrayContaining(['0', '200', '600', '3800', '4200']));
    expect(at(true)).toEqual(expect.arrayContaining(['0', '149', '549', '3749', '4200']));
  });

  it('stand at one end where both say the same', () => {
    const root = sheetOf('L-shaped kitchen');
    expect(figuresIn(root).filter((text) => text === 'J1')).toHaveLength(1);
    expect(figuresIn(root)).toEqual(expect.arrayContaining(['40', '440', '4760', '4800', '1205', '2405', '3595']));
  });

  it('give the edges of the rows at both ends of a room whose walls do not run alike', () => {
    // 3500 deep at one end, 3480 at the other.
    expect(figuresIn(sheetOf('Bedroom with a bowed wall'))).toEqual(expect.arrayContaining(['3500', '3480']));
    expect(figuresIn(sheetOf('Bedroom with a bowed wall')).filter((text) => text === '2405')).toHaveLength(2);
  });

  it('name a joist that is cut by a hatch at the end where it can be seen, and place the trimmers', () => {
    const root = sheetOf('Landing with a hatch');
    const ring = extentOf(wallRing(root));
    const boxes = textBoxes(layerOf(root, 'dimension'));
    const named = (text: string): TextBox[] => boxes.filter((box) => box.text === text);
    expect(named('J5a')).toHaveLength(1);
    expect(named('J5a')[0].top).toBeGreaterThan(ring.bottom);
    expect(named('J5b')).toHaveLength(1);
    expect(named('J5b')[0].bottom).toBeLessThan(ring.top);
    expect(boxes.map(({ text }) => text)).toEqual(expect.arrayContaining(['T1', '876', 'T2', '1524']));
  });

  it.each(cases)('have no line through a figure or a text on the ceiling: %s, %s', (name, view) => {
    const root = sheetOf(name, view);
    const lines = layerOf(root, 'dimension')
      .filter(({ name: tag }) => tag === 'polyline')
      .flatMap((each) =>
        pointsOf(each)
          .slice(1)
          .map((to, i) => [pointsOf(each)[i], to] as const),
      );
    expect(lines.length).toBeGreaterThan(20);
    const ring = wallRing(root);
    const figures = textBoxes(layerOf(root, 'dimension'));
    const lettering = textBoxes(layerOf(root, 'text')).filter((box) => cornersOf(box).every((corner) => holds(ring, corner)));
    // A hair off the boxes: a leader ends at its figure.
    const crossed = [...figures, ...lettering].filter(({ left, right, top, bottom, text }) =>
      lines.some(([a, b]) =>
        runsThrough(a, b, { text, left: left + 0.2, right: right - 0.2, top: top + 0.2, bottom: bottom - 0.2 }),
      ),
    );
    expect(crossed.map(({ text }) => text)).toEqual([]);
  });

  it('run from a zero of its own in every zone', () => {
    const root = sheetOf('Through lounge');
    const origins = layerOf(root, 'dimension').filter(({ attributes }) => attributes.r === '0.9');
    expect(origins).toHaveLength(4);
    // The rear rows are measured from the border at 3650: 4855 - 3650.
    expect(figuresIn(root)).toEqual(expect.arrayContaining(['1205', '2405', '3605', '3900', '3400']));
    expect(figuresIn(root)).not.toContain('7550');
    // Joists go by their own names beside their zone.
    expect(figuresIn(root).filter((text) => text === 'J3')).toHaveLength(2);
  });
});

describe('zones', () => {
  it('have their borders drawn once, and their names with the way that their joists run', () => {
    const root = sheetOf('Through lounge');
    const zone = layerOf(root, 'zone');
    const borders = zone.filter(({ attributes }) => attributes['data-zone'] !== undefined);
    expect(borders).toHaveLength(2);
    const scale = scaleOf(root);
    const left = extentOf(wallRing(root)).left;
    const places = borders.map(({ attributes }) => Math.round((Number(attributes.x1) - left) * scale));
    expect(places.sort((a, b) => a - b)).toEqual([3400, 3650]);
    // Wider than the edges of the boards beside it, which would hide it.
    const [edge] = layerOf(root, 'board').map(({ attributes }) => Number(attributes['stroke-width']));
    for (const { attributes } of borders) expect(Number(attributes['stroke-width'])).toBeGreaterThan(edge);
    const runs = zone.filter(({ name, attributes }) => name === 'line' && attributes['data-zone'] === undefined);
    expect(runs.map(({ attributes }) => (attributes.x1 === attributes.x2 ? 'up' : 'across')).sort()).toEqual(['across', 'up']);
    expect(textsOf(layerOf(root, 'text'))).toEqual(expect.arrayContaining(['front', 'rear']));
    expect(textsOf(layerOf(root, 'sheet')).join(' ')).toContain(
      'front: 9 up the sheet; rear: 9 across the sheet; 47 wide, as given',
    );
  });

  it('stand in their zone, off the edges of pieces', () => {
    for (const view of VIEWS) {
      const root = sheetOf('Front room with a splayed bay', view);
      const labels = textBoxes(layerOf(root, 'text')).filter(({ text }) => text === 'bay' || text === 'main ceiling');
      expect(labels).toHaveLength(2);
      const rings = layerOf(root, 'board').map(pointsOf);
      const ring = wallRing(root);
      for (const box of labels) {
        expect(cornersOf(box).every((corner) => holds(ring, corner))).toBe(true);
        expect(rings.flatMap(sides).filter(([a, b]) => runsThrough(a, b, box))).toEqual([]);
      }
    }
  });

  it('may lie in the midst of the room: their figures stand outside, and no line runs to them over other boards', () => {
    const plan = planOf('Landing with a hatch');
    const outline = [
      { x: 800, y: 600 },
      { x: 2800, y: 600 },
      { x: 2800, y: 2000 },
      { x: 800, y: 2000 },
    ];
    const zones = [{ id: 'low', outline, joists: { direction: 'x' as const, first: 100, spacing: 400 } }];
    // One of them is level with the edge of two rows, whose figure stands on the line before.
    const timber = [700, 1205, 1500, 1900].map((y, i) => ({
      ...plan.joists[0],
      id: `low J${i + 1}`,
      start: { x: 800, y },
      end: { x: 2800, y },
    }));
    const root = readSvg(drawPlan({ ...plan, room: { ...plan.room, zones }, joists: [...plan.joists, ...timber] }));
    expect(layerOf(root, 'zone').filter(({ attributes }) => attributes['data-zone'] === 'low')).toHaveLength(4);
    expect(figuresIn(root)).toEqual(expect.arrayContaining(['100', '605', '900', '1300', '1400', '1205']));
    const { left, right, top, bottom } = extentOf(wallRing(root));
    const inside = layerOf(root, 'dimension')
      .filter(({ name }) => name === 'polyline')
      .flatMap(pointsOf)
      .filter(({ x, y }) => x > left && x < right && y > top && y < bottom);
    expect(inside).toEqual([]);
    const lines = layerOf(root, 'dimension')
      .filter(({ name }) => name === 'polyline')
      .flatMap((each) => sides(pointsOf(each)).slice(0, -1));
    const crossing = textBoxes(layerOf(root, 'dimension')).filter(({ text, ...box }) =>
      lines.some(([a, b]) =>
        runsThrough(a, b, { text, left: box.left + 0.2, right: box.right - 0.2, top: box.top + 0.2, bottom: box.bottom - 0.2 }),
      ),
    );
    expect(crossing).toEqual([]);
  });

  it('name openings by the walls that they face', () => {
    const room = {
      ...planOf('Through lounge').room,
      openings: [{ id: 'L1', kind: 'light' as const, centre: { x: 5000, y: 1000 }, diameter: 80 }],
    };
    const texts = textsOf(layerOf(readSvg(drawPlan({ ...planOf('Through lounge'), room })), 'sheet')).join(' ');
    // In the rear zone boards run up the sheet: across the joists is from the party wall, along them from the border at 3650.
    expect(texts).toContain('Openings, centres: L1 Ø80 at 1000 from A party wall / 1350 from border of rear.');
  });
});

/** The sketch of a piece: its corners in mm from the left end and from the upper edge. */
function sketched(plan: CeilingPlan, id: string, view: View): Point[] {
  for (let sheet = 1; ; sheet++) {
    const root = readSvg(drawCutting(plan, { view, sheet }));
    const texts = textsOf(layerOf(root, 'sheet'));
    if (!texts.some((text) => text.includes('Shaped pieces') && !text.includes('each with'))) continue;
    const scale = Number(/1:(\d+)/.exec(texts.join(' '))?.[1]);
    const found = everyElement(root).find(({ attributes }) => attributes['data-piece'] === id);
    if (found === undefined) continue;
    const points = pointsOf(found);
    const { left, top } = extentOf(points);
    return points.map(({ x, y }) => ({ x: (x - left) * scale, y: (y - top) * scale }));
  }
}
/** Corners of the one that no corner of the other is within a mm of. */
const apart = (one: readonly Point[], other: readonly Point[]): Point[] =>
  one.filter((a) => !other.some((b) => Math.abs(a.x - b.x) < 1 && Math.abs(a.y - b.y) < 1));
const shapedPieces = (plan: CeilingPlan): Piece[] => plan.layout.pieces.filter(({ hand }) => hand !== undefined);

describe('what no zone has of a ceiling', () => {
  const board = { id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const };
  const corners = (x0: number, x1: number, y0: number, y1: number): Point[] => [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  const drawn = (outline: Point[], zones: Record<string, Point[]>) =>
    readSvg(
      drawPlan(
        planCeiling({
          room: {
            outline,
            zones: Object.entries(zones).map(([id, ring]) => ({
              id,
              outline: ring,
              joists: { direction: 'y' as const, first: 60, spacing: 400, last: 2340, width: 50 },
            })),
          },
          joists: [],
          boards: [board],
          lining: [],
        }),
      ),
    );
  const hatched = (root: SvgElement): Point[] =>
    everyElement(root)
      .filter(({ attributes }) => attributes['data-bare'] !== undefined)
      .flatMap(({ attributes }) =>
        [...attributes.d.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) })),
      );
  const names = (root: SvgElement) => textBoxes(layerOf(root, 'text')).filter(({ text }) => text.includes('no boards'));
  const inKey = (root: SvgElement) => textsOf(layerOf(root, 'sheet')).join(' ').includes('old ceiling or beam');
  /** A ring of the plan on the sheet, where the room begins at 0, 0. */
  const onSheet = (root: SvgElement, ring: readonly Point[]): Point[] => {
    const [origin] = wallRing(root);
    return ring.map(({ x, y }) => ({ x: origin.x + x / scaleOf(root), y: origin.y - y / scaleOf(root) }));
  };
  const grown = (ring: readonly Point[]): Point[] => {
    const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
    return corners(Math.min(...xs) - 0.01, Math.max(...xs) + 0.01, Math.min(...ys) - 0.01, Math.max(...ys) + 0.01);
  };

  it('is hatched, named as no ceiling to be boarded, and in the key: a beam between two ceilings', () => {
    const root = drawn(corners(0, 2400, 0, 4250), { near: corners(0, 2400, 0, 1800), far: corners(0, 2400, 2050, 4250) });
    const beam = onSheet(root, corners(0, 2400, 1800, 2050));
    expect(hatched(root).length).toBeGreaterThan(20);
    expect(hatched(root).every((point) => holds(grown(beam), point))).toBe(true);
    expect(names(root).map(({ text }) => text)).toEqual(['old ceiling or beam: no boards']);
    expect(
      names(root)
        .flatMap(cornersOf)
        .every((corner) => holds(beam, corner)),
    ).toBe(true);
    expect(inKey(root)).toBe(true);
    expect(touching(textBoxes(everyElement(root)))).toEqual([]);
  });

  it('goes round a zone that lies in the midst of it', () => {
    const zone = corners(600, 3000, 600, 3000);
    const root = drawn(corners(0, 3600, 0, 3600), { island: zone });
    const island = onSheet(root, corners(601, 2999, 601, 2999));
    expect(hatched(root).length).toBeGreaterThan(20);
    expect(hatched(root).some((point) => holds(island, point))).toBe(false);
    expect(names(root)).toHaveLength(1);
    expect(
      names(root)
        .flatMap(cornersOf)
        .some((corner) => holds(island, corner)),
    ).toBe(false);
  });

  it('has its word in the key only where it is too narrow for any', () => {
    const root = drawn(corners(0, 2400, 0, 3660), { near: corners(0, 2400, 0, 1800), far: corners(0, 2400, 1860, 3660) });
    expect(hatched(root).length).toBeGreaterThan(10);
    expect(names(root)).toEqual([]);
    expect(inKey(root)).toBe(true);
  });

  it('is not there where all is boarded', () => {
    for (const name of shapedNames.filter((each) => (planOf(each).room.zones ?? []).length === 0))
      expect(hatched(sheetOf(name))).toEqual([]);
    const root = drawn(corners(0, 2400, 0, 3600), { near: corners(0, 2400, 0, 1800), far: corners(0, 2400, 1800, 3600) });
    expect([hatched(root), inKey(root)]).toEqual([[], false]);
  });
});

describe('the cutting sheets', () => {
  it.each(shapedNames)('have no text on another and none outside: %s', (name) => {
    const plan = planOf(name);
    const first = drawCutting(plan);
    const count = Number(/Sheet 1 of (\d+)/.exec(first)?.[1]);
    for (let sheet = 1; sheet <= count; sheet++) {
      const boxes = textBoxes(everyElement(readSvg(drawCutting(plan, { sheet }))));
      expect(boxes.filter(({ left, right, top, bottom }) => left < 7 || right > 203 || top < 7 || bottom > 290)).toEqual([]);
      expect(touching(boxes)).toEqual([]);
    }
  });

  it.each(shapedNames)('sketch every handed piece as it is marked face up, and its mirror image seen from above: %s', (name) => {
    const plan = planOf(name);
    for (const piece of shapedPieces(plan)) {
      const marked = piece.hand?.outline ?? [];
      const width = Math.max(...marked.map(({ y }) => y));
      // On the sheet y counts downward.
      const faceUp = marked.map(({ x, y }) => ({ x, y: width - y }));
      for (const [view, expected] of [
        ['looking-up', faceUp],
        ['reflected', marked],
      ] as const) {
        const found = sketched(plan, piece.id, view);
        expect(apart(expected, found)).toEqual([]);
        expect(apart(found, expected)).toEqual([]);
      }
    }
  });

  it('dimension every corner of a notch along the piece and across it', () => {
    const root = readSvg(drawCutting(planOf('Landing with a hatch'), { sheet: 2 }));
    const texts = textsOf(layerOf(root, 'cutting'));
    // 1.1 runs from 5 to 2023.5; the notch from 1245 to 1855 and from 895 up, row 1 beginning at 5.
    expect(texts).toEqual(expect.arrayContaining(['1.1: 2018 × 1200, from B1', '1240', '1850', '2018', '890', '0', '1200']));
    expect(texts).toEqual(expect.arrayContaining(['to A door', 'to B', 'to C', 'to D', 'L1 Ø90']));
    expect(textsOf(layerOf(root, 'sheet'))).toContain('Face up, as seen from below: mirror image of the plan');
  });

  it('draw a shaped piece by its outline on its board, and never call its board whole', () => {
    const plan = planOf('Landing with a hatch');
    const boards = plan.layout.boards.map((board) => ({ ...board, cuts: [] }));
    const root = readSvg(drawCutting({ ...plan, layout: { ...plan.layout, boards } }));
    const texts = textsOf(layerOf(root, 'sheet')).join(' ');
    const shaped = plan.layout.pieces.filter(({ id }) => id === '1.1' || id === '2.2');
    for (const { board } of shaped) expect(texts).not.toContain(`${board} (`);
    const drawn = layerOf(root, 'cutting').filter(({ attributes }) => attributes['data-piece'] !== undefined);
    expect(drawn.map(({ attributes }) => attributes['data-piece']).sort()).toEqual(['1.1', '2.2']);
    expect(pointsOf(drawn[0])).toHaveLength(8);
    expect(texts).toContain('Shaped pieces, each with a sketch of its own on the sheets after the boards: 1.1, 2.2.');
  });

  it('name no walls round a board that gives pieces to two zones', () => {
    const plan = planOf('Front room with a splayed bay');
    const shared = plan.layout.boards.find(
      ({ id }) => new Set(plan.layout.pieces.filter(({ board }) => board === id).map(({ zone }) => zone)).size > 1,
    );
    expect(shared).toBeDefined();
    const texts = textsOf(layerOf(readSvg(drawCutting(plan)), 'cutting'));
    const boards = plan.layout.boards.length;
    expect(texts.filter((text) => text === 'to B')).toHaveLength(boards - 2);
  });
});

describe('shaped plans', () => {
  it('cover their rooms but for the gaps, so that the drawings are tried on something real', () => {
    for (const name of shapedNames) {
      const { room, layout } = planOf(name);
      const area = (ring: readonly Point[]): number =>
        Math.abs(sides(ring).reduce((sum, [a, b]) => sum + (a.x * b.y - b.x * a.y) / 2, 0));
      const openings = (room.openings ?? []).reduce((sum, each) => sum + ('outline' in each ? area(each.outline) : 0), 0);
      const strip = name === 'Through lounge' ? 250 * 3600 : 0;
      const pieces = layout.pieces.reduce((sum, piece) => sum + area(piece.outline), 0);
      const share = pieces / (area(room.outline) - openings - strip);
      expect(share).toBeGreaterThan(0.98);
      expect(share).toBeLessThan(1);
      expect(roomsToDraw[name].zones.length).toBe(new Set(layout.pieces.map(({ zone }) => zone)).size);
    }
  });
});
