// The printed record: who, when, what was said in order, what stands open, and the hashes.

import { openWords } from '../drawing/tally.ts';
import type { Pack } from '../pack/types.ts';
import { jointsTight } from '../record/bolts.ts';
import { paperWords } from '../record/from-paper.ts';
import { kindOf } from '../record/kinds.ts';
import { order } from '../record/order.ts';
import { lookLines } from '../record/second-look.ts';
import { after, before } from '../record/things.ts';
import type { Act, DeviceTime, JobState, State } from '../record/types.ts';
import { barePack } from './bare-pack.ts';
import { breakable, titleBlock } from './block.ts';
import { foundParts } from './record-found.ts';
import { setPdf } from './typst.ts';

export type RecordToPrint = {
  /** The job's id. */
  readonly job: string;
  readonly state: State;
  readonly packs: readonly Pack[];
  readonly acts: readonly Act[];
};

export const recordPdf = (record: RecordToPrint): Uint8Array =>
  setPdf('record', recordView(record));

type Part = {
  readonly title: string;
  readonly words: string | null;
  readonly head: readonly string[];
  readonly widths: readonly number[];
  readonly rows: readonly (readonly string[])[];
};

export const recordView = (record: RecordToPrint) => {
  const { state, acts } = record;
  const job = state.jobs[record.job];
  if (job === undefined) throw new Error(`no job ${record.job} in the state`);
  const pack = packOf(record, job);
  const own = order(acts).acts.filter(
    (act) => act.stream.kind === 'job' && act.stream.id === record.job,
  );
  return {
    block: {
      ...titleBlock(pack, 'record', job.title),
      id: (job.closed?.act ?? state.heads[0] ?? job.id).slice(0, 12),
    },
    title: job.title,
    standing: standingOf(job),
    head: headOf(job, pack, own),
    parts: [
      ...stillOpen(job, pack),
      ...judged(job),
      ...foundParts(job, (thing) => thingWords(thing, pack)).map((p) =>
        part(p.title, p.columns, p.rows, p.words),
      ),
      tightness(job, record.packs),
      ...readingsOf(job, pack),
      actsOf(own, pack),
      ...unknownOf(state, acts),
    ],
    hashes: hashesOf(record, job, pack),
  };
};

const packOf = ({ packs, state }: RecordToPrint, job: JobState): Pack => {
  if (job.strip !== null) return barePack(job, state.vessel);
  const wanted = job.packInForce ?? job.packs.at(-1);
  const pack = packs.find(({ id }) => id === wanted);
  if (pack === undefined) throw new Error(`no pack for the job ${job.title}`);
  return pack;
};

/** No status word: open with its stage and count, or closed, with deviations by name. */
export const standingOf = (job: JobState): string => {
  if (job.closed === null) return `${job.stage} · ${job.openCount} open: not closed`;
  const count = job.closed.deviations;
  if (count === 0) return 'closed';
  const names = [...new Set(job.deviations.map(({ by }) => by))].join(', ');
  return `closed with ${count} ${count === 1 ? 'deviation' : 'deviations'} (${names})`;
};

/** The device's own clock and its offset from UTC, as it was: shown, not trusted. */
export const timeWords = ({ utc, offsetMinutes }: DeviceTime): string => {
  const local = new Date(Date.parse(utc) + offsetMinutes * 60_000).toISOString();
  const sign = offsetMinutes < 0 ? '-' : '+';
  const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
  const offset = `${sign}${two(Math.abs(offsetMinutes) / 60)}:${two(Math.abs(offsetMinutes) % 60)}`;
  return `${local.slice(0, 10)} ${local.slice(11, 16)} ${offset}`;
};

const headOf = (job: JobState, pack: Pack, own: readonly Act[]) =>
  [
    ['Machine', pack.machine.name],
    ['Done', `${pack.target.name}: ${pack.target.doing}`],
    ['Begun', `${job.startedBy}, ${timeWords(job.startedAt)}`],
    ['Closed', job.closed === null ? 'no' : `${job.closed.by}, ${timeWords(job.closed.at)}`],
    ['Hands', [...new Set(own.map((act) => act.by))].join(', ')],
    ['Verdict', job.verdict ?? 'none given'],
    ['Isolation', isolationWords(job, pack, own)],
    ...(job.looks.length === 0 ? [] : [['Second looks', lookLines(job).join('; ')]]),
    ['Times', 'as each device showed them; not trusted. The order is by cause.'],
  ].map(([label, words]) => ({ label, words }));

