// Hundreds of plants wrong by construction: what is reported stands where the fault was put.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { FAULTS, type Fault } from './faults.ts';
import { fixture } from './fixture.ts';
import { readPlant } from './read.ts';
import { numbersFrom } from './text-scan.ts';
import type { PlantText } from './types.ts';
import { LATE } from './wrong-sense.ts';
import { baseOf, EARLY, type Wrong } from './wrong-text.ts';

const SEED = 20_261_124;
const EACH = 15;
const TRIES = 400;

function demo(name: string): PlantText {
  const folder = fileURLToPath(new URL(`../../demo/${name}/`, import.meta.url));
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .map((file) => ({ file, text: readFileSync(`${folder}${file}`, 'utf8') }));
}

const bases = [fixture(), demo('tern-rock'), fixture(), demo('water-works')].map(baseOf);
const faults = Object.keys(FAULTS) as Fault[];

/** The n-th wrong plant of a fault; the bases take turns, one that has no place for it passes. */
function wrongPlant(fault: Fault, n: number): { made: Wrong; seed: number } | null {
  const make = EARLY[fault] ?? LATE[fault];
  for (let tried = 0; tried < TRIES && make !== undefined; tried++) {
    const seed = SEED + faults.indexOf(fault) * 100_000 + n * 1000 + tried;
    const base = bases[(n + Math.floor(tried / 20)) % bases.length];
    const made = base === undefined ? null : make(base, numbersFrom(seed));
    if (made !== null) return { made, seed };
  }
  return null;
}

test('every fault of the list has a way of being put in', () => {
  expect(faults).toHaveLength(20);
  for (const fault of faults) expect(EARLY[fault] ?? LATE[fault]).toBeTypeOf('function');
});

test('the plants the faults are put into are right', () => {
  for (const { files } of bases) {
    expect(readPlant(files).problems.filter(({ level }) => level === 'must')).toEqual([]);
  }
});

test.each(faults)(`%s, ${EACH} times from seed ${SEED}: told alone, at its place`, (fault) => {
  for (let n = 0; n < EACH; n++) {
    const found = wrongPlant(fault, n);
    if (found === null) throw new Error(`${fault} found no place, n ${n}`);
    const { made, seed } = found;
    const { plant, problems } = readPlant(made.files);
    const told = problems
      .filter(({ level }) => level === 'must')
      .map(({ fault: which, file, line, path }) => ({ fault: which, file, line, path }));
    const { file, line, path } = made;
    expect(told, `seed ${seed}`).toEqual([{ fault, file, line, path }]);
    expect(plant).toBeNull();
  }
});
