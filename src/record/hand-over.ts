// Handing over the watch: what was open then, and what the relief has since seen at the machine.

import type { Pack, Thing } from '../pack/types.ts';
import { heard, say } from '../words/heard.ts';
import type { Sentence } from '../words/say.ts';
import { type Ledger, unclosed } from './ledger.ts';
import { nextSteps } from './next.ts';
import { stripProposal } from './proposal.ts';
import { type Said, viewOf } from './said.ts';
import { lookLines } from './second-look.ts';
import type { Entry, HandedOver, JobState, State } from './types.ts';

/** The last handing over; a look at the machine counts when it was made knowing of it. */
export function handedOverIn(all: readonly Said[], ledger: Ledger): HandedOver | null {
  const last = all.filter((s) => s.act.kind === 'handed-over').at(-1);
  if (last === undefined) return null;
  const view = viewOf(last, ledger.isAncestor);
  const looks = all.filter(
    (s) => s.act.kind === 'seen-at-machine' && ledger.isAncestor(last.index, s.index),
  );
  const open = [...ledger.accounts.keys()].filter((t) => unclosed(ledger, t, view).length > 0);
  const { hash, by, at } = last.act;
  return {
    act: hash,
    by,
    to: String(last.body.to),
    at,
    list: open.map((thing) => ({
      thing,
      seenBy: looks.find((l) => l.body.thing === thing)?.act.by ?? null,
    })),
  };
}

/** What the next watch must know, in words made from the record alone. */
export type HandOver = {
  readonly open: readonly {
    readonly thing: Thing;
    readonly what: string;
    readonly where: string | null;
    readonly seenBy: string | null;
  }[];
  readonly temporary: readonly string[];
  /** Joints that are not tightened to their last round, with the bolts still to be done. */
  readonly notTight: readonly string[];
  readonly isolation: string;
  readonly findings: readonly string[];
  readonly next: readonly string[];
  /** Open things that nobody has seen at the machine since the handing over. */
  readonly notSeen: readonly Thing[];
  readonly lines: readonly string[];
  /** What these sentences say, for other languages. */
  readonly said: readonly Sentence[];
};

export function handOver(state: State, job: string, pack: Pack | null): HandOver {
  const now = state.jobs[job];
  if (now === undefined) throw new Error(`there is no job ${job}`);
  const entries = now.entries.filter((e) => e.open);
  const seen = new Map(now.handedOver?.list.map((l) => [l.thing, l.seenBy]));
  const open = entries.map((e) => ({
    thing: e.thing,
    what: e.what,
    where: e.place,
    seenBy: seen.get(e.thing) ?? null,
  }));
  const { value: parts, said } = heard(() => ({
    open,
    temporary: entries.filter((e) => e.kind === 'temporary').map((e) => placed(e)),
    notTight: entries.filter((e) => e.kind === 'joint').map((e) => notTight(e)),
    isolation: now.isolation.proved ? say('proved') : say('notProvedBecause', now.isolation.why),
    findings: now.findings.filter((f) => f.needsDecision && f.decision === null).map((f) => f.what),
    next: nextWords(state, now, pack),
    notSeen: open.filter((o) => o.seenBy === null).map((o) => o.thing),
  }));
  return { ...parts, said, lines: linesOf(now, parts) };
}

const placed = (e: Entry): string => (e.place === null ? e.what : say('placed', e.what, e.place));

/** The first round that lacks bolts, and which; a joint that is whole is not on the list. */
function notTight(e: Entry): string {
  const rounds = Object.entries(e.tally ?? {});
  const begun = rounds.filter(([, holes]) => holes.length > 0);
  const [round, holes] = begun.at(-1) ?? [];
  if (round === undefined || holes === undefined) return say('nothingTightened', placed(e));
  const done = holes[0] === 'all' ? say('allHoles') : say('theseHoles', holes);
  return say('tightenedTo', placed(e), round, done);
}

function nextWords(state: State, job: JobState, pack: Pack | null): readonly string[] {
  if (job.strip !== null)
    return stripProposal(state, job.id)
      .filter((r) => r.ready)
      .map((r) => r.text);
  return pack === null ? [] : nextSteps(state, job.id, pack).map((s) => s.text);
}

function linesOf(job: JobState, h: Omit<HandOver, 'lines' | 'said'>): readonly string[] {
  const given = job.handedOver;
  const listed = (title: string, rows: readonly string[]): readonly string[] =>
    rows.length === 0 ? [] : [title, ...rows.map((r) => `  - ${r}`)];
  return [
    `${job.title}: ${job.stage}, ${job.openCount} open`,
    ...(given === null ? [] : [`Handed over by ${given.by} to ${given.to}, ${given.at.utc}`]),
    `Isolation ${h.isolation}`,
    ...lookLines(job),
    ...listed(
      'Open:',
      h.open.map((o) => {
        const seen = o.seenBy === null ? 'not seen' : `seen by ${o.seenBy}`;
        const place = o.where === null ? '' : ` (${o.where})`;
        return `${o.what}${place}${given === null ? '' : `: ${seen}`}`;
      }),
    ),
    ...listed('Put in for the time being:', h.temporary),
    ...listed('Not tight:', h.notTight),
    ...listed('Wants a decision:', h.findings),
    ...listed('Next:', h.next),
  ];
}
