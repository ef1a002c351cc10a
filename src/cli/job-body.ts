// From the words of the command line to the body of an act: the step meant, what it asks, answers.

import type { Ask, Pack, Step } from '../pack/types.ts';
import type { ActBody, Json } from '../record/types.ts';
import { BadInput } from './job-session.ts';
import { askWords } from './job-words.ts';

export type DoOptions = {
  readonly count?: string;
  readonly holes?: string;
  readonly round?: string;
  readonly value?: string;
  readonly unit?: string;
  readonly result?: string;
  readonly upTo?: string;
  readonly text?: string;
  readonly position?: string;
  readonly found?: string;
  readonly serial?: string;
  readonly hours?: string;
  readonly sawRun?: boolean;
  readonly diedAway?: boolean;
  readonly verifiedBy?: string;
  readonly answer?: readonly string[];
};

/** The step said in full, or the one ready step about the thing that was named. */
export function stepMeant(
  said: string,
  round: string | undefined,
  pack: Pack,
  ready: readonly Step[],
): Step {
  const words = round === undefined ? said : `${said} ${round}`;
  const exact = pack.steps.find((s) => s.id === words || s.id === said);
  if (exact !== undefined) return exact;
  const fits = ready.filter((s) => s.thing === said || s.id.startsWith(`${said} `));
  const [one] = fits;
  if (one !== undefined && fits.length === 1) return one;
  const near = fits.length > 1 ? fits : pack.steps.filter((s) => s.thing === said);
  if (near.length > 0)
    throw new BadInput(`"${said}" can mean: ${near.map((s) => `"${s.id}"`).join(', ')}`);
  throw new BadInput(`no step "${said}" in the pack: see "boxup job next JOB"`);
}

/** Body of the act that reports a step. What the step asks for and nobody said is not guessed. */
export function bodyFor(step: Step, options: DoOptions): ActBody {
  const given = answers(options);
  const choices = step.asks.filter((a) => {
    const answer = given[a.name];
    return (
      a.kind === 'choice' && typeof answer === 'string' && a.choices?.includes(answer) === false
    );
  });
  for (const ask of choices)
    throw new BadInput(`${ask.name} is "${given[ask.name]}" (expected ${ask.choices?.join(', ')})`);
  const missing = step.asks.filter(
    (a) => isWanted(a, given) && a.name !== 'upTo' && given[a.name] === undefined,
  );
  if (missing.length > 0) {
    const list = missing.map((a) => `${optionFor(a.name)} (${askWords(a)})`);
    throw new BadInput(`"${step.id}" also asks for ${list.join(' and ')}`);
  }
  const body: Record<string, Json> = { thing: step.thing, ...step.fixed };
  if (step.round !== undefined) body.round = step.round;
  return { ...body, ...given };
}

/** Optional questions are not; one that another answer calls for is. */
function isWanted(ask: Ask, given: Readonly<Record<string, Json>>): boolean {
  if (ask.optional !== true) return true;
  const other = ask.unless === undefined ? undefined : given[ask.unless.ask];
  return other !== undefined && other !== ask.unless?.is;
}

const KNOWN: Readonly<Record<string, string>> = {
  count: '--count',
  value: '--value',
  result: '--result',
  upTo: '--up-to',
  text: '--text',
  position: '--position',
  found: '--found',
  serial: '--serial',
  hours: '--hours',
  sawRun: '--saw-run',
  diedAway: '--died-away',
  verifiedBy: '--verified-by',
};

const optionFor = (name: string): string => KNOWN[name] ?? `--answer ${name}=…`;

/** A number stays a number; any other answer is kept as it was written. */
function answers(o: DoOptions): Record<string, Json> {
  const said: Record<string, Json> = {};
  const put = (name: string, value: Json | undefined): void => {
    if (value !== undefined) said[name] = value;
  };
  put('count', whole('--count', o.count));
  put(
    'holes',
    o.holes?.split(',').map((h) => h.trim()),
  );
  put('value', numberOr(o.value));
  put('unit', o.unit);
  put('result', o.result);
  put('upTo', o.upTo);
  put('text', o.text);
  put('position', o.position);
  put('found', o.found);
  put('serial', o.serial);
  put('hours', numeric('--hours', o.hours));
  put('sawRun', yes(o.sawRun));
  put('diedAway', yes(o.diedAway));
  put('verifiedBy', o.verifiedBy);
  for (const pair of o.answer ?? []) {
    const at = pair.indexOf('=');
    if (at < 1) throw new BadInput(`--answer is "${pair}" (expected name=value)`);
    put(pair.slice(0, at), numberOr(pair.slice(at + 1)));
  }
  return said;
}

const yes = (said: boolean | undefined): Json | undefined =>
  said === undefined ? undefined : said ? 'yes' : 'no';

function numberOr(text: string | undefined): Json | undefined {
  if (text === undefined || text.trim() === '') return text;
  return Number.isFinite(Number(text)) ? Number(text) : text;
}

function numeric(option: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value))
    throw new BadInput(`${option} is "${text}" (expected a number)`);
  return value;
}

function whole(option: string, text: string | undefined): number | undefined {
  const value = numeric(option, text);
  if (value !== undefined && (!Number.isInteger(value) || value < 0))
    throw new BadInput(`${option} is "${text}" (expected a whole number)`);
  return value;
}
