import { placeBoards, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { buttJoints, stock } from '../generators/scenario.js';
import { boardedBedroom, windowBedroom } from '../generators/windowBedroom.js';

describe('a bedroom with a window in a wall that its joists run with, 4250 by 3380', () => {
  it('keeps butt joints 1200 from it: 5 boards of 3000, 3 butt joints', () => {
    expect(boardedBedroom(3000)).toEqual({ boards: 5, joints: 3, rows: [1200, 1200, 974], inLight: [], told: [], errors: [] });
  });

  it('says so where one is nearer', () => {
    const { room, joists, rules } = windowBedroom;
    // Boards of 1250 in a room of 2100 can only meet on the joist at 940.
    const small = { ...room, outline: rectangle(2100, 1206) };
    const layout = placeBoards({ room: small, joists, rules, boards: [stock(1250)] });
    expect(buttJoints(layout)).toEqual([940]);
    expect(layout.findings.filter(({ code }) => code === 'raking-light')).toMatchObject([{ value: 940, limit: 1200 }]);
  });
});
