// Preload and torque against the tables of VDI 2230-1, ISO 16047's exact form, the old edition.

import { describe, expect, test } from 'vitest';
import { tighteningInput } from './model.ts';
import { scatterMethods } from './tables/scatter-methods.ts';
import faa from './tables/torque-tables.published.json' with { type: 'json' };
import tables from './tables/vdi2230.published.json' with { type: 'json' };
import { tightening } from './tightening.ts';
import { torquePerForceExactMm, torquePerForceMm } from './torque.ts';

type Row = readonly [thread: string, cls: string, mu: number, preloadKN: number, torqueNm: number];
const LIMIT = 0.015;

function solve(raw: object) {
  const answer = tightening(tighteningInput.parse(raw));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.result;
}

/** A fine thread has the head and the hole of its diameter, given by name. */
function at([thread, cls, mu]: Row) {
  const strengthClass = cls.replace('A2/A4', 'A4');
  const result = solve({ thread, strengthClass, frictionThread: mu, frictionHead: mu });
  return { preload: result.preload?.value ?? 0, torque: result.torque?.value ?? 0 };
}

/** Half of the last place that was printed, as a share of the figure. */
const rounding = (published: number): number => {
  const [, decimals = ''] = String(published).split('.');
  return 0.5 / 10 ** decimals.length / published;
};

function compare(rows: readonly Row[], limitFor: (row: Row, published: number) => number) {
  const outside: string[] = [];
  for (const row of rows) {
    const found = at(row);
    for (const [what, value, published] of [
      ['preload', found.preload, row[3]],
      ['torque', found.torque, row[4]],
    ] as const) {
      const off = value / published - 1;
      if (Math.abs(off) > limitFor(row, published)) {
        outside.push(`${row.slice(0, 3).join(' ')} ${what} ${published}`);
      }
    }
  }
  return outside;
}

const rowsOf = (rows: unknown) => rows as readonly Row[];

test(`${tables.coarse.title} (${tables.coarse.origin}): 168 rows within 1.5 %`, () => {
  expect(tables.coarse.rows.length).toBe(168);
  expect(compare(rowsOf(tables.coarse.rows), () => LIMIT)).toEqual([]);
});

test(`${tables.fine.title}, ${tables.fine.place} (read): 54 rows within 1.5 %`, () => {
  expect(tables.fine.rows.length).toBe(54);
  expect(compare(rowsOf(tables.fine.rows), () => LIMIT)).toEqual([]);
});

test(`${tables.small.title} (${tables.small.origin}): 1.5 % and rounding`, () => {
  const outside = compare(rowsOf(tables.small.rows), (_, published) => LIMIT + rounding(published));
  // Remembered as 4.6 N·m where the formula gives 4.36: doubtful, and named here.
  expect(outside).toEqual(['M4 10.9 0.12 torque 4.6']);
});

test(`${tables.stainless.title}, ${tables.stainless.place} (read): misprints named`, () => {
  expect(tables.stainless.rows.length).toBe(87);
  const outside = compare(
    rowsOf(tables.stainless.rows),
    (_, published) => LIMIT + rounding(published),
  );
  expect(outside).toEqual(['M5 A2/A4-50 0.1 torque 1.6', 'M30 A2/A4-50 0.3 torque 831']);
});

test('the edition of 1986 gives about a tenth less: it is not what is worked out here', () => {
  const rows = tables.before.rows as unknown as readonly [string, string, number, number][];
  const hard = rows.filter(([, cls]) => ['8.8', '10.9', '12.9'].includes(cls));
  expect(hard.length).toBe(15);
  for (const [thread, cls, preloadN] of hard) {
    const now = at([thread, cls, 0.14, 0, 0]).preload;
    expect(preloadN / 1_000 / now).toBeGreaterThan(0.86);
    expect(preloadN / 1_000 / now).toBeLessThan(0.96);
  }
});

