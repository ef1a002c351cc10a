// Where values are used: packs and jobs that hold one, what changed since, what is to be told.

import type { Pack, ShownValue, Step } from '../pack/types.ts';
import { shareOf } from '../pack/values.ts';
import type { IssuedValue, Plant } from '../plant/types.ts';
import { byIssue, issuedText } from '../values/issue.ts';
import { newestRow, replacedIn, unlooked, valuesAt } from './superseded.ts';
import type { Draft, IssuedRow, JobState, State, Superseded } from './types.ts';

/** Open jobs with a value that was superseded and that nobody has looked at. */
export const holdingSuperseded = (state: State): readonly JobState[] =>
  Object.values(state.jobs).filter((job) => job.closed === null && unlooked(job).length > 0);

/** Closed jobs that made a joint by a value which was superseded since, without a look before. */
export const usedSuperseded = (state: State): readonly JobState[] =>
  Object.values(state.jobs).filter(
    (job) => job.closed !== null && job.superseded.some((r) => r.reached !== null),
  );

export type Use = {
  readonly job: string | null;
  readonly title: string;
  readonly pack: string;
  readonly closed: boolean;
  readonly thing: string;
  readonly shown: string;
  readonly issue: string | null;
  /** What replaced it, in the record's eyes; null where it is in force as far as is known. */
  readonly now: string | null;
  readonly nowIssue: string | null;
};

/** Every job, and every pack not yet begun, that holds a value; the open ones first. */
export function whereUsed(state: State, packs: readonly Pack[], id: string): readonly Use[] {
  const jobs = Object.values(state.jobs);
  const begun = new Set(jobs.flatMap((job) => job.packs));
  const uses = (pack: Pack, job: JobState | null): readonly Use[] => {
    const replaced = replacedIn(pack, state.issued);
    return valuesAt(pack)
      .filter(({ value }) => value.id === id)
      .map(({ thing, value }) => {
        const row = replaced.find((r) => r.thing === thing && r.value === id);
        return {
          job: job?.id ?? null,
          title: job?.title ?? pack.title,
          pack: pack.id,
          closed: job !== null && job.closed !== null,
          thing,
          shown: value.shown ?? '',
          issue: value.issue,
          now: row === undefined ? null : (row.is ?? 'withdrawn'),
          nowIssue: row?.issue ?? null,
        };
      });
  };
  const ofJobs = jobs.flatMap((job) =>
    packs.filter((p) => job.packs.includes(p.id)).flatMap((pack) => uses(pack, job)),
  );
  const unbegun = packs.filter((p) => !begun.has(p.id)).flatMap((pack) => uses(pack, null));
  const all = [...ofJobs, ...unbegun];
  return [...all.filter((u) => !u.closed), ...all.filter((u) => u.closed)];
}

export type ChangedSince = {
  readonly job: string;
  readonly title: string;
  readonly closedOn: string;
  readonly changes: readonly {
    readonly id: string;
    readonly name: string;
    readonly was: string | null;
    readonly wasIssue: string | null;
    readonly is: string | null;
    readonly issue: string | null;
    readonly why: string | null;
  }[];
};

/** What this pack says otherwise than the last such job that this person had a hand in. */
export function changedSince(
  state: State,
  packs: readonly Pack[],
  pack: Pack,
  person: string,
): ChangedSince | null {
  const byId = new Map(packs.map((p) => [p.id, p]));
  const last = Object.values(state.jobs)
    .flatMap((job) => {
      const held = byId.get(job.packs.at(-1) ?? '');
      if (job.closed === null || held === undefined || held.id === pack.id) return [];
      return hadAHand(job, person) && sameJob(held, pack) ? [{ job, held, ...job.closed }] : [];
    })
    .toSorted((a, b) => (a.at.utc < b.at.utc ? -1 : 1))
    .at(-1);
  if (last === undefined) return null;
  const before = asInForceBy(last.held, []);
  const now = asInForceBy(pack, state.issued);
  const ids = [...new Set([...now.keys(), ...before.keys()])];
  const changes = ids.flatMap((id) => {
    const [was, is] = [before.get(id), now.get(id)];
    const same = was?.shown === is?.shown && was?.threadCondition === is?.threadCondition;
    if (same) return [];
    return [
      {
        id,
        name: is?.name ?? was?.name ?? id,
        was: withCondition(was),
        wasIssue: was?.issue ?? null,
        is: withCondition(is),
        issue: is?.issue ?? null,
        why: is?.why ?? null,
      },
    ];
  });
  const { id: job, title } = last.job;
  return { job, title, closedOn: last.at.utc.slice(0, 10), changes };
}

