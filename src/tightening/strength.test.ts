// Strength classes against the published loads of bolts: every one, misprints of copies named.

import { describe, expect, test } from 'vitest';
import { tighteningInput } from './model.ts';
import { readStrength } from './strength.ts';
import classes from './tables/classes.published.json' with { type: 'json' };
import threads from './tables/threads.published.json' with { type: 'json' };
import { tightening } from './tightening.ts';

function loads(thread: string, strengthClass: string) {
  const answer = tightening(tighteningInput.parse({ thread, strengthClass }));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  const { proofLoad, breakingLoad, yieldPoint } = answer.result;
  return {
    proof: (proofLoad?.value ?? 0) * 1_000,
    ultimate: (breakingLoad?.value ?? 0) * 1_000,
    yieldPoint: yieldPoint?.value,
  };
}

const off = (value: number, published: number) => Math.abs(value / published - 1);

describe.each(['proof', 'ultimate'] as const)('%s loads', (which) => {
  const table = classes[which];
  test(`${table.title} (${table.origin}): every value within 1 %`, () => {
    let checked = 0;
    for (const [thread, ...values] of table.rows) {
      values.forEach((published, at) => {
        const cls = table.classes[at];
        if (typeof published !== 'number' || cls === undefined) return;
        expect(off(loads(String(thread), cls)[which], published)).toBeLessThan(0.01);
        checked += 1;
      });
    }
    expect(checked).toBe(which === 'proof' ? 87 : 119);
  });
});

test('misprints of copies are further off than rounding, and what is right comes out', () => {
  for (const { thread, cls, printed, right } of classes.misprints) {
    const { ultimate } = loads(thread, cls);
    expect(off(ultimate, right)).toBeLessThan(0.01);
    expect(off(ultimate, printed)).toBeGreaterThan(0.005);
  }
});

test(`${classes.iso898.title}, ${classes.iso898.place}: every row`, () => {
  for (const row of classes.iso898.rows) {
    const diameters = row.range === 'd <= 16 mm' ? [6, 16] : row.range ? [18, 39] : [8];
    for (const diameter of diameters) {
      const read = readStrength(row.cls, diameter);
      expect(read.ok && read.strength).toMatchObject({
        proofMPa: row.Sp,
        yieldMPa: row.yield_min,
        tensileMPa: row.Rm_min,
      });
    }
  }
});

test(`${classes.stainless.title}: proof is the 0.2 % limit over the stress area`, () => {
  for (const { cls, Rm, Rp02 } of classes.stainless.rows) {
    for (const name of cls.split('/')) {
      const found = loads('M12', name);
      const area = threads.coarse.rows.find(({ thread }) => thread === 'M12')?.As_published ?? 0;
      expect(off(found.proof, Rp02 * area)).toBeLessThan(0.005);
      expect(off(found.ultimate, Rm * area)).toBeLessThan(0.005);
      expect(found.yieldPoint).toBe(Rp02);
    }
  }
});

test('a class that is not there is refused with the list', () => {
  for (const name of ['8.9', '8', 'A3-70', 'SAE 6', '']) {
    const read = readStrength(name, 10);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.expected).toContain('8.8, 9.8, 10.9, 12.9, A2-50, A4-50');
  }
  for (const name of ['a4-70', 'SAE 5', 'SAE grade 5', 'sae j429 grade 8', ' 8.8 ']) {
    expect(readStrength(name, 10).ok).toBe(true);
  }
});

test('outside the sizes of its standard a class says so', () => {
  const cautions = (name: string, mm: number) => {
    const read = readStrength(name, mm);
    return read.ok ? read.strength.cautions.join(' ') : '';
  };
  expect(cautions('9.8', 20)).toContain('outside');
  expect(cautions('A4-70', 30)).toContain('2020');
  expect(cautions('8.8', 64)).toContain('outside');
  expect(cautions('8.8', 20)).toBe('');
});

test('where yield is not known nothing is said to fit', () => {
  const weighed = (more: object) => {
    const given = { thread: 'M10', surface: 'oiled', issuedTorque: 10, ...more };
    const answer = tightening(tighteningInput.parse(given));
    return answer.ok ? answer.result.issued?.verdict : answer.problems;
  };
  expect(weighed({})).toBeNull();
  expect(weighed({ strengthClass: '8.8' })).toBe('fits');
  expect(weighed({ clampNeeded: 100 })).toBe('too loose');
});
