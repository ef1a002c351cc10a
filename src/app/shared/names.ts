// Things and readings by the names the pack gives them.

import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';

/** A thing by the name the pack gives it. */
export function nameOf(thing: string, pack: Pack): string {
  const [kind = '', id = ''] = thing.split('/');
  const { joints, parts, items, closures, temps, proofs, checks, settings } = pack.facts;
  const among = { joint: joints, part: parts, item: items, closure: closures, temp: temps };
  const list: Readonly<Record<string, { readonly name: string } | undefined>> =
    { ...among, drain: closures, proof: proofs, check: checks, setting: settings }[kind] ?? {};
  return list[id]?.name ?? (kind === 'job' ? 'the job' : id === '' ? thing : `${kind} ${id}`);
}

/** What was read: the question's own words, and of what. */
export function readingWords(reading: JobState['readings'][number], pack: Pack): string {
  const steps = pack.steps.filter((step) => step.thing === reading.thing);
  const label = steps.flatMap((step) => step.asks).find((ask) => ask.name === reading.name)?.label;
  return `${label ?? reading.name} · ${nameOf(reading.thing, pack)}`;
}
