import { isInputError } from 'soffitwright';
import { cutList, fixingOrder, screwSummary, settingOut, type Table } from 'soffitwright/drawing';
import { describe, expect, it } from 'vitest';
import { shapedNames, shapedPlan } from '../generators/shapedPlans.js';

const cells = (table: Table, column: string) => {
  const index = table.columns.indexOf(column);
  if (index < 0) throw new Error(`no column ${column} among ${table.columns.join(', ')}`);
  return table.rows.map((row) => row[index]);
};
const cellOf = (table: Table, key: string, column: string, keys = table.columns[0]) =>
  cells(table, column)[cells(table, keys).indexOf(key)];

describe('every table of a room of any shape', () => {
  it.each(shapedNames)('has a cell for each column, no blank unfilled, and survives JSON: %s', (name) => {
    const plan = shapedPlan(name);
    const tables: Table[] = [
      cutList(plan),
      fixingOrder(plan),
      screwSummary(plan),
      ...Object.values(settingOut(plan) as unknown as Record<string, Table>),
    ];
    for (const table of tables) {
      expect(new Set(table.columns).size).toBe(table.columns.length);
      expect(table.rows.every((row) => row.length === table.columns.length)).toBe(true);
      expect(JSON.parse(JSON.stringify(table))).toEqual(table);
      expect(JSON.stringify(table)).not.toMatch(/undefined|\{\w+\}|NaN|Infinity/);
    }
  });
});

describe('the cut list', () => {
  it('gives both long edges of a raked piece, the rake, and the edge at which it is the longer', () => {
    const table = cutList(shapedPlan('Out of square'));
    // 1.1 runs from 5 (25 at its high edge) to J6 at 2200, less half the joint of 3.
    expect(cellOf(table, '1.1', 'length')).toBe(2193);
    expect(cellOf(table, '1.1', 'end to B')).toBe('cut, at the wall; raked 20, longer at the edge to A door');
    expect(cellOf(table, '1.1', 'end to D')).toBe('cut, on J6');
    expect(cellOf(table, '1.1', 'long edge to A door')).toBe('2193, bound');
    expect(cellOf(table, '1.1', 'long edge to C')).toBe('2173, bound');
    expect(cellOf(table, '1.1', 'shape')).toBe('');
    expect(cellOf(table, '1.1', 'note')).toContain('its mirror image does not fit: mark it face up by its sketch');
    // At the other wall the rake leans the other way about the piece.
    expect(cellOf(table, '1.2', 'end to D')).toBe('cut, at the wall; raked 20, longer at the edge to C');
    expect(cellOf(table, '2.2', 'long edge to C')).toBe('bound');
    expect(cellOf(table, '2.2', 'note')).toBe('');
  });

  it('gives a notch its size, its side and its place', () => {
    const hatch = cutList(shapedPlan('Landing with a hatch'));
    expect(cellOf(hatch, '1.1', 'shape')).toBe('notch 610 × 310 in the edge to C, from 1240 off the end to B');
    expect(cellOf(hatch, '2.2', 'shape')).toBe('notch 610 × 300 in the edge to A door, from 418 off the end to B');
    // The hatch is in the notch: only the light is left to be cut out.
    expect(cellOf(hatch, '2.2', 'openings')).toMatch(/^L1 Ø90, centre \d+ from end to B, 895 from edge to A door$/);
    expect(cellOf(hatch, '1.1', 'openings')).toBe('');
    const corner = cutList(shapedPlan('L-shaped kitchen'));
    expect(cellOf(corner, '2.2', 'shape')).toBe('notch 1500 × 10 at the corner of F and C');
  });

  it('lists the corners of what is neither raked nor notched', () => {
    const table = cutList(shapedPlan('Study with a curved bay'));
    expect(cellOf(table, '3.1', 'shape')).toMatch(
      /^corners, from the end to B \/ from the edge to A door: 0 \/ 0, 1793 \/ 0, 1793 \/ 826, .*, 0 \/ 590$/,
    );
    // An edge that is no straight line has no length.
    expect(cellOf(table, '3.1', table.columns[10])).toBe('cut');
  });

  it('names the wall or border that each side of a piece in a zone faces', () => {
    const table = cutList(shapedPlan('Through lounge'));
    expect(table.columns).toEqual(expect.arrayContaining(['first end', 'second end', 'first long edge', 'second long edge']));
    expect(cellOf(table, '1.2', 'second end')).toBe('to border of front: cut, at the border of front');
    expect(cellOf(table, '4.1', 'first end')).toBe('to A party wall: cut, at the wall');
    expect(cellOf(table, '4.1', 'first long edge')).toBe('to border of rear: bound');
    expect(cellOf(table, '7.1', 'second long edge')).toBe('to D: cut');
  });

  it('names the walls of a part that a zone opens out of, and the border between them', () => {
    const table = cutList(shapedPlan('Front room with a splayed bay'));
    expect(cellOf(table, '1.1', 'first end')).toBe('to B: cut, at the wall');
    expect(cellOf(table, '1.1', 'first long edge')).toBe('to A door: bound');
    // Walls of 750 stand at either side of the border of 2400.
    expect(cellOf(table, '3.1', 'second long edge')).toBe('to border of bay: cut');
    expect(cellOf(table, '4.1', 'first long edge')).toBe('to D window: bound');
    expect(cellOf(table, '4.1', 'second end')).toBe('to E window: cut, at the wall');
  });

  it('tells the borders of a zone apart by the walls that they face', () => {
    const plan = shapedPlan('Landing with a hatch');
    const outline = [
      { x: 0, y: 1205 },
      { x: 3600, y: 1205 },
      { x: 3600, y: 2405 },
      { x: 0, y: 2405 },
    ];
    const zones = [{ id: 'middle', outline, joists: { direction: 'y' as const, first: 25, spacing: 400 } }];
    const pieces = plan.layout.pieces.map((piece) => (piece.row === 2 ? { ...piece, zone: 'middle' } : piece));
    const room = { ...plan.room, zones };
    const joists = [...plan.joists, ...plan.joists.map((joist) => ({ ...joist, id: `middle ${joist.id}` }))];
    const table = cutList({ ...plan, room, joists, layout: { ...plan.layout, pieces } });
    expect(cellOf(table, '2.1', 'first long edge')).toBe('to border of middle towards A door: bound');
    expect(cellOf(table, '2.1', 'second long edge')).toBe('to border of middle towards C: bound');
    // The same line seen from the other side has the same name.
    expect(cellOf(table, '1.2', 'second long edge')).toBe('to border of middle towards A door: bound');
    expect(cellOf(table, '3.2', 'first long edge')).toBe('to border of middle towards C: bound');
  });

  it('names a wall that an end meets where it is not the outermost', () => {
    const table = cutList(shapedPlan('Sitting room with a breast'));
    expect(cellOf(table, '4.1', 'end to A door')).toBe('cut, at wall E');
    expect(cellOf(table, '4.2', 'end to C')).toBe('cut, at wall G');
    expect(cellOf(table, '4.2', 'end to A door')).toBe('cut, at the wall');
  });
});

