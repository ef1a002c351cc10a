// Laws of `tightening` and `joint`: friction, round trips, verdicts, workings, no endless figure.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { joint } from './joint.ts';
import { jointInput, jointOutput } from './joint-model.ts';
import { holeNames, tighteningInput, tighteningOutput } from './model.ts';
import { classNames } from './strength.ts';
import { surfaces } from './tables/friction-ranges.ts';
import { metricRows, unifiedRows } from './tables/thread-series.ts';
import { tightening } from './tightening.ts';

const SEED = 20261125;
const options = { seed: SEED, numRuns: process.env.LONG ? 5_000 : 500 };

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const known = metricRows.filter(([d]) => d >= 4 && d <= 39);
const metric = fc.constantFrom(...known.map(([d]) => `M${d}`));
const named = fc.constantFrom(
  ...metricRows.flatMap(([d, coarse, fine]) => [coarse, ...fine].map((p) => `M${d}x${p}`)),
  ...unifiedRows.flatMap(([size, , coarse, fine]) =>
    [coarse, fine].flatMap((count) => (count === null ? [] : [`${size}-${count}`])),
  ),
);
const given = between(3, 60).chain((diameter) =>
  fc.record(
    { diameter: fc.constant(diameter), pitch: between(0.2, diameter / 4) },
    { requiredKeys: ['diameter'] },
  ),
);
const strength = fc.constantFrom(...classNames);
const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });

const friction = fc.oneof(
  fc.constant({}),
  fc.record({ frictionThread: between(0, 0.5), frictionHead: between(0, 0.5) }),
  fc.record({ frictionThread: between(0.02, 0.5) }),
  fc.record({ surface: fc.constantFrom(...surfaces) }),
  fc.record({ nutFactor: between(0.05, 0.5) }),
);
const tightness = fc.oneof(
  fc.constant({}),
  fc.record({ utilisation: between(0.05, 1) }),
  fc.record({ proofShare: between(0.05, 1) }),
  fc.record({ preload: between(0.1, 300) }),
);
const spread = fc.oneof(
  fc.constant({}),
  fc.record({ toolScatter: between(0, 0.5) }),
  fc.record({ scatterFactor: between(1, 4) }),
);
const into = fc.record(
  {
    material: fc.constantFrom(...holeNames),
    engagement: between(2, 80),
    insert: fc.constantFrom(true, false, 'wire thread'),
  },
  { requiredKeys: [] },
);

const anything = fc
  .tuple(
    fc.record({
      thread: fc.oneof(named, given),
      strengthClass: maybe(fc.oneof(strength, fc.constant({ yield: 400 }), fc.constant({}))),
      issuedTorque: maybe(between(0.5, 2_000)),
      clampNeeded: maybe(between(0, 100)),
      threadInto: maybe(into),
      bearingOuter: maybe(between(150, 200)),
    }),
    friction,
    tightness,
    spread,
  )
  .map(([base, ...more]) => Object.assign({}, base, ...more) as Record<string, unknown>);

const solved = (raw: unknown) => tightening(tighteningInput.parse(raw));

function result(raw: unknown) {
  const answer = solved(raw);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.result;
}

function noEndless(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  else if (typeof value === 'object' && value !== null) Object.values(value).forEach(noEndless);
}

