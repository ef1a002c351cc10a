// Boxing up a machine that nobody has written down: the reverse of what was seen, none forgotten.

import { asFoundAsks } from '../pack/as-found.ts';
import type { Ask, Thing } from '../pack/types.ts';
import { type Caution, cautionFor, type Hazard } from '../quantity/authority.ts';
import { heard, say } from '../words/heard.ts';
import type { Sentence } from '../words/say.ts';
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
  /** What the text says, for other languages. */
  readonly said: readonly Sentence[];
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
  const list = lookUp(
    now.entries.filter((e) => e.open),
    strip,
  );
  return inOrder(list).map((row) => {
    const { entry, seen, group } = row;
    const waitsFor = waiting(row, list);
    const { value: words, said } = heard(() => wordsOf(entry, seen, strip));
    return {
      ...words,
      said,
      thing: entry.thing,
      photos: photosOf(entry.thing, seen, now),
      cautions: hazardsOf(entry, seen, group).map(cautionFor),
      openedBy: entry.openedBy,
      waitsFor,
      ready: waitsFor.length === 0,
    };
  });
}

/** An open entry with what was seen of it, its group, and the thing it belongs to. */
type Row = {
  readonly entry: Entry;
  readonly seen: Seen | null;
  readonly group: number;
  /** What orders it: a seal goes in with its own cover. */
  readonly key: Thing;
};

type List = {
  readonly strip: StripState;
  readonly rows: readonly Row[];
  readonly byKey: ReadonlyMap<Thing, readonly Row[]>;
  /** What was seen next after a thing. */
  readonly after: ReadonlyMap<Thing, readonly Thing[]>;
  /** Places in the order, proposed or set; filled once. */
  readonly place: ReadonlyMap<Thing, number>;
};

