// Beginning a job: its pack from a file or worked out on the spot, its id, its first act.

import { statSync } from 'node:fs';
import { openSqlite } from '../archive/sqlite.ts';
import type { Held } from '../pack/fastening-types.ts';
import type { Pack, PackRequest } from '../pack/types.ts';
import type { ActBody, Draft, State } from '../record/types.ts';
import {
  BadInput,
  type Common,
  isRefusal,
  No,
  now,
  openExisting,
  readPack,
  refused,
  sessionOn,
  type Told,
} from './job-session.ts';
import { stageWords } from './job-words.ts';

export type StartOptions = Common & {
  readonly by: string;
  readonly pack?: string;
  readonly plant?: string;
  readonly machine?: string;
  readonly target?: string;
  readonly does?: string;
  readonly why: string;
  readonly hands?: string;
  readonly handsAboard?: string;
  readonly competent?: string;
  readonly useAnyway?: string;
  readonly limits?: string;
};

export async function startJob(options: StartOptions): Promise<Told> {
  const pack = await packFor(options);
  const body = startBody(options, pack);
  const archive = openSqlite({ file: options.archive, vessel: pack.vessel.id });
  try {
    const session = sessionOn(archive);
    await archive.addPack(pack);
    const { state } = await session.look();
    const id = newId(state, pack, archive.device);
    const draft: Draft = { stream: { kind: 'job', id }, kind: 'job-started', by: options.by, body };
    const answer = await session.record(draft);
    if (isRefusal(answer)) return refused(answer);
    const job = (await session.look()).state.jobs[id];
    const stage = job === undefined ? '' : stageWords(job);
    const json = { job: id, title: pack.title, pack: pack.id, acts: [answer] };
    return { exit: 0, json, lines: [`${pack.title}: ${stage}`, `JOB is ${id}`] };
  } finally {
    await archive.close();
  }
}

async function packFor(options: StartOptions): Promise<Pack> {
  if (options.pack !== undefined) return readPack(options.pack);
  const { plant, machine, target, does } = options;
  if (plant === undefined || machine === undefined || target === undefined || does === undefined)
    throw new BadInput('give --pack, or --plant with --machine, --target and --does');
  if (statSync(plant, { throwIfNoEntry: false })?.isDirectory() !== true)
    throw new BadInput(`there is no plant folder ${plant}`);
  const people = options.hands === undefined ? {} : { people: handsOf(options) };
  const why = options.why === '' ? {} : { why: options.why };
  const { handsAboard } = options;
  const aboard = handsAboard === undefined ? {} : { handsAboard };
  const asked = { machine, target, does, ...why, ...people, ...aboard };
  return await madePack(plant, asked, options.archive);
}

/** Loaded only when a pack is made here: reading plant files and the solver take their time. */
async function madePack(
  folder: string,
  asked: Readonly<Record<string, unknown>>,
  archive: string,
): Promise<Pack> {
  const { readFolder } = await import('./read-folder.ts');
  const { heldIn } = await import('./read-tools.ts');
  const { readPlant } = await import('../plant/read.ts');
  const { requestSchema } = await import('../pack/request.ts');
  const { makePack } = await import('../pack/pack.ts');
  const { withDay } = await import('../pack/sheet-age.ts');
  const { solveWithHighs } = await import('../server/solver-inline.ts');
  const { plant, problems } = readPlant(readFolder(folder));
  const musts = problems.filter((p) => p.level === 'must');
  if (plant === null || musts.length > 0)
    throw new BadInput(musts.map((p) => `${p.file}:${p.line} ${p.path}: ${p.why}`).join('\n'));
  const request = requestSchema.safeParse(asked);
  if (!request.success)
    throw new BadInput(
      request.error.issues.map((i) => `--${i.path.join('.')}: ${i.message}`).join('\n'),
    );
  const today = now().utc;
  const dated = withDay(plant, request.data as PackRequest, today);
  const { held, problems: wrong } = heldIn(folder, today);
  if (wrong.length > 0) throw new BadInput(wrong.map((p) => `${p.path}: ${p.why}`).join('\n'));
  const counted = await countedIn(archive, held, today);
  const made = await makePack(plant, dated, solveWithHighs, counted);
  if (made.kind === 'pack') return made.pack;
  if (made.kind === 'infeasible') throw new No(`it cannot be freed: ${made.why}`);
  throw new BadInput(
    made.problems
      .map((p) => `${p.path}: ${p.why}: ${JSON.stringify(p.got)}, expected ${p.expected}`)
      .join('\n'),
  );
}

/** Wrench cycles count up from the record, where there is one yet. */
async function countedIn(file: string, held: Held, today: string): Promise<Held> {
  if (statSync(file, { throwIfNoEntry: false }) === undefined) return held;
  const { heldCounted } = await import('../record/wrench-uses.ts');
  const archive = openExisting(file);
  try {
    const [acts, packs] = await Promise.all([archive.acts(), archive.packs()]);
    return heldCounted(held, acts, packs, today);
  } finally {
    await archive.close();
  }
}

const handsOf = ({ hands, by }: StartOptions): string[] =>
  hands === undefined ? [by] : hands.split(',').map((name) => name.trim());

function startBody(options: StartOptions, pack: Pack): ActBody {
  const { useAnyway, limits } = options;
  if ((useAnyway === undefined) !== (limits === undefined))
    throw new BadInput('--use-anyway and --limits go together');
  const unsettled = pack.decisions.filter((d) => d.settled === null);
  const anyway =
    useAnyway === undefined || limits === undefined
      ? {}
      : { anyway: unsettled.map((d) => ({ decision: d.id, reason: useAnyway, limits })) };
  return {
    pack: pack.id,
    title: pack.title,
    machine: pack.machine.id,
    target: pack.target.id,
    does: pack.target.does,
    why: options.why,
    hands: handsOf(options),
    ...(options.competent === undefined ? {} : { competent: options.competent }),
    ...anyway,
  };
}

/** Words and the day, and a mark of the device, so that two apart never make the same id. */
function newId(state: State, pack: Pack, device: string): string {
  const day = now().utc.slice(0, 10);
  const base = `${pack.target.id}-${pack.machine.id}-${day}-${device.slice(-4)}`;
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (state.jobs[id] === undefined) return id;
  }
}
