// The commands `job` and `record` as a person meets them: sentences, refusals, exit codes.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { fixturePack, wholeJob } from '../record/fixture.ts';
import type { Draft } from '../record/types.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'boxup-job-'));
const archive = join(folder, 'log.db');
const packFile = join(folder, 'pack.json');
const pack = fixturePack();

afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeAll(() => writeFileSync(packFile, JSON.stringify(pack)));

const boxup = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['--disable-warning=ExperimentalWarning', main, ...args], {
    encoding: 'utf8',
  });
const job = (command: string, ...args: readonly string[]) =>
  boxup('job', command, ...args, '--archive', archive);
const byAda = (command: string, ...args: readonly string[]) => job(command, ...args, '--by', 'Ada');
const json = (...args: readonly string[]) =>
  JSON.parse(job(...(args as [string]), '--json').stdout);

function played(drafts: readonly Draft[], name = 'drafts.jsonl') {
  const file = join(folder, name);
  writeFileSync(file, drafts.map((d) => JSON.stringify(d)).join('\n'));
  return job('play', file);
}

describe('a job from first to last', () => {
  let id = '';

  test('start makes the archive and names the job; the names are not proved', () => {
    const { stdout, status } = byAda('start', '--pack', packFile, '--hands', 'Ada, Ben');
    expect(status).toBe(0);
    id = /^JOB is (\S+)$/m.exec(stdout)?.[1] ?? '';
    expect(id).toMatch(/^pump-engine-\d{4}-\d\d-\d\d-/);
    expect(stdout).toContain(NAMES_NOT_PROVED);
    expect(stdout.trimEnd().endsWith(AUTHORITY_LINE)).toBe(true);
  });

  test('next shows the ready steps, and why wet joints wait', () => {
    const { stdout } = job('next', id);
    expect(stdout).toContain('say: do JOB "shut closure/sea-suction"');
    expect(stdout).not.toContain('"undone joint/suction-flange"');
    expect(stdout).toMatch(/Wet joints wait: not shut: sea-suction, start-switch/);
    expect(stdout).toContain('say: do JOB "measured before/running:600-rpm"');
    const read = ['measured before/running:600-rpm', '--answer', 'pressure=1.4'];
    expect(byAda('do', id, ...read).status).toBe(0);
    expect(job('open', id).stdout).toContain('Before the job: Pump pressure 1.4 bar at 600 rpm');
    expect(byAda('cannot-run', id, '--other', '--why', 'laid up').status).toBe(0);
    expect(json('next', id).ready[0].id).toBe('shut closure/sea-suction');
  });

  test('a wet joint is refused with the list, exit 1; nothing is recorded', () => {
    const before = json('open', id).openCount;
    const { stderr, status } = byAda('do', id, 'undone joint/suction-flange');
    expect(status).toBe(1);
    expect(stderr).toMatch(/isolation is not proved\. There is no way past this stop/);
    expect(stderr).toMatch(/- not tagged: sea-suction, start-switch/);
    expect(
      byAda('use-anyway', id, 'undone joint/suction-flange', '--reason', 'r', '--limits', 'l')
        .status,
    ).toBe(1);
    expect(json('open', id).openCount).toBe(before);
  });

  test('several things in one go; a thing alone means its one ready step', () => {
    const { stdout, status } = byAda(
      'do',
      id,
      'closure/sea-suction',
      'tagged tag/1',
      'undone joint/guard',
    );
    expect(status).toBe(0);
    expect(stdout).toMatch(/tagged tag\/1 by Ada/);
    expect(job('open', id).stdout).toMatch(
      /joint\/guard: guard joint: 3 bolts off \(port side, low\)/,
    );
  });

  test('found, decided, could not, corrected, noted', () => {
    expect(byAda('found', id, 'joint/guard', '--what', 'cracked').status).toBe(0);
    expect(byAda('could-not', id, 'undone joint/drive', '--why', 'seized').status).toBe(0);
    const { findings } = json('open', id);
    expect(findings.map((f: { kind: string }) => f.kind)).toEqual(['found', 'could not']);
    for (const f of findings)
      expect(byAda('decide', id, f.id, '--owner', 'Ben', '--what', 'weld ashore').status).toBe(0);
    expect(json('open', id).findings).toEqual([]);
    const acts = JSON.parse(
      boxup('record', 'show', id, '--archive', archive, '--json').stdout,
    ).acts;
    const undone = acts.find((a: { kind: string }) => a.kind === 'undone');
    expect(byAda('correct', id, undone.hash.slice(0, 16), '--why', 'mis-tap').status).toBe(0);
    expect(job('open', id).stdout).not.toMatch(/joint\/guard/);
    expect(byAda('note', id, '--text', 'tea').status).toBe(0);
  });

  test('close is refused with the list, then played to its end and closed; it verifies', () => {
    const { stderr, status } = byAda('close', id);
    expect(status).toBe(1);
    expect(stderr).toMatch(/- closure\/sea-suction: sea-suction: shut, normally open/);
    const rest = wholeJob(pack, id).slice(3, -1);
    const { stdout, status: done } = played(rest);
    expect(stdout).toContain(`${rest.length} acts recorded.`);
    expect(done).toBe(0);
    expect(byAda('close', id).stdout).toMatch(/: closed$/m);
    const shown = JSON.parse(boxup('record', 'show', id, '--archive', archive, '--json').stdout);
    const device = Object.entries(shown.printed.deviceSeqs).map(([d, n]) => `${d}=${n}`);
    const against = ['--head', shown.printed.head, '--device', device[0] ?? ''];
    const verified = boxup('record', 'verify', '--archive', archive, ...against);
    expect(verified.stdout).toMatch(/acts verified/);
    expect(verified.status).toBe(0);
    const [more] = device.map((d) => d.replace(/\d+$/, (n) => String(Number(n) + 1)));
    const missing = boxup(
      'record',
      'verify',
      '--archive',
      archive,
      '--device',
      more ?? '',
      '--json',
    );
    expect(missing.status).toBe(1);
    expect(JSON.parse(missing.stdout).faults).toHaveLength(1);
  });

  test('after closing no more work; list shows it closed', () => {
    expect(byAda('do', id, 'undone joint/guard').status).toBe(1);
    expect(job('list').stdout).toMatch(/Pump, test engine: exchange: closed/);
  });

  test('verify names the row that somebody altered', () => {
    const db = new DatabaseSync(archive);
    db.exec("UPDATE acts SET bytes = CAST(replace(CAST(bytes AS TEXT), 'tea', 'tee') AS BLOB)");
    db.close();
    const { stderr, status } = boxup('record', 'verify', '--archive', archive);
    expect(status).toBe(1);
    expect(stderr).toMatch(/row [0-9a-f]{64}: the bytes hash to/);
    expect(job('list').status).toBe(2);
  });
});