const hadAHand = (job: JobState, person: string): boolean =>
  person !== '' && [...job.hands, job.startedBy, job.closed?.by].includes(person);

const sameJob = (a: Pack, b: Pack): boolean =>
  a.target.id === b.target.id &&
  a.target.does === b.target.does &&
  (a.machine.id === b.machine.id ||
    (a.machine.type !== undefined && a.machine.type === b.machine.type));

const withCondition = (value: ShownValue | undefined): string | null => {
  if (value === undefined || value.shown === null) return null;
  return value.threadCondition === null ? value.shown : `${value.shown} (${value.threadCondition})`;
};

/** The values of a pack by id, each as the newest issue known has it. */
function asInForceBy(pack: Pack, issued: readonly IssuedRow[]): ReadonlyMap<string, ShownValue> {
  return new Map(
    valuesAt(pack).map(({ value }) => [value.id, inForce(value, pack.machine.id, issued)]),
  );
}

function inForce(value: ShownValue, machine: string, issued: readonly IssuedRow[]): ShownValue {
  const row = newestRow(issued, machine, value.id);
  const mark = { issue: value.issue ?? '', date: value.date ?? '' };
  return row === null || byIssue(mark, row) >= 0 ? value : replacedBy(value, row);
}

const replacedBy = (value: ShownValue, row: Omit<Superseded, 'machine' | 'id'> | IssuedRow) => ({
  ...value,
  shown: row.is,
  issue: row.issue,
  date: row.date,
  authority: row.authority,
  threadCondition: row.condition,
  was: { issue: value.issue ?? '', value: value.shown ?? '' },
  why: row.why,
  source: {
    kind: 'issued' as const,
    authority: row.authority,
    issue: row.issue,
    date: row.date,
  },
});

/** A step with the values that are in force now, its figure among them; the pack stays as it is. */
export function stepInForce(step: Step, job: Pick<JobState, 'superseded'>): Step {
  const rows = rowsOf(step, job);
  if (rows.length === 0) return step;
  const values = step.values.map((value) => {
    const row = rows.find((r) => r.value === value.id && r.was === value.shown);
    return row === undefined ? value : replacedBy(value, row);
  });
  return { ...step, values, text: textInForce(step.text, step, job, 'NO VALUE STATED') };
}

const rowsOf = (step: Step, job: Pick<JobState, 'superseded'>): readonly Superseded[] =>
  job.superseded.filter(
    (r) => r.thing === step.thing && step.values.some((v) => v.id === r.value && v.shown === r.was),
  );