describe(`tightening, seed ${SEED}`, () => {
  test('any input: workings come out, shapes are as published, null is named, no NaN', () => {
    let worked = 0;
    const law = fc.property(anything, (raw) => {
      const answer = solved(raw);
      if (!answer.ok) {
        expect(answer.problems.length).toBeGreaterThan(0);
        return;
      }
      worked += 1;
      noEndless(answer.result);
      expect(recheckWorking(answer.result.working as Working)).toEqual([]);
      expect(tighteningOutput.safeParse(answer.result).error).toBeUndefined();
      const { working, cautions, notWorkedOut, ...outputs } = answer.result;
      for (const [output, value] of Object.entries(outputs)) {
        const missing = notWorkedOut.find((one) => one.output === output);
        if (value !== null) expect(missing).toBeUndefined();
        else expect({ output, needs: missing?.needs.length ?? 0 }).not.toMatchObject({ needs: 0 });
      }
    });
    fc.assert(law, options);
    expect(worked).toBeGreaterThan(options.numRuns / 2);
  });

  test('torque grows with friction; the preload at a share of yield falls', () => {
    const law = fc.property(
      metric,
      strength,
      between(0.02, 0.4),
      between(0.001, 0.2),
      (thread, strengthClass, mu, more) => {
        const at = (frictionThread: number, how: object) =>
          result({
            thread,
            strengthClass,
            frictionThread,
            frictionHead: frictionThread,
            bearingOuter: 70,
            hole: 40,
            ...how,
          });
        const fixed = { preload: 5 };
        const less = at(mu, fixed).torque?.value ?? Number.NaN;
        expect(at(mu + more, fixed).torque?.value).toBeGreaterThan(less);
        const preload = at(mu, {}).preload?.value ?? Number.NaN;
        expect(at(mu + more, {}).preload?.value).toBeLessThan(preload);
      },
    );
    fc.assert(law, options);
  });

  test('preload times nut factor times diameter is the torque', () => {
    const law = fc.property(
      metric,
      strength,
      friction,
      tightness,
      (thread, strengthClass, rubbing, how) => {
        const found = result({
          thread,
          strengthClass,
          bearingOuter: 70,
          hole: 40,
          ...rubbing,
          ...how,
        });
        if (found.torque === null || found.preload === null || found.nutFactor === null) return;
        const product = found.preload.value * found.nutFactor.value * Number(thread.slice(1));
        expect(product / found.torque.value).toBeCloseTo(1, 9);
      },
    );
    fc.assert(law, options);
  });

  test('round trip: the torque for a preload, issued, gives that preload and nut factor', () => {
    const law = fc.property(
      metric,
      between(0.02, 0.5),
      between(0.5, 200),
      (thread, mu, preload) => {
        const rubbing = { frictionThread: mu, frictionHead: mu, bearingOuter: 70, hole: 40 };
        const torque = result({ thread, ...rubbing, preload }).torque?.value;
        const back = result({ thread, ...rubbing, issuedTorque: torque });
        expect((back.issued?.preloadMin.value ?? 0) / preload).toBeCloseTo(1, 9);
        expect((back.issued?.preloadMax.value ?? 0) / preload).toBeCloseTo(1, 9);
        const implied = result({ thread, preload, issuedTorque: torque }).nutFactor?.value ?? 0;
        expect(implied / (back.nutFactor?.value ?? 0)).toBeCloseTo(1, 9);
      },
    );
    fc.assert(law, options);
  });

  test('the verdict on an issued torque follows from its bounds', () => {
    const seen = new Set<unknown>();
    const law = fc.property(
      metric,
      strength,
      fc.constantFrom(...surfaces),
      between(0, 0.3),
      between(0.05, 3),
      between(0, 1.2),
      between(0.2, 2),
      (thread, strengthClass, surface, toolScatter, size, clamp, deep) => {
        const d = Number(thread.slice(1));
        const bolt = { thread, strengthClass, surface, bearingOuter: 70, hole: 40 };
        const plain = result(bolt);
        const issuedTorque = (plain.torque?.value ?? 0) * size;
        const clampNeeded = (plain.preload?.value ?? 0) * clamp;
        const threadInto = { material: 'aluminium', engagement: deep * d };
        const { issued, stripping } = result({
          ...bolt,
          toolScatter,
          issuedTorque,
          clampNeeded,
          threadInto,
        });
        if (issued === null || stripping === null) throw new Error('nothing issued');
        const [low, high] = [issued.yieldShareMin?.value ?? 0, issued.yieldShareMax?.value ?? 0];
        expect(low).toBeLessThanOrEqual(high);
        expect(issued.preloadMin.value).toBeLessThanOrEqual(issued.preloadMax.value);
        const wanted =
          low > 1
            ? 'cannot be right'
            : high > 1
              ? 'may yield'
              : issued.preloadMax.value > stripping.load.value
                ? 'may strip'
                : issued.preloadMin.value < clampNeeded
                  ? 'too loose'
                  : 'fits';
        expect(issued.verdict).toBe(wanted);
        seen.add(issued.verdict);
      },
    );
    fc.assert(law, options);
    expect(seen.size).toBe(5);
  });
});

const pieces = fc.array(fc.record({ area: between(5, 2_000), length: between(0.5, 200) }), {
  minLength: 1,
  maxLength: 6,
});
const layers = fc.array(fc.record({ modulus: between(20, 250), thickness: between(0.5, 100) }), {
  minLength: 1,
  maxLength: 6,
});
const joints = fc.record(
  {
    bolt: pieces,
    modulus: between(50, 250),
    clamped: layers,
    diameter: between(3, 60),
    method: fc.constantFrom('cone', 'wileman'),
    preload: between(0, 500),
    load: between(0, 300),
    proofLoad: between(0.5, 500),
    embedding: between(0, 30),
  },
  { requiredKeys: [] },
);

describe(`joint, seed ${SEED}`, () => {
  test('any input: workings come out, shapes are as published, null is named, no NaN', () => {
    const law = fc.property(joints, (raw) => {
      const answer = joint(jointInput.parse(raw));
      if (!answer.ok) {
        expect(answer.problems.length).toBe(1);
        return;
      }
      noEndless(answer.result);
      expect(recheckWorking(answer.result.working as Working)).toEqual([]);
      expect(jointOutput.safeParse(answer.result).error).toBeUndefined();
      const { working, cautions, notWorkedOut, ...outputs } = answer.result;
      for (const [output, value] of Object.entries(outputs)) {
        const missing = notWorkedOut.find((one) => one.output === output);
        expect(value === null).toBe((missing?.needs.length ?? 0) > 0);
      }
    });
    fc.assert(law, options);
  });

  test('bolt and parts together carry the load; turned round, the parts are as stiff', () => {
    const law = fc.property(
      pieces,
      layers,
      between(3, 60),
      between(1, 400),
      between(0, 300),
      (bolt, clamped, diameter, preload, load) => {
        const at = (order: typeof clamped) => {
          const answer = joint(
            jointInput.parse({ bolt, modulus: 205, clamped: order, diameter, preload, load }),
          );
          if (!answer.ok) throw new Error('it was refused');
          return answer.result;
        };
        const found = at(clamped);
        const pulled = (found.boltLoad?.value ?? 0) - (found.residualClamp?.value ?? 0);
        expect(Math.abs(pulled - load)).toBeLessThan(1e-9 * (preload + load));
        const turned = at([...clamped].reverse()).clampedStiffness?.value ?? 0;
        expect(turned / (found.clampedStiffness?.value ?? 0)).toBeCloseTo(1, 9);
      },
    );
    fc.assert(law, options);
  });
});
