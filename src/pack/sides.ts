// How one side's job differs from the other side's, in sentences.

import type { Pack, Step } from './types.ts';

type Compared = Pick<Pack, 'steps'>;

const label = (s: Step): string => s.text.replace(/\.$/, '');

/** Verbs whose steps say what is different; the rest follow from these. */
const TELLING: readonly Step['verb'][] = [
  'shut',
  'tagged',
  'drain-opened',
  'undone',
  'moved-off',
  'moved-aside',
  'put-in',
  'item-out',
  'seal-out',
  'loose-out',
  'measured',
];

/** Temporary things are numbered from the job, so they are matched by name instead. */
const keyOf = (s: Step): string =>
  s.verb === 'put-in' ? `put-in ${s.fixed.name} ${s.fixed.where}` : s.id;

const telling = (c: Compared): Map<string, Step> =>
  new Map(c.steps.filter((s) => TELLING.includes(s.verb)).map((s) => [keyOf(s), s]));

/** Things only here, only there, and steps that differ in place, tool, count, value or manner. */
export const sideDifferences = (here: Compared, there: Compared): string[] => {
  const mine = telling(here);
  const theirs = telling(there);
  const rows = [
    ...[...mine].filter(([k]) => !theirs.has(k)).map(([, s]) => `Only here: ${label(s)}`),
    ...[...theirs].filter(([k]) => !mine.has(k)).map(([, s]) => `Not here: ${label(s)}`),
  ];
  const thereById = new Map(there.steps.map((s) => [s.id, s]));
  for (const s of here.steps) {
    const other = thereById.get(s.id);
    if (other !== undefined) rows.push(...changes(s, other));
  }
  return [...new Set(rows), ...orderChange(here, there)];
};

const changes = (s: Step, other: Step): string[] => {
  const rows: string[] = [];
  const name = nameOf(s);
  const say = (what: string, here: string, there: string) => {
    if (here !== there) rows.push(`${name}: ${what} ${here}, on the other side ${there}`);
  };
  if (s.verb === 'undone') {
    say('place', s.place ?? 'not stated', other.place ?? 'not stated');
    say('tool', s.tool ?? 'not stated', other.tool ?? 'not stated');
    say('fastened by', countText(s), countText(other));
  }
  if (s.verb === 'seal-out' || s.verb === 'loose-out') say('count', countText(s), countText(other));
  if (s.verb === 'made') say('value', valueText(s), valueText(other));
  if (s.verb === 'made' && s.perHole !== other.perHole)
    rows.push(`${name}: ${s.perHole ? 'critical here only' : 'critical on the other side only'}`);
  if (s.verb === 'moved-off' || s.verb === 'moved-aside' || s.verb === 'seal-in')
    rows.push(...sentences(s, other));
  return rows;
};

const nameOf = (s: Step): string => {
  const text = label(s).split(' · ').at(-1) ?? label(s);
  return text.split(':')[0] ?? text;
};

/** The sentences of a step that the other side's does not say. */
const sentences = (s: Step, other: Step): string[] => {
  const parts = (x: Step) => label(x).split(/[.;] /);
  const only = (x: Step, y: Step) => parts(x).filter((p) => !parts(y).includes(p));
  const bare = (x: string) => x.replace(`${nameOf(s)}: `, '');
  const here = bare(only(s, other).join('; '));
  const there = bare(only(other, s).join('; '));
  if (here === there) return [];
  return [`${nameOf(s)}: ${here || 'as usual'}, on the other side: ${there || 'as usual'}`];
};

const countText = (s: Step): string => (s.count === null ? 'none' : `${s.count.n} ${s.count.what}`);

const valueText = (s: Step): string =>
  s.values.length === 0 ? 'none' : s.values.map((v) => v.shown ?? 'none').join(' / ');

/** Where a part must wait for joints that it need not wait for on the other side. */
const orderChange = (here: Compared, there: Compared): string[] => {
  const thereById = new Map(there.steps.map((s) => [s.id, s]));
  const rows: string[] = [];
  for (const s of here.steps) {
    const other = thereById.get(s.id);
    if (other === undefined || s.verb !== 'refitted') continue;
    const extra = s.needs.filter((n) => n.startsWith('made ') && !other.needs.includes(n));
    for (const n of extra) {
      const need = here.steps.find((x) => x.id === n);
      if (need !== undefined && thereById.has(n))
        rows.push(`Order: ${nameOf(s)} goes back only after ${nameOf(need)} is made up`);
    }
  }
  return rows;
};
