// `boxup stores`: checks a list of the stores, shows it with what is in date, prints its labels.

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { Command } from 'commander';
import { limits } from '../limits.ts';
import { ageOf, ruleOf } from '../pack/seal-fits.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import { isDay } from '../quantity/day.ts';
import { STORAGE_RULES, type StorageRule } from '../sealing/tables/storage.ts';
import { findItem } from '../stores/find.ts';
import { type StoredItem, shortKits } from '../stores/item.ts';
import type { ReadStores, StoreProblem } from '../stores/read.ts';
import { COLUMNS } from '../stores/tables/columns.ts';
import { writeStores } from '../stores/write.ts';
import { newSpeech } from '../words/say.ts';
import { NoList, readStoresFile } from './read-tools.ts';

const BAD = 2;
const WRONG = 1;

type Options = {
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly on?: string;
  readonly rule?: string;
  readonly vessel?: string;
  readonly pdf?: string;
  readonly scan?: string;
};

const FILE = ['<file>', 'the list, CSV in UTF-8'] as const;
const RULE = [
  '--rule <name>',
  `count the life of rubber by this rule: ${STORAGE_RULES.join(', ')}`,
] as const;

export const storesCommand = (): Command => {
  const command = new Command('stores').description(
    'Reads a list of spares, seals and consumables (CSV), tells what is wrong in it, what is in ' +
      'date and which kits are short, finds a scanned code, and prints labels.',
  );
  command
    .command('check')
    .description('list, all at once, what is wrong in a list of stores, and which kits are short')
    .argument(...FILE)
    .option('--json', 'print one JSON object')
    .action(check);
  command
    .command('list')
    .description('show what is held by place, with what speaks against using it')
    .argument(...FILE)
    .option('--on <day>', 'in date on this day, as 2026-11-25 (today unless given)')
    .option(...RULE)
    .option('--scan <text>', 'only what this scanned text means: our label or a GS1 code')
    .option('--vessel <id>', 'whose labels count; that of the plant file beside it unless given')
    .option('--json', 'print one JSON object')
    .option('--csv', 'print the list again as CSV')
    .action(list);
  command
    .command('labels')
    .description('print a label for each item, with a code to scan')
    .argument(...FILE)
    .requiredOption('--pdf <file>', 'write the labels here')
    .option('--vessel <id>', 'whose label it is; that of the plant file beside it unless given')
    .action(labels);
  return command.addHelpText(
    'after',
    [
      '',
      'Columns, in any order; a cell stays empty where an item has no such thing:',
      ...COLUMNS.map(({ head, says }) => `  ${head.padEnd(10)} ${says}`),
      '',
      'Examples:',
      '  boxup stores check demo/tern-rock/stores.csv',
      '  boxup stores list demo/tern-rock/stores.csv --on 2026-11-25 --rule "ISO 2230"',
      '  boxup stores labels demo/tern-rock/stores.csv --pdf labels.pdf',
      '',
      'It ends with 1 when something must be put right, with 2 when the file cannot be read.',
      '',
      AUTHORITY_LINE,
    ].join('\n'),
  );
};

const print = (text: string): void => {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
};

const refuse = (text: string): void => {
  process.stderr.write(`${text}\n`);
  process.exitCode = BAD;
};

function readOrRefuse(file: string): ReadStores | null {
  try {
    return readStoresFile(file);
  } catch (error) {
    if (!(error instanceof NoList)) throw error;
    refuse(error.message);
    return null;
  }
}

/** `row 5/origin – what is wrong; it says … (expected …)`. */
const problemText = ({ path, got, expected, why }: StoreProblem): string => {
  const says = got === null || got === '' ? '' : `; it says ${String(got)}`;
  return `${path} – ${why}${says} (expected ${expected})`;
};

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

const kitLines = (items: readonly StoredItem[]): readonly string[] =>
  shortKits(items).map(({ kit, missing }) => {
    const what = missing.map(({ item, missing: n }) => `${n} × ${item.name}`);
    return `${kit} is short: ${what.join(', ')}`;
  });

function check(file: string, options: Options): void {
  const read = readOrRefuse(file);
  if (read === null) return;
  const { items, problems } = read;
  if (problems.length > 0) process.exitCode = WRONG;
  if (options.json === true) {
    const short = shortKits(items).map(({ kit, missing }) => ({
      kit,
      missing: missing.map(({ item, missing: n }) => ({ id: item.id, count: n })),
    }));
    const told = { items: items.length, problems, shortKits: short, authority: AUTHORITY_LINE };
    print(JSON.stringify(told, null, 2));
    return;
  }
  const sum = `${counted(items.length, 'item')} read, ${counted(problems.length, 'problem')}.`;
  print([...problems.map(problemText), ...kitLines(items), sum].join('\n'));
}

