// The command `record`: verifies what is kept, and shows one job with what to print on its record.

import { writeFileSync } from 'node:fs';
import { Command } from 'commander';
import type { Archive } from '../archive/contract.ts';
import { NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { jointsTight } from '../record/bolts.ts';
import { fold, stateHash } from '../record/fold.ts';
import { lookLines } from '../record/second-look.ts';
import type { Act, JobState } from '../record/types.ts';
import { lastSeqs, verify } from '../record/verify.ts';
import {
  BadInput,
  type Common,
  findJob,
  openExisting,
  packOf,
  run,
  type Session,
  sessionOn,
} from './job-session.ts';
import { tightLine } from './job-tight.ts';
import { usedLines } from './job-value-words.ts';
import { actLine, openLines } from './job-words.ts';

type Verify = Common & { readonly head?: readonly string[]; readonly device?: readonly string[] };

type Show = Common & {
  readonly pdf?: string;
  readonly proofPdf?: string;
  readonly tighteningResults?: string;
};

const collect = (value: string, before: readonly string[] = []): readonly string[] => [
  ...before,
  value,
];

export function recordCommand(): Command {
  const record = new Command('record').description('Verifies the record of what was done.');
  const check = new Command('verify')
    .description(
      'Looks at every row that is kept: its bytes, its parents, the numbers of each device. With ' +
        'the head and the numbers printed on a closed record, any later change is found.',
    )
    .requiredOption('--archive <file>', 'the archive that keeps the record')
    .option('--head <hash>', 'head printed on a closed record (may be repeated)', collect)
    .option(
      '--device <id=number>',
      'last number of a device, as printed (may be repeated)',
      collect,
    )
    .option('--json', 'tell the result as JSON')
    .action((options: Verify) => run(options, () => verifyArchive(options)));
  const show = new Command('show')
    .description('Shows one job: every act, the open list, and what its record prints.')
    .argument('<job>')
    .requiredOption('--archive <file>', 'the archive that keeps the record')
    .option('--pdf <file>', 'write the printed record')
    .option('--proof-pdf <file>', 'write the proof sheet with what was said of it')
    .option(
      '--tightening-results <file>',
      'write what was made up, bolt by bolt, for other programs',
    )
    .option('--json', 'tell the result as JSON')
    .action((wanted: string, options: Show) => run(options, () => showJob(wanted, options)));
  for (const command of [check, show]) {
    command.addHelpText('after', `\n${NAMES_NOT_PROVED}`);
    record.addCommand(command);
  }
  return record;
}

async function verifyArchive(options: Verify) {
  const archive = openExisting(options.archive);
  try {
    const rows = await archive.rows();
    const found = verify(rows, {
      vessel: archive.vessel,
      closedHeads: options.head ?? [],
      deviceSeqs: Object.fromEntries((options.device ?? []).map(numbered)),
    });
    const faults = [...found, ...(await packFaults(archive))];
    const lines =
      faults.length === 0
        ? [
            `${rows.length} acts verified.`,
            ...paperLines(await archive.acts()),
            ...(await aloneLines(archive)),
            'Without signatures an act added at the end cannot be told from a true one.',
          ]
        : [
            `${faults.length} faults in ${rows.length} rows:`,
            ...faults.map((f) => `  - ${f.place}: ${f.what}`),
          ];
    const exit = faults.length === 0 ? (0 as const) : (1 as const);
    return { exit, json: { rows: rows.length, faults }, lines };
  } finally {
    await archive.close();
  }
}

/** What was not said at the machine but afterwards, from the printed sheets. */
function paperLines(acts: readonly Act[]): readonly string[] {
  const sheets = Map.groupBy(
    acts.filter((act) => typeof act.body.paper === 'string'),
    (act) => `${act.stream.id}: entered from paper, sheet ${String(act.body.paper)}`,
  );
  return [...sheets].sort(([a], [b]) => (a < b ? -1 : 1)).map(([s, own]) => `${s}, ${own.length}`);
}

/** Looks that no second pair of eyes made: whoever verifies a record sees which. */
async function aloneLines(archive: Archive): Promise<readonly string[]> {
  const { jobs } = fold({ acts: await archive.acts(), packs: await archive.packs() });
  return Object.values(jobs).flatMap((job) =>
    job.looks.some((look) => look.said.some((said) => said.passed && said.alone))
      ? lookLines(job).map((line) => `${job.id}: ${line}`)
      : [],
  );
}

/** A pack whose bytes are not those of its name, or that an act names and nobody kept. */
async function packFaults(
  archive: Archive,
): Promise<readonly { readonly place: string; readonly what: string }[]> {
  let kept: ReadonlySet<string>;
  try {
    kept = new Set((await archive.packs()).map((p) => p.id));
  } catch (error) {
    return [{ place: 'packs', what: error instanceof Error ? error.message : String(error) }];
  }
  let acts: readonly Act[];
  try {
    acts = await archive.acts();
  } catch {
    return [];
  }
  return acts.flatMap((act) => {
    const named = act.kind === 'job-started' ? act.body.pack : act.body.to;
    const names = act.kind === 'job-started' || act.kind === 'pack-amended';
    if (!names || typeof named !== 'string' || kept.has(named)) return [];
    return [{ place: `act ${act.hash}`, what: `the pack ${named} that it names is not here` }];
  });
}

function numbered(pair: string): [string, number] {
  const [device = '', seq = ''] = pair.split('=');
  if (device === '' || !/^\d+$/.test(seq))
    throw new BadInput(`--device is "${pair}" (expected id=number)`);
  return [device, Number(seq)];
}

/** The printed sheets of a job as it stands, as the server prints them. */
async function writeSheets(
  options: Show,
  job: JobState,
  { acts, packs, state }: Awaited<ReturnType<Session['look']>>,
): Promise<readonly string[]> {
  if (options.pdf !== undefined) {
    const { recordPdf } = await import('../paper/record-pdf.ts');
    writeFileSync(options.pdf, recordPdf({ job: job.id, state, packs, acts }));
  }
  if (options.proofPdf !== undefined) {
    const { proofPdf } = await import('../paper/proof-pdf.ts');
    writeFileSync(options.proofPdf, proofPdf(packOf(job, packs), { job, acts }));
  }
  if (options.tighteningResults !== undefined) {
    const { resultsOf } = await import('../exchange/tightening-acts.ts');
    const results = resultsOf(job, packOf(job, packs), acts);
    writeFileSync(options.tighteningResults, `${JSON.stringify(results, null, 2)}\n`);
  }
  const files = [options.pdf, options.proofPdf, options.tighteningResults].filter(
    (file) => file !== undefined,
  );
  return files.map((file) => `Written: ${file}`);
}

async function showJob(wanted: string, options: Show) {
  const archive = openExisting(options.archive);
  try {
    const seen = await sessionOn(archive).look();
    const { acts, packs, state } = seen;
    const job = findJob(state, wanted);
    const written = await writeSheets(options, job, seen);
    const own = acts.filter((a) => a.stream.kind === 'job' && a.stream.id === job.id);
    const printed =
      job.closed === null ? null : { head: job.closed.act, deviceSeqs: lastSeqs(acts) };
    const seqs = Object.entries(printed?.deviceSeqs ?? {}).map(([d, n]) => `${d}=${n}`);
    return {
      exit: 0 as const,
      json: { job, acts: own, printed, state: stateHash(fold({ acts, packs })) },
      lines: [
        ...own.map(actLine),
        ...openLines(job),
        ...usedLines(job),
        ...lookLines(job),
        ...jointsTight(job, packs).map(tightLine),
        ...job.deviations.map((d) => `Deviation ${d.thing} by ${d.by}: ${d.reason} (${d.limits})`),
        ...written,
        ...(printed === null ? [] : [`Head ${printed.head}`, `Devices ${seqs.join(' ')}`]),
      ],
    };
  } finally {
    await archive.close();
  }
}
