import {
  type Direction,
  type Joist,
  type JoistPosition,
  joistsFromPositions,
  type Point,
  type Room,
  rectangle,
} from 'soffitwright';

/** A stretch of a row from wall to wall or opening, and the joists that its butt joints lie on; across the joists, along them. */
export interface ShapedRun {
  readonly region: readonly (readonly [u: number, v: number])[];
  readonly joints?: readonly string[];
}

export interface ShapedZone {
  readonly id?: string;
  readonly direction: Direction;
  readonly joists: (room: Room) => readonly Joist[];
  readonly rows: readonly (readonly ShapedRun[])[];
  /** Joints follow the joists instead of being square. */
  readonly raked?: boolean;
  /** The side of a narrow row that is cut; `high` when not given. */
  readonly ripped?: 'low' | 'high';
}

export interface ShapedRoom {
  readonly room: Room;
  readonly zones: readonly ShapedZone[];
  readonly stock?: { readonly length: number; readonly width: number };
  readonly proveFirst?: readonly string[];
}

const points = (...corners: readonly (readonly [number, number])[]): Point[] => corners.map(([x, y]) => ({ x, y }));
const block = (u0: number, u1: number, v0: number, v1: number) =>
  [
    [u0, v0],
    [u1, v0],
    [u1, v1],
    [u0, v1],
  ] as const;

const at =
  (direction: Direction, positions: readonly JoistPosition[], outline?: readonly Point[], mark = '') =>
  (room: Room): Joist[] =>
    joistsFromPositions({ room: { outline: outline ?? room.outline }, direction, positions, width: 47 }).map((joist) => ({
      ...joist,
      id: mark + joist.id,
    }));

const even = (first: number, count: number, spacing = 400): number[] =>
  Array.from({ length: count }, (_, i) => first + i * spacing);

/** A timber across the others, from one place to another at a distance along them; joists along y. */
const trimmer = (id: string, from: number, to: number, y: number): Joist => ({
  id,
  start: { x: from, y },
  end: { x: to, y },
  width: 47,
  sd: 0,
  presence: 1,
  kind: 'trimmer',
  known: 'measured',
});

/** Joists that end at a trimmer, or begin at one, between two places across. */
const cutShort = (joists: readonly Joist[], from: number, to: number, low: number, high: number): Joist[] =>
  joists.flatMap((joist) => {
    if (joist.start.x < from || joist.start.x > to) return [joist];
    const parts = [
      { ...joist, id: `${joist.id}a`, end: { ...joist.end, y: low } },
      { ...joist, id: `${joist.id}b`, start: { ...joist.start, y: high } },
    ];
    return high >= joist.end.y ? [{ ...parts[0], id: joist.id }] : parts;
  });

const hatch = points([1250, 900], [1850, 900], [1850, 1500], [1250, 1500]);
const bow = [0, 104, 178, 222, 237, 222, 178, 104, 0];

