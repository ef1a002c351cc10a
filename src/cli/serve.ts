// `boxup serve`: opens the archive, or makes one with the demo's log, and serves the app.

import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Command, InvalidArgumentError } from 'commander';
import type { Archive } from '../archive/contract.ts';
import { openSqlite } from '../archive/sqlite.ts';
import { readPlant } from '../plant/read.ts';
import type { FileProblem, Plant } from '../plant/types.ts';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { mayRecord } from '../record/closing.ts';
import { fold } from '../record/fold.ts';
import { draftsOf, readHistory } from '../server/history.ts';
import { networkAddresses } from '../server/network.ts';
import type { ServerParts } from '../server/parts.ts';
import { listen } from '../server/server.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { tellIssues } from '../server/tell-issues.ts';
import { now } from './job-session.ts';
import { askNetwork, networkLines } from './network.ts';
import { readFolder } from './read-folder.ts';
import { heldIn, NoList } from './read-tools.ts';

const BAD = 2;
const root = fileURLToPath(new URL('../..', import.meta.url));
const PORT = 4170;

type Options = {
  readonly plant?: string;
  readonly archive?: string;
  readonly port: number;
  readonly network?: boolean;
};

export const serveCommand = (): Command =>
  new Command('serve')
    .description(
      'Shows the log and its jobs in a browser on this computer. Before it listens on the ' +
        'network too, for phones, it asks; without a terminal it does not. Without options it ' +
        'takes the demo, and makes its archive if there is none.',
    )
    .option('--plant <folder>', 'the plant folder (the demo: demo/tern-rock)')
    .option('--archive <file>', 'the archive (.boxup/PLANT.sqlite); made if it is not there')
    .option('--port <number>', 'the port; 0 takes a free one', portOf, PORT)
    .option('--network', 'listen on the network too, unasked; anyone there can write')
    .option('--no-network', 'listen on this computer only, without asking')
    .addHelpText(
      'after',
      [
        '',
        'Examples:',
        '  boxup serve',
        '  boxup serve --plant my-vessel --archive my-vessel.sqlite --port 4180',
        '',
        'A plant folder with anything that must be put right is not served: see boxup check.',
        'It ends with 2 when a file cannot be used or the port is taken.',
      ].join('\n'),
    )
    .action(run);

function portOf(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new InvalidArgumentError('a whole number from 0 to 65535 was expected.');
}

function say(lines: readonly string[]): void {
  process.stderr.write(`${[...lines, '', AUTHORITY_LINE].join('\n')}\n`);
  process.exitCode = BAD;
}

async function run(options: Options): Promise<void> {
  const folder = resolve(options.plant ?? join(root, 'demo', 'tern-rock'));
  let read: ReturnType<typeof readPlant>;
  try {
    read = readPlant(readFolder(folder));
  } catch (error) {
    say([error instanceof Error ? error.message : String(error)]);
    return;
  }
  const musts = read.problems.filter((problem) => problem.level === 'must');
  if (read.plant === null || musts.length > 0) {
    say([`${folder} must be put right before it is served:`, ...musts.map(line)]);
    return;
  }
  const wrong = toolFaults(folder);
  if (wrong.length > 0) {
    say([`${folder} must be put right before it is served:`, ...wrong]);
    return;
  }
  const { plant } = read;
  const base = options.plant === undefined ? root : process.cwd();
  const file = resolve(options.archive ?? join(base, '.boxup', `${plant.id}.sqlite`));
  try {
    const archive = await openOrMake(file, plant, `${folder}-history.yaml`);
    await tellIssues(plant, archive, now);
    const addresses = (await askNetwork(options.network)) ? networkAddresses() : null;
    await serveOn({ archive, plant, folder, file, port: options.port, addresses });
  } catch (error) {
    if (!isExpected(error)) throw error;
    const taken = error.code === 'EADDRINUSE';
    say([taken ? `port ${options.port} is taken: give another with --port` : error.message]);
  }
}

