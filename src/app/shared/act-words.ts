// An act of the record in words: the sentence it reported, or what its kind says.

import type { Pack } from '../../pack/types.ts';
import { kindOf, stepIdOf } from '../../record/kinds.ts';
import { order } from '../../record/order.ts';
import { after } from '../../record/things.ts';
import type { Act } from '../../record/types.ts';
import type { Speaks } from './say.tsx';

/** The acts of a job in causal order, as the fold sees them. */
export const actsOf = (acts: readonly Act[], job: string): readonly Act[] =>
  order(acts).acts.filter((act) => act.stream.kind === 'job' && act.stream.id === job);

export function actWords(act: Act, packs: readonly Pack[], speaks: Speaks): string {
  const { acts } = speaks.words;
  const id =
    act.kind === 'used-anyway' ? String(act.body.step ?? '') : stepIdOf(act.kind, act.body);
  const step = packs.flatMap((pack) => pack.steps).find((each) => each.id === id);
  const own = Object.entries(acts.kinds).find(([kind]) => kind === act.kind)?.[1];
  const says = own ?? kindOf(act.kind)?.says ?? acts.unknown(act.kind);
  if (step === undefined) return says;
  const text = speaks.told(step.text);
  return act.kind === 'used-anyway' ? acts.anyway(text) : text;
}

const PLAIN = ['count', 'found', 'result', 'upTo', 'why', 'what', 'reason', 'limits'] as const;
const MORE = ['owner', 'text', 'serial', 'who', 'sawRun', 'diedAway', 'verifiedBy'] as const;
const LAST = ['hands', 'competent'] as const;

/** What was said with it, field by field. */
export function actSaid(act: Act, { words, told }: Speaks): string {
  const { acts } = words;
  const list = (value: unknown) => (Array.isArray(value) ? value.join(', ') : null);
  const [holes, typed] = [list(act.body.holes), list(act.body.typed)];
  const fields = [...PLAIN, ...MORE, ...LAST].flatMap((name) => {
    const value = act.body[name];
    if (value === undefined || value === null || value === '') return [];
    return [`${acts.fields[name]} ${list(value) ?? told(String(value))}`];
  });
  const together = act.body.together === true ? [acts.together] : [];
  return [
    ...(holes === null ? [] : [acts.holes(holes)]),
    ...fields,
    ...(typed === null ? [] : [acts.typed(typed)]),
    ...seenRows(act),
    ...valueSaid(act, words),
    ...(act.kind === 'second-look' && act.body.alone === true ? [words.eyes.checkedAlone] : []),
    ...together,
    ...paperSaid(act, words),
  ].join('; ');
}

/** What a second look saw, closure by closure, by the names of the pack's file. */
function seenRows(act: Act): readonly string[] {
  if (act.kind !== 'second-look' || !Array.isArray(act.body.rows)) return [];
  const rows = act.body.rows as { readonly thing: string; readonly position: string }[];
  return rows.map(({ thing, position }) => `${after(thing)}: ${position}`);
}

/** A look at a superseded value: which figure was found in force, and what the pack says. */
function valueSaid({ kind, body }: Act, { values: w }: Speaks['words']): readonly string[] {
  if (kind !== 'value-looked-at') return [];
  return [w.lookedSaid(String(body.is), String(body.issue), String(body.was))];
}

/** A job done on paper: which sheet, what stood there, who entered it. */
function paperSaid({ body }: Act, { paper: w }: Speaks['words']): readonly string[] {
  if (typeof body.paper !== 'string') return [];
  return [
    w.said(body.paper),
    ...(typeof body.writtenAt === 'string' ? [w.written(body.writtenAt)] : []),
    ...(typeof body.enteredBy === 'string' ? [w.enteredBy(body.enteredBy)] : []),
  ];
}