/** While open: as it stands. Once closed it is lifted, so the sheet says who saw it proved. */
const isolationWords = (job: JobState, pack: Pack, own: readonly Act[]): string => {
  if (job.closed === null)
    return job.isolation.proved ? 'proved' : `not proved: ${job.isolation.why}`;
  const seen = own
    .filter((act) => act.kind === 'proved-dead')
    .map((act) => `${thingWords(String(act.body.thing), pack)}, ${act.by}, ${timeWords(act.at)}`);
  return seen.length === 0
    ? 'no proof recorded'
    : `lifted; seen to run and die away at ${seen.join('; ')}`;
};

const part = (
  title: string,
  columns: readonly (readonly [string, number])[],
  rows: readonly (readonly string[])[],
  words: string | null = null,
): Part => ({
  title,
  words,
  head: columns.map(([name]) => name),
  widths: columns.map(([, width]) => width),
  rows,
});

const stillOpen = (job: JobState, pack: Pack): readonly Part[] => {
  const open = job.entries.filter((entry) => entry.open);
  return [
    part(
      'Open list',
      [
        ['What', 3],
        ['Where', 1.5],
      ],
      open.map((entry) => [entry.what, entry.place ?? '']),
      `${openWords(job.entries)}; ${job.entries.length - open.length} made good.`,
    ),
    part(
      'Deviations',
      [
        ['What', 1.5],
        ['By', 1],
        ['Reason', 2],
        ['What limits the risk', 2],
      ],
      job.deviations.map((d) => [thingWords(d.thing, pack), d.by, d.reason, d.limits]),
      job.deviations.length === 0 ? 'none' : null,
    ),
  ];
};

const judged = (job: JobState): readonly Part[] => [
  part(
    'Findings',
    [
      ['Kind', 1],
      ['What', 2.6],
      ['Decided', 2],
    ],
    job.findings.map((f) => [
      f.kind,
      f.what,
      f.decision === null
        ? f.needsDecision
          ? 'NOT DECIDED'
          : ''
        : `${f.decision.by}: ${f.decision.what}; owner ${f.decision.owner}`,
    ]),
    job.findings.length === 0 ? 'none' : null,
  ),
  part(
    'Follow-ups',
    [
      ['After', 0.8],
      ['What', 2.6],
      ['Owner', 1],
      ['Done by', 1],
    ],
    job.followUps.map((f) => [f.after, f.what, f.owner ?? 'NO OWNER', f.doneBy ?? '']),
    job.followUps.length === 0 ? 'none' : null,
  ),
];

/** The words for a bolt and a joint round: tight, not tight, not judged. */
const tightness = (job: JobState, packs: readonly Pack[]): Part => {
  const joints = jointsTight(job, packs);
  const holesAs = (holes: (typeof joints)[number]['holes']): string =>
    (['tight', 'not tight', 'not judged'] as const)
      .map((word) => [word, holes.filter((h) => h.word === word).map((h) => h.hole)] as const)
      .flatMap(([word, own]) => (own.length === 0 ? [] : [`${word}: ${own.join(', ')}`]))
      .join('; ');
  return part(
    'How tight',
    [
      ['Joint', 2],
      ['Word', 1],
      ['Last round', 1.2],
      ['Holes', 2.4],
    ],
    joints.map((j) => [j.name, j.word, j.round ?? 'none', holesAs(j.holes)]),
    joints.length === 0
      ? 'no joint was undone'
      : 'Tight: reported at the last round, which has a value. Not judged: no value, or by feel.',
  );
};

const readingsOf = (job: JobState, pack: Pack): readonly Part[] => [
  part(
    'Readings',
    [
      ['Of', 2],
      ['What', 1.6],
      ['Reading', 1.2],
    ],
    job.readings.map((r) => [thingWords(r.thing, pack), r.name, `${r.value} ${r.unit}`.trim()]),
    job.readings.length === 0 ? 'none taken' : null,
  ),
  part(
    'Items out and in',
    [
      ['Part', 1.5],
      ['Way', 0.6],
      ['Serial', 1.5],
      ['Hours', 1],
    ],
    job.items.map((item) => [
      thingWords(`part/${item.part}`, pack),
      item.way,
      item.serial,
      item.hours === null ? 'not read' : String(item.hours),
    ]),
    job.items.length === 0 ? 'none' : null,
  ),
];

