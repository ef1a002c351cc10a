// Checks a wrench setting against published examples and against statics done with vectors.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import { convert } from '../quantity/units.ts';
import { randomFrom } from '../removal/seeded.ts';
import { adapterExamples } from './tables/adapter-examples.ts';
import { wrenchSettingInput } from './wrench-input.ts';
import { type WrenchSetting, wrenchSetting } from './wrench-setting.ts';

const runs = process.env.LONG === '1' ? 5_000 : 500;

function done(raw: unknown): WrenchSetting {
  const answer = wrenchSetting(wrenchSettingInput.parse(raw));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.result;
}

function refused(raw: unknown): string[] {
  const answer = wrenchSetting(wrenchSettingInput.parse(raw));
  if (answer.ok) throw new Error('it was taken');
  return answer.problems.map(({ path }) => path);
}

describe('moment balance', () => {
  test.each(adapterExamples)('$id follows $title', (example) => {
    const found = done(example.given)[example.output];
    const value = convert(found?.value ?? Number.NaN, 'N.m', example.unit);
    expect(value).toBeCloseTo(example.exact, 9);
    if (example.printed === null) return;
    expect(Math.abs(value - example.printed)).toBeLessThanOrEqual(example.rounding + 1e-9);
  });

  /**
   * Statics apart from the formula: the hand pushes at right angles to the wrench with the force
   * that makes the wrench read its setting; the moment at the bolt is a cross product.
   */
  function momentAtBolt(settingNm: number, L: number, E: number, degrees: number): number {
    const force = settingNm / L;
    const angle = (degrees / 180) * Math.PI;
    // The drive square is the origin, the hand at (-L, 0), the bolt at E along the adapter.
    const arm = [-L - E * Math.cos(angle), -E * Math.sin(angle)] as const;
    const push = [0, -force] as const;
    return arm[0] * push[1] - arm[1] * push[0];
  }

  test('gives back the torque at any angle, by vectors', () => {
    const lengths = fc.double({ min: 50, max: 1_500, noNaN: true });
    const share = fc.double({ min: 0, max: 0.9, noNaN: true });
    const angle = fc.double({ min: 0, max: 180, noNaN: true });
    const moment = fc.double({ min: 0.5, max: 2_000, noNaN: true });
    fc.assert(
      fc.property(moment, lengths, share, angle, (torque, L, part, adapterAngle) => {
        const given = { wrenchLength: L, adapterLength: L * part, adapterAngle };
        const one = done({ torque, ...given });
        const back = momentAtBolt(one.setting?.value ?? 0, L, L * part, adapterAngle);
        expect(back / torque).toBeCloseTo(1, 9);
        expect(recheckWorking(one.working)).toEqual([]);
        const other = done({ setting: one.setting?.value, ...given });
        expect((other.torque?.value ?? 0) / torque).toBeCloseTo(1, 9);
        expect(recheckWorking(other.working)).toEqual([]);
        expect(one.gripPoint?.value).toBe(L);
      }),
      { numRuns: runs, seed: 41_001 },
    );
  });

  test('the hand elsewhere gives another torque: L 400, E 50, hand 50 mm in', () => {
    const set = done({ torque: 80, wrenchLength: 400, adapterLength: 50, adapterAngle: 0 });
    expect(set.setting?.value).toBeCloseTo(71.11, 2);
    const moved = momentAtBolt(set.setting?.value ?? 0, 350, 50, 0);
    expect(moved).toBeCloseTo(81.27, 2);
    expect(set.cautions.join(' ')).toContain('400 mm from the drive');
  });

  test('a right angle changes nothing, whatever is not known of the lengths', () => {
    const square = { torque: '35.4 lbf·ft', adapterAngle: 90 };
    expect(done(square).setting).toEqual(done(square).torque);
    expect(done(square).setting?.given).toBe('35.4 lbf·ft');
    const known = done({ ...square, adapterLength: 60, wrenchLength: 300 });
    expect(known.setting).toEqual(known.torque);
    expect(known.factor).toEqual({ value: 1, unit: '1' });
  });

  test('straight back: turned 91.4 from 80', () => {
    const one = done({ torque: 80, wrenchLength: 400, adapterLength: 50, adapterAngle: 180 });
    expect(one.setting?.value).toBeCloseTo((80 * 400) / 350, 12);
  });
});

