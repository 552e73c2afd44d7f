import { type CeilingPlan, isInputError } from 'soffitwright';
import {
  buyingList,
  cutList,
  drawCutting,
  fixingOrder,
  screwSummary,
  settingOut,
  type Table,
  tableText,
} from 'soffitwright/drawing';
import { describe, expect, it } from 'vitest';
import { drawnPlan, drawnRooms } from '../generators/drawnPlans.js';
import { boxesTouch, everyElement, layerOf, readSvg, textBoxes } from '../generators/readSvg.js';

const bedroom = drawnPlan(drawnRooms['back bedroom']);
const held = drawnPlan(drawnRooms['box room']);
const dining = drawnPlan(drawnRooms['joists along x']);
const plans: [string, CeilingPlan][] = Object.entries(drawnRooms).map(([name, room]) => [name, drawnPlan(room)]);

const tablesOf = (plan: CeilingPlan): Table[] => {
  const { joists, lines, openings } = settingOut(plan);
  return [cutList(plan), screwSummary(plan), buyingList(plan), fixingOrder(plan), joists, lines, openings];
};
const cells = (table: Table, column: string) => {
  const index = table.columns.indexOf(column);
  if (index < 0) throw new Error(`no column ${column} among ${table.columns.join(', ')}`);
  return table.rows.map((row) => row[index]);
};
const codesOf = (action: () => unknown): string[] => {
  try {
    action();
  } catch (error) {
    if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
  throw new Error('no error');
};

describe('every table', () => {
  it.each(plans)('has a cell for each column, names its room and rules, and survives JSON: %s', (_, plan) => {
    for (const table of tablesOf(plan)) {
      expect(new Set(table.columns).size).toBe(table.columns.length);
      expect(table.rows.every((row) => row.length === table.columns.length)).toBe(true);
      expect(table.head).toEqual([plan.room.name, 'Rules: UK: warranty table, generic specification clauses, common practice']);
      expect(table.notes).toContain('Not a structural, asbestos, fire or building-control approval.');
      expect(JSON.parse(JSON.stringify(table))).toEqual(table);
      expect(JSON.stringify(table)).not.toMatch(/undefined|\{\w+\}|NaN/);
    }
  });

  it('carries the hold with its reason, or null', () => {
    for (const { hold } of tablesOf(held)) expect(hold).toMatch(/^HOLD\. Do not start: .*no asbestos test result/);
    for (const { hold } of tablesOf(bedroom)) expect(hold).toBeNull();
  });

  it('becomes plain text with its hold before its rows', () => {
    const text = tableText(cutList(held));
    expect(text.split('\n').slice(0, 2)).toEqual(['Cut list', 'Box room']);
    expect(text.indexOf('HOLD.')).toBeLessThan(text.indexOf('piece  '));
    expect(text.endsWith('approval.\n')).toBe(true);
  });

  it('keeps a cell on one line, whatever a name holds', () => {
    const plan = { ...bedroom, room: { ...bedroom.room, name: 'Two\nlines\tand a tab' } };
    expect(tableText(buyingList(plan)).split('\n')[1]).toBe('Two lines and a tab');
  });

  it('refuses what is not a plan, and options it does not know', () => {
    expect(codesOf(() => cutList({ ...bedroom, proveFirst: 'J1' } as never))).toEqual(['wrong-type plan.proveFirst']);
    expect(codesOf(() => cutList(bedroom, { order: 'size' } as never))).toEqual(['not-one-of options.order']);
    expect(codesOf(() => buyingList(bedroom, { unit: 'mm' } as never))).toEqual(['unknown-field options.unit']);
  });

  it('takes words in another language', () => {
    expect(buyingList(bedroom, { messages: { 'buy.title': 'Einkauf' } }).title).toBe('Einkauf');
  });
});

describe('the cut list', () => {
  it('has every piece once, board by board', () => {
    const table = cutList(bedroom);
    expect([...cells(table, 'piece')].sort()).toEqual(bedroom.layout.pieces.map(({ id }) => id).sort());
    const boards = cells(table, 'board').map((board) => Number(String(board).slice(1)));
    expect(boards).toEqual([...boards].sort((a, b) => a - b));
  });

  it('never asks for a piece longer than the layout says', () => {
    const table = cutList(bedroom);
    for (const [i, id] of cells(table, 'piece').entries()) {
      const piece = bedroom.layout.pieces.find((each) => each.id === id);
      const length = Number(cells(table, 'length')[i]);
      expect(length).toBeLessThanOrEqual(piece?.cutLength ?? 0);
      expect(length).toBeGreaterThan((piece?.cutLength ?? 0) - 1);
    }
  });

  it('says which edge and which end faces which wall', () => {
    const table = cutList(bedroom);
    expect(table.columns).toEqual(
      expect.arrayContaining(['end to B', 'end to D', 'long edge to A door', 'long edge to C window']),
    );
    const row = table.rows[cells(table, 'piece').indexOf('3.1')];
    const cell = (column: string) => row[table.columns.indexOf(column)];
    expect(cell('long edge to A door')).toBe('bound');
    expect(cell('long edge to C window')).toBe('cut');
    expect(cell('end to B')).toBe('factory, at the wall');
    expect(cell('end to D')).toBe('cut, on J6');
  });

  it('turns with the joists: along x the ends face the walls that the boards run between', () => {
    const { columns } = cutList(dining);
    expect(columns).toContain('end to B');
    expect(columns).toContain('end to D');
    expect(columns).toContain('long edge to A hall wall (door)');
    expect(columns).toContain('long edge to C garden wall (window)');
  });

  it('places openings from the ends and edges of their own piece', () => {
    const table = cutList(dining);
    const [text] = cells(table, 'openings').filter((cell) => cell !== '');
    // Piece 2.2 starts at 1191.5 (J4, less half the joint) and row 2 at 1205: 2160 - 1191.5 and 1970 - 1205.
    expect(cells(table, 'piece')[cells(table, 'openings').indexOf(text)]).toBe('2.2');
    expect(text).toBe('pendant Ø60, centre 969 from end to B, 765 from edge to C garden wall (window)');
  });

  it('follows the fixing order when asked', () => {
    expect(cells(cutList(bedroom, { order: 'fixing' }), 'piece')).toEqual(cells(fixingOrder(bedroom), 'piece'));
  });

  it('names offcuts that are large enough to become a piece, and no others', () => {
    const [first, ...rest] = bedroom.layout.boards;
    const offcut = (length: number, width: number) => ({ board: first.id, length, width, at: { along: 0, across: 0 } });
    const boards = [{ ...first, offcuts: [offcut(300, 200), offcut(299, 1200), offcut(1200, 199)] }, ...rest];
    const table = cutList({ ...bedroom, layout: { ...bedroom.layout, boards } });
    expect(cells(table, 'same board gives')[0]).toBe('offcut 300 × 200');
  });

  it('writes feet and inches as text', () => {
    // 2018.5 mm is 79.468 in: 6 ft 7.468 in, and 7.49 sixteenths are 7.
    expect(cells(cutList(bedroom, { units: 'inch' }), 'length')[0]).toBe(`6' 7 7/16"`);
  });
});

describe('the screw summary', () => {
  it.each(plans)('adds up to all lines of screws: %s', (_, plan) => {
    const total = cells(screwSummary(plan), 'screws').reduce((sum: number, count) => sum + Number(count), 0);
    expect(total).toBe(plan.fixings.lines.reduce((sum, { count }) => sum + count, 0));
  });

  it('gives lines that are marked alike one row', () => {
    const row = screwSummary(bedroom).rows.find(([piece, where]) => piece === '1.1' && where === 'middle of board');
    expect(row).toEqual(['1.1', 'middle of board', 'J1, J2, J3, J4, J5', 7, 'first at 12, then every 196', 35]);
  });

  it('puts the published rule and the rule of thumb side by side, with their sources', () => {
    const notes = screwSummary(bedroom).notes.join(' ');
    expect(notes).toContain(
      'A board of 1200 x 2400 x 12.5 over joists at 400 mm: 5 a line at 300, common practice, 35 a board; 6 to 7 a line at 230, specification, 42 to 49.',
    );
    expect(notes).toContain('middle of board: at most 230 mm, must hold (National Building Specification');
    // From a clause for metal framing: on timber it should hold.
    expect(notes).toContain('fixings along a board end: at most 150 mm, should hold (National Building Specification');
    expect(notes).toContain('fixings along the edge of the ceiling: at most 150 mm, should hold (');
    expect(notes).toContain('At a wall that runs across the joists this is the first screw on each joist');
    expect(fixingOrder(bedroom).notes.join(' ')).toContain('5 a line at 300, common practice, 35 a board; 6 to 7 a line at 230');
    expect(notes).toContain('Length 55 mm: 33 mm into the joist.');
  });

  it('says so when no length is right', () => {
    const none = { ...bedroom, fixingLength: { ...bedroom.fixingLength, recommended: null, embedment: null } };
    expect(screwSummary(none).notes).toContain('No stock length is right: the reasons are below.');
  });
});

describe('the buying list', () => {
  it('has whole packs, what is needed and what is spare', () => {
    const screws = buyingList(bedroom).rows.find(([item]) => item === 'drywall screws 55 mm');
    expect(screws?.slice(1, 6)).toEqual([1, 1000, 'screws', 208, 792]);
  });
});

describe('the fixing order', () => {
  it.each(plans)('has every piece once, no row left before it is whole, ripped rows last: %s', (_, plan) => {
    const order = cells(fixingOrder(plan), 'piece');
    expect([...order].sort()).toEqual(plan.layout.pieces.map(({ id }) => id).sort());
    const rows = order.map((id) => plan.layout.pieces.find((piece) => piece.id === id)?.row ?? 0);
    const runs = rows.filter((row, i) => row !== rows[i - 1]);
    expect(new Set(runs).size).toBe(runs.length);
    const ripped = runs.map((row) => plan.layout.rows.find((each) => each.row === row)?.ripped);
    expect(ripped.indexOf(true) === -1 || ripped.slice(ripped.indexOf(true)).every(Boolean)).toBe(true);
  });

  it('flags closers: only a piece whose both ends are settled', () => {
    const table = fixingOrder(bedroom);
    const closers = table.rows.filter((row) => String(row[row.length - 1]).startsWith('closer')).map(([, piece]) => piece);
    expect(closers).toHaveLength(3);
    for (const [row, first] of [
      [1, '1.1'],
      [3, '3.1'],
    ] as const) {
      const pieces = cells(table, 'piece').filter((id) => String(id).startsWith(`${row}.`));
      expect(pieces[0]).toBe(first);
      expect(closers).toContain(pieces[1]);
    }
  });

  it('calls no piece a closer that has its row to itself', () => {
    const step = fixingOrder(held).rows.find(([, piece]) => piece === '1.1');
    expect(step?.slice(5, 7)).toEqual(['wall B', 'wall D']);
    expect(step?.[step.length - 1]).toBe('');
  });

  it('says where cut long edges go', () => {
    const step = fixingOrder(bedroom).rows.find(([, piece]) => piece === '3.1');
    expect(step?.[step.length - 1]).toBe('cut long edge towards C window');
    const turned = bedroom.layout.pieces.map((piece) => ({ ...piece, edges: { low: 'cut' as const, high: 'bound' as const } }));
    const other = fixingOrder({ ...bedroom, layout: { ...bedroom.layout, pieces: turned } }).rows;
    expect(other.every((row) => String(row[row.length - 1]).endsWith('cut long edge towards A door'))).toBe(true);
  });

  it('puts the first screws into the middle joists of the piece', () => {
    const step = fixingOrder(bedroom).rows.find(([, piece]) => piece === '1.1');
    expect(step).toContain('J3, then outward');
  });
});

describe('the setting-out sheet', () => {
  it('gives each joist at both ends, and what it is for', () => {
    const { joists } = settingOut(drawnPlan(drawnRooms.fan));
    const row = joists.rows[9];
    expect(row.slice(0, 5)).toEqual(['J10', 3575, 3557, 47, 'as given']);
    expect(joists.rows[5][5]).toMatch(/^screw line; butt joints in row(s \d+, | \d+$)/);
    expect(joists.columns[1]).toBe('at the end to A');
  });

  it('says in which rows butt joints are on a joist, one or several', () => {
    const uses = cells(settingOut(bedroom).joists, 'use');
    expect(uses.some((use) => /^screw line; butt joints in row \d+$/.test(String(use)))).toBe(true);
    for (const use of uses) expect(use).toMatch(/^screw line(; butt joints in (row \d+|rows \d+(, \d+)+))?$/);
  });

  it('marks joists to prove first', () => {
    const { joists } = settingOut(drawnPlan(drawnRooms.hall));
    const marked = joists.rows.filter((row) => row[row.length - 1] === 'prove before cutting to it').map(([id]) => id);
    expect(marked).toEqual(['J7', 'J15']);
  });

  it('has a diagonal that comes right where the lines are square', () => {
    const { lines } = settingOut(bedroom);
    // From J1 (25) on 1205 to J10 (3575) on 2405: 3550 by 1200.
    expect(lines.notes).toContain(
      `Check: J1 at row edge 1/2 to J10 at row edge 2/3 is ${Math.round(Math.hypot(3550, 1200))} mm when the lines are square.`,
    );
  });

  it('says how far an opening is from the next joist, or that one is in the way', () => {
    const { openings } = settingOut(held);
    const clear = Object.fromEntries(openings.rows.map((row) => [row[0], row[row.length - 1]]));
    // L1: 665 to 735; J2 is 456.5 to 503.5, J3 856.5 to 903.5.
    expect(clear.L1).toBe('J3, 122 mm from its edge');
    expect(clear.H1).toBe('J4 is in the way');
  });
});

describe('the cutting sheet', () => {
  const sheets = plans.filter(([, plan]) => plan.layout.boards.some(({ cuts }) => cuts.length > 0));

  it.each(sheets)('is one sheet of A4 on which no text touches another: %s', (_, plan) => {
    const root = readSvg(drawCutting(plan));
    expect([root.attributes.width, root.attributes.height]).toEqual(['210mm', '297mm']);
    const boxes = textBoxes(everyElement(root));
    expect(boxes.filter(({ left, right, top, bottom }) => left < 7 || right > 203 || top < 7 || bottom > 290)).toEqual([]);
    const touching = boxes.flatMap((box, i) =>
      boxes.slice(i + 1).flatMap((other) => (boxesTouch(box, other) ? [`${box.text} on ${other.text}`] : [])),
    );
    expect(touching).toEqual([]);
  });

  it('draws each board that is cut to the scale it states, and lists those that stay whole', () => {
    const boards = bedroom.layout.boards.map((board, i) => (i === 0 ? { ...board, cuts: [] } : board));
    const root = readSvg(drawCutting({ ...bedroom, layout: { ...bedroom.layout, boards } }));
    const texts = everyElement(root).flatMap(({ name, text }) => (name === 'text' ? [text] : []));
    const scale = Number(/1:(\d+)/.exec(texts.join(' '))?.[1]);
    const outlines = layerOf(root, 'cutting').filter(
      ({ name, attributes }) => name === 'rect' && attributes['stroke-width'] === '0.5',
    );
    expect(outlines).toHaveLength(boards.filter(({ cuts }) => cuts.length > 0).length);
    for (const { attributes } of outlines) {
      expect(Number(attributes.width) * scale).toBeCloseTo(2400, 1);
      expect(Number(attributes.height) * scale).toBeCloseTo(1200, 1);
    }
    expect(texts.join(' ')).toContain('Whole boards, not cut to length or width: B1 (1.1).');
  });

  it('says which way the boards lie, and swaps the long edges between the two', () => {
    const place = (view: 'reflected' | 'looking-up', text: string) => {
      const box = textBoxes(layerOf(readSvg(drawCutting(bedroom, { view })), 'cutting')).find((each) => each.text === text);
      if (box === undefined) throw new Error(`no ${text}`);
      return box;
    };
    // Joists up the sheet: seen from above A is below, and a board lying face up shows the mirror image.
    expect(place('reflected', 'to A door').top).toBeGreaterThan(place('reflected', 'to C window').top);
    expect(place('looking-up', 'to A door').top).toBeLessThan(place('looking-up', 'to C window').top);
    expect(drawCutting(bedroom)).toContain('Boards lying face up: mirror image of the plan');
    expect(drawCutting(bedroom, { view: 'reflected' })).not.toContain('face up');
  });

  it('keeps a strip on the side of its wall', () => {
    const rip = {
      ...bedroom.layout.boards[0],
      cuts: [{ kind: 'rip' as const, at: 590, from: 0, to: 2400 }],
      offcuts: [{ board: 'B1', length: 2400, width: 610, at: { along: 0, across: 590 } }],
    };
    const pieces = bedroom.layout.pieces.slice(0, 1).map((piece) => ({ ...piece, cutLength: 2400, width: 590 }));
    const plan = { ...bedroom, layout: { ...bedroom.layout, boards: [rip], pieces } };
    const boxes = textBoxes(layerOf(readSvg(drawCutting(plan)), 'cutting'));
    const at = (text: string): number => boxes.find((box) => box.text === text)?.top ?? Number.NaN;
    // Face up the low edge, to A, is on top; the piece lies along it.
    expect(at('to A door')).toBeLessThan(at('1.1'));
    expect(at('1.1')).toBeLessThan(at('2400 × 610'));
  });

  it('goes on to further sheets, and refuses one that there is not', () => {
    const hall = drawnPlan(drawnRooms.hall);
    const text = (sheet: number): string => drawCutting(hall, { sheet });
    const count = Number(/Sheet 1 of (\d+)/.exec(text(1))?.[1]);
    expect(count).toBeGreaterThan(1);
    const drawn = Array.from(
      { length: count },
      (_, i) =>
        layerOf(readSvg(text(i + 1)), 'cutting').filter(
          ({ name, attributes }) => name === 'rect' && attributes['stroke-width'] === '0.5',
        ).length,
    );
    expect(drawn.reduce((sum, each) => sum + each, 0)).toBe(hall.layout.boards.filter(({ cuts }) => cuts.length > 0).length);
    expect(codesOf(() => text(count + 1))).toEqual(['no-such-sheet options.sheet']);
  });

  it('is stamped under a hold', () => {
    expect(drawCutting(held)).toContain('>HOLD<');
    expect(drawCutting(bedroom)).not.toContain('>HOLD<');
  });

  it('never dimensions a cut beyond the end of the piece that it makes', () => {
    const root = readSvg(drawCutting(bedroom));
    const texts = new Set(textBoxes(layerOf(root, 'cutting')).map(({ text }) => text));
    for (const piece of bedroom.layout.pieces.filter(({ at, cutLength }) => at.along === 0 && cutLength < 2390)) {
      expect(texts).toContain(String(Math.floor(piece.cutLength)));
    }
  });
});
