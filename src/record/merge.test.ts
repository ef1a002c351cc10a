// Three named devices on one job, apart and together: one state, and every real conflict said.

import { describe, expect, test } from 'vitest';
import { below, type Random, randomFrom } from '../removal/seeded.ts';
import { english, knownIn, tell } from '../words/say.ts';
import { makeAct } from './act.ts';
import { mayRecord } from './closing.ts';
import { fold, stateHash } from './fold.ts';
import { order } from './order.ts';
import { stripProposal } from './proposal.ts';
import { newThing } from './strip.ts';
import { begun, pumpIsolation, stripDraft, stripId } from './strip-fixture.ts';
import type { Act, ActBody, Draft, JobState, State } from './types.ts';

const LONG = process.env.LONG === '1';
const MERGES = LONG ? 2_000 : 200;
const NAMES = ['ada', 'ben', 'cleo'] as const;
type Name = (typeof NAMES)[number];

/** A phone: the acts it holds, what it has said, and a clock that may be years wrong. */
type Phone = { readonly name: Name; held: Map<string, Act>; seq: number; readonly skewMs: number };

const stateOf = (phone: Phone): State => fold({ acts: [...phone.held.values()], packs: [] });

const MOST_YEARS_WRONG = 20;
const YEAR_MS = 365 * 24 * 3_600_000;

function phones(random: Random): readonly Phone[] {
  return NAMES.map((name) => ({
    name,
    held: new Map(),
    seq: 0,
    skewMs: Math.round((random() - 0.5) * 2 * MOST_YEARS_WRONG * YEAR_MS),
  }));
}

/** The phone says it without asking the core: what was done is done, and must be surfaced. */
function say(phone: Phone, draft: Draft): Act {
  phone.seq += 1;
  const clock = Date.UTC(2026, 2, 14, 8) + phone.skewMs + phone.seq * 1_000;
  const act = makeAct(
    { ...draft, by: phone.name },
    {
      vessel: 'tern-rock',
      device: `phone-${phone.name}`,
      deviceSeq: phone.seq,
      parents: order([...phone.held.values()]).heads,
      at: { utc: new Date(clock).toISOString(), offsetMinutes: 0 },
    },
  );
  phone.held.set(act.hash, act);
  return act;
}

/** Acts come across in any order and more than once; some do not come at all this time. */
function send(random: Random, from: Phone, to: Phone, share: number): void {
  const acts = shuffled(random, [...from.held.values(), ...from.held.values()]);
  for (const act of acts) if (random() < share) to.held.set(act.hash, act);
}

