// `cooler` by effectiveness grids, by what can not be, and by laws.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { carry } from '../quantity/carry.ts';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { cooler } from './cooler.ts';
import { coolerInput } from './cooler-model.ts';
import { type Arrangement, effectivenessOf, meanDifference, ntuOf } from './exchanger.ts';
import grids from './tables/exchangers.computed.json' with { type: 'json' };

const options = { seed: 20261125, numRuns: process.env.LONG ? 2_000 : 200 };

const solve = (raw: unknown) => carry(coolerInput.parse(raw), cooler);
function solved(raw: unknown) {
  const answer = solve(raw);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.result;
}
const refused = (raw: unknown) => {
  const answer = solve(raw);
  return answer.ok ? [] : answer.problems;
};
const value = (one: { readonly value: number } | null) => one?.value ?? Number.NaN;
const off = (found: number, wanted: number) => Math.abs(found / wanted - 1);

const counterflow: Arrangement = { kind: 'counterflow' };
const shell = (shells: number): Arrangement => {
  return { kind: 'shell-and-tube', shells, tubePasses: 2 * shells };
};
const cross = (hotMixed: boolean, coldMixed: boolean): Arrangement => {
  return { kind: 'crossflow', hotMixed, coldMixed };
};
const cp = (heatCapacity: number) => ({ fluid: { heatCapacity } });
const steam = (kJ: number) => ({ fluid: { latentHeat: kJ } });

describe('grids (28 states; closed forms verified by independent numerical solutions)', () => {
  test.each([
    ['counterflow', counterflow],
    ['parallel', { kind: 'parallel' }],
    ['shell1_tube2', shell(1)],
    ['shell2_tube4', shell(2)],
    ['cross_both_unmixed_exact_series', cross(false, false)],
    ['cross_Cmax_mixed', cross(false, true)],
    ['cross_Cmin_mixed', cross(true, false)],
  ] as const)('%s', (name, arrangement) => {
    for (const row of grids.effectiveness.rows) {
      const streams = { hot: row.C_ratio, cold: 1 };
      const share = effectivenessOf(arrangement, row.NTU, streams);
      expect(Math.abs(share - row[name])).toBeLessThan(6e-10);
      expect(off(ntuOf(arrangement, share, streams) ?? 0, row.NTU)).toBeLessThan(1e-8);
    }
  });

  test('the usual approximation for crossflow is not what is used', () => {
    const worst = grids.effectiveness.rows.map((row) =>
      Math.abs(row.cross_both_unmixed_exact_series - row.cross_both_unmixed_approx),
    );
    expect(Math.max(...worst)).toBeGreaterThan(1e-3);
  });

  test('correction of one and two shells', () => {
    for (const { shells, R, P, F } of grids.F.rows) {
      // R = fall of the hot side over rise of the cold; P = rise over the greatest difference.
      const ends = { hotIn: 100, coldIn: 0, coldOut: 100 * P, hotOut: 100 - 100 * P * R };
      const streams = { hot: 1 / (P * R), cold: 1 / P };
      const share = Math.max(P, P * R);
      const ntu = ntuOf(shell(shells), share, streams) ?? Number.NaN;
      const found = (100 * share) / (ntu * (meanDifference('shell-and-tube', ends) ?? 0));
      expect(Math.abs(found - F)).toBeLessThan(2e-6);
    }
  });

  test('plates, one pass beside two', () => {
    for (const { ntu, ratio, share } of grids.plate.rows) {
      const arrangement = { kind: 'plate', hotPasses: 1, coldPasses: 2 } as const;
      const streams = { hot: ratio, cold: 1 };
      // Printed of the single pass, which need not be the lesser flow.
      const least = Math.min(ratio, 1) / ratio;
      const found = effectivenessOf(arrangement, ntu / least, streams) * least;
      expect(Math.abs(found - share)).toBeLessThan(1e-9);
    }
  });
});

describe('sea-water flow without a flow meter', () => {
  const raw = {
    hot: {
      ...{ fluid: { name: 'fresh water' }, flow: { value: 3.4, unit: 'kg/s', u: 0.08 } },
      in: { value: 78, unit: 'Cel', u: 0.25 },
      out: { value: 66.5, unit: 'Cel', u: 0.25 },
    },
    cold: {
      fluid: { name: 'sea water', salinity: 35 },
      in: { value: 28.6, unit: 'Cel', u: 0.25 },
      out: { value: 41.2, unit: 'Cel', u: 0.25 },
    },
  };

  test('flow and its uncertainty, heat capacity taken at the mean temperature', () => {
    const found = solved(raw);
    expect(found.solved).toContain('cold.flow');
    const wanted = (3.4 * 4_188.5 * 11.5) / (4_001 * 12.6);
    expect(off(value(found.cold.flow), wanted)).toBeLessThan(1e-3);
    const share = Math.hypot(0.08 / 3.4, (0.25 * Math.SQRT2) / 11.5, (0.25 * Math.SQRT2) / 12.6);
    expect(off(found.cold.flow?.u ?? 0, wanted * share)).toBeLessThan(0.01);
    expect(recheckWorking(found.working as Working)).toEqual([]);
  });

  test('a fluid beyond its range is refused', () => {
    const hot = { ...raw.cold, in: 90, out: 70, flow: 1 };
    expect(refused({ hot })).toMatchObject([{ path: 'hot/fluid' }]);
  });
});