/** Rooms that no rectangle covers, laid out by hand; gaps of 5 to the walls, joints of 3. */
export const roomsToDraw: Readonly<Record<string, ShapedRoom>> = {
  'L-shaped kitchen': {
    room: {
      outline: points([0, 0], [4800, 0], [4800, 2400], [3300, 2400], [3300, 3600], [0, 3600]),
      openings: [{ id: 'L1', kind: 'light', centre: { x: 4200, y: 1500 }, diameter: 80 }],
      walls: [
        { edge: 0, name: 'hall wall', door: true },
        { edge: 5, name: 'garden wall', window: true },
      ],
    },
    stock: { length: 3000, width: 1200 },
    zones: [
      {
        direction: 'y',
        joists: at('y', [...even(40, 12), 4760]),
        rows: [
          [{ region: block(5, 4795, 5, 1205), joints: ['J7'] }],
          [{ region: [...block(5, 4795, 1205, 2395).slice(0, 3), [3295, 2395], [3295, 2405], [5, 2405]], joints: ['J6'] }],
          [{ region: block(5, 3295, 2405, 3595), joints: ['J4'] }],
        ],
      },
    ],
  },
  'Sitting room with a breast': {
    room: {
      outline: points([0, 0], [4200, 0], [4200, 3600], [2800, 3600], [2800, 3250], [1400, 3250], [1400, 3600], [0, 3600]),
      walls: [
        { edge: 0, name: 'window wall', window: true },
        { edge: 1, door: true },
        { edge: 4, name: 'breast' },
      ],
    },
    zones: [
      {
        direction: 'y',
        joists: (room) => [...cutShort(at('y', even(100, 11))(room), 1500, 2700, 3050, 9999), trimmer('T1', 1300, 2900, 3073)],
        rows: [
          [{ region: block(5, 4195, 5, 1205), joints: ['J6'] }],
          [{ region: block(5, 4195, 1205, 2405), joints: ['J4', 'J10'] }],
          [{ region: block(5, 4195, 2405, 3245), joints: ['J6'] }],
          [{ region: block(5, 1395, 3245, 3595) }, { region: block(2805, 4195, 3245, 3595) }],
        ],
      },
    ],
  },
  'Front room with a splayed bay': {
    stock: { length: 3000, width: 1200 },
    room: {
      outline: points([0, 0], [3900, 0], [3900, 3300], [3150, 3300], [2650, 4000], [1250, 4000], [750, 3300], [0, 3300]),
      walls: [
        { edge: 0, door: true },
        { edge: 3, window: true },
        { edge: 4, window: true },
        { edge: 5, window: true },
      ],
      zones: [
        {
          id: 'bay',
          outline: points([750, 3300], [3150, 3300], [2650, 4000], [1250, 4000]),
          joists: { direction: 'x', positions: [3350, 3650, 3950] },
        },
      ],
    },
    zones: [
      {
        direction: 'y',
        joists: at('y', even(150, 10), rectangle(3900, 3300)),
        rows: [
          [{ region: block(5, 3895, 5, 1205), joints: ['J6'] }],
          [{ region: block(5, 3895, 1205, 2405), joints: ['J4'] }],
          [{ region: block(5, 3895, 2405, 3295), joints: ['J6'] }],
        ],
      },
      {
        id: 'bay',
        direction: 'x',
        joists: at('x', [3350, 3650, 3950], points([750, 3300], [3150, 3300], [2650, 4000], [1250, 4000]), 'bay '),
        ripped: 'low',
        rows: [
          [
            {
              region: [
                [3300, 757],
                [3995, 1253],
                [3995, 1957],
                [3300, 1957],
              ],
            },
          ],
          [
            {
              region: [
                [3300, 1957],
                [3995, 1957],
                [3995, 2647],
                [3300, 3143],
              ],
            },
          ],
        ],
      },
    ],
  },
  'Attic with a fan': {
    room: { outline: rectangle(3780, 3600) },
    zones: [
      {
        direction: 'y',
        raked: true,
        joists: at(
          'y',
          even(110, 10, 390).map((atStart, i) => ({ atStart, atEnd: atStart + Math.round((60 * i) / 9) })),
        ),
        rows: [
          [{ region: block(5, 3775, 5, 1205), joints: ['J6'] }],
          [{ region: block(5, 3775, 1205, 2405), joints: ['J4', 'J9'] }],
          [{ region: block(5, 3775, 2405, 3595), joints: ['J6'] }],
        ],
      },
    ],
    proveFirst: ['J4'],
  },
  'Through lounge': {
    room: {
      outline: rectangle(7550, 3600),
      walls: [
        { edge: 3, name: 'bay wall', window: true },
        { edge: 0, name: 'party wall' },
      ],
      zones: [
        {
          id: 'front',
          outline: points([0, 0], [3400, 0], [3400, 3600], [0, 3600]),
          joists: { direction: 'y', first: 60, spacing: 400 },
        },
        {
          id: 'rear',
          outline: points([3650, 0], [7550, 0], [7550, 3600], [3650, 3600]),
          joists: { direction: 'x', first: 100, spacing: 400 },
        },
      ],
    },
    zones: [
      {
        id: 'front',
        direction: 'y',
        joists: at('y', even(60, 9), rectangle(3400, 3600), 'front '),
        rows: [
          [{ region: block(5, 3395, 5, 1205), joints: ['front J6'] }],
          [{ region: block(5, 3395, 1205, 2405), joints: ['front J4'] }],
          [{ region: block(5, 3395, 2405, 3595), joints: ['front J6'] }],
        ],
      },
      {
        id: 'rear',
        direction: 'x',
        joists: at('x', even(100, 9), points([3650, 0], [7550, 0], [7550, 3600], [3650, 3600]), 'rear '),
        rows: [
          [{ region: block(5, 3595, 3655, 4855), joints: ['rear J6'] }],
          [{ region: block(5, 3595, 4855, 6055), joints: ['rear J4'] }],
          [{ region: block(5, 3595, 6055, 7255), joints: ['rear J6'] }],
          [{ region: block(5, 3595, 7255, 7545), joints: ['rear J4'] }],
        ],
      },
    ],
  },
  'Out of square': {
    room: { outline: points([0, 0], [4200, 0], [4251, 3000], [51, 3000]), walls: [{ edge: 0, door: true }] },
    zones: [
      {
        direction: 'y',
        joists: at('y', even(200, 10)),
        rows: [
          [
            {
              region: [
                [5, 5],
                [4195, 5],
                [4215, 1205],
                [25, 1205],
              ],
              joints: ['J6'],
            },
          ],
          [
            {
              region: [
                [25, 1205],
                [4215, 1205],
                [4236, 2405],
                [46, 2405],
              ],
              joints: ['J4', 'J9'],
            },
          ],
          [
            {
              region: [
                [46, 2405],
                [4236, 2405],
                [4246, 2995],
                [56, 2995],
              ],
              joints: ['J6'],
            },
          ],
        ],
      },
    ],
  },
  'Landing with a hatch': {
    stock: { length: 3000, width: 1200 },
    room: {
      outline: rectangle(3600, 3000),
      openings: [
        { id: 'H1', kind: 'hatch', outline: hatch },
        { id: 'L1', kind: 'light', centre: { x: 2625, y: 2100 }, diameter: 90 },
      ],
      walls: [{ edge: 0, door: true }],
    },
    zones: [
      {
        direction: 'y',
        joists: (room) => [
          ...cutShort(at('y', [...even(25, 9), 3575])(room), 1250, 1850, 876, 1524),
          trimmer('T1', 1225, 2025, 876),
          trimmer('T2', 1225, 2025, 1524),
        ],
        rows: [
          [
            {
              region: [...block(5, 3595, 5, 1205).slice(0, 3), [1855, 1205], [1855, 895], [1245, 895], [1245, 1205], [5, 1205]],
              joints: ['J6'],
            },
          ],
          [
            {
              region: [
                [5, 1205],
                [1245, 1205],
                [1245, 1505],
                [1855, 1505],
                [1855, 1205],
                [3595, 1205],
                [3595, 2405],
                [5, 2405],
              ],
              joints: ['J3'],
            },
          ],
          [{ region: block(5, 3595, 2405, 2995), joints: ['J6'] }],
        ],
      },
    ],
  },
  'Study with a curved bay': {
    stock: { length: 3000, width: 1200 },
    room: {
      outline: [
        ...points([0, 0], [3600, 0], [3600, 3000]),
        ...bow.map((out, i) => ({ x: 3000 - i * 300, y: 3000 + out })),
        { x: 0, y: 3000 },
      ],
      walls: [{ edge: 0, door: true }, ...[3, 4, 5, 6, 7, 8, 9, 10].map((edge) => ({ edge, window: true }))],
    },
    zones: [
      {
        direction: 'y',
        joists: at('y', even(200, 9)),
        rows: [
          [{ region: block(5, 3595, 5, 1205), joints: ['J5'] }],
          [{ region: block(5, 3595, 1205, 2405), joints: ['J3'] }],
          [
            {
              region: [
                [5, 2405],
                [3595, 2405],
                [3595, 2995],
                ...bow.map((out, i) => [2998 - i * 299.5, 2995 + out] as const),
                [5, 2995],
              ],
              joints: ['J5'],
            },
          ],
        ],
      },
    ],
  },
  'Bedroom with a bowed wall': {
    room: {
      outline: points([0, 0], [4400, 0], [4400, 3480], [2200, 3518], [0, 3500]),
      openings: [{ kind: 'light', centre: { x: 2200, y: 1750 }, diameter: 100 }],
      walls: [{ edge: 4, window: true }],
    },
    zones: [
      {
        direction: 'y',
        joists: at('y', even(150, 11)),
        rows: [
          [{ region: block(5, 4395, 5, 1205), joints: ['J6'] }],
          [{ region: block(5, 4395, 1205, 2405), joints: ['J4', 'J10'] }],
          [
            {
              region: [
                [5, 2405],
                [4395, 2405],
                [4395, 3475],
                [2200, 3513],
                [5, 3495],
              ],
              joints: ['J6'],
            },
          ],
        ],
      },
    ],
  },
};
