// The commands of `job` for a machine that nobody has written down: strip, took-off, shut, draft.

import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Command } from 'commander';
import { openSqlite } from '../archive/sqlite.ts';
import { draftPlant } from '../record/draft.ts';
import { handOver } from '../record/hand-over.ts';
import { stripProposal } from '../record/proposal.ts';
import { newThing, slugged } from '../record/strip.ts';
import type { ActBody, Draft, JobState, Json } from '../record/types.ts';
import {
  type By,
  byName,
  collect,
  draftOf,
  onArchive,
  oneOf,
  onJob,
  recorded,
  sayOn,
} from './job-common.ts';
import { sayOf } from './job-found-words.ts';
import {
  BadInput,
  type Common,
  isRefusal,
  No,
  now,
  refused,
  run,
  type Session,
  sessionOn,
  type Told,
} from './job-session.ts';
import { stageWords } from './job-words.ts';

type Strip = By & {
  readonly vessel: string;
  readonly machine: string;
  readonly side?: string;
  readonly component: string;
  readonly does?: string;
  readonly why: string;
} & { readonly [hands in 'hands' | 'handsAboard']?: string };

export function stripCommands(): readonly Command[] {
  const strip = byName('strip', 'begin a job without a pack, on a machine nobody has written down')
    .requiredOption('--vessel <name>', 'the vessel or station')
    .requiredOption('--machine <name>', 'the machine, in words')
    .option('--side <name>', 'port, starboard …')
    .requiredOption('--component <name>', 'what the job is about')
    .option('--does <what>', 'renew-in-place, exchange, overhaul, or in words')
    .option('--why <text>', 'why the job is done', '')
    .option('--hands <names>', 'who is on the job, with commas between')
    .option('--hands-aboard <n>', '1, 2, 3 or more who could look a second time')
    .action((o: Strip) => run(o, () => begin(o)));
  return [
    strip,
    tookOff(),
    shut(),
    drain(),
    putIn(),
    putBack(),
    boxUp(),
    draft(),
    handOverCommand(),
  ];
}

async function begin(o: Strip): Promise<Told> {
  const fresh = statSync(o.archive, { throwIfNoEntry: false }) === undefined;
  const archive = openSqlite({ file: o.archive, ...(fresh ? { vessel: slugged(o.vessel) } : {}) });
  try {
    const session = sessionOn(archive);
    const { state } = await session.look();
    const id = freeId(Object.keys(state.jobs), o, archive.device);
    const body: ActBody = {
      vessel: o.vessel,
      machine: o.machine,
      component: o.component,
      why: o.why,
      hands: o.hands === undefined ? [o.by] : o.hands.split(',').map((name) => name.trim()),
      ...given({ side: o.side, does: o.does, handsAboard: o.handsAboard }),
    };
    const said: Draft = { stream: { kind: 'job', id }, kind: 'strip-started', by: o.by, body };
    const answer = await session.record(said);
    if (isRefusal(answer)) return refused(answer);
    const job = (await session.look()).state.jobs[id];
    const title = job?.title ?? id;
    const lines = [`${title}: ${job === undefined ? '' : stageWords(job)}`, `JOB is ${id}`];
    return { exit: 0, json: { job: id, title, acts: [answer] }, lines };
  } finally {
    await archive.close();
  }
}

function freeId(used: readonly string[], o: Strip, device: string): string {
  const words = [o.component, o.machine, o.side ?? ''].join(' ');
  const base = `${slugged(words)}-${now().utc.slice(0, 10)}-${device.slice(-4)}`;
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!used.includes(id)) return id;
  }
}

/** What was said; what was not stays out of the act. */
const given = (all: Readonly<Record<string, Json | undefined>>): Record<string, Json> =>
  Object.fromEntries(Object.entries(all).flatMap(([k, v]) => (v === undefined ? [] : [[k, v]])));

