// What a person says at a step, put into the act that reports it. Nothing is worked out here.

import type { Ask, Step } from '../../pack/types.ts';
import { readKeyed } from '../../quantity/own-units.ts';
import type { ActBody, Draft, Json } from '../../record/types.ts';
import type { Speaks } from '../shared/say.tsx';

export type Answers = Readonly<Record<string, string>>;

export type Said = {
  readonly job: string;
  readonly by: string;
  readonly verifiedBy: string;
  readonly answers: Answers;
  /** Holes ticked by this act; left out, the whole count is meant. */
  readonly holes?: readonly string[];
  readonly hours?: number;
};

export function draftOf(step: Step, said: Said): Draft {
  const whole = said.holes === undefined && step.count !== null;
  const counted = step.asks.some((ask) => ask.name === 'count');
  const body: ActBody = {
    thing: step.thing,
    step: step.id,
    ...step.fixed,
    ...(step.round === undefined ? {} : { round: step.round }),
    ...(whole && !counted && step.count !== null ? { count: step.count.n } : {}),
    ...(said.holes === undefined ? {} : { holes: [...said.holes] }),
    ...(step.cautions.length === 0 ? {} : { verifiedBy: said.verifiedBy }),
    ...answersIn(step.asks, said.answers),
  };
  return { stream: { kind: 'job', id: said.job }, kind: step.verb, by: said.by, body };
}

/** Answers by the names of the questions; a figure in the unit asked, and as it was typed. */
export function answersIn(asks: readonly Ask[], answers: Answers): ActBody {
  const typed: string[] = [];
  const given = asks.flatMap((ask): [string, Json][] => {
    const text = (answers[ask.name] ?? '').trim();
    if (text === '') return [];
    if (ask.kind !== 'number' && ask.kind !== 'count') return [[ask.name, text]];
    const keyed = readKeyed(text, ask.unit ?? '');
    if (keyed.typed !== null) typed.push(`${ask.label}: ${keyed.typed}`);
    return [[ask.name, keyed.value]];
  });
  return { ...Object.fromEntries(given), ...(typed.length === 0 ? {} : { typed }) };
}

type Asking = Pick<Step, 'asks' | 'cautions'> & { readonly verb: string };

/** What still has to be said before the step can be reported, in words. */
export function missing(
  step: Asking,
  said: Pick<Said, 'by' | 'verifiedBy' | 'answers'>,
  { words: { work: w }, told }: Speaks,
): string[] {
  const asked = step.asks.filter(
    (ask) => isWanted(ask, said.answers) && !isSettled(ask.name, said.answers, step),
  );
  return [
    ...(said.by.trim() === '' ? [w.whoHolds] : []),
    ...(step.cautions.length > 0 && said.verifiedBy.trim() === '' ? [w.whoVerified] : []),
    ...asked.map((ask) => told(ask.label).toLowerCase()),
  ];
}

/** Optional questions are not; one that another answer calls for is. */
export function isWanted(ask: Ask, answers: Answers): boolean {
  if (ask.optional !== true) return true;
  const other = ask.unless === undefined ? '' : (answers[ask.unless.ask] ?? '').trim();
  return other !== '' && other !== ask.unless?.is;
}

/** How far it passed is asked only where the result is "passed up to". */
function isSettled(name: string, answers: Answers, step: Asking): boolean {
  if ((answers[name] ?? '').trim() !== '') return true;
  return step.verb === 'proof' && name === 'upTo' && answers.result !== 'passed up to';
}

/** Questions shown now. */
export const asksShown = (step: Asking, answers: Answers) =>
  step.asks.filter(
    (ask) => !(step.verb === 'proof' && ask.name === 'upTo' && answers.result !== 'passed up to'),
  );
