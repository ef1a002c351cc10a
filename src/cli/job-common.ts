// What the commands of `job` share: their options, the job they look at, the act they record.

import { Command } from 'commander';
import type { Pack } from '../pack/types.ts';
import type { Act, ActBody, Draft, JobState } from '../record/types.ts';
import {
  BadInput,
  type Common,
  findJob,
  isRefusal,
  openExisting,
  refused,
  run,
  type Session,
  sessionOn,
  type Told,
} from './job-session.ts';
import { actLine, stageWords } from './job-words.ts';

export type By = Common & { readonly by: string };

export const onArchive = (name: string, what: string): Command =>
  new Command(name)
    .description(what)
    .requiredOption('--archive <file>', 'the archive that keeps the record')
    .option('--json', 'tell the result as JSON');

export const byName = (name: string, what: string): Command =>
  onArchive(name, what).requiredOption('--by <name>', 'who does it');

export const collect = (value: string, before: readonly string[] = []): readonly string[] => [
  ...before,
  value,
];

export async function within<T>(file: string, work: (session: Session) => Promise<T>): Promise<T> {
  const archive = openExisting(file);
  try {
    return await work(sessionOn(archive));
  } finally {
    await archive.close();
  }
}

/** Runs a command that looks at one job. */
export const onJob = (
  options: Common,
  wanted: string,
  tell: (job: JobState, packs: readonly Pack[], session: Session) => Promise<Told>,
): Promise<void> =>
  run(options, () =>
    within(options.archive, async (session) => {
      const { state, packs } = await session.look();
      return await tell(findJob(state, wanted), packs, session);
    }),
  );

/** Records one draft made for the job as it stands, and tells the act and the open count. */
export const sayOn = (
  options: By,
  wanted: string,
  kind: string,
  body: (job: JobState, packs: readonly Pack[], session: Session) => Promise<ActBody> | ActBody,
): Promise<void> =>
  onJob(options, wanted, async (job, packs, session) => {
    const draft = draftOf(job, kind, options.by, await body(job, packs, session));
    const answer = await session.record(draft);
    return isRefusal(answer) ? refused(answer) : recorded([answer], job.id, session);
  });

export const draftOf = (job: JobState, kind: string, by: string, body: ActBody): Draft => ({
  stream: { kind: 'job', id: job.id },
  kind,
  by,
  body,
});

export async function recorded(acts: readonly Act[], id: string, session: Session): Promise<Told> {
  const { state } = await session.look();
  const job = state.jobs[id];
  const hashes = new Set(acts.map((a) => a.hash));
  const findings = job?.findings.filter((f) => hashes.has(f.act)) ?? [];
  const stage = job === undefined ? null : stageWords(job);
  return {
    exit: 0,
    json: { acts, job: id, stage, openCount: job?.openCount ?? null, findings },
    lines: [
      ...acts.map(actLine),
      ...findings.map((f) => `Finding "${f.id}": ${f.what}`),
      ...(job === undefined ? [] : [`${job.title}: ${stage}`]),
    ],
  };
}

/** One of the known, by its whole or any part of it that fits no other. */
export function oneOf(known: readonly string[], said: string, what: string): string {
  if (known.includes(said)) return said;
  const fits = known.filter((k) => k.includes(said));
  const [one] = fits;
  if (one !== undefined && fits.length === 1) return one;
  throw new BadInput(`"${said}" fits ${fits.length === 0 ? 'no' : fits.length} ${what}s`);
}
