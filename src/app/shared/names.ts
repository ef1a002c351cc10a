// Things and readings by the names the pack gives them.

import type { PackFacts } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import type { Words } from '../../words/words.ts';

type Reading = JobState['readings'][number];

/** What names are looked up in: the facts of a pack, or of what was seen. */
type Named = { readonly facts: PackFacts };

/** A thing by the name the pack gives it. */
export function nameOf(thing: string, pack: Named, w: Words): string {
  const [kind = '', id = ''] = thing.split('/');
  const { joints, parts, items, closures, temps, proofs, checks, settings } = pack.facts;
  const among = { joint: joints, part: parts, item: items, closure: closures, temp: temps };
  const list: Readonly<Record<string, { readonly name: string } | undefined>> =
    { ...among, drain: closures, proof: proofs, check: checks, setting: settings }[kind] ?? {};
  const found = pack.facts.asFound;
  if (kind === 'missing' && found?.target === id) return `${found.name}: ${w.hunt.head}`;
  if (kind === 'as-found' && found?.target === id) return `${found.name}: ${w.asFound.head}`;
  const other = id === '' ? thing : `${kind} ${id}`;
  return list[id]?.name ?? (kind === 'job' ? w.jobSheet.jobThing : other);
}

/** What was read, of what; a setting is known by the sentence that asked for it. */
export function readingWords(reading: Reading, pack: Named, w: Words): string {
  const thing = nameOf(reading.thing, pack, w)
    .replace(/^Measure /, '')
    .replace(/ as (?:found|left)\b.*$/, '');
  const { asFound, asLeft } = w.jobSheet;
  const when = { found: asFound, left: asLeft }[reading.name] ?? reading.name;
  return `${thing}, ${when}`;
}
