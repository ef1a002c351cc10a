// The authority line stands where people begin to read, and each hazard has its sign and its words.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { AUTHORITY_LINE, CAUTIONS, cautionFor, type Hazard } from './authority.ts';

test('README.md holds the authority line word for word', () => {
  const text = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  expect(text.replace(/\n> ?/g, ' ').replace(/\s+/g, ' ')).toContain(AUTHORITY_LINE);
});

const hazards = Object.keys(CAUTIONS) as Hazard[];

test('every kind of danger that a step may hold has a caution', () => {
  expect(hazards.sort()).toEqual([
    'chemicals',
    'confined space',
    'electricity',
    'flooding',
    'fuel',
    'heat',
    'lifting',
    'rotation',
    'stored energy',
  ]);
});

test.each(hazards)(
  '%s: an ISO 7010 warning sign, a sentence, what a person must verify',
  (hazard) => {
    const caution = cautionFor(hazard);
    expect(caution.sign).toMatch(/^W0\d\d$/);
    expect(caution.text).toMatch(/^[A-Z].{20,}\.$/);
    expect(caution.verify.length).toBeGreaterThan(10);
    expect(caution.hazard).toBe(hazard);
  },
);
