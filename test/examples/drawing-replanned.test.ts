import { type CeilingPlan, type Job, type Point, planCeiling, type Replanning, replanCeiling, takeOff } from 'soffitwright';
import { buyingList, cutList, drawCutting, drawPlan, fixingOrder, screwSummary, type Table } from 'soffitwright/drawing';
import { describe, expect, it } from 'vitest';
import { everyElement, layerOf, readSvg } from '../generators/readSvg.js';

const ring = (...at: readonly (readonly [number, number])[]): Point[] => at.map(([x, y]) => ({ x, y }));

/** An L whose highest row is ripped, and shorter than the lower ones. */
const job: Job = {
  room: { outline: ring([0, 0], [4800, 0], [4800, 2400], [3300, 2400], [3300, 3600], [0, 3600]) },
  joists: { direction: 'y', first: 40, spacing: 400, last: 4760, width: 47 },
  lining: [{ kind: 'plasterboard', thickness: 9.5 }],
  boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
};
const plan = planCeiling(job);
const idsOf = ({ layout }: CeilingPlan, row: number): string[] =>
  layout.pieces.filter((piece) => piece.row === row).map(({ id }) => id);
const top = Math.max(...plan.layout.rows.map(({ row }) => row));
const topRow = idsOf(plan, top);
const replanned = (changes: Replanning): CeilingPlan => replanCeiling(plan, changes);
const column = ({ columns, rows }: Table, name: string) => rows.map((row) => row[columns.indexOf(name)]);
const textOf = (svg: string): string =>
  everyElement(readSvg(svg))
    .map(({ text }) => text)
    .join('\n');

describe('the sheets of a ceiling of which a row is up', () => {
  const again = replanned({ fixed: topRow, missing: ['J5'] });
  const left = again.layout.pieces.filter(({ locked }) => locked !== true).map(({ id }) => id);
  const opened = again.layout.boards.filter((board) => board.opened === true).map(({ id }) => id);

  it('have pieces up and others to fix, boards cut into and others not', () => {
    expect(topRow.length).toBeGreaterThan(1);
    expect(left.length).toBe(again.layout.pieces.length - topRow.length);
    expect(opened.length).toBeGreaterThan(0);
    expect(again.layout.boardsBought).toBe(again.layout.boards.length - opened.length);
  });

  it('send nobody to cut, fix or screw what is up, and say what that is', () => {
    for (const table of [cutList(again), cutList(again, { order: 'fixing' }), fixingOrder(again), screwSummary(again)]) {
      expect([...new Set(column(table, 'piece'))].sort()).toEqual([...left].sort());
      expect(table.notes).toContain(`Up already: ${topRow.join(', ')}.`);
    }
    expect(textOf(drawCutting(again))).toContain(`Up already: ${topRow.join(', ')}.`);
  });

  it('follow from the row that is up, and not from the other side of the room', () => {
    const rows = column(fixingOrder(again), 'piece').map((piece) => String(piece).split('.')[0]);
    expect([...new Set(rows)]).toEqual(Array.from({ length: top - 1 }, (_, below) => `${top - 1 - below}`));
  });

  it('count the screws to drive, and no others, in every place', () => {
    const up = again.fixings.positions.filter(({ piece }) => topRow.includes(piece)).length;
    const count = again.fixings.positions.length - up;
    expect(up).toBeGreaterThan(0);
    const notes = screwSummary(again).notes.join('\n');
    expect(notes).toContain(`${count} screws, `);
    expect(textOf(drawPlan(again))).toContain(`${count}, each 55 mm long`);
    const marks = layerOf(readSvg(drawPlan(again)), 'screw').filter(({ name }) => name === 'circle');
    expect(marks).toHaveLength(count);
    const bought = takeOff(again).lines.find(({ item }) => item.startsWith('drywall screws'));
    expect(bought?.basis).toMatch(new RegExp(`^${count} screws and `));
    expect(takeOff(again)).toEqual(again.takeOff);
  });

  it('tell boards cut into from those to buy', () => {
    const bought = again.layout.boardsBought;
    expect(buyingList(again).rows[0]).toContain(`${bought} not cut into yet`);
    expect(textOf(drawPlan(again)).replaceAll('\n', ' ')).toContain(`${bought} of 2400; ${opened.length} cut into already,`);
    expect(buyingList(plan).rows[0]).toContain(`${plan.layout.boardsBought} as laid`);
    expect(textOf(drawPlan(plan))).not.toContain('cut into');
  });

  it('mark what is up on the plan', () => {
    const words = everyElement(readSvg(drawPlan(again))).filter(({ text }) => text === 'up');
    // Each piece, and the key.
    expect(words).toHaveLength(topRow.length + 1);
    expect(everyElement(readSvg(drawPlan(plan))).filter(({ text }) => text === 'up')).toEqual([]);
  });

  it('sketch a board that was cut into for what is still to come from it, and no other', () => {
    const wanted = again.layout.pieces.filter(({ id }) => left.includes(id)).map(({ board }) => board);
    const text = textOf(drawCutting(again));
    for (const { id } of again.layout.boards) {
      const heading = opened.includes(id) ? `${id}: 2400, cut into` : `${id}: 2400`;
      expect(text.includes(heading)).toBe(wanted.includes(id));
    }
    expect(wanted.some((board) => opened.includes(board))).toBe(true);
    expect(column(cutList(again), 'note').filter((note) => /^from what is left of/.test(String(note)))).toHaveLength(
      wanted.filter((board) => opened.includes(board)).length,
    );
  });
});

describe('the sheets of a row of which one piece is up', () => {
  it('go on from that piece to either side', () => {
    const { layout } = plan;
    const row = layout.rows.find((each) => idsOf(plan, each.row).length === 3)?.row ?? 0;
    const [first, second, third] = idsOf(plan, row);
    const order = column(fixingOrder(replanned({ fixed: [second] })), 'piece');
    expect(order.slice(0, 2)).toEqual([first, third]);
  });

  it('say so where the joist of its end is not there', () => {
    const [first] = topRow;
    const joist = plan.layout.pieces.find(({ id }) => id === first)?.ends[1].joist ?? '';
    const again = replanned({ fixed: [first], missing: [joist] });
    expect(again.findings.map(({ code }) => code)).toContain('end-off-timber');
    const tables = JSON.stringify([fixingOrder(again), cutList(again)]);
    expect(tables).toMatch(/another board: no joist is there/);
    expect(tables).toMatch(/at another board: no joist is there/);
    expect(tables).not.toMatch(/middle of \?|, on "/);
  });
});
