// What one issue says and what the next changed: figures stay letter for letter as issued.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { byIssue, compareIssues, isIncomplete, issuedText, issueOrder } from './issue.ts';
import type { ValueEntry } from './schema.ts';

const seed = 20_261_125;
const torque = (value: string, more: Partial<ValueEntry> = {}): ValueEntry => ({
  name: 'Pump feet',
  kind: 'torque',
  value,
  threadCondition: 'dry',
  ...more,
});

test('an issued figure comes back letter for letter', () => {
  for (const text of ['35.4 lbf.ft', '35.40 lbf·ft', '6.50 N.m', '1,5 kgf.m', '046 N.m'])
    expect(issuedText(torque(text))).toBe(text);
  expect(issuedText({ value: '34', unit: 'N.m' })).toBe('34 N.m');
  expect(issuedText({ min: '0.5', max: '1.50', unit: 'mm' })).toBe('0.5 mm to 1.50 mm');
  expect(issuedText({ max: '48 Cel' })).toBe('at most 48 Cel');
  expect(issuedText({})).toBeNull();
});

test(`any text with its own unit is given back untouched (seed ${seed})`, () => {
  fc.assert(
    fc.property(
      fc.stringMatching(/^\d{1,4}(\.\d{1,4})? (N\.m|lbf\.ft|lbf\.in|kgf\.m)$/),
      (text) => {
        expect(issuedText(torque(text))).toBe(text);
      },
    ),
    { seed, numRuns: 200 },
  );
});

test('issues go by date, then by number and not by letters', () => {
  expect(issueOrder('9', '10')).toBeLessThan(0);
  expect(issueOrder('B', 'A')).toBeGreaterThan(0);
  const later = { issue: '2', date: '2026-02-01' };
  expect(byIssue({ issue: '9', date: '2026-01-01' }, later)).toBeLessThan(0);
  expect(byIssue({ issue: '10', date: '2026-02-01' }, later)).toBeGreaterThan(0);
});

test('a torque without its thread condition is incomplete, other kinds are not', () => {
  const { threadCondition: _, ...bare } = torque('40 N.m');
  expect(isIncomplete(bare)).toBe(true);
  expect(isIncomplete(torque('40 N.m'))).toBe(false);
  expect(isIncomplete({ ...bare, kind: 'limit' })).toBe(false);
});

describe('what an issue changed', () => {
  const older = {
    values: {
      feet: torque('40 N.m', { why: 'an older reason' }),
      cover: torque('6.5 N.m'),
      lid: torque('20 N.m'),
    },
  };
  test('changed in figure or condition, added, withdrawn; the rest is not told', () => {
    const newer = {
      why: 'gaskets crept',
      values: {
        feet: torque('38 N.m', { why: 'an older reason' }),
        cover: torque('6.5 N.m', { threadCondition: 'with anti-seize' }),
        clip: torque('5.5 N.m', { name: 'Clips', why: 'new clips' }),
      },
    };
    expect(compareIssues(older, newer).map((c) => [c.id, c.change, c.was, c.is, c.why])).toEqual([
      ['feet', 'changed', '40 N.m', '38 N.m', 'gaskets crept'],
      ['cover', 'changed', '6.5 N.m', '6.5 N.m', 'gaskets crept'],
      ['clip', 'added', null, '5.5 N.m', 'new clips'],
      ['lid', 'withdrawn', '20 N.m', null, 'gaskets crept'],
    ]);
    expect(compareIssues(newer, newer)).toEqual([]);
  });

  test('the reason of an earlier change is not given as the reason of this one', () => {
    const newer = {
      values: { ...older.values, feet: torque('38 N.m', { why: 'an older reason' }) },
    };
    expect(compareIssues(older, newer)[0]?.why).toBeNull();
  });
});
