// `o-ring`, `compatible`, `lift` as they are called: worked cases, bad input, uncertainty, units.

import { describe, expect, test } from 'vitest';
import { findCalculation, runCalc } from './register.ts';

const lent = { solver: () => Promise.reject(new Error('no solver is needed here')) };

type Figure = { readonly value: number; readonly u?: number; readonly given?: string };
type Tree = { readonly [name: string]: Tree } & Figure;

async function run(name: string, raw: unknown) {
  const answer = await runCalc(name, raw, lent);
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.result as unknown as Tree;
}

async function paths(name: string, raw: unknown) {
  const answer = await runCalc(name, raw, lent);
  if (answer.ok) throw new Error('it was taken');
  const { problems } = answer.error.error;
  for (const { why, expected } of problems) {
    expect(why.length).toBeGreaterThan(5);
    expect(expected.length).toBeGreaterThan(1);
  }
  return problems.map(({ path }) => path).sort();
}

const ring = {
  ring: 'AS568-214',
  groove: { kind: 'piston', diameter: [25.35, 25.4], depth: [2.82, 2.87], width: [4.75, 4.9] },
};

describe('o-ring', () => {
  test('first worked case of its document', async () => {
    const found = await run('o-ring', ring);
    const band = (name: string) =>
      ['nominal', 'min', 'max'].map((end) => found[name]?.[end]?.value.toFixed(3));
    expect(band('stretch')).toEqual(['0.015', '0.004', '0.027']);
    expect(band('squeeze')).toEqual(['0.188', '0.152', '0.222']);
    expect(band('fill')).toEqual(['0.702', '0.640', '0.770']);
    expect(found.sectionAfterStretch?.value).toBeCloseTo(3.504, 3);
    expect(found).toMatchObject({ verdict: 'fits', ring: { inner: { value: 24.9936 } } });
  });

  test('second worked case of its document', async () => {
    const found = await run('o-ring', {
      ring: 'ISO 3601 50x2.65',
      groove: { kind: 'face', outerDiameter: [55, 55.1], depth: 2, width: 3.6 },
      pressure: '4 bar',
      pressureSide: 'inside',
      hardness: 70,
      gap: 0.05,
    });
    const { squeeze, fill, extrusion } = found;
    expect(squeeze?.nominal?.value).toBeCloseTo(0.2453, 4);
    expect(squeeze?.min?.value).toBeCloseTo(0.2188, 4);
    expect(squeeze?.max?.value).toBeCloseTo(0.2701, 4);
    expect(fill?.nominal?.value).toBeCloseTo(0.766, 3);
    expect(extrusion?.allowedGap?.value).toBe(0.09);
    expect(found).toMatchObject({ verdict: 'fits', stretch: null });
    expect(found.restsOn).toMatch(/^from memory: ISO 3601-1.*; and: O-ring handbooks/);
  });

  test('all that is wrong is listed at once', async () => {
    const found = await paths('o-ring', {
      ring: { inner: 20, section: 3, sectionTolerance: 3, thickness: 1 },
      groove: {
        kind: 'bore',
        diameter: 20,
        outerDiameter: 19,
        depth: [3, 2],
        width: -1,
        colour: 'red',
      },
      pressure: '-3 bar',
      temperature: '-300 °C',
      hardness: 120,
      gap: 4,
    });
    expect(found).toEqual([
      'gap',
      'groove/colour',
      'groove/depth',
      'groove/kind',
      'groove/outerDiameter',
      'groove/width',
      'hardness',
      'pressure',
      'ring/sectionTolerance',
      'ring/thickness',
      'temperature',
    ]);
  });

  test.each([
    ['no ring', { groove: ring.groove }, 'ring'],
    ['a size that is none', { ring: 'AS568-060' }, 'ring'],
    ['a section the series lacks', { ring: 'ISO 3601 20x3' }, 'ring'],
    ['any ring in half a groove', { ring: 'any', groove: { depth: 2 } }, 'groove'],
    ['a unit of something else', { ring: 'AS568-214', pressure: '3 N' }, 'pressure'],
    ['a ring of no width', { ring: { inner: 20, section: 0 } }, 'ring/section'],
    ['three depths', { ring: 'AS568-214', groove: { depth: [1, 2, 3] } }, 'groove/depth'],
  ])('bad input: %s', async (_, raw, path) => {
    expect(await paths('o-ring', raw)).toEqual([path]);
  });

  test('uncertainty is carried, what was typed comes back, any unit is taken', async () => {
    const measured = {
      ring: { inner: '1 in', section: '0.139 in', innerTolerance: 0.2, sectionTolerance: 0.1 },
      groove: { kind: 'piston', diameter: { value: 25.8, unit: 'mm', expanded: 0.04, k: 2 } },
    };
    const found = await run('o-ring', measured);
    expect(found.stretch?.nominal?.u).toBeCloseTo(0.02 / 25.4, 9);
    expect(found.ring?.inner).toMatchObject({ value: 25.4, given: '1 in' });
    expect(found).toMatchObject({ squeeze: null, verdict: null });
  });
});