function toolFaults(folder: string): readonly string[] {
  try {
    const { problems } = heldIn(folder, now().utc);
    return problems.map((p) => `  ${p.path}: ${p.why} (expected ${p.expected})`);
  } catch (error) {
    if (error instanceof NoList) return [`  ${error.message}`];
    throw error;
  }
}

const line = (problem: FileProblem): string =>
  `  ${problem.file}:${problem.line} ${problem.path}: ${problem.why} ` +
  `(expected ${problem.expected})`;

class HistoryUnreadable extends Error {
  override readonly name = 'HistoryUnreadable';
}

const isExpected = (error: unknown): error is Error & { readonly code?: string } =>
  error instanceof Error &&
  (['ArchiveDamaged', 'HistoryUnreadable'].includes(error.name) ||
    ('code' in error && ['EADDRINUSE', 'EACCES', 'ERR_SQLITE_ERROR'].includes(String(error.code))));

/** The log's earlier pages are taken in only when the archive is made: never twice. */
async function openOrMake(file: string, plant: Plant, history: string): Promise<Archive> {
  mkdirSync(dirname(file), { recursive: true });
  const archive = openSqlite({ file, vessel: plant.id });
  if ((await archive.heads()).length > 0 || !existsSync(history)) return archive;
  const read = readHistory(readFileSync(history, 'utf8'));
  if (!read.ok) throw new HistoryUnreadable(`${history}: ${read.why}`);
  const drafts = draftsOf(read.history);
  const state = fold({ acts: [], packs: [] });
  for (const draft of drafts) {
    const refusal = mayRecord(state, draft.stream.id, draft, []);
    if (refusal !== null) throw new HistoryUnreadable(`${history}: ${refusal.why}`);
  }
  await archive.append({ drafts, at: now(), heads: [] });
  return archive;
}

/** The typesetter is loaded when the first sheet is wanted: it takes longer than the start. */
const prints: Pick<ServerParts, 'packPdf' | 'proofPdf' | 'recordPdf'> = {
  packPdf: async (pack, about) => {
    const { packPdf } = await import('../paper/pack-pdf.ts');
    if (about === undefined) return packPdf(pack);
    const { newsOf } = await import('../paper/news.ts');
    const news = newsOf(pack, about.state, about.packs, about.people);
    return packPdf(pack, news, about.language);
  },
  proofPdf: async (pack, said, language) =>
    (await import('../paper/proof-pdf.ts')).proofPdf(pack, said, language),
  recordPdf: async (record) => (await import('../paper/record-pdf.ts')).recordPdf(record),
};

type Serving = {
  readonly archive: Archive;
  readonly plant: Plant;
  readonly folder: string;
  readonly file: string;
  readonly port: number;
  /** Null where the network was not let in. */
  readonly addresses: readonly string[] | null;
};

async function serveOn(serving: Serving): Promise<void> {
  const { archive, plant, folder, file, port, addresses } = serving;
  const parts: Omit<ServerParts, 'port'> = {
    addresses: addresses ?? [],
    plant,
    archive,
    solver: solveWithHighs,
    // Read anew for each pack: a wrench may have come back from calibration meanwhile.
    held: (on) => heldIn(folder, on).held,
    ...prints,
    dist: join(root, 'dist'),
    now,
  };
  const listening = await listen(parts, port);
  const network = addresses === null ? [] : await networkLines(addresses, listening.port);
  const reach = (addresses ?? []).length > 0 ? 'On this network too' : 'On this computer only';
  process.stdout.write(
    [
      `${plant.name}: http://localhost:${listening.port}`,
      ...network,
      `Archive: ${file}. ${reach}; ${NAMES_NOT_PROVED}. Ctrl-C ends it.`,
      '',
      AUTHORITY_LINE,
      '',
    ].join('\n'),
  );
  const end = () => {
    void listening.close().then(() => archive.close());
  };
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
}