describe('input that cannot be used ends with 2 and says what was expected', () => {
  const other = join(folder, 'other.db');
  const on = (...args: string[]) => boxup('job', ...args, '--archive', other, '--by', 'Ada');
  beforeAll(() => {
    expect(on('start', '--pack', packFile).status).toBe(0);
  });

  test.each([
    ['no such job', ['do', 'winch', 'undone joint/guard'], /no job "winch"/],
    ['no such step', ['do', 'pump', 'undone joint/gaurd'], /no step "undone joint\/gaurd"/],
    [
      'an answer missing',
      ['do', 'pump', 'checked check/faces'],
      /asks for --result \(Seen: good, not good\)/,
    ],
    [
      'an answer not offered',
      ['do', 'pump', 'checked check/faces', '--result', 'fine'],
      /expected good, not good/,
    ],
    [
      'a count that is none',
      ['do', 'pump', 'undone joint/guard', '--count', 'six'],
      /expected a number/,
    ],
    ['no such act', ['correct', 'pump', 'ffffffffffffffff', '--why', 'x'], /fits no acts/],
    ['a deviation without reason', ['close', 'pump', '--deviation', 'x'], /its own --reason/],
    ['no pack', ['start'], /give --pack, or --plant/],
    [
      'no plant',
      ['start', '--plant', 'nowhere', '--machine', 'm', '--target', 't'],
      /no plant folder/,
    ],
  ])('%s', (_, args, why) => {
    const { stderr, status } = on(...args);
    expect(stderr).toMatch(why);
    expect(status).toBe(2);
  });

  test('an altered pack is not taken', () => {
    const file = join(folder, 'altered.json');
    writeFileSync(file, JSON.stringify({ ...pack, title: 'Another' }));
    expect(on('start', '--pack', file).stderr).toMatch(/its content hashes to/);
  });

  test('play stops at the first refusal and says at which line', () => {
    const file = join(folder, 'stop.jsonl');
    const id = JSON.parse(boxup('job', 'list', '--archive', other, '--json').stdout).jobs[0].id;
    const lines = wholeJob(pack, id)
      .slice(1, 3)
      .map((d) => JSON.stringify(d));
    const wet = {
      stream: { kind: 'job', id },
      kind: 'undone',
      by: 'Ada',
      body: { thing: 'joint/suction-flange' },
    };
    writeFileSync(
      file,
      ['# two, then one too early', ...lines, '', JSON.stringify(wet)].join('\n'),
    );
    const { stderr, status } = boxup('job', 'play', file, '--archive', other);
    expect(status).toBe(1);
    expect(stderr).toMatch(/line 5: stopped here; 2 acts before it are recorded/);
    writeFileSync(file, '{"kind":"note"}');
    expect(boxup('job', 'play', file, '--archive', other).status).toBe(2);
  });
});

test('every command of job and record ends its help with the authority line', () => {
  const commands = ['start', 'list', 'next', 'do', 'open', 'could-not', 'found', 'decide'];
  const more = ['use-anyway', 'correct', 'note', 'amend', 'close', 'play'];
  const helps = [...commands, ...more].map((c) => ['job', c]);
  for (const words of [...helps, ['record', 'verify'], ['record', 'show']]) {
    const { stdout, status } = boxup(...words, '--help');
    expect(stdout.trimEnd().endsWith(AUTHORITY_LINE), words.join(' ')).toBe(true);
    expect(stdout).toContain(NAMES_NOT_PROVED);
    expect(status).toBe(0);
  }
});
