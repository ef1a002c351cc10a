// Done to here: which steps already carried out may be ticked together, and where a run must stop.

import { beforeOf } from '../pack/before.ts';
import type { Ask, Pack, Step } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { isWet } from './isolation.ts';
import { supersededRefused } from './superseded.ts';
import { after } from './things.ts';
import type { ActBody, JobState, State } from './types.ts';

export type Together = {
  /** In the order of the pack; each act's body carries `together: true`. */
  readonly steps: readonly {
    readonly step: Step;
    readonly body: ActBody;
    /** What must be answered all the same: no answer is made up. */
    readonly asks: readonly Ask[];
  }[];
  /** The step that has to be ticked by itself before the run can go on, and why. */
  readonly stopsAt: { readonly step: Step; readonly why: string } | null;
};

/** The steps not yet done, from the first up to this one, as far as they may go along. */
export function doneToHere(state: State, job: string, pack: Pack, upTo: string): Together {
  const now = state.jobs[job];
  const end = pack.steps.findIndex((s) => s.id === upTo);
  if (now === undefined || now.closed !== null || end < 0) return { steps: [], stopsAt: null };
  const run = pack.steps
    .slice(0, end + 1)
    .filter((s) => now.done[s.id] === undefined)
    // Read or not before the stop: no run ticks it, and none waits for it.
    .filter((s) => beforeOf(s.thing) === null);
  const at = run.findIndex((s) => stopsRun(s, pack, now) !== null);
  const stop = at < 0 ? undefined : run[at];
  const steps = run.slice(0, at < 0 ? run.length : at).map((step) => ({
    step,
    body: {
      thing: step.thing,
      ...(step.round === undefined ? {} : { round: step.round }),
      ...step.fixed,
      together: true,
    },
    asks: step.asks.filter((a) => a.optional !== true && step.fixed[a.name] === undefined),
  }));
  const why = stop === undefined ? null : stopsRun(stop, pack, now);
  return { steps, stopsAt: stop === undefined || why === null ? null : { step: stop, why } };
}

function stopsRun(step: Step, pack: Pack, job: JobState): string | null {
  const wet = step.verb === 'undone' && isWet(pack.facts, after(step.thing));
  if ((wet || step.stop === 'isolation') && !job.isolation.proved) return say('togetherNotProved');
  const body = { thing: step.thing, ...(step.round === undefined ? {} : { round: step.round }) };
  if (supersededRefused(job, step.verb === 'made' ? body : {}, pack.facts) !== null)
    return say('togetherSuperseded');
  return neverTogether(step.verb, body, pack);
}

const ISOLATION = [
  ...['shut', 'shut-or-unplugged', 'tagged', 'drain-opened', 'proved-dead'],
  ...['drain-shut', 'untagged', 'restored'],
];
const COUNTS = ['seal-out', 'seal-in', 'loose-out', 'loose-in'];
const CLEAR = ['people-clear', 'turned', 'started'];

/** Why an act may not be entered together with others, or null; asked again when it is recorded. */
export function neverTogether(kind: string, body: ActBody, pack: Pack | null): string | null {
  const thing = String(body.thing ?? '');
  const round = body.round === undefined ? '' : ` ${String(body.round)}`;
  const asks = pack?.steps.find((s) => s.id === `${kind} ${thing}${round}`)?.asks ?? [];
  if (ISOLATION.includes(kind)) return say('togetherIsolation');
  if (kind === 'took-off' && body.wet !== 'no') return say('togetherWet');
  if (kind === 'second-look') return say('togetherLook');
  if (CLEAR.includes(kind)) return say('togetherClear');
  if (kind === 'proof') return say('togetherProof');
  if (kind === 'as-found') return say('togetherFound');
  if (COUNTS.includes(kind) || thing === 'check/tools' || asks.some((a) => a.kind === 'count'))
    return say('togetherCount');
  const reading = asks.some((a) => a.kind === 'number' && a.optional !== true);
  if (kind === 'measured' || reading) return say('togetherReading');
  const joint = pack?.facts.joints[after(thing)];
  if (kind === 'made' && joint?.critical === true && joint.rounds.at(-1) === lastOf(body, joint))
    return say('togetherLastRound');
  return null;
}

const lastOf = (
  body: ActBody,
  joint: { readonly rounds: readonly string[] },
): string | undefined => (body.round === undefined ? joint.rounds.at(-1) : String(body.round));
