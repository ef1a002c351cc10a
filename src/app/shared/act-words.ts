// An act of the record in words: the sentence it reported, or what its kind says.

import type { Pack } from '../../pack/types.ts';
import { kindOf, stepIdOf } from '../../record/kinds.ts';
import { order } from '../../record/order.ts';
import type { Act } from '../../record/types.ts';

/** The acts of a job in causal order, as the fold sees them. */
export const actsOf = (acts: readonly Act[], job: string): readonly Act[] =>
  order(acts).acts.filter((act) => act.stream.kind === 'job' && act.stream.id === job);

export function actWords(act: Act, packs: readonly Pack[]): string {
  const id =
    act.kind === 'used-anyway' ? String(act.body.step ?? '') : stepIdOf(act.kind, act.body);
  const step = packs.flatMap((pack) => pack.steps).find((each) => each.id === id);
  const says = kindOf(act.kind)?.says ?? `of a kind not known here: ${act.kind}`;
  if (step === undefined) return says;
  return act.kind === 'used-anyway' ? `used anyway, without: ${step.text}` : step.text;
}

const PLAIN = ['count', 'found', 'result', 'upTo', 'why', 'what', 'reason', 'limits', 'owner'];
const MORE = ['text', 'serial', 'who', 'sawRun', 'diedAway', 'verifiedBy', 'hands', 'competent'];

const NAMES: Readonly<Record<string, string>> = {
  upTo: 'up to',
  sawRun: 'seen to run',
  diedAway: 'died away',
  verifiedBy: 'verified by',
  competent: 'verifies',
  who: 'told',
};

/** What was said with it, field by field. */
export function actSaid(act: Act): string {
  const holes = Array.isArray(act.body.holes) ? [`holes ${act.body.holes.join(', ')}`] : [];
  const fields = [...PLAIN, ...MORE].flatMap((name) => {
    const value = act.body[name];
    if (value === undefined || value === null || value === '') return [];
    const words = Array.isArray(value) ? value.join(', ') : String(value);
    return [`${NAMES[name] ?? name} ${words}`];
  });
  const together = act.body.together === true ? ['entered together, afterwards'] : [];
  return [...holes, ...fields, ...together].join('; ');
}