function shuffled<T>(random: Random, list: readonly T[]): T[] {
  return list
    .map((item) => ({ item, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

function jobOf(state: State): JobState {
  const job = state.jobs[stripId];
  if (job === undefined) throw new Error('the job is not there');
  return job;
}

/** One thing a person may do next, by what the phone knows. */
function deed(random: Random, phone: Phone): Draft | null {
  const state = stateOf(phone);
  const job = state.jobs[stripId];
  if (job === undefined) return null;
  const rows = stripProposal(state, stripId);
  const row = rows[below(random, Math.max(1, Math.min(rows.length, 4)))];
  const what = ['Cover', 'Hose', 'Bracket'][below(random, 3)] ?? 'Cover';
  const off: ActBody = {
    thing: newThing(job, 'part', what, phone.name),
    what,
    wet: random() < 0.7 ? 'no' : 'yes',
    fasteners: [{ count: 1 + below(random, 6), what: 'bolt' }],
    seals: below(random, 2),
  };
  const dice = random();
  if (dice < 0.3 || row === undefined) return stripDraft('took-off', off);
  if (dice < 0.35) return stripDraft('handed-over', { to: NAMES[below(random, 3)] ?? 'ada' });
  if (dice < 0.4) return stripDraft('note', { text: `note ${phone.seq}` });
  if (dice < 0.45) {
    const own = [...phone.held.values()].findLast((a) => a.device === `phone-${phone.name}`);
    return stripDraft('corrected', { of: own?.hash ?? '0'.repeat(64), why: 'mis-tap' });
  }
  if (dice < 0.5) return stripDraft('order-set', { order: rows.map((r) => r.thing).reverse() });
  const result = row.kind === 'proof' ? { result: random() < 0.8 ? 'pass' : 'fail' } : {};
  const fewer = typeof row.body.count === 'number' && random() < 0.1 ? { count: 0 } : {};
  return stripDraft(row.kind, { ...row.body, ...result, ...fewer });
}

/** Every phone ends with every act; `late` acts are said to a job that another has closed. */
function merged(seed: number): { readonly states: readonly State[]; readonly all: readonly Act[] } {
  const random = randomFrom(seed);
  const three = phones(random);
  const [ada] = three;
  if (ada === undefined) throw new Error('no phone');
  for (const draft of [begun(), ...pumpIsolation]) say(ada, draft);
  for (const other of three) send(random, ada, other, 1);
  for (let i = 0; i < 14; i++) {
    const phone = three[below(random, 3)] ?? ada;
    const draft = deed(random, phone);
    if (draft !== null) say(phone, draft);
    if (random() < 0.3) send(random, phone, three[below(random, 3)] ?? ada, random());
  }
  const closing = three[below(random, 3)] ?? ada;
  if (random() < 0.3) {
    const open = jobOf(stateOf(closing)).entries.filter((e) => e.open);
    const deviations = open.map((e) => ({ thing: e.thing, reason: 'sailing', limits: 'watched' }));
    say(closing, stripDraft('closed', { deviations }));
    const late = three[below(random, 3)] ?? ada;
    const draft = deed(random, late);
    if (draft !== null) say(late, draft);
  }
  const all = new Map(three.flatMap((p) => [...p.held]));
  const states = three.map((phone) => {
    for (const act of shuffled(random, [...all.values(), ...all.values()]))
      phone.held.set(act.hash, act);
    const acts = shuffled(random, [...phone.held.values(), ...phone.held.values()]);
    return fold({ acts, packs: [] });
  });
  return { states, all: [...all.values()] };
}

/** What a person wrote stays as it is; all else is said word for word, in Spanish too. */
function everyFindingIsTold(job: JobState, seed: number): void {
  const known = knownIn(job.said);
  for (const { kind, what } of job.findings) {
    if (kind === 'found' || kind === 'could not') continue;
    const said = known.get(what);
    expect(said && english(said), `seed ${seed}`).toBe(what);
    expect(tell(what, 'es', known), `seed ${seed}`).not.toBe(what);
  }
}

describe(`${MERGES} merges of ada, ben and cleo, seeds from 1`, () => {
  test('one state hash; work that a closing did not know of, and acts apart, are findings', () => {
    const said: Record<string, number> = {};
    for (let seed = 1; seed <= MERGES; seed++) {
      const { states, all } = merged(seed);
      const hashes = new Set(states.map(stateHash));
      expect(hashes.size, `seed ${seed}`).toBe(1);
      const [state] = states;
      if (state === undefined) throw new Error('no state');
      expect(state.waiting, `seed ${seed}`).toEqual([]);
      expect(state.unknown, `seed ${seed}`).toEqual([]);
      const job = jobOf(state);
      for (const f of job.findings) said[f.kind] = (said[f.kind] ?? 0) + 1;
      everyFindingIsTold(job, seed);
      lateAreFound(all, job, seed);
      apartStayOpen(all, job, seed);
      expect(
        stripProposal(state, stripId)
          .map((r) => r.thing)
          .sort(),
        `seed ${seed}`,
      ).toEqual(
        job.closed !== null
          ? []
          : job.entries
              .filter((e) => e.open)
              .map((e) => e.thing)
              .sort(),
      );
    }
    console.log(`seeds 1 to ${MERGES}: findings ${JSON.stringify(said)}`);
    for (const kind of ['at the same time', 'after closing', 'count differs'])
      expect(said[kind] ?? 0, kind).toBeGreaterThan(0);
  }, 600_000);
});

const voided = (all: readonly Act[]): ReadonlySet<unknown> =>
  new Set(all.filter((a) => a.kind === 'corrected').map((a) => a.body.of));

/** Told from the acts' parents alone, by a walk that shares nothing with the fold. */
function ancestorsOf(all: readonly Act[], hash: string): ReadonlySet<string> {
  const byHash = new Map(all.map((a) => [a.hash, a]));
  const found = new Set<string>();
  const ahead = [...(byHash.get(hash)?.parents ?? [])];
  for (let next = ahead.pop(); next !== undefined; next = ahead.pop()) {
    if (found.has(next)) continue;
    found.add(next);
    ahead.push(...(byHash.get(next)?.parents ?? []));
  }
  return found;
}

const WORK = ['took-off', 'put-back', 'seal-in', 'restored', 'untagged', 'drain-shut', 'proof'];

function lateAreFound(all: readonly Act[], job: JobState, seed: number): void {
  const corrected = voided(all);
  const closings = all.filter((a) => a.kind === 'closed' && !corrected.has(a.hash));
  const [closing] = closings;
  if (closing === undefined || closings.length > 1) return;
  const known = ancestorsOf(all, closing.hash);
  const late = all.filter(
    (a) => WORK.includes(a.kind) && !known.has(a.hash) && !corrected.has(a.hash),
  );
  const found = job.findings.filter((f) => f.kind === 'after closing').map((f) => f.act);
  for (const act of late) expect(found, `seed ${seed}: ${act.kind}`).toContain(act.hash);
}

/** Two who each fitted the same seal, neither knowing of the other: said, and left open. */
function apartStayOpen(all: readonly Act[], job: JobState, seed: number): void {
  const corrected = voided(all);
  if (corrected.size > 0) return;
  const fitted = all.filter((a) => a.kind === 'seal-in');
  for (const a of fitted) {
    for (const b of fitted) {
      if (a.hash >= b.hash || a.body.thing !== b.body.thing) continue;
      if (ancestorsOf(all, a.hash).has(b.hash) || ancestorsOf(all, b.hash).has(a.hash)) continue;
      const thing = `new-${String(a.body.thing)}`;
      const finding = job.findings.find((f) => f.kind === 'at the same time' && f.thing === thing);
      expect(finding, `seed ${seed}: ${thing}`).toBeDefined();
    }
  }
}

describe('by name', () => {
  const random = randomFrom(1);
  const taken = stripDraft('took-off', {
    thing: 'part/cooler',
    what: 'Cooler',
    wet: 'no',
    fasteners: [{ count: 6, what: 'bolt' }],
    seals: 3,
  });
  const start = () => {
    const [ada, ben] = phones(random);
    if (ada === undefined || ben === undefined) throw new Error('no phone');
    for (const draft of [begun(), taken]) say(ada, draft);
    send(random, ada, ben, 1);
    return { ada, ben };
  };
  const both = (ada: Phone, ben: Phone): State => {
    send(random, ada, ben, 1);
    send(random, ben, ada, 1);
    const states = [ada, ben].map(stateOf);
    expect(new Set(states.map(stateHash)).size).toBe(1);
    const [state] = states;
    if (state === undefined) throw new Error('no state');
    return state;
  };
  const seal = stripDraft('seal-in', { thing: 'seal/cooler:seal', count: 3 });

  test('both fitted the seal: said of both; it is owed until one takes it back', () => {
    const { ada, ben } = start();
    say(ada, seal);
    const bens = say(ben, seal);
    const job = jobOf(both(ada, ben));
    expect(job.findings).toMatchObject([
      { kind: 'at the same time', thing: 'new-seal/cooler:seal' },
    ]);
    expect(job.findings[0]?.what).toMatch(/seal-in by ada.*seal-in by ben|ben.*ada/);
    expect(job.entries.find((e) => e.thing === 'new-seal/cooler:seal')?.open).toBe(true);
    say(ben, stripDraft('corrected', { of: bens.hash, why: 'Ada fitted it' }));
    const settled = jobOf(both(ada, ben));
    expect(settled.entries.find((e) => e.thing === 'new-seal/cooler:seal')?.open).toBe(false);
  });

  test('a bolt left out, said after the closing: a finding, and the core refuses more work', () => {
    const { ada, ben } = start();
    for (let row = stripProposal(stateOf(ada), stripId)[0]; row !== undefined; ) {
      say(
        ada,
        stripDraft(row.kind, { ...row.body, ...(row.kind === 'proof' ? { result: 'pass' } : {}) }),
      );
      row = stripProposal(stateOf(ada), stripId)[0];
    }
    const closed = stripDraft('closed', { deviations: [] });
    expect(mayRecord(stateOf(ada), stripId, closed, [])).toBeNull();
    say(ada, closed);
    say(ben, stripDraft('put-back', { thing: 'joint/cooler', count: 5 }));
    const state = both(ada, ben);
    const job = jobOf(state);
    const kinds = job.findings.map((f) => f.kind);
    expect(kinds).toContain('after closing');
    expect(kinds).toContain('count differs');
    expect(job.findings.find((f) => f.kind === 'count differs')?.what).toMatch(/5 where 6/);
    const more = stripDraft('put-back', { thing: 'joint/cooler', count: 6 });
    expect(mayRecord(state, stripId, more, [])).not.toBeNull();
  });
});
