// Making a joint up again: by hand first, square and free, then its rounds, then its settings.

import { accessOf, type Context, isPipeJoint, jointOf, placeName, type Undone } from './context.ts';
import type { WrenchLine } from './fastening-types.ts';
import { heldAt } from './holding.ts';
import type { DraftStep } from './order.ts';
import { step, stepId } from './step.ts';
import { settingAsk, undoneId } from './strip.ts';
import type { ShownValue } from './types.ts';
import { shareOf, tighteningValues } from './values.ts';

export const roundIds = (c: Context, j: string): string[] =>
  (c.shapes[j]?.rounds ?? ['made']).map((r) => stepId('made', `joint/${j}`, r));

/** The look at a bolted pipe joint before it is tightened; null where it is none. */
export const squareId = (c: Context, j: string): string | null => {
  const rounds = c.shapes[j]?.rounds ?? [];
  return isPipeJoint(c.machine, j) && c.shapes[j]?.threaded === true && rounds.length > 1
    ? stepId('checked', `check/square:${j}`)
    : null;
};

export const makeSteps = (
  c: Context,
  u: Undone,
  at: number,
  firstNeeds: readonly string[],
): DraftStep[] => {
  const ids = roundIds(c, u.id);
  const rounds = c.shapes[u.id]?.rounds ?? ['made'];
  const square = u.bench ? null : squareId(c, u.id);
  const steps = rounds.map((round, i) => {
    const previous = ids[i - 1];
    const needs =
      i === 0 ? [undoneId(u.id), ...firstNeeds] : previous === undefined ? [] : [previous];
    if (i === 1 && square !== null) needs.push(square);
    return roundStep(c, u, round, i, at, needs);
  });
  if (square !== null) steps.push(squareStep(c, u.id, at, ids[0] ?? ''));
  return [...steps, ...leftSettings(c, u.id, at, ids.at(-1) ?? '')];
};

const roundStep = (
  c: Context,
  u: Undone,
  round: string,
  i: number,
  at: number,
  needs: readonly string[],
): DraftStep => {
  const joint = jointOf(c, u.id);
  const shape = c.shapes[u.id];
  const access = accessOf(c, u);
  const rounds = shape?.rounds ?? ['made'];
  const last = i === rounds.length - 1;
  const tightening = round !== 'hand' && round !== 'made';
  const values = tightening ? tighteningValues(c.machine, joint) : [];
  return step({
    verb: 'made',
    thing: `joint/${u.id}`,
    round,
    phase: 'box-up',
    rank: at + i,
    text: roundText(c, u.id, round, values),
    reason: roundReason(c, round),
    place: u.bench ? 'bench' : placeName(c, access?.place),
    tool: toolFor(c, u, round, access?.tool ?? null),
    sets: setsFor(c, u.id, round),
    needs,
    count: shape && shape.holes.length > 0 ? { n: shape.holes.length, what: shape.words } : null,
    holes: round === 'once more in order' ? (shape?.holes ?? []) : (shape?.order ?? []),
    perHole: last && tightening && joint.critical === true,
    values,
    minutes: last ? (joint.makeMinutes ?? null) : null,
    hazards: joint.hazards ?? [],
  });
};

/** The wrench of each kind of fastener, set for this round. */
const setsFor = (c: Context, joint: string, round: string): WrenchLine[] =>
  c.fastenings.list.flatMap(({ joint: of, tools }) => {
    const line = of === joint ? (tools?.line ?? null) : null;
    return line === null || !line.rounds.some((each) => each.round === round) ? [] : [line];
  });

const toolFor = (c: Context, u: Undone, round: string, stated: string | null): string | null => {
  if (round === 'hand' || round === 'made' || round === 'tight') return stated;
  const chosen = c.fastenings.list.filter((one) => one.joint === u.id && one.tools !== null);
  if (chosen.length === 0) return 'torque wrench in date';
  return [...new Set(chosen.map((one) => one.tools?.names.join(', ') ?? ''))].join('; ');
};

const roundText = (c: Context, j: string, round: string, values: readonly ShownValue[]): string => {
  const joint = jointOf(c, j);
  const words = c.shapes[j]?.words ?? '';
  const locking = Object.values(joint.fasteners ?? {}).flatMap((f) =>
    f.locking === undefined ? [] : [f.locking],
  );
  const lock = locking.length === 0 ? null : c.say('listed', [...new Set(locking)]);
  const held = heldAt(c, j);
  if (round === 'hand')
    return held.length === 0
      ? c.say('startByHand', joint.name, words)
      : c.say('startHeld', joint.name, words, held);
  if (round === 'made') return c.say('makeUp', joint.name, words === '' ? null : words, lock);
  // No value is no licence to tighten by hand: only where the plant marks it as not critical.
  if (round === 'tight')
    return c.say(joint.critical === false ? 'handTight' : 'askedValue', joint.name, words, lock);
  const share = /^(\d+) %$/.exec(round)?.[1];
  const figures = values.map((v) => {
    if (v.shown === null) return c.say('noValueStated');
    if (share === undefined || share === '100') return v.shown;
    return c.say('shareOfValue', shareOf(v.shown, Number(share) / 100) ?? '?', round, v.shown);
  });
  const figure = c.say('figures', [...new Set(figures)]);
  if (round === 'once more in order') return c.say('onceMore', figure, joint.name, lock);
  return c.say('tightenTo', figure, joint.name, words, (c.shapes[j]?.holes.length ?? 0) > 1);
};

const roundReason = (c: Context, round: string): string => {
  if (round === 'hand') return c.say('startByHandWhy');
  if (round === 'made') return c.say('makeUpWhy');
  return c.say(round === 'once more in order' ? 'onceMoreWhy' : 'roundWhy');
};

const squareStep = (c: Context, j: string, at: number, first: string): DraftStep =>
  step({
    verb: 'checked',
    thing: `check/square:${j}`,
    phase: 'box-up',
    rank: at + 0.5,
    text: c.say('meetsSquare', jointOf(c, j).name),
    reason: c.say('meetsSquareWhy'),
    needs: [first],
    asks: [
      {
        name: 'result',
        label: 'Seen',
        kind: 'choice',
        choices: ['square and free', 'had to be pulled over'],
      },
    ],
  });

const leftSettings = (c: Context, j: string, at: number, final: string): DraftStep[] =>
  Object.entries(jointOf(c, j).settings ?? {}).map(([id, setting]) =>
    step({
      verb: 'measured',
      thing: `setting/${j}:${id}`,
      round: 'left',
      phase: 'box-up',
      rank: at + 30,
      text: c.say('measureLeft', setting.name ?? setting.kind),
      reason: c.say('measureLeftWhy'),
      needs: [final],
      asks: [settingAsk(c, setting.value, setting.kind)],
    }),
  );
