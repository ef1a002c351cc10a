// Bolts that say no, in one word each, and how tight each bolt of a joint is reported to be.

import type { JointFacts, Pack, Thing } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import type { Said } from './said.ts';
import { after } from './things.ts';
import type { BoltFound, Draft, Entry, JobState } from './types.ts';

/** What is found with one tap at a bolt; kept in these words, told in any language. */
export const BOLT_FINDINGS = ['Stud came out with the nut', 'Broken', "Won't tighten"] as const;

export type BoltFinding = (typeof BOLT_FINDINGS)[number];

/** A broken bolt and one that takes no torque hold nothing, whatever was ticked before. */
const HOLDS_NOTHING: readonly string[] = ['Broken', "Won't tighten"];

export const boltFound = (
  job: string,
  by: string,
  thing: Thing,
  what: BoltFinding,
  hole?: string,
): Draft => ({
  stream: { kind: 'job', id: job },
  kind: 'found',
  by,
  body: { thing, what, ...(hole === undefined ? {} : { hole }) },
});

export type Tight = 'tight' | 'not tight' | 'not judged';

export type JointTight = {
  readonly thing: Thing;
  readonly name: string;
  /** The worst of its bolts: not tight, else not judged, else tight. */
  readonly word: Tight;
  /** The last round that every hole has, or null before the first. */
  readonly round: string | null;
  readonly holes: readonly { readonly hole: string; readonly word: Tight }[];
};

/**
 * Of every joint that this job undid. Tight: reported at the last round, which has a value. Not
 * judged: reported, but no value is issued or it was by feel. Not tight: not reported, or found so.
 */
export const jointsTight = (job: JobState, packs: readonly Pack[]): readonly JointTight[] =>
  job.entries
    .filter((entry) => entry.kind === 'joint')
    .map((entry) => jointTight(job, packKnowing(job, packs, after(entry.thing)), entry));

/** Of the job's packs the last that speaks of a joint: an amended one may leave it out. */
export function packKnowing(job: JobState, packs: readonly Pack[], joint: string): Pack | null {
  const own = job.packs.flatMap((id) => packs.find((p) => p.id === id) ?? []);
  return own.findLast((p) => p.facts.joints[joint] !== undefined) ?? null;
}

/** Without a pack a joint has the words of what it held, whether that came off or was loosened. */
const takenOff = (job: JobState, id: string): string | undefined =>
  job.strip?.seen.find((s) => s.did === 'took off' && after(s.thing) === id)?.what;

function jointTight(job: JobState, pack: Pack | null, entry: Entry): JointTight {
  const id = after(entry.thing);
  const facts = pack?.facts.joints[id];
  const rounds = facts?.rounds ?? [];
  const tally = entry.tally ?? {};
  const last = rounds.at(-1) ?? Object.keys(tally).at(-1) ?? 'made';
  const known = facts === undefined || facts.holes.length === 0 ? ['all'] : facts.holes;
  const against = boltsAgainst(job, entry);
  const holes = known.map((hole) => {
    const said = !entry.open || (tally[last] ?? []).includes(hole);
    const found = against.includes(hole) || against.includes('');
    const word: Tight = !said || found ? 'not tight' : isTorqued(pack, id, facts, hole, last);
    return { hole, word };
  });
  const full = rounds.filter((round) => known.every((hole) => (tally[round] ?? []).includes(hole)));
  return {
    thing: entry.thing,
    name: facts?.name ?? takenOff(job, id) ?? id,
    word: worst(holes.map(({ word }) => word)),
    round: full.at(-1) ?? null,
    holes,
  };
}

const worst = (words: readonly Tight[]): Tight =>
  words.includes('not tight')
    ? 'not tight'
    : words.includes('not judged') || words.length === 0
      ? 'not judged'
      : 'tight';

const NO_VALUE: readonly string[] = ['hand', 'made', 'tight'];

/** The round has a value, and the fastener in this hole has one of its own in the pack. */
function isTorqued(
  pack: Pack | null,
  joint: string,
  facts: JointFacts | undefined,
  hole: string,
  round: string,
): Tight {
  const values = pack?.steps.find((s) => s.id === `made joint/${joint} ${round}`)?.values ?? [];
  const fastener = facts?.fasteners.find((f) => f.holes.includes(hole));
  const own = pack?.fastenings?.list.find((f) => f.id === `${joint}:${fastener?.id ?? ''}`);
  const shown = own === undefined ? values.some((v) => v.shown !== null) : own.value.shown !== null;
  return shown && !NO_VALUE.includes(round) && values.length > 0 ? 'tight' : 'not judged';
}

/** Holes of which it stands; an empty one speaks of the whole joint. */
const boltsAgainst = (job: JobState, entry: Entry): readonly string[] =>
  job.bolts.flatMap((b) => (b.stands && b.thing === entry.thing ? [b.hole ?? ''] : []));

/**
 * Bolts found to hold nothing. It stands until the joint is undone again, for it is then made up
 * anew, or until the nut is checked and holds.
 */
export const boltsFoundIn = (
  all: readonly Said[],
  isAncestor: (a: number, b: number) => boolean,
): readonly BoltFound[] =>
  all
    .filter((s) => s.act.kind === 'found' && holdsNothing(String(s.body.what)))
    .map((s): BoltFound => {
      const thing = String(s.body.thing);
      const hole = typeof s.body.hole === 'string' ? s.body.hole : null;
      const later = all.filter((o) => o.body.thing === thing && isAncestor(s.index, o.index));
      const over = later.some((o) => o.act.kind === 'undone' || (hole !== null && checks(o, hole)));
      return { act: s.act.hash, thing, hole, what: String(s.body.what), stands: !over };
    });

const checks = ({ act, body }: Said, hole: string): boolean =>
  act.kind === 'checked-tight' && Array.isArray(body.holes) && body.holes.includes(hole);

export const tightWord = (word: Tight): string =>
  word === 'tight' ? say('isTight') : say(word === 'not tight' ? 'isNotTight' : 'isNotJudged');

const holdsNothing = (what: string): boolean =>
  HOLDS_NOTHING.includes(what) || what.startsWith('Not tight: ');
