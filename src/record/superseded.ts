// Values that an issue replaced after a pack was made: which joints wait for a look, which had one.

import type { Pack, PackFacts, ShownValue, Thing } from '../pack/types.ts';
import { byIssue } from '../values/issue.ts';
import { say } from '../words/heard.ts';
import { roundsOf } from './ledger.ts';
import type { IsAncestor, Said } from './said.ts';
import type { Act, ActBody, IssuedRow, JobState, Refusal, Superseded } from './types.ts';

type Placed = { readonly act: Act; readonly index: number };

/** What the acts `values-issued` make known, one row a value and machine. */
export function issuedRows(acts: readonly Act[]): readonly IssuedRow[] {
  return acts
    .filter((act) => act.kind === 'values-issued')
    .flatMap(({ body, hash }) => {
      const machines = Array.isArray(body.machines) ? body.machines.map(String) : [];
      const values = (Array.isArray(body.values) ? body.values : []) as readonly ActBody[];
      const head = {
        sheet: String(body.sheet),
        issue: String(body.issue),
        date: String(body.date),
        authority: String(body.authority),
        act: hash,
      };
      return machines.flatMap((machine) =>
        values.map((v) => ({
          machine,
          ...head,
          id: String(v.id),
          name: String(v.name),
          is: textOrNull(v.is),
          condition: textOrNull(v.condition),
          why: textOrNull(v.why),
        })),
      );
    });
}

const textOrNull = (value: unknown): string | null => (typeof value === 'string' ? value : null);