describe('what can not be, and what is left open', () => {
  test.each([
    ['heat the wrong way', { hot: { in: 40, out: 80 }, cold: { in: 20, out: 30 } }],
    ['past the other inlet', { hot: { in: 80, out: 15 }, cold: { in: 20, out: 30 } }],
    [
      'parallel can not',
      { arrangement: 'parallel', hot: { in: 80, out: 40 }, cold: { in: 20, out: 50 } },
    ],
    [
      'one shell can not',
      { arrangement: shell(1), hot: { in: 80, out: 30 }, cold: { in: 20, out: 70 } },
    ],
    [
      'condensing that cools',
      { hot: { ...steam(2_000), in: 80, out: 70 }, cold: { in: 20, out: 30 } },
    ],
    ['nothing', { hot: { in: 80 } }],
    ['nothing at all', {}],
    [
      'sides that disagree',
      {
        hot: { ...cp(4_180), flow: 1, in: 80, out: 60 },
        cold: { ...cp(4_180), flow: 1, in: 20, out: 50 },
      },
    ],
  ])('%s', (_, raw) => {
    expect(refused(raw).length).toBeGreaterThan(0);
  });

  test('one side alone gives the duty, temperatures alone the difference', () => {
    const side = solved({ hot: { ...cp(4_180), flow: 1, in: 80, out: 60 } });
    expect(value(side.duty)).toBeCloseTo(83.6, 9);
    expect(side.lmtd).toBeNull();
    expect(side.notWorkedOut.map(({ output }) => output)).toContain('cold.in');
    const ends = solved({
      arrangement: 'counterflow',
      hot: { in: 80, out: 60 },
      cold: { in: 20, out: 35 },
    });
    expect(ends.duty).toBeNull();
    expect(value(ends.correction)).toBeCloseTo(1, 12);
  });
});

describe('laws', () => {
  const capacity = fc.double({ min: 200, max: 5e4, noNaN: true });
  const forms = fc.constantFrom<Arrangement>(
    counterflow,
    { kind: 'parallel' },
    shell(1),
    shell(3),
    cross(false, false),
    cross(true, false),
    cross(false, true),
    { kind: 'plate', hotPasses: 2, coldPasses: 1 },
  );

  test('what is left out is found again, and the working comes out', () => {
    const left = fc.constantFrom(
      'hot.out',
      'cold.out',
      'hot.in',
      'cold.in',
      'hot.flow',
      'cold.flow',
    );
    fc.assert(
      fc.property(
        forms,
        capacity,
        capacity,
        fc.double({ min: 0.1, max: 2.5, noNaN: true }),
        left,
        (a, h, c, n, name) => {
          const ua = n * Math.min(h, c);
          const base = {
            ...{ arrangement: a, U: 1_000, area: ua / 1_000 },
            hot: { ...cp(1_000), flow: h / 1_000, in: 90 },
            cold: { ...cp(1_000), flow: c / 1_000, in: 20 },
          };
          const all = solved(base);
          expect(recheckWorking(all.working as Working, 1e-8)).toEqual([]);
          const [side, field] = name.split('.') as ['hot' | 'cold', 'in' | 'out' | 'flow'];
          const full = {
            arrangement: a,
            U: 1_000,
            hot: { ...base.hot, out: value(all.hot.out) },
            cold: { ...base.cold, out: value(all.cold.out) },
          };
          const { [field]: _, ...rest } = full[side];
          const again = solved({ ...full, [side]: rest });
          expect(off(value(again[side][field]), value(all[side][field]))).toBeLessThan(1e-6);
          expect(off(value(again.area), ua / 1_000)).toBeLessThan(1e-5);
        },
      ),
      options,
    );
  });

  test('no arrangement beats counterflow, and more surface never cools less', () => {
    const rising = fc.constantFrom<Arrangement>(
      { kind: 'parallel' },
      shell(1),
      cross(false, false),
    );
    fc.assert(
      fc.property(
        rising,
        capacity,
        capacity,
        fc.double({ min: 0.01, max: 8, noNaN: true }),
        (a, h, c, n) => {
          const streams = { hot: h, cold: c };
          const share = effectivenessOf(a, n, streams);
          expect(share).toBeLessThanOrEqual(effectivenessOf(counterflow, n, streams) + 1e-12);
          expect(effectivenessOf(a, n * 1.1, streams)).toBeGreaterThanOrEqual(share - 1e-12);
        },
      ),
      options,
    );
  });
});
