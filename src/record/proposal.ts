// Boxing up a machine that nobody has written down: the reverse of what was seen, none forgotten.

import type { Ask, Thing } from '../pack/types.ts';
import { type Caution, cautionFor, type Hazard } from '../quantity/authority.ts';
import { FLOW, many } from './strip.ts';
import { after, before } from './things.ts';
import type { ActBody, Entry, JobState, Seen, State, StripState } from './types.ts';

/** One thing to make good: what is said, what is recorded, what must be answered besides. */
export type ToMakeGood = {
  readonly thing: Thing;
  /** The kind of the act that makes it good, and the body that one tap gives it. */
  readonly kind: string;
  readonly body: ActBody;
  readonly asks: readonly Ask[];
  readonly text: string;
  readonly place: string | null;
  readonly count: { readonly n: number; readonly what: string } | null;
  /** Pictures taken when it came off. */
  readonly photos: readonly string[];
  readonly cautions: readonly Caution[];
  readonly openedBy: string;
  /** Open things that came off after it: it may stand behind them, so they go back first. */
  readonly waitsFor: readonly Thing[];
  readonly ready: boolean;
};

/** Every open entry once, in the order proposed or set by a person; closures come after parts. */
export function stripProposal(state: State, job: string): readonly ToMakeGood[] {
  const now = state.jobs[job];
  const strip = now?.strip ?? null;
  if (now === undefined || strip === null || now.closed !== null) return [];
  const open = now.entries.filter((e) => e.open);
  const rows = inOrder(open, strip).map((entry) => {
    const waitsFor = waiting(entry, open, strip);
    const seen = seenOf(entry.thing, strip);
    return {
      ...wordsOf(entry, seen, strip),
      thing: entry.thing,
      photos: photosOf(entry.thing, seen, now),
      cautions: hazardsOf(entry, seen, strip).map(cautionFor),
      openedBy: entry.openedBy,
      waitsFor,
      ready: waitsFor.length === 0,
    };
  });
  return rows;
}

/** `new-seal/cover:seal` and `joint/cover` belong to the thing `cover`. */
const baseOf = (thing: Thing): string => after(thing).split(':')[0] ?? '';

const OF_MACHINE: readonly Entry['kind'][] = [
  'old seal',
  'new seal',
  'item',
  'part',
  'loose part',
  'joint',
  'temporary',
];

/** Parts first, then drains, then water is given back and looked at, then power, then the run. */
function groupOf(entry: Entry, strip: StripState): number {
  if (OF_MACHINE.includes(entry.kind)) return 0;
  if (entry.kind === 'drain') return 1;
  if (entry.kind === 'proof') return PROOF_GROUP[after(entry.thing)] ?? 5;
  const closure = entry.kind === 'tag' ? seenOf(entry.thing, strip)?.of : entry.thing;
  const kind = strip.seen.find((s) => s.thing === closure)?.kind ?? 'valve';
  return FLOW.includes(kind) ? 2 : 4;
}

const PROOF_GROUP: Readonly<Record<string, number>> = { 'static-look': 3, 'after-stop': 6 };

function seenOf(thing: Thing, strip: StripState): Seen | null {
  const exact = strip.seen.find((s) => s.thing === thing);
  if (exact !== undefined) return exact;
  if (!['joint', 'part', 'old-seal', 'new-seal', 'seal'].includes(before(thing))) return null;
  const id = baseOf(thing);
  return strip.seen.find((s) => s.did === 'took off' && after(s.thing) === id) ?? null;
}

/** What orders an entry: the thing it belongs to, so that a seal goes in with its own cover. */
const keyOf = (entry: Entry, strip: StripState): Thing =>
  seenOf(entry.thing, strip)?.thing ??
  (OF_MACHINE.includes(entry.kind) && entry.kind !== 'temporary'
    ? `part/${baseOf(entry.thing)}`
    : entry.thing);

function inOrder(open: readonly Entry[], strip: StripState): readonly Entry[] {
  const opened = [...new Set(open.map((e) => keyOf(e, strip)))];
  // A thing taken off again stands where it was last taken off, not where it was first.
  const latest = inSlots(
    opened,
    strip.seen.map((s) => s.thing),
  );
  const wanted = strip.order.flatMap((thing) => {
    const entry = open.find((e) => e.thing === thing);
    return entry === undefined ? [thing] : [keyOf(entry, strip)];
  });
  const keys = inSlots(latest.toReversed(), [...new Set(wanted)]);
  const place = new Map(keys.map((key, i) => [key, i]));
  const rank = (e: Entry): readonly number[] => [
    groupOf(e, strip),
    place.get(keyOf(e, strip)) ?? keys.length,
    e.kind === 'tag' ? -1 : OF_MACHINE.indexOf(e.kind),
  ];
  const sorted = [...open].sort((a, b) => compare(rank(a), rank(b)));
  return sorted;
}

