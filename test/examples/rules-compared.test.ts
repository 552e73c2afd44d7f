import { compareRules, fixingRequirements, isInputError, type Job, planCeiling, rectangle, ruleSets } from 'soffitwright';
import { describe, expect, it } from 'vitest';

const job: Job = {
  room: { outline: rectangle(3600, 3000) },
  joists: { direction: 'y', first: 25, spacing: 400, last: 3575, width: 50 },
  lining: [
    { kind: 'skim', thickness: 3 },
    { kind: 'plasterboard', thickness: 9.5 },
  ],
  boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' }],
};

const refusedFor = (call: () => unknown): string[] => {
  try {
    call();
  } catch (error) {
    if (isInputError(error)) return error.problems.map(({ path }) => path);
    throw error;
  }
  return [];
};

describe('one board: the rule of thumb and the rule side by side', () => {
  const board = { boardThickness: 12.5, boardWidth: 1200, boardLength: 2400, joistSpacing: 400 };

  it('5 a line at 300 by common practice, 6 to 7 a line at 230 by specification', () => {
    const { words, screws, practice } = fixingRequirements(board);
    expect(words).toBe('5 a line at 300, common practice, 35 a board; 6 to 7 a line at 230, specification, 42 to 49');
    expect(screws).toEqual({
      lines: 7,
      line: { least: 6, most: 7 },
      endLine: { least: 9, most: 9 },
      board: { least: 42, most: 49 },
      boardWithEnds: { least: 48, most: 53 },
    });
    expect(practice).toEqual({ spacing: 300, line: { least: 5, most: 5 }, board: { least: 35, most: 35 } });
  });

  it('where the standard is only remembered, the words say so', () => {
    expect(fixingRequirements({ ...board, rules: ruleSets.din }).words).toContain(
      '8 a line at 170, specification, from memory, 56',
    );
  });

  it('each requirement has its level and source', () => {
    const { requirements } = fixingRequirements(board);
    const level = Object.fromEntries(requirements.map(({ key, level }) => [key, level]));
    expect(level).toMatchObject({ 'fixing.field': 'must', 'fixing.boardEnd': 'should', 'fixing.cutEdgeDistance': 'must' });
    for (const { value, source } of requirements) expect(value === null || source !== undefined).toBe(true);
  });

  it('a spacing of the caller that is closer than the one for ends governs there too', () => {
    const { requirements, screws } = fixingRequirements({ ...board, rules: { 'fixing.field': 100 } });
    expect(requirements.find(({ key }) => key === 'fixing.boardEnd')?.value).toBe(100);
    expect(screws.endLine).toEqual(screws.line);
  });

  it('refuses boards and joists that are none', () => {
    expect(refusedFor(() => fixingRequirements({ ...board, joistSpacing: 0 }))).toEqual(['joistSpacing']);
    expect(refusedFor(() => fixingRequirements({ ...board, boardWidth: Number.NaN }))).toEqual(['boardWidth']);
  });
});

describe('one ceiling under all rule sets', () => {
  const compared = compareRules(job, ruleSets);
  const rule = (key: string) => compared.rules.find((each) => each.key === key);

  it('has the sets in the order given, each with its title and notes', () => {
    expect(compared.sets.map(({ name }) => name)).toEqual(Object.keys(ruleSets));
    expect(compareRules(job).sets.map(({ name }) => name)).toEqual(Object.keys(ruleSets));
    for (const { name, ruleSet, notes } of compared.sets) {
      const set = ruleSets[name as keyof typeof ruleSets];
      expect([ruleSet, notes]).toEqual([set.title, set.notes]);
    }
  });

  it('shows the spacing of each, and who asks most', () => {
    expect(rule('fixing.field')?.values.map(({ value }) => value)).toEqual([230, 230, 300, 304.8, 300, 170]);
    expect(rule('fixing.field')?.strictest).toEqual(['din']);
    expect(rule('fixing.boardEnd')?.strictest).toEqual(['uk', 'ukOverSoundLining']);
    expect(rule('fixing.embedment')?.strictest).toEqual(['uk', 'ukOverSoundLining']);
    expect(rule('joint.gap')?.strictest).toEqual([]);
    expect(rule('stagger.preferred')?.strictest).toEqual([]);
  });

  it('marks what is from memory, in the table, in the words and as a finding', () => {
    const marked = rule('fixing.field')?.values.map(({ fromMemory }) => fromMemory);
    expect(marked).toEqual([false, false, false, true, true, true]);
    for (const { name, fromMemory, findings } of compared.sets) {
      const note = findings.filter(({ code }) => code === 'rule-from-memory');
      expect(note.length, name).toBe(fromMemory.length > 0 ? 1 : 0);
      for (const title of fromMemory) expect(note[0].message).toContain(title);
    }
  });

  it('counts what the plan of the same rules counts', () => {
    const plan = planCeiling(job);
    const [uk] = compared.sets;
    expect(uk.total).toBe(plan.fixings.count);
    expect(uk.fixingLength).toMatchObject({ recommended: plan.fixingLength.recommended, minimum: plan.fixingLength.minimum });
    const total = Object.fromEntries(compared.sets.map(({ name, total: count }) => [name, count]));
    expect(total.din).toBeGreaterThan(total.uk as number);
    expect(total.nbcCanada).toBeLessThan(total.uk as number);
  });

  it('says what of the layout a set would not have, and how deep its screws may go', () => {
    const findings = Object.fromEntries(compared.sets.map((set) => [set.name, set.findings.map(({ code }) => code)]));
    expect(findings.uk).not.toContain('stagger');
    expect(compared.sets.find(({ name }) => name === 'nbcCanada')?.fixingLength?.maximum).toBe(12.5 + 12.5 + 27);
    const strict = compareRules(job, [{ 'stagger.minimum': 2000 }]).sets[0];
    expect(strict.findings.some(({ code, severity }) => code === 'stagger' && severity === 'error')).toBe(true);
  });

  it('is plain data', () => {
    expect(JSON.parse(JSON.stringify(compared))).toEqual(compared);
    expect(structuredClone(compared)).toEqual(compared);
  });
});

