// The two stops: is the isolation proved, and is everyone clear, in the eyes of whoever asks.

import type { Thing } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import type { IsAncestor, Said, View } from './said.ts';
import { isSeen, type SeenFacts } from './seen.ts';
import type { ActBody, JobState } from './types.ts';

type Asked = {
  readonly said: readonly Said[];
  readonly isAncestor: IsAncestor;
  readonly view: View;
  readonly facts: Said['facts'];
  readonly pack: Said['pack'];
};

/** Shut by a step of the pack, or as a person without a pack said it. */
const SHUT = ['shut', 'shut-or-unplugged'];

export const isYes = (value: unknown): boolean => value === true || value === 'yes';

/** Acts of a kind on a thing that stand: every act undoing them in view came before. */
function standing(
  asked: Asked,
  kinds: readonly string[],
  undoneBy: string,
  thing: Thing,
): readonly Said[] {
  const on = asked.said.filter((s) => s.body.thing === thing && asked.view(s.index));
  const against = on.filter((s) => s.act.kind === undoneBy);
  return on.filter(
    (s) => kinds.includes(s.act.kind) && against.every((a) => asked.isAncestor(a.index, s.index)),
  );
}

/** A closure brought to another position than the pack lists cuts nothing off. */
export function isAsListed(s: Said): boolean {
  const listedAt = s.facts?.closures[String(s.body.thing).slice('closure/'.length)]?.workPosition;
  return (
    s.act.kind !== 'shut' ||
    s.body.position === undefined ||
    listedAt === undefined ||
    s.body.position === listedAt
  );
}

/** A proof counts when the flow was seen to run and die away after every closure was shut. */
function provesDead(asked: Asked, p: Said, shut: readonly (readonly Said[])[]): boolean {
  return (
    isYes(p.body.sawRun) &&
    isYes(p.body.diedAway) &&
    p.act.by.trim() !== '' &&
    shut.every((acts) => acts.some((s) => asked.isAncestor(s.index, p.index)))
  );
}

export function isolationIn(asked: Asked): JobState['isolation'] {
  const { facts } = asked;
  if (facts === null) return not(say('packNotHere'));
  if (isSeen(facts)) return isolationSeen(asked, facts);
  const { closures, proveAt, stated } = facts.isolation;
  const name = (id: string): string => facts.closures[id]?.name ?? id;
  const shutActs = closures.map((id) =>
    standing(asked, SHUT, 'restored', `closure/${id}`).filter((s) => isAsListed(s)),
  );
  const shut = closures.filter((_, i) => (shutActs[i]?.length ?? 0) > 0);
  const tagged = closures.filter((id) => isTagged(asked, id));
  const provedAt = proveAt.filter((drain) =>
    asked.said.some(
      (s) =>
        s.act.kind === 'proved-dead' &&
        s.body.thing === `drain/${drain}` &&
        asked.view(s.index) &&
        provesDead(asked, s, shutActs),
    ),
  );
  const left = (all: readonly string[], have: readonly string[]) =>
    all.filter((id) => !have.includes(id)).map(name);
  const wants = [
    ...(stated ? [] : [say('isolationUnstated')]),
    ...(stated && closures.length === 0 ? [say('noClosure')] : []),
    ...listed('notShut', left(closures, shut)),
    ...listed('notTagged', left(closures, tagged)),
    ...(stated && proveAt.length === 0 ? [say('noDrainNamed')] : []),
    ...listed('notSeenToDie', left(proveAt, provedAt)),
  ];
  const proved = wants.length === 0;
  return { shut, tagged, provedAt, proved, why: proved ? say('proved') : say('together', wants) };
}

/**
 * Without a pack nobody has listed the closures: at least one that holds back a flow stands shut,
 * all of those are tagged, and flow was seen to run and die away after every one was shut and
 * after any was given back.
 */
