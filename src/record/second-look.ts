// A second pair of eyes on the closures: who looked, what was seen, and whether it still holds.

import { limits } from '../limits.ts';
import type { HandsAboard, PackFacts, Thing } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { choicesOf, type LookChoices, positionOf } from './look-order.ts';
import { everything, type IsAncestor, type Said, type View, viewOf } from './said.ts';
import { isSeen } from './seen.ts';
import { after } from './things.ts';
import type { DeviceTime, JobState } from './types.ts';

export const MOMENTS = ['isolation', 'line-up'] as const;
export type Moment = (typeof MOMENTS)[number];

/** What brings a closure to where it is wanted at a moment; anything else there undoes it. */
const BRINGS: Readonly<Record<Moment, readonly string[]>> = {
  isolation: ['shut', 'shut-or-unplugged'],
  'line-up': ['restored'],
};
const MOVES = [...BRINGS.isolation, ...BRINGS['line-up']];

export type LookRow = LookChoices & {
  readonly thing: Thing;
  readonly name: string;
  readonly place: string | null;
};

/** One look as it was said; `passed` is judged by what whoever looked had before them. */
export type LookSaid = {
  readonly act: string;
  readonly by: string;
  readonly at: DeviceTime;
  readonly alone: boolean;
  /** Minutes by the device's clock since the last closure was said; shown, never trusted. */
  readonly minutesAfter: number | null;
  readonly passed: boolean;
  readonly differs: readonly string[];
  /** The names alone of what was seen otherwise: the next to look is told no position. */
  readonly otherwise: readonly string[];
  readonly why: string | null;
};

export type LookState = {
  readonly moment: Moment;
  readonly thing: Thing;
  readonly step: string;
  /** In the pack's order; a list to look by is given by `lookOrder`. */
  readonly rows: readonly LookRow[];
  /** Closures that nobody has said to stand where they should: there is nothing to look at yet. */
  readonly notYet: readonly string[];
  /** Who shut them, or lined them up: no second pair of eyes. */
  readonly doers: readonly string[];
  readonly lastSaid: DeviceTime | null;
  /** How it stands looked at now; null while it does not. */
  readonly how: 'second pair of eyes' | 'checked alone' | 'used anyway' | null;
  readonly by: string | null;
  /** Who takes it upon their name that it is gone on without one, as things stand now. */
  readonly anywayBy: string | null;
  readonly why: string;
  readonly said: readonly LookSaid[];
};

export type Looking = {
  readonly said: readonly Said[];
  readonly anyway: readonly Said[];
  readonly isAncestor: IsAncestor;
  /** What is known of the job now, and how many are aboard where no pack says it. */
  readonly facts: PackFacts | null;
  readonly aboard: HandsAboard | null;
};

export const isLook = (s: Said): boolean => s.act.kind === 'second-look';

export const momentOf = (thing: unknown): Moment | null =>
  MOMENTS.find((m) => thing === `look/${m}`) ?? null;

export const lookStep = (moment: Moment): string => `second-look look/${moment}`;

/** One person under one name, however it was typed. */
export const sameName = (a: string, b: string): boolean => nameKey(a) === nameKey(b);
const nameKey = (name: string): string =>
  name.normalize('NFC').trim().toLowerCase().replaceAll(/\s+/g, ' ');

const aboardOf = (l: Looking, s: Said | null): HandsAboard | null =>
  s?.pack?.request.handsAboard ?? l.aboard;

/** Last moves of a closure in view: none of them was said knowing of another of them. */
function lastMoves(l: Looking, thing: Thing, view: View): readonly Said[] {
  const moves = l.said.filter(
    (s) => s.body.thing === thing && MOVES.includes(s.act.kind) && view(s.index),
  );
  return moves.filter((m) => !moves.some((o) => l.isAncestor(m.index, o.index)));
}

const saidAt = (m: Said): string | null => {
  const closure = m.facts?.closures[after(String(m.body.thing))];
  if (typeof m.body.position === 'string') return m.body.position;
  return m.act.kind === 'restored' ? (closure?.normal ?? null) : (closure?.workPosition ?? 'shut');
};

