// The command `job follow-up`: what is to be looked at again after a job, who owns it, and that it
// was done.

import type { Command } from 'commander';
import type { Draft, JobState } from '../record/types.ts';
import { draftOf, onArchive, oneOf, onJob, recorded } from './job-common.ts';
import { BadInput, type Common, isRefusal, refused, type Told } from './job-session.ts';

type Follow = Common & { readonly by?: string; readonly owner?: string; readonly text?: string };

export function followCommand(): Command {
  return onArchive('follow-up', 'list what is to be looked at again, or say that it was done')
    .argument('<job>')
    .argument('[follow-up]', 'its id, or a part of it; left out, all are listed')
    .option('--by <name>', 'who did it')
    .option('--owner <name>', 'instead: who sees to it')
    .option('--text <words>', 'what was seen')
    .action((wanted: string, said: string | undefined, o: Follow) =>
      onJob(o, wanted, async (job, _packs, session) => {
        if (said === undefined) return listed(job, (await session.look()).state.machines);
        const answer = await session.record(draftFor(job, said, o));
        return isRefusal(answer) ? refused(answer) : await recorded([answer], job.id, session);
      }),
    );
}

type Machines = Readonly<
  Record<string, { readonly followUps: readonly { id: string; doneBy: string | null }[] }>
>;

function listed(job: JobState, machines: Machines): Told {
  const later = machines[job.machine]?.followUps ?? [];
  const rows = job.followUps.map((f) => ({
    ...f,
    owner: f.owner ?? job.closed?.by ?? null,
    doneBy: later.find(({ id }) => id === `${job.id}/${f.id}`)?.doneBy ?? f.doneBy,
  }));
  const lines = rows.map((f) => {
    const stands = f.doneBy === null ? `owned by ${f.owner ?? 'nobody'}` : `done by ${f.doneBy}`;
    return `${f.id}: after ${f.after}: ${f.what} (${stands})`;
  });
  const none = ['Nothing is to be looked at again.'];
  return { exit: 0, json: { job: job.id, followUps: rows }, lines: rows.length > 0 ? lines : none };
}

/** At closing they pass to the machine: afterwards they are done in the machine's own record. */
function draftFor(job: JobState, said: string, { by, owner, text }: Follow): Draft {
  if (by === undefined) throw new BadInput('who says it? --by is missing');
  const ids = job.followUps.map(({ id }) => id);
  const id = oneOf(ids, said, 'follow-up');
  if (owner !== undefined) return draftOf(job, 'follow-up-owned', by, { followUp: id, owner });
  const more = text === undefined ? {} : { text };
  if (job.closed === null) return draftOf(job, 'follow-up-done', by, { followUp: id, ...more });
  const stream = { kind: 'machine', id: job.machine } as const;
  return { stream, kind: 'follow-up-done', by, body: { followUp: `${job.id}/${id}`, ...more } };
}