/** A step's sentence, in any language, with the figures in force where it has others. */
export function textInForce(
  text: string,
  step: Step,
  job: Pick<JobState, 'superseded'>,
  none: string,
): string {
  const share = Number(/^(\d+) %$/.exec(step.round ?? '')?.[1] ?? 100) / 100;
  const figures = new Map<string, string>();
  for (const { was, is } of rowsOf(step, job)) {
    figures.set(was, is ?? none);
    const [before, now] = [shareOf(was, share), is === null ? null : shareOf(is, share)];
    if (before !== null && before !== was) figures.set(before, now ?? none);
  }
  if (figures.size === 0) return text;
  // All at once: a figure put in is never taken for one that was there.
  const any = [...figures.keys()]
    .toSorted((a, b) => b.length - a.length)
    .map((figure) => figure.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
    .join('|');
  const whole = new RegExp(`(?<![\\d.,])(?:${any})(?![\\w.])`, 'g');
  return text.replace(whole, (figure) => figures.get(figure) ?? figure);
}

const ROWS_AN_ACT = 200;

/**
 * Drafts that make known what an issue changed of values which packs here hold. Nothing is said
 * that the record knows already, nor of a value that no pack holds; each sheet speaks for itself.
 */
export function issuesToTell(plant: Plant, state: State, packs: readonly Pack[]): readonly Draft[] {
  const bySheet = new Map<string, { head: Head; values: Map<string, Said> }>();
  for (const pack of packs) {
    const machine = plant.machines[pack.machine.id];
    if (machine === undefined) continue;
    for (const { value } of valuesAt(pack)) {
      const now = machine.values[value.id] ?? withdrawnBy(plant, machine.id, value);
      if (now === null || !isNews(value, now, newestRow(state.issued, machine.id, value.id)))
        continue;
      const head = { machine: machine.id, ...headOf(now) };
      const key = JSON.stringify(head);
      const held = bySheet.get(key) ?? { head, values: new Map<string, Said>() };
      held.values.set(value.id, saidOf(value, now));
      bySheet.set(key, held);
    }
  }
  return [...bySheet.values()].flatMap(({ head, values }) => {
    const { machine, ...sheet } = head;
    const all = [...values.values()];
    const parts = Array.from({ length: Math.ceil(all.length / ROWS_AN_ACT) }, (_, i) =>
      all.slice(i * ROWS_AN_ACT, (i + 1) * ROWS_AN_ACT),
    );
    return parts.map((rows) => ({
      stream: { kind: 'vessel' as const, id: plant.id },
      kind: 'values-issued',
      by: sheet.authority,
      body: { ...sheet, machines: [machine], values: rows },
    }));
  });
}

type Now = IssuedValue | Withdrawn;
type Withdrawn = {
  readonly withdrawn: true;
  readonly name: string;
  readonly sheet: string;
  readonly issue: string;
  readonly date: string;
  readonly authority: string;
  readonly why?: string;
};
type Head = ReturnType<typeof headOf> & { readonly machine: string };
type Said = {
  readonly id: string;
  readonly name: string;
  readonly is: string | null;
  readonly condition: string | null;
  readonly why?: string;
};

const headOf = ({ sheet, issue, date, authority }: Now) => ({ sheet, issue, date, authority });

const shownNow = (now: Now): string | null => ('withdrawn' in now ? null : issuedText(now));
const conditionNow = (now: Now): string | null =>
  'withdrawn' in now ? null : (now.threadCondition ?? null);

const saidOf = (value: ShownValue, now: Now): Said => ({
  id: value.id,
  name: now.name,
  is: shownNow(now),
  condition: conditionNow(now),
  ...(now.why === undefined ? {} : { why: now.why }),
});

/** Newer than what the pack holds, other than it says, and not known to the record. */
function isNews(value: ShownValue, now: Now, told: IssuedRow | null): boolean {
  const mark = { issue: value.issue ?? '', date: value.date ?? '' };
  if (byIssue(mark, now) >= 0) return false;
  const [is, condition] = [shownNow(now), conditionNow(now)];
  const known = told !== null && byIssue(mark, told) < 0;
  if (known && byIssue(told, now) >= 0) return false;
  const before = known ? told : { is: value.shown, condition: value.threadCondition };
  return before.is !== is || before.condition !== condition;
}

/** The newest issue of the sheet that had the value and has it no longer. */
function withdrawnBy(plant: Plant, machine: string, value: ShownValue): Withdrawn | null {
  const ids = [machine, plant.machines[machine]?.type, plant.id];
  const had = plant.sheets.filter((s) => ids.includes(s.for) && Object.hasOwn(s.values, value.id));
  const names = new Set(had.map((s) => s.sheet));
  const newest = plant.sheets
    .filter((s) => names.has(s.sheet))
    .toSorted(byIssue)
    .at(-1);
  if (newest === undefined || Object.hasOwn(newest.values, value.id)) return null;
  const { sheet, issue, date, authority, why } = newest;
  const head = { withdrawn: true as const, name: value.name, sheet, issue, date, authority };
  return why === undefined ? head : { ...head, why };
}
