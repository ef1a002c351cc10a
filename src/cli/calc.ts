// `boxup calc`: one calculation, a file of cases a line each, the list, or a published schema.

import { createReadStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { Command } from 'commander';
import {
  type CalcAnswer,
  findCalculation,
  inputJsonSchema,
  listCalculations,
  outputJsonSchema,
  runCalc,
} from '../calc/register.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import type { Problem } from '../quantity/types.ts';
import { solverWithin } from '../server/solver.ts';
import { solveWithHighs } from '../server/solver-inline.ts';

type Options = {
  readonly in?: string;
  readonly lines?: boolean;
  readonly schema?: boolean;
  readonly output?: boolean;
  readonly json?: boolean;
};

/** Bad input ends with 2; a case that can't be done (infeasible) is a result. */
const BAD_INPUT = 2;

export function calcCommand(): Command {
  return new Command('calc')
    .summary('do one calculation, or list the calculations there are')
    .description('Does one calculation, or lists the calculations there are.')
    .argument('[name]', 'which calculation')
    .option('--in <file>', 'the case as JSON; - is standard input')
    .option('--lines', 'a case a line in, a result a line out, in the same order')
    .option('--schema', 'print the JSON Schema of the input instead')
    .option('--output', 'with --schema: of the output')
    .option('--json', 'the answer is JSON in any case; with no name the list is too')
    .addHelpText('after', helpText)
    .action(calc);
}

function helpText(): string {
  const list = listCalculations().map(({ name, summary, help }) =>
    [`  ${name}: ${summary}`, ...help.split('\n').map((line) => `    ${line}`)].join('\n'),
  );
  return [
    '',
    'The calculations:',
    ...list,
    '',
    'To begin:',
    '  boxup calc removal --schema',
    '  boxup calc removal --in case.json',
    '  boxup calc removal --lines --in cases.jsonl',
    'It ends with 0 when done (infeasible is a result too), 2 when an input cannot be used.',
  ].join('\n');
}

async function calc(name: string | undefined, options: Options): Promise<void> {
  if (name === undefined) return list(options);
  const calculation = findCalculation(name);
  if (calculation === undefined) {
    const { error } = (await runCalc(name, {}, { solver: solveWithHighs })) as { error: unknown };
    return refuse(error);
  }
  if (options.schema) {
    print(options.output ? outputJsonSchema(calculation) : inputJsonSchema(calculation), 2);
    return;
  }
  if (options.in === undefined) {
    const why = 'a case is needed: --in FILE, or --in - for standard input';
    return refuse(problem({ path: '--in', got: null, expected: 'a file', why }));
  }
  if (options.lines) return lines(name, options.in);
  const text = await textOf(options.in);
  if (!text.ok) return refuse(text.error);
  const answer = await answerTo(name, text.text);
  if (answer.ok) print(answer.result, 2);
  else refuse(answer.error);
}

function list({ json }: Options): void {
  const all = listCalculations().map(({ name, summary }) => ({ name, summary }));
  if (json) {
    print(all, 2);
    return;
  }
  for (const { name, summary } of all) process.stdout.write(`${name.padEnd(16)} ${summary}\n`);
  process.stderr.write(`\n${AUTHORITY_LINE}\n`);
}

const print = (value: unknown, indent = 0): void => {
  process.stdout.write(`${JSON.stringify(value, null, indent)}\n`);
};

const problem = (one: Problem) => ({ error: { problems: [one] } });

function refuse(error: unknown): void {
  process.stderr.write(`${JSON.stringify(error, null, 2)}\n`);
  process.exitCode = BAD_INPUT;
}

type Text = { readonly ok: true; readonly text: string } | { readonly ok: false; error: unknown };

async function textOf(file: string): Promise<Text> {
  try {
    if (file !== '-') return { ok: true, text: await readFile(file, 'utf8') };
    const chunks: Buffer[] = [];
    for await (const chunk of process.stdin) chunks.push(chunk);
    return { ok: true, text: Buffer.concat(chunks).toString('utf8') };
  } catch (error) {
    return { ok: false, error: problem(unreadable(file, error)) };
  }
}

const unreadable = (file: string, error: unknown): Problem => ({
  path: '--in',
  got: file,
  expected: 'a file that can be read',
  why: error instanceof Error ? error.message : String(error),
});

async function answerTo(name: string, text: string): Promise<CalcAnswer> {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const got = text.slice(0, 200);
    return { ok: false, error: problem({ path: '', got, expected: 'JSON', why }) };
  }
  const seconds = findCalculation(name)?.seconds(raw) ?? null;
  if (seconds === null) return runCalc(name, raw, { solver: solveWithHighs });
  const timed = solverWithin(seconds);
  try {
    return await runCalc(name, raw, timed);
  } finally {
    await timed.close();
  }
}

async function lines(name: string, file: string): Promise<void> {
  const input = file === '-' ? process.stdin : createReadStream(file);
  try {
    for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
      if (line.trim() === '') continue;
      const answer = await answerTo(name, line);
      print(answer.ok ? answer.result : answer.error);
      if (!answer.ok) process.exitCode = BAD_INPUT;
    }
  } catch (error) {
    refuse(problem(unreadable(file, error)));
  }
}
