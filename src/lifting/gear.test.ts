// Slings by a vector sum that shares nothing with the formula; gear by what is marked on it.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import { type Tool, toolSchema } from '../tools/tool.ts';
import { chooseGear, gearAgainst } from './gear.ts';
import { legLoads } from './sling.ts';

const SEED = 20261126;
const options = { seed: SEED, numRuns: process.env.LONG ? 5_000 : 500 };

type Vector = readonly [number, number, number];

/** Along a leg, from the load to the hook: so far from straight up, so far round. */
const along = (deg: number, round: number): Vector => {
  const tip = Math.tan((deg * Math.PI) / 180);
  const turn = (round * Math.PI) / 180;
  const [x, y, z] = [tip * Math.cos(turn), tip * Math.sin(turn), 1];
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
};

const sum = (pulls: readonly (readonly [number, Vector])[]): Vector =>
  pulls.reduce<Vector>(
    ([x, y, z], [pull, [dx, dy, dz]]) => [x + pull * dx, y + pull * dy, z + pull * dz],
    [0, 0, 0],
  );

const balances = (weight: number, pulls: readonly (readonly [number, Vector])[]): boolean => {
  const [x, y, z] = sum(pulls);
  return Math.hypot(x, y, z - weight) < weight * 1e-9;
};

const weights = fc.double({ min: 0.1, max: 5_000, noNaN: true });
const angles = fc.double({ min: 0.1, max: 84, noNaN: true });

describe(`slings, seed ${SEED}`, () => {
  test('two unlike legs: the pulls add up to the weight, straight up', () => {
    fc.assert(
      fc.property(weights, angles, angles, (weight, a, b) => {
        const found = legLoads(weight, 2, [a, b]);
        const [one = 0, two = 0] = found?.loadsKg ?? [];
        const pulls = [
          [one, along(a, 0)],
          [two, along(b, 180)],
        ] as const;
        expect(balances(weight, pulls)).toBe(true);
        const off = [[one * 1.01, along(a, 0)], pulls[1]] as const;
        expect(balances(weight, off)).toBe(false);
        expect(recheckWorking(found?.working ?? [])).toEqual([]);
      }),
      options,
    );
  });

  test.each([2, 3, 4])('%d legs alike, evenly round; of four, two hold it all', (legs) => {
    fc.assert(
      fc.property(weights, angles, (weight, deg) => {
        const found = legLoads(weight, legs, [deg]);
        const loads = found?.loadsKg ?? [];
        expect(loads).toHaveLength(legs);
        const holding = legs === 4 ? 2 : legs;
        const pulls = loads
          .slice(0, holding)
          .map((pull, i) => [pull, along(deg, (360 * i) / holding)] as const);
        expect(balances(weight, pulls)).toBe(true);
        expect(found?.tensionN).toBeCloseTo(Math.max(...loads) * 9.80665, 6);
        expect(recheckWorking(found?.working ?? [])).toEqual([]);
      }),
      options,
    );
  });

  test('an angle not given is asked for; one leg hangs straight down', () => {
    expect(legLoads(40, 2, [])).toBeNull();
    expect(legLoads(40, 1, [20])).toBeNull();
    expect(legLoads(40, 2, [95])).toBeNull();
    expect(legLoads(40, 1, [])?.loadsKg).toEqual([40]);
  });

  test('worked by hand: 62 kg on two legs at 30° is 35.8 kg a leg, 351 N', () => {
    // 62/(2 × 0.866025) = 35.7957; × 9.80665 = 351.04.
    const found = legLoads(62, 2, [30]);
    expect(found?.loadsKg[0]).toBeCloseTo(35.7957, 3);
    expect(found?.tensionN).toBeCloseTo(351.04, 1);
  });
});

const sling = (id: string, more: object): Tool =>
  toolSchema.parse({ kind: 'sling', id, name: id, safeLoad: 500, ...more });

const sound = { examinedOn: '2026-03-09', intervalMonths: 12, mostAngle: 45 };
const need = { kind: 'sling', count: 1, bearsKg: 100, angleDeg: 30 } as const;
const on = '2026-11-25';

describe('gear', () => {
  test.each([
    ['marked below the load', { ...sound, safeLoad: 99 }, 'marked 99 kg, must bear 100 kg'],
    ['out of date', { ...sound, examinedOn: '2025-11-24' }, 'out of date'],
    ['never examined', { mostAngle: 45 }, 'not known: examined'],
    ['no interval', { ...sound, intervalMonths: undefined }, 'not known: months'],
    ['pulled wider than marked', { ...sound, mostAngle: 20 }, 'marked for 20° at most'],
    ['no angle marked', { ...sound, mostAngle: undefined }, 'not known: the angle'],
  ])('%s: not used, and why', (_, more, why) => {
    const { chosen, against, missing } = chooseGear(
      [need],
      [sling('s', more)],
      on,
      new Set(),
    )[0] ?? {
      chosen: null,
      against: [],
      missing: 0,
    };
    expect(chosen).toEqual([]);
    expect(missing).toBe(1);
    expect(against.flatMap((one) => one.why).join('; ')).toContain(why);
  });

  test(`nothing chosen is weaker than its load or taken twice, seed ${SEED}`, () => {
    const loads = fc.array(fc.integer({ min: 1, max: 900 }), { maxLength: 6 });
    fc.assert(
      fc.property(loads, fc.integer({ min: 1, max: 3 }), weights, (marked, count, bearsKg) => {
        const tools = marked.map((kg, i) => sling(`s${i}`, { ...sound, safeLoad: kg }));
        const wanted = { ...need, count, bearsKg };
        const taken = new Set(['s0']);
        const [found] = chooseGear([wanted], tools, on, taken);
        const ids = (found?.chosen ?? []).map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        expect(ids).not.toContain('s0');
        for (const tool of tools)
          if (ids.includes(tool.id) && tool.kind === 'sling')
            expect(gearAgainst(tool, wanted, on)).toEqual([]);
        const able = marked.filter((kg, i) => i > 0 && kg >= bearsKg).length;
        expect(ids.length).toBe(Math.min(count, able));
        expect(found?.missing).toBe(count - ids.length);
      }),
      options,
    );
  });
});
