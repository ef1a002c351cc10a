// As found: the state of the target once it is off or open, in five answers of one tap each.

import { limits } from '../limits.ts';
import { type Context, jointOf, partOf } from './context.ts';
import type { DraftStep } from './order.ts';
import { step, stepId } from './step.ts';
import type { AsFoundFacts, Ask, Thing } from './types.ts';

/** Four plain words for the state something was found in. */
export const GRADES = ['as new', 'worn, would have gone on', 'near its end', 'failed'] as const;

export const NOTHING_FAILED = 'nothing';
export const OTHER_FAILED = 'other';

/** What is asked everywhere; the photo is no question but a picture or none. */
export const asFoundAsks = (failed: readonly string[]): readonly Ask[] => [
  { name: 'grade', label: 'Its state', kind: 'choice', choices: GRADES },
  {
    name: 'failed',
    label: 'What failed',
    kind: 'choice',
    choices: [NOTHING_FAILED, ...failed, OTHER_FAILED],
  },
  { name: 'hours', label: 'Running hours', kind: 'number', unit: 'h', optional: true },
  { name: 'missing', label: 'Pieces missing', kind: 'count', expected: 0 },
];

export const asFoundFacts = (c: Context): AsFoundFacts => ({
  target: c.targetId,
  name: partOf(c, c.targetId).name,
  owedBy: takenBy(c).slice(-1),
});

/** Right after the target is off, or after what is renewed in it came out. */
export const asFoundStep = (c: Context, rankOf: (thing: Thing) => number): DraftStep => {
  const taken = takenBy(c);
  return step({
    verb: 'as-found',
    thing: `item/${c.targetId}`,
    phase: 'strip',
    // After what goes on its open ends and is counted out of its joints.
    rank: Math.max(0, ...taken.map(rankOf)) + 6,
    text: c.say('asFoundStep', partOf(c, c.targetId).name),
    reason: c.say('asFoundWhy'),
    needs: taken.map((thing) => takenId(c, thing)),
    asks: asFoundAsks(namesIn(c)),
  });
};

/** The things that must be off for the target to be looked at, in the order of removal. */
const takenBy = (c: Context): Thing[] => {
  const wanted = c.does === 'renew-in-place' ? c.items : [c.targetId];
  const moved = [...new Set(c.moved.map((m) => m.id))].filter((id) => wanted.includes(id));
  if (moved.length > 0) return moved.map((id) => `part/${id}`);
  return c.undone.slice(-1).map((u) => `joint/${u.id}`);
};

const takenId = (c: Context, thing: Thing): string => {
  const last = c.moved.findLast((m) => `part/${m.id}` === thing);
  if (last === undefined) return stepId('undone', thing);
  return stepId(last.as === 'aside' ? 'moved-aside' : 'moved-off', thing);
};

/** What can fail in it by name: what is renewed or taken off at the bench, and its seals. */
const namesIn = (c: Context): string[] => {
  const does = Object.values(c.target.does);
  const inside = does.flatMap((d) => [
    ...(d?.renews ?? []),
    ...(d?.bench ?? []).map((one) => one.part),
  ]);
  const parts = inside.filter((id) => id !== c.targetId).map((id) => partOf(c, id).name);
  const joints = c.undone.filter((u) => (jointOf(c, u.id).between ?? []).includes(c.targetId));
  const seals = joints.flatMap((u) =>
    Object.values(jointOf(c, u.id).seals ?? {}).map((s) => s.name ?? s.kind),
  );
  const names = parts.length + seals.length === 0 ? [partOf(c, c.targetId).name] : parts;
  return [...new Set([...names, ...seals])].slice(0, limits.pack.namedFailures);
};
