import { checkFixings, type Finding, type FixingToCheck, ruleSets, ruleValue } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { changed, x } from '../generators/hurting.js';
import type { CheckByHand } from '../generators/layoutsByHand.js';
import { screwsOn } from '../generators/screwsOn.js';
import {
  bayRoom,
  beamRoom,
  breastRoom,
  doubledRoom,
  SHAPED_ROOMS,
  strongFan,
  teeRoom,
  trimmedHatch,
} from '../generators/shapedRooms.js';
import { TURNS, turnedAbout } from '../generators/turnedAbout.js';

type Screws = readonly FixingToCheck[];

const check = ({ room, joists, layout, boards }: CheckByHand, fixings: Screws): Finding[] =>
  checkFixings({ room, joists, layout, boards, fixings });

const told = (findings: readonly Finding[]): string =>
  findings
    .map(
      ({ severity, code, value, limit, message, where }) =>
        `${severity} ${code} ${value}/${limit} ${message} ${JSON.stringify(where)}`,
    )
    .join('\n');

/** Zones have their joists with them. */
const timbersOf = ({ joists, room }: CheckByHand) => [
  ...joists,
  ...(room.zones ?? []).flatMap((zone) => zone.joists as typeof joists),
];

const screwsIn = (room: CheckByHand): Screws =>
  screwsOn({ layout: room.layout, joists: timbersOf(room) }).filter((screw) => isOwn(room, screw));

/** In a room with zones a piece is screwed to the joists of its own zone. */
const isOwn = ({ room }: CheckByHand, { piece = '', joist = '' }: FixingToCheck): boolean =>
  room.zones === undefined || Number(piece.split('.')[0]) < 4 === (joist.startsWith('A') || joist.startsWith('J'));

describe('good screws in rooms that are no rectangles', () => {
  for (const [name, make] of Object.entries(SHAPED_ROOMS)) {
    it(`have no error: ${name}`, () => {
      for (const [how, turn] of [TURNS[0], TURNS[3], TURNS[5]]) {
        const turned = turnedAbout(make(), turn);
        const errors = check(turned, screwsIn(turned)).filter(({ severity }) => severity === 'error');
        expect(told(errors), how).toBe('');
      }
    });
  }
});

const near = (screws: Screws, x: number, y: number): FixingToCheck =>
  screws.reduce((best, each) => (Math.hypot(each.x - x, each.y - y) < Math.hypot(best.x - x, best.y - y) ? each : best));