/** Each value of a pack at the thing whose step shows it; a limit belongs to the running look. */
export function valuesAt(
  pack: Pack,
): readonly { readonly thing: Thing; readonly value: ShownValue }[] {
  const all = [
    ...pack.steps.flatMap((s) => s.values.map((value) => ({ thing: s.thing, value }))),
    ...Object.entries(pack.facts.joints).flatMap(([id, { recheck }]) =>
      recheck?.retighten.value == null
        ? []
        : [{ thing: `joint/${id}`, value: recheck.retighten.value }],
    ),
    ...pack.limits.map((value) => ({ thing: 'proof/running', value })),
    ...(pack.interval === null ? [] : [{ thing: 'job', value: pack.interval }]),
  ];
  const seen = new Set<string>();
  return all.filter(({ thing, value }) => {
    const key = `${thing} ${value.id}`;
    if (value.shown === null || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The newest row of a value; the newest by its issue, not by when somebody heard of it. */
export function newestRow(
  issued: readonly IssuedRow[],
  machine: string,
  id: string,
): IssuedRow | null {
  const rows = issued.filter((r) => r.machine === machine && r.id === id);
  return rows.toSorted(byIssue).at(-1) ?? null;
}

type Replaced = Omit<Superseded, 'reached' | 'looked'>;

/** The values of a pack that a newer issue replaced by another figure or thread condition. */
export function replacedIn(pack: Pack, issued: readonly IssuedRow[]): readonly Replaced[] {
  if (issued.length === 0) return [];
  return valuesAt(pack).flatMap(({ thing, value }): Replaced[] => {
    const row = newestRow(issued, pack.machine.id, value.id);
    const mark = { issue: value.issue ?? '', date: value.date ?? '' };
    if (row === null || byIssue(mark, row) >= 0) return [];
    if (row.is === value.shown && row.condition === value.threadCondition) return [];
    const { machine: _, id, ...rest } = row;
    return [
      {
        ...rest,
        thing,
        value: id,
        was: value.shown ?? '',
        wasIssue: value.issue ?? '',
        wasCondition: value.threadCondition,
      },
    ];
  });
}

/** The rounds at which a joint gets its whole value: from 100 % on, else the last. */
export function wholeValueRounds(thing: Thing, facts: PackFacts | null): readonly string[] {
  const rounds = roundsOf(thing, facts);
  const at = rounds.indexOf('100 %');
  return at < 0 ? rounds.slice(-1) : rounds.slice(at);
}

/** With no pack in force, while two amendments stand side by side, any round may be the last. */
const atWholeValue = (thing: Thing, body: ActBody, facts: PackFacts | null): boolean => {
  if (facts === null) return true;
  const rounds = wholeValueRounds(thing, facts);
  return body.round === undefined ? rounds.length > 0 : rounds.includes(String(body.round));
};

/** `value-looked-at` says it of one value; gone past by name it holds for all of its joint. */
export const lookStep = (thing: Thing): string => `value-looked-at ${thing}`;

const isLook = (s: Said, row: Replaced): boolean =>
  s.act.kind === 'used-anyway'
    ? s.body.step === lookStep(row.thing)
    : s.act.kind === 'value-looked-at' &&
      s.body.thing === row.thing &&
      s.body.value === row.value &&
      s.body.issue === row.issue &&
      s.body.is === row.is;

export type Issues = {
  readonly issued: readonly IssuedRow[];
  /** Where each act `values-issued` stands in causal order. */
  readonly issuedAt: ReadonlyMap<string, number>;
};

export function issuesOf(rows: readonly Placed[]): Issues {
  const own = rows.filter(({ act }) => act.kind === 'values-issued');
  return {
    issued: issuedRows(own.map(({ act }) => act)),
    issuedAt: new Map(own.map(({ act, index }) => [act.hash, index])),
  };
}

export type Looking = Issues & {
  readonly all: readonly Said[];
  readonly pack: Pack | null;
  readonly isAncestor: IsAncestor;
};

/** Whether somebody went past in sight of this very issue, and not of one before it. */
const inSight = (l: Looking, look: Said, row: Replaced): boolean =>
  look.act.kind !== 'used-anyway' || l.isAncestor(l.issuedAt.get(row.act) ?? -1, look.index);

/** What a job holds that was superseded: at joints still to be made, and at joints made by it. */
export function supersededOf(l: Looking): readonly Superseded[] {
  if (l.issued.length === 0) return [];
  const rows = new Map<string, Superseded>();
  const byPack = new Map<Pack, readonly Replaced[]>();
  const replaced = (pack: Pack): readonly Replaced[] => {
    const found = byPack.get(pack) ?? replacedIn(pack, l.issued);
    byPack.set(pack, found);
    return found;
  };
  const key = (r: Replaced): string => `${r.thing} ${r.value}`;
  for (const row of l.pack === null ? [] : replaced(l.pack)) {
    const look = looksAt(l, row).at(-1);
    rows.set(key(row), { ...row, reached: null, looked: lookedBy(look) });
  }
  for (const made of l.all.filter((s) => stillStands(l, s))) {
    const own = made.pack === null ? [] : replaced(made.pack);
    for (const row of own.filter((r) => r.thing === made.body.thing)) {
      const looks = looksAt(l, row);
      if (looks.some((look) => l.isAncestor(look.index, made.index))) continue;
      const look = looks.filter((one) => l.isAncestor(made.index, one.index)).at(-1);
      rows.set(key(row), { ...row, reached: made.act.hash, looked: lookedBy(look) });
    }
  }
  return [...rows.values()];
}

const looksAt = (l: Looking, row: Replaced): readonly Said[] =>
  l.all.filter((s) => isLook(s, row) && inSight(l, s, row));

const lookedBy = (look: Said | undefined): Superseded['looked'] =>
  look === undefined
    ? null
    : { by: look.act.by, act: look.act.hash, anyway: look.act.kind === 'used-anyway' };

/** A joint brought to its whole value, and not undone since. */
function stillStands(l: Looking, s: Said): boolean {
  if (s.act.kind !== 'made' || s.pack === null) return false;
  const thing = String(s.body.thing);
  if (!atWholeValue(thing, s.body, s.facts)) return false;
  return !l.all.some(
    (o) => o.act.kind === 'undone' && o.body.thing === thing && l.isAncestor(s.index, o.index),
  );
}

/** Issues that came after a job was closed are listed on its record; nobody is asked any more. */
export const issuedAfter = (l: Looking, row: Superseded, closing: number | null): boolean =>
  closing !== null && l.isAncestor(closing, l.issuedAt.get(row.act) ?? -1);

/** What still wants a look at a joint before, or after, it has its whole value. */
export const unlooked = (job: Pick<JobState, 'superseded'>): readonly Superseded[] =>
  job.superseded.filter((r) => r.looked === null && r.thing.startsWith('joint/'));

const withCondition = (shown: string | null, condition: string | null): string =>
  shown === null
    ? say('withdrawn')
    : condition === null
      ? shown
      : say('withCondition', shown, condition);

/** `42 N.m (dry), issue 7, is now 38 N.m (dry), issue 8 of 2026-11-20: gaskets crept`. */
export function supersededWords(r: Omit<Replaced, 'act'>): string {
  const was = withCondition(r.was, r.wasCondition);
  const is = withCondition(r.is, r.condition);
  return say('superseded', r.name, was, r.wasIssue, is, r.issue, r.date, r.why);
}

/** A joint whose value was superseded is not brought to it before a named person has looked. */
export function supersededRefused(
  job: JobState,
  body: ActBody,
  facts: PackFacts | null,
): Refusal | null {
  const thing = String(body.thing);
  const rows = unlooked(job).filter((r) => r.thing === thing);
  if (rows.length === 0 || !atWholeValue(thing, body, facts)) return null;
  return {
    stop: 'value superseded',
    why: say('supersededStop'),
    open: rows.map(supersededWords),
  };
}

/** A look is at a value that was superseded, and at the figure that is in force. */
export function lookedRefused(job: JobState, body: ActBody): Refusal | null {
  const rows = job.superseded.filter((r) => r.thing === body.thing);
  const row = rows.find((r) => r.value === body.value);
  if (row?.is === null) {
    return { stop: 'bad act', why: say('noneTookItsPlace'), open: rows.map(supersededWords) };
  }
  if (row !== undefined && row.issue === body.issue && row.is === body.is) return null;
  const why =
    row === undefined
      ? say('noneSuperseded', String(body.value), String(body.thing))
      : say('issueSays', row.issue, row.is ?? say('withdrawn'), String(body.is));
  return { stop: 'bad act', why, open: rows.map(supersededWords) };
}

/** The body with which a person says that they looked. */
export const lookBody = (r: Superseded): ActBody => ({
  thing: r.thing,
  value: r.value,
  was: r.was,
  is: r.is,
  issue: r.issue,
});