function compare(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((x, i) => x !== b[i]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}

/** Those that are wanted change places among themselves; all others stay, so none is lost. */
export function inSlots(list: readonly Thing[], wanted: readonly Thing[]): readonly Thing[] {
  const known = new Set(list);
  const ordered = [...new Set(wanted)].filter((w) => known.has(w));
  const moved = new Set(ordered);
  let next = 0;
  return list.map((thing) => (moved.has(thing) ? (ordered[next++] ?? thing) : thing));
}

function waiting(entry: Entry, open: readonly Entry[], strip: StripState): readonly Thing[] {
  const group = groupOf(entry, strip);
  const own = keyOf(entry, strip);
  const first = open.filter((e) => {
    if (e === entry) return false;
    if (groupOf(e, strip) < group) return true;
    if (groupOf(e, strip) > group) return false;
    const same = keyOf(e, strip) === own;
    if (entry.kind === 'closure') return e.kind === 'tag' && seenOf(e.thing, strip)?.of === own;
    // A joint is tightened when its seal is in and its part is back; the rest in any order.
    if (same) return entry.kind === 'joint' || (e.kind === 'old seal' && entry.kind === 'new seal');
    return group === 0 && seenOf(e.thing, strip)?.justBefore.includes(own) === true;
  });
  return first.map((e) => e.thing);
}

function photosOf(thing: Thing, seen: Seen | null, job: JobState): readonly string[] {
  const own = job.photos.filter((p) => p.thing === thing).map((p) => p.hash);
  return [...new Set([...(seen?.photos ?? []), ...own])];
}

function hazardsOf(entry: Entry, seen: Seen | null, strip: StripState): readonly Hazard[] {
  if (entry.kind === 'closure' || entry.kind === 'tag')
    return groupOf(entry, strip) === 2 ? ['flooding'] : ['electricity', 'rotation'];
  if (entry.kind === 'proof') return entry.thing === 'proof/static-look' ? ['flooding'] : RUNNING;
  return entry.kind === 'part' && seen !== null && seen.wet !== 'no' ? ['flooding'] : [];
}

const RUNNING: readonly Hazard[] = ['rotation', 'heat'];

type Worded = Pick<ToMakeGood, 'kind' | 'body' | 'asks' | 'text' | 'place' | 'count'>;

const counted = (n: number): Ask => ({
  name: 'count',
  label: 'Counted',
  kind: 'count',
  expected: n,
});
const RESULT: Ask = {
  name: 'result',
  label: 'Result',
  kind: 'choice',
  choices: ['pass', 'fail', 'cannot tell', 'passed up to'],
};
const SERIAL: Ask = { name: 'serial', label: 'Serial', kind: 'text', optional: true };

function wordsOf(entry: Entry, seen: Seen | null, strip: StripState): Worded {
  const { thing } = entry;
  const name = seen?.what ?? nameIn(entry);
  const plain = { body: { thing }, asks: [], place: entry.place, count: null } as const;
  switch (entry.kind) {
    case 'part':
      return { ...plain, kind: 'put-back', text: `Put back: ${name}.` };
    case 'joint':
      return { ...plain, ...tighten(thing, name, seen) };
    case 'old seal':
    case 'new seal': {
      const out = entry.kind === 'old seal';
      const n = out ? (seen?.sealsLeft ?? 1) : (seen?.seals ?? 1) + (seen?.sealsLeft ?? 0);
      const what = many('seal', n);
      return {
        ...plain,
        kind: out ? 'seal-out' : 'seal-in',
        body: { thing: `seal/${after(thing)}`, count: n },
        asks: [counted(n)],
        text: out ? `${name}: take out ${n} old ${what}.` : `${name}: fit ${n} new ${what}.`,
        count: { n, what },
      };
    }
    case 'item':
      return { ...plain, kind: 'item-in', asks: [SERIAL], text: `Fit again: ${name}.` };
    case 'loose part':
      return { ...plain, kind: 'loose-in', text: `${entry.what}: put back.` };
    case 'temporary':
      return { ...plain, kind: 'taken-away', text: `Take away: ${entry.what}.` };
    case 'drain':
      return { ...plain, kind: 'drain-shut', text: `Shut and plug: ${name}.` };
    case 'tag':
      return { ...plain, kind: 'untagged', text: `Take down: ${tagName(entry, seen, strip)}.` };
    case 'closure':
      return { ...plain, ...giveBack(thing, name, seen) };
    case 'proof':
      return { ...plain, kind: 'proof', asks: [RESULT], text: `${nameIn(entry)}: look and say.` };
  }
}

const nameIn = (entry: Entry): string =>
  entry.what.replace(/^Proof owed: /, '').replace(/(?:: undone| open| out| off| aside)$/, '');

function tagName(entry: Entry, seen: Seen | null, strip: StripState): string {
  const on = strip.seen.find((s) => s.thing === seen?.of)?.what;
  return on === undefined ? entry.what : `tag ${after(entry.thing)} on ${on}`;
}

function tighten(thing: Thing, name: string, seen: Seen | null): Partial<Worded> & Said {
  const fasteners = seen?.fasteners ?? [];
  const n = fasteners.reduce((sum, f) => sum + f.count, 0);
  if (n === 0) return { kind: 'put-back', text: `${name}: made up.` };
  const list = fasteners.map((f) => `${f.count} ${many(f.what, f.count)}`).join(', ');
  const bag = seen?.bag == null ? '' : ` (bag ${seen.bag})`;
  return {
    kind: 'put-back',
    body: { thing, count: n },
    asks: [counted(n)],
    text: `${name}: ${list}${bag} in and tightened.`,
    count: { n, what: fasteners.map((f) => many(f.what, f.count)).join(', ') },
  };
}

type Said = { readonly kind: string; readonly text: string };

function giveBack(thing: Thing, name: string, seen: Seen | null): Partial<Worded> & Said {
  const found = seen?.found ?? null;
  if (found === null) return { kind: 'restored', text: `${name}: back to its normal position.` };
  const turns = seen?.turns == null ? '' : `, ${seen.turns} turns`;
  return {
    kind: 'restored',
    body: { thing, position: found },
    text: `${name}: back to ${found}${turns}.`,
  };
}
