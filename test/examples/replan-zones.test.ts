import { checkLayout, type Job, planCeiling, rectangle, replanCeiling, tryReplanCeiling } from 'soffitwright';
import { describe, expect, it } from 'vitest';

/** Two ceilings in one, their joists across each other, and a beam between that nobody boards. */
const job: Job = {
  room: {
    outline: rectangle(7550, 3600),
    zones: [
      {
        id: 'front',
        outline: [
          { x: 0, y: 0 },
          { x: 3400, y: 0 },
          { x: 3400, y: 3600 },
          { x: 0, y: 3600 },
        ],
        joists: { direction: 'y', first: 60, spacing: 400, width: 50 },
      },
      {
        id: 'rear',
        outline: [
          { x: 3650, y: 0 },
          { x: 7550, y: 0 },
          { x: 7550, y: 3600 },
          { x: 3650, y: 3600 },
        ],
        joists: { direction: 'x', first: 100, spacing: 400, width: 50 },
      },
    ],
  },
  joists: [],
  lining: [{ kind: 'plasterboard', thickness: 9.5 }],
  boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
};
const plan = planCeiling(job);
const errorsIn = ({ job: { room, joists, boards, lining }, layout }: typeof plan) =>
  checkLayout({ room, joists, boards, lining, layout }).filter(({ severity }) => severity === 'error');

describe('a plan of zones', () => {
  it('has the joists of all of them, fixes every piece, and is found right', () => {
    expect(plan.joists.map(({ id }) => id)).toEqual([
      ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((number) => `front J${number}`),
      ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((number) => `rear J${number}`),
    ]);
    const screwed = new Set(plan.fixings.positions.map(({ piece }) => piece));
    expect(plan.layout.pieces.filter(({ id }) => !screwed.has(id))).toEqual([]);
    expect(errorsIn(plan)).toEqual([]);
  });

  it('keeps a second layer clear of the joints of the first in every zone', () => {
    const { layers = [] } = planCeiling({ ...job, layers: 2 });
    const [below, above] = layers.map(({ layout }) => layout.rows);
    const joints = (rows: typeof below, id: string) => rows.filter(({ zone }) => zone === id).slice(1);
    for (const id of ['front', 'rear']) {
      const apart = joints(above, id).flatMap(({ low }) => joints(below, id).map((each) => Math.abs(low - each.low)));
      expect(apart.length, id).toBeGreaterThan(0);
      expect(Math.min(...apart), id).toBeGreaterThanOrEqual(300);
    }
  });

  it('made again with nothing new is the same', () => {
    expect(replanCeiling(plan).changed).toEqual([]);
  });

  it('changes in the zone whose joist is not there, and nowhere else', () => {
    const carrying = plan.layout.pieces.flatMap(({ zone, ends }) =>
      zone === 'rear' ? ends.flatMap(({ joist }) => joist ?? []) : [],
    );
    const again = replanCeiling(plan, { missing: carrying.slice(0, 1) });
    expect(again.joists.map(({ id }) => id)).not.toContain(carrying[0]);
    expect(again.changed.some(({ joist }) => joist === carrying[0])).toBe(true);
    const front = (of: typeof plan) => of.layout.pieces.filter(({ zone }) => zone === 'front').map(({ outline }) => outline);
    expect(front(again)).toEqual(front(plan));
    expect(again.layout.pieces.flatMap(({ ends }) => ends.map(({ joist }) => joist))).not.toContain(carrying[0]);
    expect(errorsIn(again)).toEqual([]);
  });

  it('takes a joist that was found into the zone that its id begins with, across the joists of that zone', () => {
    const again = replanCeiling(plan, { found: [{ joist: 'rear X', at: 300 }] });
    expect(again.joists.find(({ id }) => id === 'rear X')).toMatchObject({
      start: { x: 3650, y: 300 },
      end: { x: 7550, y: 300 },
      known: 'measured',
    });
    const outside = tryReplanCeiling(plan, { found: [{ joist: 'rear X', at: 3700 }] });
    expect(outside).toMatchObject({ ok: false, problems: [{ code: 'joist-outside-room', path: 'changes.found[0]' }] });
  });
});
