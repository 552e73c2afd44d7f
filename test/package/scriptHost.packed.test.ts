import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createContext, runInContext, Script } from 'node:vm';
import * as source from 'soffitwright';
import * as drawing from 'soffitwright/drawing';
import { describe, expect, inject, it } from 'vitest';
import { smallRoom } from '../generators/smallRoom.js';

const file = join(inject('consumer'), 'node_modules/soffitwright/dist/soffitwright.global.js');

/** A host with the language and nothing else: no modules, no timers, no console, and no text is compiled at run time. */
function bareHost(): object {
  const host = createContext({}, { codeGeneration: { strings: false, wasm: false } });
  runInContext('delete globalThis.console; delete globalThis.WebAssembly;', host);
  return host;
}

const run = (host: object, text: string): unknown => JSON.parse(runInContext(`JSON.stringify(${text})`, host) as string);

describe('the one file in a bare script host', () => {
  it('gives the core under one global name, with what stands beside it', () => {
    const host = bareHost();
    new Script(readFileSync(file, 'utf8')).runInContext(host);
    expect(run(host, 'Object.keys(Soffitwright).sort()')).toEqual([...Object.keys(source), 'drawing'].sort());
  });

  it('works where nothing of Node or of a browser is', () => {
    const host = bareHost();
    const absent = ['require', 'module', 'process', 'Buffer', 'console', 'document', 'window', 'navigator', 'fetch', 'URL'];
    expect(run(host, `[${absent.map((name) => `typeof ${name}`)}]`)).toEqual(absent.map(() => 'undefined'));
    new Script(readFileSync(file, 'utf8')).runInContext(host);
    const plan = run(host, `(plan = Soffitwright.planCeiling(${JSON.stringify(smallRoom)}))`);
    const expected = source.planCeiling(smallRoom);
    expect(plan).toEqual(JSON.parse(JSON.stringify(expected)));
    expect(run(host, 'Soffitwright.drawing.drawPlan(plan)')).toBe(drawing.drawPlan(expected));
  });

  it('keeps the licences of what it carries', () => {
    const text = readFileSync(file, 'utf8');
    expect(text.startsWith('/*!\nMIT License')).toBe(true);
    expect(text.match(/Permission is hereby granted/g)).toHaveLength(2);
  });
});
