// `o-ring` by printed groove rows, a stretch example, its verdicts, and laws.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { greaseForRing, sealantForBead } from './amounts.ts';
import { extrusionOf } from './judge.ts';
import { oRing, withFitting } from './o-ring.ts';
import { type ORingOutput, oRingInput, oRingOutput } from './o-ring-model.ts';
import { as568Rings, metricRings } from './rings.ts';
import table from './tables/grooves.published.json' with { type: 'json' };
import { whichRings } from './which-ring.ts';

const SEED = 20261125;
const options = { seed: SEED, numRuns: process.env.LONG ? 5_000 : 500 };
const INCH = 25.4;

function solved(raw: unknown): ORingOutput {
  const input = oRingInput.parse(raw);
  return withFitting(input, oRing(input));
}

const kinds: Readonly<Record<string, readonly [kind: string, moving: boolean]>> = {
  'static radial': ['piston', false],
  'static axial (face)': ['face', false],
  dynamic: ['rod', true],
};

type Row = (typeof table.rows)[number];

function rowCase(row: Row) {
  const [kind, moving] = kinds[row.kind] ?? [];
  const inches = (value: number) => `${value} in`;
  return {
    ring: {
      inner: '1 in',
      section: inches(row.CS_in),
      innerTolerance: 0.2,
      sectionTolerance: inches(row.CS_tol_in),
    },
    groove: {
      kind,
      moving,
      depth: row.gland_depth_in.map(inches),
      width: inches(row.groove_width_in),
    },
  };
}

describe(`${table.title} (${table.origin})`, () => {
  test('20 rows: the collection they come from speaks of 28, but holds these', () => {
    expect(table.rows.length).toBe(20);
  });

  test.each(table.rows.map((row) => [row.id, row] as const))('%s', (_, row) => {
    const found = solved(rowCase(row));
    const [least, most] = row.published.squeeze_in;
    const near = (value: number | undefined, printed: number | undefined, within: number) =>
      expect(Math.abs((value ?? Number.NaN) - (printed ?? Number.NaN))).toBeLessThan(within);
    near((found.compression?.min?.value ?? 0) / INCH, least, 1e-9 + 0.0001);
    near((found.compression?.max?.value ?? 0) / INCH, most, 1e-9 + 0.0001);
    const [low, high] = row.published.squeeze_pct;
    near((found.squeeze?.min?.value ?? 0) * 100, low, 0.6);
    near((found.squeeze?.max?.value ?? 0) * 100, high, 0.6);
    expect(recheckWorking(found.working as Working)).toEqual([]);
    // Where the ring lies is not known: nothing is said to fit, and nothing is faulted.
    expect(found.verdict).toBeNull();
    expect(found.reasons.every((one) => one.startsWith('cannot be checked'))).toBe(true);
  });

  test(`stretch of ${table.stretch.section_in} in on 1.000 in: ${table.stretch.source}`, () => {
    const { inner_in: inner, section_in: section, published } = table.stretch;
    const found = solved({
      ring: { inner: `${inner} in`, section: `${section} in` },
      groove: { kind: 'piston', diameter: '1 in' },
    });
    expect(1 + (found.stretch?.nominal?.value ?? 0)).toBeCloseTo(published.stretch_ratio, 4);
    const after = (found.sectionAfterStretch?.value ?? 0) / INCH;
    expect((1 - after / section) * 100).toBeCloseTo(published.section_shrink_pct, 1);
    const mean = found.working.find(({ symbol }) => symbol === 'w_m');
    expect((1 - (mean?.value ?? 0) / INCH / section) * 100).toBeCloseTo(0.7, 1);
  });
});

const good = {
  ring: 'AS568-214',
  groove: { kind: 'piston', diameter: 25.4, depth: 2.85, width: 4.8 },
};
const groove = (more: object) => ({ ...good, groove: { ...good.groove, ...more } });