describe('comparing rules', () => {
  it('takes a list, names of the caller, and overrides', () => {
    expect(compareRules(job, [ruleSets.din, {}]).sets.map(({ name }) => name)).toEqual(['din', 'uk']);
    const named = compareRules(job, { ours: { 'fixing.field': 200 }, theirs: ruleSets.nbcCanada });
    expect(named.rules.find(({ key }) => key === 'fixing.field')?.values.map(({ name, value }) => [name, value])).toEqual([
      ['ours', 200],
      ['theirs', 300],
    ]);
  });

  it('9.5 board at 450 is within one set and not within the other', () => {
    const wide: Job = {
      ...job,
      joists: { direction: 'y', first: 25, spacing: 450, last: 3575, width: 50 },
      boards: [{ ...job.boards[0], length: 2700, thickness: 9.5, massPerArea: 6.5 }],
    };
    const { ceiling, sets } = compareRules(wide, { uk: ruleSets.uk, over: ruleSets.ukOverSoundLining, nzs: ruleSets.asNzs });
    expect(ceiling.centres).toBe(450);
    expect(sets.map(({ centresWithin }) => centresWithin)).toEqual([false, true, null]);
    expect(sets[0].findings.map(({ code }) => code)).toContain('support-centres-exceeded');
  });

  it('a declared fire resistance asks for more in Canada, and for more than the table has is refused a length', () => {
    const [plain, hour, two] = [undefined, 60, 120].map(
      (fireRating) => compareRules({ ...job, ...(fireRating && { fireRating }) }, [ruleSets.nbcCanada]).sets[0],
    );
    expect(plain.fixingLength?.minimum).toBe(12.5 + 12.5 + 15);
    expect(hour.fixingLength?.minimum).toBe(12.5 + 12.5 + 45);
    expect(two.fixingLength).toBeNull();
    expect(two.findings.map(({ code }) => code)).toContain('fire-rating-unruled');
  });

  it('a layer without an asbestos result holds the job whatever the rules', () => {
    const { findings, sets } = compareRules({ ...job, lining: [{ kind: 'texture', thickness: 3 }] }, ruleSets);
    const most = Math.max(...sets.map(({ total }) => total ?? 0));
    expect(findings[0]).toMatchObject({ code: 'texture-untested', severity: 'hold', value: most });
  });

  it('where no layout is found the requirements still stand', () => {
    const apart: Job = { ...job, joists: { direction: 'y', positions: [300, 3300], width: 50 } };
    const { sets, findings } = compareRules(apart, { uk: ruleSets.uk });
    expect(findings.map(({ code }) => code)).toContain('no-layout');
    expect(sets[0].total).toBeNull();
    expect(sets[0].fixingLength?.minimum).toBe(12.5 + 12.5 + 25);
    expect(sets[0].centresWithin).toBe(false);
  });

  it('one joist alone has no bay, and one line of screws', () => {
    const alone: Job = { ...job, joists: { direction: 'y', positions: [1800], width: 50 } };
    const { ceiling, sets } = compareRules(alone, { uk: ruleSets.uk });
    expect([ceiling.centres, sets[0].screws.lines, sets[0].screws.board.most]).toEqual([0, 1, 7]);
  });

  it('refuses no sets, rules that do not exist, and a job that is none', () => {
    expect(refusedFor(() => compareRules(job, []))).toEqual(['sets']);
    expect(refusedFor(() => compareRules(job, {}))).toEqual(['sets']);
    expect(refusedFor(() => compareRules(job, { ours: { 'fixing.filed': 200 } as object }))[0]).toContain('sets');
    expect(refusedFor(() => compareRules({ ...job, boards: [] }, ruleSets))).toEqual(['boards']);
  });
});
