// Entering a job done on paper: which rows of a sheet one tap covers, which are said one by one,
// and the acts that come of what stands on the sheet.

import { type PackSheet, sheetsOf } from '../pack/sheets.ts';
import type { Ask, Pack, Step } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { neverTogether } from './done-to-here.ts';
import { stepIdOf } from './kinds.ts';
import type { ActBody, Draft, JobState, Json, State } from './types.ts';

export type PaperRow = {
  readonly step: Step;
  /** Null where one tap for the sheet covers it; else why it is said by itself. */
  readonly alone: string | null;
  /** Said before, on screen or from paper: it is not entered again. */
  readonly done: boolean;
};

/** What stands beside a step: the answers by the names asked, and the bolts that are ticked. */
export type WrittenRow = {
  readonly answers: Readonly<Record<string, Json>>;
  readonly holes?: readonly string[];
  /** Where another than whoever did the sheet signed it: a second look is another's. */
  readonly by?: string;
};

/** What stands on one sheet, as the person who enters it reads it off. */
export type Written = {
  readonly by: string;
  /** Date and time as they stand on the sheet; nobody makes them more exact than they are. */
  readonly writtenAt: string;
  readonly enteredBy: string;
  /** Who signed the cautions on this sheet. */
  readonly verifiedBy: string;
  /** Rows said one by one, by step; a row said here is never covered by the one tap. */
  readonly rows: Readonly<Record<string, WrittenRow>>;
  /** Steps without a tick on the sheet. */
  readonly blank: readonly string[];
  /** Words under "Found, or could not do". */
  readonly found?: string;
};

export type FromPaper = {
  /** In the order of the pack, which is the order of the sheet. */
  readonly drafts: readonly Draft[];
  /** Rows that are neither blank nor fully said: no answer is made up. */
  readonly unsaid: readonly { readonly step: Step; readonly lacks: readonly Ask[] }[];
  /** The sheet wants a name for its cautions. */
  readonly unverified: boolean;
};

export const sheetOf = (pack: Pack, letter: string): PackSheet | null =>
  sheetsOf(pack).find((sheet) => sheet.letter === letter) ?? null;

export function paperRows(job: JobState, pack: Pack, sheet: PackSheet): readonly PaperRow[] {
  return sheet.steps.map((step) => ({
    step,
    alone: aloneOf(step, pack),
    done: job.done[step.id] !== undefined,
  }));
}

/** Whatever *done to here* never covers, and whatever asks for an answer. */
function aloneOf(step: Step, pack: Pack): string | null {
  if (asked(step).length > 0) return 'it asks for an answer';
  return neverTogether(step.verb, bareBody(step), pack);
}

const bareBody = (step: Step): ActBody => ({
  thing: step.thing,
  ...(step.round === undefined ? {} : { round: step.round }),
  ...step.fixed,
});

const asked = (step: Step): readonly Ask[] =>
  step.asks.filter((a) => a.optional !== true && step.fixed[a.name] === undefined);

/** The acts one sheet gives; what lacks an answer is told and not entered. */
export function fromPaper(
  state: State,
  job: string,
  pack: Pack,
  letter: string,
  written: Written,
): FromPaper {
  const now = state.jobs[job];
  const sheet = sheetOf(pack, letter);
  if (now === undefined || sheet === null) return { drafts: [], unsaid: [], unverified: false };
  const rows = paperRows(now, pack, sheet).filter(
    ({ step, done }) => !done && !written.blank.includes(step.id),
  );
  const said = rows.map((row) => ({ ...row, own: written.rows[row.step.id] ?? null }));
  const unsaid = said.flatMap(({ step, alone, own }) => {
    const lacks = lacking(step, own);
    const bare = own === null || (step.verb === 'second-look' && !isLookedAt(own));
    return lacks.length > 0 || (alone !== null && bare) ? [{ step, lacks }] : [];
  });
  const sure = said.filter(({ step }) => unsaid.every((each) => each.step !== step));
  const covered = sure.filter(({ own }) => own === null).length;
  const drafts = sure.map(({ step, own }): Draft => {
    const together = own === null && covered > 1 ? { together: true } : {};
    const verified = step.cautions.length === 0 ? {} : { verifiedBy: written.verifiedBy };
    const body = { ...bareBody(step), ...ownBody(own), step: step.id, ...together, ...verified };
    const signed = own?.by === undefined ? written : { ...written, by: own.by };
    return draftOf(job, step.verb, signed, { ...body, paper: letter });
  });
  const cautioned = sure.some(({ step }) => step.cautions.length > 0);
  return {
    drafts: [...drafts, ...foundOn(job, letter, written)],
    unsaid,
    unverified: cautioned && written.verifiedBy.trim() === '',
  };
}

