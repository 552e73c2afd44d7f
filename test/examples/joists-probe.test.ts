import { type Inference, inferJoists, isInputError, type Mark, nextProbe, type Probe, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const room = { outline: rectangle(5000, 3000) };
const found = (x: number, more: Partial<Mark> = {}): Mark => ({ x, y: 1500, kind: 'probe', ...more });
const from = (marks: readonly Mark[], more: object = {}): Inference =>
  inferJoists({ room, marks, direction: 'y', width: 47, ...more });
const probed = (probe: Probe | null): Probe => {
  if (probe === null) throw new Error('no probe');
  return probe;
};
const nearest = (inference: Inference, x: number): number =>
  Math.min(...inference.joists.map(({ start }) => Math.abs(start.x - x)));

/** Joists known to a millimetre or two from wall to wall. */
const settled = from(Array.from({ length: 13 }, (_, i) => found(110 + 400 * i, { sd: 1 })));
/** The same room from five marks of the near half. */
const halfKnown = from([130, 531, 1329, 1730, 2931].map((x) => found(x)));

describe('the next probe', () => {
  it('tells 400 from 600 where only one of them has a joist', () => {
    const probe = probed(nextProbe(from([found(510, { sd: 4 }), found(1711, { sd: 4 })], { spacings: [400, 600] })));
    const off = (first: number, spacing: number): number => {
      const away = Math.abs(probe.x - first) % spacing;
      return Math.min(away, spacing - away);
    };
    expect(Math.abs(off(510, 400) - off(510, 600))).toBeGreaterThan(80);
    expect(Math.min(off(510, 400), off(510, 600))).toBeLessThan(24);
    expect(probe.reason).toContain('400');
    expect(probe.reason).toContain('600');
  });

  it('is not worth drilling where the joists are known', () => {
    expect(nextProbe(settled)).toBeNull();
    expect(nextProbe(settled, { endJoints: [] })).toBeNull();
  });

  it('goes on from the marks it hands out, whatever the hole meets', () => {
    let inference = from([found(510, { sd: 4 }), found(1711, { sd: 4 })], { spacings: [400, 600] });
    const holes = new Set<number>();
    for (let hole = 0; hole < 12; hole++) {
      const probe = nextProbe(inference);
      if (probe === null) break;
      expect(holes.has(probe.x), `${probe.x} twice`).toBe(false);
      holes.add(probe.x);
      const met = Array.from({ length: 13 }, (_, i) => i).some((i) => Math.abs(110 + 400 * i - probe.x) <= 23);
      inference = from([...inference.marks, met ? probe.marks.found : probe.marks.missed], { spacings: [400, 600] });
    }
    expect(nextProbe(inference)).toBeNull();
    expect(inference.candidates[0].spacing).toBe(400);
    expect(nearest(inference, 4910)).toBeLessThan(12);
  });

  it('asks for both edges of the joist of a butt joint, though a line of screws would meet it', () => {
    expect(nextProbe(halfKnown)).toBeNull();
    const probe = probed(nextProbe(halfKnown, { endJoints: ['J6'] }));
    expect(probe.find).toBe('edges');
    expect(probe.joist).toBe('J6');
    expect(Math.abs(probe.x - 2130)).toBeLessThanOrEqual(10);
    expect(probe.certainty.after).toBeGreaterThan(probe.certainty.now);
    expect(probe.gain).toBeGreaterThan(0);
  });

  it('is content with the joist of a butt joint once its edges are found', () => {
    const edges = (y: number): Mark[] => [
      { x: 2106.5, y, kind: 'near-edge', sd: 1.5 },
      { x: 2153.5, y, kind: 'far-edge', sd: 1.5 },
    ];
    const proven = from([...halfKnown.marks, ...edges(300), ...edges(1500), ...edges(2700)]);
    const id = proven.joists.find(({ start }) => Math.abs(start.x - 2130) < 20)?.id as string;
    expect(nextProbe(proven, { endJoints: [id] })).toBeNull();
  });

  it('takes a joist, an id, or the place of the joint, and how sure is sure enough', () => {
    const [joist] = halfKnown.joists.filter(({ id }) => id === 'J6');
    const byId = nextProbe(halfKnown, { endJoints: ['J6'] });
    expect(nextProbe(halfKnown, { endJoints: [joist] })).toEqual(byId);
    expect(nextProbe(halfKnown, { endJoints: [{ joist: 'J6' }] })).toEqual(byId);
    expect(probed(nextProbe(halfKnown, { endJoints: [{ joist: 'J6', along: 600 }] })).y).toBe(600);
    expect(nextProbe(halfKnown, { endJoints: ['J6'], certainty: 0.5 })).toBeNull();
  });

  it('keeps to the steps, the lines and the part of the room that can be reached', () => {
    const open = from([found(510, { sd: 4 }), found(1711, { sd: 4 })]);
    expect(probed(nextProbe(open, { reach: 50 })).x % 50).toBe(0);
    expect(probed(nextProbe(open, { reach: { along: [700] } })).y).toBe(700);
    const corner = [
      { x: 3000, y: 1000 },
      { x: 4000, y: 1000 },
      { x: 4000, y: 2000 },
      { x: 3000, y: 2000 },
    ];
    const probe = probed(nextProbe(open, { reach: corner }));
    expect(probe.x).toBeGreaterThan(3000);
    expect(probe.x).toBeLessThan(4000);
  });

  it('keeps clear of openings, and moves along the joist past one', () => {
    const free = probed(nextProbe(halfKnown, { endJoints: [{ joist: 'J6', along: 1500 }] }));
    expect(free.y).toBe(1500);
    const hatch = {
      kind: 'hatch' as const,
      outline: [
        { x: 2000, y: 1400 },
        { x: 2300, y: 1400 },
        { x: 2300, y: 1700 },
        { x: 2000, y: 1700 },
      ],
    };
    const light = { kind: 'light' as const, centre: { x: 2130, y: 1340 }, diameter: 100 };
    const blocked = from(halfKnown.marks, { room: { ...room, openings: [hatch, light] } });
    const probe = probed(nextProbe(blocked, { endJoints: [{ joist: 'J6', along: 1500 }] }));
    expect(probe.y).toBe(1720);
  });

  it('looks for the first joist a width from the hole that met none', () => {
    let inference = from([{ x: 1000, y: 1500, found: false }]);
    const places = [1000];
    for (let hole = 0; hole < 6; hole++) {
      const { x, marks } = probed(nextProbe(inference));
      expect(Math.min(...places.map((place) => Math.abs(place - x)))).toBe(40);
      places.push(x);
      inference = from([...inference.marks, marks.missed]);
    }
  });

  it('is the same from a copy of the inference', () => {
    const copy = JSON.parse(JSON.stringify(halfKnown)) as Inference;
    expect(nextProbe(copy, { endJoints: ['J6', 'J9'] })).toEqual(nextProbe(halfKnown, { endJoints: ['J6', 'J9'] }));
  });

  it('refuses what is not an inference, and joists it does not have', () => {
    const codes = (run: () => unknown): string[] => {
      try {
        run();
      } catch (error) {
        if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`);
      }
      return [];
    };
    expect(codes(() => nextProbe({} as Inference))).toContain('missing inference.room');
    expect(codes(() => nextProbe(halfKnown, { endJoints: ['J6', 'J99'] }))).toEqual(['joist-unknown options.endJoints[1]']);
    expect(codes(() => nextProbe(halfKnown, { certainty: 2 }))).toEqual(['too-large options.certainty']);
  });
});
