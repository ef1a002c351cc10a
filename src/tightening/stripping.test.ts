// Stripping of threads: a published example of the formula, the limits it takes, the weaker side.

import { describe, expect, test } from 'vitest';
import { tighteningInput } from './model.ts';
import { holeAreaPerMm } from './stripping.ts';
import table from './tables/stripping.published.json' with { type: 'json' };
import { limitsOf, readThread } from './thread.ts';
import { tightening } from './tightening.ts';

function solve(threadInto: object, more: object = {}) {
  const raw = { thread: 'M10', strengthClass: '8.8', frictionThread: 0.12, frictionHead: 0.12 };
  const answer = tightening(tighteningInput.parse({ ...raw, threadInto, ...more }));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.result;
}

test(`${table.example.title}, ${table.example.place} (${table.example.origin})`, () => {
  for (const row of table.example.rows) {
    const perMm = holeAreaPerMm(row.pitchMm, row.majorMm, row.internalPitchMm);
    const engagement = row.loadN / (row.shearMPa * perMm);
    expect(Math.abs(engagement / row.engagementMm - 1)).toBeLessThan(0.005);
  }
});

test('the example takes the greatest major diameter for the least, which needs more thread', () => {
  const read = readThread('M10');
  const limits = read.ok ? limitsOf(read.thread) : null;
  const [row] = table.example.rows;
  if (limits === null || row === undefined) throw new Error('no limits');
  // The standard rounds each tolerance to a preferred number: 0.18 mm here, 0.172 by its formula.
  expect(Math.abs(limits.holePitchMaxMm - row.internalPitchMm)).toBeLessThan(0.01);
  expect(Math.abs(limits.majorMinMm - 9.732)).toBeLessThan(0.005);
  const perMm = holeAreaPerMm(1.5, limits.majorMinMm, limits.holePitchMaxMm);
  const engagement = row.loadN / (row.shearMPa * perMm);
  expect(engagement / row.engagementMm).toBeGreaterThan(1.1);
});

describe('the weaker side', () => {
  test('a soft hole strips first, a hard one leaves it to the bolt', () => {
    const engagement = 10;
    const soft = solve({ material: 'aluminium', engagement }).stripping;
    const hard = solve({ shearStrength: 900, engagement }).stripping;
    expect([soft?.weaker, hard?.weaker]).toEqual(['hole', 'bolt']);
    expect(hard?.load.value).toBeGreaterThan(soft?.load.value ?? Number.NaN);
  });

  test('twice the engagement, twice the load; share is preload over it', () => {
    const one = solve({ material: 'cast iron', engagement: 8 });
    const two = solve({ material: 'cast iron', engagement: 16 });
    expect((two.stripping?.load.value ?? 0) / (one.stripping?.load.value ?? 1)).toBeCloseTo(2, 9);
    const share = (one.preload?.value ?? 0) / (one.stripping?.load.value ?? 1);
    expect(one.stripping?.share?.value).toBeCloseTo(share, 12);
  });

  test('a short hold in aluminium strips before an 8.8 bolt yields: so says the verdict', () => {
    const into = { material: 'aluminium', engagement: 10 };
    const { issued, stripping } = solve(into, { issuedTorque: 48 });
    expect(stripping?.load.value).toBeLessThan(issued?.preloadMax.value ?? 0);
    expect(issued?.verdict).toBe('may strip');
  });

  test('an insert brings its larger thread; without one stated the hole is not made better', () => {
    const into = { material: 'aluminium', engagement: 15 };
    const bare = solve(into).stripping?.load.value ?? 0;
    const unknown = solve({ ...into, insert: true });
    expect(unknown.stripping?.load.value).toBe(bare);
    expect(unknown.cautions.join(' ')).toContain('outer thread is not given');
    expect(solve({ ...into, insert: 'M14x1.5' }).stripping?.load.value).toBeGreaterThan(bare);
    expect(solve({ ...into, insert: 'wire thread' }).stripping?.load.value).toBe(bare);
  });

  test('without a hole it says that none was checked', () => {
    const answer = tightening(tighteningInput.parse({ thread: 'M10', strengthClass: '8.8' }));
    expect(answer.ok && answer.result.cautions).toContain('hole not checked');
    expect(answer.ok && answer.result.stripping).toBeNull();
    expect(solve({ material: 'bronze' }).notWorkedOut).toContainEqual({
      output: 'stripping',
      needs: ['threadInto/engagement'],
    });
  });

  test('a bolt of unknown tensile strength: only the hole is weighed, and it says so', () => {
    const into = { shearStrength: 150, engagement: 12 };
    const { stripping, cautions } = solve(into, { strengthClass: { yield: 640 } });
    expect(stripping?.weaker).toBe('hole');
    expect(cautions.join(' ')).toContain("bolt's own thread is not checked");
  });
});
