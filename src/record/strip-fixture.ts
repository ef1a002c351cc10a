// For tests: jobs on machines that nobody has written down, by hand and by chance. All invented.

import type { Closure, Fastener } from '../plant/schema.ts';
import { below, type Random, randomFrom } from '../removal/seeded.ts';
import { chain, jobDraft } from './fixture.ts';
import { fold } from './fold.ts';
import { stripProposal, type ToMakeGood } from './proposal.ts';
import type { Act, ActBody, Draft } from './types.ts';

export const stripId = 'sea-water-pump-strip';

export const stripDraft = (kind: string, body: ActBody, by = 'Ada'): Draft =>
  jobDraft(kind, body, by, stripId);

export const begun = (extra: ActBody = {}): Draft =>
  stripDraft('strip-started', {
    vessel: 'Grey Heron',
    machine: 'Main engine',
    side: 'port',
    component: 'Sea-water pump',
    does: 'exchange',
    why: 'weeps at the shaft',
    hands: ['Ada', 'Ben'],
    ...extra,
  });

const photo = (n: number): string => n.toString(16).padStart(64, '0');

const took = (thing: string, what: string, wet: string, more: ActBody = {}): Draft =>
  stripDraft('took-off', { thing, what, wet, ...more });

const bolts = (count: number, what = 'bolt'): ActBody => ({ fasteners: [{ count, what }] });

/** The isolation of the pump: two valves and the starting plug, tagged, and the flow seen dead. */
export const pumpIsolation: readonly Draft[] = [
  stripDraft('shut-or-unplugged', {
    thing: 'closure/sea-inlet',
    what: 'Sea inlet valve',
    kind: 'sea valve',
    found: 'open',
    position: 'shut',
    turns: 6,
    medium: 'sea water',
    photo: photo(1),
  }),
  stripDraft('tagged', { thing: 'tag/1', closure: 'sea-inlet', station: 'at the valve' }),
  stripDraft('shut-or-unplugged', {
    thing: 'closure/cooler-valve',
    what: 'Valve to the cooler',
    kind: 'valve',
    found: 'open',
    position: 'shut',
    turns: 4,
    medium: 'sea water',
  }),
  stripDraft('tagged', { thing: 'tag/2', closure: 'cooler-valve', station: 'at the valve' }),
  stripDraft('shut-or-unplugged', {
    thing: 'closure/start-plug',
    what: 'Starter plug',
    kind: 'plug',
    found: 'plugged in',
    position: 'pulled',
  }),
  stripDraft('tagged', { thing: 'tag/3', closure: 'start-plug', station: 'at the starter' }),
  stripDraft('drain-opened', { thing: 'drain/pump-drain', what: 'Pump drain cock' }),
  stripDraft('proved-dead', { thing: 'drain/pump-drain', sawRun: 'yes', diedAway: 'yes' }),
  stripDraft(
    'second-look',
    {
      thing: 'look/isolation',
      rows: [
        { thing: 'closure/cooler-valve', position: 'shut' },
        { thing: 'closure/sea-inlet', position: 'shut' },
      ],
      alone: false,
    },
    'Ben',
  ),
];

export const pumpTaking: readonly Draft[] = [
  took('part/belt-guard', 'Belt guard', 'no', { ...bolts(4), bag: 1, photo: photo(2) }),
  took('part/inlet-hose', 'Inlet hose', 'yes', {
    ...bolts(2, 'hose clip'),
    bag: 2,
    medium: 'sea water',
    photo: photo(3),
  }),
  stripDraft('put-in', {
    thing: 'temp/inlet-blank',
    what: 'Wooden plug',
    kind: 'blank',
    where: 'inlet pipe',
  }),
  took('part/outlet-pipe', 'Outlet pipe', 'yes', { ...bolts(4), seals: 1, bag: 3 }),
  took('joint/stay-clamp', 'Clamp of the stay', 'no', bolts(1, 'clamp')),
  took('part/sea-water-pump', 'Sea-water pump', 'do not know', {
    ...bolts(6, 'stud and nut'),
    seals: 1,
    sealsLeft: 1,
    sealKind: 'ring',
    bag: 4,
    photo: photo(4),
  }),
];

export const pumpStrip: readonly Draft[] = [begun(), ...pumpIsolation, ...pumpTaking];

const FOUND: ActBody = { grade: 'near its end', failed: 'nothing', missing: 0 };

