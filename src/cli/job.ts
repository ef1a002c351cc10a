// The command `job`: carries a job from the first undoing to its closing, on one archive file.

import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { limits } from '../limits.ts';
import type { Pack } from '../pack/types.ts';
import { NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { nextSteps } from '../record/next.ts';
import type { Act, Draft, JobState } from '../record/types.ts';
import { beforeCommands } from './job-before.ts';
import { bodyFor, type DoOptions, stepMeant } from './job-body.ts';
import {
  type By,
  byName,
  collect,
  draftOf,
  onArchive,
  onJob,
  recorded,
  sayOn,
  within,
} from './job-common.ts';
import { followCommand } from './job-follow.ts';
import { lookCommand } from './job-look.ts';
import { paperCommand } from './job-paper.ts';
import { sayingCommands } from './job-say.ts';
import {
  BadInput,
  type Common,
  isRefusal,
  packOf,
  refused,
  run,
  type Session,
  type Told,
} from './job-session.ts';
import { type StartOptions, startJob } from './job-start.ts';
import { stripCommands } from './job-strip.ts';
import { tightCommands } from './job-tight.ts';
import { actLine, nextLines, openLines, stageWords } from './job-words.ts';

export function jobCommand(): Command {
  const job = new Command('job').description(
    'Carries a job from its pack to its closing. Everything undone stands on the open list until ' +
      'it is made good; a job does not close while anything is open.',
  );
  job.addHelpText(
    'after',
    [
      '',
      'JOB is the id of a job, its beginning, or words of its title.',
      'A thing is named joint/…, part/…, closure/…, tag/…; a step "undone joint/…".',
      '',
      'A job from first to last:',
      '  boxup job start --archive log.db --pack pack.json --by "Ada"',
      '  boxup job next JOB --archive log.db',
      '  boxup job do JOB "undone joint/guard" --archive log.db --by "Ada"',
      '  boxup job open JOB --archive log.db',
      '  boxup job close JOB --archive log.db --by "Ada"',
      '',
      'A job done on paper is entered sheet by sheet, each under its letter:',
      '  boxup job paper JOB C --archive log.db --by "Ada" --written "2026-03-14 03:20" …',
      '',
      'Without a plant file, a machine is stripped as it is seen:',
      '  boxup job strip --archive log.db --vessel V --machine M --component C --by "Ada"',
      '  boxup job shut JOB "Sea inlet valve" --kind "sea valve" --found open --tag 1 …',
      '  boxup job took-off JOB "Belt guard" --wet no --fasteners "4 bolt" --bag 1 …',
      '  boxup job box-up JOB …        boxup job put-back JOB part/belt-guard …',
      '  boxup job draft JOB --out FOLDER …',
      '',
      `Ends with 0 when recorded, 1 when refused (with the list), 2 when the input cannot be used.`,
      `A person is chosen by name only: ${NAMES_NOT_PROVED}.`,
    ].join('\n'),
  );
  // Above `boxup` the program adds the line itself; here it also stands when used alone.
  for (const command of [
    ...beginning(),
    ...stripCommands(),
    ...working(),
    paperCommand(),
    followCommand(),
    ...beforeCommands(),
    ...tightCommands(),
    ...sayingCommands(),
    ...ending(),
  ]) {
    command.addHelpText('after', `\n${NAMES_NOT_PROVED}`);
    job.addCommand(command);
  }
  return job;
}

function beginning(): readonly Command[] {
  const start = byName('start', 'begin a job from its pack')
    .option('--pack <file>', 'the pack, as "boxup pack --json" writes it')
    .option('--plant <folder>', 'or the plant folder, to make the pack from')
    .option('--machine <name>', 'with --plant: the machine')
    .option('--target <name>', 'with --plant: the part the job is about')
    .option('--does <what>', 'with --plant: renew-in-place, exchange or overhaul', 'exchange')
    .option('--why <text>', 'why the job is done', '')
    .option('--hands <names>', 'who is on the job, with commas between')
    .option('--hands-aboard <n>', 'with --plant: 1, 2, 3 or more who could look a second time')
    .option('--competent <name>', 'who verifies what a competent person must verify')
    .option('--use-anyway <reason>', 'begin in spite of decisions not settled; needs --limits')
    .option('--limits <text>', 'what limits the risk of --use-anyway')
    .action((options: StartOptions) => run(options, () => startJob(options)));
  const list = onArchive('list', 'all jobs, with their stage and what is open').action(
    (options: Common) =>
      run(options, () =>
        within(options.archive, async (session) => {
          const jobs = Object.values((await session.look()).state.jobs);
          const lines = jobs.map((j) => `${j.title}: ${stageWords(j)}\n  ${j.id}`);
          const short = jobs.map(({ id, title, openCount, closed }) => ({
            id,
            title,
            openCount,
            closed,
          }));
          return {
            exit: 0,
            json: { jobs: short },
            lines: lines.length > 0 ? lines : ['No jobs yet.'],
          };
        }),
      ),
  );
  return [start, list];
}

function working(): readonly Command[] {
  const next = onArchive('next', 'the steps that are ready, with their cautions')
    .argument('<job>')
    .action((wanted: string, options: Common) =>
      onJob(options, wanted, async (job, packs, session) => {
        const pack = packOf(job, packs);
        const ready = nextSteps((await session.look()).state, job.id, pack);
        const json = { job: job.id, openCount: job.openCount, isolation: job.isolation, ready };
        return { exit: 0, json, lines: nextLines(job, pack, ready) };
      }),
    );
  const open = onArchive('open', 'what is undone and not yet made good')
    .argument('<job>')
    .action((wanted: string, options: Common) =>
      onJob(options, wanted, async (job) => {
        const entries = job.entries.filter((e) => e.open);
        const findings = job.findings.filter((f) => f.needsDecision && f.decision === null);
        const json = { job: job.id, openCount: job.openCount, open: entries, findings };
        return { exit: 0, json, lines: openLines(job) };
      }),
    );
  return [next, doCommand(), lookCommand(), open];
}

function doCommand(): Command {
  return byName('do', 'report steps as done')
    .argument('<job>')
    .argument('<thing...>', 'a step such as "undone joint/guard", or a thing with one ready step')
    .option('--count <n>', 'how many were counted')
    .option('--holes <labels>', 'holes done, with commas between')
    .option('--round <name>', 'which round')
    .option('--value <figure>', 'the reading')
    .option('--unit <unit>', 'unit of the reading')
    .option('--result <words>', 'pass, fail, cannot tell, passed up to; or what was seen')
    .option('--up-to <words>', 'with "passed up to": how far')
    .option('--text <words>', 'anything more')
    .option('--position <words>', 'position a closure was brought to')
    .option('--found <words>', 'position a closure was found in')
    .option('--serial <words>', 'serial of an item, or "unreadable"')
    .option('--hours <n>', 'running hours')
    .option('--saw-run', 'flow was seen to run')
    .option('--no-saw-run', 'nothing came: that is no proof')
    .option('--died-away', 'it died away and stayed dead')
    .option('--no-died-away', 'it went on running')
    .option('--verified-by <name>', 'who else looked')
    .option('--answer <name=value>', 'answer to anything else the step asks', collect)
    .action((wanted: string, things: readonly string[], options: By & DoOptions) =>
      onJob(options, wanted, (job, packs, session) =>
        doSteps(job, packs, session, things, options),
      ),
    );
}

async function doSteps(
  job: JobState,
  packs: readonly Pack[],
  session: Session,
  things: readonly string[],
  options: By & DoOptions,
): Promise<Told> {
  const pack = packOf(job, packs);
  const acts: Act[] = [];
  for (const said of things) {
    const ready = nextSteps((await session.look()).state, job.id, pack);
    const step = stepMeant(said, options.round, pack, ready);
    const answer = await session.record(
      draftOf(job, step.verb, options.by, bodyFor(step, options)),
    );
    if (isRefusal(answer)) return withKept(refused(answer), acts);
    acts.push(answer);
  }
  return await recorded(acts, job.id, session);
}

const withKept = (told: Told, acts: readonly Act[]): Told => ({
  ...told,
  json: { ...told.json, acts },
  lines: [...acts.map(actLine), ...told.lines],
});

type Close = By & {
  readonly deviation?: readonly string[];
  readonly reason?: readonly string[];
  readonly limits?: readonly string[];
};

function ending(): readonly Command[] {
  const close = byName('close', 'close the job; refused with the list while anything is open')
    .argument('<job>')
    .option(
      '--deviation <thing>',
      'something that stays open, by your name (may be repeated)',
      collect,
    )
    .option('--reason <text>', 'why, one for each --deviation', collect)
    .option('--limits <text>', 'what limits the risk, one for each --deviation', collect)
    .action((wanted: string, o: Close) =>
      sayOn(o, wanted, 'closed', () => ({ deviations: deviationsOf(o) })),
    );
  const play = onArchive('play', 'record drafts from a file, one JSON object a line')
    .argument(
      '<file>',
      'lines of {"stream", "kind", "by", "body"}; empty lines and # are passed over',
    )
    .action((file: string, o: Common) =>
      run(o, () => within(o.archive, (session) => playFile(file, session))),
    );
  return [close, play];
}

function deviationsOf({ deviation = [], reason = [], limits: limit = [] }: Close) {
  if (reason.length !== deviation.length || limit.length !== deviation.length)
    throw new BadInput('each --deviation wants its own --reason and its own --limits');
  return deviation.map((thing, i) => ({ thing, reason: reason[i] ?? '', limits: limit[i] ?? '' }));
}

async function playFile(file: string, session: Session): Promise<Told> {
  const acts: Act[] = [];
  for (const [i, line] of lines(file).entries()) {
    if (line.trim() === '' || line.startsWith('#')) continue;
    const answer = await session.record(draftIn(line, `${file}, line ${i + 1}`));
    if (isRefusal(answer)) {
      const told = refused(answer);
      const place = `${file}, line ${i + 1}`;
      const said = `${place}: stopped here; ${acts.length} acts before it are recorded`;
      return { ...told, json: { ...told.json, line: i + 1, acts }, lines: [said, ...told.lines] };
    }
    acts.push(answer);
  }
  const told = [`${acts.length} acts recorded.`];
  return { exit: 0, json: { acts }, lines: told };
}

function lines(file: string): readonly string[] {
  try {
    return readFileSync(file, 'utf8').split('\n');
  } catch (error) {
    throw new BadInput(`${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

function draftIn(line: string, place: string): Draft {
  if (line.length > limits.record.bodyBytes)
    throw new BadInput(`${place}: longer than ${limits.record.bodyBytes} characters`);
  let read: Partial<Draft> | null;
  try {
    read = JSON.parse(line) as Partial<Draft> | null;
  } catch (error) {
    throw new BadInput(`${place}: ${error instanceof Error ? error.message : String(error)}`);
  }
  const { stream, kind, by, body } = read ?? {};
  const streamed = typeof stream === 'object' && typeof stream.id === 'string';
  if (!streamed || typeof kind !== 'string' || typeof by !== 'string' || typeof body !== 'object')
    throw new BadInput(`${place}: expected {"stream": {"kind", "id"}, "kind", "by", "body"}`);
  return { stream, kind, by, body: body ?? {} };
}
