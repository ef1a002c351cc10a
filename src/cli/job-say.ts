// The commands of `job` that say something besides a step done: found, decided, corrected, amended.

import type { Command } from 'commander';
import { type By, byName, oneOf, sayOn } from './job-common.ts';
import { readPack } from './job-session.ts';
import { lookedCommand } from './job-values.ts';

export function sayingCommands(): readonly Command[] {
  const stepAndThing = (said: string): { thing: string; step?: string } => {
    const [first = '', second] = said.split(' ');
    return second === undefined ? { thing: first } : { thing: second, step: said };
  };
  const couldNot = byName('could-not', 'something could not be done; nobody is to blame')
    .argument('<job>')
    .argument('<step>', 'the step, or the thing')
    .requiredOption('--why <text>', 'what stood in the way')
    .action((wanted: string, said: string, o: By & { why: string }) =>
      sayOn(o, wanted, 'could-not', () => ({ ...stepAndThing(said), why: o.why })),
    );
  const found = byName('found', 'something was found on the machine')
    .argument('<job>')
    .argument('<thing>', 'where: a thing of the job, or "job"')
    .requiredOption('--what <text>', 'what was found')
    .action((wanted: string, thing: string, o: By & { what: string }) =>
      sayOn(o, wanted, 'found', () => ({ thing, what: o.what })),
    );
  const decide = byName('decide', 'what is done about a finding, and who sees to it')
    .argument('<job>')
    .argument('<finding>', 'the id of the finding, or a part of it')
    .requiredOption('--owner <name>', 'who sees to it')
    .requiredOption('--what <text>', 'what is done')
    .option('--pack <id>', 'of two packs that amend one: the one to be in force')
    .action(
      (wanted: string, said: string, o: By & { owner: string; what: string; pack?: string }) =>
        sayOn(o, wanted, 'decided', (job) => {
          const ids = job.findings.map((f) => f.id);
          const finding = oneOf(ids, said, 'finding');
          const pack = o.pack === undefined ? {} : { pack: oneOf(job.packs, o.pack, 'pack') };
          return { finding, owner: o.owner, what: o.what, ...pack };
        }),
    );
  const anyway = byName('use-anyway', 'go past a step by name; it stands as a deviation')
    .argument('<job>')
    .argument('<step>', 'the step, or the thing')
    .requiredOption('--reason <text>', 'why')
    .requiredOption('--limits <text>', 'what limits the risk')
    .action((wanted: string, said: string, o: By & { reason: string; limits: string }) =>
      sayOn(o, wanted, 'used-anyway', () => ({
        ...stepAndThing(said),
        reason: o.reason,
        limits: o.limits,
      })),
    );
  const note = byName('note', 'a remark')
    .argument('<job>')
    .requiredOption('--text <text>', 'the remark')
    .action((wanted: string, o: By & { text: string }) =>
      sayOn(o, wanted, 'note', () => ({ text: o.text })),
    );
  return [couldNot, found, decide, anyway, correctCommand(), note, amendCommand(), lookedCommand()];
}

function correctCommand(): Command {
  return byName('correct', 'take back an act, as if it had not been said')
    .argument('<job>')
    .argument('<act>', 'hash of the act, or its beginning')
    .requiredOption('--why <text>', 'what was wrong')
    .action((wanted: string, said: string, o: By & { why: string }) =>
      sayOn(o, wanted, 'corrected', async (_job, _packs, session) => {
        const hashes = (await session.look()).acts.map((a) => a.hash);
        return { of: oneOf(hashes, said, 'act'), why: o.why };
      }),
    );
}

function amendCommand(): Command {
  return byName('amend', 'put the next pack of the job in force')
    .argument('<job>')
    .requiredOption('--pack <file>', 'the pack, planned from the machine as it now stands')
    .requiredOption('--why <text>', 'what changed')
    .action((wanted: string, o: By & { pack: string; why: string }) =>
      sayOn(o, wanted, 'pack-amended', async (job, _packs, session) => {
        const pack = readPack(o.pack);
        await session.archive.addPack(pack);
        return { from: job.packInForce ?? '', to: pack.id, why: o.why };
      }),
    );
}
