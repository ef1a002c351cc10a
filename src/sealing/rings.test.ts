// Every size of both series by its name, with its source, and names that are no size.

import { describe, expect, test } from 'vitest';
import { oRing } from './o-ring.ts';
import { oRingInput } from './o-ring-model.ts';
import { as568Rings, metricRings, readRing } from './rings.ts';
import { as568FromMemory, as568WrongInCopy } from './tables/as568.ts';
import { metricInnerToleranceMm } from './tables/metric.ts';

const INCH = 25.4;
const solved = (ring: string) => oRing(oRingInput.parse({ ring }));

describe('sizes', () => {
  test('SAE AS568: 369 sizes by name, 13 of them from memory', () => {
    expect(as568Rings.length).toBe(369);
    expect(new Set(as568Rings.map(({ name }) => name)).size).toBe(369);
    expect(as568FromMemory.length).toBe(13);
    for (const ring of as568Rings) {
      expect(readRing(ring.name)).toEqual({ ok: true, ring });
      const memory = as568FromMemory.includes(ring.name.slice(6));
      expect(ring.source.kind).toBe(memory ? 'from memory' : 'published');
      const found = solved(ring.name);
      expect(found.ring?.inner.value).toBe(ring.innerMm);
      expect(String(found.cautions).includes('From memory')).toBe(memory);
    }
  });

  // The series' own arithmetic (its steps of a sixteenth or an eighth), apart from the copied rows.
  test.each([
    ['006', 0.114],
    ['011', 0.301],
    ['110', 0.362],
    ['214', 0.984],
    ['222', 1.484],
    ['325', 1.475],
    ['425', 4.475],
    ['284', 17.955],
    ['319', 1.037],
    ['377', 9.975],
  ])('AS568-%s is %s in inside', (dash, inches) => {
    const read = readRing(`AS568-${dash}`);
    expect(read.ok && read.ring.innerMm / INCH).toBeCloseTo(inches, 9);
  });

  test('rows that the copy has wrong are named where they are used', () => {
    for (const dash of Object.keys(as568WrongInCopy)) {
      expect(String(solved(`AS568-${dash}`).cautions)).toContain('copy that was read');
    }
    expect(Object.keys(as568WrongInCopy)).toEqual(['284', '319', '377', '386']);
  });

  test('metric series: 305 sizes by name; class B tolerance from memory', () => {
    expect(metricRings.length).toBe(305);
    expect(new Set(metricRings.map(({ name }) => name)).size).toBe(305);
    for (const ring of metricRings) {
      expect(readRing(ring.name)).toEqual({ ok: true, ring });
      expect(ring.toleranceSource.kind).toBe('from memory');
    }
  });

  // ISO 3601-1:2012 class B, from memory.
  test.each([
    [1.8, 0.13],
    [6.3, 0.16],
    [10, 0.19],
    [14, 0.22],
    [20, 0.26],
    [30, 0.34],
    [50, 0.48],
    [80, 0.69],
    [100, 0.82],
    [150, 1.16],
    [200, 1.49],
    [400, 2.78],
  ])('class B at %s mm is %s mm (from memory)', (inner, tolerance) => {
    expect(metricInnerToleranceMm(inner)).toBeCloseTo(tolerance, 9);
  });

  test.each(['AS568 214', 'as568-214', 'AS568A-214', ' AS568-214 '])('%s is read', (name) => {
    expect(readRing(name)).toMatchObject({ ok: true, ring: { name: 'AS568-214' } });
  });

  test.each(['ISO 3601 20x2.65', 'ISO 3601-1 20 x 2.65', 'ISO 3601 20×2.65', 'ISO3601 20.0x2.650'])(
    '%s is read',
    (name) => {
      expect(readRing(name)).toMatchObject({ ok: true, ring: { name: 'ISO 3601 20x2.65' } });
    },
  );

  test.each(['AS568-060', 'ISO 3601 20x3', '214', 'AS568-', 'M10'])('%s is refused', (name) => {
    expect(readRing(name).ok).toBe(false);
  });
});