/** Where a closure was last said to stand; null where nobody said it, or two say it apart. */
function heldAt(l: Looking, thing: Thing, moment: Moment, view: View): string | null {
  const last = lastMoves(l, thing, view);
  const [one] = last;
  if (one === undefined || !last.every((m) => BRINGS[moment].includes(m.act.kind))) return null;
  const at = saidAt(one);
  const same = last.every((m) => positionOf(saidAt(m) ?? '') === positionOf(at ?? ''));
  return same ? at : null;
}

/** What is looked at: the pack's list; without a pack, what holds back a flow and stands shut. */
function thingsOf(
  l: Looking,
  facts: PackFacts | null,
  moment: Moment,
  view: View,
): readonly Thing[] {
  if (facts === null) return [];
  if (!isSeen(facts)) return facts.looks?.[moment] ?? [];
  if (moment !== 'isolation') return [];
  return facts.isolation.closures
    .map((id) => `closure/${id}`)
    .filter((thing) => heldAt(l, thing, moment, view) !== null);
}

const wantedAt = (facts: PackFacts | null, thing: Thing, moment: Moment): string | null => {
  const closure = facts?.closures[after(thing)];
  return (moment === 'isolation' ? closure?.workPosition : closure?.normal) ?? null;
};

const nameOf = (facts: PackFacts | null, thing: Thing): string =>
  facts?.closures[after(thing)]?.name ?? after(thing);

type RowSaid = { readonly thing: Thing; readonly position: string };

/** The body's shape was checked when the act was taken up. */
const rowsIn = (look: Said): readonly RowSaid[] => look.body.rows as unknown as readonly RowSaid[];

type Difference = { readonly name: string; readonly what: string };

/** What was seen against what was said and what is wanted; an empty list is a look that agrees. */
function differencesOf(
  l: Looking,
  look: Said,
  facts: PackFacts | null,
  moment: Moment,
): readonly Difference[] {
  const view = viewOf(look, l.isAncestor);
  return thingsOf(l, facts, moment, view).flatMap((thing) => {
    const name = nameOf(facts, thing);
    const saw = rowsIn(look).filter((r) => r.thing === thing);
    const positions = saw.map((r) => r.position);
    const words = positions.length < 2 ? (positions[0] ?? '') : say('and', positions);
    const said = heldAt(l, thing, moment, view);
    const wanted = wantedAt(facts, thing, moment) ?? said;
    if (saw.length === 0) return [{ name, what: say('lookNotLookedAt') }];
    if (said === null) return [{ name, what: say('seenUnsaid', words) }];
    const right = [said, wanted ?? said].map(positionOf);
    const agrees = saw.every((r) => right.every((p) => p === positionOf(r.position)));
    if (agrees) return [];
    const want = wanted !== null && positionOf(wanted) !== positionOf(said);
    return [{ name, what: say('seenOtherwise', words, said, want ? wanted : null) }];
  });
}

/** Everyone who brought one of these closures to where it should be, in view. */
function broughtBy(l: Looking, things: readonly Thing[], moment: Moment, view: View) {
  return l.said.filter(
    (s) =>
      view(s.index) && BRINGS[moment].includes(s.act.kind) && things.includes(String(s.body.thing)),
  );
}

export const minutesBetween = (from: DeviceTime, to: DeviceTime): number =>
  Math.floor((Date.parse(to.utc) - Date.parse(from.utc)) / 60_000);

const latest = (acts: readonly Said[]): DeviceTime | null =>
  acts.reduce<DeviceTime | null>(
    (at, s) => (at === null || Date.parse(s.act.at.utc) > Date.parse(at.utc) ? s.act.at : at),
    null,
  );

