// What may not be recorded now: the two stops, and a closing while anything is open.

import type { Pack } from '../pack/types.ts';
import { heard, say } from '../words/heard.ts';
import { neverTogether } from './done-to-here.ts';
import { paperRefused } from './from-paper.ts';
import { givingBackRefused } from './given-back.ts';
import { isWet, LETS_GO } from './isolation.ts';
import { kindOf, stepIdOf } from './kinds.ts';
import { roundsOf } from './ledger.ts';
import { rivalPacks } from './rivals.ts';
import { sealsRefused } from './seal-counts.ts';
import { lookActRefused, waitsForLook } from './second-look-refused.ts';
import { lookedRefused, supersededRefused } from './superseded.ts';
import { after } from './things.ts';
import { tightRefused } from './tight-refused.ts';
import type { ActBody, DeviceTime, Draft, Finding, JobState, Refusal, State } from './types.ts';
import { wasDone } from './vessel.ts';

/**
 * Null when the draft may be recorded. `job` is the id of the job's stream; a draft of another
 * stream is only checked for its shape. The same rule serves the server, the app and the command
 * line: a grey button is no refusal. `at` is the time of the device that says it.
 */
export function mayRecord(
  state: State,
  job: string,
  draft: Draft,
  packs: readonly Pack[],
  at?: DeviceTime,
): Refusal | null {
  const { value, said } = heard(() => refused(state, job, draft, packs, at));
  return value === null || said.length === 0 ? value : { ...value, said };
}

function refused(
  state: State,
  job: string,
  draft: Draft,
  packs: readonly Pack[],
  at: DeviceTime | undefined,
): Refusal | null {
  const shape = badShape(draft);
  if (shape !== null) return shape;
  if (draft.kind === 'follow-up-done') return followUpRefused(state, draft);
  if (draft.stream.kind !== 'job') return null;
  if (draft.stream.id !== job) return bad(say('ofAnotherJob', draft.stream.id, job));
  const now = state.jobs[job];
  if (draft.kind === 'strip-started')
    return now === undefined ? null : bad(say('hasBegun', now.title));
  if (draft.kind === 'job-started') return startRefused(now, draft.body, packs);
  if (now === undefined) return bad(say('noSuchJob', job));
  const pack = packs.find((p) => p.id === now.packInForce) ?? null;
  const apart = draft.body.together === true ? neverTogether(draft.kind, draft.body, pack) : null;
  if (apart !== null) return bad(say('notTogether', apart));
  const unlike = paperRefused(now, packs, draft.kind, draft.body);
  if (unlike !== null) return bad(say('notFromPaper', unlike));
  switch (draft.kind) {
    case 'undone':
      return afterClosing(now, draft) ?? wetRefused(now, packs, after(String(draft.body.thing)));
    case 'moved-off':
    case 'moved-aside':
      return (
        afterClosing(now, draft) ?? movingRefused(now, draft.body) ?? behindWet(now, pack, draft)
      );
    case 'item-out':
    case 'seal-out':
    case 'loose-out':
      return afterClosing(now, draft) ?? behindWet(now, pack, draft);
    case 'took-off':
      return afterClosing(now, draft) ?? takingRefused(now, packs, draft.body);
    case 'untagged':
    case 'restored':
      return afterClosing(now, draft) ?? givingBackRefused(now, pack, draft);
    case 'seen-at-machine':
      return lookRefused(now, draft.body);
    case 'turned':
    case 'started':
      return afterClosing(now, draft) ?? notClear(now) ?? startsUnseen(now, draft);
    case 'second-look':
      return afterClosing(now, draft) ?? lookActRefused(now, draft, at);
    case 'seal-in':
      return afterClosing(now, draft) ?? sealsRefused(now, pack, draft);
    case 'made':
      return (
        afterClosing(now, draft) ??
        madeRefused(now, pack, draft.body) ??
        sealsRefused(now, pack, draft)
      );
    case 'checked-tight':
    case 're-tightened':
      return afterClosing(now, draft) ?? tightRefused(now, packs, draft);
    case 'value-looked-at':
      return lookedRefused(now, draft.body);
    case 'accounted':
      return afterClosing(now, draft) ?? huntRefused(now, draft.body);
    case 'used-anyway':
      return anywayRefused(now, pack, draft.body);
    case 'decided':
      return decisionRefused(now, draft.body);
    case 'pack-amended':
      return amendRefused(now, draft.body, packs);
    case 'corrected':
      return draft.body.of === now.startAct ? bad(say('notCorrectedAway')) : null;
    case 'closed':
      return closingRefused(state, now, draft.body);
    default:
      return afterClosing(now, draft);
  }
}

