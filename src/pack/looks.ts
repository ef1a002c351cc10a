// The two moments at which a second pair of eyes looks: before the first wet joint, before start.

import { type Context, isWet } from './context.ts';
import type { DraftStep } from './order.ts';
import { step, stepId } from './step.ts';
import type { PackFacts } from './types.ts';

export const lookId = (moment: 'isolation' | 'line-up'): string =>
  stepId('second-look', `look/${moment}`);

const opensWet = (c: Context): boolean => c.undone.some((u) => !u.bench && isWet(c.machine, u.id));

/** The closures to be looked at; a moment at which there is nothing to look at is no moment. */
export const lookFacts = (c: Context): NonNullable<PackFacts['looks']> => {
  const closures = c.isolation.closures.map((x) => `closure/${x.closure}`);
  return { isolation: opensWet(c) ? closures : [], 'line-up': closures };
};

/** The look that a wet joint waits for, where there is one. */
export const isolationLook = (c: Context): string[] =>
  lookFacts(c).isolation.length === 0 ? [] : [lookId('isolation')];

/** The look that the first start waits for, where there is one. */
export const lineUpLook = (c: Context): string[] =>
  lookFacts(c)['line-up'].length === 0 ? [] : [lookId('line-up')];

export const isolationLookStep = (c: Context, needs: readonly string[]): DraftStep[] =>
  isolationLook(c).map(() =>
    step({
      verb: 'second-look',
      thing: 'look/isolation',
      phase: 'isolate',
      rank: 400,
      text: c.say('lookIsolation'),
      reason: c.say('lookIsolationWhy'),
      needs,
    }),
  );

export const lineUpLookStep = (c: Context, needs: readonly string[]): DraftStep[] =>
  lineUpLook(c).map(() =>
    step({
      verb: 'second-look',
      thing: 'look/line-up',
      phase: 'prove',
      rank: 56_950,
      text: c.say('lookLineUp'),
      reason: c.say('lookLineUpWhy'),
      needs,
    }),
  );