describe('the fixing order', () => {
  it('finishes one zone before the next', () => {
    const rows = cells(fixingOrder(shapedPlan('Through lounge')), 'piece').map((id) => Number(String(id).split('.')[0]));
    expect(rows.findIndex((row) => row > 3)).toBe(6);
    expect(rows.slice(6).every((row) => row > 3)).toBe(true);
  });

  it('calls no piece a closer that has a run to itself', () => {
    const table = fixingOrder(shapedPlan('Sitting room with a breast'));
    for (const id of ['4.1', '4.2']) expect(cellOf(table, id, 'note', 'piece')).not.toContain('closer');
    expect(cellOf(table, '2.2', 'note', 'piece')).not.toContain('raked');
  });

  it('says which end is raked', () => {
    const table = fixingOrder(shapedPlan('Out of square'));
    expect(cellOf(table, '1.1', 'note', 'piece')).toContain('raked end towards B');
    expect(cellOf(table, '2.2', 'note', 'piece')).not.toContain('raked');
  });
});

describe('the setting-out sheet', () => {
  it('measures both ends of a joist from a leaning wall where it is', () => {
    const { joists, lines } = settingOut(shapedPlan('Out of square'));
    expect(joists.rows[0].slice(0, 3)).toEqual(['J1', 200, 149]);
    expect(joists.rows[9].slice(0, 3)).toEqual(['J10', 3800, 3749]);
    expect(lines.rows.find(([line]) => line === 'edge between rows 1 and 2')?.slice(4)).toEqual([1205, 1205]);
    expect(lines.notes.join(' ')).toContain(
      `Check: J1 at row edge 1/2 to J10 at row edge 2/3 is ${Math.round(Math.hypot(3600, 1200))} mm when the lines are square.`,
    );
  });

  it('names the wall that a joist end faces where it is another than the others are measured from', () => {
    const { joists, lines } = settingOut(shapedPlan('Sitting room with a breast'));
    // J8 is at 2900; beside its far end the breast ends at 2800.
    expect(joists.rows.find(([id]) => id === 'J8')?.slice(1, 3)).toEqual([2900, '100 from G']);
    expect(joists.rows.map(([id]) => id)).not.toContain('T1');
    expect(lines.rows.find(([line]) => line === 'centre of T1')).toEqual([
      'centre of T1',
      'B window wall',
      'C',
      'A door',
      3073,
      3073,
    ]);
  });

  it('finds a diagonal that stays on the ceiling', () => {
    const { lines } = settingOut(shapedPlan('L-shaped kitchen'));
    expect(lines.notes.join(' ')).toContain(
      `Check: J13 at row edge 1/2 to J1 at row edge 2/3 is ${Math.round(Math.hypot(4720, 1200))} mm when the lines are square.`,
    );
  });

  it('checks a part with one row edge by a mark along its last joist', () => {
    const plan = shapedPlan('Out of square');
    const rows = plan.layout.rows.slice(0, 2);
    const pieces = plan.layout.pieces.filter(({ row }) => row < 3);
    const { lines } = settingOut({ ...plan, layout: { ...plan.layout, rows, pieces } });
    // From the edge at 1205 there are 1795 of J10 towards C: 1200 of them, and 3600 between J1 and J10.
    expect(lines.notes).toContain(
      `Check: mark 1200 mm along J10 from row edge 1/2 towards C; from there to J1 at row edge 1/2 is ${Math.round(Math.hypot(3600, 1200))} mm when the lines are square.`,
    );
  });

  it('goes zone by zone, from the walls and borders of each', () => {
    const { joists, lines } = settingOut(shapedPlan('Through lounge'));
    expect(joists.rows.find(([, id]) => id === 'rear J4')).toEqual([
      'rear',
      'rear J4',
      1300,
      1300,
      47,
      'as given',
      'screw line; butt joints in rows 5, 7',
      '',
    ]);
    expect(joists.notes).toContain(
      'In rear: first ends to border of rear, second ends to D; figures in mm from A party wall, unless another is named.',
    );
    expect(lines.rows.find(([zone, line]) => zone === 'rear' && line === 'edge between rows 4 and 5')).toEqual([
      'rear',
      'edge between rows 4 and 5',
      'border of rear',
      'A party wall',
      'C',
      1205,
      1205,
    ]);
    expect(lines.notes.filter((note) => note.includes('Check:'))).toHaveLength(2);
  });

  it('lists the walls by their names with their lengths', () => {
    const { walls } = settingOut(shapedPlan('Front room with a splayed bay'));
    expect(walls.columns).toEqual(['wall', 'length']);
    expect(walls.rows).toEqual([
      ['A door', 3900],
      ['B', 3300],
      ['C', 750],
      ['D window', 860],
      ['E window', 1400],
      ['F window', 860],
      ['G', 750],
      ['H', 3300],
    ]);
  });

  it('measures an opening to the walls that it faces', () => {
    const plan = shapedPlan('Sitting room with a breast');
    const openings = [{ id: 'L1', kind: 'light' as const, centre: { x: 3510, y: 3400 }, diameter: 80 }];
    const table = settingOut({ ...plan, room: { ...plan.room, openings } }).openings;
    // Across: to the side of the breast at 2800. Along: to the window wall at 0.
    expect(table.rows[0].slice(3)).toEqual(['710 from G', 3400, 'J10, 127 mm from its edge']);
  });
});

