// For tests: the small pack with its two looks, and a job on it as far as each of them.

import type { HandsAboard, Pack, Step } from '../pack/types.ts';
import { makeAct } from './act.ts';
import { closures, fixturePack, jobDraft, lookBody, wholeJob } from './fixture.ts';
import { order } from './order.ts';
import type { Act, Draft } from './types.ts';

const THINGS = closures.map((id) => `closure/${id}`);

/** The fixture with a look before the first wet joint and one before the first start. */
export function lookPack(handsAboard?: HandsAboard): Pack {
  return fixturePack((p) => ({
    ...p,
    request: { ...p.request, ...(handsAboard === undefined ? {} : { handsAboard }) },
    facts: { ...p.facts, looks: { isolation: THINGS, 'line-up': THINGS } },
    steps: p.steps.flatMap((s) => withLooks(s, p.steps)),
  }));
}

function withLooks(step: Step, all: readonly Step[]): readonly Step[] {
  const look = (moment: string, needs: readonly string[]): Step => ({
    ...step,
    id: `second-look look/${moment}`,
    verb: 'second-look',
    thing: `look/${moment}`,
    text: 'Another looks.',
    needs,
    asks: [],
    fixed: {},
    stop: null,
  });
  const of = (verb: string) => all.filter((s) => s.verb === verb).map((s) => s.id);
  if (step.verb === 'proved-dead') return [step, look('isolation', [step.id, ...of('shut')])];
  if (step.id === 'people-clear check/clear:start') return [look('line-up', of('restored')), step];
  const waits = step.stop === 'isolation' ? 'isolation' : step.verb === 'started' ? 'line-up' : '';
  if (waits === '') return [step];
  return [{ ...step, needs: [...step.needs, `second-look look/${waits}`] }];
}

export const lookDraft = (
  pack: Pack,
  moment: 'isolation' | 'line-up',
  by: string,
  change: Readonly<Record<string, string>> = {},
  alone = false,
): Draft => {
  const body = lookBody(pack, `look/${moment}`);
  const rows = (body.rows as unknown as { thing: string; position: string }[]).map((r) => ({
    thing: r.thing,
    position: change[r.thing] ?? r.position,
  }));
  return jobDraft('second-look', { ...body, rows, alone }, by);
};

/** What a sound job says before the step, that step itself left out. */
export const upToStep = (pack: Pack, step: string): readonly Draft[] => {
  const at = pack.steps.findIndex((s) => s.id === step);
  if (at < 0) throw new Error(`no step ${step}`);
  return wholeJob(pack).slice(0, at + 1);
};

/** Says more on a device at a minute of its clock, knowing the acts given. */
export function saidNext(
  acts: readonly Act[],
  drafts: readonly Draft[],
  minute = 1,
  device = 'phone-a',
): readonly Act[] {
  let all = [...acts];
  for (const draft of drafts) {
    const deviceSeq = all.filter((a) => a.device === device).length + 1;
    const at = new Date(Date.UTC(2026, 2, 14, 8, minute, deviceSeq % 60)).toISOString();
    const placed = { vessel: 'tern-rock', device, deviceSeq, at: { utc: at, offsetMinutes: 0 } };
    all = [...all, makeAct(draft, { ...placed, parents: order(all).heads })];
  }
  return all;
}
