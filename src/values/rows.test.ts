// A new issue from rows: what is wrong is told at its row and column, and nothing is filled in.

import { expect, test } from 'vitest';
import { type IssueHead, type IssueRows, readIssue } from './rows.ts';
import type { SheetFile } from './schema.ts';

const before: SheetFile = {
  sheet: 'pump-values',
  name: 'Pump values',
  for: 'pump-set',
  issue: '2',
  date: '2026-04-01',
  authority: 'Mill pond office',
  confirm: '24 months',
  confirmed: { on: '2026-05-01', by: 'Ada' },
  values: {
    feet: {
      name: 'Pump feet',
      kind: 'torque',
      value: '70 N.m',
      scope: 'this joint',
      threadCondition: 'oiled',
      why: 'old reason',
    },
  },
};
const head: IssueHead = { sheet: 'pump-values', issue: '3', date: '2026-06-01' };
const list = (text: string): IssueRows => {
  const [first = '', ...rest] = text.split('\n');
  return {
    head: first.split(','),
    rows: rest.map((row, i) => ({ line: i + 2, cells: row.split(',') })),
  };
};
const faults = (text: string, given = head) =>
  readIssue(list(text), given, [before]).problems.map((p) => `${p.path}: ${p.why}`);

test('what a value is stays; figure, thread condition and reason are the list its own', () => {
  const { sheet, problems } = readIssue(list('id,value\nfeet,35.40 lbf.ft'), head, [before]);
  expect(problems).toEqual([]);
  expect(sheet?.values.feet).toEqual({
    name: 'Pump feet',
    kind: 'torque',
    value: '35.40 lbf.ft',
    scope: 'this joint',
  });
  expect(sheet).toMatchObject({ issue: '3', authority: 'Mill pond office', confirm: '24 months' });
  expect(sheet?.confirmed).toBeUndefined();
});

test('columns in words of the trade, in any case, empty rows passed over', () => {
  const text =
    'ID,Name,Kind,Value,Thread Condition,Why\nfeet,Feet,torque,68 N.m,dry,new nuts\n,,,,,';
  const { sheet } = readIssue(list(text), head, [before]);
  expect(sheet?.values.feet).toMatchObject({ threadCondition: 'dry', why: 'new nuts' });
});

test('faults stand at row and column, all of them', () => {
  const text =
    'id,kind,value\nfeet,torque,70 N.m\nfeet,torque,71 N.m\n,torque,1 N.m\nlid,twist,2 N.m';
  expect(faults(text)).toEqual([
    'row 3/id: row 2 gives feet already',
    'row 4/id: the row has none',
    'row 5/name: name is not given',
    'row 5/kind: it is not written so',
  ]);
  expect(faults('id,torque\nfeet,70 N.m')).toEqual(['row 1/torque: no such column']);
  expect(faults('name,value\nFeet,70 N.m')).toEqual(['row 1/id: it is not there']);
  expect(faults('id,value,value\nfeet,1 N.m,2 N.m')).toEqual(['row 1/value: it is there twice']);
});

test('an issue has one number, one date, one authority; without them it is none', () => {
  const rows = 'id,value,issue\nfeet,70 N.m,3\nlid,2 N.m,4';
  expect(faults(rows)).toContain('row 3/issue: one issue has one issue');
  const { issue: _, ...bare } = head;
  expect(faults('id,value\nfeet,70 N.m', bare)).toEqual(['row 1/issue: it is not given']);
  expect(faults('id,value\nfeet,70 N.m', { ...head, date: 'May' })).toEqual([
    'row 1/date: it is not written so',
  ]);
});