/** Only what is to be looked at again can be said to be done, and once. */
function followUpRefused(state: State, { stream, body }: Draft): Refusal | null {
  const known =
    stream.kind === 'job' ? state.jobs[stream.id]?.followUps : state.machines[stream.id]?.followUps;
  const id = String(body.followUp);
  const one = known?.find((f) => f.id === id);
  if (one === undefined)
    return bad(
      say('noSuchFollowUp', id),
      (known ?? []).map((f) => f.id),
    );
  return one.doneBy === null ? null : bad(say('followUpDone', one.doneBy));
}

const refusal = (stop: Refusal['stop'], why: string, open: readonly string[] = []): Refusal => ({
  stop,
  why,
  open,
});

const bad = (why: string, open: readonly string[] = []): Refusal => refusal('bad act', why, open);

function badShape(draft: Draft): Refusal | null {
  const row = kindOf(draft.kind);
  if (row === null) return bad(say('noSuchKind', draft.kind));
  if (draft.by.trim() === '') return bad(say('whoDoesIt'));
  if (!row.stream.includes(draft.stream.kind))
    return bad(say('wrongStream', draft.kind, row.stream, draft.stream.kind));
  const parsed = row.body.safeParse(draft.body);
  if (parsed.success) return null;
  const faults = parsed.error.issues.map((i) => `${i.path.join('.') || 'body'}: ${i.message}`);
  return bad(say('badBody', draft.kind, faults), faults);
}

/** A closed job takes no more work; what is found afterwards is a new job or a correction. */
function afterClosing(job: JobState, draft: Draft): Refusal | null {
  if (job.closed === null || kindOf(draft.kind)?.step !== true) return null;
  return bad(say('closedNow', job.closed.by));
}

function startRefused(
  now: JobState | undefined,
  body: ActBody,
  packs: readonly Pack[],
): Refusal | null {
  if (now !== undefined) return bad(say('hasBegun', now.title));
  const pack = packs.find((p) => p.id === body.pack);
  if (pack === undefined) return bad(say('packIsNotHere', String(body.pack)));
  const anyway = Array.isArray(body.anyway) ? body.anyway : [];
  const stated = new Set(anyway.map((a) => (a as { decision?: unknown }).decision));
  const unsettled = pack.decisions.filter((d) => d.settled === null && !stated.has(d.id));
  if (unsettled.length === 0) return null;
  return bad(
    say('unsettled'),
    unsettled.map((d) => say('listedThing', d.id, d.question)),
  );
}

/** A joint that no pack of the job knows may be wet; an amended pack says what it is. */
function wetRefused(job: JobState, packs: readonly Pack[], joint: string): Refusal | null {
  const seen = job.strip?.seen.find((s) => after(s.thing) === joint && s.wet !== null);
  const known = packs.filter(
    (p) => job.packs.includes(p.id) && p.facts.joints[joint] !== undefined,
  );
  const wet = known.some((p) => isWet(p.facts, joint));
  if (known.length > 0 && !wet) return null;
  // What a pack of the job knows as wet stays wet, whatever a person said of it.
  if (known.length === 0 && seen?.wet === 'no') return null;
  const name = known[0]?.facts.joints[joint]?.name ?? seen?.what ?? joint;
  if (job.isolation.proved) return waitsForLook(job, 'isolation', name);
  return refusal(
    'isolation not proved',
    say('wetNotProved', name, wet),
    job.isolation.why.split('; '),
  );
}

