// `boxup calc` as it is called: what goes to which stream and how it ends.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import removalTable from '../removal/tables/andor_removal_open.json' with { type: 'json' };
import sequenceTable from '../removal/tables/andor_sequence_open.json' with { type: 'json' };

const main = join(import.meta.dirname, 'main.ts');

function calc(args: readonly string[], input = '') {
  const run = spawnSync(process.execPath, [main, 'calc', ...args], { input, encoding: 'utf8' });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

const good = { cost: [3, 4], blockers: [[[1]], []], targets: [0] };

describe('boxup calc', () => {
  test('without a name: the list, a line each', () => {
    const { code, out } = calc([]);
    expect(code).toBe(0);
    expect(out.trim().split('\n')[0]).toMatch(/^removal +\S/);
  });

  test('a case from a file: one object on standard output, 0', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'calc-')), 'case.json');
    writeFileSync(file, JSON.stringify(good));
    const { code, out, err } = calc(['removal', '--in', file, '--json']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toMatchObject({ feasible: true, minutes: { value: 7, unit: 'min' } });
    expect(JSON.parse(out).authority).toBe(AUTHORITY_LINE);
  });

  test.each([
    ['bad JSON', ['removal', '--in', '-'], '{'],
    ['a bad case', ['removal', '--in', '-'], '{"cost": []}'],
    ['no such calculation', ['removel', '--in', '-'], '{}'],
    ['no case', ['removal'], ''],
    ['no such file', ['removal', '--in', 'no-such-file.json'], ''],
  ])('%s: problems on standard error, 2', (_, args, input) => {
    const { code, out, err } = calc(args, input);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(JSON.parse(err).error.problems.length).toBeGreaterThan(0);
  });

  test('lines: a bad one stands in its place, the rest go on, 2 at the end', () => {
    const [first, last] = ['a', 'c'].map((id) => JSON.stringify({ ...good, id }));
    const input = `${first}\nxx\n${last}\n`;
    const { code, out } = calc(['removal', '--lines', '--in', '-'], input);
    const lines = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(code).toBe(2);
    expect(lines).toMatchObject([{ id: 'a' }, { error: { problems: [{}] } }, { id: 'c' }]);
  });

  test('every generated instance: feasible, minutes, proven', () => {
    const cases = [...removalTable.instances, ...sequenceTable.instances];
    const input = cases.map((one) => JSON.stringify(one)).join('\n');
    const { code, out } = calc(['removal', '--lines', '--in', '-'], input);
    expect(code).toBe(0);
    const found = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(
      found.map(({ id, feasible, minutes, proven }) => [
        id,
        feasible,
        minutes?.value ?? null,
        proven,
      ]),
    ).toEqual(cases.map(({ id, optimum }) => [id, optimum !== null, optimum, true]));
  });

  test('the schemas of input and output', () => {
    for (const args of [[], ['--output']]) {
      const { code, out } = calc(['removal', '--schema', ...args]);
      expect(code).toBe(0);
      expect(JSON.parse(out).$schema).toMatch(/2020-12/);
    }
  });

  test('a limit in seconds ends the search and still gives an answer with its bound', () => {
    const count = 600;
    const at = (n: number) => (((n * 7_919) % count) + count) % count;
    const cost = Array.from({ length: count }, (_, n) => 1 + ((n * 31) % 17));
    const blockers = cost.map((_, n) =>
      n % 9 === 0 ? [] : [[at(n + 1), at(n * 3 + 2)], [at(n * 5 + 3), at(n * 2 + 7)], [at(n + 11)]],
    );
    const input = JSON.stringify({
      cost,
      blockers,
      targets: [1, 2, 3, 4, 5],
      limits: { seconds: 0.2 },
    });
    const { code, out } = calc(['removal', '--in', '-'], input);
    expect(code).toBe(0);
    const found = JSON.parse(out);
    expect(found.bound.value).toBeLessThanOrEqual(found.minutes.value);
    expect(found.proven).toBe(found.gap === 0);
  });

  test('help carries the authority line and an example to begin with', () => {
    const { code, out } = calc(['--help']);
    expect(code).toBe(0);
    expect(out).toContain(AUTHORITY_LINE);
    expect(out).toContain('boxup calc removal');
  });
});
