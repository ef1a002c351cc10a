// How quickly a pack of a demo main engine is made, against its stated limits.

import { readFolder } from '../src/cli/read-folder.ts';
import { makePack } from '../src/pack/pack.ts';
import { readPlant } from '../src/plant/read.ts';
import { DOES } from '../src/plant/schema.ts';
import { solveWithHighs } from '../src/server/solver-inline.ts';

const MEDIAN_MS = 50;
const WORST_MS = 250;
const WARM = 5;
const TIMES = 40;

const { plant, problems } = readPlant(readFolder('demo/tern-rock'));
if (plant === null) throw new Error(JSON.stringify(problems));
const requests = Object.values(plant.machines)
  .filter((m) => m.type === 'main-engine')
  .flatMap((m) =>
    Object.entries(m.targets).flatMap(([target, t]) =>
      DOES.filter((d) => t.does[d] !== undefined).map((does) => ({ machine: m.id, target, does })),
    ),
  );

const spent: number[] = [];
for (const request of requests)
  for (let i = 0; i < WARM + TIMES; i += 1) {
    const start = performance.now();
    const made = await makePack(plant, request, solveWithHighs);
    if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
    if (i >= WARM) spent.push(performance.now() - start);
  }
spent.sort((a, b) => a - b);
const median = spent[Math.floor(spent.length / 2)] ?? Number.NaN;
const worst = spent.at(-1) ?? Number.NaN;
const heading = `warm (${requests.length} packs, ${TIMES} times each)`;
console.log(`## Pack of a demo main engine, ${heading}\n`);
console.log('| figure | measured | limit | ratio |\n| --- | --- | --- | --- |');
const row = (name: string, got: number, limit: number) =>
  console.log(`| ${name} | ${got.toFixed(1)} ms | ${limit} ms | ${(got / limit).toFixed(2)} |`);
row('median', median, MEDIAN_MS);
row('worst', worst, WORST_MS);
if (median > MEDIAN_MS || worst > WORST_MS) process.exitCode = 1;
