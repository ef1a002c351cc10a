// How one side's job differs from the other side's, in sentences.

import type { Pack, Step } from './types.ts';

type Compared = Pick<Pack, 'steps'>;

const label = (s: Step): string => s.text.replace(/\.$/, '');

/** Things only here, only there, and steps that differ in place, tool, count or value. */
export const sideDifferences = (here: Compared, there: Compared): string[] => {
  const hereById = new Map(here.steps.map((s) => [s.id, s]));
  const thereById = new Map(there.steps.map((s) => [s.id, s]));
  const rows: string[] = [];
  const seen = new Set<string>();
  for (const s of here.steps)
    if (!thereById.has(s.id) && once(seen, s.thing)) rows.push(`Only here: ${label(s)}`);
  seen.clear();
  for (const s of there.steps)
    if (!hereById.has(s.id) && once(seen, s.thing)) rows.push(`Not here: ${label(s)}`);
  for (const s of here.steps) {
    const other = thereById.get(s.id);
    if (other !== undefined) rows.push(...changes(s, other));
  }
  return [...new Set(rows), ...orderChange(here, there)];
};

const once = (seen: Set<string>, thing: string): boolean => {
  if (seen.has(thing)) return false;
  seen.add(thing);
  return true;
};

const changes = (s: Step, other: Step): string[] => {
  const rows: string[] = [];
  const name = label(s).split(':')[0] ?? label(s);
  const say = (what: string, here: string, there: string) => {
    if (here !== there) rows.push(`${name}: ${what} ${here}, there ${there}`);
  };
  if (s.verb === 'undone') {
    say('place', s.place ?? 'not stated', other.place ?? 'not stated');
    say('tool', s.tool ?? 'not stated', other.tool ?? 'not stated');
  }
  say('count', countText(s), countText(other));
  say('value', valueText(s), valueText(other));
  const plain = s.verb === 'moved-off' || s.verb === 'moved-aside' || s.verb === 'seal-in';
  if (plain && rows.length === 0 && s.text !== other.text)
    rows.push(`Here: ${label(s)}; there: ${label(other)}`);
  return rows;
};

const countText = (s: Step): string => (s.count === null ? 'none' : `${s.count.n} ${s.count.what}`);

const valueText = (s: Step): string =>
  s.values.length === 0 ? 'none' : s.values.map((v) => v.shown ?? 'none').join(' / ');

/** The same steps in another order of demands: said once, by the first that waits differently. */
const orderChange = (here: Compared, there: Compared): string[] => {
  const thereById = new Map(there.steps.map((s) => [s.id, s]));
  for (const s of here.steps) {
    const other = thereById.get(s.id);
    if (other === undefined || s.verb !== 'refitted') continue;
    const extra = s.needs.find((n) => thereById.has(n) && !other.needs.includes(n));
    const need = here.steps.find((x) => x.id === extra);
    if (need !== undefined) return [`Order here: ${label(s)} only after: ${label(need)}`];
  }
  return [];
};
