// `tightening` and `joint` as they are called: units, bad input, part answers, uncertainty.

import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { findCalculation, runCalc } from './register.ts';

const lent = { solver: () => Promise.reject(new Error('no solver is needed here')) };

async function run(name: string, raw: unknown) {
  const answer = await runCalc(name, raw, lent);
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.result as Record<string, { value: number; u?: number; given?: string }>;
}

async function problems(name: string, raw: unknown) {
  const answer = await runCalc(name, raw, lent);
  if (answer.ok) throw new Error('it was taken');
  return answer.error.error.problems;
}

const bolt = { thread: 'M12', strengthClass: '8.8', frictionThread: 0.14, frictionHead: 0.14 };

describe('tightening', () => {
  test('first worked case of its document', async () => {
    const found = await run('tightening', bolt);
    expect(found.preload?.value).toBeCloseTo(41.98, 2);
    expect(found.torque?.value).toBeCloseTo(93.01, 2);
    expect(found.nutFactor?.value).toBeCloseTo(0.1846, 4);
  });

  test('second worked case of its document', async () => {
    const found = await run('tightening', findCalculation('tightening')?.example);
    expect(found.issued).toMatchObject({ verdict: 'may yield' });
    const { preloadMin, preloadMax } = found.issued as unknown as Record<string, { value: number }>;
    expect(preloadMin?.value).toBeCloseTo(21.47, 2);
    expect(preloadMax?.value).toBeCloseTo(43.45, 2);
    expect(JSON.stringify(found)).toContain('issued torque, 35.4 lbf.ft');
  });

  test('all that is wrong is listed at once', async () => {
    const found = await problems('tightening', {
      thread: 'M10x9',
      strengthClass: '8.9',
      frictionThread: 3,
      frictionHead: -0.1,
      utilisation: 0.9,
      preload: 20,
      issuedTorque: -5,
      colour: 'red',
    });
    expect(found.map(({ path }) => path).sort()).toEqual([
      'colour',
      'frictionHead',
      'frictionThread',
      'issuedTorque',
      'preload',
      'strengthClass',
      'thread',
    ]);
    const of = (path: string) => found.find((one) => one.path === path);
    expect(of('thread')).toMatchObject({
      got: 'M10x9',
      expected: 'a pitch of 1.5, 1.25, 1, 0.75 mm',
    });
    expect(of('strengthClass')?.expected).toContain('8.8, 9.8');
    expect(of('frictionThread')).toMatchObject({ got: 3, expected: 'at most 1' });
    for (const one of found) expect(one.why.length).toBeGreaterThan(5);
  });

  test.each([
    ['two tightnesses', { proofShare: 0.75, preload: 20 }, 'preload'],
    ['two frictions', { surface: 'oiled' }, 'surface'],
    ['two scatters', { toolScatter: 0.05, scatterFactor: 1.6 }, 'scatterFactor'],
    [
      'an unknown surface',
      { surface: 'wet', frictionThread: undefined, frictionHead: undefined },
      'surface',
    ],
    ['a share above one', { utilisation: 1.2 }, 'utilisation'],
    ['a face within the hole', { bearingOuter: 12, hole: 13.5 }, 'bearingOuter'],
    ['a hole that the bolt does not pass', { hole: 11 }, 'hole'],
    ['a unit of something else', { issuedTorque: '20 kN' }, 'issuedTorque'],
    [
      'a hole of two kinds',
      { threadInto: { material: 'steel', shearStrength: 200 } },
      'threadInto/shearStrength',
    ],
    ['an unknown material', { threadInto: { material: 'cheese' } }, 'threadInto/material'],
    ['an insert smaller than the bolt', { threadInto: { insert: 'M10' } }, 'threadInto/insert'],
    ['yield above tensile', { strengthClass: { yield: 700, tensile: 600 } }, 'strengthClass'],
    ['a negative diameter', { thread: { diameter: -3 } }, 'thread/diameter'],
    ['a pitch that leaves no core', { thread: { diameter: 10, pitch: 9 } }, 'thread'],
    ['an area above the full section', { thread: { diameter: 10, stressArea: 90 } }, 'thread'],
    ['no thread', { thread: undefined }, 'thread'],
    ['a thread that is a number', { thread: 10 }, 'thread'],
  ])('bad input: %s', async (_, wrong, path) => {
    expect((await problems('tightening', { ...bolt, ...wrong })).map((one) => one.path)).toEqual([
      path,
    ]);
  });

  test('a nut factor below what the slope takes, and a diameter alone, are refused', async () => {
    const found = await problems('tightening', { thread: 'M12', nutFactor: 0.01 });
    expect(found).toMatchObject([{ path: 'nutFactor' }]);
    const bare = await problems('tightening', { thread: { diameter: 10 } });
    expect(bare).toMatchObject([{ path: 'thread/pitch' }]);
  });

  test('what may stand beside any object is ignored', async () => {
    const thread = { diameter: 12, pitch: 1.75, note: 'as measured', source: 'drawing' };
    const found = await run('tightening', { ...bolt, thread, id: 'x' });
    expect(found.id).toBe('x');
    expect(found.torque?.value).toBeCloseTo(93.01, 2);
  });

  test('part answers: what is open is null and names what it needs', async () => {
    const found = await run('tightening', { thread: 'M12' });
    expect(found).toMatchObject({ preload: null, torque: null, issued: null });
    expect(found.notWorkedOut).toContainEqual({ output: 'proofLoad', needs: ['strengthClass'] });
    expect(found.pitchDiameter?.value).toBeCloseTo(10.863, 3);
  });

  test('an uncertain preload is carried to the torque, and comes back as typed', async () => {
    const preload = { value: 40, unit: 'kN', expanded: 4, k: 2 };
    const found = await run('tightening', { ...bolt, preload });
    expect(found.preload).toMatchObject({ value: 40, u: 2 });
    expect((found.torque?.u ?? 0) / (found.torque?.value ?? 1)).toBeCloseTo(0.05, 9);
    const diameter = { value: 12, unit: 'mm', u: 0.01 };
    const measured = await run('tightening', { ...bolt, thread: { diameter, pitch: 1.75 } });
    expect(measured.pitchDiameter?.u).toBeCloseTo(0.01, 9);
    const typed = await run('tightening', { ...bolt, preload: '9000 lbf' });
    expect(typed.preload).toMatchObject({ given: '9000 lbf', unit: 'kN' });
  });

  test.each(['as received', 'oiled', 'anti-seize', 'threadlock'])(
    'surface %s: a range with its source, and the band of preload it makes',
    async (surface) => {
      const found = await run('tightening', { thread: 'M12', strengthClass: '8.8', surface });
      const working = found.working as unknown as Working;
      const row = (symbol: string) => working.find((one) => one.symbol === symbol);
      expect(row('μ_min')?.value).toBeLessThan(row('μ_max')?.value ?? 0);
      expect(row('μ_min')?.source).toMatchObject({ kind: 'published', edition: /2003/ });
      expect(row('MA_min')?.value).toBeLessThan(row('MA_max')?.value ?? 0);
      expect(String(found.cautions)).toMatch(/Friction is a range/);
      expect(recheckWorking(working)).toEqual([]);
    },
  );

  test('stainless: higher friction, and a word on galling', async () => {
    const found = await run('tightening', {
      thread: 'M12',
      strengthClass: 'A4-70',
      surface: 'oiled',
    });
    const working = found.working as unknown as Working;
    expect(working.find(({ symbol }) => symbol === 'μ_min')?.value).toBe(0.2);
    expect(String(found.cautions)).toContain('gall');
  });

  test('a verdict names the weakest source it rests on', async () => {
    const found = await run('tightening', { ...bolt, issuedTorque: 80 });
    expect(String(found.cautions)).toContain('from memory: VDI 2230');
    const bare = {
      thread: 'M12',
      strengthClass: 'A4-70',
      surface: 'as received',
      issuedTorque: 80,
    };
    expect(String((await run('tightening', bare)).cautions)).toContain(
      'common practice, no source',
    );
  });
});

