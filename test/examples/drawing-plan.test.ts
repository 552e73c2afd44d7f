import { type CeilingPlan, InputError, isInputError, type NoFixZone } from 'soffitwright';
import { drawPlan } from 'soffitwright/drawing';
import { describe, expect, it } from 'vitest';
import { type DrawnRoom, drawnPlan, drawnRooms } from '../generators/drawnPlans.js';
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

const names = Object.keys(drawnRooms);
const bedroom = drawnPlan(drawnRooms['back bedroom']);

const read = (plan: CeilingPlan, options?: Parameters<typeof drawPlan>[1]): SvgElement => readSvg(drawPlan(plan, options));
/** Sheets of the rooms above are read once for all tests. */
const sheets = new Map<string, SvgElement>();
function sheetOf(name: string, view: 'reflected' | 'looking-up' = 'reflected'): SvgElement {
  const key = `${name} ${view}`;
  const sheet = sheets.get(key) ?? read(drawnPlan(drawnRooms[name]), { view });
  sheets.set(key, sheet);
  return sheet;
}
const textsOf = (elements: readonly SvgElement[]): string[] =>
  elements.flatMap(everyElement).flatMap(({ name, text }) => (name === 'text' ? [text] : []));
const wallOf = (root: SvgElement) => extentOf(pointsOf(layerOf(root, 'wall')[0]));
const scaleOf = (root: SvgElement): number => {
  const text = textsOf(layerOf(root, 'sheet')).join(' ');
  return Number(/1:(\d+) on/.exec(text)?.[1]);
};
const piecePolygon = (root: SvgElement, id: string): SvgElement => {
  const found = layerOf(root, 'board').find(({ attributes }) => attributes['data-piece'] === id);
  if (found === undefined) throw new Error(`no piece ${id}`);
  return found;
};
const touching = (boxes: readonly TextBox[]): string[] =>
  boxes.flatMap((box, i) =>
    boxes.slice(i + 1).flatMap((other) => (boxesTouch(box, other) ? [`${box.text} on ${other.text}`] : [])),
  );