function lookUp(open: readonly Entry[], strip: StripState): List {
  const byThing = new Map(strip.seen.map((s) => [s.thing, s]));
  const off = strip.seen.filter((s) => s.did === 'took off');
  const byBase = new Map(off.map((s) => [after(s.thing), s]));
  const rows = open.map((entry): Row => {
    const { thing } = entry;
    const joined = ['joint', 'part', 'old-seal', 'new-seal'].includes(before(thing));
    const seen = byThing.get(thing) ?? (joined ? byBase.get(baseOf(thing)) : undefined) ?? null;
    const own = OF_MACHINE.includes(entry.kind) && entry.kind !== 'temporary';
    const key = seen?.thing ?? (own ? `part/${baseOf(thing)}` : thing);
    return { entry, seen, group: groupOf(entry, seen, byThing), key };
  });
  const byKey = new Map<Thing, Row[]>();
  for (const row of rows) byKey.set(row.key, [...(byKey.get(row.key) ?? []), row]);
  const links = strip.seen.flatMap((s) =>
    s.justBefore.map((earlier) => [earlier, s.thing] as const),
  );
  const next = new Map<Thing, Thing[]>();
  for (const [earlier, later] of links) next.set(earlier, [...(next.get(earlier) ?? []), later]);
  return { strip, rows, byKey, after: next, place: placesOf(rows, strip) };
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
function groupOf(entry: Entry, seen: Seen | null, byThing: ReadonlyMap<Thing, Seen>): number {
  // Said first, while it lies there; a hunt holds nothing back and is held back by nothing.
  if (entry.kind === 'as found') return -1;
  if (entry.kind === 'missing') return 7;
  if (OF_MACHINE.includes(entry.kind)) return 0;
  if (entry.kind === 'drain') return 1;
  if (entry.kind === 'proof') return PROOF_GROUP[after(entry.thing)] ?? 5;
  const closure = entry.kind === 'tag' ? byThing.get(seen?.of ?? '') : seen;
  return FLOW.includes(closure?.kind ?? 'valve') ? 2 : 4;
}

const PROOF_GROUP: Readonly<Record<string, number>> = { 'static-look': 3, 'after-stop': 6 };

/** Nothing is put back by saying these. */
const SAID_ONLY: readonly Entry['kind'][] = ['as found', 'missing'];

function placesOf(rows: readonly Row[], strip: StripState): ReadonlyMap<Thing, number> {
  const opened = [...new Set(rows.map((r) => r.key))];
  // A thing taken off again stands where it was last taken off, not where it was first.
  const latest = inSlots(
    opened,
    strip.seen.map((s) => s.thing),
  );
  const keyOf = new Map(rows.map((r) => [r.entry.thing, r.key]));
  const wanted = strip.order.map((thing) => keyOf.get(thing) ?? thing);
  const keys = inSlots(latest.toReversed(), wanted);
  return new Map(keys.map((key, i) => [key, i]));
}

function inOrder({ rows, place }: List): readonly Row[] {
  const rank = ({ entry, group, key }: Row): readonly number[] => [
    group,
    place.get(key) ?? rows.length,
    entry.kind === 'tag' ? -1 : OF_MACHINE.indexOf(entry.kind),
  ];
  return rows
    .map((row) => ({ row, rank: rank(row) }))
    .sort((a, b) => compare(a.rank, b.rank))
    .map(({ row }) => row);
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

function waiting(row: Row, list: List): readonly Thing[] {
  const { entry, group, key } = row;
  if (SAID_ONLY.includes(entry.kind)) return [];
  const lower = list.rows
    .filter((r) => r.group < group && !SAID_ONLY.includes(r.entry.kind))
    .map((r) => r.entry.thing);
  if (group > 0) {
    // A closure is given back when its tags are down; a tag comes down by itself.
    const tags = list.rows.filter((r) => entry.kind === 'closure' && r.seen?.of === key);
    return [...lower, ...tags.map((r) => r.entry.thing)];
  }
  const own = (list.byKey.get(key) ?? []).filter((r) => {
    if (r === row) return false;
    // A joint is tightened when its seal is in and its part is back; the rest in any order.
    return entry.kind === 'joint' || (r.entry.kind === 'old seal' && entry.kind === 'new seal');
  });
  const outside = nearestAfter(key, list).flatMap((k) => list.byKey.get(k) ?? []);
  return [...own, ...outside].map((r) => r.entry.thing);
}

/** Open things that came off next after it, past those made good, unless a person set otherwise. */
function nearestAfter(key: Thing, list: List): readonly Thing[] {
  const place = (k: Thing): number => list.place.get(k) ?? Number.POSITIVE_INFINITY;
  const found: Thing[] = [];
  const looked = new Set([key]);
  const ahead = [...(list.after.get(key) ?? [])];
  for (let next = ahead.pop(); next !== undefined; next = ahead.pop()) {
    if (looked.has(next)) continue;
    looked.add(next);
    const isOpen = list.byKey.get(next)?.some((r) => r.group === 0) === true;
    if (!isOpen) ahead.push(...(list.after.get(next) ?? []));
    else if (place(next) < place(key)) found.push(next);
    else ahead.push(...(list.after.get(next) ?? []));
  }
  return found;
}

function photosOf(thing: Thing, seen: Seen | null, job: JobState): readonly string[] {
  const own = job.photos.filter((p) => p.thing === thing).map((p) => p.hash);
  return [...new Set([...(seen?.photos ?? []), ...own])];
}

function hazardsOf(entry: Entry, seen: Seen | null, group: number): readonly Hazard[] {
  if (entry.kind === 'closure' || entry.kind === 'tag')
    return group === 2 ? ['flooding'] : ['electricity', 'rotation'];
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
      return { ...plain, kind: 'put-back', text: say('putBack', name) };
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
        text: say(out ? 'takeSealsOut' : 'fitSeals', name, n, what),
        count: { n, what },
      };
    }
    case 'item':
      return { ...plain, kind: 'item-in', asks: [SERIAL], text: say('fitAgain', name) };
    case 'loose part':
      return { ...plain, kind: 'loose-in', text: say('putLooseBack', entry.what) };
    case 'temporary':
      return { ...plain, kind: 'taken-away', text: say('takeAway', entry.what) };
    case 'drain':
      return { ...plain, kind: 'drain-shut', text: say('shutAndPlugIt', name) };
    case 'tag':
      return { ...plain, kind: 'untagged', text: say('takeDown', tagName(entry, seen, strip)) };
    case 'closure':
      return { ...plain, ...giveBack(thing, name, seen) };
    case 'as found':
      return {
        ...plain,
        kind: 'as-found',
        body: { thing: `part/${after(thing)}` },
        asks: asFoundAsks([]),
        text: say('asStands', entry.what),
      };
    case 'missing':
      return { ...plain, kind: 'accounted', text: say('foundOrNot', entry.what) };
    case 'proof':
      return { ...plain, kind: 'proof', asks: [RESULT], text: say('lookAndSay', nameIn(entry)) };
  }
}

const nameIn = (entry: Entry): string =>
  entry.what.replace(/^Proof owed: /, '').replace(/(?:: undone| open| out| off| aside)$/, '');

function tagName(entry: Entry, seen: Seen | null, strip: StripState): string {
  const on = strip.seen.find((s) => s.thing === seen?.of)?.what;
  return on === undefined ? entry.what : say('tagNamed', after(entry.thing), on);
}

function tighten(thing: Thing, name: string, seen: Seen | null): Partial<Worded> & Said {
  const fasteners = seen?.fasteners ?? [];
  const n = fasteners.reduce((sum, f) => sum + f.count, 0);
  if (n === 0) return { kind: 'put-back', text: say('madeUp', name) };
  const list = fasteners.map((f) => say('counted', f.count, many(f.what, f.count)));
  return {
    kind: 'put-back',
    body: { thing, count: n },
    asks: [counted(n)],
    text: say('inAndTight', name, say('listed', list), seen?.bag ?? null),
    count: {
      n,
      what: say(
        'listed',
        fasteners.map((f) => many(f.what, f.count)),
      ),
    },
  };
}

type Said = { readonly kind: string; readonly text: string };

function giveBack(thing: Thing, name: string, seen: Seen | null): Partial<Worded> & Said {
  const found = seen?.found ?? null;
  if (found === null) return { kind: 'restored', text: say('backToNormal', name) };
  return {
    kind: 'restored',
    body: { thing, position: found },
    text: say('backTo', name, found, seen?.turns ?? null),
  };
}
