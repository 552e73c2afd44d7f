import { isInputError, rectangle, type TakeOffPlan, takeOff } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const stock = { id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 10, edge: 'square' as const };
const plan: TakeOffPlan = {
  room: { outline: rectangle(3600, 3000) },
  layout: {
    pieces: [],
    boards: [],
    boardsBought: 4,
    boardsAtMinimumLength: 5,
    boardsByStock: [{ stock: '2400', count: 4 }],
    jointLength: 10_800,
  },
  fixings: { count: 160 },
  fixingLength: { recommended: 60 },
  job: { boards: [stock], lining: [{ kind: 'plasterboard', thickness: 9.5 }] },
};
const lineOf = (item: string, taken = takeOff(plan)) => {
  const line = taken.lines.find((each) => each.item.startsWith(item));
  if (line === undefined) throw new Error(`no ${item}`);
  return line;
};

describe('takeOff', () => {
  it('orders as many boards as it takes when each comes as short as it may', () => {
    expect(lineOf('board')).toMatchObject({ quantity: 5, packs: 5, perPack: 1 });
    expect(lineOf('board').basis).toBe('4 as laid; 1 more when every board comes as short as it may');
  });

  it('says so when that number is not known', () => {
    const taken = takeOff({ ...plan, layout: { ...plan.layout, boardsAtMinimumLength: null } });
    expect(lineOf('board', taken)).toMatchObject({ quantity: 4 });
    expect(lineOf('board', taken).basis).toContain('measure');
  });

  it('takes a tenth more screws, in the smallest box that holds them', () => {
    expect(lineOf('drywall screws 60 mm')).toMatchObject({ quantity: 176, packs: 1, perPack: 200 });
  });

  it('takes 15 % more through lath and plaster', () => {
    const job = { ...plan.job, lining: [{ kind: 'lath-and-plaster' as const, thickness: 28 }] };
    const line = lineOf('drywall screws', takeOff({ ...plan, job }));
    expect(line).toMatchObject({ quantity: 184, packs: 1 });
    expect(line.basis).toContain('lath and plaster, common practice');
  });

  it('tapes the joints and the wall angle', () => {
    // 10.8 m of joints, 13.2 m of walls, a tenth more.
    expect(lineOf('joint tape')).toMatchObject({ quantity: 26.4, packs: 1, perPack: 90 });
    expect(lineOf('joint tape', takeOff(plan, { tapeWallAngle: false })).quantity).toBe(11.88);
  });

  it('rounds packs once, and not a roll too far', () => {
    const exactly = { ...plan, layout: { ...plan.layout, jointLength: 180_000 - 13_200 } };
    expect(lineOf('joint tape', takeOff(exactly, { tapeAllowance: 0 }))).toMatchObject({ quantity: 180, packs: 2 });
  });

  it('covers the room with finish plaster, less what is not boarded', () => {
    // 10.8 m2 at 9 m2 a bag.
    expect(lineOf('finish plaster')).toMatchObject({ quantity: 30, packs: 2, perPack: 25 });
    const hatch = { kind: 'hatch' as const, outline: rectangle(1800, 1000) };
    expect(lineOf('finish plaster', takeOff({ ...plan, room: { ...plan.room, openings: [hatch] } }))).toMatchObject({
      quantity: 25,
      packs: 1,
    });
  });

  it('weighs what is bought and not fixed', () => {
    expect(takeOff(plan).wasteKg).toBe(5 * 2.4 * 1.2 * 10);
  });

  it('calls every default common practice, and what was asked for as asked', () => {
    for (const line of takeOff(plan).lines.slice(1)) expect(line.basis).toContain('common practice');
    expect(lineOf('drywall', takeOff(plan, { screwAllowance: 0.2, screwBoxes: [1000] })).basis).not.toContain('common practice');
  });

  it('refuses a layout of boards that the job does not have', () => {
    try {
      takeOff({ ...plan, job: { boards: [{ ...stock, id: 'other' }] } });
      expect.unreachable();
    } catch (error) {
      expect(isInputError(error) && error.problems.map(({ code }) => code)).toEqual(['board-unknown']);
    }
  });
});