/** What a person does to make good, one after another as proposed, until nothing is open. */
export function makingGood(
  acts: readonly Act[],
  pick: (ready: readonly ToMakeGood[]) => ToMakeGood | undefined = (ready) => ready[0],
): readonly Draft[] {
  const drafts: Draft[] = [];
  let all = [...acts];
  for (let i = 0; i < 1_000; i++) {
    const rows = stripProposal(fold({ acts: all, packs: [] }), stripId);
    const ready = rows.filter((r) => r.ready);
    const row = pick(ready);
    if (row === undefined) return drafts;
    const before =
      row.thing === 'proof/running'
        ? [
            stripDraft('people-clear', { thing: 'check/clear:start' }),
            stripDraft('started', { thing: 'check/first-start' }),
          ]
        : [];
    const draft = stripDraft(row.kind, {
      ...row.body,
      ...(row.kind === 'proof' ? { result: 'pass' } : {}),
      ...(row.kind === 'as-found' ? FOUND : {}),
    });
    drafts.push(...before, draft);
    all = [...all, ...chain([...before, draft], 'phone-a', all)];
  }
  throw new Error('the making good has no end');
}

const KINDS: readonly Fastener['kind'][] = [
  'bolt',
  'cap screw',
  'stud and nut',
  'hose clip',
  'nut',
];
const CLOSURES: readonly (Closure['kind'] | 'plug')[] = ['valve', 'sea valve', 'breaker', 'plug'];
const MEDIUM = ['sea water', 'jacket water', 'lube oil'] as const;
const WET = ['yes', 'no', 'do not know'] as const;

const one = <T>(random: Random, list: readonly [T, ...T[]] | readonly T[]): T => {
  const found = list[below(random, list.length)];
  if (found === undefined) throw new Error('a list without anything');
  return found;
};

/** A strip by chance: shutting, taking off, putting in; wet things only after the proof. */
export function randomStrip(seed: number): readonly Draft[] {
  const random = randomFrom(seed);
  const chance = (share: number): boolean => random() < share;
  const drafts: Draft[] = [begun(chance(0.5) ? {} : { side: '', component: `Cooler ${seed}` })];
  const shutting = 1 + below(random, 3);
  for (let i = 0; i < shutting; i++) {
    const kind = i === 0 ? 'valve' : one(random, CLOSURES);
    drafts.push(
      stripDraft('shut-or-unplugged', {
        thing: `closure/c${i}`,
        what: `Closure ${i}`,
        kind,
        found: one(random, ['open', 'half open', 'on']),
        position: kind === 'plug' ? 'pulled' : 'shut',
        ...(chance(0.5) ? { turns: below(random, 9) } : {}),
        ...(chance(0.5) ? { medium: one(random, MEDIUM) } : {}),
      }),
      stripDraft('tagged', { thing: `tag/${i + 1}`, closure: `c${i}` }),
    );
  }
  drafts.push(
    stripDraft('drain-opened', { thing: 'drain/d', what: 'Drain cock' }),
    stripDraft('proved-dead', { thing: 'drain/d', sawRun: true, diedAway: true }),
  );
  const things = 1 + below(random, 7);
  for (let i = 0; i < things; i++) drafts.push(...takenByChance(random, i));
  return drafts;
}

function takenByChance(random: Random, i: number): readonly Draft[] {
  const chance = (share: number): boolean => random() < share;
  const sort = chance(0.2) ? 'joint' : 'part';
  const wet = one(random, WET);
  const kinds = Array.from({ length: below(random, 3) }, () => ({
    count: 1 + below(random, 8),
    what: one(random, KINDS),
  }));
  const off = took(`${sort}/t${i}`, `Thing ${i}`, wet, {
    ...(kinds.length > 0 ? { fasteners: kinds } : {}),
    ...(chance(0.4) ? { seals: 1 + below(random, 2) } : {}),
    ...(chance(0.1) ? { sealsLeft: 1 } : {}),
    ...(chance(0.5) ? { bag: i + 1 } : {}),
    ...(wet === 'yes' && chance(0.5) ? { medium: one(random, MEDIUM) } : {}),
    ...(chance(0.3) ? { photo: photo(i + 10) } : {}),
  });
  if (!chance(0.3)) return [off];
  const kind = one(random, ['blank', 'tie', 'rag', 'lock']);
  const put = { thing: `temp/p${i}`, what: `Put in ${i}`, kind, where: `end ${i}` };
  return [off, stripDraft('put-in', put)];
}
