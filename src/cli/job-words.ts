// A job in sentences: its ready steps with their cautions, its open list, its findings.

import type { Pack, Step } from '../pack/types.ts';
import { paperWords } from '../record/from-paper.ts';
import type { Act, Entry, JobState } from '../record/types.ts';
import { stepInForce } from '../record/values-used.ts';
import { besideLines, foundLines } from './job-found-words.ts';
import { supersededLines } from './job-value-words.ts';

/** `Work · 14 open`, `closed`, `closed with 1 deviation (Ada)`: a job has no status word. */
export function stageWords(job: JobState): string {
  if (job.closed === null) return `${job.stage} · ${job.openCount} open`;
  const { deviations: n, by } = job.closed;
  return n === 0 ? 'closed' : `closed with ${n} deviation${n === 1 ? '' : 's'} (${by})`;
}

export function stepLines(step: Step): readonly string[] {
  const more = [
    ['where', step.place],
    ['tool', step.tool],
    ['why', step.reason],
    ['hands', step.hands > 1 ? String(step.hands) : null],
    ...step.values.map((v) => [v.name, `${v.shown ?? 'not stated'} (${v.origin})`] as const),
    ...step.asks.map((a) => [`asks ${a.name}`, askWords(a)] as const),
  ] as const;
  return [
    step.text,
    ...step.cautions.map((c) => `    CAUTION ${c.sign}: ${c.text} Verify: ${c.verify}.`),
    ...more.filter(([, value]) => value !== null).map(([name, value]) => `    ${name}: ${value}`),
    step.verb === 'second-look'
      ? `    say: second-look JOB ${step.thing.replace('look/', '')}`
      : `    say: do JOB "${step.id}"`,
  ];
}

export function askWords(ask: Step['asks'][number]): string {
  const choices = ask.choices === undefined ? '' : `: ${ask.choices.join(', ')}`;
  const unit = ask.unit === undefined ? '' : ` in ${ask.unit}`;
  const expected = ask.expected === undefined ? '' : `, expected ${ask.expected}`;
  const optional = ask.optional === true ? ' (may be left out)' : '';
  return `${ask.label}${unit}${choices}${expected}${optional}`;
}

const entryLine = (e: Entry): string =>
  `  - ${e.thing}: ${e.what}${e.place === null ? '' : ` (${e.place})`}${tallyWords(e)}`;

function tallyWords(e: Entry): string {
  const rounds = Object.entries(e.tally ?? {}).filter(([, holes]) => holes.length > 0);
  if (rounds.length === 0) return '';
  const said = rounds.map(([round, holes]) =>
    holes[0] === 'all' ? `${round}: all` : `${round}: holes ${holes.join(' ')}`,
  );
  return ` [${said.join('; ')}]`;
}

export function openLines(job: JobState): readonly string[] {
  const open = job.entries.filter((e) => e.open);
  const undecided = job.findings.filter((f) => f.needsDecision && f.decision === null);
  return [
    `${job.title}: ${stageWords(job)}`,
    ...open.map(entryLine),
    ...foundLines(job),
    ...supersededLines(job),
    ...(undecided.length === 0 ? [] : ['Findings that want a decision:']),
    ...undecided.map((f) => `  - "${f.id}": ${f.what}`),
    ...(job.packInForce === null && job.strip === null
      ? ['Which pack is in force is not decided.']
      : []),
  ];
}

export function nextLines(job: JobState, pack: Pack, ready: readonly Step[]): readonly string[] {
  const waits = pack.steps.some((s) => s.stop === 'isolation' && job.done[s.id] === undefined);
  const stop = waits && !job.isolation.proved ? [`Wet joints wait: ${job.isolation.why}.`] : [];
  const [first, ...others] = ready;
  if (first === undefined) {
    const none = job.openCount === 0 ? 'Nothing is left to do.' : 'No step is ready.';
    return [`${job.title}: ${stageWords(job)}`, none, ...stop];
  }
  return [
    `${job.title}: ${stageWords(job)}`,
    ...stepLines(stepInForce(first, job)),
    ...besideLines(job, first),
    ...(others.length === 0 ? [] : ['Also ready:']),
    ...others.flatMap((s) => stepLines(stepInForce(s, job))).map((line) => `  ${line}`),
    ...supersededLines(job),
    ...stop,
  ];
}

export const actLine = (act: Act): string => {
  const thing = act.body.thing === undefined ? '' : ` ${String(act.body.thing)}`;
  const round = act.body.round === undefined ? '' : ` ${String(act.body.round)}`;
  const paper = paperWords(act.body);
  const from = paper === null ? '' : `, ${paper}`;
  return `${act.at.utc} ${act.kind}${thing}${round} by ${act.by}${from} (${act.hash.slice(0, 12)})`;
};
