import { rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { cutFigure, figure } from '../../src/drawing/figure.js';
import { freePlace } from '../../src/drawing/freePlace.js';
import { hatch } from '../../src/drawing/hatch.js';
import { heartOf } from '../../src/drawing/heartOf.js';
import { boxOf, overlap } from '../../src/drawing/label.js';
import { shortened, textWidth, wrapped } from '../../src/drawing/lettering.js';
import { spread } from '../../src/drawing/spread.js';
import { escaped, written } from '../../src/drawing/svg.js';
import { namedWalls } from '../../src/drawing/wallNames.js';
import { sayWith } from '../../src/drawing/words.js';

describe('figures', () => {
  it.each([
    [0, '0'],
    [-0.2, '0'],
    [424.6, '425'],
    [3575, '3575'],
  ])('%d mm is written %s', (mm, text) => {
    expect(figure(mm, 'mm')).toBe(text);
  });

  // 25.4 mm are one inch by definition (international yard, 1959).
  it.each([
    [0, '0"'],
    [25.4, '1"'],
    [304.8, `1' 0"`],
    [12.7, '0 1/2"'],
    [3810, `12' 6"`],
    [304.8 + 25.4 * 3 + 25.4 * (3 / 16), `1' 3 3/16"`],
    [-25.4, '-1"'],
  ])('%d mm in feet and inches is %s', (mm, text) => {
    expect(figure(mm, 'inch')).toBe(text);
  });

  it('cuts are written down, never up', () => {
    expect(cutFigure(2018.999, 'mm')).toBe('2018');
    expect(cutFigure(2019, 'mm')).toBe('2019');
    expect(cutFigure(25.4 * 10.99, 'inch')).toBe('10 15/16"');
  });
});

describe('texts on a line', () => {
  it('stay where they are when there is room', () => {
    expect(
      spread(
        [
          { at: 0, size: 3 },
          { at: 10, size: 3 },
        ],
        1,
      ),
    ).toEqual([0, 10]);
  });

  it('share a move evenly', () => {
    expect(
      spread(
        [
          { at: 0, size: 3 },
          { at: 1, size: 3 },
          { at: 20, size: 3 },
        ],
        1,
      ),
    ).toEqual([-1.5, 2.5, 20]);
  });
});

describe('lettering', () => {
  it('breaks between words and never runs over', () => {
    const lines = wrapped('The new boards add 8.4 kg/m2 before plaster. This is not a structural check.', 40, 2.5);
    expect(lines.join(' ')).toBe('The new boards add 8.4 kg/m2 before plaster. This is not a structural check.');
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(40);
  });

  it('cuts what is too long, and only that', () => {
    expect(shortened('Kitchen', 40, 5)).toBe('Kitchen');
    const cut = shortened('Kitchen with a very long name', 20, 5);
    expect(cut.endsWith('…')).toBe(true);
    expect(textWidth(cut, 5)).toBeLessThanOrEqual(20);
  });

  it('does not cut a pair of surrogates in two', () => {
    for (let width = 4; width < 30; width++) expect(shortened('😀😀😀😀😀', width, 2.5)).toMatch(/^(😀)*…?$/u);
  });
});

describe('a block of lettering', () => {
  const lines = [
    { text: '4.1', height: 5, bold: true },
    { text: '2376 × 1017', height: 2.5 },
    { text: 'B6', height: 2.5 },
  ];
  it.each([3.5, 3.6, 3.8, 4.3, 6])('keeps its lines apart between two joists, with screws %d mm apart on them', (pitch) => {
    const along = Array.from({ length: 17 }, (_, i) => i * pitch);
    const screws = along.flatMap((x) => [2, 15].map((y) => ({ x, y })));
    const inner = { left: 0, right: 60, top: 0, bottom: 17 };
    const scene = { inner, heart: { x: 30, y: 8.5 }, screws, hindering: [], joists: [], upward: false };
    const boxes = [lines, lines.slice(0, 2)].map(
      (each, i) => freePlace({ lines: each, full: i === 0, cost: 0 }, scene, undefined)?.labels.map(boxOf) ?? [],
    );
    expect(boxes[1]).toHaveLength(2);
    for (const found of boxes) {
      for (const [i, box] of found.entries()) for (const other of found.slice(i + 1)) expect(overlap(box, other)).toBe(false);
      const on = screws.filter(({ x, y }) => found.some((box) => x > box.left && x < box.right && y > box.top && y < box.bottom));
      expect(on).toEqual([]);
    }
  });
});

describe('a block of lettering in an angle', () => {
  it('keeps out of the hollow, even where it would stand best', () => {
    const corners = [
      [0, 0],
      [60, 0],
      [60, 30],
      [20, 30],
      [20, 60],
      [0, 60],
    ];
    const ring = corners.map(([x, y]) => ({ x, y }));
    const scene = {
      inner: { left: 1, right: 59, top: 1, bottom: 59 },
      ring,
      heart: { x: 40, y: 38 },
      screws: [],
      hindering: [
        { left: 19, right: 61, top: 29, bottom: 31 },
        { left: 19, right: 21, top: 29, bottom: 61 },
      ],
      joists: [],
      upward: true,
    };
    const placed = freePlace({ lines: [{ text: '1.1', height: 5 }], full: true, cost: 0 }, scene, undefined);
    const [box] = placed?.labels.map(boxOf) ?? [];
    expect(box.bottom).toBeLessThanOrEqual(29);
  });
});

describe('where lettering stands best', () => {
  const at = (...corners: [number, number][]) => corners.map(([x, y]) => ({ x, y }));

  it('is the middle of a rectangle', () => {
    expect(heartOf(at([0, 0], [40, 0], [40, 20], [0, 20]))).toEqual({ x: 20, y: 10 });
  });

  it('is in the wider arm of an angle, and never in its hollow', () => {
    const { x, y } = heartOf(at([0, 0], [60, 0], [60, 30], [15, 30], [15, 60], [0, 60]));
    expect(y).toBeLessThan(30);
    expect(x).toBeGreaterThan(10);
  });
});

describe('the text of a drawing', () => {
  it('has no character that XML forbids', () => {
    expect(escaped('a\u0000b\u001fc\ufffed\ud800e\udc00f\tg')).toBe('a\ufffdb\ufffdc\ufffdd\ufffde\ufffdf\tg');
    expect(escaped('😀 <&>"\'')).toBe('😀 &lt;&amp;&gt;&quot;&#39;');
  });

  it('has numbers to a thousandth, and no negative zero', () => {
    expect([1 / 3, -0.0001, 2, 1e-7].map(written)).toEqual(['0.333', '0', '2', '0']);
  });
});

describe('a hatch', () => {
  it('fills a square with lines of both halves of its length', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 20, y: 0 },
      { x: 20, y: 20 },
      { x: 0, y: 20 },
    ];
    const lines = hatch([square]);
    // The diagonal is 28.28 mm long and the lines are 2 mm apart.
    expect(lines).toHaveLength(14);
    for (const [a, b] of lines) for (const { x, y } of [a, b]) expect(Math.min(x, y, 20 - x, 20 - y)).toBeGreaterThan(-1e-9);
  });

  it('leaves the hollow of an angle free', () => {
    const angle = [
      { x: 0, y: 0 },
      { x: 20, y: 0 },
      { x: 20, y: 5 },
      { x: 5, y: 5 },
      { x: 5, y: 20 },
      { x: 0, y: 20 },
    ];
    for (const [a, b] of hatch([angle])) {
      const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      expect(middle.x <= 5 || middle.y <= 5).toBe(true);
    }
  });
});