/** A look judged by what whoever looked had before them, against the facts given. */
function judged(l: Looking, look: Said, facts: PackFacts | null, moment: Moment): LookSaid {
  const view = viewOf(look, l.isAncestor);
  const things = thingsOf(l, facts, moment, view);
  const brought = broughtBy(l, things, moment, view);
  const alone = brought.some((s) => sameName(s.act.by, look.act.by));
  const last = latest(brought);
  const minutesAfter = last === null ? null : minutesBetween(last, look.act.at);
  const mayBeAlone =
    aboardOf(l, look) === '1' || l.anyway.some((a) => ofMoment(a, moment) && view(a.index));
  const why = !alone
    ? null
    : !mayBeAlone
      ? say('moreAboard')
      : (minutesAfter ?? 0) < limits.record.aloneMinutes
        ? say('aloneSooner', minutesAfter ?? 0, limits.record.aloneMinutes)
        : null;
  const found = differencesOf(l, look, facts, moment);
  const differs = found.map((d) => say('listedThing', d.name, d.what));
  const otherwise = found.map((d) => d.name);
  const { hash: act, by, at } = look.act;
  const passed = things.length > 0 && why === null && differs.length === 0;
  return { act, by, at, alone, minutesAfter, passed, differs, otherwise, why };
}

const ofMoment = (anyway: Said, moment: Moment): boolean => anyway.body.step === lookStep(moment);

/** Whether a closure was moved, in view, without whoever looked knowing it. */
function overtaken(
  l: Looking,
  s: Said,
  moment: Moment,
  view: View,
  kinds: readonly string[],
): boolean {
  const things = [
    ...thingsOf(l, s.facts, moment, viewOf(s, l.isAncestor)),
    ...thingsOf(l, l.facts, moment, view),
  ];
  return l.said.some(
    (m) =>
      view(m.index) &&
      kinds.includes(m.act.kind) &&
      things.includes(String(m.body.thing)) &&
      !l.isAncestor(m.index, s.index),
  );
}

/** Somebody saw it otherwise, and whoever looked did not know. */
const contradicted = (l: Looking, look: Said, moment: Moment, view: View): boolean =>
  l.said.some(
    (o) =>
      o !== look &&
      isLook(o) &&
      momentOf(o.body.thing) === moment &&
      view(o.index) &&
      !l.isAncestor(o.index, look.index) &&
      differencesOf(l, o, o.facts, moment).length > 0,
  );

/**
 * Whether the step is done, in view: as with the proof at a drain, giving back at the end of the
 * job is no fault of the look at the isolation; only what is shut again asks for a new one.
 */
export function lookCounts(l: Looking, s: Said, view: View): boolean {
  const moment =
    MOMENTS.find((m) => s.body.step === lookStep(m) || s.body.thing === `look/${m}`) ?? null;
  if (moment === null || overtaken(l, s, moment, view, BRINGS[moment])) return false;
  if (!isLook(s)) return true;
  return judged(l, s, s.facts, moment).passed && !contradicted(l, s, moment, view);
}

/** How each moment stands; a moment at which nothing is to be looked at is left out. */
export function looksIn(l: Looking): readonly LookState[] {
  return MOMENTS.flatMap((moment) => {
    const state = lookIn(l, moment);
    return state.rows.length === 0 && state.said.length === 0 ? [] : [state];
  });
}

function lookIn(l: Looking, moment: Moment): LookState {
  const { facts } = l;
  const view = everything;
  const things = thingsOf(l, facts, moment, view);
  const rows = things.map((thing): LookRow => {
    const closure = facts?.closures[after(thing)];
    const said = heldAt(l, thing, moment, view);
    const place = closure?.place ?? closure?.stations[0] ?? null;
    return { thing, name: nameOf(facts, thing), place, ...choicesOf(closure, said) };
  });
  const brought = broughtBy(l, things, moment, view);
  const looks = l.said.filter((s) => isLook(s) && momentOf(s.body.thing) === moment);
  const holds = (s: Said): boolean => !overtaken(l, s, moment, view, MOVES);
  const stands = looks.findLast(
    (s) => holds(s) && judged(l, s, facts, moment).passed && !contradicted(l, s, moment, view),
  );
  const anyway = l.anyway.findLast((s) => ofMoment(s, moment) && holds(s));
  const alone = stands !== undefined && judged(l, stands, facts, moment).alone;
  const how = stands === undefined ? (anyway === undefined ? null : 'used anyway') : null;
  const last = looks.at(-1);
  return {
    moment,
    thing: `look/${moment}`,
    step: lookStep(moment),
    rows,
    notYet: things.filter((t) => heldAt(l, t, moment, view) === null).map((t) => nameOf(facts, t)),
    doers: [...new Set(brought.map((s) => s.act.by))],
    lastSaid: latest(brought),
    how: stands === undefined ? how : alone ? 'checked alone' : 'second pair of eyes',
    by: (stands ?? anyway)?.act.by ?? null,
    anywayBy: anyway?.act.by ?? null,
    why: last === undefined ? say('nobodyLooked') : whyNot(l, last, moment),
    said: looks.map((s) => judged(l, s, s.facts, moment)),
  };
}