/** Said to hold liquid, or nobody knows: the isolation comes first, whatever the thing is. */
function takingRefused(job: JobState, packs: readonly Pack[], body: ActBody): Refusal | null {
  const id = after(String(body.thing));
  const known = packs.some(
    (p) =>
      job.packs.includes(p.id) &&
      (p.facts.joints[id] !== undefined || p.facts.parts[id] !== undefined),
  );
  if (known) return bad(say('inThePack', String(body.thing)));
  if (body.wet === 'no') return null;
  if (job.isolation.proved) return waitsForLook(job, 'isolation', String(body.what));
  return refusal(
    'isolation not proved',
    say('takingNotProved', String(body.what), body.wet === 'yes'),
    job.isolation.why.split('; '),
  );
}

/** Without a pack nobody has said whether it is wet: taking off asks, so that is how it is said. */
function movingRefused(job: JobState, body: ActBody): Refusal | null {
  const seen = job.strip?.seen.find((s) => s.thing === body.thing);
  if (job.strip === null || job.isolation.proved || seen?.wet === 'no') return null;
  return refusal(
    'isolation not proved',
    say('movingNotProved', String(body.thing)),
    job.isolation.why.split('; '),
  );
}

/** What comes out behind a wet joint opens the boundary as its undoing does. */
function behindWet(job: JobState, pack: Pack | null, draft: Draft): Refusal | null {
  if (pack === null || job.isolation.proved) return null;
  const joint = wetStillTight(job, pack, stepIdOf(draft.kind, draft.body) ?? '');
  if (joint === null) return null;
  const name = pack.facts.joints[joint]?.name ?? joint;
  return refusal(
    'isolation not proved',
    say('wetNotProved', name, true),
    job.isolation.why.split('; '),
  );
}

/** A wet joint that the pack wants undone before this step and that nobody has undone. */
function wetStillTight(job: JobState, pack: Pack, step: string): string | null {
  const byId = new Map(pack.steps.map((s) => [s.id, s]));
  const looked = new Set<string>();
  const ahead = [step];
  for (let id = ahead.pop(); id !== undefined; id = ahead.pop()) {
    const one = byId.get(id);
    if (one === undefined || looked.has(id) || job.done[id] !== undefined) continue;
    looked.add(id);
    if (one.verb === 'undone' && isWet(pack.facts, after(one.thing))) return after(one.thing);
    ahead.push(...one.needs);
  }
  return null;
}

function lookRefused(job: JobState, body: ActBody): Refusal | null {
  const list = job.handedOver?.list.map((l) => l.thing) ?? [];
  if (list.includes(String(body.thing))) return null;
  const why = say(list.length === 0 ? 'nothingHandedOver' : 'notHandedOver');
  return bad(say('listedThing', String(body.thing), why), list);
}

function huntRefused(job: JobState, body: ActBody): Refusal | null {
  const open = job.entries.filter((e) => e.kind === 'missing' && e.open).map((e) => e.thing);
  if (open.includes(String(body.thing))) return null;
  return bad(say('noneMissing', String(body.thing)), open);
}

function notClear(job: JobState): Refusal | null {
  if (job.clear) return null;
  return refusal('someone not clear', say('nobodyCalled'));
}

const startsUnseen = (job: JobState, draft: Draft): Refusal | null =>
  draft.kind === 'started' ? waitsForLook(job, 'line-up', say('starting')) : null;

const madeRefused = (job: JobState, pack: Pack | null, body: ActBody): Refusal | null =>
  roundRefused(pack, body) ?? supersededRefused(job, body, pack?.facts ?? null);

function roundRefused(pack: Pack | null, body: ActBody): Refusal | null {
  const thing = String(body.thing);
  const rounds = roundsOf(thing, pack?.facts ?? null);
  if (body.round === undefined && rounds.length > 1) return bad(say('whichRound', thing, rounds));
  if (body.round === undefined || pack?.facts.joints[after(thing)] === undefined) return null;
  if (rounds.includes(String(body.round))) return null;
  return bad(say('wrongRound', thing, String(body.round), rounds));
}