/** The vessel whose plant file lies beside the list; its folder's name where there is none. */
function vesselOf(file: string, given: string | undefined): string {
  if (given !== undefined) return given;
  const folder = dirname(resolve(file));
  const plant = join(folder, 'plant.yaml');
  const text = existsSync(plant) ? readFileSync(plant, 'utf8') : '';
  return /^plant:\s*([a-z0-9-]+)/m.exec(text)?.[1] ?? basename(folder);
}

function list(file: string, options: Options): void {
  const on = options.on ?? new Date().toISOString().slice(0, 10);
  if (!isDay(on)) {
    refuse(`--on ${on} is no day (expected a day as 2026-11-25)`);
    return;
  }
  const rule = ruleOf(options.rule);
  if (options.rule !== undefined && rule === null) {
    refuse(`--rule ${options.rule} is not known (expected ${STORAGE_RULES.join(', ')})`);
    return;
  }
  const read = readOrRefuse(file);
  if (read === null) return;
  const { problems } = read;
  if (problems.length > 0) {
    process.stderr.write(`${problems.map(problemText).join('\n')}\n`);
    process.exitCode = WRONG;
  }
  const items = scanned(file, read.items, on, options);
  if (items === null) return;
  const rows = items.map((item) => ({ ...item, ...against(item, on, rule) }));
  if (options.csv === true) print(writeStores(items));
  else if (options.json === true)
    print(JSON.stringify({ on, rule, items: rows, authority: AUTHORITY_LINE }, null, 2));
  else print([...asText(rows), ...kitLines(items), '', AUTHORITY_LINE].join('\n'));
}

function scanned(
  file: string,
  items: readonly StoredItem[],
  on: string,
  { scan, vessel }: Options,
): readonly StoredItem[] | null {
  if (scan === undefined) return items;
  const where = { vessel: vesselOf(file, vessel), year: Number(on.slice(0, 4)) };
  const meant = findItem(scan, items, where);
  if (meant.problems.length === 0 && meant.items.length > 0) return meant.items;
  const why = meant.problems.map(
    ({ path, got, expected, why: what }) =>
      `${path} ${what}; it says ${String(got)} (expected ${expected})`,
  );
  refuse(why.length > 0 ? why.join('\n') : 'nothing of this kind is in the list');
  return null;
}

type Against = { readonly against: readonly string[]; readonly notChecked: readonly string[] };

function against(item: StoredItem, on: string, rule: StorageRule | null): Against {
  const { say } = newSpeech();
  const { why, notChecked } = ageOf(item, { on, rule, say, machine: {}, job: [] });
  const state = item.condition === 'ready to fit' ? [] : [item.condition];
  return { against: [...state, ...why], notChecked };
}

function asText(rows: readonly (StoredItem & Against)[]): readonly string[] {
  const places = [...new Set(rows.map(({ place = 'place not stated' }) => place))].sort();
  return places.flatMap((place) => [
    place,
    ...rows.filter((row) => (row.place ?? 'place not stated') === place).map(rowText),
  ]);
}

function rowText(row: StoredItem & Against): string {
  const { id, name, quantity, unit, size, thickness, compound, reservedFor } = row;
  const figures = [size, thickness, compound].filter((x) => x !== undefined);
  const kept = reservedFor === undefined ? [] : [`kept for ${reservedFor}`];
  const wrong = row.against.length === 0 ? [] : [`NOT IN ORDER: ${row.against.join('; ')}`];
  const open = row.notChecked;
  return [
    `  ${id}  ${quantity} ${unit}: ${[name, ...figures].join(', ')}`,
    ...kept,
    ...wrong,
    ...open,
  ].join('; ');
}

async function labels(file: string, options: Options): Promise<void> {
  const read = readOrRefuse(file);
  if (read === null) return;
  const { items, problems } = read;
  if (problems.length > 0) {
    process.stderr.write(`${problems.map(problemText).join('\n')}\n`);
    process.exitCode = WRONG;
    return;
  }
  if (items.length > limits.stores.labels)
    return refuse(`${items.length} labels at once (at most ${limits.stores.labels})`);
  const { labelsPdf } = await import('../paper/labels.ts');
  writeFileSync(options.pdf ?? '', labelsPdf(vesselOf(file, options.vessel), items));
  print(`${counted(items.length, 'label')} written to ${options.pdf}.`);
}
