// `boxup values`: values in force, what an issue changed, taking in a new issue, where one is used.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { Command } from 'commander';
import { fileOfIssue } from '../plant/new-issue.ts';
import { readPlant } from '../plant/read.ts';
import type { Plant, PlantText } from '../plant/types.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import { whereUsed } from '../record/values-used.ts';
import { compareIssues } from '../values/issue.ts';
import type { SheetFile } from '../values/schema.ts';
import { problemText } from './check.ts';
import { BadInput, type Common, openExisting, run, sessionOn, type Told } from './job-session.ts';
import { readFolder } from './read-folder.ts';
import { takeIn, textOf, writeDurably } from './read-sheet.ts';
import { changeLines, linesOfUses, sheetLines, sheetsInForce } from './values-words.ts';

type Shown = { readonly json?: boolean };
type OnPlant = Shown & { readonly plant: string; readonly machine?: string; readonly on?: string };
type Import = OnPlant & {
  readonly write?: boolean;
  readonly sheet?: string;
  readonly name?: string;
  readonly for?: string;
  readonly issue?: string;
  readonly date?: string;
  readonly authority?: string;
  readonly why?: string;
  readonly confirm?: string;
};

const PLANT = ['--plant <folder>', 'the plant folder'] as const;

export function valuesCommand(): Command {
  const values = new Command('values').description(
    'Issued values: which are in force, what an issue changed, and where a value is used. An ' +
      'issued figure is shown exactly as issued, never converted, rounded or corrected.',
  );
  for (const command of [list(), compare(), take(), used(), tell()]) {
    command.option('--json', 'print one JSON object').addHelpText('after', `\n${AUTHORITY_LINE}`);
    values.addCommand(command, { isDefault: command.name() === 'list' });
  }
  return values.addHelpText(
    'after',
    [
      '',
      'Examples:',
      '  boxup values --plant demo/tern-rock --machine main-engine-port',
      '  boxup values compare pump-values:3 pump-values:4 --plant my-vessel',
      '  boxup values import new.csv --plant my-vessel --sheet main-engine-values --issue 8 \\',
      '    --date 2026-11-20 --authority "Office"',
      '  boxup values where-used sea-water-flange-m12 --archive my-vessel.sqlite',
      '',
      'Nothing is written before --write. It ends with 1 when an issue is refused, with 2 when a',
      'file or a name cannot be used, else with 0.',
      '',
      AUTHORITY_LINE,
    ].join('\n'),
  );
}

const list = (): Command =>
  new Command('list')
    .description('the values in force, with issue, date, authority and thread condition')
    .requiredOption(...PLANT)
    .option('--machine <name>', 'of one machine only, by id or slug')
    .option('--on <date>', 'the day by which the age of a confirmation is told; today')
    .action((o: OnPlant) => run(common(o), async () => listed(o)));

const compare = (): Command =>
  new Command('compare')
    .description('what the second issue changed of the first: was, is, why')
    .argument('<a>', 'SHEET:ISSUE of the plant, or a YAML file')
    .argument('<b>', 'the issue it is compared with')
    .option(...PLANT)
    .action((a: string, b: string, o: Shown & { plant?: string }) =>
      run(common(o), async () => compared(a, b, o.plant)),
    );

const take = (): Command =>
  new Command(`import`)
    .description('takes in a new issue: shows each value changed, added and withdrawn')
    .argument('<file>', 'a CSV list with a column id, or a YAML sheet')
    .requiredOption(...PLANT)
    .option('--write', 'write the new issue beside the one before; else it is only shown')
    .option('--sheet <id>', 'for a CSV list: which sheet it is an issue of')
    .option('--issue <number>', 'for a CSV list: the number of the issue')
    .option('--date <date>', 'for a CSV list: its date')
    .option('--authority <name>', 'for a CSV list: who issues it')
    .option('--why <text>', 'for a CSV list: why, where a row does not say')
    .option('--confirm <time>', 'for a CSV list: how long it stands, such as "24 months"')
    .option('--name <text>', 'for a sheet nobody has yet: its name')
    .option('--for <id>', 'for a sheet nobody has yet: the type or machine it is for')
    .action((file: string, o: Import) => run(common(o), async () => imported(file, o)));

const used = (): Command =>
  new Command('where-used')
    .description('the packs and jobs that hold a value, and whether an issue has replaced it')
    .argument('<id>', 'the id of the value')
    .requiredOption('--archive <file>', 'the archive that keeps the record')
    .action((id: string, o: Common) => run(o, () => usesOf(id, o)));

const tell = (): Command =>
  new Command('tell')
    .description('makes known in the record what issues replaced of values that packs hold')
    .requiredOption(...PLANT)
    .requiredOption('--archive <file>', 'the archive that keeps the record')
    .action((o: Common & OnPlant) => run(o, () => toldTo(o)));

/** `run` asks for an archive only where one is used. */
const common = (o: Shown): Common =>
  o.json === undefined ? { archive: '' } : { archive: '', json: o.json };

export function plantIn(folder: string): { readonly files: PlantText; readonly plant: Plant } {
  const files = readFolder(folder);
  const { plant, problems } = readPlant(files);
  if (plant !== null) return { files, plant };
  const musts = problems.filter((p) => p.level === 'must').map(problemText);
  throw new BadInput([`${folder} must be put right first:`, ...musts].join('\n'));
}

const today = (): string => new Date().toISOString().slice(0, 10);

