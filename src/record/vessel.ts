// What the vessel's and the machines' own streams say, and what closed jobs hand on to a machine.

import { say } from '../words/heard.ts';
import type { Effective } from './said.ts';
import { after } from './things.ts';
import type { Act, JobState, MachineState, State } from './types.ts';

type Row = Effective['acts'][number];

type VesselState = Pick<State, 'watch' | 'sailings' | 'people'>;

/** The watch of whoever took it last, in causal order. */
export function foldVessel(rows: readonly Row[]): VesselState {
  const acts = rows.map((r) => r.act).filter((a) => a.stream.kind === 'vessel');
  const ofKind = (kind: string): readonly Act[] => acts.filter((a) => a.kind === kind);
  const watch = ofKind('watch-taken').at(-1);
  const off = new Set(ofKind('sailing-off').map((a) => a.body.of));
  return {
    watch: watch === undefined ? null : { name: String(watch.body.name), at: watch.at },
    sailings: ofKind('sailing-set')
      .filter((a) => !off.has(a.hash))
      .map((a) => ({ at: String(a.body.at), where: String(a.body.where), act: a.hash })),
    people: [...new Set(ofKind('person-added').map((a) => String(a.body.name)))],
  };
}

/** Machines by id, from their own streams and from the jobs closed on them. */
export function foldMachines(
  rows: readonly Row[],
  jobs: readonly JobState[],
): Readonly<Record<string, MachineState>> {
  const acts = rows.map((r) => r.act).filter((a) => a.stream.kind === 'machine');
  const machineOf = (a: Act) => (a.kind === 'hours-read' ? String(a.body.machine) : a.stream.id);
  const ids = new Set([...acts.map(machineOf), ...jobs.map((j) => j.machine)]);
  const all = rows.map((r) => r.act);
  return Object.fromEntries(
    [...ids].sort().map((id) => {
      const own = acts.filter((a) => machineOf(a) === id);
      const closed = jobs.filter((j) => j.machine === id && j.closed !== null);
      return [id, machineState(own, closed, all)];
    }),
  );
}

/** What a job was for is done when an item went in, or a machine stripped as seen is back. */
export const wasDone = (job: Pick<JobState, 'strip' | 'entries'>): boolean =>
  job.strip === null
    ? job.entries.some((e) => e.kind === 'item' && !e.open)
    : job.entries.some((e) => (e.kind === 'part' || e.kind === 'joint') && !e.open);

function machineState(
  acts: readonly Act[],
  closed: readonly JobState[],
  all: readonly Act[],
): MachineState {
  const hours = acts
    .filter((a) => a.kind === 'hours-read')
    .map((a) => ({ at: String(a.body.at), hours: Number(a.body.hours) }));
  const before = acts
    .filter((a) => a.kind === 'done-before')
    .map((a) => ({
      target: String(a.body.target),
      does: String(a.body.does),
      at: String(a.body.at),
      hours: typeof a.body.hours === 'number' ? a.body.hours : null,
      job: null,
    }));
  const done = closed.filter(wasDone).map((job) => ({
    target: job.target,
    does: job.does,
    at: job.closed?.at.utc ?? '',
    // The hours at which an item came out are the job's own; a reading elsewhere is not guessed at.
    hours: job.items.findLast((i) => i.hours !== null)?.hours ?? null,
    job: job.id,
  }));
  const lifted = new Set(acts.filter((a) => a.kind === 'limit-lifted').map((a) => a.body.of));
  return {
    hours,
    done: [...before, ...done],
    openLimits: closed.flatMap((job) => limitsOf(job, all)).filter((l) => !lifted.has(l.act)),
    followUps: closed.flatMap((job) => followUpsOf(job, acts)),
  };
}

/** "Passed up to" stands as an open limit on the machine until it is lifted. */
function limitsOf(job: JobState, all: readonly Act[]): MachineState['openLimits'] {
  const owner = job.closed?.by ?? '';
  return job.entries
    .filter((e) => e.kind === 'proof' && !e.open)
    .flatMap((e) => {
      const last = all.findLast(
        (a) => a.kind === 'proof' && a.stream.id === job.id && a.body.thing === e.thing,
      );
      if (last?.body.result !== 'passed up to') return [];
      const name = e.what.replace(/^Proof owed: /, '') || after(e.thing);
      const what = say('passedOnlyTo', name, String(last.body.upTo));
      return [{ what, owner, act: last.hash }];
    });
}

function followUpsOf(job: JobState, acts: readonly Act[]): MachineState['followUps'] {
  return job.followUps.map((f) => {
    const id = `${job.id}/${f.id}`;
    const done = acts.findLast((a) => a.kind === 'follow-up-done' && a.body.followUp === id);
    return {
      id,
      what: say('followUp', f.after, f.what),
      owner: f.owner ?? job.closed?.by ?? '',
      doneBy: done?.by ?? f.doneBy,
    };
  });
}
