// The commands of `job` for what is read before the stop, and for what was found once it is off.

import type { Command } from 'commander';
import { GRADES } from '../pack/as-found.ts';
import { BEFORE, type Before, USUAL_BEFORE } from '../pack/before.ts';
import { asFoundThing } from '../record/as-found.ts';
import { isStopped, newReading, passedOver } from '../record/before.ts';
import type { Json } from '../record/types.ts';
import { type By, byName, collect, draftOf, oneOf, onJob, recorded, sayOn } from './job-common.ts';
import { BadInput, isRefusal, refused } from './job-session.ts';

export function beforeCommands(): readonly Command[] {
  return [readBefore(), cannotRun(), asFound(), accounted()];
}

type Read = By & { readonly other?: boolean; readonly answer?: readonly string[] };

function readBefore(): Command {
  const names = USUAL_BEFORE.map((ask) => `${ask.name}${ask.unit ? ` (${ask.unit})` : ''}`);
  return byName('before', 'without a pack: what is read at one speed before the machine is stopped')
    .argument('<job>')
    .option('--answer <name=value>', `one of ${names.join(', ')}; may be repeated`, collect)
    .option('--other', 'of the machine on the other side')
    .addHelpText('after', '\nWith a pack: boxup job do JOB "measured before/running:…" --answer …')
    .action((wanted: string, o: Read) =>
      sayOn(o, wanted, 'measured', (job, _packs, session) => {
        if (job.strip === null)
          throw new BadInput(`${job.title} has a pack: report its steps with "boxup job do"`);
        if (isStopped(job)) throw new BadInput('something is shut or off already: it is stopped');
        const of = o.other === true ? 'before-other' : 'before';
        const mark = session.archive.device.slice(0, 4).toLowerCase();
        return { thing: newReading(job, of, mark), ...readings(o.answer ?? []) };
      }),
    );
}

function readings(pairs: readonly string[]): Record<string, Json> {
  if (pairs.length === 0) throw new BadInput('nothing was read: give --answer name=value');
  return Object.fromEntries(
    pairs.map((pair): [string, Json] => {
      const [name = '', value = ''] = pair.split('=');
      const ask = USUAL_BEFORE.find((each) => each.name === name);
      if (ask === undefined)
        throw new BadInput(
          `--answer is "${pair}" (expected ${USUAL_BEFORE.map((a) => a.name).join(', ')})`,
        );
      if (ask.kind !== 'number') {
        if (ask.choices?.includes(value) === true) return [name, value];
        throw new BadInput(`${name} is "${value}" (expected ${ask.choices?.join(', ')})`);
      }
      if (value.trim() === '' || !Number.isFinite(Number(value)))
        throw new BadInput(`${name} is "${value}" (expected a number in ${ask.unit})`);
      return [name, Number(value)];
    }),
  );
}

function cannotRun(): Command {
  return byName('cannot-run', 'pass over all that is read before the stop, in one go')
    .argument('<job>')
    .option('--other', 'the machine on the other side, not this one')
    .option('--both', 'neither of the two can run')
    .option('--why <text>', 'why it cannot')
    .action((wanted: string, o: By & { other?: boolean; both?: boolean; why?: string }) =>
      onJob(o, wanted, async (job, packs, session) => {
        const pack = packs.find((p) => p.id === job.packInForce) ?? null;
        const both: readonly Before[] = BEFORE.filter(
          (of) => pack === null || passedOver(pack, of).length > 0,
        );
        const things = o.both === true ? both : [o.other === true ? 'before-other' : 'before'];
        const acts = [];
        for (const thing of things) {
          const body = { thing, ...(o.why === undefined ? {} : { why: o.why }) };
          const answer = await session.record(draftOf(job, 'cannot-run', o.by, body));
          if (isRefusal(answer)) return refused(answer);
          acts.push(answer);
        }
        return await recorded(acts, job.id, session);
      }),
    );
}

type Found = By & {
  readonly grade: string;
  readonly failed: string;
  readonly missing: string;
  readonly hours?: string;
  readonly photo?: string;
  readonly text?: string;
  readonly thing?: string;
};

function asFound(): Command {
  return byName('as-found', 'its state as found, what failed, running hours, pieces missing')
    .argument('<job>')
    .requiredOption('--grade <words>', GRADES.join('; '))
    .requiredOption('--failed <what>', 'what failed, or "nothing"')
    .requiredOption('--missing <n>', 'pieces missing; 0 when none')
    .option('--hours <n>', 'running hours, where they can be read')
    .option('--photo <hash>', 'hash of a picture')
    .option('--text <words>', 'anything more')
    .option('--thing <thing>', 'of another thing than the one the job is about')
    .action((wanted: string, o: Found) =>
      sayOn(o, wanted, 'as-found', (job) => {
        const thing = o.thing ?? asFoundThing(job);
        if (thing === null) throw new BadInput('nothing is off yet, or it is said: give --thing');
        if (!GRADES.some((grade) => grade === o.grade))
          throw new BadInput(`--grade is "${o.grade}" (expected ${GRADES.join('; ')})`);
        return {
          thing,
          grade: o.grade,
          failed: o.failed,
          missing: figure('--missing', o.missing),
          ...(o.hours === undefined ? {} : { hours: figure('--hours', o.hours) }),
          ...(o.photo === undefined ? {} : { photo: o.photo }),
          ...(o.text === undefined ? {} : { text: o.text }),
        };
      }),
    );
}

type Accounted = By & {
  readonly where?: string;
  readonly left?: string;
  readonly reason?: string;
  readonly limits?: string;
};

function accounted(): Command {
  return byName('accounted', 'missing pieces found, or gone on without by your name')
    .argument('<job>')
    .argument('<thing>', 'the entry of the open list, or a part of its name')
    .option('--where <words>', 'where they were found')
    .option('--left <n>', 'with --where: how many are still missing', '0')
    .option('--reason <text>', 'gone on without: why; needs --limits')
    .option('--limits <text>', 'what limits the risk')
    .action((wanted: string, said: string, o: Accounted) =>
      sayOn(o, wanted, 'accounted', (job) => {
        const open = job.entries.filter((e) => e.kind === 'missing' && e.open);
        const names = open.map((e) => e.thing);
        return {
          thing: oneOf(names, said, 'hunt'),
          ...(o.where === undefined ? {} : { where: o.where, left: figure('--left', o.left) }),
          ...(o.reason === undefined ? {} : { reason: o.reason }),
          ...(o.limits === undefined ? {} : { limits: o.limits }),
        };
      }),
    );
}

function figure(option: string, text: string | undefined): number {
  const value = Number(text);
  if (text === undefined || text.trim() === '' || !Number.isFinite(value) || value < 0)
    throw new BadInput(`${option} is "${text ?? ''}" (expected a number of at least 0)`);
  return value;
}