function listed({ plant: folder, machine: wanted, on = today() }: OnPlant): Told {
  const { plant } = plantIn(folder);
  const machines = Object.values(plant.machines);
  const chosen = machines.filter(
    ({ id, slug }) => wanted === undefined || id === wanted || slug === wanted,
  );
  if (chosen.length === 0)
    throw new BadInput(`there is no machine ${wanted} (${machines.map((m) => m.id).join(', ')})`);
  const sheets = sheetsInForce(chosen, on);
  const json = { plant: plant.id, on, sheets };
  return { exit: 0, json, lines: sheets.flatMap((sheet) => sheetLines(sheet, on)) };
}

function compared(a: string, b: string, folder: string | undefined): Told {
  const plant = folder === undefined ? null : plantIn(folder).plant;
  const [older, newer] = [sheetNamed(a, plant), sheetNamed(b, plant)];
  const changes = compareIssues(older, newer);
  const [from, to] = [older, newer].map(({ issue, date }) => `issue ${issue} of ${date}`);
  const head = `${newer.sheet}: ${from} → ${to}`;
  const lines = changes.length === 0 ? ['No value has changed.'] : changeLines(changes);
  return {
    exit: 0,
    json: { from: older.issue, to: newer.issue, changes },
    lines: [head, ...lines],
  };
}

function sheetNamed(said: string, plant: Plant | null): SheetFile {
  if (existsSync(said)) return sheetOf(said);
  if (plant === null) throw new BadInput(`there is no file ${said}; with --plant give SHEET:ISSUE`);
  const found = plant.sheets.find(({ sheet, issue }) => `${sheet}:${issue}` === said);
  if (found !== undefined) return found;
  const known = plant.sheets.map(({ sheet, issue }) => `${sheet}:${issue}`).join(', ');
  throw new BadInput(`there is no issue ${said} (there is ${known})`);
}

/** A sheet by itself, read as it would be in a plant that has what it is for. */
function sheetOf(file: string): SheetFile {
  const text = textOf(file);
  const whose = /^for:\s*["']?([a-z0-9-]+)/m.exec(text)?.[1] ?? 'plant';
  const plant = [
    `plant: ${whose}`,
    'name: Any',
    'kind: vessel',
    'issue: { number: 1, date: 2000-01-01, by: nobody }',
  ].join('\n');
  const withoutJoints = text.replace(/^(\s*)joint:.*$/gm, '$1# joint');
  const read = readPlant([
    { file: 'plant.yaml', text: plant },
    { file, text: withoutJoints },
  ]);
  const [sheet] = read.plant?.sheets ?? [];
  if (sheet !== undefined) return sheet;
  throw new BadInput(read.problems.map(problemText).join('\n'));
}

function imported(file: string, o: Import): Told {
  const { files, plant } = plantIn(o.plant);
  const { issue, inForce, changes, problems, text } = takeIn(file, headIn(o), files, plant);
  const said = problems.map(problemText);
  if (issue === null)
    return { exit: 1, json: { problems }, lines: [...said, '', 'Refused: nothing was written.'] };
  const path = fileOfIssue(inForce, issue);
  const since = inForce === null ? 'a sheet that nobody had' : `issue ${inForce.issue} in force`;
  const { sheet, issue: number, date, authority } = issue;
  const head = `${sheet}, issue ${number} of ${date}, ${authority}; ${since}`;
  const all = changes.length === 0 ? ['No value changes.'] : changeLines(changes);
  const json = { sheet, issue: number, file: path, changes, problems };
  if (o.write !== true) {
    const lines = [head, ...all, ...said, '', `Nothing is written yet: --write makes ${path}`];
    return { exit: 0, json: { ...json, written: false }, lines };
  }
  const target = join(o.plant, path);
  if (existsSync(target)) throw new BadInput(`${path} is there already; nothing was written`);
  writeDurably(target, text);
  const lines = [head, ...all, ...said, '', `Written: ${path}`];
  return { exit: 0, json: { ...json, written: true }, lines };
}

const headIn = (o: Import) => {
  const { sheet, name, issue, date, authority, why, confirm } = o;
  const all = { sheet, name, for: o.for, issue, date, authority, why, confirm };
  return Object.fromEntries(Object.entries(all).filter(([, v]) => v !== undefined));
};

async function usesOf(id: string, { archive: file }: Common): Promise<Told> {
  const archive = openExisting(file);
  try {
    const { state, packs } = await sessionOn(archive).look();
    const uses = whereUsed(state, packs, id);
    const none = [`No pack or job here holds ${id}.`];
    return { exit: 0, json: { id, uses }, lines: uses.length === 0 ? none : linesOfUses(uses) };
  } finally {
    await archive.close();
  }
}

async function toldTo({ plant: folder, archive: file }: Common & OnPlant): Promise<Told> {
  const { plant } = plantIn(folder);
  const archive = openExisting(file);
  try {
    const { tellIssues } = await import('../server/tell-issues.ts');
    const acts = await tellIssues(plant, archive, () => sessionNow());
    const lines = acts.map(
      ({ body }) =>
        `${String(body.sheet)}, issue ${String(body.issue)}: ` +
        `${Array.isArray(body.values) ? body.values.length : 0} values that packs here hold`,
    );
    return { exit: 0, json: { acts }, lines: lines.length > 0 ? lines : ['Nothing new to tell.'] };
  } finally {
    await archive.close();
  }
}

const sessionNow = () => {
  const date = new Date();
  return { utc: date.toISOString(), offsetMinutes: 0 - date.getTimezoneOffset() };
};
