// `boxup tools` as a person meets it: its text, its JSON, its CSV, files that cannot be read.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { AUTHORITY_LINE } from '../quantity/authority.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const demo = fileURLToPath(new URL('../../demo/tern-rock/tools.csv', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'tools-'));
afterAll(() => rmSync(folder, { recursive: true }));

function tools(...args: string[]) {
  const given = ['--disable-warning=ExperimentalWarning', main, 'tools', ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, given, { encoding: 'utf8' });
  return { code: status, out: stdout, err: stderr };
}

function file(content: string | Buffer): string {
  const path = join(folder, 'list.csv');
  writeFileSync(path, content);
  return path;
}

test('the demo list has no problem', () => {
  expect(tools('check', demo)).toEqual({ code: 0, out: '50 tools read, 0 problems.\n', err: '' });
});

test('each fault with its row in the file, a quoted line break counted', () => {
  const list = 'kind,id,name,drive,min,max\nhandle,h,"two\nlines",1/2,,\nwrench,w,W,1/2,90,20\n';
  const { code, out } = tools('check', file(list));
  expect(code).toBe(1);
  expect(out).toBe(
    'row 4/min – its least is above its greatest; it says 90 N·m (expected at most 20 N·m)\n' +
      '1 tool read, 1 problem.\n',
  );
  const told = JSON.parse(tools('check', '--json', file(list)).out);
  expect(told).toMatchObject({ tools: 1, problems: [{ row: 4, column: 'min', got: '90 N·m' }] });
  expect(told.authority).toBe(AUTHORITY_LINE);
});

test('a list as a spreadsheet writes it: byte order mark, semicolons, two-sign line ends', () => {
  const list = '\uFEFFkind;id;name;drive\r\nhandle;h;Handle, long;1/2\r\n';
  expect(tools('check', file(list))).toMatchObject({ code: 0 });
  expect(tools('list', '--csv', file(list)).out).toBe(
    'kind,id,name,drive\nhandle,h,"Handle, long",12.5\n',
  );
});

test('the list on a day: what is out of date and what fell stands with why', () => {
  const { code, out } = tools('list', demo, '--on', '2026-11-25');
  expect(code).toBe(0);
  expect(out).toMatch(/wrench-old-half .* NOT IN ORDER: out of date: .* until 2026-05-19/);
  expect(out).toMatch(/wrench-pounds .* 20 to 150 lbf·ft.* NOT IN ORDER: dropped on 2026-09-08/);
  expect(out).toMatch(/wrench-half .*; in date/);
  expect(out).toContain(AUTHORITY_LINE);
  const json = JSON.parse(tools('list', demo, '--on', '2028-01-01', '--json').out);
  const wrenches = json.tools.filter(({ kind }: { kind: string }) => kind === 'wrench');
  for (const one of wrenches) expect(one.against.length).toBeGreaterThan(0);
});

test('the list printed as CSV reads back the same', () => {
  const first = tools('list', '--csv', demo).out;
  expect(tools('list', '--csv', file(first)).out).toBe(first);
});

test.each([
  ['no file', () => join(folder, 'none.csv'), /cannot be read/],
  ['nothing in it', () => file(''), /is empty/],
  ['a quote left open', () => file('kind,id,name\nhandle,"h,H\n'), /is no CSV/],
  ['another encoding', () => file(Buffer.from([0x6b, 0xe9, 0x0a])), /UTF-8/],
])('%s: refused with 2', (_, path, why) => {
  const { code, out, err } = tools('check', path());
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toMatch(why);
});

test('a day that is none is refused; help has the columns and the authority line', () => {
  expect(tools('list', demo, '--on', '25.11.2026')).toMatchObject({ code: 2, out: '' });
  const { out } = tools('--help');
  expect(out).toContain('across flats');
  expect(out).toContain(AUTHORITY_LINE);
});