const problemsOf = (action: () => unknown) => {
  try {
    action();
  } catch (error) {
    if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
  throw new Error('no error');
};

describe('the sheet', () => {
  it.each(names)('is SVG in mm on A4 or A3: %s', (name) => {
    const root = sheetOf(name);
    expect(root.name).toBe('svg');
    const { width, height, viewBox } = root.attributes;
    expect([width, height].sort()).toEqual(name === 'hall' ? ['297mm', '420mm'] : ['210mm', '297mm']);
    // One unit is one mm, so that it prints to scale.
    expect(viewBox).toBe(`0 0 ${Number.parseInt(width, 10)} ${Number.parseInt(height, 10)}`);
  });

  it.each(names)('is to the scale that it states: %s', (name) => {
    const { width, depth } = drawnRooms[name];
    const root = sheetOf(name);
    const wall = wallOf(root);
    const scale = scaleOf(root);
    expect([20, 25, 30, 40, 50]).toContain(scale);
    expect(wall.right - wall.left).toBeCloseTo(width / scale, 2);
    expect(wall.bottom - wall.top).toBeCloseTo(depth / scale, 2);
  });

  it('keeps to a scale that was asked for', () => {
    const wall = wallOf(read(bedroom, { scale: 50 }));
    expect(wall.right - wall.left).toBeCloseTo(72, 6);
    expect(wall.bottom - wall.top).toBeCloseTo(60, 6);
  });

  it('takes A3 only where A4 is not legible, and says so', () => {
    const texts = textsOf(layerOf(sheetOf('hall'), 'sheet')).join(' ');
    expect(texts).toContain('1:40 on A3, too small to read on A4');
    expect(textsOf(layerOf(sheetOf('back bedroom'), 'sheet')).join(' ')).toContain('1:25 on A4. Do not scale.');
  });

  it('takes a smaller scale for a room that fits no sheet otherwise', () => {
    const long: DrawnRoom = {
      ...drawnRooms['back bedroom'],
      width: 24_000,
      positions: [...new Array(60).keys()].map((k) => 25 + k * 400),
    };
    const root = read(drawnPlan(long));
    const wall = wallOf(root);
    expect(scaleOf(root)).toBe(100);
    expect(wall.right - wall.left).toBeCloseTo(240, 6);
  });

  it('refuses a scale at which the room does not fit', () => {
    expect(problemsOf(() => drawPlan(bedroom, { scale: 5 }))).toEqual(['sheet-too-small options.scale']);
    expect(problemsOf(() => drawPlan(drawnPlan(drawnRooms.hall), { scale: 25, paper: 'A4' }))).toEqual([
      'sheet-too-small options.scale',
    ]);
  });

  it.each(names)('is black on white, with no line under 0.25 mm and no letter under 2.5 mm: %s', (name) => {
    const elements = everyElement(sheetOf(name));
    const values = (key: string): string[] => elements.flatMap(({ attributes }) => attributes[key] ?? []);
    expect(new Set([...values('fill'), ...values('stroke')])).toEqual(new Set(['#000', '#fff', 'none']));
    expect(Math.min(...values('stroke-width').map(Number))).toBe(0.25);
    // A capital is 0.716 of the font size high.
    expect(Math.min(...values('font-size').map(Number)) * 0.716).toBeGreaterThanOrEqual(2.499);
    expect(elements.every(({ attributes }) => attributes.style === undefined)).toBe(true);
  });

  it('says what the plan is: room, view, scale, joists, boards, screws, certainty, rules, and what it is not', () => {
    const texts = textsOf(layerOf(sheetOf('back bedroom'), 'sheet')).join(' ');
    for (const words of [
      'Back bedroom',
      'Plan, reflected: same way round as the floor',
      'mm, from B and from A door',
      '10 up the sheet, 47 wide, as given',
      '6 of 1200 x 2400 x 12.5',
      '208, each 55 mm long',
      'sure: within edge rules 100%, on timber 100%',
      'UK: warranty table, generic specification clauses, common practice',
      'Not a structural, asbestos, fire or building-control approval.',
      'Cables and pipes may run anywhere above the old ceiling.',
    ]) {
      expect(texts).toContain(words);
    }
    expect(texts).not.toContain('HOLD');
  });

  it('is stamped under a hold, with the reason', () => {
    const texts = textsOf(layerOf(read(drawnPlan(drawnRooms['box room']), { layers: [] }), 'sheet'));
    expect(texts.filter((text) => text === 'HOLD')).toHaveLength(2);
    expect(texts.join(' ')).toContain('Do not start: nothing is to be bought, cut or fixed.');
    expect(texts.join(' ')).toContain('has no asbestos test result');
  });

  it('names joists to prove first, frames them, and never rounds a probability up', () => {
    const root = sheetOf('hall');
    const texts = textsOf(layerOf(root, 'sheet')).join(' ');
    expect(texts).toContain('prove first: within edge rules 89%, on timber 97%');
    expect(texts).toContain('Prove first: J7, J15.');
    const frames = layerOf(root, 'dimension').filter(({ name }) => name === 'rect');
    expect(frames).toHaveLength(2);
    const named = textBoxes(layerOf(root, 'dimension')).filter(({ text }) => text === 'J7' || text === 'J15');
    for (const frame of frames) {
      const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((key) => Number(frame.attributes[key]));
      expect(named.filter((box) => boxesTouch(box, { left: x, right: x + width, top: y, bottom: y + height }))).toHaveLength(1);
    }
  });

  it('says check when the ends are less than sure and no joist is named', () => {
    const unsure = { ...bedroom, confidence: { onTimber: 0.9999, withinEdgeRules: 0.949999 } };
    expect(textsOf(layerOf(read(unsure), 'sheet')).join(' ')).toContain('check: within edge rules 94%, on timber 99%');
  });
});

describe('what is drawn', () => {
  it('has two dashed edges and a centre line for each joist', () => {
    const root = sheetOf('back bedroom');
    expect(layerOf(root, 'joist')).toHaveLength(20);
    expect(layerOf(root, 'chalk')).toHaveLength(10);
    expect(layerOf(root, 'joist').every(({ attributes }) => attributes['stroke-dasharray'] === '3 0.75')).toBe(true);
    const wall = wallOf(root);
    const centres = layerOf(root, 'chalk').map(({ attributes }) => (Number(attributes.x1) - wall.left) * 25);
    for (const [i, centre] of centres.entries()) expect(centre).toBeCloseTo(bedroom.joists[i].start.x, 1);
  });

  it('dimensions every joist and both walls from the wall that the figures run from', () => {
    const texts = textsOf(layerOf(sheetOf('back bedroom'), 'dimension'));
    const positions = ['25', '425', '825', '1225', '1625', '2025', '2425', '2825', '3225', '3575', '3600'];
    expect(texts).toEqual(expect.arrayContaining([...positions, ...bedroom.joists.map(({ id }) => id)]));
    expect(texts.filter((text) => text === '0')).toHaveLength(2);
  });

  it('dimensions the edges of the rows on the other side', () => {
    const root = sheetOf('back bedroom');
    const wall = wallOf(root);
    const rows = textBoxes(layerOf(root, 'dimension')).filter(
      ({ right, bottom }) => right < wall.left && bottom < wall.bottom + 5,
    );
    expect(rows.map(({ text }) => text).sort()).toEqual(['0', '1205', '2405', '2995', '3000', '5']);
  });

  it('dimensions joists at both ends when they are not parallel', () => {
    const root = sheetOf('fan');
    const wall = wallOf(root);
    const figures = textBoxes(layerOf(root, 'dimension')).filter(({ text }) => /^\d+$/.test(text));
    const beyond = (test: (box: { top: number; bottom: number; left: number }) => boolean) =>
      figures.filter((box) => box.left > wall.left - 6 && test(box)).map(({ text }) => text);
    expect(beyond(({ top }) => top > wall.bottom)).toEqual(expect.arrayContaining(['0', '425', '3575', '3600']));
    expect(beyond(({ bottom }) => bottom < wall.top)).toEqual(expect.arrayContaining(['0', '423', '3557', '3600']));
  });

  it('dimensions joists across the sheet at its left', () => {
    const room = drawnRooms['joists along x'];
    const root = read(drawnPlan(room));
    const wall = wallOf(root);
    const left = textBoxes(layerOf(root, 'dimension')).filter(({ right }) => right < wall.left);
    const ids = left.filter(({ text }) => text.startsWith('J'));
    expect(ids).toHaveLength(12);
    // J1 is lowest on the sheet, since y runs up it.
    expect(ids.find(({ text }) => text === 'J1')?.top).toBe(Math.max(...ids.map(({ top }) => top)));
  });

  it.each(names)('outlines and letters every piece with number, size as cut and board: %s', (name) => {
    const plan = drawnPlan(drawnRooms[name]);
    const root = read(plan);
    expect(layerOf(root, 'board')).toHaveLength(plan.layout.pieces.length);
    const boxes = textBoxes(layerOf(root, 'text'));
    const listed = textsOf(layerOf(root, 'sheet')).join(' ');
    for (const piece of plan.layout.pieces) {
      const edge = extentOf(pointsOf(piecePolygon(root, piece.id)));
      const inside = boxes.filter(
        (box) => box.left > edge.left && box.right < edge.right && box.top > edge.top && box.bottom < edge.bottom,
      );
      const lettering = inside
        .map(({ text }) => text)
        .join(' ')
        .replace(/\s+/g, ' ');
      const size = `${Math.floor(piece.cutLength)} × ${Math.floor(piece.width)}`;
      expect(lettering).toContain(piece.id);
      if (!listed.includes(`${piece.id} (${size}, ${piece.board})`)) {
        expect(lettering).toContain(size);
        expect(lettering.split(' ')).toContain(piece.board);
      }
    }
  });

  it('marks every screw', () => {
    expect(layerOf(sheetOf('back bedroom'), 'screw')).toHaveLength(bedroom.fixings.count);
  });

  it('ticks cut edges on the side of the cut piece, and no others', () => {
    const root = sheetOf('back bedroom');
    const ticked = layerOf(root, 'cut').map(({ attributes }) => attributes['data-piece']);
    const cut = bedroom.layout.pieces.filter(
      ({ ends, edges }) => ends.some(({ made }) => made === 'cut') || Object.values(edges).includes('cut'),
    );
    expect(ticked).toEqual(cut.map(({ id }) => id));
    for (const path of layerOf(root, 'cut')) {
      const piece = bedroom.layout.pieces.find(({ id }) => id === path.attributes['data-piece']);
      const { left, right, top, bottom } = extentOf(pointsOf(piecePolygon(root, piece?.id ?? '')));
      const on = { left: 0, right: 0, top: 0, bottom: 0 };
      for (const [, x1, y1, x2, y2] of path.attributes.d.matchAll(/M(\S+) (\S+)L(\S+) (\S+?)(?=M|$)/g)) {
        expect(Number(x2)).toBeGreaterThan(left);
        expect(Number(x2)).toBeLessThan(right);
        expect(Number(y2)).toBeGreaterThan(top);
        expect(Number(y2)).toBeLessThan(bottom);
        const side = (['left', 'right', 'top', 'bottom'] as const).find((each) =>
          each === 'left' || each === 'right' ? Number(x1) === { left, right }[each] : Number(y1) === { top, bottom }[each],
        );
        if (side === undefined) throw new Error('a tick that stands on no edge');
        on[side]++;
      }
      expect(on.left > 0).toBe(piece?.ends[0].made === 'cut');
      expect(on.right > 0).toBe(piece?.ends[1].made === 'cut');
      expect(on.bottom > 0).toBe(piece?.edges.low === 'cut');
      expect(on.top > 0).toBe(piece?.edges.high === 'cut');
    }
  });

  it('crosses openings diagonally, names them, and gives their places', () => {
    const plan = drawnPlan(drawnRooms['box room']);
    const root = read(plan);
    const opening = layerOf(root, 'opening');
    expect(opening.filter(({ name }) => name === 'circle')).toHaveLength(4);
    expect(opening.filter(({ name }) => name === 'polygon')).toHaveLength(1);
    expect(opening.filter(({ name }) => name === 'line')).toHaveLength(10);
    expect(textsOf(layerOf(root, 'text'))).toEqual(expect.arrayContaining(['L1', 'L2', 'L3', 'L4', 'H1']));
    expect(textsOf(layerOf(root, 'sheet')).join(' ')).toContain('L4 Ø70 at 1580 / 1750; H1 750 × 550 at 1280 / 1275.');
  });

  it('names the walls clockwise on the plan from the one with the door', () => {
    const walls = textBoxes(layerOf(sheetOf('back bedroom'), 'text')).filter(({ text }) => /^[A-D]( |$)/.test(text));
    expect(walls.map(({ text }) => text).sort()).toEqual(['A door', 'B', 'C window', 'D']);
    const at = (letter: string) => walls.find(({ text }) => text.startsWith(letter)) ?? { left: 0, top: 0, right: 0, bottom: 0 };
    expect(at('A').top).toBeGreaterThan(at('C').top);
    expect(at('B').left).toBeLessThan(at('D').left);
  });

  it('hatches zones without screws at 45 degrees, and only there', () => {
    const zones: NoFixZone[] = [
      {
        outline: [
          { x: 500, y: 0 },
          { x: 700, y: 0 },
          { x: 700, y: 3000 },
          { x: 500, y: 3000 },
        ],
      },
      { centre: { x: 2600, y: 1500 }, diameter: 300 },
    ];
    const root = read(bedroom, { noFix: zones });
    const wall = wallOf(root);
    const [path] = layerOf(root, 'no-fix');
    const lines = [...path.attributes.d.matchAll(/M(\S+) (\S+)L(\S+) (\S+?)(?=M|$)/g)].map((each) => each.slice(1).map(Number));
    expect(lines.length).toBeGreaterThan(40);
    let round = 0;
    for (const [x1, y1, x2, y2] of lines) {
      expect(x2 - x1).toBeCloseTo(-(y2 - y1), 2);
      const [a, b] = [(x1 - wall.left) * 25, (x2 - wall.left) * 25].sort((p, q) => p - q);
      if (a > 1000) {
        round++;
        const middle = { x: (a + b) / 2, y: (wall.bottom - (y1 + y2) / 2) * 25 };
        expect(Math.hypot(middle.x - 2600, middle.y - 1500)).toBeLessThan(150);
      } else {
        expect(a).toBeGreaterThanOrEqual(499.9);
        expect(b).toBeLessThanOrEqual(700.1);
      }
    }
    expect(round).toBeGreaterThan(2);
    expect(textsOf(layerOf(root, 'sheet'))).toContain('no screws here');
  });

  it('draws only the layers asked for, and the cautions always', () => {
    const root = read(bedroom, { layers: ['wall', 'joist'] });
    expect(layerOf(root, 'joist')).toHaveLength(20);
    for (const layer of ['chalk', 'board', 'cut', 'screw', 'dimension', 'text']) expect(layerOf(root, layer)).toHaveLength(0);
    expect(textsOf([root]).join(' ')).toContain('Not a structural, asbestos, fire or building-control approval.');
  });
});

describe('which way round', () => {
  /** A piece with its upper right corner, seen from above, cut away. */
  const notched = (): CeilingPlan => {
    const pieces = bedroom.layout.pieces.map((piece) =>
      piece.id === '2.2'
        ? {
            ...piece,
            outline: [
              { x: 1226.5, y: 1205 },
              { x: 3595, y: 1205 },
              { x: 3595, y: 2205 },
              { x: 3395, y: 2205 },
              { x: 3395, y: 2405 },
              { x: 1226.5, y: 2405 },
            ],
          }
        : piece,
    );
    return { ...bedroom, layout: { ...bedroom.layout, pieces } };
  };
  const notchOf = (root: SvgElement) => {
    const points = pointsOf(piecePolygon(root, '2.2'));
    const { left, right, top, bottom } = extentOf(points);
    const inner = points.find(({ x, y }) => x > left && x < right && y > top && y < bottom) ?? { x: 0, y: 0 };
    return {
      horizontally: inner.x > (left + right) / 2 ? 'right' : 'left',
      vertically: inner.y < (top + bottom) / 2 ? 'up' : 'down',
    };
  };

  it('is the floor plan when reflected, with y up the sheet', () => {
    const root = read(notched());
    expect(notchOf(root)).toEqual({ horizontally: 'right', vertically: 'up' });
    expect(extentOf(pointsOf(piecePolygon(root, '1.1'))).bottom).toBeGreaterThan(
      extentOf(pointsOf(piecePolygon(root, '3.1'))).bottom,
    );
  });

  it('is its mirror image looking up, and says so', () => {
    const root = read(notched(), { view: 'looking-up' });
    expect(notchOf(root)).toEqual({ horizontally: 'left', vertically: 'up' });
    const texts = textsOf(layerOf(root, 'sheet'));
    expect(texts).toContain('LOOKING UP: left and right swapped against the floor plan');
    expect(texts.join(' ')).not.toContain('same way round');
    expect(textsOf(layerOf(read(notched()), 'sheet')).join(' ')).not.toMatch(/looking up/i);
  });

  it('runs the figures from the same wall in both views', () => {
    const figures = (root: SvgElement): string[] => textsOf(layerOf(root, 'dimension')).sort();
    const [floor, up] = [sheetOf('back bedroom'), read(bedroom, { view: 'looking-up' })];
    expect(figures(up)).toEqual(figures(floor));
    const zero = (root: SvgElement): number =>
      Math.max(
        ...layerOf(root, 'dimension')
          .filter(({ attributes }) => attributes.r === '0.9')
          .map(({ attributes }) => Number(attributes.cx)),
      );
    const [wall, mirrored] = [wallOf(floor), wallOf(up)];
    expect(zero(floor)).toBeCloseTo(wall.left, 2);
    expect(zero(up)).toBeCloseTo(mirrored.right, 2);
  });

  it('keeps ticks on their piece in the mirror', () => {
    const root = read(bedroom, { view: 'looking-up' });
    for (const path of layerOf(root, 'cut')) {
      const edge = extentOf(pointsOf(piecePolygon(root, path.attributes['data-piece'])));
      for (const [, , , x2, y2] of path.attributes.d.matchAll(/M(\S+) (\S+)L(\S+) (\S+?)(?=M|$)/g)) {
        expect(Number(x2) > edge.left && Number(x2) < edge.right && Number(y2) > edge.top && Number(y2) < edge.bottom).toBe(true);
      }
    }
  });

  it('shows joists across the sheet by their other end looking up', () => {
    const fan: DrawnRoom = {
      ...drawnRooms['joists along x'],
      positions: [100, { atStart: 500, atEnd: 520 }, 900, 1300, 1700, 2100, 2500, 2900, 3300, 3700, 4200],
    };
    const left = (root: SvgElement): string[] => {
      const wall = wallOf(root);
      return textBoxes(layerOf(root, 'dimension'))
        .filter(({ right, bottom }) => right < wall.left && bottom < wall.bottom + 4)
        .map(({ text }) => text);
    };
    const plan = drawnPlan(fan);
    expect(left(read(plan))).toContain('500');
    expect(left(read(plan))).not.toContain('520');
    expect(left(read(plan, { view: 'looking-up' }))).toContain('520');
  });
});

describe('legible', () => {
  const cases = names.flatMap((name) => [[name, 'reflected'] as const, [name, 'looking-up'] as const]);

  it.each(cases)('no text touches another or leaves the frame: %s, %s', (name, view) => {
    const root = sheetOf(name, view);
    const boxes = textBoxes(everyElement(root));
    const [width, height] = root.attributes.viewBox.split(' ').slice(2).map(Number);
    const frame = { left: 7, right: width - 7, top: 7, bottom: height - 7 };
    expect(
      boxes.filter((box) => box.left < frame.left || box.right > frame.right || box.top < frame.top || box.bottom > frame.bottom),
    ).toEqual([]);
    expect(touching(boxes)).toEqual([]);
  });

  it.each(cases)('no lettering of a piece stands on a screw or on the edge of a piece: %s, %s', (name, view) => {
    const root = sheetOf(name, view);
    const wall = wallOf(root);
    const boxes = textBoxes(layerOf(root, 'text')).filter(
      ({ left, right, top, bottom }) => left > wall.left && right < wall.right && top > wall.top && bottom < wall.bottom,
    );
    expect(boxes.length).toBeGreaterThan(0);
    const screws = layerOf(root, 'screw').map(({ attributes }) => {
      const [x, y, r] = ['cx', 'cy', 'r'].map((key) => Number(attributes[key]));
      return { left: x - r, right: x + r, top: y - r, bottom: y + r };
    });
    expect(boxes.filter((box) => screws.some((screw) => boxesTouch(box, screw)))).toEqual([]);
    const lettering = boxes.filter(({ text }) => !/^(L\d|H1|pendant)$/.test(text));
    const edges = layerOf(root, 'board').map((polygon) => extentOf(pointsOf(polygon)));
    const clear = (box: TextBox, { left, right, top, bottom }: Omit<TextBox, 'text'>): boolean =>
      !boxesTouch(box, { left, right, top, bottom }) ||
      (box.left > left && box.right < right && box.top > top && box.bottom < bottom);
    expect(lettering.filter((box) => !edges.every((edge) => clear(box, edge)))).toEqual([]);
  });
});

describe('lettering where there is little room', () => {
  const layers = ['wall', 'board', 'screw', 'text'] as const;

  it.each([[layers], [layers.filter((layer) => layer !== 'screw')]])(
    'stays in its piece on a sheet that is too small: %s',
    (shown) => {
      const plan = drawnPlan(drawnRooms.hall);
      const root = read(plan, { scale: 50, layers: shown });
      const lettering = textBoxes(layerOf(root, 'text')).filter(({ text }) => /^\d+\.\d+( |$)|×|^B\d+$/.test(text));
      expect(lettering.length).toBeGreaterThan(plan.layout.pieces.length);
      const edges = layerOf(root, 'board').map((polygon) => extentOf(pointsOf(polygon)));
      const inOne = (box: TextBox): boolean =>
        edges.some((edge) => box.left > edge.left && box.right < edge.right && box.top > edge.top && box.bottom < edge.bottom);
      expect(lettering.filter((box) => !inOne(box))).toEqual([]);
    },
  );

  it('says how many pieces are lettered in part', () => {
    const texts = textsOf(layerOf(read(drawnPlan(drawnRooms.hall), { scale: 50 }), 'sheet')).join(' ');
    expect(texts).toMatch(/Sizes or boards of \d+ pieces do not fit on this sheet/);
  });

  it('keeps off openings', () => {
    for (const view of ['reflected', 'looking-up'] as const) {
      // Openings right in the middle of pieces, where their lettering would stand.
      const openings = [
        { id: 'V', kind: 'other' as const, centre: { x: 1010, y: 605 }, diameter: 400 },
        {
          id: 'W',
          kind: 'other' as const,
          outline: [
            { x: 2700, y: 400 },
            { x: 3000, y: 400 },
            { x: 3000, y: 800 },
            { x: 2700, y: 800 },
          ],
        },
      ];
      const root = read(drawnPlan({ ...drawnRooms['back bedroom'], openings }), { view });
      const [round] = layerOf(root, 'opening').filter(({ name }) => name === 'circle');
      const [square] = layerOf(root, 'opening').filter(({ name }) => name === 'polygon');
      const [x, y, r] = ['cx', 'cy', 'r'].map((key) => Number(round.attributes[key]));
      const taken = [{ left: x - r, right: x + r, top: y - r, bottom: y + r }, extentOf(pointsOf(square))];
      const lettering = textBoxes(layerOf(root, 'text')).filter(({ text }) => /^\d|^×|^B\d/.test(text));
      expect(lettering.length).toBeGreaterThan(15);
      expect(lettering.filter((box) => taken.some((opening) => boxesTouch(box, opening)))).toEqual([]);
    }
  });
});

describe('what a caller may pass', () => {
  const hostile = `</text><script>alert(1)</script> & "quoted" 'single' \u0007\ud800 <g`;

  it('escapes names, whatever they hold', () => {
    const plan = drawnPlan({ ...drawnRooms['box room'], name: hostile });
    const room = {
      ...plan.room,
      name: hostile,
      walls: [{ edge: 0, name: hostile }],
      openings: plan.room.openings?.map((opening, i) => (i === 0 ? { ...opening, id: hostile } : opening)),
    };
    const joists = plan.joists.map((joist, i) => (i === 0 ? { ...joist, id: '<&>' } : joist));
    const svg = drawPlan({ ...plan, room, joists }, { messages: { 'legend.wall': '<b>wall</b> & more' } });
    const root = readSvg(svg);
    expect(everyElement(root).map(({ name }) => name)).not.toContain('script');
    expect(textsOf([root])).toContain('<b>wall</b> & more');
    expect(textsOf([root])).toContain('<&>');
    expect(everyElement(root).find(({ name }) => name === 'title')?.text).toContain(
      '</text><script>alert(1)</script> & "quoted"',
    );
  });

  it('cuts long names instead of running over', () => {
    const name = 'The very long name of a room that somebody typed without thinking of paper '.repeat(3).slice(0, 200);
    const plan = drawnPlan({ ...drawnRooms['back bedroom'], name, walls: [{ edge: 0, name, door: true }] });
    const root = read({ ...plan, joists: plan.joists.map((joist) => ({ ...joist, id: `${joist.id} ${name}`.slice(0, 200) })) });
    const boxes = textBoxes(everyElement(root));
    expect(boxes.filter(({ right }) => right > 290)).toEqual([]);
    expect(touching(boxes)).toEqual([]);
  });

  it('takes words in another language, and refuses words it does not know', () => {
    const texts = textsOf([read(bedroom, { messages: { 'legend.title': 'Legende', 'hold.stamp': 'HALT' } })]);
    expect(texts).toContain('Legende');
    expect(texts).not.toContain('Key');
    expect(problemsOf(() => drawPlan(bedroom, { messages: { 'no.such.word': 'x' } as never }))).toEqual([
      'unknown-field options.messages["no.such.word"]',
    ]);
  });

  it('writes feet and inches', () => {
    const texts = textsOf(layerOf(read(bedroom, { units: 'inch' }), 'dimension'));
    // 3600 mm is 141.73 in: 11 ft 9 3/4 in; 425 mm is 16.73 in.
    expect(texts).toEqual(expect.arrayContaining([`11' 9 3/4"`, `1' 4 3/4"`]));
  });

  it('names every mistake in the options at once', () => {
    expect(problemsOf(() => drawPlan(bedroom, { view: 'from-below', scale: -1, layers: ['walls'] } as never))).toEqual([
      'not-one-of options.view',
      'too-small options.scale',
      'not-one-of options.layers[0]',
    ]);
  });

  it('refuses what is not a plan', () => {
    expect(() => drawPlan({} as CeilingPlan)).toThrow(InputError);
    expect(problemsOf(() => drawPlan({ ...bedroom, joists: [] }))).toEqual(['too-small plan.joists']);
  });

  it('leaves the plan as it is and gives the same text each time, also from JSON', () => {
    const frozen = deepFrozen(drawnPlan(drawnRooms.fan));
    const first = drawPlan(frozen);
    expect(drawPlan(frozen)).toBe(first);
    expect(drawPlan(JSON.parse(JSON.stringify(frozen)))).toBe(first);
  });
});

function deepFrozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    for (const each of Object.values(value)) deepFrozen(each);
    Object.freeze(value);
  }
  return value;
}
