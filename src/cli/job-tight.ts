// The commands of `job` for a joint that is tight, a bolt that says no, and files of results.

import { readFileSync } from 'node:fs';
import type { Command } from 'commander';
import { takeResults } from '../exchange/tightening-acts.ts';
import { limits } from '../limits.ts';
import type { JointFacts, Pack } from '../pack/types.ts';
import { sha256Hex } from '../quantity/sha.ts';
import { BOLT_FINDINGS, boltFound, type JointTight, jointsTight } from '../record/bolts.ts';
import type { JobState } from '../record/types.ts';
import { type By, byName, onArchive, oneOf, onJob, recorded, sayOn } from './job-common.ts';
import { BadInput, type Common, packOf, refused, type Told } from './job-session.ts';

export const tightCommands = (): readonly Command[] => [
  tightCommand(),
  checkCommand(),
  retightenCommand(),
  boltCommand(),
  resultsCommand(),
];

/** `Suction flange: not tight (holes 2 4 not tight)`. */
export const tightLine = ({ name, word, holes }: JointTight): string => {
  const others = holes.filter((h) => h.word !== 'tight' && h.hole !== 'all');
  const mixed = others.length > 0 && others.length < holes.length;
  const list = others.map((h) => `hole ${h.hole} ${h.word}`);
  return `${name}: ${word}${mixed ? ` (${list.join(', ')})` : ''}`;
};

function tightCommand(): Command {
  return onArchive('tight', 'how tight each joint is, and what may be done to one that is tight')
    .argument('<job>')
    .action((wanted: string, options: Common) =>
      onJob(options, wanted, (job, packs) => Promise.resolve(tightTold(job, packs))),
    );
}

function tightTold(job: JobState, packs: readonly Pack[]): Told {
  const pack = job.strip === null ? packOf(job, packs) : null;
  const joints = jointsTight(job, packs);
  const offered = Object.entries(pack?.facts.joints ?? {}).filter(
    ([id]) => !job.entries.some((e) => e.open && e.thing === `joint/${id}`),
  );
  return {
    exit: 0,
    json: {
      job: job.id,
      joints,
      offered: Object.fromEntries(offered.map(([id, j]) => [`joint/${id}`, j.recheck ?? null])),
    },
    lines: [
      ...(joints.length === 0 ? ['No joint was undone.'] : joints.map(tightLine)),
      ...offered.flatMap(([id, joint]) => offerLines(id, joint)),
    ],
  };
}

function offerLines(id: string, joint: JointFacts): readonly string[] {
  const { check = [], retighten } = joint.recheck ?? {};
  return [
    `joint/${id}: ${joint.name}`,
    ...check.map(({ what, holes, value, why }) =>
      value === null
        ? `    no check of ${what}: ${why.join('; ')}`
        : `    check of ${what}, holes ${holes.join(' ')}: back off, re-tighten to ${value.shown}`,
    ),
    retighten?.value == null
      ? `    no re-tightening: ${retighten?.why.join('; ') ?? 'this pack says nothing of it'}`
      : `    re-tighten once round to ${retighten.value.shown}, ` +
        `nothing backed off: ${retighten.when}`,
  ];
}

const jointThing = (said: string): string => (said.startsWith('joint/') ? said : `joint/${said}`);

const factsOf = (job: JobState, packs: readonly Pack[], thing: string): JointFacts | undefined =>
  packOf(job, packs).facts.joints[thing.slice('joint/'.length)];

function checkCommand(): Command {
  return byName('check-tight', 'a nut that was tight was backed off and re-tightened to its value')
    .argument('<job>')
    .argument('<joint>', 'joint/…')
    .requiredOption('--holes <labels>', 'which nuts, with commas between')
    .option('--value <figure>', 'as issued; left out: the value in force by the pack')
    .action((wanted: string, joint: string, o: By & { holes: string; value?: string }) =>
      sayOn(o, wanted, 'checked-tight', (job, packs) => {
        const thing = jointThing(joint);
        const holes = o.holes.split(',').map((hole) => hole.trim());
        const rules = factsOf(job, packs, thing)?.recheck?.check ?? [];
        const own = rules.find((rule) => rule.holes.includes(holes[0] ?? ''));
        const value = o.value ?? own?.value?.shown ?? '';
        return { thing, holes, value, text: 're-tightened' };
      }),
    );
}

