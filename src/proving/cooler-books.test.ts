// `cooler` by printed examples of textbooks, within the rounding of their print.

import { describe, expect, test } from 'vitest';
import { carry } from '../quantity/carry.ts';
import { cooler } from './cooler.ts';
import { coolerInput } from './cooler-model.ts';
import type { Arrangement } from './exchanger.ts';

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

const shell = (shells: number): Arrangement => {
  return { kind: 'shell-and-tube', shells, tubePasses: 2 * shells };
};
const cross = (hotMixed: boolean, coldMixed: boolean): Arrangement => {
  return { kind: 'crossflow', hotMixed, coldMixed };
};
const cp = (heatCapacity: number) => ({ fluid: { heatCapacity } });
const steam = (kJ: number) => ({ fluid: { latentHeat: kJ } });

describe('textbook examples, through public notebooks that recompute them', () => {
  test('Cengel 11-3: steam condenser', () => {
    const found = solved({
      arrangement: 'counterflow',
      hot: { ...steam(2_431), in: 30 },
      cold: { ...cp(4_184), in: 14, out: 22 },
      ...{ area: 45, U: 2_100 },
    });
    expect(value(found.lmtd)).toBeCloseTo(11.54156, 5);
    expect(value(found.duty)).toBeCloseTo(1_090.67745, 5);
    expect(value(found.cold.flow)).toBeCloseTo(32.58477, 5);
    expect(value(found.hot.flow)).toBeCloseTo(0.448654, 6);
  });

  test('Cengel 11-4 and 11-8: the print rounds the heat up to 301 kW', () => {
    const found = solved({
      arrangement: 'counterflow',
      hot: { ...cp(4_310), flow: 2, in: 160 },
      cold: { ...cp(4_180), flow: 1.2, in: 20, out: 80 },
      U: 640,
    });
    expect(value(found.duty)).toBeCloseTo(300.96, 9);
    expect(off(value(found.hot.out), 125.081206)).toBeLessThan(4e-5);
    expect(off(value(found.area), 5.113686)).toBeLessThan(2e-4);
    expect(value(found.effectiveness)).toBeCloseTo(0.428571, 6);
    expect(value(found.ntu)).toBeCloseTo(0.652362, 6);
    expect(value(found.area)).toBeCloseTo(5.112889, 6);
  });

  test.each([
    // id, arrangement, temperatures, printed correction, what the chart reading differs by
    ['Cengel 11-5', shell(2), [80, 40, 20, 50], 0.91, 0.002],
    ['Cengel 11-6', cross(false, false), [90, 65, 20, 40], 0.97, 0.001],
    ['Holman 10.5', shell(1), [110, 75, 35, 75], 0.81, 0.01],
    ['Holman 10.7', cross(true, false), [130, 110, 15, 85], 0.97, 0.025],
    ['Lienhard 3.4', shell(2), [454, 311, 305, 322], 0.92, 0.008],
    ['Sachdeva 12.8', shell(1), [18, 6.5, -1.1, 2.9], 0.97, 0.042],
    ['Sachdeva 12.11', shell(1), [95, 61, 38, 55], 0.9, 0.016],
    ['Theodore 16.5', shell(1), [150, 100, 50, 80], 0.925, 0.001],
    ['Theodore 16.6', shell(2), [400, 250, 100, 175], 0.985, 0.0015],
  ] as const)('%s: correction, read from a chart in print', (_, arrangement, t, wanted, chart) => {
    const found = solved({
      arrangement,
      hot: { in: t[0], out: t[1] },
      cold: { in: t[2], out: t[3] },
    });
    expect(off(value(found.correction), wanted)).toBeLessThan(chart);
  });

  test('the wrong answer of the notebook of Theodore 16.6 (106.6 °F) is not ours', () => {
    // It takes 75 °F as the second end; the ends are 225 and 150 °F, the mean 185.0 °F.
    const found = solved({
      arrangement: shell(2),
      hot: { in: '400 °F', out: '250 °F' },
      cold: { in: '100 °F', out: '175 °F' },
    });
    const fahrenheit = value(found.lmtd) * 1.8;
    expect(fahrenheit).toBeCloseTo(185, 0);
    expect(Math.abs(fahrenheit * value(found.correction) - 106.6)).toBeGreaterThan(70);
  });

  test('Theodore 16.5: mean difference 59.4 °F, corrected 54.98', () => {
    const found = solved({
      arrangement: shell(1),
      hot: { in: '150 °F', out: '100 °F' },
      cold: { in: '50 °F', out: '80 °F' },
    });
    expect(value(found.lmtd) * 1.8).toBeCloseTo(59.4, 1);
    expect(off(value(found.lmtd) * 1.8 * value(found.correction), 54.98)).toBeLessThan(1e-3);
  });

  test('Cengel 11-9: effectiveness by formula where the print reads 0.47 from a chart', () => {
    const found = solved({
      arrangement: { kind: 'shell-and-tube', shells: 1, tubePasses: 8 },
      hot: { ...cp(2_130), flow: 0.3, in: 150 },
      cold: { ...cp(4_180), flow: 0.2, in: 20 },
      ...{ U: 310, area: 1.759292 },
    });
    expect(value(found.ntu)).toBeCloseTo(0.85349, 5);
    // The notebook prints 853.49: it mixes kilowatts and watts.
    expect(value(found.ntu)).toBeLessThan(1);
    expect(value(found.effectiveness)).toBeCloseTo(0.4620209, 6);
    expect(off(value(found.effectiveness), 0.47)).toBeLessThan(0.018);
    expect(off(value(found.cold.out), 66.702033)).toBeLessThan(0.013);
    expect(off(value(found.hot.out), 88.9)).toBeLessThan(0.013);
  });

  test('Cengel 11-10: a quarter of a kilogram a second at effectiveness 0.75', () => {
    const water = { ...cp(4_180), flow: 0.25 };
    const found = solved({
      ...{ hot: { ...water, in: 80 }, cold: { ...water, in: 15 }, effectiveness: 0.75 },
    });
    expect(value(found.duty) / 0.75).toBeCloseTo(67.925, 9);
  });

  test('Holman 10.3: fouling 0.0002 takes 28 % of the transfer', () => {
    const found = solved({ cleanU: 1_961, fouling: 0.0002 });
    expect(value(found.U)).toBeCloseTo(1_408.6, 1);
    expect(off(value(found.U), 1_409)).toBeLessThan(4e-4);
    expect(value(solved({ cleanU: 1_961, U: 1_409 }).fouling)).toBeCloseTo(0.0002, 6);
  });

  test('Holman 10.10: less water, and 10.13: air heater', () => {
    const water = 68 / 60;
    const sides = {
      arrangement: 'counterflow',
      hot: { ...cp(1_900), in: 110 },
      cold: { ...cp(4_180), in: 35 },
    };
    const first = solved({
      ...sides,
      hot: { ...sides.hot, out: 75 },
      cold: { ...sides.cold, flow: water, out: 75 },
      U: 320,
    });
    const next = solved({
      ...sides,
      hot: { ...sides.hot, flow: value(first.hot.flow) },
      cold: { ...sides.cold, flow: 40 / 60 },
      ...{ U: 320, area: value(first.area) },
    });
    expect(value(next.effectiveness)).toBeCloseTo(0.744, 2);
    expect(off(value(next.cold.out), 90.8)).toBeLessThan(5e-4);
    expect(off(value(next.duty), 155.5)).toBeLessThan(7e-4);
    const heater = solved({
      arrangement: shell(1),
      hot: { ...cp(2_100), flow: 3, in: 100 },
      cold: { ...cp(1_009), flow: 2, in: 20, out: 80 },
      U: 200,
    });
    expect(off(value(heater.area), 20.09)).toBeLessThan(3e-4);
  });

  test('Holman 10.14: area for effectiveness 0.6; its temperatures would need 0.667', () => {
    const raw = {
      arrangement: 'counterflow',
      hot: { in: 50, out: 50, ...steam(1_000) },
      cold: { ...cp(4_000), flow: 2.5, in: 20 },
      ...{ U: 1_000, effectiveness: 0.6 },
    };
    expect(value(solved(raw).area)).toBeCloseTo(9.16, 2);
    const halved = solved({
      ...{ ...raw, effectiveness: undefined, area: 9.16 },
      cold: { ...raw.cold, flow: 1.25 },
    });
    expect(value(halved.duty)).toBeCloseTo(200 * 0.63, 0);
    const all = { ...raw, cold: { ...raw.cold, out: 40 }, duty: 200 };
    expect(refused(all)[0]?.why).toContain('disagrees');
  });

  test('Incropera 11.3 and 11.5, Lienhard 3.5', () => {
    const finned = solved({
      arrangement: cross(false, false),
      hot: { in: 300, out: 100 },
      cold: { ...cp(4_197), flow: 1, in: 35, out: 125 },
      U: 100,
    });
    expect(off(value(finned.effectiveness), 0.75)).toBeLessThan(0.0064);
    expect(off(value(finned.ntu), 2.1)).toBeLessThan(0.01);
    expect(off(value(finned.area), 39.66)).toBeLessThan(0.01);
    const condenser = solved({
      duty: '2000000 kW',
      hot: { ...steam(2_383), in: 50 },
      cold: { ...cp(4_179), flow: 30_000, in: 20 },
    });
    expect(off(value(condenser.cold.out), 36)).toBeLessThan(0.002);
    const along = solved({
      arrangement: 'parallel',
      hot: { ...cp(1_000), flow: 10, in: 150 },
      cold: { ...cp(1_000), flow: 20, in: 40 },
      ...{ area: 30, U: 500 },
    });
    expect(off(value(along.effectiveness), 0.596)).toBeLessThan(7e-4);
    expect(off(value(along.duty), 655.6)).toBeLessThan(7e-4);
    expect(off(value(along.hot.out), 84.44)).toBeLessThan(6e-4);
    expect(off(value(along.cold.out), 72.78)).toBeLessThan(4e-4);
  });

  test('Sachdeva 12.3, 12.4, 12.6, 12.12, 12.15, 12.17', () => {
    const oil = solved({
      arrangement: 'counterflow',
      hot: { ...cp(2_095), flow: '10000 kg/h', in: 80, out: 50 },
      cold: { ...cp(4_180), flow: '8000 kg/h', in: 25 },
      U: 300,
    });
    expect(off(value(oil.area), 19.23)).toBeLessThan(3e-3);
    const ends = {
      hot: { ...cp(2_500), flow: 1, in: 360, out: 300 },
      cold: { in: 30, out: 200 },
      U: 800,
    };
    expect(value(solved({ ...ends, arrangement: 'parallel' }).area)).toBeCloseTo(0.973, 3);
    expect(value(solved({ ...ends, arrangement: 'counterflow' }).area)).toBeCloseTo(0.892, 3);
    const boiler = solved({
      arrangement: 'counterflow',
      hot: { ...steam(2_200), in: 120 },
      cold: { ...cp(4_186), flow: '1000 kg/h', in: 20, out: 90 },
      U: 1_800,
    });
    expect(off(value(boiler.area), 0.78)).toBeLessThan(0.004);
    expect(off(3_600 * value(boiler.hot.flow), 133.2)).toBeLessThan(1e-4);
    const along = solved({
      arrangement: 'parallel',
      hot: { ...cp(3_350), flow: '250 kg/h', in: 120 },
      cold: { ...cp(4_186), flow: '1000 kg/h', in: 10 },
      ...{ U: 1_160, area: 0.25 },
    });
    expect(off(value(along.effectiveness), 0.647)).toBeLessThan(2e-3);
    expect(off(value(along.cold.out), 24.23)).toBeLessThan(1e-3);
    expect(off(value(along.hot.out), 48.87)).toBeLessThan(2e-3);
    const air = solved({
      arrangement: cross(false, false),
      hot: { ...cp(1_010), flow: '4000 kg/h', in: 40 },
      cold: { ...cp(4_180), flow: '4600 kg/h', in: 5 },
      ...{ U: 150, area: 25 },
    });
    expect(off(value(air.effectiveness), 0.92)).toBeLessThan(0.005);
    const warmer = solved({
      arrangement: 'counterflow',
      hot: { ...steam(2_200), in: 120 },
      cold: { ...cp(4_180), flow: 1, in: 20, out: 50 },
      U: 1_000,
    });
    const colder = solved({
      arrangement: 'counterflow',
      hot: { ...steam(2_200), in: 120 },
      cold: { ...cp(4_180), flow: 1, in: 15 },
      ...{ U: 1_000, area: value(warmer.area) },
    });
    expect(value(colder.cold.out)).toBeCloseTo(46.5, 1);
  });

  test('Rajput 17.38: heat to the cooling water of a diesel, 2332 kJ a minute', () => {
    const found = solved({ cold: { ...cp(4_180), flow: 15.5 / 60, in: 20, out: 56 } });
    expect(off(60 * value(found.duty), 2_332)).toBeLessThan(3e-4);
  });
});
