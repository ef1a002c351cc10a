// What was read before the machine was stopped, and in which position each closure was found.

import { type Before, beforeOf, USUAL_BEFORE } from '../pack/before.ts';
import type { Ask, Pack, Step, Thing } from '../pack/types.ts';
import { now, say } from '../words/heard.ts';
import { stepIdOf } from './kinds.ts';
import { type Said, stepOf } from './said.ts';
import type { Baseline, JobState } from './types.ts';

export function baselineIn(said: readonly Said[], others: readonly Said[]): Baseline {
  return {
    readings: said.filter((s) => s.act.kind === 'measured').flatMap(readIn),
    cannotRun: others
      .filter((s) => s.act.kind === 'cannot-run')
      .map(({ act, body }) => ({
        act: act.hash,
        by: act.by,
        of: body.thing === 'before' ? 'before' : 'before-other',
        why: typeof body.why === 'string' ? body.why : null,
      })),
  };
}

function readIn(s: Said): Baseline['readings'] {
  const of = beforeOf(String(s.body.thing));
  if (of === null) return [];
  const asks: readonly Ask[] = stepOf(s.pack, stepIdOf('measured', s.body))?.asks ?? USUAL_BEFORE;
  const { at, speed } = s.body;
  const atSpeed = typeof speed === 'number' ? `${speed} 1/min` : 'the speed it ran at';
  return asks.flatMap((ask) => {
    const value = s.body[ask.name];
    if (typeof value !== 'number' && typeof value !== 'string') return [];
    return [
      {
        act: s.act.hash,
        by: s.act.by,
        of,
        at: typeof at === 'string' ? at : atSpeed,
        name: ask.name,
        label: ask.label,
        value,
        unit: ask.unit ?? '',
      },
    ];
  });
}

/** `1.4 bar at 600 rpm`, as it is shown beside the same question at the proof. */
export const baselineAt = (job: Pick<JobState, 'baseline'>, ask: string) =>
  job.baseline.readings.filter((r) => r.of === 'before' && r.name === ask);

/** Steps that one tap passes over together: all that is read on a machine that can't run. */
export const passedOver = (pack: Pack | null, of: unknown): readonly Step[] =>
  (pack?.steps ?? []).filter((s) => s.verb === 'measured' && beforeOf(s.thing) === of);

/** Once anything is shut or undone the machine is stopped: there is no more before. */
export const isStopped = (job: Pick<JobState, 'entries'>): boolean => job.entries.length > 0;

/** The last word on each closure: how it stood, and how far it was turned. */
export function foundPositionsIn(said: readonly Said[]): JobState['foundPositions'] {
  const last = new Map<string, JobState['foundPositions'][number]>();
  for (const { act, body } of said) {
    if (act.kind !== 'shut' && act.kind !== 'shut-or-unplugged') continue;
    if (typeof body.found !== 'string' || body.found === '') continue;
    const thing = String(body.thing);
    last.delete(thing);
    last.set(thing, {
      act: act.hash,
      by: act.by,
      thing,
      found: body.found,
      turns: typeof body.turns === 'number' ? body.turns : null,
    });
  }
  return [...last.values()];
}

/** `open 3 turns of 8`, `open, 5 turns`: the words and the turns where they were counted. */
export const positionWords = (p: JobState['foundPositions'][number]): string =>
  p.turns === null ? now(p.found) : say('foundTurns', p.found, p.turns);

/** A row of its own for each reading of a machine that nobody has written down. */
export function newReading(job: Pick<JobState, 'baseline'>, of: Before, mark: string): Thing {
  const rows = new Set(job.baseline.readings.map((r) => r.act)).size;
  return `${of}/running:${[...(mark === '' ? [] : [mark]), rows + 1].join('-')}`;
}
