// Stripping without a pack as a person meets it on the command line, from nothing to the next pack.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { AUTHORITY_LINE } from '../quantity/authority.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'boxup-strip-'));
const archive = join(folder, 'log.db');
const out = join(folder, 'draft');

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const boxup = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['--disable-warning=ExperimentalWarning', main, ...args], {
    encoding: 'utf8',
  });
const job = (command: string, ...args: readonly string[]) =>
  boxup('job', command, ...args, '--archive', archive);
const byAda = (command: string, ...args: readonly string[]) => job(command, ...args, '--by', 'Ada');

type Row = { readonly thing: string; readonly kind: string; readonly ready: boolean };

describe('a strip from first to last', () => {
  let id = '';
  const rows = (): readonly (Row & { readonly count: { readonly n: number } | null })[] =>
    JSON.parse(job('box-up', id, '--json').stdout).boxUp;

  test('begins with the machine in words', () => {
    const named = ['--vessel', 'Grey Heron', '--machine', 'Main engine', '--side', 'port'];
    const said = byAda('strip', ...named, '--component', 'Sea-water pump');
    expect(said.status, said.stderr).toBe(0);
    id = /^JOB is (\S+)$/m.exec(said.stdout)?.[1] ?? '';
    expect(id).toMatch(/^sea-water-pump-main-engine-port-\d{4}-\d\d-\d\d-/);
    expect(said.stdout.trimEnd().endsWith(AUTHORITY_LINE)).toBe(true);
  });

  test('what may be wet is refused until a valve is shut, tagged, and the flow seen dead', () => {
    const hose = ['Inlet hose', '--wet', 'do not know', '--fasteners', '2 hose clip', '--bag', '2'];
    const refused = byAda('took-off', id, ...hose);
    expect(refused.status).toBe(1);
    expect(refused.stderr).toMatch(/may hold liquid .* There is no way past this stop/);
    const inlet = ['Sea inlet valve', '--kind', 'sea valve', '--found', 'open', '--turns', '6'];
    expect(byAda('shut', id, ...inlet, '--tag', '1').stdout).toMatch(/Work · 2 open/);
    const drafts = [
      { kind: 'drain-opened', body: { thing: 'drain/pump-drain', what: 'Pump drain cock' } },
      { kind: 'proved-dead', body: { thing: 'drain/pump-drain', sawRun: 'yes', diedAway: 'yes' } },
    ];
    for (const { kind, body } of drafts) expect(played(kind, body).status).toBe(0);
    expect(byAda('took-off', id, ...hose).status).toBe(0);
    const pump = [
      'Sea-water pump',
      '--wet',
      'yes',
      '--fasteners',
      '6 stud and nut',
      '--seals',
      '1',
    ];
    expect(byAda('took-off', id, ...pump).status).toBe(0);
    expect(byAda('put-in', id, 'Rag', '--kind', 'rag', '--where', 'inlet pipe').status).toBe(0);
  });

  const played = (kind: string, body: Readonly<Record<string, string>>) => {
    const file = join(folder, 'one.jsonl');
    const stream = { kind: 'job', id };
    writeFileSync(file, JSON.stringify({ stream, kind, by: 'Ada', body }));
    return job('play', file);
  };

  test('a wrong word is said, exit 2; a kind nobody knows is refused, exit 1', () => {
    const bad = byAda('took-off', id, 'Cover', '--wet', 'no', '--fasteners', 'six bolts');
    expect(bad.status).toBe(2);
    expect(bad.stderr).toMatch(/--fasteners is "six bolts"/);
    expect(byAda('took-off', id, 'Cover', '--wet', 'no', '--fasteners', '6 hook').status).toBe(1);
    expect(job('next', id).stderr).toMatch(/has no pack: see "boxup job box-up JOB"/);
  });

  test('the watch is handed over with the list', () => {
    const { stdout, status } = byAda('hand-over', id, '--to', 'Ben');
    expect(status).toBe(0);
    expect(stdout).toMatch(/Handed over by Ada to Ben/);
    expect(stdout).toMatch(/Rag .*: not seen/);
  });

  test('the draft plant file passes the check, and a pack is made on it', () => {
    const written = job('draft', id, '--out', out);
    expect(written.status, written.stderr).toBe(0);
    expect(job('draft', id, '--out', out).status).toBe(2);
    const checked = boxup('check', out);
    expect(checked.status, checked.stdout + checked.stderr).toBe(0);
    const asked = ['--plant', out, '--machine', 'main-engine-port', '--target', 'sea-water-pump'];
    const pack = boxup('pack', ...asked);
    expect(pack.status, pack.stderr).toBe(0);
    expect(pack.stdout).toMatch(/Sea-water pump joint/);
  }, 30_000);

  test('made good one after another as proposed, the job closes; before that it does not', () => {
    expect(byAda('close', id).status).toBe(1);
    expect(byAda('put-back', id, 'joint/sea-water-pump').stderr).toMatch(/Give --count/);
    for (let i = 0; i < 40; i++) {
      const row = rows().find((r) => r.ready);
      if (row === undefined) break;
      const count = row.count === null ? [] : ['--count', String(row.count.n)];
      const result = row.kind === 'proof' ? ['--result', 'pass'] : [];
      const said = byAda('put-back', id, row.thing, ...count, ...result);
      expect(said.status, said.stderr).toBe(0);
    }
    const closed = byAda('close', id);
    expect(closed.status, closed.stderr).toBe(0);
    expect(closed.stdout).toMatch(/: closed/);
    expect(boxup('record', 'verify', '--archive', archive).status).toBe(0);
  }, 120_000);
});
