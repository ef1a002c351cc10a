// A job without a pack: what was seen coming off, shut and put in, as the facts its fold rests on.

import type { ClosureFacts, JointFacts, Thing } from '../pack/types.ts';
import { slugOf } from '../plant/slug.ts';
import { say } from '../words/heard.ts';
import { componentIn } from './as-found.ts';
import { isYes } from './isolation.ts';
import type { IsAncestor, Said } from './said.ts';
import { jointOfPart, PROOFS, proofsOfTaking, type SeenFacts } from './seen.ts';
import { after, before } from './things.ts';
import type { JobState, Seen, StripState } from './types.ts';

export const isStart = (kind: string): boolean =>
  kind === 'job-started' || kind === 'strip-started';

/** The kinds of act that describe a thing nobody had written down before. */
const SEEING = ['took-off', 'shut-or-unplugged', 'put-in', 'drain-opened', 'tagged'];

/** All that a strip's acts say was seen, in causal order; the last word on a thing describes it. */
export function stripOf(started: Said, said: readonly Said[], isAncestor: IsAncestor): StripState {
  const rows = said.filter((s) => SEEING.includes(s.act.kind));
  const last = new Map(rows.map((s) => [String(s.body.thing), s]));
  const pictures = said.filter((s) => s.act.kind === 'photo');
  const described = [...last.values()].sort((a, b) => a.index - b.index);
  const order = said.filter((s) => s.act.kind === 'order-set').at(-1);
  return {
    vessel: String(started.body.vessel),
    machineName: String(started.body.machine),
    side: String(started.body.side ?? ''),
    component: String(started.body.component),
    seen: described.map((s) => seenIn(s, justBefore(s, described, isAncestor), pictures)),
    provedAt: [...new Set(said.filter(provesDead).map((s) => String(s.body.thing)))],
    order:
      order === undefined || !Array.isArray(order.body.order) ? [] : order.body.order.map(String),
  };
}

const provesDead = (s: Said): boolean =>
  s.act.kind === 'proved-dead' && isYes(s.body.sawRun) && isYes(s.body.diedAway);

/** The latest things among those that whoever did it had seen: older ones follow from these. */
function justBefore(s: Said, all: readonly Said[], isAncestor: IsAncestor): readonly Thing[] {
  const latest: Said[] = [];
  for (const other of all.toReversed()) {
    if (!isAncestor(other.index, s.index)) continue;
    if (!latest.some((later) => isAncestor(other.index, later.index))) latest.push(other);
  }
  return latest.map((k) => String(k.body.thing));
}

function seenIn(s: Said, justBefore: readonly Thing[], pictures: readonly Said[]): Seen {
  const { body, act } = s;
  const thing = String(body.thing);
  const text = (value: unknown): string | null =>
    typeof value === 'string' && value !== '' ? value : null;
  const own = text(body.photo);
  const more = pictures.filter((p) => p.body.thing === thing).map((p) => String(p.body.hash));
  return {
    thing,
    did: DID[act.kind] ?? 'took off',
    what: text(body.what) ?? text(body.name) ?? after(thing),
    act: act.hash,
    by: act.by,
    on: act.at.utc.slice(0, 10),
    justBefore,
    wet: act.kind === 'took-off' ? (text(body.wet) as Seen['wet']) : null,
    medium: text(body.medium),
    fasteners: (Array.isArray(body.fasteners) ? body.fasteners : []) as Seen['fasteners'],
    seals: Number(body.seals ?? 0),
    sealsLeft: Number(body.sealsLeft ?? 0),
    sealKind: text(body.sealKind),
    bag: typeof body.bag === 'number' ? body.bag : null,
    photos: [...new Set([...(own === null ? [] : [own]), ...more])],
    kind: text(body.kind),
    where: text(body.where) ?? text(body.station),
    of: text(body.closure) === null ? null : `closure/${String(body.closure)}`,
    found: text(body.found),
    position: text(body.position),
    turns: typeof body.turns === 'number' ? body.turns : null,
  };
}

const DID: Readonly<Record<string, Seen['did']>> = {
  'took-off': 'took off',
  'shut-or-unplugged': 'shut',
  'put-in': 'put in',
  'drain-opened': 'opened',
  tagged: 'tagged',
};

/** What shuts off a flow; a switch or a plug keeps no water back. */
export const FLOW: readonly string[] = ['valve', 'sea valve', 'non-return valve'];

