// Hours since last done, on figures added up by hand.

import { expect, test } from 'vitest';
import { sinceLastDone } from './since.ts';

const interval = { shown: '2000 h', issue: '3', date: '2031-01-10', authority: 'the maker' };
const readings = [
  { at: '2031-03-14T06:00:00Z', hours: 9_310 },
  { at: '2031-01-02T06:00:00Z', hours: 8_120.5 },
];

test('the difference of the latest reading and that of the last time, in any order given', () => {
  const done = [
    { at: '2029-05-01T00:00:00Z', hours: 4_000 },
    { at: '2030-06-01T00:00:00Z', hours: 7_960 },
  ];
  const there = sinceLastDone({ readings, done, interval });
  expect(there.sinceHours).toBe(1_350);
  expect(there.interval?.shown).toBe('2000 h');
  expect(there.working.at(-1)?.expression).toBe('h1 - h0');
  const back = sinceLastDone({
    readings: [...readings].reverse(),
    done: done.toReversed(),
    interval,
  });
  expect(back).toEqual(there);
});

test.each([
  ['no record of it being done', { readings, done: [] }],
  [
    'hours were not read when it was last done',
    { readings, done: [{ at: '2030-06-01T00:00:00Z', hours: null }] },
  ],
  [
    'no reading of the running hours',
    { readings: [], done: [{ at: '2030-06-01T00:00:00Z', hours: 10 }] },
  ],
  [
    'the latest reading is below that of the last time: the meter was changed or misread',
    { readings, done: [{ at: '2030-06-01T00:00:00Z', hours: 9_311 }] },
  ],
])('says "%s" and gives no figure', (why, input) => {
  const answer = sinceLastDone({ ...input, interval });
  expect(answer.why).toBe(why);
  expect(answer.sinceHours).toBeNull();
  expect(answer.working).toEqual([]);
});