function whole(option: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() === '' || !Number.isInteger(value) || value < 0)
    throw new BadInput(`${option} is "${text}" (expected a whole number)`);
  return value;
}

/** The mark of this device keeps two phones from calling two things by one name. */
const named = (
  job: JobState,
  session: Session,
  sort: Parameters<typeof newThing>[1],
  what: string,
) => newThing(job, sort, what, session.archive.device.slice(-4));

type TookOff = By & {
  readonly wet: string;
  readonly fasteners?: readonly string[];
  readonly seals?: string;
  readonly sealsLeft?: string;
  readonly sealKind?: string;
  readonly medium?: string;
  readonly bag?: string;
  readonly photo?: string;
  readonly loosened?: boolean;
};

function tookOff(): Command {
  return byName('took-off', 'a thing came off: it stands on the open list until it is back')
    .argument('<job>')
    .argument('<what>', 'in words')
    .requiredOption('--wet <answer>', 'does it hold liquid? yes, no, or "do not know"')
    .option('--fasteners <count kind>', 'such as "6 bolt" (may be repeated)', collect)
    .option('--seals <n>', 'how many old seals came out')
    .option('--seals-left <n>', 'how many old seals are still in there')
    .option('--seal-kind <kind>', 'gasket, ring, shaft seal, sealing washer')
    .option('--medium <name>', 'which liquid, where it is known')
    .option('--bag <n>', 'number of the bag the fasteners are in')
    .option('--photo <hash>', 'hash of a picture')
    .option('--loosened', 'only loosened: it stays where it is')
    .action((wanted: string, what: string, o: TookOff) =>
      sayOn(o, wanted, 'took-off', (job, _packs, session) => ({
        thing: named(job, session, o.loosened === true ? 'joint' : 'part', what),
        what,
        wet: o.wet,
        ...given({
          fasteners: o.fasteners?.map(fastenersIn),
          seals: whole('--seals', o.seals),
          sealsLeft: whole('--seals-left', o.sealsLeft),
          sealKind: o.sealKind,
          medium: o.medium,
          bag: whole('--bag', o.bag),
          photo: o.photo,
        }),
      })),
    );
}

function fastenersIn(said: string): Json {
  const found = /^\s*(\d+)\s+(\S.*?)\s*$/.exec(said);
  if (found === null) throw new BadInput(`--fasteners is "${said}" (expected such as "6 bolt")`);
  return { count: Number(found[1]), what: found[2] ?? '' };
}

type Shut = By & {
  readonly kind: string;
  readonly found: string;
  readonly position?: string;
  readonly turns?: string;
  readonly medium?: string;
  readonly where?: string;
  readonly photo?: string;
  readonly tag?: string;
};

function shut(): Command {
  return byName('shut', 'a closure shut or a plug pulled, with how it was found')
    .argument('<job>')
    .argument('<what>', 'in words')
    .requiredOption('--kind <kind>', 'valve, sea valve, non-return valve, breaker, switch, plug')
    .requiredOption('--found <words>', 'the position it was found in')
    .option('--position <words>', 'the position it is brought to', 'shut')
    .option('--turns <n>', 'how many turns')
    .option('--medium <name>', 'what runs in its line')
    .option('--where <words>', 'where it is')
    .option('--photo <hash>', 'hash of a picture')
    .option('--tag <n>', 'hang this tag on it as well')
    .action((wanted: string, what: string, o: Shut) =>
      onJob(o, wanted, async (job, _packs, session) => {
        const thing = named(job, session, 'closure', what);
        const body = {
          thing,
          what,
          kind: o.kind,
          found: o.found,
          ...given({
            position: o.position,
            turns: whole('--turns', o.turns),
            medium: o.medium,
            where: o.where,
            photo: o.photo,
          }),
        };
        const tag = whole('--tag', o.tag);
        const hung = { thing: `tag/${tag}`, closure: thing.slice('closure/'.length) };
        const drafts = [
          draftOf(job, 'shut-or-unplugged', o.by, body),
          ...(tag === undefined ? [] : [draftOf(job, 'tagged', o.by, hung)]),
        ];
        return await recordAll(drafts, job.id, session);
      }),
    );
}

