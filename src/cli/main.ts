// The program `boxup`: finds the command that was named and loads that one only, so it starts fast.

import { Command, CommanderError } from 'commander';
import packageJson from '../../package.json' with { type: 'json' };
import { AUTHORITY_LINE } from '../quantity/authority.ts';

type Entry = {
  readonly name: string;
  readonly summary: string;
  readonly load: () => Promise<Command>;
};

const entries: readonly Entry[] = [
  {
    name: 'serve',
    summary: 'show the log and its jobs in a browser on this computer',
    load: async () => (await import('./serve.ts')).serveCommand(),
  },
  {
    name: 'check',
    summary: 'read a plant folder and list what is wrong or not known in it',
    load: async () => (await import('./check.ts')).checkCommand(),
  },
  {
    name: 'pack',
    summary: 'work out the whole job for one part of one machine',
    load: async () => (await import('./pack.ts')).packCommand(),
  },
  {
    name: 'calc',
    summary: 'do one calculation, or list the calculations there are',
    load: async () => (await import('./calc.ts')).calcCommand(),
  },
  {
    name: 'tools',
    summary: 'check and show a list of the tools held',
    load: async () => (await import('./tools.ts')).toolsCommand(),
  },
  {
    name: 'stores',
    summary: 'check and show a list of spares, seals and consumables, print their labels',
    load: async () => (await import('./stores.ts')).storesCommand(),
  },
  {
    name: 'values',
    summary: 'list issued values, compare and take in issues, find where a value is used',
    load: async () => (await import('./values.ts')).valuesCommand(),
  },
  {
    name: 'job',
    summary: 'carry a job from the first undoing to its closing',
    load: async () => (await import('./job.ts')).jobCommand(),
  },
  {
    name: 'record',
    summary: 'verify the record of what was done',
    load: async () => (await import('./record.ts')).recordCommand(),
  },
];

/** Wrong usage ends with 2, as bad input does; 1 is kept for answers such as "infeasible". */
const USAGE_EXIT = 2;

/** A fault of the program itself must not look like an answer. */
const FAULT_EXIT = 3;

function named(args: readonly string[]): string | undefined {
  const words = args.filter((word) => !word.startsWith('-'));
  return words[0] === 'help' ? words[1] : words[0];
}

function throwInsteadOfExit(command: Command): void {
  command.exitOverride();
  for (const child of command.commands) throwInsteadOfExit(child);
}

async function program(args: readonly string[]): Promise<Command> {
  const boxup = new Command('boxup')
    .description(
      'Works out the whole job of taking a part off a machine and giving the machine back ' +
        'proven fit, and carries it through work, proof and record.',
    )
    .version(packageJson.version)
    .showSuggestionAfterError(true)
    .addHelpText(
      'after',
      [
        '',
        'To begin:',
        '  boxup check demo/tern-rock',
        '  boxup pack --plant demo/tern-rock --machine main-engine-port --target sea-water-pump',
        '  boxup calc removal --in case.json',
        '',
        'Each command explains itself: boxup COMMAND --help',
        'It ends with 0 when done, 1 when the answer is no, 2 when the input cannot be used.',
      ].join('\n'),
    )
    .addHelpText('afterAll', `\n${AUTHORITY_LINE}`);
  const wanted = named(args);
  for (const { name, summary, load } of entries) {
    const command = name === wanted ? await load() : new Command(name).description(summary);
    boxup.addCommand(command.summary(summary));
  }
  throwInsteadOfExit(boxup);
  return boxup;
}

async function run(args: readonly string[]): Promise<void> {
  const boxup = await program(args);
  if (args.length === 0) {
    boxup.outputHelp({ error: true });
    process.exitCode = USAGE_EXIT;
    return;
  }
  try {
    await boxup.parseAsync([...args], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    process.exitCode = error.exitCode === 0 ? 0 : USAGE_EXIT;
  }
}

// `boxup … | head` closes the pipe early: that is the reader's choice, not a fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

try {
  await run(process.argv.slice(2));
} catch (error) {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`boxup: a fault in the program itself\n${text}\n`);
  process.exitCode = FAULT_EXIT;
}
