// The one table of acts: for each kind its body, its stream, and which entries it opens and closes.

import type { z } from 'zod';
import type { PackFacts, StepVerb, Thing } from '../pack/types.ts';
import { asFoundAnswers, asFoundOwed, isAccounted, missingFrom } from './as-found.ts';
import { bodies, type Kind } from './bodies.ts';
import { isSeen, tookOff } from './seen.ts';
import { after, before, jointOfSeal, leakLookOwed, proofsOwed, undoneJoint } from './things.ts';
import type { ActBody, Entry, Stream } from './types.ts';

export type { Kind } from './bodies.ts';

/** One entry that an act opens; `what` and `place` are worded when the state is shown. */
export type Opening = { readonly thing: Thing; readonly kind: Entry['kind'] };

export type KindRow = {
  readonly version: 1;
  readonly stream: readonly Stream['kind'][];
  readonly body: z.ZodType;
  readonly opens: (body: ActBody, facts: PackFacts | null) => readonly Opening[];
  readonly closes: (body: ActBody, facts: PackFacts | null) => readonly Thing[];
  /** A step of the pack is reported by it. */
  readonly step: boolean;
  /** What a person reads in docs/record.md. */
  readonly says: string;
};

type Said = Partial<Pick<KindRow, 'stream' | 'opens' | 'closes' | 'step'>>;

const none = (): readonly never[] => [];

function row(kind: Kind, says: string, rest: Said = {}): KindRow {
  const plain = { version: 1, stream: ['job'], opens: none, closes: none, step: false } as const;
  return { ...plain, body: bodies[kind], says, ...rest };
}

const thingOf = (body: ActBody): string => String(body.thing);

/** Opens the entry of the thing itself, and the proofs that undoing it owes. */
const opensItself =
  (kind: Entry['kind']): KindRow['opens'] =>
  (body, facts) => [
    { thing: thingOf(body), kind },
    ...proofsOwed(thingOf(body), facts),
    ...asFoundOwed(thingOf(body), facts),
  ];

const closesItself: KindRow['closes'] = (body) => [thingOf(body)];

const opener = (kind: Kind, says: string, entry: Entry['kind']): KindRow =>
  row(kind, says, { step: true, opens: opensItself(entry) });

const closer = (kind: Kind, says: string): KindRow =>
  row(kind, says, { step: true, closes: closesItself });

const reported = (kind: Kind, says: string): KindRow => row(kind, says, { step: true });

const passes = (body: ActBody): boolean => body.result === 'pass' || body.result === 'passed up to';

const stepKinds: Record<StepVerb, KindRow> = {
  shut: opener('shut', 'a closure brought to the position the work needs', 'closure'),
  tagged: opener('tagged', 'a tag hung at one station of a closure', 'tag'),
  'drain-opened': opener('drain-opened', 'a drain or vent opened', 'drain'),
  'proved-dead': reported('proved-dead', 'flow seen to run and die away at a drain'),
  'second-look': reported('second-look', 'the closures looked at by a second pair of eyes, blank'),
  told: reported('told', 'someone told'),
  measured: reported('measured', 'a reading taken, as found or as left'),
  checked: reported('checked', 'something looked at'),
  'put-in': opener('put-in', 'a blank, support or other temporary thing put in', 'temporary'),
  undone: row('undone', 'a joint undone', {
    step: true,
    opens: (body, facts) => [
      ...undoneJoint(thingOf(body), facts),
      ...asFoundOwed(thingOf(body), facts),
    ],
  }),
  'moved-off': opener('moved-off', 'a part taken off', 'part'),
  'moved-aside': opener('moved-aside', 'a part put aside and supported', 'part'),
  'item-out': opener('item-out', 'an item taken out of its place', 'item'),
  'seal-out': row('seal-out', 'an old seal out and counted', {
    step: true,
    closes: (body) => [`old-seal/${after(thingOf(body))}`],
  }),
  'seal-in': row('seal-in', 'a new seal fitted', {
    step: true,
    closes: (body) => [`new-seal/${after(thingOf(body))}`],
  }),
  'loose-out': reported('loose-out', 'loose parts of a joint out and counted'),
  'loose-in': closer('loose-in', 'loose parts of a joint back'),
  'as-found': row('as-found', 'its state as found, what failed, hours, pieces missing', {
    step: true,
    opens: missingFrom,
    closes: asFoundAnswers,
  }),
  'item-in': closer('item-in', 'an item fitted in its place'),
  refitted: closer('refitted', 'a part back in its place'),
  made: closer('made', 'a joint made up, one round; closes when every round has every hole'),
  'taken-away': closer('taken-away', 'a temporary thing taken away'),
  'drain-shut': closer('drain-shut', 'a drain or vent shut'),
  untagged: closer('untagged', 'a tag taken down'),
  restored: closer('restored', 'a closure back in its normal position'),
  'people-clear': reported('people-clear', 'everyone called clear, and answered'),
  turned: reported('turned', 'the machine turned by hand'),
  started: reported('started', 'the machine started'),
  proof: row('proof', 'a proof done: closes on a pass, opens on a fail or cannot tell', {
    step: true,
    opens: (body) => (passes(body) ? [] : [{ thing: thingOf(body), kind: 'proof' }]),
    closes: (body) => (passes(body) ? [thingOf(body)] : []),
  }),
};

/** What a person does while stripping a machine that nobody has written down. */
const strip = {
  'took-off': row('took-off', 'a thing taken off, as seen: its fasteners, seals, bag', {
    step: true,
    opens: (body, facts) => [...tookOff(body), ...asFoundOwed(thingOf(body), facts)],
  }),
  'shut-or-unplugged': opener(
    'shut-or-unplugged',
    'a closure shut or a plug pulled, with how it was found',
    'closure',
  ),
  'put-back': closer('put-back', 'a thing taken off put back, or its fasteners all tight'),
} as const satisfies Partial<Record<Kind, KindRow>>;

