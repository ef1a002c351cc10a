// The command `job second-look`: the blank list in its own order, then what was seen, so ordered.

import type { Command } from 'commander';
import { CANNOT_TELL, lookOrder } from '../record/look-order.ts';
import { type LookRow, type LookState, MOMENTS, sameName } from '../record/second-look.ts';
import type { JobState } from '../record/types.ts';
import { type By, byName, collect, draftOf, oneOf, onJob, recorded } from './job-common.ts';
import { BadInput, isRefusal, refused, type Told } from './job-session.ts';

type Options = By & { readonly saw?: readonly string[] };

export const lookCommand = (): Command =>
  byName(
    'second-look',
    'a second pair of eyes: prints the blank list, then takes what was seen, in its order',
  )
    .argument('<job>')
    .argument('<moment>', MOMENTS.join(' or '))
    .option(
      '--saw <position>',
      'how it stands; once for each closure, in the order printed',
      collect,
    )
    .addHelpText(
      'after',
      [
        '',
        '--by is whoever looks: another than who shut it or lined it up, anyone trained. Where one',
        'hand is aboard the same person looks again, 10 min later at the soonest, and the record',
        'says "checked alone" (common practice, no source).',
        'Positions: open, shut, "open 3 turns", words of a switch, or "can\'t tell".',
      ].join('\n'),
    )
    .action((wanted: string, moment: string, options: Options) =>
      onJob(options, wanted, async (job, _packs, session) => {
        const look = lookOf(job, moment);
        const rows = inOrder(job, look, options.by);
        if (options.saw === undefined) return blank(job, look, rows, options.by);
        if (options.saw.length !== rows.length)
          throw new BadInput(
            `--saw is said ${options.saw.length} times for ${rows.length} closures`,
          );
        const said = rows.map((row, i) => ({
          thing: row.thing,
          position: plain(options.saw?.[i] ?? ''),
        }));
        const alone = look.doers.some((doer) => sameName(doer, options.by));
        const body = { thing: look.thing, step: look.step, rows: said, alone };
        const answer = await session.record(draftOf(job, 'second-look', options.by, body));
        return isRefusal(answer) ? refused(answer) : recorded([answer], job.id, session);
      }),
    );

/** Both apostrophes are the same words. */
const plain = (words: string): string =>
  /^can.?t tell$/i.test(words.trim()) ? CANNOT_TELL : words;

function lookOf(job: JobState, moment: string): LookState {
  const known = oneOf(MOMENTS, moment, 'moment');
  const look = job.looks.find((l) => l.moment === known);
  if (look === undefined) throw new BadInput(`nothing is looked at a second time: ${known}`);
  return look;
}

const inOrder = (job: JobState, look: LookState, by: string): readonly LookRow[] =>
  lookOrder(
    look.rows.map((row) => row.thing),
    job.id,
    look.moment,
    by,
  ).flatMap((thing) => look.rows.filter((row) => row.thing === thing));

/** No position stands in it but those that may be said of any closure of its sort. */
function blank(job: JobState, look: LookState, rows: readonly LookRow[], by: string): Told {
  const words = (row: LookRow): string =>
    [...row.choices, ...(row.turns ? ['open N turns'] : []), CANNOT_TELL].join(' | ');
  const list = rows.map(({ thing, name, place, choices, turns }) => ({
    thing,
    name,
    place,
    choices,
    turns,
  }));
  return {
    exit: 0,
    json: { job: job.id, moment: look.moment, by, rows: list, notYet: look.notYet },
    lines: [
      `${job.title}: second look by ${by}, ${look.moment}`,
      ...(look.notYet.length === 0
        ? []
        : [`Not yet. Not said to stand where it should: ${look.notYet.join(', ')}`]),
      ...rows.map(
        (row) => `  ${row.name}${row.place === null ? '' : ` (${row.place})`}: ${words(row)}`,
      ),
      'Say it again with --saw for each, in this order.',
    ],
  };
}
