// The commands for a joint that is tight, for a bolt that says no, and for files of results.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeResult } from '../exchange/tightening-result.ts';
import type { ShownValue } from '../pack/types.ts';
import { fixturePack, wholeJob } from '../record/fixture.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'boxup-tight-'));
const archive = join(folder, 'log.db');
const value: ShownValue = {
  id: 'nuts',
  name: 'Nuts',
  shown: '48 N.m',
  origin: 'issued for this joint',
  issue: '1',
  date: '2026-01-01',
  authority: 'Ada',
  threadCondition: 'oiled',
  was: null,
  source: null,
};
const holes = ['1', '2', '3', '4'];
const pack = fixturePack((p) => ({
  ...p,
  steps: p.steps.map((s) =>
    s.verb === 'made' && s.round !== 'hand' ? { ...s, values: [value] } : s,
  ),
  facts: {
    ...p.facts,
    joints: Object.fromEntries(
      Object.entries(p.facts.joints).map(([id, j]) => [
        id,
        {
          ...j,
          recheck: {
            check: [{ fastener: 'bolts', what: 'bolts', holes, value, why: [] }],
            retighten: { value, when: 'cold', why: [] },
          },
        },
      ]),
    ),
  },
}));

const boxup = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['--disable-warning=ExperimentalWarning', main, ...args], {
    encoding: 'utf8',
  });
let id = '';
const job = (command: string, ...args: readonly string[]) =>
  boxup('job', command, id, ...args, '--archive', archive);
const said = (command: string, ...args: readonly string[]) => job(command, ...args, '--by', 'Ada');
const file = (name: string, content: unknown): string => {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(content));
  return path;
};
const bolt = (hole: string, judged: 'tight' | 'not tight' = 'tight') =>
  writeResult({
    id: `r-${hole}`,
    at: '2026-03-14T09:00:00Z',
    name: `bolt ${hole}`,
    joint: 'suction-flange',
    hole,
    tool: 'tw-02',
    judged,
    torque: { value: 48.2, unit: 'N.m' },
    target: null,
  });

afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeAll(() => {
  const packed = file('pack.json', pack);
  const begun = boxup('job', 'start', '--archive', archive, '--pack', packed, '--by', 'Ada');
  id = /^JOB is (\S+)$/m.exec(begun.stdout)?.[1] ?? '';
  const drafts = wholeJob(pack);
  const at = drafts.findIndex((d) => d.kind === 'made' && d.body.round === '100 %');
  const lines = drafts.slice(1, at).map((d) => ({ ...d, stream: { kind: 'job', id } }));
  const played = join(folder, 'said.jsonl');
  writeFileSync(played, lines.map((d) => JSON.stringify(d)).join('\n'));
  expect(boxup('job', 'play', played, '--archive', archive).status).toBe(0);
}, 30_000);

test('a file with one wrong result records nothing; a sound one ticks every bolt', () => {
  const wrong = said('tightening-results', file('wrong.json', [bolt('1'), bolt('7')]));
  expect(wrong.status).toBe(2);
  expect(wrong.stderr).toContain('Nothing was recorded');
  expect(wrong.stderr).toContain('has no such hole');
  expect(said('tightening-results', join(folder, 'none.json')).status).toBe(2);
  expect(job('tight').stdout).toContain('suction-flange joint: not tight');
  const sound = said(
    'tightening-results',
    file(
      'sound.json',
      holes.map((h) => bolt(h)),
    ),
  );
  expect(sound.status).toBe(0);
  expect(job('tight').stdout).toContain('suction-flange joint: tight');
  const twice = said('tightening-results', file('sound.json', [bolt('1')]));
  expect(twice.stderr).toContain('made up already');
});

test('a check and a re-tightening are two commands, each refused where it may not be', () => {
  const joint = 'joint/suction-flange';
  expect(said('check-tight', joint, '--holes', '2,3').status).toBe(0);
  const other = said('check-tight', joint, '--holes', '2', '--value', '50 N.m');
  expect([other.status, other.stderr]).toEqual([1, expect.stringContaining('48 N.m')]);
  const yes = ['--cold', '--no-pressure', '--start-isolated'];
  for (const left of yes) {
    const some = yes.filter((each) => each !== left);
    expect(said('re-tighten', joint, ...some).status, left).toBe(1);
  }
  expect(said('re-tighten', joint, ...yes).status).toBe(0);
});

test('a bolt says no in a part of a word, and the record says it is not tight', () => {
  const no = said('bolt', 'suction-flange', "won't", '--hole', '4');
  expect(no.stdout).toContain('Finding');
  expect(said('bolt', 'suction-flange', 'sang').status).toBe(2);
  const out = join(folder, 'out.json');
  const shown = boxup('record', 'show', id, '--archive', archive, '--tightening-results', out);
  expect(shown.stdout).toContain('suction-flange joint: not tight (hole 4 not tight)');
  const results = JSON.parse(readFileSync(out, 'utf8')) as {
    ResultMetaData: { ResultEvaluation: number };
  }[];
  expect(results.map((r) => r.ResultMetaData.ResultEvaluation)).toEqual([1, 1, 1, 2]);
});
