// Faces, seals and loose parts: cleaned and looked at, counted out, renewed and counted in.

import type { Loose } from '../plant/schema.ts';
import { type Context, jointOf, movedBetween, partOf } from './context.ts';
import type { DraftStep } from './order.ts';
import { step, stepId } from './step.ts';
import { movedId, undoneId } from './strip.ts';
import type { Temporary } from './temporary.ts';

export const facesId = (j: string): string => stepId('checked', `check/faces:${j}`);
export const sealInId = (j: string, s: string): string => stepId('seal-in', `seal/${j}:${s}`);
export const looseInId = (j: string, l: string): string => stepId('loose-in', `loose/${j}:${l}`);

/** Loose parts that go in before the part is offered up; the rest go on when the joint is made. */
export const EARLY_LOOSE: readonly Loose['kind'][] = [
  'key',
  'drive tang',
  'circlip',
  'dowel',
  'shim',
  'spacer',
  'slinger',
];

export const fitSteps = (
  c: Context,
  temps: readonly Temporary[],
  jointRank: (j: string) => number,
): DraftStep[] => [
  ...looks(c),
  ...c.undone.flatMap((u) => [
    ...faces(c, u.id, blanksOff(temps, u.id), jointRank(u.id)),
    ...seals(c, u.id, jointRank(u.id)),
    ...looseParts(c, u.id, jointRank(u.id)),
  ]),
];

/** What a part asks to have looked at while it is off. */
const looks = (c: Context): DraftStep[] =>
  c.moved.flatMap((m) =>
    (partOf(c, m.id).looks ?? []).map((text, i) =>
      step({
        verb: 'checked',
        thing: `check/look:${m.id}-${i + 1}`,
        phase: 'inspect',
        rank: 4_500 + i,
        text: c.say('lookAt', partOf(c, m.id).name, text),
        reason: c.say('lookAtWhy'),
        needs: [movedId(c, m.id)],
        asks: [{ name: 'result', label: 'Seen', kind: 'choice', choices: ['good', 'not good'] }],
      }),
    ),
  );

const hasFaces = (c: Context, j: string): boolean =>
  Object.keys(jointOf(c, j).seals ?? {}).length > 0;

/** A blank sits on the face: it is looked at, and the seal laid on, only once the blank is off. */
const blanksOff = (temps: readonly Temporary[], j: string): string[] =>
  temps
    .filter((t) => t.kind === 'blank' && t.of === j)
    .map((t) => stepId('taken-away', `temp/${t.n}`));

const faces = (c: Context, j: string, blanks: readonly string[], at: number): DraftStep[] => {
  if (!hasFaces(c, j)) return [];
  const joint = jointOf(c, j);
  const ring = Object.values(joint.seals ?? {}).some((s) => s.kind === 'ring');
  return [
    step({
      verb: 'checked',
      thing: `check/faces:${j}`,
      phase: 'inspect',
      rank: blanks.length === 0 ? 5_000 : at + 1,
      text: c.say('faces', joint.name, ring),
      reason: c.say('facesWhy'),
      needs: [
        undoneId(j),
        ...movedBetween(c, j).map((p) => movedId(c, p)),
        ...Object.keys(joint.seals ?? {}).map((s) => stepId('seal-out', `seal/${j}:${s}`)),
        ...blanks,
      ],
      asks: [{ name: 'result', label: 'Seen', kind: 'choice', choices: ['good', 'not good'] }],
    }),
  ];
};

const seals = (c: Context, j: string, at: number): DraftStep[] => {
  const joint = jointOf(c, j);
  return Object.entries(joint.seals ?? {}).map(([id, seal]) => {
    const name = seal.name ?? seal.kind;
    const size = [seal.size, seal.compound, seal.thickness].filter((x) => x !== undefined);
    return step({
      verb: 'seal-in',
      thing: `seal/${j}:${id}`,
      phase: 'fit',
      rank: at + 2,
      text: c.say(
        'sealsIn',
        joint.name,
        seal.count,
        name,
        size.length === 0 ? null : c.say('listed', size),
        seal.lubricant ?? null,
        seal.sealant ?? null,
      ),
      reason: c.say('sealsInWhy'),
      needs: [stepId('seal-out', `seal/${j}:${id}`), ...(hasFaces(c, j) ? [facesId(j)] : [])],
      count: { n: seal.count, what: name },
      asks: [{ name: 'count', label: 'Put in', kind: 'count', expected: seal.count }],
    });
  });
};

const looseParts = (c: Context, j: string, at: number): DraftStep[] => {
  const joint = jointOf(c, j);
  return Object.entries(joint.loose ?? {}).map(([id, part]) => {
    const early = EARLY_LOOSE.includes(part.kind);
    const lastRound = c.shapes[j]?.rounds.at(-1);
    return step({
      verb: 'loose-in',
      thing: `loose/${j}:${id}`,
      phase: early ? 'fit' : 'box-up',
      rank: early ? at + 3 : at + 40,
      text: c.say('looseIn', joint.name, part.count, part.name ?? part.kind),
      reason: c.say('looseInWhy'),
      needs: [
        stepId('loose-out', `loose/${j}:${id}`),
        ...(early || lastRound === undefined ? [] : [stepId('made', `joint/${j}`, lastRound)]),
      ],
      count: { n: part.count, what: part.name ?? part.kind },
      asks: [{ name: 'count', label: 'Put in', kind: 'count', expected: part.count }],
    });
  });
};
