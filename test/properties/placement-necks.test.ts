import { type BoardLayout, checkLayout, type Finding, type PlacementRequest, rectangle, tryPlaceBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { block } from '../generators/layoutsByHand.js';
import { boardOf, Draw } from '../generators/rooms.js';

/** A rectangle with a hatch anywhere in it, with or without joists along its sides. */
function hatchRoom(seed: number): PlacementRequest {
  const draw = new Draw(seed);
  const [length, depth] = [draw.between(3000, 6000), draw.between(2400, 4800)];
  const [wide, deep] = [draw.between(500, 1000), draw.between(500, 1100)];
  const [x, y] = [draw.between(200, length - wide - 200), draw.between(0, depth - deep)];
  const first = draw.between(25, 225);
  const spaced = Array.from({ length: Math.ceil((length - 25 - first) / 400) }, (_, k) => first + 400 * k);
  const beside = draw.between(0, 1) === 1 ? [x - 25, x + wide + 25] : [];
  const positions = [...spaced, ...beside].sort((a, b) => a - b).filter((at, i, all) => i === 0 || at - all[i - 1] >= 60);
  return {
    room: { outline: rectangle(length, depth), openings: [{ kind: 'hatch', outline: block(x, x + wide, y, y + deep) }] },
    joists: { direction: 'y', positions, width: 50 },
    boards: [boardOf(draw.from([2400, 3000, 3600]), 1200)],
    budget: 5_000,
  };
}

const necks = (told: readonly Finding[]): string[] =>
  told.flatMap(({ code, where, value }) => (code === 'piece-neck-narrow' ? [`${where?.piece}: ${value}`] : [])).sort();

const laid = (request: PlacementRequest, neck: number): BoardLayout | undefined => {
  const attempt = tryPlaceBoards({ ...request, rules: { 'piece.minimumNeck': neck } });
  return attempt.ok ? attempt.value : undefined;
};

describe('rooms with a hatch', { timeout: 120_000 }, () => {
  it('have no more necks for being parted at them, a layout wherever they had one, and no neck that is not told', () => {
    let parted = 0;
    for (let seed = 1; seed <= 36; seed++) {
      const request = hatchRoom(seed);
      const whole = laid(request, 0);
      const layout = laid(request, 300);
      expect(layout === undefined, String(seed)).toBe(whole === undefined);
      if (layout === undefined || whole === undefined) continue;
      const { room, joists, boards } = request;
      const told = checkLayout({ room, joists, boards, layout });
      const before = necks(checkLayout({ room, joists, boards, layout: whole }));
      expect(
        told.filter(({ severity }) => severity === 'error'),
        String(seed),
      ).toEqual([]);
      expect(necks(told), String(seed)).toEqual(necks(layout.findings));
      expect(necks(told).length, String(seed)).toBeLessThanOrEqual(before.length);
      if (necks(told).length < before.length) parted++;
    }
    expect(parted).toBeGreaterThan(1);
  });
});
