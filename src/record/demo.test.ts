// The laws of leaving out over the whole jobs of the island ferry and the water works.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { makePack } from '../pack/pack.ts';
import type { Pack } from '../pack/types.ts';
import { readPlant } from '../plant/read.ts';
import type { Plant } from '../plant/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { mayRecord } from './closing.ts';
import { chain, jobDraft, jobId, saying, startDraft } from './fixture.ts';
import { fold } from './fold.ts';
import { kindOf } from './kinds.ts';
import { nextSteps } from './next.ts';
import { leaveOut } from './rebuild.ts';
import type { Act, JobState } from './types.ts';

const demo = fileURLToPath(new URL('../../demo/', import.meta.url));

function plantIn(folder: string): Plant {
  const files = readdirSync(`${demo}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .map((file) => ({ file, text: readFileSync(`${demo}${folder}/${file}`, 'utf8') }));
  const { plant, problems } = readPlant(files);
  if (plant === null) throw new Error(JSON.stringify(problems.slice(0, 3)));
  return plant;
}

type Asked = { readonly machine: string; readonly target: string; readonly does: string };

const asked = (plant: Plant): Asked[] =>
  Object.values(plant.machines).flatMap((machine) =>
    Object.entries(machine.targets).flatMap(([target, spec]) =>
      Object.keys(spec.does).map((does) => ({ machine: machine.id, target, does })),
    ),
  );

/** The job as a person does it who always takes the first step that is ready. */
function wholeJobOf(pack: Pack): Act[] {
  const packs = [pack];
  const anyway = pack.decisions
    .filter((d) => d.settled === null)
    .map((d) => ({ decision: d.id, reason: 'demo', limits: 'demo' }));
  let acts = chain([startDraft(pack, { anyway })]);
  for (let i = 0; i <= pack.steps.length; i++) {
    const state = fold({ acts, packs });
    const [step] = nextSteps(state, jobId, pack);
    const draft = step === undefined ? jobDraft('closed', { deviations: [] }) : saying(pack, step);
    expect(mayRecord(state, jobId, draft, packs), step?.id ?? 'closed').toBeNull();
    acts = [...acts, ...chain([draft], 'phone-a', acts)];
    if (step === undefined) return acts;
  }
  throw new Error('more steps were ready than the pack has');
}

function jobOf(acts: readonly Act[], pack: Pack): JobState {
  const job = fold({ acts, packs: [pack] }).jobs[jobId];
  if (job === undefined) throw new Error('the job is not there');
  return job;
}

/** Every n-th only under `npm test`; all of them in the long run. */
const some = <T>(all: readonly T[], every: number): readonly T[] =>
  process.env.LONG === '1' ? all : all.filter((_, i) => i % every === 0);

describe.each(['tern-rock', 'water-works'])('%s', (folder) => {
  const plant = plantIn(folder);
  test.each(asked(plant).map((a) => [`${a.does} ${a.target}, ${a.machine}`, a]))(
    '%s: every step once, closed; leaving out any making good leaves exactly its entry',
    async (_, request) => {
      const made = await makePack(plant, request as Parameters<typeof makePack>[1], solveWithHighs);
      if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
      const { pack } = made;
      const acts = wholeJobOf(pack);
      const job = jobOf(acts, pack);
      expect(job.findings).toEqual([]);
      expect(job.closed).not.toBeNull();
      expect(Object.keys(job.done).sort()).toEqual(pack.steps.map((s) => s.id).sort());
      const closing = acts.filter(
        (a) => (kindOf(a.kind)?.closes(a.body, pack.facts) ?? []).length > 0,
      );
      const opening = acts.filter(
        (a) => (kindOf(a.kind)?.opens(a.body, pack.facts) ?? []).length > 0,
      );
      for (const act of some(closing, 3)) {
        const { entries } = jobOf(leaveOut(acts, act.hash), pack);
        const open = entries.flatMap((e) => (e.open ? [e.thing] : []));
        expect(open).toEqual(kindOf(act.kind)?.closes(act.body, pack.facts));
      }
      for (const act of some(opening, 3)) {
        const found = jobOf(leaveOut(acts, act.hash), pack).findings.filter(
          (f) => f.thing === act.body.thing && f.kind === 'made good without being undone',
        );
        expect(found.length, `${act.kind} ${act.body.thing}`).toBeGreaterThan(0);
      }
    },
  );
});
