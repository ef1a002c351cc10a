// Reads every file of the repository and says which is too long, badly opened or badly worded.

import { describe, expect, test } from 'vitest';
import { isCode, repositoryFiles, type SourceFile } from './testing/sources.ts';
import * as rules from './testing/tidy-rules.ts';

/** Files that must name what is forbidden in order to forbid it. */
const theRules = /^src\/(?:tidy\.test|testing\/tidy-rules)\.ts$/;

/** Where a word that is not used here has another sense that can't be avoided. */
const otherSenses: readonly rules.OtherSense[] = [
  { path: theRules, word: /./, why: 'the list itself' },
  { path: /^src\/plant\/yaml\.ts$/, word: /counter/i, why: 'LineCounter of the YAML reader' },
  { path: /^src\/paper\/typ\//, word: /counter/, why: 'the page number function of Typst' },
  { path: /^src\/server\/files\.ts$/, word: /assets/, why: 'the folder the bundler writes' },
];

const files = repositoryFiles();
const others = files.filter(({ path }) => !theRules.test(path));
const found = (rule: rules.Rule, among: readonly SourceFile[] = files) => among.flatMap(rule);

describe('the repository', () => {
  test('there are files to read', () => {
    expect(files.filter(isCode).length).toBeGreaterThan(20);
    expect(files.some(({ path }) => path === 'README.md')).toBe(true);
  });

  test('files are short', () => expect(found(rules.fileLength)).toEqual([]));
  test('lines are short', () => expect(found(rules.lineLength)).toEqual([]));
  test('functions are short', () => expect(found(rules.functionLength)).toEqual([]));
  test('files open with a sentence', () => expect(found(rules.opening)).toEqual([]));
  test('no any, enum, default export, test left out', () => {
    expect(found(rules.forms)).toEqual([]);
  });
  test('nothing is left over', () => expect(found(rules.leftovers, others)).toEqual([]));
  test('words are those of the trade', () => {
    expect(found(rules.wordsNotUsed(otherSenses))).toEqual([]);
  });
  test('no absolute path, neighbour folder or package host', () => {
    expect(found(rules.places, others)).toEqual([]);
  });
});

const file = (text: string, path = 'src/removal/a.ts'): SourceFile => ({ path, text });
const lines = (count: number, line = 'x();') =>
  Array.from({ length: count }, () => line).join('\n');

describe('each rule finds what it forbids', () => {
  test('a file of 401 lines; not one of 400, nor a table', () => {
    expect(rules.fileLength(file(`${lines(401)}\n`))).toEqual(['src/removal/a.ts: 401 lines']);
    expect(rules.fileLength(file(`${lines(400)}\n`))).toEqual([]);
    expect(rules.fileLength(file(lines(401), 'src/quantity/tables/a.ts'))).toEqual([]);
  });

  test('a line of 101 columns, counted in characters', () => {
    expect(rules.lineLength(file(`ok\n${'é'.repeat(101)}`))).toHaveLength(1);
    expect(rules.lineLength(file('😀'.repeat(100)))).toEqual([]);
  });

  test.each([
    ['a function', 'function f(a: { b: number }): { c: number } {', '}'],
    ['an arrow', 'const f = ({ a, b }: Props) => {', '};'],
    ['an arrow with a type', 'const f = (a: number): Map<string, { b: 1 }> => {', '};'],
    ['a method', 'class A {\n  async run(a: string): Promise<void> {', '  }\n}'],
    ['a callback', "test('x', async () => {", '});'],
    ['a component', "export function A(): ReactNode {\n return (<p>it's {b}</p>);", '}'],
  ])('%s of more than 70 lines, not one of 70', (_, start, end) => {
    const extra = start.split('\n').length - 1;
    expect(rules.functionLength(file(`${start}\n${lines(70)}\n${end}`))).toHaveLength(1);
    expect(rules.functionLength(file(`${start}\n${lines(68 - extra)}\n${end}`))).toEqual([]);
  });

  test('neither a long object, a long type nor a heading of tests is a function', () => {
    for (const start of ['const a = {', 'type A = {', "describe('x', () => {", 'if (f(a)) {']) {
      expect(rules.functionLength(file(`${start}\n${lines(90, 'a: 1,')}\n}`))).toEqual([]);
    }
  });

  test('brackets in comments, strings, templates and patterns are not counted', () => {
    // biome-ignore lint/suspicious/noTemplateCurlyInString: it is the sample, not a slip
    const noise = ["const a = '{';", '// {', 'const b = `{ ${c({})} {`;', 'const d = /[{]/;'];
    const text = `function f() {\n${noise.join('\n')}\n}\n${lines(90)}`;
    expect(rules.functionsOf(text)).toEqual([{ from: 1, lines: 6 }]);
  });

  test.each(['import a from "b";', '// short.\nx();', '// no end of it all\nx();', '', '// '])(
    'the opening %j',
    (text) => expect(rules.opening(file(text))).toHaveLength(1),
  );

  test.each([
    '// Says what this is for.\nx();',
    '// Says what this is for, over\n// two lines.\nx();',
    '/** Says what this is for. */\nx();',
    '#!/usr/bin/env node\n// Says what this is for.\nx();',
  ])('not the opening %j', (text) => expect(rules.opening(file(text))).toEqual([]));

  test.each([
    'const a: any = 1;',
    'const a = b as any;',
    'const a: Map<string, any> = b;',
    'const a: Set<any> = b;',
    'type A = any;',
    'type A = string | any;',
    'function f(a: any[]) {}',
    'enum A { B }',
    'export default 1;',
    "test.skip('x', f);",
    "describe.only('x', f);",
    "xit('x', f);",
  ])('the form %j', (text) => expect(rules.forms(file(text))).not.toEqual([]));

  test.each([
    "const a = 'as any';",
    '// any: a word in a comment, export default',
    'const many = company.any;',
    'const a = f(b, any) && any.length;',
    'const a = { skip: 1 };',
  ])('not the form %j', (text) => expect(rules.forms(file(text))).toEqual([]));

  test('a default export only in the configuration of a tool', () => {
    expect(rules.forms(file('export default 1;', 'vite.config.ts'))).toEqual([]);
  });

  test.each(['// TODO later', '// FIXME', '// @ts-ignore', '/* @ts-expect-error */'])(
    'the leftover %j',
    (text) => expect(rules.leftovers(file(text))).toHaveLength(1),
  );

  test.each([
    'Opens a work order.',
    'const workOrder = 1;',
    'a job-card',
    'the Dashboard',
    'two assets',
    'Priority 1',
    'in progress',
    'the job is completed',
  ])('the words of %j', (text) => {
    expect(rules.wordsNotUsed([])(file(text))).toHaveLength(1);
    expect(rules.wordsNotUsed([])(file(text, 'docs/a.md'))).toHaveLength(1);
    expect(rules.wordsNotUsed([])(file(text, 'demo/tern-rock/plant.yaml'))).toHaveLength(1);
    expect(rules.wordsNotUsed([])(file(text, 'README.md'))).toHaveLength(1);
  });

  test('not the words of "counterbore", "counter-clockwise", "work in order"', () => {
    const text = 'counterbore, counter-clockwise, counterflow, work in order, uncreated';
    expect(rules.wordsNotUsed([])(file(text))).toEqual([]);
  });

  test('another sense is allowed at its place only', () => {
    const senses = [{ path: /^src\/app\//, word: /asset/, why: 'a word of the bundler' }];
    expect(rules.wordsNotUsed(senses)(file('assets', 'src/app/a.ts'))).toEqual([]);
    expect(rules.wordsNotUsed(senses)(file('assets', 'src/cli/a.ts'))).toHaveLength(1);
    expect(rules.wordsNotUsed(senses)(file('ticket', 'src/app/a.ts'))).toHaveLength(1);
  });

  test.each([
    "open('/home/someone/file')",
    'see /work/main/src',
    '/tmp/x.json',
    'C:\\boxup\\x',
    'read ../shared/design',
    '"resolved": "https://registry.example.org/a.tgz"',
  ])('the place %j', (text) => expect(rules.places(file(text, 'docs/a.md'))).toHaveLength(1));

  test('a folder of the app may be named as a neighbour is; the neighbour may not', () => {
    const text = "import { a } from '../shared/a.ts';";
    expect(rules.places(file(text, 'src/app/due/a.tsx'))).toEqual([]);
    expect(rules.places(file(text, 'src/app/a.tsx'))).toHaveLength(1);
    expect(rules.places(file('../shared/reference/x', 'src/app/due/a.tsx'))).toHaveLength(1);
  });

  test.each(['#!/usr/bin/env node', 'GET /api/work/next', 'src/work/x.ts', 'a/tmp/b', './var/x'])(
    'not the place %j',
    (text) => expect(rules.places(file(text, 'bin/launch.mjs'))).toEqual([]),
  );
});
