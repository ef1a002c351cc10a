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

type Row = {
  readonly thing: string;
  readonly kind: string;
  readonly ready: boolean;
  readonly body: object;
  readonly count: { readonly n: number } | null;
};

describe('a strip from first to last', () => {
  let id = '';
  const rows = (): readonly Row[] => JSON.parse(job('box-up', id, '--json').stdout).boxUp;

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
    expect(byAda('drain', id, 'Pump drain cock', '--saw-run').status).toBe(2);
    expect(byAda('drain', id, 'Pump drain cock').stdout).toMatch(/Work · 3 open/);
    const seen = byAda('drain', id, 'Pump drain cock', '--saw-run', '--died-away');
    expect(seen.stdout).toMatch(/Work · 3 open/);
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

  test('made good in the order proposed, the job closes; before that it does not', () => {
    expect(byAda('close', id).status).toBe(1);
    expect(byAda('put-back', id, 'joint/sea-water-pump').stderr).toMatch(/Give --count/);
    const [owed] = rows();
    expect(owed?.kind).toBe('as-found');
    expect(byAda('put-back', id, String(owed?.thing)).stderr).toContain('say: as-found JOB');
    const five = ['--failed', 'shaft seal', '--hours', '21371.5', '--missing', '2'];
    expect(byAda('as-found', id, '--grade', 'middling', ...five).stderr).toMatch(/near its end/);
    expect(byAda('as-found', id, '--grade', 'near its end', ...five).status).toBe(0);
    expect(byAda('close', id).stderr).toMatch(/missing\/.*pieces missing: 2/);
    const found = ['--where', 'the first bend after it', '--left', '1'];
    expect(byAda('accounted', id, 'missing/', ...found).stdout).not.toMatch(/closed/);
    expect(byAda('accounted', id, 'missing/', '--reason', 'bend and cooler opened').status).toBe(1);
    const without = ['--reason', 'bend and cooler opened', '--limits', 'strainer looked at at 1 h'];
    expect(byAda('accounted', id, 'missing/', ...without).status).toBe(0);
    const [first, ...rest] = rows();
    expect(first?.ready).toBe(true);
    expect(first?.kind).toBe('taken-away');
    expect(byAda('put-back', id, String(first?.thing)).status).toBe(0);
    const drafts = rest.map(({ kind, body }) => {
      const result = kind === 'proof' ? { result: 'pass' } : {};
      return { stream: { kind: 'job', id }, kind, by: 'Ada', body: { ...body, ...result } };
    });
    const file = join(folder, 'rest.jsonl');
    writeFileSync(file, drafts.map((d) => JSON.stringify(d)).join('\n'));
    expect(job('play', file).status).toBe(0);
    const closed = byAda('close', id);
    expect(closed.status, closed.stderr).toBe(0);
    expect(closed.stdout).toMatch(/: closed/);
    expect(boxup('record', 'verify', '--archive', archive).status).toBe(0);
  }, 120_000);
});
