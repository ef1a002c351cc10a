// `boxup pack`: works out one job from a plant folder, without a server or an archive.

import { readFile, writeFile } from 'node:fs/promises';
import { Command } from 'commander';
import { makePack } from '../pack/pack.ts';
import { requestSchema } from '../pack/request.ts';
import { withDay } from '../pack/sheet-age.ts';
import type { Pack, PackRequest } from '../pack/types.ts';
import { readPlant } from '../plant/read.ts';
import type { FileProblem, PlantText } from '../plant/types.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import type { Problem } from '../quantity/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { isLanguage, LANGUAGES, type Language } from '../words/words.ts';
import { packInWords } from './pack-words.ts';
import { NoSuchFolder, readFolder } from './read-folder.ts';
import { heldIn } from './read-tools.ts';

type Options = {
  readonly plant: string;
  readonly machine?: string;
  readonly target?: string;
  readonly does?: string;
  readonly why?: string;
  readonly handsAboard?: string;
  readonly when?: string;
  readonly sails?: string;
  readonly request?: string;
  readonly pdf?: string;
  readonly language?: string;
  readonly proofPdf?: string;
  readonly json?: boolean;
};

const BAD = 2;
const INFEASIBLE = 1;

export const packCommand = (): Command =>
  new Command('pack')
    .description(
      'Works out the whole job for one part of one machine: what comes off and in what order, ' +
        'isolation as listed by hand, tools, seals, values, box-up and proof.',
    )
    .requiredOption('--plant <folder>', 'the plant folder')
    .option('--machine <name>', 'the machine, by id or slug')
    .option('--target <name>', 'the part the job is about, by id or slug')
    .option('--does <what>', 'renew-in-place, exchange or overhaul', 'exchange')
    .option('--why <text>', 'why the job is done')
    .option('--hands-aboard <n>', '1, 2, 3 or more who could look a second time, deck included')
    .option('--when <time>', 'when the work begins, as 2026-11-25T14:00')
    .option('--sails <time>', 'the next sailing or shift of berth, as 2026-11-25T16:30')
    .option('--request <file>', 'a request as the app exports it (JSON), instead of the names')
    .option('--pdf <file>', 'write the printed sheets')
    .option(
      '--language <code>',
      `of the printed sheets: ${Object.keys(LANGUAGES).join(' or ')}`,
      'en',
    )
    .option('--proof-pdf <file>', 'write the blank proof sheet')
    .option('--json', 'print the pack as one JSON object')
    .addHelpText(
      'after',
      [
        '',
        'Example:',
        '  boxup pack --plant demo/tern-rock --machine main-engine-port --target sea-water-pump',
        '',
        'It ends with 0 when the pack is made, 1 when the part cannot be freed, 2 when a file or',
        'a name cannot be used.',
        '',
        AUTHORITY_LINE,
      ].join('\n'),
    )
    .action(run);

const run = async (options: Options): Promise<void> => {
  const language = options.language ?? 'en';
  if (!isLanguage(language)) return refuse([noLanguage(language)], options);
  const files = textsOf(options.plant);
  if ('problem' in files) return refuse([files.problem], options);
  const read = readPlant(files.texts);
  const musts = read.problems.filter((p) => p.level === 'must');
  if (read.plant === null || musts.length > 0) return refuse(musts, options);
  const request = await requestOf(options);
  if ('problems' in request) return refuse(request.problems, options);
  const today = new Date().toISOString();
  const asked = withDay(read.plant, request.request, today);
  const { held, problems } = heldIn(options.plant, today);
  if (problems.length > 0) return refuse(problems, options);
  const made = await makePack(read.plant, asked, solveWithHighs, held);
  if (made.kind === 'problems') return refuse(made.problems, options);
  if (made.kind === 'infeasible') {
    const answer = { feasible: false, why: made.why, authority: AUTHORITY_LINE };
    process.stdout.write(
      options.json === true
        ? `${JSON.stringify(answer)}\n`
        : `It cannot be freed: ${made.why}\n\n${AUTHORITY_LINE}\n`,
    );
    process.exitCode = INFEASIBLE;
    return;
  }
  await give(made.pack, options, language);
};

const noLanguage = (got: string): Problem => ({
  path: 'language',
  got,
  expected: `one of: ${Object.keys(LANGUAGES).join(', ')}`,
  why: 'no words are kept in it',
});

const give = async (pack: Pack, options: Options, language: Language): Promise<void> => {
  if (options.pdf !== undefined) {
    const { packPdf } = await import('../paper/pack-pdf.ts');
    await writeFile(options.pdf, packPdf(pack, [], language));
  }
  if (options.proofPdf !== undefined) {
    const { proofPdf } = await import('../paper/proof-pdf.ts');
    await writeFile(options.proofPdf, proofPdf(pack, null, language));
  }
  process.stdout.write(
    options.json === true ? `${JSON.stringify(pack)}\n` : `${packInWords(pack)}\n`,
  );
};

const textsOf = (folder: string): { texts: PlantText } | { problem: Problem } => {
  try {
    return { texts: readFolder(folder) };
  } catch (error) {
    if (!(error instanceof NoSuchFolder)) throw error;
    const problem = { path: '--plant', got: folder, expected: 'a plant folder' };
    return { problem: { ...problem, why: error.message } };
  }
};

type Asked = { readonly request: PackRequest } | { readonly problems: readonly Problem[] };

const requestOf = async (options: Options): Promise<Asked> => {
  let given: unknown;
  if (options.request !== undefined) {
    const text = await readFile(options.request, 'utf8');
    try {
      given = JSON.parse(text);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      return {
        problems: [{ path: options.request, got: text.slice(0, 40), expected: 'JSON', why }],
      };
    }
  } else {
    const { machine, target, does, why, handsAboard, when, sails } = options;
    given = {
      machine,
      target,
      does,
      ...(why === undefined ? {} : { why }),
      ...(handsAboard === undefined ? {} : { handsAboard }),
      ...(when === undefined ? {} : { when }),
      ...(sails === undefined ? {} : { sails }),
    };
  }
  const parsed = requestSchema.safeParse(given);
  if (parsed.success) return { request: parsed.data as PackRequest };
  return {
    problems: parsed.error.issues.map((issue) => ({
      path: issue.path.join('/') || 'request',
      got: valueAt(given, issue.path) ?? null,
      expected: 'a machine, a target and what is done',
      why: issue.message,
    })),
  };
};

const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (v, key) =>
      v !== null && typeof v === 'object' ? (v as Record<PropertyKey, unknown>)[key] : undefined,
    value,
  );

const refuse = (problems: readonly (Problem | FileProblem)[], options: Options): void => {
  process.exitCode = BAD;
  if (options.json === true) {
    process.stderr.write(`${JSON.stringify({ error: { problems } })}\n`);
    return;
  }
  for (const p of problems) {
    const at = 'file' in p ? `${p.file}:${p.line} ${p.path}` : p.path;
    const remedy = p.remedy === undefined ? '' : ` (${p.remedy})`;
    process.stderr.write(
      `${at}: ${p.why}: ${JSON.stringify(p.got)}, expected ${p.expected}${remedy}\n`,
    );
  }
  process.stderr.write(`\n${AUTHORITY_LINE}\n`);
};
