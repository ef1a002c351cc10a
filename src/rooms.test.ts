// Holds the house together: imports go to lower floors only, and the core stays pure.

import { describe, expect, test } from 'vitest';
import packageJson from '../package.json' with { type: 'json' };
import { floors, importProblems, importsOf, purityProblems, roomOf } from './testing/room-rules.ts';
import { isCode, isTest, repositoryFiles } from './testing/sources.ts';

const dependencies = Object.keys(packageJson.dependencies);
const files = repositoryFiles().filter((file) => isCode(file) && file.path.startsWith('src/'));

describe('the repository', () => {
  test('there are files to read, and each lies in a room', () => {
    expect(files.length).toBeGreaterThan(10);
    const rooms = new Set(files.filter((file) => !isTest(file)).map(({ path }) => roomOf(path)));
    const known = new Set([...Object.keys(floors), 'testing']);
    expect([...rooms].filter((room) => !known.has(room ?? ''))).toEqual([]);
  });

  test('imports go to lower floors, packages to the rooms that may use them', () => {
    expect(files.flatMap((file) => importProblems(file, dependencies))).toEqual([]);
  });

  test('the core has no clock, chance, worker, network, browser, Node or locale', () => {
    expect(files.flatMap(purityProblems)).toEqual([]);
  });
});

describe('the rules find what they forbid', () => {
  const problems = (path: string, text: string) => importProblems({ path, text }, dependencies);

  test.each([
    ['src/removal/a.ts', "import { x } from '../tightening/b.ts';", /removal .* tightening/],
    ['src/removal/a.ts', "import type { x } from '../pack/b.ts';", /imports pack/],
    ['src/removal/a.ts', "export { x } from '../pack/b.ts';", /imports pack/],
    ['src/removal/a.ts', "const x = await import('../pack/b.ts');", /imports pack/],
    ['src/removal/a.ts', "import '../pack/b.ts';", /imports pack/],
    ['src/removal/a.ts', "import { readFileSync } from 'node:fs';", /node:fs/],
    ['src/removal/a.ts', "import highs from 'highs';", /must not use the package highs/],
    ['src/record/a.ts', "import { parse } from 'yaml';", /must not use the package yaml/],
    ['src/drawing/a.ts', "import { x } from '../paper/b.ts';", /imports paper/],
    ['src/app/work/a.tsx', "import { x } from '../../server/b.ts';", /app must not import server/],
    ['src/app/work/a.tsx', "import { x } from '../../archive/b.ts';", /app must not import/],
    ['src/app/work/a.tsx', "import { x } from 'node:fs';", /node:fs/],
    ['src/server/a.ts', "import { x } from '../cli/b.ts';", /server .* cli/],
    ['src/server/a.ts', "import { x } from 'left-pad';", /not in "dependencies"/],
    ['src/server/a.ts', "import { x } from 'vitest';", /not in "dependencies"/],
    ['src/server/a.ts', "import { x } from '../testing/b.ts';", /no room/],
    ['src/server/a.ts', "import { x } from '../../demo/b.ts';", /leaves src/],
    ['src/cellar/a.ts', '', /no room of the table/],
    ['src/limits.ts', "import { x } from './quantity/b.ts';", /limits .* quantity/],
  ])('%s: %s', (path, text, why) => {
    expect(problems(path, text).join('\n')).toMatch(why);
  });

  test.each([
    ['src/pack/a.ts', "import { x } from '../removal/b.ts';\nimport { z } from 'zod';"],
    ['src/pack/a.ts', "// import { x } from '../cli/b.ts';"],
    ['src/cli/serve.ts', "import { x } from '../server/b.ts';"],
    ['src/archive/a.ts', "import { x } from 'node:sqlite';"],
    ['src/app/work/a.tsx', "import { x } from '../../drawing/b.ts';\nimport './a.css';"],
    ['src/app/a.ts', "import url from 'highs/runtime?url';"],
    ['src/quantity/a.ts', "import { x } from '@noble/hashes/sha2.js';"],
  ])('%s may: %s', (path, text) => {
    expect(problems(path, text)).toEqual([]);
  });

  test('imports over several lines, of types, of effects and at run time are all seen', () => {
    const text = [
      'import {',
      '  a,',
      "} from './a.ts';",
      "import type { B } from './b.ts';",
      "import './c.ts';",
      "const d = import('./d.ts');",
      "export * from './e.ts';",
      "const notOne = 'import x from y';",
    ].join('\n');
    expect(importsOf(text)).toEqual(['./a.ts', './b.ts', './c.ts', './d.ts', './e.ts']);
  });

  const impure = (text: string) => purityProblems({ path: 'src/record/a.ts', text });

  test.each([
    'const t = Date.now();',
    'const t = new Date();',
    'const t = new Date;',
    'const t = Date();',
    'const t = performance.now();',
    'setTimeout(() => 1, 5);',
    'const r = Math.random();',
    'const id = crypto.getRandomValues(x);',
    "const w = new Worker('x');",
    "fetch('x');",
    "document.querySelector('x');",
    'window.open();',
    'const e: HTMLElement = x;',
    'process.exit(1);',
    "const b = Buffer.from('x');",
    "console.log('x');",
    "a.localeCompare('b');",
    // biome-ignore lint/suspicious/noTemplateCurlyInString: it is the sample, not a slip
    'const s = `${Date.now()}`;',
  ])('in the core: %s', (text) => {
    expect(impure(text)).toHaveLength(1);
  });

  test.each([
    'const t = new Date(2026, 1, 1);',
    "// Date.now() in a comment\nconst s = 'Date.now()';",
    'const t = Date.parse(given);',
    'const re = /window|document/;',
    'const done = acts.map((act) => act.document);',
  ])('the core may: %s', (text) => {
    expect(impure(text)).toEqual([]);
  });

  test('the shell may read the clock', () => {
    expect(purityProblems({ path: 'src/server/a.ts', text: 'Date.now();' })).toEqual([]);
  });
});
