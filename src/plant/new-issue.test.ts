// A new issue is judged against the whole plant, and written with the comments of the one before.

import { expect, test } from 'vitest';
import { FIXTURE_SHEET, fixture } from './fixture.ts';
import { fileOfIssue, judgeIssue, newestIssue, textOfIssue } from './new-issue.ts';
import { readPlant } from './read.ts';
import type { PlantText } from './types.ts';

const next = FIXTURE_SHEET.replace('issue: "2"', 'issue: "3"').replace('2026-04-01', '2026-06-01');
const judge = (text: string, files: PlantText = fixture()) =>
  judgeIssue(files, { file: 'new.yaml', text });
const faults = (text: string) =>
  judge(text).problems.map((p) => [p.fault, p.file, p.path, p.got, p.expected]);

test('what changed, was added and was withdrawn, with its reason', () => {
  const text = next
    .replace('value: 70 N.m', 'value: 35.4 lbf.ft')
    .replace('threadCondition: dry\n', 'threadCondition: oiled\n    why: dry threads galled\n')
    .concat('  drain-plug:\n    name: Drain plug\n    kind: torque\n    value: 30 N.m\n');
  const { changes, problems, issue } = judge(text);
  expect(issue?.issue).toBe('3');
  expect(changes.map((c) => [c.id, c.change, c.was, c.is, c.why])).toEqual([
    ['guard-screw', 'changed', '20 N.m', '20 N.m', 'dry threads galled'],
    ['pump-foot', 'changed', '70 N.m', '35.4 lbf.ft', null],
    ['drain-plug', 'added', null, '30 N.m', null],
  ]);
  // A torque without its thread condition is taken as issued, and said to be incomplete.
  expect(problems.map((p) => [p.level, p.path])).toEqual([['should', 'values/drain-plug']]);
});

test('an issue that does not follow the one in force is refused, with what may stand there', () => {
  expect(faults(next.replace('issue: "3"', 'issue: "2"'))).toEqual([
    ['F20', 'new.yaml', 'issue', '2', 'an issue after 2'],
  ]);
  expect(faults(next.replace('issue: "3"', 'issue: "1"'))).toEqual([
    ['F20', 'new.yaml', 'issue', '1', 'an issue after 2'],
  ]);
  expect(faults(next.replace('2026-06-01', '2026-03-31'))).toEqual([
    ['F20', 'new.yaml', 'date', '2026-03-31', '2026-04-01 or later'],
  ]);
});

test.each([
  ['a unit of another kind', '70 N.m', '70 mm', 'F6', 'values/pump-foot/value'],
  ['a figure without unit', '70 N.m', '"70"', 'F6', 'values/pump-foot/value'],
  ['a sheet nearly named', 'sheet: pump-set-values', 'sheet: pump-set-value', 'F9', 'sheet'],
  ['for nobody', 'for: pump-set', 'for: pump-st', 'F9', 'for'],
  [
    'an unknown joint',
    'name: Pump feet',
    'name: Pump feet\n    joint: pump-fet',
    'F9',
    'values/pump-foot/joint',
  ],
])('%s is refused at its place', (_, from, to, fault, path) => {
  const { problems, issue } = judge(next.replace(from, to));
  expect(issue).toBeNull();
  expect(problems[0]).toMatchObject({ level: 'must', fault, path });
});

test('a withdrawn value that a joint still names is refused where the joint names it', () => {
  const text = next.replace(/ {2}pump-foot:\n(?: {4}.*\n| {6}.*\n)+/, '');
  expect(judge(text).problems[0]).toMatchObject({
    fault: 'F10',
    path: 'joints/pump-feet/fasteners/studs/tightening',
  });
});

test('the new text keeps comments, order and what did not change', () => {
  const remarked = FIXTURE_SHEET.replace('  pump-foot:', '  # The feet crack.\n  pump-foot:');
  const old = `# Why we keep this.\n${remarked}`;
  const files = fixture().map((f) => (f.file === 'values/pump-set.yaml' ? { ...f, text: old } : f));
  const { plant } = readPlant(files);
  const sheet = plant === null ? null : newestIssue(plant, 'pump-set-values');
  if (sheet === null) throw new Error('no sheet');
  const { file: _, ...issue } = sheet;
  const { 'flange-bolt': gone, 'pump-foot': foot, ...others } = issue.values;
  if (foot === undefined || gone === undefined) throw new Error('no values');
  const { supersedes: __, ...bare } = foot;
  const made = textOfIssue(old, {
    ...issue,
    issue: '10',
    date: '2026-06-01',
    values: {
      ...others,
      'pump-foot': { ...bare, value: '35.40 lbf.ft', why: 'cracked' },
      plug: { name: 'Plug', kind: 'torque', value: '30 N.m', threadCondition: 'dry' },
    },
  });
  const expected = old
    .replace('issue: "2"', 'issue: "10"')
    .replace('2026-04-01', '2026-06-01')
    .replace('value: 70 N.m', 'value: 35.40 lbf.ft')
    .replace('    supersedes:\n      issue: "1"\n      value: 82 N.m\n', '    why: cracked\n')
    .replace(/ {2}flange-bolt:\n(?: {4}.*\n)+/, '')
    .concat(
      '  plug:\n    name: Plug\n    kind: torque\n    value: 30 N.m\n    threadCondition: dry\n',
    );
  expect(made).toBe(expected);
});

test('a new issue is named after the one before, and never takes its name', () => {
  const { plant } = readPlant(fixture());
  const sheet = plant === null ? null : newestIssue(plant, 'pump-set-values');
  if (sheet === null) throw new Error('no sheet');
  expect(fileOfIssue(sheet, { ...sheet, issue: '3' })).toBe('values/pump-set-issue-3.yaml');
  const third = { ...sheet, file: 'values/pump-set-issue-3.yaml' };
  expect(fileOfIssue(third, { ...sheet, issue: 'C 1' })).toBe('values/pump-set-issue-c-1.yaml');
  expect(fileOfIssue(null, sheet)).toBe('values/pump-set-values-issue-2.yaml');
});