describe('verdicts', () => {
  test.each([
    ['fits', good],
    ['ring too large', groove({ diameter: 24 })],
    ['ring too small', groove({ diameter: 27 })],
    ['too little squeeze', groove({ depth: 3.5 })],
    ['too little squeeze', groove({ depth: 4 })],
    ['too much squeeze', groove({ depth: 2.3, width: 6.5 })],
    ['groove too full', groove({ width: 3.6 })],
    ['may extrude', { ...good, pressure: 8, hardness: 70, gap: 0.09 }],
    ['may extrude', { ...good, pressure: 40, hardness: 90 }],
    ['fits', { ...good, pressure: 8, hardness: 90, gap: 0.09 }],
    ['fits', { ...good, pressure: '3 bar', hardness: 70, gap: 0.1 }],
    ['fits', { ...good, pressure: -0.05 }],
    [null, { ...good, pressure: 8, gap: 0.05 }],
    [null, { ...good, pressure: 8, hardness: 70 }],
    [null, { ...good, pressure: 8, hardness: 60, gap: 0.01 }],
    [null, { ...good, pressure: 8, hardness: 70, gap: 0.01, temperature: 120 }],
    [null, groove({ width: undefined })],
    [null, groove({ kind: undefined })],
    [null, { ...good, ring: { inner: 25, section: 3.53 } }],
    ['fits', groove({ kind: 'rod' })],
    ['ring too small', groove({ kind: 'rod', diameter: 26.5 })],
    ['ring too large', groove({ kind: 'rod', diameter: 23 })],
    [
      'fits',
      {
        ...groove({ kind: 'face', diameter: 25.2, depth: 2.6, width: 5.2 }),
        pressureSide: 'outside',
      },
    ],
    [
      'ring too large',
      {
        ...groove({ kind: 'face', diameter: 24.5, depth: 2.6, width: 5.2 }),
        pressureSide: 'outside',
      },
    ],
    [
      'fits',
      {
        ...groove({
          kind: 'face',
          diameter: undefined,
          outerDiameter: 31.8,
          depth: 2.6,
          width: 5.2,
        }),
        pressureSide: 'inside',
      },
    ],
    [
      'ring too small',
      {
        ...groove({ kind: 'face', diameter: undefined, outerDiameter: 33, depth: 2.6, width: 5.2 }),
        pressureSide: 'inside',
      },
    ],
    [
      'ring too large',
      {
        ...groove({
          kind: 'face',
          diameter: undefined,
          outerDiameter: 30.5,
          depth: 2.6,
          width: 5.2,
        }),
        pressureSide: 'inside',
      },
    ],
  ])('%s', (verdict, raw) => {
    const found = solved(raw);
    expect(found.verdict).toBe(verdict);
    expect(found.reasons.length).toBeGreaterThan(0);
    if (verdict === null) {
      const lacks = found.notWorkedOut.find(({ output }) => output === 'verdict');
      expect(lacks?.needs.length).toBeGreaterThan(0);
    } else expect(found.restsOn).not.toBeNull();
  });

  test('a metric ring says that its tolerance is from memory', () => {
    const found = solved({ ...good, ring: 'ISO 3601 25x3.55' });
    expect(found.verdict).toBe('fits');
    expect(found.restsOn).toMatch(/^from memory: ISO 3601-1:2012 class B/);
  });

  test('the gap allowed falls with pressure, grows with hardness and section', () => {
    const ring = as568Rings.find(({ name }) => name === 'AS568-214');
    if (ring === undefined) throw new Error('no ring');
    const at = (pressureMPa: number, hardnessIrhd: number) =>
      extrusionOf(ring, { pressureMPa, hardnessIrhd, temperatureCel: null, gapMm: null }).allowedMm;
    expect([1, 3.5, 5, 9, 12].map((p) => at(p, 70))).toEqual([0.1, 0.1, 0.08, 0.05, 0]);
    expect([1, 12, 30].map((p) => at(p, 90))).toEqual([0.2, 0.08, 0.03]);
    expect(at(1, 85)).toBe(at(1, 70));
  });
});

describe('which ring fits a measured groove', () => {
  test('each ring is found again for a groove cut for it, a printed row', () => {
    // Static radial rows: groove bottom 2 % above the ring's inside.
    const rows = table.rows.filter(({ kind, CS_in }) => kind === 'static radial' && CS_in >= 0.07);
    for (const {
      CS_in,
      gland_depth_in: [least = 0, most = 0],
      groove_width_in,
    } of rows) {
      const of = as568Rings.filter(
        ({ sectionMm, innerMm }) => Math.abs(sectionMm - CS_in * INCH) < 1e-6 && innerMm > 15,
      );
      expect(of.length).toBeGreaterThan(3);
      for (const { name, innerMm } of of.slice(0, 12)) {
        const depth = { min: least * INCH, max: most * INCH };
        const width = groove_width_in * INCH;
        const over = innerMm * 1.02;
        const found = whichRings({
          kind: 'piston',
          moving: false,
          innerMm: { min: over, max: over },
          outerMm: null,
          depthMm: depth,
          widthMm: { min: width, max: width },
          side: null,
        });
        expect(found.map(({ ring }) => ring.name)).toContain(name);
        for (const [index, one] of found.entries()) {
          expect(one.distance).toBeGreaterThanOrEqual(found[index - 1]?.distance ?? 0);
        }
      }
    }
  });

  test('beside a ring that does not fit stand those that do; "any" asks for them alone', () => {
    const wrong = solved({ ...good, ring: 'AS568-212' });
    expect(wrong.verdict).toBe('ring too small');
    expect(wrong.fitting.map(({ ring }) => ring)).toContain('AS568-214');
    expect(solved({ ...good, ring: 'any' }).fitting).toEqual(wrong.fitting);
    expect(solved(good).fitting).toEqual([]);
  });
});