describe('what is not a plan', () => {
  const plan = shapedPlan('Through lounge');
  const problemsOf = (changed: unknown): string[] => {
    try {
      cutList(changed as typeof plan);
    } catch (error) {
      if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`);
      throw error;
    }
    return [];
  };
  const withPiece = (change: object) => ({
    ...plan,
    layout: { ...plan.layout, pieces: [{ ...plan.layout.pieces[0], ...change }, ...plan.layout.pieces.slice(1)] },
  });

  it.each([
    [withPiece({ edgeLengths: { low: '1', high: 2 } }), 'wrong-type plan.layout.pieces[0].edgeLengths.low'],
    [withPiece({ zone: 7 }), 'wrong-type plan.layout.pieces[0].zone'],
    [withPiece({ hand: { view: 'face up', outline: [] } }), 'too-small plan.layout.pieces[0].hand.outline'],
    [{ ...plan, room: { ...plan.room, zones: [{ id: 'front' }] } }, 'missing plan.room.zones[0].outline'],
  ])('is refused with the path of what is wrong: %#', (changed, problem) => {
    expect(problemsOf(changed)).toContain(problem);
  });
});

describe('the screw summary', () => {
  it('says of each piece in a zone which edge its marks run from', () => {
    const table = screwSummary(shapedPlan('Through lounge'));
    const marks = cells(table, 'marks');
    expect(marks[cells(table, 'piece').indexOf('1.1')]).toMatch(/, from the edge to A party wall$/);
    expect(marks[cells(table, 'piece').indexOf('4.1')]).toMatch(/, from the edge to border of rear$/);
  });
});
