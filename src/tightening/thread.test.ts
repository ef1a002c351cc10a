// Threads against the published tables: every row of the metric and of the unified ones.

import { describe, expect, test } from 'vitest';
import { classRows } from './tables/strength-classes.ts';
import stripping from './tables/stripping.published.json' with { type: 'json' };
import { metricRows, unifiedRows } from './tables/thread-series.ts';
import threads from './tables/threads.published.json' with { type: 'json' };
import unified from './tables/unified.published.json' with { type: 'json' };
import { limitsOf, readThread, type Thread } from './thread.ts';

function thread(name: string): Thread {
  const read = readThread(name);
  if (!read.ok) throw new Error(read.why);
  return read.thread;
}

const off = (value: number | null, published: number) => Math.abs((value ?? 0) / published - 1);

const metric = [...threads.coarse.rows, ...threads.fine.rows];

test(`metric threads: every row of ${threads.coarse.title}; ${threads.fine.title}`, () => {
  expect(metric.length).toBe(34);
  for (const row of metric) {
    const made = thread(row.thread);
    expect([made.diameterMm, made.pitchMm]).toEqual([row.d, row.P]);
    // Published to three figures: half of the last place is 0.5 % at most.
    expect(off(made.stressAreaMm2, row.As_published)).toBeLessThan(0.005);
    if (row.d2_published !== undefined) {
      expect(Math.abs((made.pitchDiameterMm ?? 0) - row.d2_published)).toBeLessThan(0.0011);
    }
  }
});

test(`M8: ${threads.m8.title}`, () => {
  const made = thread('M8');
  const { d2, d3, D1, As, lead_angle_deg } = threads.m8.published;
  expect(made.pitchDiameterMm).toBeCloseTo(d2, 3);
  expect(made.rootDiameterMm).toBeCloseTo(d3, 3);
  expect(made.minorDiameterMm).toBeCloseTo(D1, 3);
  expect(made.stressAreaMm2).toBeCloseTo(As, 2);
  const lead = Math.atan(1.25 / (Math.PI * d2)) * (180 / Math.PI);
  expect(lead).toBeCloseTo(lead_angle_deg, 3);
});

describe(`unified threads: ${unified.areas.title}, ${unified.areas.place}`, () => {
  const misprinted = new Set(unified.misprints.map((one) => one.thread));
  const rows = unified.areas.rows as unknown as readonly [string, number, number, number, number][];

  test('every row, one misprint apart', () => {
    expect(rows.length).toBe(43);
    for (const [name, diameterIn, threadsAnInch, area, core] of rows) {
      const made = thread(name);
      expect(made.diameterMm).toBeCloseTo(diameterIn * 25.4, 6);
      expect(made.pitchMm).toBeCloseTo(25.4 / threadsAnInch, 6);
      const areaOff = off((made.stressAreaMm2 ?? 0) / 645.16, area);
      if (misprinted.has(name)) expect(areaOff).toBeGreaterThan(0.05);
      else expect(areaOff).toBeLessThan(0.005);
      const root = (made.rootDiameterMm ?? 0) / 25.4;
      expect(off((Math.PI / 4) * root ** 2, core)).toBeLessThan(0.005);
    }
  });

  test('the misprint: what is right comes out', () => {
    for (const { thread: name, right } of unified.misprints) {
      expect(off((thread(name).stressAreaMm2 ?? 0) / 645.16, right)).toBeLessThan(0.005);
    }
  });

  test(`SAE grades: ${unified.grades.title}, every row`, () => {
    const grades = unified.grades.rows as unknown as readonly (readonly [
      string,
      ...(readonly [number, number, number, number, number]),
    ])[];
    for (const [grade, from, to, ...stresses] of grades) {
      for (const inches of [from, to]) {
        const mm = inches * 25.4;
        const row = classRows.find(
          ({ name, aboveMm, uptoMm }) => name === `SAE ${grade}` && mm > aboveMm && mm <= uptoMm,
        );
        const ksi = [row?.proofMPa, row?.yieldMPa, row?.tensileMPa].map(
          (one) => (one ?? 0) / 6.894757,
        );
        stresses.forEach((stress, at) => {
          expect(ksi[at]).toBeCloseTo(stress, 4);
        });
      }
    }
  });
});

// The standard rounds each tolerance to a preferred number.
test(`limits 6g: ${stripping.limits6g.title}, to 5 micrometres`, () => {
  const rows = stripping.limits6g.rows as unknown as readonly [
    string,
    number,
    number,
    number,
    number,
  ][];
  for (const [name, , majorMin, , pitchMin] of rows) {
    const made = limitsOf(thread(name));
    expect(Math.abs((made?.majorMinMm ?? 0) - majorMin)).toBeLessThan(0.005);
    expect(Math.abs((made?.pitchMinMm ?? 0) - pitchMin)).toBeLessThan(0.005);
  }
});

describe('names', () => {
  test.each([
    ['M10', 'M10'],
    ['M10x1.5', 'M10'],
    ['m10 X 1.25', 'M10x1.25'],
    ['M10×1.25', 'M10x1.25'],
    ['M10-6g', 'M10'],
    ['M24x2-6H', 'M24x2'],
    ['3/8-16 UNC', '3/8-16 UNC'],
    ['3/8 UNC', '3/8-16 UNC'],
    ['3/8-16', '3/8-16 UNC'],
    ['.375-24', '3/8-24 UNF'],
    ['1/4-28 UNF-2A', '1/4-28 UNF'],
    ['1/4-28 UNF', '1/4-28 UNF'],
    ['10-32', '10-32 UNF'],
    ['#10-24 UNC', '10-24 UNC'],
    ['No. 8-32', '8-32 UNC'],
    ['1-8', '1-8 UNC'],
    ['1-64', '1-64 UNC'],
    ['1-1/4-12 UNF', '1-1/4-12 UNF'],
    ['1-14 UNS', '1-14 UNS'],
  ])('%s is %s', (given, name) => {
    expect(thread(given).name).toBe(name);
  });

  test.each([
    ['M10x9', '1.5, 1.25, 1, 0.75'],
    ['M11', 'M10'],
    ['3/8-17', '3/8-16 UNC, 3/8-24 UNF'],
    ['3/8-16 UNF', '3/8-16 UNC'],
    ['G 1/2', '"M10"'],
    ['', '"M10"'],
    ['10', '"M10"'],
    ['5/17-18', '5/16'],
  ])('%s is refused, and what there is is named', (given, there) => {
    const read = readThread(given);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(`${read.expected} ${read.why}`).toContain(there);
  });

  test('every name of the tables reads as itself', () => {
    for (const [d, coarse, fine] of metricRows) {
      for (const pitch of [coarse, ...fine]) expect(thread(`M${d}x${pitch}`).pitchMm).toBe(pitch);
    }
    for (const [size, inches, coarse, fine] of unifiedRows) {
      for (const count of [coarse, fine]) {
        if (count === null) continue;
        expect(thread(`${size}-${count}`).diameterMm).toBeCloseTo(inches * 25.4, 9);
      }
    }
  });
});