function whyNot(l: Looking, last: Said, moment: Moment): string {
  const { by, differs, why } = judged(l, last, l.facts, moment);
  if (differs.length > 0) return say('sawOtherwise', by, differs);
  if (why !== null) return say('lookByWhy', by, why);
  if (contradicted(l, last, moment, everything)) return say('twoSawOtherwise');
  return say('movedSince', by);
}

type Fault = {
  readonly kind: 'position differs' | 'out of order';
  readonly what: string;
  readonly needsDecision: boolean;
};

/** What a look itself is a finding of: another position seen, or no second pair of eyes. */
export function lookFaults(l: Looking, s: Said): readonly Fault[] {
  const moment = isLook(s) ? momentOf(s.body.thing) : null;
  if (moment === null) return [];
  const { by, differs, why } = judged(l, s, s.facts, moment);
  const lineUp = moment === 'line-up';
  const needsDecision = true;
  return [
    ...(differs.length === 0
      ? []
      : [
          {
            kind: 'position differs' as const,
            what: say('lookDiffers', by, lineUp, differs),
            needsDecision,
          },
        ]),
    ...(why === null
      ? []
      : [
          {
            kind: 'out of order' as const,
            what: say('lookIsNone', lineUp, by, why),
            needsDecision,
          },
        ]),
  ];
}

/** Without a pack nothing waits for the look; that the first wet thing did not is a finding. */
export function unseenFaults(l: Looking, s: Said, wet: (s: Said) => boolean): readonly Fault[] {
  if (!isSeen(s.facts) || !wet(s)) return [];
  const view = viewOf(s, l.isAncestor);
  const things = thingsOf(l, s.facts, 'isolation', view);
  const earlier = l.said.some((o) => view(o.index) && wet(o));
  const looked = [...l.said, ...l.anyway].some(
    (o) => view(o.index) && (isLook(o) || ofMoment(o, 'isolation')) && lookCounts(l, o, view),
  );
  if (things.length === 0 || earlier || looked) return [];
  const name = String(s.body.what ?? s.body.thing);
  const what = say('openedUnseen', name);
  return [{ kind: 'out of order', what, needsDecision: false }];
}

/** One look in words, for the record, the hand-over and every print. */
export function lookLines(job: Pick<JobState, 'looks' | 'deviations'>): readonly string[] {
  return job.looks.flatMap((look) => {
    const name = look.moment === 'isolation' ? 'Isolation' : 'Line-up';
    const passed = look.said.filter((s) => s.passed).map((s) => `${name}: ${passedWords(s)}`);
    const anyway = job.deviations
      .filter((d) => d.thing === look.thing)
      .map((d) => `${name}: second look left out, used anyway by ${d.by}: ${d.reason}`);
    const none = `${name}: not looked at by a second pair of eyes`;
    return passed.length + anyway.length === 0 ? [none] : [...passed, ...anyway];
  });
}

const passedWords = ({ by, at, alone, minutesAfter }: LookSaid): string => {
  const when = `${at.utc} by the device’s clock`;
  return alone
    ? `checked alone by ${by}, ${minutesAfter} min after the last closure was said, ${when} ` +
        '(common practice, no source)'
    : `looked at by a second pair of eyes: ${by}, ${when}`;
};
