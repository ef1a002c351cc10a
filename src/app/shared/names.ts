// Things and readings by the names the pack gives them.

import type { PackFacts } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';

/** What names are looked up in: the facts of a pack, or of what was seen. */
type Named = { readonly facts: PackFacts };

/** A thing by the name the pack gives it. */
export function nameOf(thing: string, pack: Named): string {
  const [kind = '', id = ''] = thing.split('/');
  const { joints, parts, items, closures, temps, proofs, checks, settings } = pack.facts;
  const among = { joint: joints, part: parts, item: items, closure: closures, temp: temps };
  const list: Readonly<Record<string, { readonly name: string } | undefined>> =
    { ...among, drain: closures, proof: proofs, check: checks, setting: settings }[kind] ?? {};
  return list[id]?.name ?? (kind === 'job' ? 'the job' : id === '' ? thing : `${kind} ${id}`);
}

/** What was read, of what; a setting is known by the sentence that asked for it. */
export function readingWords(reading: JobState['readings'][number], pack: Named): string {
  const thing = nameOf(reading.thing, pack)
    .replace(/^Measure /, '')
    .replace(/ as (?:found|left)\b.*$/, '');
  const when = ['found', 'left'].includes(reading.name) ? `as ${reading.name}` : reading.name;
  return `${thing}, ${when}`;
}
