// One run of a job command on an archive: finds the job, asks the core, appends, tells the result.

import { readFileSync, statSync } from 'node:fs';
import type { Archive } from '../archive/contract.ts';
import { openSqlite } from '../archive/sqlite.ts';
import type { Pack } from '../pack/types.ts';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { hashOf } from '../quantity/sha.ts';
import { mayRecord } from '../record/closing.ts';
import { fold } from '../record/fold.ts';
import type { Act, DeviceTime, Draft, JobState, Refusal, State } from '../record/types.ts';

/** Input that cannot be used: ends with 2. A refusal of the core ends with 1. */
export class BadInput extends Error {
  override readonly name = 'BadInput';
}

/** An answer that is no: nothing was wrong with the input, but it cannot be done. */
export class No extends Error {
  override readonly name = 'No';
}

export type Common = { readonly archive: string; readonly json?: boolean };

export type Session = {
  readonly archive: Archive;
  readonly look: () => Promise<{ acts: readonly Act[]; packs: readonly Pack[]; state: State }>;
  readonly record: (draft: Draft) => Promise<Act | Refusal>;
  /** All of them in one write, or none: drafts that say nothing about each other. */
  readonly recordAll: (drafts: readonly Draft[]) => Promise<readonly Act[] | Refusal>;
};

/** How often a draft is checked again when another program wrote in between. */
const TRIES = 20;

export const isRefusal = (answer: Act | Refusal): answer is Refusal => 'stop' in answer;

/** The shell's clock: device time is shown, never trusted. */
export function now(): DeviceTime {
  const date = new Date();
  return { utc: date.toISOString(), offsetMinutes: 0 - date.getTimezoneOffset() };
}

export function openExisting(file: string): Archive {
  if (statSync(file, { throwIfNoEntry: false }) === undefined)
    throw new BadInput(`there is no archive ${file}: "boxup job start" makes one`);
  return openSqlite({ file });
}

export function sessionOn(archive: Archive): Session {
  let seen: readonly Act[] = [];
  const look: Session['look'] = async () => {
    const heads = await archive.heads();
    const known = new Set(seen.map((a) => a.hash));
    // Reading again is only needed where somebody else has written since.
    if (seen.length === 0 || heads.some((h) => !known.has(h))) seen = await archive.acts();
    const packs = await archive.packs();
    return { acts: seen, packs, state: fold({ acts: seen, packs }) };
  };
  const recordAll: Session['recordAll'] = async (drafts) => {
    for (let i = 0; i < TRIES; i++) {
      const { packs, state } = await look();
      const at = now();
      for (const draft of drafts) {
        const refusal = mayRecord(state, draft.stream.id, draft, packs, at);
        if (refusal !== null) return refusal;
      }
      const done = await archive.append({ drafts: [...drafts], at, heads: state.heads });
      if (!done.ok) continue;
      seen = [...seen, ...done.acts];
      return done.acts;
    }
    throw new Error(`others wrote to the archive ${TRIES} times in a row: nothing was recorded`);
  };
  const record: Session['record'] = async (draft) => {
    const answer = await recordAll([draft]);
    if ('stop' in answer) return answer;
    const [act] = answer;
    if (act === undefined) throw new Error('an act was taken and none came back');
    return act;
  };
  return { archive, look, record, recordAll };
}

/** A job by its id, the beginning of its id, or words of its title, if they fit one job only. */
export function findJob(state: State, wanted: string): JobState {
  const jobs = Object.values(state.jobs);
  const exact = state.jobs[wanted];
  if (exact !== undefined) return exact;
  const words = wanted.toLowerCase();
  const fits = jobs.filter((j) => j.id.startsWith(wanted) || j.title.toLowerCase().includes(words));
  const [one] = fits;
  if (one !== undefined && fits.length === 1) return one;
  const known = jobs.map((j) => j.id).join(', ') || 'none yet';
  throw new BadInput(
    fits.length === 0
      ? `no job "${wanted}" (jobs: ${known})`
      : `"${wanted}" fits ${fits.length} jobs: ${fits.map((j) => j.id).join(', ')}`,
  );
}

export function packOf(job: JobState, packs: readonly Pack[]): Pack {
  if (job.strip !== null)
    throw new BadInput(
      `${job.title} has no pack: see "boxup job box-up JOB" and "boxup job open JOB"`,
    );
  const pack = packs.find((p) => p.id === job.packInForce);
  if (pack === undefined)
    throw new BadInput(`no pack is in force for ${job.title}: two amendments stand undecided`);
  return pack;
}

export function readPack(file: string): Pack {
  let pack: Pack;
  try {
    const read: unknown = JSON.parse(readFileSync(file, 'utf8'));
    pack = (isWrapped(read) ? read.pack : read) as Pack;
  } catch (error) {
    throw new BadInput(`${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (pack?.format !== 'boxup pack 1')
    throw new BadInput(`${file} is no pack (expected the JSON of "boxup pack --json")`);
  const { id, ...content } = pack;
  const actual = hashOf(content);
  if (actual !== id)
    throw new BadInput(`${file}: the pack says it is ${id}, its content hashes to ${actual}`);
  return pack;
}

const isWrapped = (read: unknown): read is { pack: unknown } =>
  typeof read === 'object' && read !== null && 'pack' in read && !('format' in read);

/** What went wrong in a way that a sentence can tell; anything else is a fault of the program. */
const KNOWN: readonly string[] = ['BadInput', 'No', 'ArchiveDamaged', 'NoSuchFolder'];

/** Runs a command; says what is wrong instead of a trace, and sets the exit code. */
export async function run(common: Common, work: () => Promise<Told>): Promise<void> {
  let told: Told;
  try {
    told = await work();
  } catch (error) {
    if (!(error instanceof Error) || !KNOWN.includes(error.name)) throw error;
    const { message } = error;
    told = { exit: error instanceof No ? 1 : 2, json: { problem: message }, lines: [message] };
  }
  process.exitCode = told.exit;
  const out =
    told.exit === 0 ? process.stdout : common.json === true ? process.stdout : process.stderr;
  const foot = { names: NAMES_NOT_PROVED, authority: AUTHORITY_LINE };
  if (common.json === true) out.write(`${JSON.stringify({ ...told.json, ...foot }, null, 2)}\n`);
  else out.write(`${[...told.lines, '', `${NAMES_NOT_PROVED}. ${AUTHORITY_LINE}`].join('\n')}\n`);
}

export type Told = {
  readonly exit: 0 | 1 | 2;
  readonly json: Readonly<Record<string, unknown>>;
  readonly lines: readonly string[];
};

export function refused(refusal: Refusal): Told {
  const lines = [`Not recorded: ${refusal.why}`, ...refusal.open.map((o) => `  - ${o}`)];
  return { exit: 1, json: { refusal }, lines };
}