describe('the torque that turns the nut', () => {
  const adapter = { wrenchLength: 400, adapterLength: 100, adapterAngle: 0 };

  test('is added as AC 43.13-1B 7-40 says, unless the value includes it', () => {
    expect(done({ torque: 40, runDown: 6, ...adapter })).toMatchObject({
      torque: { value: 46 },
      setting: { value: expect.closeTo(46 * 0.8, 12) },
    });
    const included = done({ torque: 40, runDown: 6, includesRunDown: true, ...adapter });
    expect(included).toMatchObject({ torque: { value: 40 } });
    expect(recheckWorking(included.working)).toEqual([]);
  });

  test('with a setting given it is told what tightens', () => {
    const one = done({ setting: 40, runDown: 6, ...adapter });
    expect(one.torque?.value).toBeCloseTo(50, 12);
    expect(one.working.find(({ symbol }) => symbol === 'T_t')?.value).toBeCloseTo(44, 12);
    expect(one.cautions.join(' ')).toContain('44 N·m tighten it');
    expect(recheckWorking(one.working)).toEqual([]);
    expect(done({ setting: 5, runDown: 9 }).cautions.join(' ')).toContain('nothing is left');
  });
});

describe('the wrench', () => {
  const wrench = {
    min: 20,
    max: 100,
    tolerance: 0.04,
    calibratedOn: '2026-03-02',
    cyclesSince: 10,
  };
  const on = '2026-11-25';
  const judged = (more: object, torque = 60, day = on) =>
    done({ torque, wrench: { ...wrench, ...more }, on: day });

  test('in range, in date, within its cycles: usable, without a reason', () => {
    const one = judged({});
    expect(one).toMatchObject({ usable: true, reasons: [], cautions: [] });
    expect(one.notWorkedOut).toEqual([{ output: 'gripPoint', needs: ['wrenchLength'] }]);
    expect(recheckWorking(one.working)).toEqual([]);
  });

  test.each([
    ['below the least mark', { min: 65 }, 60, on, /below the wrench's least, 65 N·m/],
    ['above the greatest', { max: 50 }, 60, on, /above the wrench's greatest, 50 N·m/],
    ['below a fifth', { min: 10 }, 19.9, on, /20 % .* ISO 6789:2003/],
    ['13 months', { calibratedOn: '2025-11-24' }, 60, on, /in date for 12 months until 2026-11-24/],
    ['its own months', { intervalMonths: 6 }, 60, on, /6 months until 2026-09-02/],
    ['its cycles', { cyclesSince: 5_000 }, 60, on, /5000 cycles since, 5000 are its interval/],
    ['its own cycles', { cyclesSince: 300, intervalCycles: 250 }, 60, on, /250 are its interval/],
  ])('%s: not usable, and why', (_, more, torque, day, why) => {
    const one = judged(more, torque, day);
    expect(one.usable).toBe(false);
    expect(one.reasons).toEqual([expect.stringMatching(why)]);
  });

  test('the ends of range and date are still good', () => {
    for (const torque of [20, 100]) expect(judged({}, torque).usable).toBe(true);
    expect(judged({}, 60, '2027-03-02').usable).toBe(true);
    expect(judged({}, 60, '2027-03-03').usable).toBe(false);
    expect(judged({ cyclesSince: 4_999 }).usable).toBe(true);
  });

  test('where the editions of ISO 6789 contradict each other, both are told', () => {
    const one = judged({ min: 10 }, 15);
    expect(one.cautions.join(' ')).toMatch(/2003.*2017 \(5\.1\.3\)/);
    const rows = one.working.filter(({ symbol }) => ['W_lo', 'S_lo'].includes(symbol));
    expect(rows.map(({ value }) => value)).toEqual([10, 20]);
  });

  test('it is the setting that must lie in the range, not the torque', () => {
    const given = { torque: 110, wrenchLength: 400, adapterLength: 100, adapterAngle: 0 };
    expect(done({ ...given, wrench, on }).usable).toBe(true);
    expect(done({ ...given, adapterAngle: 180, wrench, on }).usable).toBe(false);
  });

  test('what is not known does not make it usable; what is known can speak against it', () => {
    const { calibratedOn: _, ...undated } = wrench;
    const asked = (raw: object) =>
      done(raw).notWorkedOut.find(({ output }) => output === 'usable')?.needs;
    expect(done({ torque: 60, wrench: undated, on }).usable).toBeNull();
    expect(asked({ torque: 60, wrench: undated, on })).toEqual(['wrench/calibratedOn']);
    expect(asked({ torque: 60, wrench })).toEqual(['on']);
    expect(asked({ torque: 60, wrench: {}, on })).toEqual([
      'wrench/min',
      'wrench/max',
      'wrench/calibratedOn',
    ]);
    expect(
      asked({ torque: 60, wrench: { ...wrench, intervalCycles: 900, cyclesSince: undefined }, on }),
    ).toEqual(['wrench/cyclesSince']);
    expect(done({ torque: 6, wrench: undated }).usable).toBe(false);
    expect(done({ wrench: { ...wrench, calibratedOn: '2020-01-01' }, on }).usable).toBe(false);
  });

  test('cycles nobody counted: judged by the date, and said', () => {
    const { cyclesSince: _, ...uncounted } = wrench;
    const one = done({ torque: 60, wrench: uncounted, on });
    expect(one.usable).toBe(true);
    expect(one.cautions).toEqual([expect.stringContaining('judged by the date alone')]);
  });
});

test('uncertainty follows a Monte Carlo of 40,000 draws, seed 41,002', () => {
  const random = randomFrom(41_002);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const given = { torque: [80, 1.2], wrenchLength: [400, 6], adapterLength: [90, 2] } as const;
  const angle = [50, 4] as const;
  const quantity = ([value, u]: readonly [number, number], unit: string) => ({ value, unit, u });
  const one = done({
    torque: quantity(given.torque, 'N.m'),
    wrenchLength: quantity(given.wrenchLength, 'mm'),
    adapterLength: quantity(given.adapterLength, 'mm'),
    adapterAngle: quantity(angle, 'deg'),
  });
  const draw = ([value, u]: readonly [number, number]) => value + u * normal();
  const drawn = Array.from({ length: 40_000 }, () => {
    const [T, L, E, a] = [
      draw(given.torque),
      draw(given.wrenchLength),
      draw(given.adapterLength),
      draw(angle),
    ];
    return (T * L) / (L + E * Math.cos((a * Math.PI) / 180));
  });
  const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
  const sd = Math.sqrt(drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / drawn.length);
  expect((one.setting?.u ?? 0) / sd).toBeCloseTo(1, 1);
  expect(Math.abs((one.setting?.u ?? 0) / sd - 1)).toBeLessThan(0.03);
});

describe('bad input is told with its place', () => {
  test.each([
    ['torque and setting', { torque: 80, setting: 70 }, ['setting']],
    ['least above greatest', { torque: 8, wrench: { min: 9, max: 5 } }, ['wrench/min']],
    [
      'no day',
      { torque: 8, wrench: { calibratedOn: '2026-02-30' }, on: '25.11.2026' },
      ['on', 'wrench/calibratedOn'],
    ],
    [
      'calibrated later',
      { torque: 8, wrench: { calibratedOn: '2027-01-01' }, on: '2026-01-01' },
      ['wrench/calibratedOn'],
    ],
    [
      'the bolt behind the hand',
      {
        torque: 8,
        wrenchLength: 100,
        adapterLength: 100,
        adapterAngle: 180,
      },
      ['adapterLength'],
    ],
    [
      'an adapter out of proportion',
      { torque: 8, wrenchLength: 400, adapterLength: '90 cm', adapterAngle: 0 },
      ['adapterLength'],
    ],
    ['all for the nut', { torque: 8, runDown: 8, includesRunDown: true }, ['runDown']],
    ['nothing to go by', { adapterLength: 60 }, ['']],
  ])('%s', (_, raw, paths) => expect(refused(raw)).toEqual(paths));

  test.each([
    ['angle', { torque: 8, adapterAngle: 181 }],
    ['angle', { torque: 8, adapterAngle: -1 }],
    ['torque', { torque: 0 }],
    ['length', { torque: 8, wrenchLength: '400 m' }],
    ['length', { torque: 8, adapterLength: -3 }],
    ['tolerance', { torque: 8, wrench: { tolerance: 4 } }],
    ['cycles', { torque: 8, wrench: { cyclesSince: 3.5 } }],
    ['field', { torque: 8, colour: 1 }],
  ])('%s: %j does not pass the border', (_, raw) => {
    expect(wrenchSettingInput.safeParse(raw).success).toBe(false);
  });

  test('part answers: the grip and the factor without any torque', () => {
    const one = done({ wrenchLength: 400, adapterLength: 50, adapterAngle: 0 });
    expect(one).toMatchObject({ setting: null, torque: null, gripPoint: { value: 400 } });
    expect(one.factor?.value).toBeCloseTo(8 / 9, 12);
    const half = done({ torque: 80, adapterLength: 50, adapterAngle: 30 });
    expect(half).toMatchObject({ setting: null, torque: { value: 80 }, factor: null });
    expect(half.notWorkedOut.slice(0, 2)).toEqual([
      { output: 'setting', needs: ['wrenchLength'] },
      { output: 'factor', needs: ['wrenchLength'] },
    ]);
  });
});