/** What is done to the screws, and what must be said of it. */
const HURTS: readonly {
  readonly name: string;
  readonly room: () => CheckByHand;
  readonly hurt: (screws: Screws) => Screws;
  readonly finds: { readonly code: string; readonly piece?: string; readonly joist?: string };
}[] = [
  {
    name: 'the line under the breast left out',
    room: breastRoom,
    hurt: (screws) => screws.filter(({ piece, joist }) => piece !== '3.2' || joist !== 'J5'),
    finds: { code: 'fixing-gap', piece: '3.2', joist: 'J5' },
  },
  {
    name: 'a screw into the breast',
    room: breastRoom,
    hurt: (screws) => screws.map((screw) => (screw === near(screws, 1800, 2880) ? { ...screw, y: 2960 } : screw)),
    finds: { code: 'fixing-off-timber', piece: '3.2' },
  },
  {
    name: 'a screw 8 from the edge of a notch',
    room: breastRoom,
    hurt: (screws) => screws.map((screw) => (screw === near(screws, 1800, 2880) ? { ...screw, y: 2887 } : screw)),
    finds: { code: 'fixing-edge', piece: '3.2', joist: 'J5' },
  },
  {
    name: 'the lines beside the breast left out',
    room: breastRoom,
    hurt: (screws) => screws.filter(({ piece, y }) => piece !== '3.2' || y < 2895),
    finds: { code: 'fixing-gap', piece: '3.2', joist: 'J3' },
  },
  {
    name: 'the stem of a T without screws on one joist',
    room: teeRoom,
    hurt: (screws) => screws.filter(({ joist, y }) => joist !== 'J7' || y < 1805),
    finds: { code: 'fixing-gap', joist: 'J7' },
  },
  {
    name: 'a screw 5 from a splay',
    room: bayRoom,
    hurt: (screws) => screws.map((screw) => (screw === near(screws, 950, 3560) ? { ...screw, y: screw.y + 11 } : screw)),
    finds: { code: 'fixing-edge', piece: '3.1' },
  },
  {
    name: 'screws straight up where the joist leans',
    room: strongFan,
    hurt: (screws) => screws.map((screw) => (screw.joist === 'J8' ? { ...screw, x: 3000 } : screw)),
    finds: { code: 'fixing-off-timber', joist: 'J8' },
  },
  {
    name: 'a screw where the joist is cut for the hatch',
    room: () => trimmedHatch([1225, 2825]),
    hurt: (screws) => [...screws, { x: 2025, y: 1440, piece: '2.2', joist: 'J6a' }],
    finds: { code: 'fixing-edge', piece: '2.2' },
  },
  {
    name: 'a trimmer without screws',
    room: () => trimmedHatch([1225, 2825]),
    hurt: (screws) => screws.filter(({ joist }) => joist !== 'T1'),
    finds: { code: 'fixing-gap', piece: '2.2', joist: 'T1' },
  },
  {
    name: 'both boards of a joint on one half of a doubled joist',
    room: doubledRoom,
    hurt: (screws) => screws.filter(({ piece, joist }) => piece !== '1.2' || joist !== 'J5'),
    finds: { code: 'fixing-gap', piece: '1.2', joist: 'J4+J5' },
  },
  {
    name: 'a board over a doubled joist screwed between the two',
    room: doubledRoom,
    // Between them at 1601.
    hurt: (screws) => screws.map((screw) => (screw.piece === '3.1' && screw.joist === 'J5' ? { ...screw, x: 1603 } : screw)),
    finds: { code: 'fixing-edge', piece: '3.1', joist: 'J4+J5' },
  },
  {
    name: 'the second board of a joint beside the middle of a doubled joist, screwed where the two meet',
    room: () => changed(doubledRoom(), { '1.1': x(1599.5, 1588.5), '1.2': x(1602.5, 1591.5) }),
    // 13.5 from the end of the board, and 4 beyond 1601.
    hurt: (screws) => screws.map((screw) => (screw.piece === '1.2' && screw.joist === 'J5' ? { ...screw, x: 1605 } : screw)),
    finds: { code: 'fixing-edge', piece: '1.2', joist: 'J4+J5' },
  },
  {
    name: 'a row of the second ceiling screwed to the joists of the first',
    room: beamRoom,
    hurt: (screws) => screws.map((screw) => (screw.piece === '5.1' ? { ...screw, x: screw.x, y: screw.y + 190 } : screw)),
    finds: { code: 'fixing-off-timber', piece: '5.1' },
  },
];

describe('the joint between two joists side by side', () => {
  const beside = (away: number): Finding[] => {
    const room = doubledRoom();
    const screws = screwsIn(room).map((screw) =>
      screw.piece === '3.1' && screw.joist === 'J5' ? { ...screw, x: 1601 + away } : screw,
    );
    return check(room, screws).filter(({ severity }) => severity === 'error');
  };

  it('takes no screw nearer than the edge of a timber does, on either side of it', () => {
    const limit = ruleValue(ruleSets.uk, 'fixing.timberEdgeDistance').value as number;
    for (const side of [1, -1]) {
      expect(told(beside(side * limit))).toBe('');
      const [found] = beside(side * (limit - 1));
      expect(found).toMatchObject({ code: 'fixing-edge', value: limit - 1, limit, where: { joist: 'J4+J5' } });
      expect(found.message).toContain('joint between the joists of J4+J5');
    }
  });

  it('takes none where a joint of boards lies beside it, each board on a joist of its own', () => {
    const room = changed(doubledRoom(), { '1.1': x(1599.5, 1588.5), '1.2': x(1602.5, 1591.5) });
    expect(told(check(room, screwsIn(room)).filter(({ severity }) => severity === 'error'))).toBe('');
  });
});

describe('screws that are wrong in rooms that are no rectangles', () => {
  for (const { name, room, hurt, finds } of HURTS) {
    it(`are told: ${name}`, () => {
      const given = room();
      const findings = check(given, hurt(screwsIn(given)));
      const { code, ...where } = finds;
      const found = findings.filter(
        (each) =>
          each.code === code &&
          each.severity === 'error' &&
          Object.entries(where).every(([key, value]) => each.where?.[key as 'piece' | 'joist'] === value),
      );
      expect(found.length, told(findings)).toBeGreaterThan(0);
    });
  }
});
