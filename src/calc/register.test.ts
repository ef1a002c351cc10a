// The register: every calculation is in it, its example runs, and the border keeps the contract.

import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import {
  findCalculation,
  inputJsonSchema,
  listCalculations,
  outputJsonSchema,
  runCalc,
} from './register.ts';

const lent = { solver: solveWithHighs };
const run = (raw: unknown, name = 'removal') => runCalc(name, raw, lent);

async function problems(raw: unknown, name = 'removal') {
  const answer = await run(raw, name);
  if (answer.ok) throw new Error('it was taken');
  return answer.error.error.problems;
}

const plain = { cost: [3, 4], blockers: [[[1]], []], targets: [0] };

test('each calculation that has a file here is in the register', () => {
  const files = import.meta.glob<object>(
    ['./*.ts', '!./register.ts', '!./border.ts', '!./simple.ts', '!./*.test.ts'],
    {
      eager: true,
    },
  );
  expect(Object.keys(files).length).toBe(listCalculations().length);
  for (const exported of Object.values(files)) {
    expect(listCalculations().some((one) => Object.values(exported).includes(one))).toBe(true);
  }
});

describe.each(listCalculations().map((one) => [one.name, one] as const))('%s', (name, one) => {
  test('its example runs and its result is of the published shape', async () => {
    const answer = await run(one.example, name);
    expect(answer.ok).toBe(true);
    if (!answer.ok) return;
    const { authority, ...result } = answer.result;
    expect(authority).toBe(AUTHORITY_LINE);
    expect(z.union(one.results as [z.ZodType]).safeParse(result).error).toBeUndefined();
  });

  test('its schemas are JSON Schema 2020-12', () => {
    for (const schema of [inputJsonSchema(one), outputJsonSchema(one)]) {
      expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
      expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
    }
  });
});

test('removal: the worked case of its document', async () => {
  const answer = await run(findCalculation('removal')?.example);
  expect(answer.ok && answer.result).toMatchObject({
    minutes: { value: 39, unit: 'min' },
    proven: true,
    changes: 2,
    orderBound: 2,
  });
});

describe('the border', () => {
  test('id is echoed, what the contract names is ignored, in plain forms more', async () => {
    const more = { id: 'a1', source: 'x', how_obtained: 'y', title: 't', note: 1, meta: {} };
    const table = { n: 2, optimum: 7, sequence: [1, 0], answer: 7, kind: 'k', plant: 'p' };
    const answer = await run({ ...plain, ...more, ...table });
    expect(answer.ok && answer.result).toMatchObject({ id: 'a1', minutes: { value: 7 } });
    const full = { ...findCalculation('removal')?.example };
    expect((await run({ ...full, ...more })).ok).toBe(true);
    expect((await problems({ ...full, n: 3 })).map(({ path }) => path)).toEqual(['n']);
  });

  test('a part called note is a part', async () => {
    const parts = { note: { ways: [{ id: 'w', gives: 'off', minutes: 2, note: 'ignored' }] } };
    const answer = await run({ parts, joints: {}, targets: [{ part: 'note', as: 'off' }] });
    expect(answer.ok && answer.result).toMatchObject({ off: ['note'], minutes: { value: 2 } });
  });

  test('unknown fields are refused by name, all problems together', async () => {
    const found = await problems({ ...plain, cost: [3, -4], colour: 'red', size: 1 });
    expect(found.map(({ path }) => path).sort()).toEqual(['colour', 'cost/1', 'size']);
    for (const one of found) expect(one.why.length).toBeGreaterThan(5);
  });

  test('a figure with a unit is converted, a unit of something else refused', async () => {
    const answer = await run({ ...plain, cost: ['1.5 h', { value: 60, unit: 's' }] });
    expect(answer.ok && answer.result).toMatchObject({ minutes: { value: 91, unit: 'min' } });
    expect(await problems({ ...plain, cost: ['3 kg', 4] })).toMatchObject([{ path: 'cost/0' }]);
    expect(await problems({ ...plain, cost: ['3', 4] })).toMatchObject([{ path: 'cost/0' }]);
  });

  test.each([
    ['no object', [], ''],
    ['a number', 3, ''],
    ['no targets', { parts: {}, joints: {} }, 'targets'],
    ['no such part', { ...plain, targets: [2] }, 'targets/0'],
    ['lists of two lengths', { ...plain, blockers: [[]] }, 'blockers'],
    ['a broken index', { ...plain, targets: [0.5] }, 'targets/0'],
  ])('bad input: %s', async (_, raw, path) => {
    expect(await problems(raw)).toMatchObject([{ path }]);
  });

  test('a name that is not there', async () => {
    expect(await problems({}, 'removel')).toMatchObject([{ got: 'removel' }]);
  });

  test('infeasible is a result with why and no figure', async () => {
    const answer = await run({ cost: [1, 1], blockers: [[[1]], [[0]]], targets: [0] });
    expect(answer.ok && answer.result).toEqual({
      feasible: false,
      why: "part 0 can't come off: part 1 can't come off: part 0 waits for part 1 waits for part 0",
      proven: true,
      authority: AUTHORITY_LINE,
    });
  });

  test('no output holds NaN or Infinity', async () => {
    const answer = await run({ cost: [0], blockers: [[]], targets: [0] });
    expect(answer.ok && answer.result).toMatchObject({ gap: 0, minutes: { value: 0 } });
  });
});