/** What these take out leaves the boundary open where it was not undone first. */
const OPENERS: readonly string[] = [
  'moved-off',
  'moved-aside',
  'item-out',
  'seal-out',
  'loose-out',
];

/**
 * While one of the two stops stands no act may claim a way past it. Once lifted, a step behind
 * it may be left out by name like any other: that opens and turns nothing.
 */
function anywayRefused(job: JobState, pack: Pack | null, body: ActBody): Refusal | null {
  const id = String(body.step ?? '');
  const stop = pack?.steps.find((s) => s.id === id)?.stop ?? null;
  const [verb = '', thing = ''] = id.split(' ');
  const wet = LETS_GO.includes(verb) && isWet(pack?.facts ?? null, after(thing));
  const unknown = verb === 'took-off' || (job.strip !== null && verb === 'undone');
  const comesOut = OPENERS.includes(verb) && pack !== null && wetStillTight(job, pack, id) !== null;
  const opens = stop === 'isolation' || wet || unknown || comesOut;
  if (verb === 'proved-dead' || (opens && !job.isolation.proved))
    return refusal('isolation not proved', say('noWayPast', id));
  const turns = stop === 'clear' || ['started', 'turned'].includes(verb);
  if (verb === 'people-clear' || (turns && !job.clear))
    return refusal('someone not clear', say('noWayPast', id));
  return null;
}

function decisionRefused(job: JobState, body: ActBody): Refusal | null {
  const finding = job.findings.find((f) => f.id === body.finding);
  if (finding === undefined)
    return bad(
      say('noSuchFinding', String(body.finding)),
      job.findings.map((f) => f.id),
    );
  if (finding.kind !== 'two amendments') return null;
  const rivals = rivalPacks(job, finding.id);
  if (body.pack !== undefined && rivals.includes(String(body.pack))) return null;
  return bad(say('whichPack'), rivals);
}

function amendRefused(job: JobState, body: ActBody, packs: readonly Pack[]): Refusal | null {
  if (body.from !== job.packInForce)
    return bad(say('inForceIs', job.packInForce ?? say('notDecided'), String(body.from)));
  if (body.to === body.from) return bad(say('sameInForce'));
  return packs.some((p) => p.id === body.to) ? null : bad(say('packIsNotHere', String(body.to)));
}

/** A job with a pack in which nothing was taken out has not done what it was for. */
const notDoneYet = (job: JobState): readonly string[] =>
  wasDone(job) ? [] : [say('notBeenDone', job.title)];

/** A phone that was lost may never send what others wait for: a name can stand for that too. */
const waitingThing = (hash: string): string => `act/${hash}`;

const undecided = (f: Finding): boolean => f.needsDecision && f.decision === null;

function closingRefused(state: State, job: JobState, body: ActBody): Refusal | null {
  if (job.closed !== null) return bad(say('wasClosed', job.closed.by));
  const stated = (Array.isArray(body.deviations) ? body.deviations : []).map((d) =>
    String((d as { thing?: unknown }).thing),
  );
  const open = job.entries.filter((e) => e.open && !stated.includes(e.thing));
  const needless = stated.filter(
    (thing) =>
      thing !== 'job' &&
      !state.waiting.some((hash) => waitingThing(hash) === thing) &&
      !job.entries.some((e) => e.open && e.thing === thing),
  );
  const list = [
    ...open.map((e) => say('listedThing', e.thing, e.what)),
    ...job.findings.filter(undecided).map((f) => say('findingOpen', f.id, f.what)),
    ...(job.packInForce === null && job.strip === null ? [say('inForceUndecided')] : []),
    ...state.waiting
      .filter((hash) => !stated.includes(waitingThing(hash)))
      .map((hash) => say('actWaits', waitingThing(hash))),
    ...(state.heads.length > 1 ? [say('sideBySideRecords', state.heads.length)] : []),
    ...(stated.some((thing) => !thing.startsWith('act/')) ? [] : notDoneYet(job)),
    ...needless.map((thing) => say('deviationNotOpen', thing)),
  ];
  return list.length === 0 ? null : refusal('not closed', say('cannotClose', list.length), list);
}