describe('joint', () => {
  test('first worked case of its document', async () => {
    const stiff = { boltStiffness: 400, clampedStiffness: 1_200 };
    const found = await run('joint', {
      ...stiff,
      preload: 30,
      load: 12,
      proofLoad: 33.6,
      embedding: 8,
    });
    expect(found.loadShare?.value).toBeCloseTo(0.25, 12);
    expect(found.boltLoad?.value).toBeCloseTo(33, 12);
    expect(found.embeddingLoss?.value).toBeCloseTo(2.4, 12);
    expect(found.residualClamp?.value).toBeCloseTo(18.6, 12);
    expect(found.separationFactor?.value).toBeCloseTo(27.6 / 9, 12);
    expect(found.loadFactor?.value).toBeCloseTo(1.2, 12);
  });

  test('second worked case of its document', async () => {
    const found = await run('joint', findCalculation('joint')?.example);
    expect(found.boltStiffness?.value).toBeCloseTo(479.88, 2);
    expect(recheckWorking(found.working as unknown as Working)).toEqual([]);
    expect(found.loadFactor).not.toBeNull();
  });

  test('a joint that opens says so, with the load that the bolt then carries', async () => {
    const stiff = { boltStiffness: 207, clampedStiffness: 213 };
    const found = await run('joint', { ...stiff, preload: 5, load: 10 });
    expect(found.residualClamp?.value).toBeLessThan(0);
    expect(String(found.cautions)).toContain('whole load of 10 kN');
  });

  test('part answers, and nothing at all', async () => {
    const found = await run('joint', { bolt: [{ area: 58, length: 20 }], modulus: 205 });
    expect(found).toMatchObject({ clampedStiffness: null, boltLoad: null });
    expect(found.notWorkedOut).toContainEqual({
      output: 'clampedStiffness',
      needs: ['clamped', 'diameter'],
    });
    expect(await problems('joint', { preload: 3 })).toMatchObject([{ path: '' }]);
  });

  test('all that is wrong at once', async () => {
    const found = await problems('joint', {
      bolt: [{ area: -1, length: 10 }],
      modulus: 205,
      boltStiffness: 400,
      clamped: [{ modulus: 70 }],
      clampedStiffness: 2,
      method: 'cube',
    });
    expect(found.map(({ path }) => path).sort()).toEqual([
      'bolt/0/area',
      'boltStiffness',
      'clamped/0/thickness',
      'clampedStiffness',
      'method',
    ]);
  });
});