test('amounts: geometry times a thickness of common practice', () => {
  const grease = greaseForRing(24.99, 3.53, 0.1);
  expect(grease.amount.value).toBeCloseTo((Math.PI * 28.52 * Math.PI * 3.53 * 0.1) / 1_000, 9);
  expect(grease.source.kind).toBe('common practice, no source');
  expect(sealantForBead(400, 3).amount.value).toBeCloseTo(2.827, 3);
});

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });
const span = (min: number, max: number) =>
  fc.oneof(
    between(min, max),
    fc.tuple(between(min, max), between(0, 0.1)).map(([least, more]) => [least, least + more]),
  );
const rings = fc.oneof(
  fc.constantFrom(...as568Rings, ...metricRings).map(({ name }) => name),
  fc.record(
    {
      inner: between(5, 200),
      section: between(1, 8),
      innerTolerance: between(0, 1),
      sectionTolerance: between(0, 0.2),
    },
    { requiredKeys: ['inner', 'section'] },
  ),
);
const anything = fc.record({
  ring: rings,
  groove: maybe(
    fc.record(
      {
        kind: fc.constantFrom('face', 'piston', 'rod'),
        moving: fc.boolean(),
        diameter: span(3, 300),
        depth: span(0.5, 8),
        width: span(1, 12),
      },
      { requiredKeys: [] },
    ),
  ),
  pressure: maybe(between(-0.1, 50)),
  pressureSide: maybe(fc.constantFrom('inside', 'outside', 'both')),
  temperature: maybe(between(-40, 200)),
  hardness: maybe(between(40, 95)),
  gap: maybe(between(0, 0.4)),
});

describe(`laws, seed ${SEED}`, () => {
  test('any input: workings come out, shapes are as published, null is named, no NaN', () => {
    let worked = 0;
    const law = fc.property(anything, (raw) => {
      const read = oRingInput.safeParse(raw);
      if (!read.success) return;
      worked += 1;
      const result = oRing(read.data);
      expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
      expect(recheckWorking(result.working as Working)).toEqual([]);
      expect(oRingOutput.safeParse(result).error).toBeUndefined();
      for (const band of [result.squeeze, result.stretch, result.fill, result.compression]) {
        if (!band?.nominal || !band.min || !band.max) continue;
        expect(band.min.value).toBeLessThanOrEqual(band.nominal.value + 1e-9);
        expect(band.max.value).toBeGreaterThanOrEqual(band.nominal.value - 1e-9);
      }
      const { working, cautions, notWorkedOut, ...outputs } = result;
      for (const [output, value] of Object.entries(outputs)) {
        const lacks = notWorkedOut.find((one) => one.output === output);
        if (value !== null) expect(lacks).toBeUndefined();
        else expect({ output, needs: lacks?.needs.length ?? 0 }).not.toMatchObject({ needs: 0 });
      }
      if (result.verdict === 'fits') {
        expect(result.squeeze?.min?.value).toBeGreaterThan(0);
        expect(result.fill?.max?.value).toBeLessThan(1);
      }
    });
    fc.assert(law, options);
    expect(worked).toBeGreaterThan(options.numRuns / 2);
  });

  test('any ring and groove drawn within tolerance lies between the least and the greatest', () => {
    const unit = between(0, 1);
    const draw = fc.tuple(unit, unit, unit, unit, unit);
    const law = fc.property(fc.constantFrom(...as568Rings), draw, (ring, at) => {
      const { innerMm, sectionMm, innerToleranceMm, sectionToleranceMm } = ring;
      const [depth, width, over] = [0.8 * sectionMm, 1.4 * sectionMm, 1.02 * innerMm];
      const pair = (value: number) => [value * 0.99, value * 1.01];
      const found = solved({
        ring: ring.name,
        groove: { kind: 'piston', diameter: pair(over), depth: pair(depth), width: pair(width) },
      });
      const [a, b, c, d, e] = at;
      const within = (value: number, share: number) => value * (0.99 + 0.02 * share);
      const inner = innerMm + (2 * a - 1) * (innerToleranceMm ?? 0);
      const made = sectionMm + (2 * b - 1) * (sectionToleranceMm ?? 0);
      const stretch = within(over, c) / inner - 1;
      // Constant volume: length times section stays.
      const section = Math.sqrt((made * made) / Math.max(1, 1 + stretch));
      const h = within(depth, d);
      const figures = {
        stretch,
        squeeze: 1 - h / section,
        fill: (Math.PI * section * section) / 4 / (h * within(width, e)),
      };
      for (const [name, value] of Object.entries(figures)) {
        const band = found[name as 'stretch' | 'squeeze' | 'fill'];
        expect(value).toBeGreaterThanOrEqual((band?.min?.value ?? Number.NaN) - 1e-9);
        expect(value).toBeLessThanOrEqual((band?.max?.value ?? Number.NaN) + 1e-9);
      }
    });
    fc.assert(law, options);
  });
});
