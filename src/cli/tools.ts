// `boxup tools`: checks a list of the tools held, and shows it with what is in date.

import { Command } from 'commander';
import { datedAgainst } from '../lifting/gear.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import { isDay, monthsOn } from '../quantity/day.ts';
import { formatNumber } from '../quantity/quantity.ts';
import type { Quantity } from '../quantity/types.ts';
import { convert, knownUnit } from '../quantity/units.ts';
import { asWrench } from '../tightening/tool-fit.ts';
import { checkWrench, USUAL_MONTHS } from '../tightening/wrench-check.ts';
import type { ReadTools, ToolProblem } from '../tools/read.ts';
import { COLUMNS } from '../tools/tables/columns.ts';
import { driveName, type HeldWrench, isGear, TOOL_KINDS, type Tool } from '../tools/tool.ts';
import { writeTools } from '../tools/write.ts';
import { NoList, readToolFile } from './read-tools.ts';

const BAD = 2;
const WRONG = 1;

type Options = { readonly json?: boolean; readonly csv?: boolean; readonly on?: string };

export const toolsCommand = (): Command => {
  const command = new Command('tools').description(
    'Reads a list of the tools held (CSV), tells what is wrong in it and what is in date.',
  );
  command
    .command('check')
    .description('list, all at once, what is wrong in a list of tools')
    .argument('<file>', 'the list, CSV in UTF-8')
    .option('--json', 'print one JSON object')
    .action(check);
  command
    .command('list')
    .description('show the tools held; torque wrenches with what speaks against them')
    .argument('<file>', 'the list, CSV in UTF-8')
    .option('--on <day>', 'in date on this day, as 2026-11-25 (today unless given)')
    .option('--json', 'print one JSON object')
    .option('--csv', 'print the list again as CSV')
    .action(list);
  return command.addHelpText(
    'after',
    [
      '',
      `Kinds: ${TOOL_KINDS.join(', ')}.`,
      'Columns, in any order; a cell stays empty where a kind has no such thing:',
      ...COLUMNS.map(({ head, says }) => `  ${head.padEnd(13)} ${says}`),
      '',
      'Examples:',
      '  boxup tools check demo/tern-rock/tools.csv',
      '  boxup tools list demo/tern-rock/tools.csv --on 2026-11-25',
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

function readOrRefuse(file: string): ReadTools | null {
  try {
    return readToolFile(file);
  } catch (error) {
    if (!(error instanceof NoList)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = BAD;
    return null;
  }
}

/** `row 5/max – what is wrong; it says … (expected …)`. */
const problemText = ({ path, got, expected, why }: ToolProblem): string => {
  const says = got === null || got === '' ? '' : `; it says ${String(got)}`;
  return `${path} – ${why}${says} (expected ${expected})`;
};

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

function check(file: string, options: Options): void {
  const read = readOrRefuse(file);
  if (read === null) return;
  const { tools, problems } = read;
  if (problems.length > 0) process.exitCode = WRONG;
  if (options.json === true) {
    const told = { tools: tools.length, problems, authority: AUTHORITY_LINE };
    print(JSON.stringify(told, null, 2));
    return;
  }
  const sum = `${counted(tools.length, 'tool')} read, ${counted(problems.length, 'problem')}.`;
  print([...problems.map(problemText), sum].join('\n'));
}

function list(file: string, options: Options): void {
  const on = options.on ?? new Date().toISOString().slice(0, 10);
  if (!isDay(on)) {
    process.stderr.write(`--on ${on} is no day (expected a day as 2026-11-25)\n`);
    process.exitCode = BAD;
    return;
  }
  const read = readOrRefuse(file);
  if (read === null) return;
  const { tools, problems } = read;
  if (problems.length > 0) {
    process.stderr.write(`${problems.map(problemText).join('\n')}\n`);
    process.exitCode = WRONG;
  }
  if (options.csv === true) print(writeTools(tools));
  else if (options.json === true) {
    const rows = tools.map((tool) => ({ ...tool, against: against(tool, on) }));
    print(JSON.stringify({ on, tools: rows, authority: AUTHORITY_LINE }, null, 2));
  } else print([...asText(tools, on), '', AUTHORITY_LINE].join('\n'));
}

/** What speaks against using it on that day, whatever it is set to. */
function against(tool: Tool, on: string): readonly string[] {
  if (tool.kind === 'wrench') return againstWrench(tool, on);
  if (isGear(tool)) return datedAgainst(tool, on);
  if (tool.kind !== 'gauge') return [];
  const { calibratedOn, intervalMonths = USUAL_MONTHS } = tool;
  if (calibratedOn === undefined) return ['not known: calibrated'];
  const until = monthsOn(calibratedOn, intervalMonths);
  return on <= until ? [] : [`out of date: calibrated on ${calibratedOn}, until ${until}`];
}

function againstWrench(tool: HeldWrench, on: string): readonly string[] {
  const { reasons, needs } = checkWrench(asWrench(tool), tool.max.value, on);
  return [...reasons, ...needs.map((need) => `not known: ${need.replace('wrench/', '')}`)];
}

function asText(tools: readonly Tool[], on: string): string[] {
  const width = Math.max(0, ...tools.map(({ id }) => id.length));
  return TOOL_KINDS.flatMap((kind) => {
    const own = tools.filter((tool) => tool.kind === kind);
    if (own.length === 0) return [];
    const lines = own.map((tool) => {
      const why = against(tool, on);
      const dated = tool.kind === 'wrench' || tool.kind === 'gauge' || isGear(tool);
      const state = !dated
        ? ''
        : why.length === 0
          ? '; in date'
          : `; NOT IN ORDER: ${why.join('; ')}`;
      return `  ${tool.id.padEnd(width)}  ${sizeOf(tool)}${state}`;
    });
    return [kind, ...lines];
  });
}

const formatOnScale = ({ value }: Quantity, unit: string): string =>
  formatNumber(convert(value, 'N.m', unit), 4);

function sizeOf(tool: Tool): string {
  switch (tool.kind) {
    case 'wrench': {
      const [min, max] = [tool.min, tool.max].map((end) => formatOnScale(end, tool.scaleUnit));
      const scale = knownUnit(tool.scaleUnit).symbol;
      return `${min} to ${max} ${scale}, ${driveName(tool.drive)}`;
    }
    case 'socket':
    case 'key':
      return `${tool.acrossFlats} mm${tool.long ? ' long' : ''}, ${driveName(tool.drive)}`;
    case 'crowfoot':
      return `${tool.acrossFlats} mm, offset ${tool.offset} mm, ${driveName(tool.drive)}`;
    case 'spanner':
      return `${tool.acrossFlats} mm`;
    case 'extension':
      return `${tool.length} mm, ${driveName(tool.drive)}`;
    case 'adapter':
      return `${driveName(tool.drive)} to ${driveName(tool.to)}`;
    case 'handle':
    case 'swivel':
      return driveName(tool.drive);
    case 'chain block':
    case 'sling':
    case 'shackle':
    case 'eye bolt':
    case 'jack':
      return `marked ${formatNumber(tool.safeLoad.value)} kg`;
    case 'gauge': {
      const spread = tool.expanded === undefined ? '' : `, ± ${tool.expanded} (k = ${tool.k})`;
      return `${tool.measures}, ${tool.min} to ${tool.max} ${tool.unit}${spread}`;
    }
  }
}