async function recordAll(drafts: readonly Draft[], id: string, session: Session): Promise<Told> {
  const acts = [];
  for (const one of drafts) {
    const answer = await session.record(one);
    if (isRefusal(answer)) return { ...refused(answer), json: { refusal: answer, acts } };
    acts.push(answer);
  }
  return await recorded(acts, id, session);
}

type Drain = By & {
  readonly sawRun?: boolean;
  readonly diedAway?: boolean;
  readonly where?: string;
};

/** Said again for a drain that is open already, it tells only what was seen there. */
function drain(): Command {
  return byName('drain', 'a drain opened; with --saw-run and --died-away, the flow seen dead at it')
    .argument('<job>')
    .argument('<what>', 'in words')
    .option('--saw-run', 'flow was seen to run')
    .option('--no-saw-run', 'nothing came: that is no proof')
    .option('--died-away', 'it died away and stayed dead')
    .option('--no-died-away', 'it went on running')
    .option('--where <words>', 'where it is')
    .action((wanted: string, what: string, o: Drain) =>
      onJob(o, wanted, async (job, _packs, session) => {
        if ((o.sawRun === undefined) !== (o.diedAway === undefined))
          throw new BadInput('--saw-run and --died-away go together, each with or without "no-"');
        const open = job.strip?.seen.find(
          (s) =>
            s.did === 'opened' &&
            (s.what === what || s.thing === what) &&
            job.entries.some((e) => e.thing === s.thing && e.open),
        );
        const thing = open?.thing ?? named(job, session, 'drain', what);
        const opened = { thing, what, ...given({ where: o.where }) };
        const drafts = [
          ...(open === undefined ? [draftOf(job, 'drain-opened', o.by, opened)] : []),
          ...(o.sawRun === undefined || o.diedAway === undefined
            ? []
            : [
                draftOf(job, 'proved-dead', o.by, {
                  thing,
                  sawRun: o.sawRun,
                  diedAway: o.diedAway,
                }),
              ]),
        ];
        if (drafts.length === 0) throw new BadInput(`${what} is open: say what was seen there`);
        return await recordAll(drafts, job.id, session);
      }),
    );
}

type PutIn = By & { readonly kind: string; readonly where?: string; readonly photo?: string };

function putIn(): Command {
  return byName('put-in', 'a temporary thing put in, to be taken away again')
    .argument('<job>')
    .argument('<what>', 'in words')
    .requiredOption('--kind <kind>', 'blank, tie, rag, lock')
    .option('--where <words>', 'where it is')
    .option('--photo <hash>', 'hash of a picture')
    .action((wanted: string, what: string, o: PutIn) =>
      sayOn(o, wanted, 'put-in', (job, _packs, session) => ({
        thing: named(job, session, 'temp', what),
        what,
        kind: o.kind,
        ...given({ where: o.where, photo: o.photo }),
      })),
    );
}

type PutBack = By & {
  readonly count?: string;
  readonly position?: string;
  readonly result?: string;
  readonly upTo?: string;
};

