// How one side's job differs from the other side's, in sentences.

import { onlyIn } from '../words/en/pack-sheet.ts';
import type { Speech } from '../words/say.ts';
import type { Pack, Step } from './types.ts';

type Compared = Pick<Pack, 'steps'>;
type Say = Speech['say'];

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
export const sideDifferences = (here: Compared, there: Compared, say: Say): string[] => {
  const mine = telling(here);
  const theirs = telling(there);
  const rows = [
    ...[...mine].filter(([k]) => !theirs.has(k)).map(([, s]) => say('onlyHere', s.text)),
    ...[...theirs].filter(([k]) => !mine.has(k)).map(([, s]) => say('notHere', s.text)),
  ];
  const thereById = new Map(there.steps.map((s) => [s.id, s]));
  for (const s of here.steps) {
    const other = thereById.get(s.id);
    if (other !== undefined) rows.push(...changes(s, other, say));
  }
  return [...new Set(rows), ...orderChange(here, there, say)];
};

const changes = (s: Step, other: Step, say: Say): string[] => {
  const rows: string[] = [];
  const tell = (what: 'place' | 'tool' | 'fastenedBy' | 'count' | 'value', of: TextOf) => {
    const [here, there] = [of(s, say), of(other, say)];
    if (here !== there) rows.push(say('otherwise', s.text, say(what), here, there));
  };
  if (s.verb === 'undone') {
    tell('place', (x) => x.place ?? say('notStated'));
    tell('tool', (x) => x.tool ?? say('notStated'));
    tell('fastenedBy', countText);
  }
  if (s.verb === 'seal-out' || s.verb === 'loose-out') tell('count', countText);
  if (s.verb === 'made') tell('value', valueText);
  if (s.verb === 'made' && s.perHole !== other.perHole)
    rows.push(say(s.perHole ? 'criticalHere' : 'criticalThere', s.text));
  if (s.verb === 'moved-off' || s.verb === 'moved-aside' || s.verb === 'seal-in') {
    if (onlyIn(s.text, other.text, s.text) !== onlyIn(other.text, s.text, s.text))
      rows.push(say('saysOtherwise', s.text, other.text));
  }
  return rows;
};

type TextOf = (s: Step, say: Say) => string;

const countText: TextOf = (s, say) =>
  s.count === null ? say('none') : say('counted', s.count.n, s.count.what);

const valueText: TextOf = (s, say) =>
  s.values.length === 0
    ? say('none')
    : say(
        'figures',
        s.values.map((v) => v.shown ?? say('none')),
      );

/** Where a part must wait for joints that it need not wait for on the other side. */
const orderChange = (here: Compared, there: Compared, say: Say): string[] => {
  const thereById = new Map(there.steps.map((s) => [s.id, s]));
  const rows: string[] = [];
  for (const s of here.steps) {
    const other = thereById.get(s.id);
    if (other === undefined || s.verb !== 'refitted') continue;
    const extra = s.needs.filter((n) => n.startsWith('made ') && !other.needs.includes(n));
    for (const n of extra) {
      const need = here.steps.find((x) => x.id === n);
      if (need !== undefined && thereById.has(n)) rows.push(say('orderDiffers', s.text, need.text));
    }
  }
  return rows;
};
