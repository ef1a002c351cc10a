// `boxup stores` as a person meets it: its text, its JSON, its CSV, a scanned code, its labels.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { AUTHORITY_LINE } from '../quantity/authority.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const demo = fileURLToPath(new URL('../../demo/tern-rock/stores.csv', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'stores-'));
afterAll(() => rmSync(folder, { recursive: true }));

function stores(...args: string[]) {
  const given = ['--disable-warning=ExperimentalWarning', main, 'stores', ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, given, { encoding: 'utf8' });
  return { code: status, out: stdout, err: stderr };
}

function file(content: string): string {
  const path = join(folder, 'list.csv');
  writeFileSync(path, content);
  return path;
}

test('the demo list has no problem; its short kits are told', () => {
  const { code, out } = stores('check', demo);
  expect(code).toBe(0);
  expect(out).toContain('Overhaul kit is short: 1 × Water seal');
  expect(out).toContain('Cooler kit is short: 3 × Plate gaskets');
  expect(out).toMatch(/\d+ items read, 0 problems\.\n$/);
});

test('each fault with its row and what may stand', () => {
  const list =
    'kind,id,name,seal,condition,origin,quantity\nseal,a,A,ring,ready to fit,assumed,2\n';
  const { code, out } = stores('check', file(list));
  expect(code).toBe(1);
  expect(out).toContain('row 2/origin – this says that nobody knows where it came from; it says');
  expect(out).toContain('0 items read, 1 problem.');
});

test('the list on a day under a named rule, by place; without a rule it is said', () => {
  const { out } = stores('list', demo, '--on', '2026-11-25', '--rule', 'ISO 2230');
  expect(out).toMatch(/^Long shelf$/m);
  expect(out).toMatch(/spigot-ring-old .* NOT IN ORDER: .* ended on 2021-09-30 under ISO 2230/);
  expect(out).toMatch(/pump-core .* NOT IN ORDER: core/);
  expect(out).toContain(AUTHORITY_LINE);
  expect(stores('list', demo).out).toContain('no storage rule is named');
  expect(stores('list', demo, '--rule', 'mine')).toMatchObject({ code: 2 });
  expect(stores('list', demo, '--on', 'soon')).toMatchObject({ code: 2 });
});

test("a scanned code finds its item, another vessel's label is refused", () => {
  const scan = (text: string) => stores('list', demo, '--json', '--scan', text);
  const found = JSON.parse(scan('(01)09521234543213(10)EP-4410').out);
  expect(found.items.map((one: { id: string }) => one.id)).toEqual(['flange-gasket']);
  expect(scan('boxup:other/spigot-ring')).toMatchObject({ code: 2 });
  expect(scan('(01)09521234543214').err).toContain('its check digit is wrong');
});

test('as CSV it comes back the same', () => {
  const once = stores('list', demo, '--csv').out;
  expect(stores('list', file(once), '--csv').out).toBe(once);
});

test('labels are printed, each with its code', () => {
  const pdf = join(folder, 'labels.pdf');
  expect(stores('labels', demo, '--pdf', pdf)).toMatchObject({ code: 0 });
  expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
});