function putBack(): Command {
  return byName('put-back', 'make good what is open, by the act that the box-up list names')
    .argument('<job>')
    .argument('<thing>', 'a thing of the open list, or a part of its name that fits no other')
    .option('--count <n>', 'how many were counted')
    .option('--position <words>', 'position a closure was brought to, if not as it was found')
    .option('--result <words>', 'of a proof: pass, fail, cannot tell, passed up to')
    .option('--up-to <words>', 'with "passed up to": how far')
    .action((wanted: string, said: string, o: PutBack) =>
      onJob(o, wanted, async (job, _packs, session) => {
        const rows = stripProposal((await session.look()).state, job.id);
        const thing = oneOf(
          rows.map((r) => r.thing),
          said,
          'thing',
        );
        const row = rows.find((r) => r.thing === thing);
        if (row === undefined) throw new BadInput(`"${said}" is not open`);
        if (!sayOf(row).startsWith('put-back')) throw new BadInput(`say: ${sayOf(row)}`);
        const count = whole('--count', o.count);
        const counts = row.asks.some((a) => a.kind === 'count');
        if (counts && count === undefined)
          throw new BadInput(`${row.text} Give --count (expected ${row.count?.n})`);
        if (row.kind === 'proof' && o.result === undefined)
          throw new BadInput(`${row.text} Give --result: pass, fail, cannot tell, passed up to`);
        const answers = given({ count, position: o.position, result: o.result, upTo: o.upTo });
        const act = draftOf(job, row.kind, o.by, { ...row.body, ...answers });
        return await recordAll([act], job.id, session);
      }),
    );
}

function boxUp(): Command {
  return onArchive('box-up', 'what to make good, as the reverse of what was seen')
    .argument('<job>')
    .action((wanted: string, o: Common) =>
      onJob(o, wanted, async (job, _packs, session) => {
        const rows = stripProposal((await session.look()).state, job.id);
        const lines = rows.flatMap((r) => [
          `${r.ready ? '' : '(waits) '}${r.text}`,
          ...r.cautions.map((c) => `    CAUTION ${c.sign}: ${c.text} Verify: ${c.verify}.`),
          `    say: ${sayOf(r)}`,
        ]);
        const head = `${job.title}: ${stageWords(job)}`;
        return { exit: 0, json: { job: job.id, boxUp: rows }, lines: [head, ...lines] };
      }),
    );
}

function draft(): Command {
  return onArchive('draft', 'write what was seen as a draft plant file')
    .argument('<job>')
    .requiredOption('--out <folder>', 'a folder to write the files to; nothing is written over')
    .action((wanted: string, o: Common & { out: string }) =>
      onJob(o, wanted, async (job, _packs, session) => {
        const files = draftPlant((await session.look()).state, job.id);
        if (files.length === 0) throw new No(`${job.title} has a pack: its plant file is there`);
        const there = files.filter((f) => existsSync(join(o.out, f.file)));
        if (there.length > 0)
          throw new BadInput(`${o.out} holds ${there.map((f) => f.file).join(', ')} already`);
        mkdirSync(o.out, { recursive: true });
        for (const f of files) writeFileSync(join(o.out, f.file), f.text, { flag: 'wx' });
        const lines = [
          ...files.map((f) => join(o.out, f.file)),
          'Every field says seen once or assumed, by whom and when: look it through.',
          `Then: boxup check ${o.out}`,
          `      boxup pack --plant ${o.out} --machine ${job.machine} --target ${job.target}`,
        ];
        return { exit: 0, json: { job: job.id, files: files.map((f) => f.file) }, lines };
      }),
    );
}

function handOverCommand(): Command {
  return onArchive('hand-over', 'what the next watch must know of a job; with --to, hand it over')
    .argument('<job>')
    .option('--to <name>', 'who takes it')
    .option('--by <name>', 'with --to: who hands it over')
    .action((wanted: string, o: Common & { to?: string; by?: string }) =>
      onJob(o, wanted, async (job, packs, session) => {
        if ((o.to === undefined) !== (o.by === undefined))
          throw new BadInput('--to and --by go together');
        if (o.to !== undefined && o.by !== undefined) {
          const answer = await session.record(draftOf(job, 'handed-over', o.by, { to: o.to }));
          if (isRefusal(answer)) return refused(answer);
        }
        const pack = packs.find((p) => p.id === job.packInForce) ?? null;
        const told = handOver((await session.look()).state, job.id, pack);
        return { exit: 0, json: { job: job.id, handOver: told }, lines: told.lines };
      }),
    );
}
