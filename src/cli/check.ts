// `boxup check`: reads a plant folder and says what is wrong in it, and what came from where.

import { Command, Option } from 'commander';
import { type ExplainRow, explain } from '../plant/explain.ts';
import { schemaText } from '../plant/json-schema.ts';
import { FILE_KINDS, type FileKind } from '../plant/kinds.ts';
import { readPlant } from '../plant/read.ts';
import type { FileProblem, Plant, ReadPlant } from '../plant/types.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import { NoSuchFolder, readFolder } from './read-folder.ts';

type Options = {
  readonly explain?: boolean;
  readonly machine?: string;
  readonly json?: boolean;
  readonly schema?: FileKind;
};

const BAD = 2;
const WRONG = 1;

export const checkCommand = (): Command =>
  new Command('check')
    .description('Reads a plant folder and lists, all at once, what is wrong or not known in it.')
    .argument('[folder]', 'the plant folder, with its YAML files in it or in folders below')
    .option('--explain', 'say for each field which file or difference it came from')
    .option('--machine <name>', 'with --explain: this machine only, by id or slug')
    .option('--json', 'print one JSON object')
    .addOption(
      new Option(
        '--schema <kind>',
        'print the JSON Schema of a kind of file, for an editor to complete and check',
      ).choices([...FILE_KINDS]),
    )
    .addHelpText(
      'after',
      [
        '',
        'Each problem stands with its file and line, the path in the file, what stands there,',
        'what may stand there, and a suggestion for a misspelt name.',
        '  must    wrong: no pack is made until it is put right',
        '  should  worth putting right',
        '  note    good to know',
        'What is written "unknown" is no problem; it is listed by --explain.',
        '',
        'Examples:',
        '  boxup check demo/tern-rock',
        '  boxup check demo/tern-rock --explain --machine main-engine-starboard',
        '  boxup check --schema type > type.schema.json',
        '',
        'It ends with 1 when something must be put right, with 2 when the folder or a name cannot',
        'be used, else with 0.',
        '',
        AUTHORITY_LINE,
      ].join('\n'),
    )
    .action(run);

const print = (text: string): void => {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
};

function refuse(why: string): void {
  process.stderr.write(`${why}\n`);
  process.exitCode = BAD;
}

function run(folder: string | undefined, options: Options): void {
  if (options.schema !== undefined) {
    print(schemaText(options.schema));
    return;
  }
  if (folder === undefined) {
    refuse('which folder? for example: boxup check demo/tern-rock');
    return;
  }
  const read = readOrRefuse(folder);
  if (read === null) return;
  const machines = machinesWanted(read.plant, options.machine);
  if (machines === null) return;
  const rows = options.explain === true ? explained(read.plant, machines) : undefined;
  print(options.json === true ? asJson(read, rows) : asText(read, rows));
  if (read.problems.some(({ level }) => level === 'must')) process.exitCode = WRONG;
}

function readOrRefuse(folder: string): ReadPlant | null {
  try {
    return readPlant(readFolder(folder));
  } catch (error) {
    if (!(error instanceof NoSuchFolder)) throw error;
    refuse(error.message);
    return null;
  }
}

function machinesWanted(plant: Plant | null, name: string | undefined): string[] | null {
  const all = Object.values(plant?.machines ?? {});
  if (name === undefined || plant === null) return all.map(({ id }) => id);
  const found = all.find(({ id, slug }) => id === name || slug === name);
  if (found !== undefined) return [found.id];
  refuse(`there is no machine ${name} (there is ${all.map(({ id }) => id).join(', ')})`);
  return null;
}

type Explained = { readonly machine: string; readonly rows: readonly ExplainRow[] }[];

const explained = (plant: Plant | null, machines: readonly string[]): Explained =>
  plant === null ? [] : machines.map((machine) => ({ machine, rows: explain(plant, machine) }));

function asJson({ plant, problems }: ReadPlant, rows: Explained | undefined): string {
  const told = {
    plant: plant === null ? null : { id: plant.id, name: plant.name, issue: plant.issue },
    machines: Object.values(plant?.machines ?? {}).map(({ id, name, slug, type, unknown }) => ({
      id,
      name,
      slug,
      type,
      unknown,
    })),
    problems,
    ...(rows === undefined ? {} : { explain: rows }),
    authority: AUTHORITY_LINE,
  };
  return JSON.stringify(told, null, 2);
}

const shown = (value: unknown): string => {
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > 100 ? `${text.slice(0, 97)}…` : text;
};

/** `file:line path – what is wrong, the value, what is allowed, suggestion`. */
export function problemText(problem: FileProblem): string {
  const { level, file, line, path, why, got, expected, remedy, fault } = problem;
  const value = got === null || got === '' ? '' : `; it says ${shown(got)}`;
  const advice = remedy === undefined ? '' : ` → ${remedy}`;
  const where = path === '' ? `${file}:${line}` : `${file}:${line} ${path}`;
  const which = fault === undefined ? '' : ` [${fault}]`;
  return `${level}  ${where} – ${why}${value} (expected ${expected})${advice}${which}`;
}

function rowText(row: ExplainRow): string {
  const { path, value, from, id, why, origin, state } = row;
  const parts = [origin?.from, origin?.by, origin?.on].filter((part) => part !== undefined);
  const came = `${from} ${id}${why === undefined ? '' : ` (${why})`}`;
  const said = parts.length === 0 ? '' : `; ${parts.join(', ')}`;
  return `  ${path}: ${state ?? shown(value)} ← ${came}${said}`;
}

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

function asText({ plant, problems }: ReadPlant, explained: Explained | undefined): string {
  const lines = problems.map(problemText);
  for (const { machine, rows } of explained ?? []) {
    if (lines.length > 0) lines.push('');
    lines.push(plant?.machines[machine]?.name ?? machine, ...rows.map(rowText));
  }
  if (lines.length > 0) lines.push('');
  const count = (level: FileProblem['level']) =>
    problems.filter((problem) => problem.level === level).length;
  const machines = Object.values(plant?.machines ?? {});
  const unknown = machines.reduce((sum, machine) => sum + machine.unknown.length, 0);
  const what =
    plant === null
      ? 'No pack can be made until what must be put right is.'
      : `${plant.name}, issue ${plant.issue.number} of ${plant.issue.date}: ` +
        `${counted(machines.length, 'machine')}, ${counted(unknown, 'field')} unknown.`;
  lines.push(
    what,
    `${count('must')} must, ${count('should')} should, ${counted(count('note'), 'note')}.`,
  );
  if (explained !== undefined && plant === null) {
    lines.push('Where things came from is told once nothing must be put right.');
  }
  return lines.join('\n');
}