export function stripFacts(strip: Pick<StripState, 'seen' | 'component'>): SeenFacts {
  const { seen } = strip;
  const component = componentIn(strip);
  const off = seen.filter((s) => s.did === 'took off');
  const joints = off.filter(hasJoint).map((s) => [jointOfPart(after(s.thing)), jointFacts(s)]);
  const shut = seen.filter((s) => s.did === 'shut');
  const drains = seen.filter((s) => s.did === 'opened');
  const parts = off.filter((s) => before(s.thing) === 'part');
  const temps = seen.filter((s) => s.did === 'put in');
  return {
    seen: true,
    joints: Object.fromEntries(joints),
    parts: Object.fromEntries(parts.map((s) => [after(s.thing), { name: s.what, massKg: null }])),
    items: {},
    closures: Object.fromEntries(
      [...shut, ...drains].map((s) => [after(s.thing), closureFacts(s)]),
    ),
    temps: Object.fromEntries(
      temps.map((s) => [
        after(s.thing),
        { name: s.what, kind: s.kind ?? 'other', where: s.where ?? '' },
      ]),
    ),
    checks: {},
    settings: {},
    proofs: Object.fromEntries(
      PROOFS.map(({ id, name, what }) => [id, { name, what, owedBy: [] }]),
    ),
    ...(component === null
      ? {}
      : {
          asFound: { target: after(component), name: strip.component, owedBy: [component] },
        }),
    isolation: {
      stated: true,
      closures: shut.filter((s) => FLOW.includes(s.kind ?? '')).map((s) => after(s.thing)),
      proveAt: drains.map((s) => after(s.thing)),
      wetJoints: off.filter((s) => s.wet !== 'no').map((s) => after(s.thing)),
    },
  };
}

/** A lid that only lies there has no joint: it is off, and that is all there is to it. */
export const hasJoint = (s: Seen): boolean =>
  before(s.thing) === 'joint' || s.fasteners.length > 0 || s.seals + s.sealsLeft > 0;

function jointFacts(s: Seen): JointFacts {
  const total = s.fasteners.reduce((sum, f) => sum + f.count, 0);
  const holes = Array.from({ length: total }, (_, i) => String(i + 1));
  let next = 0;
  return {
    name: s.what,
    critical: false,
    wet: s.wet !== 'no',
    fasteners: s.fasteners.map(({ what, count }, i) => {
      next += count;
      return {
        id: `f${i + 1}`,
        what: many(what, count),
        count,
        holes: holes.slice(next - count, next),
      };
    }),
    holes,
    rounds: ['made'],
    seals:
      s.seals + s.sealsLeft === 0
        ? []
        : [{ id: 'seal', name: 'seal', count: s.seals + s.sealsLeft }],
    loose: [],
    proofs: proofsOfTaking(s.wet),
    place: s.bag === null ? null : say('inBag', s.bag),
    layout: { kind: 'unknown' },
  };
}

export const many = (what: string, n: number): string =>
  n === 1 ? what : what === 'stud and nut' ? 'studs and nuts' : `${what}s`;

const closureFacts = (s: Seen): ClosureFacts => ({
  name: s.what,
  kind: s.did === 'opened' ? 'drain' : (s.kind ?? 'valve'),
  normal: s.did === 'opened' ? 'shut' : s.found,
  workPosition: s.did === 'opened' ? 'open' : (s.position ?? 'shut'),
  stations: [],
  secure: null,
  medium: s.medium,
  place: s.where,
});

/** Machine and target as the next job will find them: slugs of the words a person gave. */
export function stripNames(started: Said) {
  const { machine, side, component, does } = started.body;
  const place = side === undefined || side === '' ? [] : [String(side)];
  return {
    title: [String(component), String(machine), ...place].join(', '),
    machine: slugged([machine, ...place].join(' ')),
    target: slugged(String(component)),
    does: String(does ?? 'strip'),
  };
}

export const slugged = (words: string): string => slugOf(words).slice(0, 60) || 'thing';

/**
 * A name for a thing that nobody has named: the words, and the device's mark, so that two phones
 * without signal never call two things by one name; a number where the words were used before.
 */
export function newThing(
  job: Pick<JobState, 'strip' | 'entries'>,
  sort: 'part' | 'joint' | 'closure' | 'temp' | 'drain',
  words: string,
  mark = '',
): Thing {
  const used = new Set([
    ...(job.strip?.seen ?? []).map((s) => s.thing),
    ...job.entries.map((e) => e.thing),
  ]);
  const base = `${sort}/${slugged(mark === '' ? words : `${words} ${mark}`)}`;
  for (let n = 1; ; n++) {
    const thing = n === 1 ? base : `${base}-${n}`;
    // A thing loosened and a thing taken off share the name of their joint.
    const other = sort === 'part' ? `joint/${after(thing)}` : `part/${after(thing)}`;
    if (!used.has(thing) && (!['part', 'joint'].includes(sort) || !used.has(other))) return thing;
  }
}
