import { planCeiling, type RuleKey, type RuleSet, rectangle, ruleSets, withRules } from 'soffitwright';
import { describe, expect, it } from 'vitest';

/** What a plan under these rules says of values that nobody has read. */
const notesOf = (rules: RuleSet): string =>
  planCeiling({
    room: { outline: rectangle(3600, 3000) },
    joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
    lining: [{ kind: 'plasterboard', thickness: 9.5 }],
    boards: [{ id: '2400', length: 2400, width: 1200, thickness: 13, massPerArea: 8.4, edge: 'square' }],
    rules,
  })
    .findings.filter(({ code }) => code === 'rule-from-memory')
    .map(({ message }) => message)
    .join('\n');

describe('a plan that leans on values from memory says which', () => {
  it.each<[keyof typeof ruleSets, RuleKey[]]>([
    ['uk', []],
    ['ukOverSoundLining', []],
    ['nbcCanada', ['fixing.maximumEmbedment']],
    ['ircUs', ['support.centres', 'fixing.field', 'fixing.boardEnd', 'fixing.perimeter', 'fixing.maximumEmbedment']],
    [
      'asNzs',
      ['support.centres', 'stagger.minimum', 'fixing.field', 'fixing.boardEnd', 'fixing.perimeter', 'fixing.maximumEmbedment'],
    ],
    [
      'din',
      [
        'support.centres',
        'stagger.minimum',
        'fixing.field',
        'fixing.boardEnd',
        'fixing.perimeter',
        'fixing.boundEdgeDistance',
        'fixing.cutEdgeDistance',
        'fixing.embedment',
      ],
    ],
  ])('%s: %j', (name, keys) => {
    const set = ruleSets[name];
    const said = notesOf(set)
      .split('\n')
      .flatMap((note) => note.split('): ')[1]?.replace(/\.$/, '').split('; ') ?? []);
    expect([...said].sort()).toEqual(keys.map((key) => set.rules[key].title).sort());
  });

  it('and no longer says it of a value that the caller has put in its place', () => {
    const source = { standard: 'DIN 18181', clause: 'as read by the caller', standing: 'read' as const };
    const title = ruleSets.din.rules['stagger.minimum'].title;
    expect(notesOf(ruleSets.din)).toContain(title);
    expect(notesOf(withRules(ruleSets.din, { 'stagger.minimum': { value: 400, source } }))).not.toContain(title);
  });
});
