// Faults in readings: a labelled stream, generated vessels, hand-made cases; nothing put right.

import { describe, expect, test } from 'vitest';
import { checkReadings, type Exchange } from './faults.ts';
import { DAY_MS } from './instant.ts';
import vessels from './tables/generated-vessels.json' with { type: 'json' };
import stream from './tables/run-time-stream.json' with { type: 'json' };

const START = Date.UTC(2026, 0, 1);
const daily = (...hours: readonly (number | null)[]) =>
  hours.map((each, day) => ({ ms: START + day * 7 * DAY_MS, hours: each }));
const named = (readings: Parameters<typeof checkReadings>[0], exchanges: Exchange[] = []) =>
  checkReadings(readings, exchanges).faults.map(({ kind, reading }) => [reading, kind]);

test('the seven faults of a labelled stream, each at its sample by its name, no other', () => {
  const readings = stream.samples.map(([at, seconds]) => ({
    ms: Date.parse(String(at)),
    hours: Number(seconds) / 3_600,
  }));
  expect(named(readings)).toEqual(stream.faults);
  for (const { why } of checkReadings(readings, []).faults) expect(why.length).toBeGreaterThan(10);
});

test('40 generated vessels: nothing sound is named, what is missed could be true', () => {
  let [told, labelled, missed] = [0, 0, 0];
  for (const vessel of vessels.units) {
    const { readings, exchangedOnDay, faults, id } = vessel;
    const rows = readings.map(([day = 0, hours = 0]) => ({ ms: START + day * DAY_MS, hours }));
    const exchanges: Exchange[] =
      exchangedOnDay === null
        ? []
        : [{ ms: START + exchangedOnDay * DAY_MS, oldLast: null, newFirst: null }];
    const found = new Map(checkReadings(rows, exchanges).faults.map((f) => [f.reading, f.kind]));
    const wanted = new Map(faults.map(([index, kind]) => [Number(index), String(kind)]));
    for (const [reading] of found)
      expect([id, reading, wanted.has(reading)]).toEqual([id, reading, true]);
    for (const [reading, kind] of wanted) {
      labelled += 1;
      if (found.has(reading)) {
        expect([id, reading, found.get(reading)]).toEqual([id, reading, kind]);
        told += 1;
        continue;
      }
      missed += 1;
      // Between its neighbours, and no more than 24 h a day from either: it could be true.
      const sound = (from: number, step: number): number => {
        let at = from + step;
        while (found.has(at)) at += step;
        return at;
      };
      const [before, now, after] = [sound(reading, -1), reading, sound(reading, 1)].map(
        (at) => rows[at],
      );
      const can = (a: typeof now, b: typeof now) =>
        a === undefined ||
        b === undefined ||
        (b.hours >= a.hours - 1 && b.hours - a.hours <= (24 * (b.ms - a.ms)) / DAY_MS + 2);
      expect([id, reading, can(before, now) && can(now, after)]).toEqual([id, reading, true]);
    }
  }
  expect([labelled, told, missed]).toEqual([21, 19, 2]);
});

describe('by hand', () => {
  test.each([
    ['wrong digit', daily(8_000, 8_050, 8_200, 8_150, 8_200), 2],
    ['wrong digit', daily(8_000, 8_050, 7_100, 8_150, 8_200), 2],
    ['transposed', daily(8_012, 8_068, 8_214, 8_181, 8_238), 2],
    ['transposed', daily(8_412, 8_468, 5_824, 8_581, 8_638), 2],
    ['unit x1000', daily(8_000, 8_050, 8_100_000, 8_150, 8_200), 2],
    ['unit x1000', daily(8_000, 8_050, 8.1, 8_150, 8_200), 2],
    ['not available', daily(8_000, 8_050, null, 8_150, 8_200), 2],
    ['not available', daily(8_000, 8_050, 0xffffffff / 3_600, 8_150, 8_200), 2],
    ['goes back', daily(8_020, 8_055, 8_053, 8_150, 8_200), 2],
    ['restart', daily(8_000, 8_050, 40, 90, 140), 2],
    ['restart', daily(8_000, 8_050, 2_213, 2_260, 2_310, 2_350, 2_390), 2],
  ])('%s', (kind, readings, at) => {
    expect(named(readings)).toEqual([[at, kind]]);
    const left = checkReadings(readings, []).history.length;
    expect(left).toBe(kind === 'restart' ? readings.length : readings.length - 1);
  });

  test('a duplicate, a slow clock, an old reading noted late, a list from new to old', () => {
    const [a, b, c, d] = daily(8_000, 8_050, 8_100, 8_150);
    if (!a || !b || !c || !d) throw new Error('four readings');
    expect(named([a, b, b, c, d])).toEqual([[2, 'duplicate']]);
    expect(named([a, b, { ms: b.ms - DAY_MS, hours: 8_060 }, c, d])).toEqual([[2, 'clock behind']]);
    expect(named([a, c, d, b])).toEqual([]);
    expect(named([d, c, b, a])).toEqual([]);
  });

  test('a gap: three steps of an even stream, a quarter of a year of an uneven one', () => {
    const hourly = Array.from({ length: 30 }, (_, at) => ({
      ms: START + (at < 20 ? at : at + 2) * 3_600_000,
      hours: 100 + (at < 20 ? at : at + 2),
    }));
    expect(named(hourly)).toEqual([[20, 'gap']]);
    const uneven = [0, 3, 10, 40, 131, 140].map((day) => ({
      ms: START + day * DAY_MS,
      hours: day,
    }));
    expect(named(uneven)).toEqual([[4, 'gap']]);
  });

  test('only an exchange that is given joins two meters, and by its own figures', () => {
    const readings = daily(8_000, 8_050, 40, 90);
    const at = { ms: START + 10 * DAY_MS, oldLast: 8_072, newFirst: 3 };
    const joined = checkReadings(readings, [at]);
    expect(joined.faults).toEqual([]);
    expect(joined.history.map(({ hours }) => hours)).toEqual([-69, -19, 40, 90]);
    const undated = checkReadings(readings, [{ ...at, oldLast: null, newFirst: null }]);
    expect(undated.faults).toEqual([]);
    expect(undated.history.map((each) => each.joined)).toEqual([false, true, false, true]);
    expect(checkReadings(readings, []).history.map((each) => each.joined)).toEqual([
      false,
      true,
      false,
      true,
    ]);
  });
});
