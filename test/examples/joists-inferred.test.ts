import { type Inference, inferJoists, type Mark, rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const room = { outline: rectangle(4200, 3000) };
const at = (places: readonly number[], y = 1500, kind: Mark['kind'] = 'probe'): Mark[] => places.map((x) => ({ x, y, kind }));
const codesOf = ({ findings }: Inference): string[] => findings.map(({ code }) => code);
const messageOf = ({ findings }: Inference, code: string): string => findings.find((each) => each.code === code)?.message ?? '';
const along = { direction: 'y', width: 47 } as const;

describe('what the marks may be', () => {
  it('marks of one joist at both edges give its centre and its width', () => {
    const inference = inferJoists({
      room,
      direction: 'y',
      marks: [
        ...[181, 581, 1381].map((x): Mark => ({ x, y: 1500, kind: 'near-edge' })),
        ...[219, 619, 1419].map((x): Mark => ({ x, y: 1500, kind: 'far-edge' })),
      ],
    });
    expect(Math.abs(inference.joists[0].width - 38)).toBeLessThan(2.5);
    expect(Math.abs(inference.joists[0].start.x - 200)).toBeLessThan(2);
    expect(codesOf(inference)).not.toContain('joist-width-assumed');
  });

  it('a mark of a nogging is listed and moves nothing', () => {
    const plain = inferJoists({ room, ...along, marks: at([200, 600, 1000, 1800, 2600]) });
    const odd = inferJoists({ room, ...along, marks: at([200, 600, 1000, 1800, 2600, 1330]) });
    expect(odd.outliers).toEqual([5]);
    expect(codesOf(odd)).toContain('mark-outlier');
    odd.joists.forEach(({ start }, i) => {
      expect(Math.abs(start.x - plain.joists[i].start.x)).toBeLessThan(0.5);
    });
  });

  it('ten marks of one joist are one joist', () => {
    const inference = inferJoists({
      room,
      ...along,
      marks: [...at([600, 1000, 1400]), ...at([196, 198, 199, 201, 202, 203, 204], 1500, 'fixing')],
    });
    expect(inference.outliers).toEqual([]);
    expect(inference.joists.filter(({ known }) => known === 'measured')).toHaveLength(4);
  });

  it('two timbers side by side are one joist twice as wide', () => {
    const inference = inferJoists({ room, ...along, marks: at([200, 600, 976.5, 1023.5, 1400, 1800, 2600]) });
    const doubled = inference.findings.find(({ code }) => code === 'joist-doubled');
    expect(doubled?.where?.joist).toBe('J3');
    expect(Math.abs((doubled?.value ?? 0) - 94)).toBeLessThan(4);
    expect(inference.outliers).toEqual([]);
  });

  it('a joist that probes look for in vain is left out and said', () => {
    const probes = [1388, 1400, 1412].map((x): Mark => ({ x, y: 1500, found: false }));
    const inference = inferJoists({ room, ...along, marks: [...at([200, 600, 1000, 1800, 2200, 2600]), ...probes] });
    expect(inference.joists.some(({ start }) => Math.abs(start.x - 1400) < 100)).toBe(false);
    expect(messageOf(inference, 'joist-missing')).toContain('1400, 1500');
  });

  it('no mark on timber: no joists, and a word about it', () => {
    const inference = inferJoists({ room, ...along, marks: [{ x: 500, y: 500, found: false }] });
    expect(inference.joists).toEqual([]);
    expect(inference.confidence).toBe(0);
    expect(codesOf(inference)).toEqual(['no-joist-found']);
  });
});

describe('how the joists lie', () => {
  it('askew: both ends are told', () => {
    const inference = inferJoists({
      room,
      ...along,
      marks: [...at([200, 600, 1400, 2600, 3400], 300), ...at([220, 1021, 1820, 3019], 2700)],
    });
    const [first] = inference.joists;
    // 20 mm over 2400, so 25 over the whole room.
    expect(Math.abs(first.end.x - first.start.x - 25)).toBeLessThan(5);
    expect(codesOf(inference)).toContain('joists-askew');
    expect(codesOf(inference)).not.toContain('joists-fan');
  });

  it('fanning out: the far joists turn more than the near ones', () => {
    const inference = inferJoists({
      room,
      ...along,
      marks: [...at([200, 600, 1000, 1800, 2600, 3400], 300), ...at([200, 610, 1020, 1842, 2660, 3482], 2700)],
    });
    const turns = inference.joists.map(({ start, end }) => end.x - start.x);
    expect(turns[8]).toBeGreaterThan(turns[0] + 80);
    expect(inference.outliers).toEqual([]);
    expect(codesOf(inference)).toContain('joists-fan');
  });

  it('irregular joists are left as measured', () => {
    const places = [150, 480, 930, 1270, 1760, 2080, 2550, 2870, 3370, 3710];
    const inference = inferJoists({ room, ...along, marks: at(places) });
    expect(inference.candidates[0].spacing).toBe('irregular');
    expect(inference.spacing).toBeNull();
    expect(codesOf(inference)).toContain('joists-irregular');
    const measured = inference.joists.filter(({ known }) => known === 'measured');
    expect(measured).toHaveLength(places.length);
    measured.forEach(({ start }, i) => {
      expect(Math.abs(start.x - places[i])).toBeLessThan(3);
    });
  });

  it('without a direction, marks in a row across the longer way say that joists span the shorter', () => {
    const inference = inferJoists({ room, width: 47, marks: at([200, 601, 1399, 1801, 2600]) });
    expect(inference.direction).toBe('y');
  });

  it('the shorter way is a prior, not a rule: marks in a row the other way win', () => {
    const marks = [200, 601, 1399, 1801].map((y) => ({ x: 2000, y }));
    const inference = inferJoists({ room, width: 47, marks });
    expect(inference.direction).toBe('x');
    expect(inference.confidence).toBeGreaterThan(0.9);
  });

  it('a single mark leaves direction and spacing open', () => {
    const inference = inferJoists({ room: { outline: rectangle(3000, 3000) }, marks: at([1000]) });
    expect(inference.confidence).toBeLessThan(0.3);
    expect(new Set(inference.candidates.map(({ direction }) => direction))).toEqual(new Set(['x', 'y']));
  });
});

describe('which spacing', () => {
  it('400 and 406.4 are not told apart by three near joists: the drift at the far wall is said', () => {
    const inference = inferJoists({ room, ...along, marks: at([200, 604, 1005], 1500, 'fixing') });
    const spacings = inference.candidates.slice(0, 2).map(({ spacing }) => spacing);
    expect(new Set(spacings)).toEqual(new Set([400, 406.4]));
    const undecided = inference.findings.find(({ code }) => code === 'spacing-drifts-apart');
    // Seven bays from the farthest mark to the last joist, 6.4 mm each, and what the marks' own spread adds.
    expect(undecided?.value).toBeGreaterThan(40);
    expect(undecided?.value).toBeLessThan(65);
    expect(undecided?.message).toContain(`differ by ${undecided?.value} mm`);
    expect(undecided?.where?.at?.x).toBeGreaterThan(3700);
  });

  it('they are told apart when the room is long enough', () => {
    const far = inferJoists({ room, ...along, marks: at([200, 606.4, 1012.8, 3857.6]) });
    expect(far.candidates[0].spacing).toBe(406.4);
    expect(far.confidence).toBeGreaterThan(0.95);
  });

  it('marks on every other joist of 400 are weighed against 800', () => {
    const inference = inferJoists({ room, ...along, spacings: [400, 800], marks: at([200, 1000, 1800]) });
    const stated = inference.candidates.map(({ spacing }) => spacing);
    expect(stated).toEqual(expect.arrayContaining([400, 800]));
    for (const { probability, spacing } of inference.candidates)
      if (spacing === 400 || spacing === 800) expect(probability).toBeGreaterThan(0.02);
  });

  it('a miss where the closer spacing would have a joist decides against it', () => {
    const marks = at([200, 1000, 1800]);
    const share = (given: readonly Mark[]): number =>
      inferJoists({ room, ...along, spacings: [400, 800], marks: given }).candidates.find(({ spacing }) => spacing === 800)
        ?.probability ?? 0;
    expect(share(marks)).toBeLessThan(0.9);
    expect(share([...marks, { x: 600, y: 1500, found: false }])).toBeGreaterThan(0.95);
  });

  it('four-foot laths divide into 12, 16 and 24 in: those centres are among the usual ones', () => {
    // Building Trades Pocketbook, Lathing: laths 4 ft long, which fixes the spacing of the joists.
    for (const parts of [4, 3, 2]) {
      const spacing = 1219.2 / parts;
      const places = Array.from({ length: Math.floor(3900 / spacing) }, (_, k) => 200 + k * spacing);
      const { candidates } = inferJoists({ room, ...along, marks: at(places) });
      expect(candidates[0].spacing).toBeCloseTo(spacing, 6);
    }
  });
});
