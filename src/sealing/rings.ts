// The rings of the two series by name, and a ring given in figures.

import { limits } from '../limits.ts';
import type { Source } from '../quantity/types.ts';
import { as568FromMemory, as568Groups, as568MemorySource, as568Source } from './tables/as568.ts';
import {
  metricGroups,
  metricInnerToleranceMm,
  metricSource,
  metricToleranceSource,
} from './tables/metric.ts';

export type Ring = {
  readonly name: string;
  readonly innerMm: number;
  readonly sectionMm: number;
  readonly innerToleranceMm: number | null;
  readonly sectionToleranceMm: number | null;
  readonly source: Source;
  readonly toleranceSource: Source;
};

const NANO = 1e6;

/** Exact: a millimetre with six places holds any ten-thousandth of an inch. */
const toMm = (inches: number): number => Math.round(inches * 25.4 * NANO) / NANO;

export const as568Rings: readonly Ring[] = as568Groups.flatMap((group) =>
  group.rows.map(([dash, innerIn, toleranceIn]): Ring => {
    const source = as568FromMemory.includes(dash) ? as568MemorySource : as568Source;
    return {
      name: `AS568-${dash}`,
      innerMm: toMm(innerIn),
      sectionMm: toMm(group.sectionIn),
      innerToleranceMm: toMm(toleranceIn),
      sectionToleranceMm: toMm(group.sectionToleranceIn),
      source,
      toleranceSource: source,
    };
  }),
);

export const metricRings: readonly Ring[] = metricGroups.flatMap(
  ({ sectionMm, toleranceMm, innerMm }) =>
    innerMm.map(
      (inner): Ring => ({
        name: `ISO 3601 ${inner}x${sectionMm}`,
        innerMm: inner,
        sectionMm,
        innerToleranceMm: metricInnerToleranceMm(inner),
        sectionToleranceMm: toleranceMm,
        source: metricSource,
        toleranceSource: metricToleranceSource,
      }),
    ),
);

export const standardRings: readonly Ring[] = [...as568Rings, ...metricRings];

const byName = new Map(standardRings.map((ring) => [ring.name, ring]));

export type ReadRing =
  | { readonly ok: true; readonly ring: Ring }
  | { readonly ok: false; readonly why: string; readonly expected: string };

/** `AS568-214`, `AS568 214`, `ISO 3601 20x2.65`, `ISO 3601-1 20 × 2.65`. */
export function readRing(name: string): ReadRing {
  const text = name.trim().replace(/[×X]/g, 'x').replace(/–|−/g, '-');
  const dash = /^AS ?568[A-Za-z]?[- ]+(\d{1,3})$/i.exec(text);
  if (dash !== null) {
    const ring = byName.get(`AS568-${(dash[1] ?? '').padStart(3, '0')}`);
    if (ring !== undefined) return { ok: true, ring };
    const expected = 'a dash number of 001-050, 102-178, 201-284, 309-395, 425-475 or 901-932';
    return { ok: false, why: 'there is no such dash number in AS568', expected };
  }
  const metric = /^ISO ?3601(?:-1)?[ :]+(\d+(?:\.\d+)?) ?x ?(\d+(?:\.\d+)?)$/i.exec(text);
  if (metric === null) {
    const why = 'the name of the ring cannot be read';
    return { ok: false, why, expected: '"AS568-214", "ISO 3601 20x2.65", or its figures' };
  }
  const [inner, section] = [Number(metric[1]), Number(metric[2])];
  const ring = byName.get(`ISO 3601 ${inner}x${section}`);
  if (ring !== undefined) return { ok: true, ring };
  return {
    ok: false,
    why: 'the metric series has no such size',
    expected: `a size of the series, near it ${nearest(inner, section).join(', ')}`,
  };
}

const nearest = (inner: number, section: number): readonly string[] =>
  [...metricRings]
    .map((ring) => {
      const far = Math.abs(ring.innerMm - inner) + 5 * Math.abs(ring.sectionMm - section);
      return { name: ring.name, far };
    })
    .sort((a, b) => a.far - b.far)
    .slice(0, limits.sealing.nearestNames)
    .map(({ name }) => name);

export function givenRing(figures: {
  readonly innerMm: number;
  readonly sectionMm: number;
  readonly innerToleranceMm: number | null;
  readonly sectionToleranceMm: number | null;
}): Ring {
  const source: Source = { kind: 'entered', by: 'the input' };
  return { name: 'as given', ...figures, source, toleranceSource: source };
}
