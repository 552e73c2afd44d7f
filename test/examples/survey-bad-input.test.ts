import {
  InputError,
  isInputError,
  joistsFromPositions,
  joistsFromSpacing,
  type Problem,
  rectangle,
  ruleSets,
  ruleValue,
  withRules,
} from 'soffitwright';
import { describe, expect, it } from 'vitest';

/** The problems of a call that must be refused. */
function problemsOf(call: () => unknown): readonly Problem[] {
  try {
    call();
  } catch (error) {
    if (isInputError(error)) return error.problems;
    throw error;
  }
  throw new Error('the call was accepted');
}

const room = { outline: rectangle(3600, 3000) };
const spaced = { room, direction: 'y', first: 25, spacing: 400 } as const;
/** Calls with what no type allows, as a script or a spreadsheet may. */
const loosely = (request: unknown) => joistsFromSpacing(request as Parameters<typeof joistsFromSpacing>[0]);

describe('bad input is refused with a problem that names path, expected and received', () => {
  it.each([
    ['a NaN', { ...spaced, first: Number.NaN }, 'not-finite', 'first', 'a finite number', 'NaN'],
    [
      'an infinite number',
      { ...spaced, spacing: Number.POSITIVE_INFINITY },
      'not-finite',
      'spacing',
      'a finite number',
      'Infinity',
    ],
    ['a negative spacing', { ...spaced, spacing: -400 }, 'too-small', 'spacing', 'at least 50', '-400'],
    ['a text where a number belongs', { ...spaced, first: '25' }, 'wrong-type', 'first', 'a number', '"25"'],
    ['a missing field', { room, direction: 'y', first: 25 }, 'missing', 'spacing', 'a number', 'nothing'],
    ['an unknown field', { ...spaced, centres: 400 }, 'unknown-field', 'centres', 'no such field', '400'],
    [
      'an unknown field deep down',
      { ...spaced, room: { outline: [{ x: 0, y: 0, z: 1 }, ...room.outline.slice(1)] } },
      'unknown-field',
      'room.outline[0].z',
      'no such field',
      '1',
    ],
    [
      'a word that is not on the list',
      { ...spaced, direction: 'north' },
      'not-one-of',
      'direction',
      'one of "x", "y"',
      '"north"',
    ],
    [
      'a first joist beyond the room',
      { ...spaced, first: 4000 },
      'no-joists',
      'first',
      "a first joist within the room's 3600 mm",
      '4000',
    ],
    [
      'a last joist beyond the room',
      { ...spaced, last: 3700 },
      'joist-outside-room',
      'last',
      "a distance within the room's 3600 mm",
      '3700',
    ],
    [
      'a prototype key',
      JSON.parse(
        '{"direction":"y","first":25,"spacing":400,"room":{"outline":[{"x":0,"y":0},{"x":3600,"y":0},{"x":3600,"y":3000},{"x":0,"y":3000}],"__proto__":{"polluted":true}}}',
      ),
      'unknown-field',
      'room.__proto__',
      'no such field',
      'an object',
    ],
  ])('%s', (_, request, code, path, expected, received) => {
    expect(problemsOf(() => loosely(request))).toEqual([expect.objectContaining({ code, path, expected, received })]);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('several mistakes are named at once', () => {
    const outline = [room.outline[0], { x: 3600, y: Number.NaN }, room.outline[2], room.outline[3]];
    const problems = problemsOf(() => loosely({ room: { outline, nmae: 'bedroom' }, direction: 'z', first: 'a', spacing: 400 }));
    expect(problems.map((problem) => problem.path)).toEqual(['room.outline[1].y', 'room.nmae', 'direction', 'first']);
  });

  it('a room in metres is recognised', () => {
    const problems = problemsOf(() => loosely({ ...spaced, room: { outline: rectangle(3.6, 3) } }));
    expect(problems).toEqual([
      expect.objectContaining({ code: 'looks-like-metres', path: 'room.outline', received: '3.6 by 3' }),
    ]);
  });

  it('a wall that the outline does not have is refused', () => {
    const problems = problemsOf(() => loosely({ ...spaced, room: { ...room, walls: [{ edge: 4, name: 'bay' }] } }));
    expect(problems).toEqual([expect.objectContaining({ code: 'no-such-wall', received: 'edge 4 of 4 sides' })]);
  });

  it.each([
    [
      'a bow tie',
      [
        [0, 0],
        [3600, 3000],
        [3600, 0],
        [0, 3000],
      ],
    ],
    [
      'a side that folds back on itself',
      [
        [0, 0],
        [3600, 0],
        [1800, 0],
        [1800, 3000],
      ],
    ],
    [
      'a corner that touches another side',
      [
        [0, 0],
        [3600, 0],
        [3600, 3000],
        [1800, 0],
        [0, 3000],
      ],
    ],
    [
      'a line',
      [
        [0, 0],
        [3600, 0],
        [1800, 0],
      ],
    ],
  ])('%s is no outline', (_, points) => {
    const outline = points.map(([x, y]) => ({ x, y }));
    expect(problemsOf(() => loosely({ ...spaced, room: { outline } }))[0]).toMatchObject({
      code: 'outline-crossing',
      path: 'room.outline',
    });
  });

  it('an outline may be closed, run either way, and start at any corner', () => {
    const { outline } = room;
    for (const same of [[...outline, outline[0]], [...outline].reverse(), [...outline.slice(2), ...outline.slice(0, 2)]]) {
      expect(joistsFromSpacing({ ...spaced, room: { outline: same } })).toEqual(joistsFromSpacing(spaced));
    }
  });

  it('a joist outside the room and one given twice are refused, not dropped', () => {
    const joists = (positions: number[]) => () => joistsFromPositions({ room, direction: 'y', positions });
    expect(problemsOf(joists([400, 3700, -1])).map((problem) => problem.path)).toEqual(['positions[1]', 'positions[2]']);
    expect(problemsOf(joists([400, 800, 400]))[0]).toMatchObject({ code: 'repeated-joist', path: 'positions[2]' });
    expect(problemsOf(joists([]))[0]).toMatchObject({ code: 'too-small', path: 'positions' });
  });

  it('a value whose condition is missing is asked for', () => {
    expect(
      problemsOf(() => ruleValue(ruleSets.uk, 'support.centres', { boardThickness: 12.5 })).map((problem) => problem.path),
    ).toEqual(['given.orientation', 'given.noggings']);
    expect(
      problemsOf(() =>
        ruleValue(ruleSets.uk, 'support.centres', { boardThickness: 6, orientation: 'across', noggings: false }),
      )[0].code,
    ).toBe('no-such-row');
  });

  it('a rule that does not exist is named', () => {
    expect(problemsOf(() => withRules(ruleSets.uk, { 'stagger.minium': 400 } as object))).toEqual([
      expect.objectContaining({ code: 'unknown-field', path: 'overrides["stagger.minium"]' }),
    ]);
  });

  it('the guard knows an error made by another copy of the package', () => {
    const foreign = Object.assign(new Error('x'), { name: 'InputError', code: 'missing', problems: [] });
    expect(isInputError(foreign)).toBe(true);
    expect(isInputError(new Error('x'))).toBe(false);
    expect(isInputError({ name: 'InputError', problems: [] })).toBe(false);
    expect(new InputError([]).code).toBe('input');
  });
});