type Retighten = By & {
  readonly cold?: boolean;
  readonly noPressure?: boolean;
  readonly startIsolated?: boolean;
  readonly value?: string;
};

function retightenCommand(): Command {
  return byName('re-tighten', 'a relaxed soft gasket re-tightened once round, nothing backed off')
    .argument('<job>')
    .argument('<joint>', 'joint/…, one with a value issued for it')
    .option('--cold', 'it is cold')
    .option('--no-pressure', 'no pressure is in it')
    .option('--start-isolated', 'nobody can start it')
    .option('--value <figure>', 'as issued; left out: the value in force by the pack')
    .action((wanted: string, joint: string, o: Retighten & { pressure?: boolean }) =>
      sayOn(o, wanted, 're-tightened', (job, packs) => {
        const thing = jointThing(joint);
        const own = factsOf(job, packs, thing)?.recheck?.retighten.value?.shown ?? '';
        const yes = (said: boolean): string => (said ? 'yes' : 'no');
        return {
          thing,
          value: o.value ?? own,
          cold: yes(o.cold === true),
          // `--no-pressure` is read as pressure: no.
          noPressure: yes(o.pressure === false),
          startIsolated: yes(o.startIsolated === true),
        };
      }),
    );
}

function boltCommand(): Command {
  return byName('bolt', 'a bolt says no: one word, and it is a finding')
    .argument('<job>')
    .argument('<joint>', 'joint/…')
    .argument('<what>', `one of: ${BOLT_FINDINGS.join(', ')}; or a part of it`)
    .option('--hole <label>', 'which one')
    .action((wanted: string, joint: string, what: string, o: By & { hole?: string }) =>
      sayOn(o, wanted, 'found', (job) => {
        const known = BOLT_FINDINGS.map((each) => each.toLowerCase());
        const said = oneOf(known, what.toLowerCase().replaceAll('’', "'"), 'finding');
        const found = BOLT_FINDINGS.find((each) => each.toLowerCase() === said);
        if (found === undefined) throw new BadInput(`"${what}" is no such finding`);
        return boltFound(job.id, o.by, jointThing(joint), found, o.hole).body;
      }),
    );
}

function resultsCommand(): Command {
  return byName('tightening-results', 'take in a file of results of a tool, all of it or nothing')
    .argument('<job>')
    .argument('<file>', 'JSON: one result, or a list of them, one bolt each')
    .action((wanted: string, file: string, o: By) =>
      onJob(o, wanted, async (job, packs, session) => {
        const { bytes, raw } = readJson(file);
        const taken = takeResults(job, packOf(job, packs), { hash: sha256Hex(bytes), raw }, o.by);
        if (!taken.ok) {
          const lines = taken.problems.map(
            ({ path, why, got, expected }) =>
              `${file} ${path}: ${why} (got ${JSON.stringify(got)}, expected ${expected})`,
          );
          const said = `Nothing was recorded of ${file}:`;
          return { exit: 2, json: { problems: taken.problems }, lines: [said, ...lines] };
        }
        const answer = await session.recordAll(taken.drafts);
        return 'stop' in answer ? refused(answer) : recorded(answer, job.id, session);
      }),
    );
}

function readJson(file: string): { readonly bytes: Uint8Array; readonly raw: unknown } {
  try {
    const bytes = readFileSync(file);
    if (bytes.length > limits.server.jsonBytes)
      throw new BadInput(`${bytes.length} bytes are more than ${limits.server.jsonBytes}`);
    return { bytes, raw: JSON.parse(bytes.toString('utf8')) as unknown };
  } catch (error) {
    throw new BadInput(`${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
}