test(`${tables.iso16047.title} (${tables.iso16047.origin})`, () => {
  for (const row of tables.iso16047.rows) {
    const read = solve({ thread: row.thread, frictionThread: row.mu, frictionHead: row.mu });
    const value = (symbol: string) =>
      read.working.find((one) => one.symbol === symbol)?.value ?? Number.NaN;
    const parts = {
      pitchMm: value('P'),
      pitchDiameterMm: value('d2'),
      bearingDiameterMm: value('DKm'),
    };
    expect(torquePerForceExactMm(parts, row.mu, row.mu)).toBeCloseTo(row.T_over_F_ISO16047, 3);
    expect(torquePerForceMm(parts, row.mu, row.mu)).toBeCloseTo(row.T_over_F_VDI, 3);
    expect(read.nutFactor?.value).toBeCloseTo(row.K_equiv, 3);
  }
});

test(`${tables.alpha.title}: least preload is greatest over the factor`, () => {
  for (const { FMmax_kN, alpha, FMmin_kN } of tables.alpha.rows) {
    const mu = { frictionThread: 0.14, frictionHead: 0.14 };
    const result = solve({ thread: 'M12', strengthClass: '8.8', ...mu, scatterFactor: alpha });
    expect(Math.abs((result.preload?.value ?? 0) / FMmax_kN - 1)).toBeLessThan(0.01);
    expect(Math.abs((result.preloadMin?.value ?? 0) / FMmin_kN - 1)).toBeLessThan(0.01);
  }
});

test(`${tables.scatter.title}, ${tables.scatter.place} (${tables.scatter.origin})`, () => {
  const listed = tables.scatter.rows.map(({ alpha, origin }) => [
    ...(alpha.split(' (')[0]?.split(' .. ').map(Number) ?? []),
    origin === 'read' ? 'published' : 'from memory',
  ]);
  expect(scatterMethods.map(({ low, high, source }) => [low, high, source.kind])).toEqual(listed);
});

describe('what is from memory says so', () => {
  test('the formula in every working that uses it', () => {
    const mu = { frictionThread: 0.12, frictionHead: 0.12 };
    const { working } = solve({ thread: 'M12', strengthClass: '8.8', ...mu });
    for (const symbol of ['FM', 'MA', 'MA_exact']) {
      const source = working.find((row) => row.symbol === symbol)?.source;
      expect(source?.kind).toBe('from memory');
    }
    expect(JSON.stringify(working)).toContain('2003 and later');
  });
});

test(`friction ranges hold the nut factors of ${faa.nutFactors.place}, Shigley 9th ed.`, () => {
  const factor = (name: string) => Number(faa.nutFactors.rows.find(([one]) => one === name)?.[1]);
  for (const [surface, published] of [
    ['as received', factor('non-plated, black finish')],
    ['as received', factor('zinc-plated')],
    ['oiled', factor('lubricated')],
    ['anti-seize', factor('anti-seize compound')],
  ] as const) {
    const { working } = solve({ thread: 'M12', strengthClass: '8.8', surface });
    const at = (symbol: string) =>
      working.find((row) => row.symbol === symbol)?.value ?? Number.NaN;
    // The table prints two digits.
    expect(at('MA_min') / (at('FM') * 12)).toBeLessThan(published + 0.005);
    expect(at('MA_max') / (at('FM') * 12)).toBeGreaterThan(published - 0.005);
  }
});

test(`${faa.faa.title}, ${faa.faa.place}: stored, and no nut factor makes it`, () => {
  // 40,000 psi on the stress area of 3/8-24 and of 7/16-20: one factor can't give both rows.
  const implied = (torque: number, area: number, diameter: number) =>
    torque / (40_000 * area * diameter);
  const low = faa.faa.fine.find(([name]) => name === '3/8-24')?.[1];
  const high = faa.faa.fine.find(([name]) => name === '7/16-20')?.[1];
  expect([low, high]).toEqual(['160-190', '450-500']);
  expect(implied(190, 0.0878, 0.375)).toBeLessThan(0.15);
  expect(implied(450, 0.1187, 0.4375)).toBeGreaterThan(0.21);
  expect(faa.faa.fine.length + faa.faa.coarse.length).toBe(25);
});