const actsOf = (own: readonly Act[], pack: Pack): Part =>
  part(
    'Acts in order',
    [
      ['Device time', 1.25],
      ['By', 0.8],
      ['What was said', 3],
      ['Device', 0.9],
      ['Hash', 0.85],
    ],
    own.map((act) => [
      timeWords(act.at),
      act.by,
      actWords(act, pack),
      `${act.device.slice(0, 8)} ${act.deviceSeq}`,
      act.hash.slice(0, 8),
    ]),
  );

const SAID_IN_WORDS = ['thing', 'together', 'paper', 'writtenAt', 'enteredBy'];

/** What an act says, in words; an act of an unknown kind is printed as it stands. */
export const actWords = (act: Act, pack: Pack): string => {
  const row = kindOf(act.kind);
  const thing = typeof act.body.thing === 'string' ? act.body.thing : null;
  const named = thing === null ? '' : `: ${thingWords(thing, pack)}`;
  const rest = Object.entries(act.body)
    .filter(([key]) => !SAID_IN_WORDS.includes(key))
    .map(([key, value]) => `${key} ${typeof value === 'string' ? value : JSON.stringify(value)}`)
    .map((words) => words.replaceAll(/\b([0-9a-f]{8})[0-9a-f]{24,}\b/g, '$1…'))
    .map((words) => (words.length > 160 ? `${words.slice(0, 159)}…` : words));
  const afterwards = act.body.together === true ? ['entered together, afterwards'] : [];
  const paper = paperWords(act.body);
  const more = [...rest, ...afterwards, ...(paper === null ? [] : [paper])];
  const says = row === null ? `UNKNOWN KIND ${act.kind}` : row.says;
  return breakable(`${says}${named}${more.length === 0 ? '' : ` (${more.join('; ')})`}`);
};

const thingWords = (thing: string, { facts, lists }: Pack): string => {
  const id = after(thing);
  switch (before(thing)) {
    case 'joint':
      return facts.joints[id]?.name ?? id;
    case 'part':
      return facts.parts[id]?.name ?? id;
    case 'item':
      return facts.items[id]?.name ?? facts.parts[id]?.name ?? facts.asFound?.name ?? id;
    case 'closure':
      return facts.closures[id]?.name ?? id;
    case 'temp':
      return facts.temps[id]?.name ?? id;
    case 'check':
      return facts.checks[id]?.name ?? id;
    case 'setting':
      return facts.settings[id]?.name ?? id;
    case 'proof':
      return facts.proofs[id]?.name ?? id;
    case 'tag':
      return `tag ${id}`;
    default:
      return lists.seals.find((row) => row.thing === thing)?.name ?? thing;
  }
};

const unknownOf = (state: State, acts: readonly Act[]): readonly Part[] => {
  const kind = (hash: string): string => acts.find((act) => act.hash === hash)?.kind ?? 'not held';
  const rows = [
    ...state.unknown.map((hash) => ['kept, kind unknown', kind(hash), hash.slice(0, 12)]),
    ...state.waiting.map((hash) => ['waiting for an act before it', kind(hash), hash.slice(0, 12)]),
  ];
  if (rows.length === 0) return [];
  return [
    part(
      'Acts not counted',
      [
        ['Why', 1.6],
        ['Kind', 1],
        ['Hash', 1.4],
      ],
      rows,
    ),
  ];
};

const hashesOf = ({ state, acts }: RecordToPrint, job: JobState, pack: Pack) => {
  const last = new Map<string, number>();
  for (const act of acts) last.set(act.device, Math.max(last.get(act.device) ?? 0, act.deviceSeq));
  return [
    ...(job.closed === null ? [] : [{ label: 'Closing act', words: job.closed.act }]),
    ...state.heads.map((head, i) => ({
      label: state.heads.length === 1 ? 'Head of the record' : `Head ${i + 1} of the record`,
      words: head,
    })),
    { label: 'Pack', words: pack.id },
    {
      label: 'Last number of each device',
      words: [...last]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([device, seq]) => `${device} ${seq}`)
        .join(', '),
    },
  ];
};
