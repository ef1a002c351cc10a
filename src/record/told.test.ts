// What the record says, in Spanish: entries, findings, refusals, handing over, boxing up.

import { expect, test } from 'vitest';
import type { Pack } from '../pack/types.ts';
import { english, knownIn, type Sentence, tell } from '../words/say.ts';
import { mayRecord } from './closing.ts';
import { doneToHere } from './done-to-here.ts';
import { chain, fixturePack, jobDraft, jobId, saying, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import { handOver } from './hand-over.ts';
import { kinds } from './kinds.ts';
import { stripProposal } from './proposal.ts';
import { pumpStrip, randomStrip, stripId } from './strip-fixture.ts';
import type { Draft, JobState } from './types.ts';

const ENGLISH =
  /\b(the|and|of|with|not|is|are|was|nobody|undone|before|without|said|seen|owed|open|shut)\b/i;

const CODES = new RegExp(`\\b(?:${Object.keys(kinds).join('|')}) (?=[a-z-]+/)`, 'g');

/** Ids of acts, things and packs stand in a sentence as they are; so do the texts of a fixture. */
const bare = (text: string): string =>
  text.replace(CODES, '').replace(/\b[a-z-]+\/[\w:.-]+|\b[0-9a-f]{16,}\b|"[^"]*"|«[^»]*»/g, '');

type Shown = { readonly text: string; readonly said: readonly Sentence[] };

function check(rows: readonly Shown[]): number {
  const untold = new Set<string>();
  let told = 0;
  for (const { text, said } of rows) {
    const known = knownIn(said);
    const one = known.get(text);
    if (one !== undefined) expect(english(one)).toBe(text);
    const spanish = tell(text, 'es', known);
    if (spanish !== text) told++;
    if (one !== undefined && spanish === text && !SAME.has(one.key)) untold.add(text);
    if (one === undefined && spanish === text) untold.add(`not ours: ${text}`);
    // The fixture names its parts, steps and proofs in English; ours must not stay so.
    const args = new Set(said.flatMap((s) => s.args.flat()).map(String));
    const names = [...args].filter((arg) => !known.has(arg) && tell(arg, 'es') === arg);
    const ours = names.reduce((rest, name) => rest.replaceAll(name, ''), spanish);
    if (ENGLISH.test(bare(ours))) untold.add(spanish);
  }
  expect([...untold]).toEqual([]);
  return told;
}

/** Names and figures joined, nothing else. */
const SAME: ReadonlySet<string> = new Set(['proofFailed', 'listedThing', 'placed']);

const shownOf = (job: JobState, pack: Pack | null): readonly Shown[] => {
  const said = [...(pack?.said ?? []), ...job.said];
  const own = job.findings.filter((f) => f.kind !== 'found' && f.kind !== 'could not');
  return [
    ...job.entries.map((e) => e.what),
    ...own.map((f) => f.what),
    ...job.isolation.why.split('; '),
    ...job.looks.map((l) => l.why),
  ].map((text) => ({ text, said }));
};

test('entries, findings and the isolation of a job at every act are told', () => {
  const pack = fixturePack();
  const drafts = wholeJob(pack);
  let told = 0;
  for (let n = 1; n <= drafts.length; n++) {
    const state = fold({ acts: chain(drafts.slice(0, n)), packs: [pack] });
    const job = state.jobs[jobId];
    if (job === undefined) throw new Error('no job');
    told += check(shownOf(job, pack));
    const next = handOver(state, jobId, pack);
    const said = [...job.said, ...next.said];
    told += check([...next.notTight, next.isolation].map((text) => ({ text, said })));
    const stop = doneToHere(state, jobId, pack, pack.steps.at(-1)?.id ?? '').stopsAt;
    if (stop !== null) told += check([{ text: stop.why, said: [] }]);
  }
  expect(told).toBeGreaterThan(300);
});

test('a job done back to front makes findings, and each is told', () => {
  const pack = fixturePack();
  const [start, ...rest] = wholeJob(pack).filter((d) => d.kind !== 'closed');
  if (start === undefined) throw new Error('no job');
  const wrong: Draft[] = rest.map((d) => ({
    ...d,
    body: {
      ...d.body,
      ...(d.body.count === undefined ? {} : { count: 1 }),
      ...(d.kind === 'shut' ? { position: 'half open' } : {}),
      ...(d.kind === 'checked' ? { result: 'not good' } : {}),
    },
  }));
  const job = fold({ acts: chain([start, ...wrong.reverse()]), packs: [pack] }).jobs[jobId];
  if (job === undefined) throw new Error('no job');
  expect(new Set(job.findings.map((f) => f.kind)).size).toBeGreaterThan(3);
  expect(check(shownOf(job, pack))).toBeGreaterThan(20);
});

test('every refusal of every step said too early, and of closing, is told', () => {
  const pack = fixturePack();
  const begun = fold({ acts: chain([startDraft(pack)]), packs: [pack] });
  const drafts: Draft[] = [
    ...pack.steps.map((step) => saying(pack, step)),
    ...pack.steps.map((step): Draft => {
      const draft = saying(pack, step);
      return { ...draft, body: { ...draft.body, together: true } };
    }),
    jobDraft('closed', { deviations: [] }),
    jobDraft('closed', { deviations: [{ thing: 'joint/x', reason: 'r', limits: 'l' }] }),
    jobDraft('decided', { finding: 'none', owner: 'Ada', what: 'x' }),
    jobDraft('seen-at-machine', { thing: 'joint/x' }),
    jobDraft('no-such-kind', {}),
    jobDraft('note', { text: 'x' }, ''),
    jobDraft('note', { text: 'x' }, 'Ada', 'another-job'),
    startDraft(pack),
  ];
  const refusals = drafts.flatMap((d) => mayRecord(begun, jobId, d, [pack]) ?? []);
  expect(refusals.length).toBeGreaterThan(15);
  const job = begun.jobs[jobId];
  const said = [...(pack.said ?? []), ...(job?.said ?? [])];
  const rows = refusals.flatMap((r) =>
    [r.why, ...(r.stop === 'not closed' ? r.open : [])].map((text) => ({
      text,
      said: [...said, ...(r.said ?? [])],
    })),
  );
  expect(check(rows)).toBeGreaterThan(15);
});

test('a strip without a pack is told: what is open, and how it goes back', () => {
  let told = 0;
  for (const drafts of [pumpStrip, ...[1, 2, 3, 4, 5].map((seed) => randomStrip(seed))]) {
    const state = fold({ acts: chain(drafts), packs: [] });
    const job = state.jobs[stripId];
    if (job === undefined) throw new Error('no strip');
    told += check(shownOf(job, null));
    const rows = stripProposal(state, stripId);
    told += check(rows.map(({ text, said }) => ({ text, said: [...job.said, ...said] })));
  }
  expect(told).toBeGreaterThan(60);
});