/** Another pair of eyes: who looked, and what was seen of each closure. */
const isLookedAt = ({ by, answers }: WrittenRow): boolean =>
  (by ?? '').trim() !== '' && Array.isArray(answers.rows) && answers.rows.length > 0;

const ownBody = (own: WrittenRow | null): ActBody =>
  own === null
    ? {}
    : { ...own.answers, ...(own.holes === undefined ? {} : { holes: [...own.holes] }) };

/** Optional, but another answer calls for it: so many turns open, of a throttled valve. */
function isCalledFor(ask: Ask, own: WrittenRow | null): boolean {
  if (ask.optional !== true || ask.unless === undefined) return false;
  const other = own?.answers[ask.unless.ask];
  return typeof other === 'string' && other !== '' && other !== ask.unless.is;
}

/** How far it passed is asked only where it "passed up to". */
function lacking(step: Step, own: WrittenRow | null): readonly Ask[] {
  const calledFor = step.asks.filter((ask) => isCalledFor(ask, own));
  return [...asked(step), ...calledFor].filter((ask) => {
    if (ask.name === 'upTo' && own?.answers.result !== 'passed up to') return false;
    const answer = own?.answers[ask.name];
    return answer === undefined || answer === '' || answer === null;
  });
}

function foundOn(job: string, letter: string, written: Written): readonly Draft[] {
  const what = written.found?.trim() ?? '';
  if (what === '') return [];
  return [draftOf(job, 'found', written, { thing: 'job', what, paper: letter })];
}

const draftOf = (job: string, kind: string, written: Written, body: ActBody): Draft => ({
  stream: { kind: 'job', id: job },
  kind,
  by: written.by.trim(),
  body: { ...body, writtenAt: written.writtenAt.trim(), enteredBy: written.enteredBy.trim() },
});

/** Why an act may not say that it comes from this sheet, or null; the record asks it of each. */
export function paperRefused(
  job: JobState,
  packs: readonly Pack[],
  kind: string,
  body: ActBody,
): string | null {
  const { paper, writtenAt, enteredBy } = body;
  if (paper === undefined) {
    const stray = writtenAt !== undefined || enteredBy !== undefined;
    return stray ? say('paperUnnamed') : null;
  }
  if (writtenAt === undefined) return say('paperWhen', String(paper));
  if (enteredBy === undefined) return say('paperWho', String(paper));
  const sheets = packs.filter((p) => job.packs.includes(p.id)).map((p) => sheetOf(p, `${paper}`));
  if (sheets.every((sheet) => sheet === null)) return say('paperNoSheet', String(paper));
  const step = stepIdOf(kind, body);
  if (step === null || sheets.some((sheet) => sheet?.steps.some((s) => s.id === step))) return null;
  return say('paperNotOn', step, String(paper));
}

/** `entered from paper, sheet C, written 2026-03-14 03:20, by Maren`; null for any other act. */
export function paperWords(body: ActBody): string | null {
  if (typeof body.paper !== 'string') return null;
  return [
    say('enteredFrom', body.paper),
    ...(typeof body.writtenAt === 'string' ? [say('writtenOn', body.writtenAt)] : []),
    ...(typeof body.enteredBy === 'string' ? [say('enteredBy', body.enteredBy)] : []),
  ].join(', ');
}
