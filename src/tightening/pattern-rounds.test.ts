// Checks the rounds of a joint: usual passes, order of each, and what is refused.

import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import { ringOrder } from './pattern.ts';
import { type PatternResult, pattern, patternInput } from './pattern-rounds.ts';

function done(raw: unknown): PatternResult {
  const answer = pattern(patternInput.parse(raw));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.result;
}

function refused(raw: unknown): string[] {
  const answer = pattern(patternInput.parse(raw));
  if (answer.ok) throw new Error('it was taken');
  return answer.problems.map(({ path }) => path);
}

describe('rounds', () => {
  test('rounds of 30, 60, 100 % and once round in order: a public procedure, two sites', () => {
    const { rounds } = done({ bolts: 8, layout: 'ring' });
    expect(rounds.map(({ fraction, order }) => [fraction, order])).toEqual([
      [0.3, 'cross'],
      [0.6, 'cross'],
      [1, 'cross'],
      [1, 'circle'],
    ]);
    for (const { order, sequence } of rounds) {
      expect(sequence).toEqual(order === 'cross' ? ringOrder(8) : [1, 2, 3, 4, 5, 6, 7, 8]);
    }
  });

  test('own rounds, in whatever way a share is written, with and without the circle', () => {
    const given = { bolts: 4, layout: 'ring', rounds: ['20 %', 0.4, 0.8, 1] };
    expect(done(given).rounds.map(({ fraction }) => fraction)).toEqual([0.2, 0.4, 0.8, 1, 1]);
    const without = done({ ...given, circleRound: false });
    expect(without.rounds).toHaveLength(4);
    expect(without.cautions).toEqual([expect.stringContaining('Without a last round')]);
    const short = done({ bolts: 4, layout: 'ring', rounds: [0.5], circleRound: false });
    expect(short.cautions.join(' ')).toContain('not tight after them');
  });

  test('every ring from 1 to 64: its working comes out, its source is what it claims', () => {
    for (let bolts = 1; bolts <= 64; bolts += 1) {
      const { working, cautions } = done({ bolts, layout: 'ring' });
      expect(recheckWorking(working)).toEqual([]);
      const read = [4, 8, 16].includes(bolts);
      expect(cautions.length === 0).toBe(read || bolts < 4);
      expect(working.some(({ source }) => source.kind === 'published')).toBe(read);
    }
  });

  test('rows, a rim, a filled rectangle and positions', () => {
    expect(done({ layout: { kind: 'rows', rows: 2, columns: 3 } }).rounds[0]?.sequence).toEqual([
      2, 5, 1, 6, 3, 4,
    ]);
    const square = { kind: 'rectangle', rows: 3, columns: 3 };
    expect(done({ layout: square }).rounds[0]?.sequence).toEqual([2, 6, 4, 8, 1, 5, 3, 7]);
    const filled = done({ layout: square, bolts: 9 });
    expect(filled.rounds[0]?.sequence.slice(0, 3)).toEqual([5, 2, 8]);
    const corners = [[0, 0], ['4 cm', 0], [40, 40], { x: 0, y: 40 }];
    for (const given of [
      { positions: corners },
      { layout: corners },
      { layout: { kind: 'positions', mm: corners } },
    ]) {
      expect(done(given).rounds[0]?.sequence.slice(0, 2)).toEqual([1, 3]);
    }
    for (const { working } of [done({ layout: square }), filled]) {
      expect(recheckWorking(working)).toEqual([]);
    }
  });
});

describe('bad input', () => {
  test.each([
    ['no layout', { bolts: 6 }, ['layout']],
    ['no count', { layout: 'ring' }, ['bolts']],
    [
      'a count that does not fit',
      { bolts: 5, layout: { kind: 'rows', rows: 2, columns: 2 } },
      ['bolts'],
    ],
    ['too many', { layout: { kind: 'rows', rows: 200, columns: 2 } }, ['bolts']],
    ['twice', { bolts: 4, layout: 'ring', positions: [[0, 0]] }, ['positions']],
    [
      'one place for two',
      {
        positions: [
          [0, 1],
          [3, 3],
          [0, 1],
        ],
      },
      ['positions/2'],
    ],
    [
      'falling rounds',
      { bolts: 4, layout: 'ring', rounds: [0.6, 0.3, 1, 0.5] },
      ['rounds/1', 'rounds/3'],
    ],
  ])('%s', (_, raw, paths) => expect(refused(raw)).toEqual(paths));

  test.each([
    { bolts: 0, layout: 'ring' },
    { bolts: 6.5, layout: 'ring' },
    { bolts: 6, layout: 'star' },
    { bolts: 6, layout: 'ring', rounds: [] },
    { bolts: 6, layout: 'ring', rounds: [1.2] },
    { bolts: 6, layout: 'ring', rounds: [0] },
    { bolts: 300, layout: 'ring' },
  ])('%j does not pass the border', (raw) => {
    expect(patternInput.safeParse(raw).success).toBe(false);
  });
});