describe('names of walls', () => {
  const say = sayWith();
  const letters = (outline: { x: number; y: number }[], walls?: { edge: number; name?: string; door?: boolean }[]) =>
    namedWalls({ outline, ...(walls && { walls }) }, say);

  it('run clockwise on the plan, whichever way the outline runs', () => {
    const outline = rectangle(3600, 3000);
    const side = ({ from, to }: { from: { x: number; y: number }; to: { x: number; y: number } }) =>
      from.y === to.y ? (from.y === 0 ? 'low' : 'high') : from.x === 0 ? 'left' : 'right';
    for (const ring of [outline, [...outline].reverse()]) {
      const door = ring.findIndex((_, i) => ring[i].x === 3600 && ring[(i + 1) % 4].x === 3600);
      const walls = letters(ring, [{ edge: door, door: true }]);
      expect(walls.map((wall) => `${wall.letter} ${side(wall)}`)).toEqual(['A right', 'B low', 'C left', 'D high']);
    }
  });

  it('start at the lowest wall where no door is known', () => {
    expect(letters(rectangle(3600, 3000))[0]).toMatchObject({ letter: 'A', edge: 0 });
  });

  it('say door and window once', () => {
    const names = letters(rectangle(3600, 3000), [
      { edge: 0, name: 'Door wall', door: true },
      { edge: 1, name: 'party wall' },
    ]).map(({ name }) => name);
    expect(names).toEqual(['A Door wall', 'B', 'C', 'D party wall']);
    expect(letters(rectangle(3600, 3000), [{ edge: 0, name: 'hall', door: true }])[0].name).toBe('A hall (door)');
  });

  it('go on after Z', () => {
    const teeth = Array.from({ length: 15 }, (_, i) => [
      { x: i * 200, y: 3000 },
      { x: i * 200 + 100, y: 2900 },
    ]).flat();
    const walls = letters([...teeth, { x: 3000, y: 3000 }, { x: 3000, y: 0 }, { x: 0, y: 0 }].reverse());
    expect(walls.map(({ letter }) => letter).slice(25, 28)).toEqual(['Z', 'AA', 'AB']);
    expect(new Set(walls.map(({ letter }) => letter)).size).toBe(33);
  });
});