describe('compatible', () => {
  test('first worked case of its document', async () => {
    const found = await run('compatible', findCalculation('compatible')?.example);
    expect(found).toMatchObject({
      ratings: [1, 1],
      greaseRating: 4,
      verdict: 'unsuitable',
      storage: { group: 'C', expiresOn: '2034-09-30', extendableTo: '2039-09-30' },
    });
  });

  test.each([
    ['ISO 2230', '2025-09-30', '2028-09-30', 'inspect before use'],
    ['RMA', '2021-09-30', null, 'expired'],
    ['SAE ARP5316', '2033-09-30', null, 'suitable'],
  ])('second worked case of its document, %s', async (storageRule, ends, extends_, verdict) => {
    const aged = { compound: 'NBR', media: ['sea water'], cured: '3Q2018', on: '2025-10-01' };
    const found = await run('compatible', { ...aged, storageRule });
    expect(found).toMatchObject({
      verdict,
      storage: { expiresOn: ends, extendableTo: extends_ },
    });
  });

  test('all that is wrong is listed at once', async () => {
    const raw = {
      compound: 'rubber',
      media: ['tar'],
      grease: 'butter',
      temperature: '-300 °C',
      cured: '3Q24',
      on: 'tomorrow',
      storageRule: 'mine',
      colour: 'black',
    };
    expect(await paths('compatible', raw)).toEqual([
      'colour',
      'compound',
      'cured',
      'grease',
      'media/0',
      'on',
      'storageRule',
      'temperature',
    ]);
  });

  test.each([
    ['no compound', { media: ['sea water'] }, 'compound'],
    ['cured after the day', { compound: 'NBR', cured: '1Q2027', on: '2026-11-25' }, 'cured'],
    ['a day that is none', { compound: 'NBR', cured: '2026-02-30' }, 'cured'],
  ])('bad input: %s', async (_, raw, path) => {
    expect(await paths('compatible', raw)).toEqual([path]);
  });
});

const weight = {
  weight: 12,
  origin: { h: 30, v: 40, asymmetry: 0 },
  destination: { h: 40, v: 90, asymmetry: 30 },
  coupling: 'fair',
  frequency: 0.2,
  duration: 0.5,
};

describe('lift', () => {
  test('first worked case of its document', async () => {
    const found = await run('lift', weight);
    expect(found.origin?.rwl?.value).toBeCloseTo(14.83, 2);
    expect(found.origin?.li?.value).toBeCloseTo(0.81, 2);
    expect(found.destination?.rwl?.value).toBeCloseTo(11.29, 2);
    expect(found.destination?.li?.value).toBeCloseTo(1.06, 2);
    const whatHelpsMost = { multiplier: 'hm', at: 'destination' };
    expect(found).toMatchObject({ verdict: 'too heavy for some', whatHelpsMost });
  });

  test('second worked case of its document', async () => {
    const found = await run('lift', {
      weight: 40,
      people: 2,
      origin: { h: 45, v: 60, asymmetry: 45 },
      travel: 60,
      coupling: 'poor',
      spell: { perMinute: 2, minutes: 6 },
      duration: 1.5,
      recovery: 0.25,
      heat: 38,
      moving: true,
    });
    expect(found.frequencyUsed?.value).toBeCloseTo(0.8, 9);
    expect(found.origin?.multipliers?.fm?.value).toBeCloseTo(0.774, 9);
    expect(found.origin?.rwl?.value).toBeCloseTo(6.51, 2);
    expect(found.origin?.li?.value).toBeCloseTo(4.6, 1);
    expect(found.share?.value).toBeCloseTo(30, 9);
    expect(found).toMatchObject({
      durationClass: 'long',
      verdict: 'outside the method: use gear or a second person',
      figure: 'best case on a dry floor',
    });
  });

  test('all that is wrong is listed at once', async () => {
    const raw = {
      weight: -4,
      origin: { h: -1, v: 200, asymmetry: 200, depth: 3 },
      destination: { v: 100 },
      travel: 20,
      coupling: 'great',
      frequency: 1,
      spell: { perMinute: 2, minutes: 20 },
      duration: 0,
      headroom: 150,
      people: 0,
    };
    expect(await paths('lift', raw)).toEqual([
      'coupling',
      'duration',
      'origin/asymmetry',
      'origin/depth',
      'origin/h',
      'origin/v',
      'people',
      'spell',
      'spell/minutes',
      'travel',
      'weight',
    ]);
  });

  test.each([
    ['nothing', {}, ''],
    ['a weight in newtons', { weight: '100 N' }, 'weight'],
    ['half a person', { ...weight, people: 1.5 }, 'people'],
    ['more than a quarter of an hour', { spell: { perMinute: 1, minutes: 16 } }, 'spell/minutes'],
  ])('bad input: %s', async (_, raw, path) => {
    expect(await paths('lift', raw)).toEqual([path]);
  });

  test('travel beside a destination is taken where the two agree', async () => {
    const found = await run('lift', { ...weight, travel: '0.5 m' });
    expect(found.origin?.rwl?.value).toBeCloseTo(14.83, 2);
  });

  test('uncertainty is carried, what was typed comes back', async () => {
    const h = { value: 30, unit: 'cm', u: 1.5 };
    const found = await run('lift', { ...weight, weight: '26 lb', origin: { h, v: 40 } });
    expect((found.origin?.li?.u ?? 0) / (found.origin?.li?.value ?? 1)).toBeCloseTo(0.05, 3);
    expect(found.share).toMatchObject({ given: '26 lb' });
  });
});