/** Missing pieces: found again, all or some, or gone on without by name. */
const accounted = row('accounted', 'missing pieces found, or gone on without by name', {
  step: true,
  opens: (body) => (isAccounted(body) ? [] : [{ thing: thingOf(body), kind: 'missing' }]),
  closes: (body) => (isAccounted(body) ? [thingOf(body)] : []),
});

/** Two acts on a joint that is tight; what each disturbs is looked at again. */
const tightAlready = {
  'checked-tight': row('checked-tight', 'a nut that was tight backed off and re-tightened', {
    step: true,
    opens: (body, facts) => proofsOwed(thingOf(body), facts),
  }),
  're-tightened': row('re-tightened', 'a relaxed gasket re-tightened once round, cold', {
    step: true,
    opens: (body, facts) => leakLookOwed(thingOf(body), facts),
  }),
} as const satisfies Partial<Record<Kind, KindRow>>;

const vessel = { stream: ['vessel'] } as const;
const machine = { stream: ['machine'] } as const;

export const kinds: Record<Kind, KindRow> = {
  'job-started': row('job-started', 'a job begins with its pack and its hands'),
  'strip-started': row('strip-started', 'a job begins without a pack: the machine in words'),
  'pack-amended': row('pack-amended', 'the next pack of the job comes into force'),
  'could-not': row('could-not', 'something could not be done; makes a finding'),
  'cannot-run': row('cannot-run', 'a machine that cannot run to be read before it is stopped'),
  found: row('found', 'something found on the machine; makes a finding'),
  decided: row('decided', 'what is done about a finding, and by whom'),
  corrected: row('corrected', 'an act is void, as if it had not been said', {
    stream: ['job', 'machine', 'vessel'],
  }),
  'value-looked-at': row('value-looked-at', 'a superseded value looked at, by name, at its joint'),
  'used-anyway': row('used-anyway', 'gone on by name in spite of a stop: a deviation'),
  note: row('note', 'a remark', { stream: ['job', 'machine', 'vessel'] }),
  photo: row('photo', 'a picture, kept by its hash'),
  'follow-up-owned': row('follow-up-owned', 'who sees to a follow-up'),
  'follow-up-done': row('follow-up-done', 'a follow-up done', { stream: ['job', 'machine'] }),
  closed: row('closed', 'the job is closed; what stays open is a deviation by name'),
  'order-set': row('order-set', 'the order for boxing up, as a person wants it'),
  'handed-over': row('handed-over', 'the watch handed over with what is open'),
  'seen-at-machine': row('seen-at-machine', 'an open thing seen at the machine by the relief'),
  'watch-taken': row('watch-taken', 'who has the watch', vessel),
  'sailing-set': row('sailing-set', 'when the vessel sails', vessel),
  'sailing-off': row('sailing-off', 'a sailing that is off', vessel),
  drawn: row('drawn', 'something drawn from the stores', vessel),
  received: row('received', 'something received into the stores', vessel),
  'values-issued': row('values-issued', 'an issue replaces values that packs here hold', vessel),
  'person-added': row('person-added', 'a person on the vessel', vessel),
  'hours-read': row('hours-read', 'running hours read off', machine),
  'done-before': row('done-before', 'a renewal done before this record began', machine),
  'limit-lifted': row('limit-lifted', 'an open limit on a machine is lifted', machine),
  ...stepKinds,
  ...strip,
  ...tightAlready,
  accounted,
};

/** The row of a kind, or null for one that this program does not know. */
export const kindOf = (kind: string): KindRow | null =>
  Object.hasOwn(kinds, kind) ? kinds[kind as Kind] : null;

/** What must not stand in the joint when a new seal goes in, or the joint is made up. */
export function shouldBeClosedBefore(
  kind: string,
  body: ActBody,
  facts: PackFacts | null,
): readonly Thing[] {
  const thing = thingOf(body);
  if (kind === 'seal-in') return [`old-seal/${after(thing)}`];
  if (!makesJoint(kind, thing)) return [];
  const joint = after(thing);
  const seals = facts?.joints[joint]?.seals ?? [];
  return seals.flatMap((s) => [`old-seal/${joint}:${s.id}`, `new-seal/${joint}:${s.id}`]);
}

/** Both words for a joint made up: by rounds from a pack, or all at once as it was seen. */
const makesJoint = (kind: string, thing: Thing): boolean =>
  kind === 'made' || (kind === 'put-back' && before(thing) === 'joint');

/** How many the facts expect where an act gives a count; null where nothing is expected. */
export function expectedCount(kind: string, body: ActBody, facts: PackFacts | null): number | null {
  const thing = thingOf(body);
  if (kind === 'undone' || makesJoint(kind, thing)) {
    const holes = facts?.joints[after(thing)]?.holes ?? [];
    return holes.length === 0 ? null : holes.length;
  }
  // How many old ones are still in there nobody knows for sure: what comes out is the count.
  if (kind === 'seal-out' && isSeen(facts)) return null;
  const found = jointOfSeal(thing, facts);
  return found === null ? null : found.count;
}

/** `undone joint/pump-mounting`, `made joint/pump-mounting 60 %`: the id of the step reported. */
export function stepIdOf(kind: string, body: ActBody): string | null {
  if (kindOf(kind)?.step !== true) return null;
  const round = body.round === undefined ? '' : ` ${String(body.round)}`;
  return `${kind} ${thingOf(body)}${round}`;
}
