// `pump-test` by printed examples of affinity and of net positive suction head.

import { describe, expect, test } from 'vitest';
import { pumpTestInput } from './pump-model.ts';
import { pumpTest } from './pump-test.ts';

function first(raw: unknown) {
  const answer = pumpTest(pumpTestInput.parse(raw));
  const one = answer.ok ? answer.result.readings[0] : undefined;
  if (one === undefined) throw new Error(JSON.stringify(answer));
  return one;
}

describe('affinity', () => {
  test('DOE-HDBK-1012/3-92 page 50: 400 gpm, 48 ft, 45 kW at twice the speed', () => {
    const reading = { speed: 1_800, flow: '400 gal/min', head: '48 ft', power: 45 };
    const found = first({ curve: { speed: 3_600 }, readings: [reading] });
    const gallon = 0.003785411784 * 60;
    expect((found.flowAtCurveSpeed?.value ?? 0) / gallon).toBeCloseTo(800, 9);
    expect((found.headAtCurveSpeed?.value ?? 0) / 0.3048).toBeCloseTo(192, 9);
    expect(found.powerAtCurveSpeed?.value).toBeCloseTo(360, 9);
  });

  test('Cengel and Cimbala 14-10, Daugherty and Franzini 17.2', () => {
    const reading = { speed: 600, flow: '2000 gal/min', head: '150 ft', power: 1 };
    const found = first({ curve: { speed: 1_200 }, readings: [reading] });
    expect(found.powerAtCurveSpeed?.value).toBeCloseTo(8, 12);
    expect((found.flowAtCurveSpeed?.value ?? 0) / 0.22712470704).toBeCloseTo(4_000, 6);
    expect((found.headAtCurveSpeed?.value ?? 0) / 0.3048).toBeCloseTo(600, 9);
  });
});

describe('net positive suction head', () => {
  // The printed height puts the pump where available and required are alike.
  const npsh = (raw: object, reading: object) =>
    first({ ...raw, readings: [reading] }).npshAvailable?.value;

  test('Munson, Young, Okiishi 12.3: at 7.65 ft it is the 15 ft required', () => {
    const [pound, foot] = [4.4482216152605, 0.3048];
    const density = (62.22 * pound) / foot ** 3 / 9.80665;
    const bore = (4 / 12) * foot;
    const speed = (0.5 * foot ** 3) / ((Math.PI / 4) * bore ** 2);
    const head = speed ** 2 / (2 * 9.80665);
    const weight = (density * 9.80665) / 1_000;
    const suction = -weight * (7.65 * foot + 20 * head + head);
    const fluid = { density, vapourPressure: '0.5069 psi' };
    const raw = { fluid, atmospheric: '14.7 psi', suctionBore: 1_000 * bore };
    const found = npsh(raw, { suction, flow: 0.5 * foot ** 3 * 3_600 });
    expect((found ?? 0) / foot).toBeCloseTo(15, 1);
  });

  test('Schaschke 9.6: the level that leaves 5 m', () => {
    // 14.95 m³ of a tank 3 m wide, filled to 2.5 m, are drawn; the pump stands at 3 m.
    const level = 2.5 - 14.95 / ((Math.PI / 4) * 9);
    const suction = -(970 * 9.81 * (3 - level + 0.5)) / 1_000;
    const fluid = { density: 970, vapourPressure: 18 };
    expect(npsh({ fluid, atmospheric: 0.94 * 101.3 }, { suction })).toBeCloseTo(5, 1);
  });

  test('Khan 12.5: 4.02 m of lift leave 0.08 of 60 m', () => {
    const suction = -(1_000 * 9.81 * (4.02 + 1)) / 1_000;
    const fluid = { density: 1_000, vapourPressure: 1.707 };
    expect(npsh({ fluid, atmospheric: 98 }, { suction })).toBeCloseTo(0.08 * 60, 1);
  });

  test('Schaschke 9.8: the notebook rounds 4/3 to 1.33 and puts the level 40 mm too high', () => {
    const required = 2.8 * 0.14 ** (4 / 3) * 30;
    const at = (level: number) => {
      const suction = 50 - 101.325 + (992 * 9.80665 * (level - 0.2)) / 1_000;
      return npsh({ fluid: { density: 992, vapourPressure: 7.38 } }, { suction }) ?? 0;
    };
    expect(Math.abs(at(1.92679) - required)).toBeLessThan(0.005);
    expect(at(1.967) - required).toBeGreaterThan(0.035);
  });

  test('Arasu 8.19 and Douglas 25.9: barometer and vapour alone', () => {
    const mercury = 13.6 * 9.80665;
    const site = (metres: number, vapourPressure: number) => {
      const fluid = { density: 1_000, vapourPressure };
      return npsh({ fluid, atmospheric: metres * mercury }, { suction: 0 }) ?? 0;
    };
    expect(site(0.75, 1.8) - site(0.62, 0.83)).toBeCloseTo(1.67, 2);
    // Thoma's figure: 3.5 m of lift and velocity head at 36 m.
    expect((site(0.75, 1.8) - 6.7) / 36).toBeCloseTo(0.0921, 1);
    const fluid = { density: 1_000, vapourPressure: 0.35 };
    const free = npsh({ fluid, atmospheric: 10.3 * 9.80665 }, { suction: 0 }) ?? 0;
    expect(free - 152 * (0.45 / 3.2) ** (4 / 3)).toBeCloseTo(-0.851, 2);
  });
});
