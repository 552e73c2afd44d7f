import { placeBoards, rectangle } from 'soffitwright';
import { expect, it } from 'vitest';
import { joistAt, ring, stock } from '../generators/scenario.js';

const stair = {
  id: 'S',
  kind: 'other' as const,
  outline: ring([0, 1500], [900, 1500], [900, 4100], [0, 4100]),
};
const lights = [{ id: 'L', kind: 'light' as const, centre: { x: 200, y: 600 }, diameter: 80 }];

const probed = (first: number, openings: Parameters<typeof placeBoards>[0]['room']['openings'] = []) => {
  const beside = [first, first + 300].flatMap((x, i) => [joistAt(`L${i + 1}`, x, 0, 1500), joistAt(`U${i + 1}`, x, 4100, 5000)]);
  const joists = [950, 1350, 1750, 2150, 2550, 2950, 3350, 3750].map((x, i) => joistAt(`J${i + 1}`, x, 0, 5000));
  const room = {
    outline: rectangle(3800, 5000),
    openings: [stair, ...openings],
  };
  return placeBoards({
    room,
    joists: [...beside, ...joists],
    boards: [stock(2400)],
  })
    .findings.filter(({ code }) => code === 'joist-probe-last-bay')
    .map(({ value, where }) => [value, where?.joist, where?.at]);
};

it('a bay that a stair takes up, all but 50 of it, hides no joist', () => {
  expect(probed(50)).toEqual([]);
});

it('a bay with a light in it is probed beside the light', () => {
  // The light is at 560 to 640. Half way up the longer stretches without it the bay is 340 long: 0 to 560 comes first.
  expect(probed(340, lights)).toEqual([
    [340, 'L1', { x: 170, y: 280 }],
    [340, 'U1', { x: 170, y: 4550 }],
  ]);
});