function isolationSeen(asked: Asked, facts: SeenFacts): JobState['isolation'] {
  const name = (id: string): string => facts.closures[id]?.name ?? id;
  const known = facts.isolation.closures;
  const stands = (id: string) => standing(asked, SHUT, 'restored', `closure/${id}`);
  const shut = known.filter((id) => stands(id).length > 0);
  const tagged = shut.filter((id) => isTagged(asked, id));
  const given = asked.said.filter(
    (s) =>
      s.act.kind === 'restored' &&
      asked.view(s.index) &&
      known.includes(String(s.body.thing).slice('closure/'.length)),
  );
  const proofs = asked.said.filter(
    (s) =>
      s.act.kind === 'proved-dead' &&
      asked.view(s.index) &&
      provesDead(asked, s, shut.map(stands)) &&
      given.every((g) => asked.isAncestor(g.index, s.index)),
  );
  const provedAt = [...new Set(proofs.map((p) => String(p.body.thing).slice('drain/'.length)))];
  const untagged = shut.filter((id) => !tagged.includes(id)).map(name);
  const wants = [
    ...(shut.length > 0 ? [] : [say('noValveShut')]),
    ...listed('notTagged', untagged),
    ...(provedAt.length > 0 ? [] : [say('nowhereSeenToDie')]),
  ];
  const proved = wants.length === 0;
  return { shut, tagged, provedAt, proved, why: proved ? say('proved') : say('together', wants) };
}

const listed = (
  what: 'notShut' | 'notTagged' | 'notSeenToDie',
  names: readonly string[],
): readonly string[] => (names.length === 0 ? [] : [say(what, names)]);

const not = (why: string): JobState['isolation'] => ({
  shut: [],
  tagged: [],
  provedAt: [],
  proved: false,
  why,
});

/** Every tag the pack lists for a closure hangs; where it lists none, at least one hangs. */
function isTagged(asked: Asked, closure: string): boolean {
  const listedTags = asked.pack?.lists.closures.find((c) => c.closure === closure)?.tags ?? [];
  const hangs = (thing: Thing) => standing(asked, ['tagged'], 'untagged', thing);
  if (listedTags.length > 0) return listedTags.every((n) => hangs(`tag/${n}`).length > 0);
  return asked.said.some(
    (s) =>
      s.act.kind === 'tagged' &&
      s.body.closure === closure &&
      asked.view(s.index) &&
      hangs(String(s.body.thing)).includes(s),
  );
}

/** After these a call to start or turn no longer holds: it has turned, or has its power back. */
const LAPSES: readonly string[] = ['turned', 'started', 'restored', 'untagged'];

/** Hands on a joint that is tight: nothing is opened, but somebody was at the machine. */
const AT_THE_MACHINE: readonly string[] = ['checked-tight', 're-tightened'];

const opensMachine = (s: Said): boolean =>
  AT_THE_MACHINE.includes(s.act.kind) ||
  s.row.opens(s.body, s.facts).some((o) => o.kind !== 'proof');

const callsBefore = (
  said: readonly Said[],
  isAncestor: IsAncestor,
  view: View,
  lapses: (s: Said) => boolean,
): readonly Said[] => {
  const seen = said.filter((s) => view(s.index));
  const against = seen.filter(lapses);
  return seen.filter(
    (s) => s.act.kind === 'people-clear' && against.every((o) => isAncestor(o.index, s.index)),
  );
};

/** Calls of "clear" whose step counts as done: everything undone or opened came before them. */
export const clearCalls = (
  said: readonly Said[],
  isAncestor: IsAncestor,
  view: View,
): readonly Said[] => callsBefore(said, isAncestor, view, opensMachine);

/** Whether a call holds for turning or starting now: nothing turned or got its power back since. */
export const isClear = (said: readonly Said[], isAncestor: IsAncestor, view: View): boolean =>
  callsBefore(said, isAncestor, view, (s) => opensMachine(s) || LAPSES.includes(s.act.kind))
    .length > 0;

/** A nut backed off opens what it holds, as undoing does. */
export const LETS_GO: readonly string[] = ['undone', 'checked-tight'];

/** Opens what may hold liquid: a wet joint of the pack, or a thing not said to be dry. */
export const opensWet = (kind: string, body: ActBody, facts: Said['facts']): boolean =>
  kind === 'took-off'
    ? body.wet !== 'no'
    : LETS_GO.includes(kind) && isWet(facts, String(body.thing).slice('joint/'.length));

/** Wet by the pack's word, in either of the two places where it says so. */
export const isWet = (facts: Said['facts'], joint: string): boolean =>
  facts !== null &&
  (facts.isolation.wetJoints.includes(joint) || facts.joints[joint]?.wet === true);
