// The command `job paper`: enters one lettered sheet of a job that was carried out on paper.

import type { Command } from 'commander';
import { sheetName, sheetsOf } from '../pack/sheets.ts';
import type { Ask, Pack, Step } from '../pack/types.ts';
import {
  fromPaper,
  paperRows,
  sheetOf,
  type Written,
  type WrittenRow,
} from '../record/from-paper.ts';
import type { Act, JobState, Json } from '../record/types.ts';
import { en } from '../words/en/index.ts';
import { collect, onArchive, onJob, recorded } from './job-common.ts';
import {
  BadInput,
  type Common,
  isRefusal,
  packOf,
  refused,
  type Session,
  type Told,
} from './job-session.ts';
import { actLine, askWords } from './job-words.ts';

type Paper = Common & {
  readonly by?: string;
  readonly written?: string;
  readonly enteredBy?: string;
  readonly verifiedBy?: string;
  readonly except?: readonly string[];
  readonly count?: readonly string[];
  readonly row?: readonly string[];
  readonly found?: string;
};

export function paperCommand(): Command {
  return onArchive('paper', 'enter a sheet of a job done on paper; without SHEET, list the sheets')
    .argument('<job>')
    .argument('[sheet]', 'its letter')
    .option('--by <name>', 'who worked, as written on the sheet')
    .option('--written <text>', 'date and time, as written on the sheet')
    .option('--entered-by <name>', 'who enters it; the one who worked where left out')
    .option('--verified-by <name>', 'who signed its cautions')
    .option('--except <step>', 'a step without a tick (may be repeated, or with commas)', collect)
    .option('--count <step=n>', 'a count as written (may be repeated)', collect)
    .option(
      '--row <step=answer>',
      'a step said by itself: its answer, "name:answer;name:answer" where it asks for several, ' +
        'the bolts ticked ("1,3" or "all"), nothing where a tick is all (may be repeated)',
      collect,
    )
    .option('--found <words>', 'what stands under "Found, or could not do"')
    .action((wanted: string, letter: string | undefined, o: Paper) =>
      onJob(o, wanted, async (job, packs, session) => {
        const pack = packOf(job, packs);
        return letter === undefined
          ? listed(job, pack)
          : await enter(job, pack, letter.toUpperCase(), o, session);
      }),
    );
}

function listed(job: JobState, pack: Pack): Told {
  const sheets = sheetsOf(pack).map((sheet) => {
    const left = sheet.steps.filter((step) => job.done[step.id] === undefined).length;
    const name = en.paper.sheet(sheet.letter, sheetName(sheet, en.paper.phases));
    return { letter: sheet.letter, name, steps: sheet.steps.map((s) => s.id), left };
  });
  const lines = sheets.map((s) => `${s.name}: ${s.steps.length - s.left} of ${s.steps.length}`);
  const printed = `Printed from pack ${pack.id.slice(0, 12)}: see "Identification" on the sheet.`;
  return { exit: 0, json: { job: job.id, pack: pack.id, sheets }, lines: [printed, ...lines] };
}

async function enter(
  job: JobState,
  pack: Pack,
  letter: string,
  o: Paper,
  session: Session,
): Promise<Told> {
  const sheet = sheetOf(pack, letter);
  const letters = sheetsOf(pack).map((each) => each.letter);
  if (sheet === null)
    throw new BadInput(`the pack has no sheet "${letter}" (expected ${letters.join(', ')})`);
  const written = writtenOf(sheet.steps, letter, o);
  const { state } = await session.look();
  const { drafts, unsaid, unverified } = fromPaper(state, job.id, pack, letter, written);
  const alone = new Map(paperRows(job, pack, sheet).map((row) => [row.step.id, row.alone]));
  if (unsaid.length > 0)
    throw new BadInput(
      [
        `sheet ${letter}: these are said one by one with --row, or left out with --except:`,
        ...unsaid.map(({ step, lacks }) => `  ${rowHint(step, lacks, alone.get(step.id) ?? '')}`),
      ].join('\n'),
    );
  if (unverified) throw new BadInput(`sheet ${letter}: who signed its cautions? --verified-by`);
  const acts: Act[] = [];
  for (const draft of drafts) {
    const answer = await session.record(draft);
    if (isRefusal(answer)) {
      const told = refused(answer);
      return {
        ...told,
        json: { ...told.json, acts },
        lines: [...acts.map(actLine), ...told.lines],
      };
    }
    acts.push(answer);
  }
  return await recorded(acts, job.id, session);
}

