// Results of tightening and the record: what a file says becomes acts, what was made a file.

import type { Pack, Step } from '../pack/types.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { Problem } from '../quantity/types.ts';
import { jointsTight } from '../record/bolts.ts';
import { order } from '../record/order.ts';
import { effective } from '../record/said.ts';
import { after } from '../record/things.ts';
import type { Act, Draft, JobState } from '../record/types.ts';
import { english, sentence } from '../words/say.ts';
import { type BoltMade, type BoltResult, readResults, writeResult } from './tightening-result.ts';

export type Taken =
  | { readonly ok: true; readonly drafts: readonly Draft[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

type File = {
  /** Of its bytes: the acts say which file they come from. */
  readonly hash: string;
  readonly raw: unknown;
};

/** Everything in the file or nothing: one wrong result and no act is made of the others. */
export function takeResults(job: JobState, pack: Pack, file: File, by: string): Taken {
  const read = readResults(file.raw);
  if (!read.ok) return read;
  const many = Array.isArray(file.raw);
  const at = (i: number, path: string) => `${many ? `${i}/` : ''}${path}`;
  const problems: Problem[] = [];
  const seen = new Map<string, number>();
  const drafts = read.results.map((result, i) => {
    const entity = at(i, 'ResultMetaData/AssociatedEntities');
    const wrong = wrongPlace(job, pack, result);
    const before = seen.get(`${result.joint} ${result.hole}`);
    seen.set(`${result.joint} ${result.hole}`, i);
    if (wrong !== null) problems.push({ path: entity, ...wrong });
    else if (before !== undefined) {
      const why = `result ${before} speaks of the same bolt`;
      problems.push({ path: entity, got: result.hole, expected: 'each bolt once in a file', why });
    }
    return draftOf(job, pack, result, file.hash, by);
  });
  if (drafts.length === 0 && problems.length === 0)
    problems.push({ path: '', got: [], expected: 'a result', why: 'nothing stands in it' });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, drafts };
}

type Wrong = Omit<Problem, 'path'>;

function wrongPlace(job: JobState, pack: Pack, result: BoltResult): Wrong | null {
  const { joint, hole } = result;
  const facts = pack.facts.joints[joint];
  const joints = Object.keys(pack.facts.joints);
  if (facts === undefined)
    return {
      got: joint,
      expected: `one of: ${joints.join(', ')}`,
      why: 'no joint of this job has that name',
    };
  if (!facts.holes.includes(hole))
    return {
      got: hole,
      expected: `one of: ${facts.holes.join(', ')}`,
      why: `${facts.name} has no such hole`,
    };
  const entry = job.entries.find((e) => e.thing === `joint/${joint}`);
  const round = lastRound(pack, joint);
  if (entry?.open !== true)
    return {
      got: joint,
      expected: 'a joint that is open',
      why: `${facts.name} is ${entry === undefined ? 'not undone' : 'made up already'}`,
    };
  if ((entry.tally?.[round] ?? []).includes(hole))
    return {
      got: hole,
      expected: 'a hole not ticked yet',
      why: `hole ${hole} of ${facts.name} was reported at "${round}" already`,
    };
  return null;
}

const lastRound = (pack: Pack, joint: string): string =>
  pack.facts.joints[joint]?.rounds.at(-1) ?? 'made';

/** In the file's own N·m: it is what the tool measured, not what was issued. */
function draftOf(job: JobState, pack: Pack, r: BoltResult, file: string, by: string): Draft {
  const stream = { kind: 'job', id: job.id } as const;
  const thing = `joint/${r.joint}`;
  const figure = `${r.torqueNm} N·m`;
  if (r.judged === 'not tight') {
    const what = english(sentence('notTightInFile', r.hole, figure));
    return { stream, kind: 'found', by, body: { thing, what, hole: r.hole } };
  }
  if (r.judged === 'not judged') {
    const text = english(sentence('notJudgedInFile', r.hole, figure));
    return { stream, kind: 'note', by, body: { thing, text } };
  }
  const round = lastRound(pack, r.joint);
  const body = {
    thing,
    step: `made ${thing} ${round}`,
    round,
    holes: [r.hole],
    value: r.torqueNm,
    unit: 'N.m',
    ...(r.tool === null ? {} : { tool: r.tool }),
    ...(r.angleDeg === null ? {} : { angle: r.angleDeg }),
    result: r.judged,
    toolTime: r.at,
    file,
  };
  return { stream, kind: 'made', by, body };
}

/** The bolts of the record, the last report of each at its last round, as a file. */
export function resultsOf(job: JobState, pack: Pack, acts: readonly Act[]): readonly unknown[] {
  const own = effective(order(acts)).acts.flatMap(({ act }) =>
    act.stream.kind === 'job' && act.stream.id === job.id ? [act] : [],
  );
  return jointsTight(job, [pack]).flatMap(({ thing, holes }) =>
    holes.flatMap(({ hole, word }) => {
      const bolt = boltOf(pack, own, thing, hole);
      return bolt === null ? [] : [writeResult({ ...bolt, judged: word })];
    }),
  );
}

type Bolt = Omit<BoltMade, 'judged'>;

/** Null where nothing was reported at the last round, or no figure stands for it anywhere. */
function boltOf(pack: Pack, own: readonly Act[], thing: string, hole: string): Bolt | null {
  const joint = after(thing);
  const facts = pack.facts.joints[joint];
  const round = lastRound(pack, joint);
  const undone = own.findLastIndex((a) => a.kind === 'undone' && a.body.thing === thing);
  const act = own
    .slice(undone + 1)
    .findLast((a) => a.body.thing === thing && isOf(a, round) && speaksOf(a, hole));
  if (facts === undefined || act === undefined) return null;
  const step = pack.steps.find((s) => s.id === `made ${thing} ${round}`);
  const target = issuedAt(pack, step, joint, hole);
  const said = typeof act.body.value === 'number' ? act.body.value : null;
  const torque = said === null ? target : { value: said, unit: String(act.body.unit ?? 'N.m') };
  if (torque === null) return null;
  return {
    id: `${act.hash.slice(0, 16)}-${hole}`,
    at: act.at.utc,
    name: `${facts.name}, hole ${hole}, ${round}`,
    joint,
    hole,
    tool: typeof act.body.tool === 'string' ? act.body.tool : wrenchAt(pack, step, joint, hole),
    torque,
    ...(said === null ? { setOnly: true } : {}),
    target,
  };
}

const isOf = (act: Act, round: string): boolean =>
  act.kind === 'checked-tight' ||
  (act.kind === 'made' && (act.body.round === undefined || act.body.round === round));

const speaksOf = ({ body }: Act, hole: string): boolean =>
  !Array.isArray(body.holes) || body.holes.map(String).includes(hole);

const fastenerAt = (pack: Pack, joint: string, hole: string): string =>
  pack.facts.joints[joint]?.fasteners.find((f) => f.holes.includes(hole))?.id ?? '';

/** The value issued for this hole; a step with values of one figure only speaks for all. */
function issuedAt(pack: Pack, step: Step | undefined, joint: string, hole: string) {
  const id = `${joint}:${fastenerAt(pack, joint, hole)}`;
  const own = pack.fastenings?.list.find((f) => f.id === id)?.value.shown;
  const figures = [...new Set((step?.values ?? []).map((v) => v.shown))];
  const shown = own ?? (figures.length === 1 ? figures[0] : null);
  const read = typeof shown === 'string' ? readQuantity(shown, 'N.m', '') : null;
  return read?.ok === true ? { value: read.quantity.value, unit: 'N.m' } : null;
}

const wrenchAt = (
  pack: Pack,
  step: Step | undefined,
  joint: string,
  hole: string,
): string | null => {
  const fastener = fastenerAt(pack, joint, hole);
  return step?.sets?.find((line) => line.fastener === fastener)?.wrenchId ?? null;
};