const rowHint = (step: Step, lacks: readonly Ask[], why: string): string => {
  const asks = lacks.map((ask) => `${ask.name} (${askWords(ask)})`).join('; ');
  return `--row "${step.id}${asks === '' ? '' : '=…'}": ${asks === '' ? why : asks}`;
};

function writtenOf(steps: readonly Step[], letter: string, o: Paper): Written {
  const wants = { by: '--by', written: '--written' } as const;
  for (const [name, option] of Object.entries(wants))
    if ((o[name as keyof typeof wants] ?? '').trim() === '')
      throw new BadInput(`sheet ${letter}: ${option} is missing: as it stands on the sheet`);
  const stepIn = (id: string): Step => {
    const step = steps.find((each) => each.id === id.trim());
    if (step === undefined) throw new BadInput(`no step "${id.trim()}" on sheet ${letter}`);
    return step;
  };
  const said = [...(o.row ?? []), ...(o.count ?? []).map(whole)].map((text) => {
    const [id = '', ...rest] = text.split('=');
    const step = stepIn(id);
    return [step.id, rowOf(step, rest.length === 0 ? null : rest.join('='))] as const;
  });
  const blank = (o.except ?? []).flatMap((text) => text.split(',')).map((id) => stepIn(id).id);
  const by = o.by ?? '';
  return {
    by,
    writtenAt: o.written ?? '',
    enteredBy: o.enteredBy ?? by,
    verifiedBy: o.verifiedBy ?? '',
    rows: Object.fromEntries(said),
    blank,
    ...(o.found === undefined ? {} : { found: o.found }),
  };
}

function whole(pair: string): string {
  if (!/=\d+$/.test(pair)) throw new BadInput(`--count is "${pair}" (expected step=number)`);
  return pair;
}

function rowOf(step: Step, answer: string | null): WrittenRow {
  if (answer === null && step.verb !== 'second-look')
    return { answers: {}, ...(step.perHole ? { holes: step.holes } : {}) };
  if (answer === null) throw new BadInput(`"${step.id}": who looked, and what was seen?`);
  if (step.perHole)
    return { answers: {}, holes: answer === 'all' ? step.holes : answer.split(',').map(trimmed) };
  if (step.verb === 'second-look') return lookOf(step, answer);
  const given = answer.split(';').map((part): [string, Json] => {
    const named = step.asks.find((ask) => part.startsWith(`${ask.name}:`));
    const ask = named ?? step.asks.find((each) => each.optional !== true);
    if (ask === undefined) throw new BadInput(`"${step.id}" asks for nothing`);
    return [ask.name, answerTo(step, ask, named ? part.slice(ask.name.length + 1) : part)];
  });
  return { answers: Object.fromEntries(given) };
}

/** `by:Ben;closure/sea-suction:shut;…`: who looked, and where each closure was seen. */
function lookOf(step: Step, answer: string): WrittenRow {
  const pairs = answer.split(';').map((part) => {
    const at = part.indexOf(':');
    if (at < 1)
      throw new BadInput(`"${step.id}": "${part}" (expected by:NAME or closure:position)`);
    return [part.slice(0, at).trim(), part.slice(at + 1).trim()] as const;
  });
  const by = pairs.find(([name]) => name === 'by')?.[1];
  const rows = pairs
    .filter(([name]) => name !== 'by')
    .map(([thing, position]) => ({ thing, position }));
  if (by === undefined) throw new BadInput(`"${step.id}": who looked? by:NAME`);
  return { answers: { rows, alone: false }, by };
}

function answerTo(step: Step, ask: Ask, text: string): Json {
  const said = text.trim();
  if (ask.kind === 'choice' && ask.choices?.includes(said) === false)
    throw new BadInput(`"${step.id}": ${ask.name} is "${said}" (expected ${askWords(ask)})`);
  if (ask.kind !== 'number' && ask.kind !== 'count') return said;
  const figure = Number(said);
  if (said === '' || !Number.isFinite(figure))
    throw new BadInput(`"${step.id}": ${ask.name} is "${said}" (expected a number)`);
  return figure;
}

const trimmed = (text: string): string => text.trim();
