// The lists of a pack: what to lay out before anything is opened, and what is owed afterwards.

import { type Context, jointOf, partOf } from './context.ts';
import { massKg } from './facts.ts';
import { proofFacts } from './prove.ts';
import { recheckFacts } from './recheck.ts';
import type { Temporary } from './temporary.ts';
import type { Lists, ShownValue, Step } from './types.ts';
import { tighteningValues } from './values.ts';

export const listsOf = (
  c: Context,
  steps: readonly Step[],
  temps: readonly Temporary[],
): Lists => ({
  tools: toolsOf(steps),
  seals: c.undone.flatMap((u) =>
    Object.entries(jointOf(c, u.id).seals ?? {}).map(([id, seal]) => ({
      thing: `seal/${u.id}:${id}`,
      name: seal.name ?? seal.kind,
      count: seal.count,
      size: seal.size ?? seal.thickness ?? null,
      compound: seal.compound ?? null,
      joint: jointOf(c, u.id).name,
    })),
  ),
  consumables: consumablesOf(c),
  loose: c.undone.flatMap((u) =>
    Object.entries(jointOf(c, u.id).loose ?? {}).map(([id, part]) => ({
      thing: `loose/${u.id}:${id}`,
      name: c.say('looseOf', part.name ?? part.kind, jointOf(c, u.id).name),
      count: part.count,
    })),
  ),
  closures: c.isolation.closures.map(({ closure, position }) => ({
    closure,
    name: c.machine.closures[closure]?.name ?? closure,
    position,
    normal: c.machine.closures[closure]?.normal ?? null,
    stations: c.machine.closures[closure]?.stations ?? [],
    tags: c.isolation.tags.filter((t) => t.closure === closure).map((t) => t.n),
  })),
  temporary: temps.map((t) => ({ thing: `temp/${t.n}`, name: t.name, where: t.where })),
  values: distinct(c.undone.flatMap((u) => tighteningValues(c.machine, jointOf(c, u.id)))),
  proofs: Object.entries(proofFacts(c)).map(([id, p]) => ({ id, name: p.name, what: p.what })),
  followUps: [
    ...(c.target.followUps ?? []).map((f, i) => ({
      id: `follow-up-${i + 1}`,
      after: f.after,
      what: f.what,
    })),
    ...retightenings(c),
  ],
  weights: c.moved.map((m) => ({
    part: m.id,
    name: partOf(c, m.id).name,
    massKg: massKg(c, m.id),
    carriedBy: partOf(c, m.id).carriedBy ?? null,
  })),
});

/** A relaxed gasket is taken up after the run: somebody has to see to it, or nobody does. */
const retightenings = (c: Context): Lists['followUps'] =>
  [...new Set(c.undone.map((u) => u.id))].flatMap((id) => {
    const { value, when } = recheckFacts(c, id).retighten;
    if (value?.shown == null || when === null) return [];
    const what = c.say('retightenLater', jointOf(c, id).name, value.shown, when);
    return [{ id: `re-tighten-${id}`, after: c.say('theFirstRun'), what }];
  });

const distinct = (values: readonly ShownValue[]): ShownValue[] =>
  values.filter((v, i) => values.findIndex((w) => w.id === v.id && w.name === v.name) === i);

const toolsOf = (steps: readonly Step[]): Lists['tools'] => {
  const tools = new Map<string, string[]>();
  for (const s of steps) {
    if (s.tool === null) continue;
    const name = s.thing.replace(/^\w+\//, '');
    const used = tools.get(s.tool) ?? [];
    if (!used.includes(name)) used.push(name);
    tools.set(s.tool, used);
  }
  return [...tools].map(([tool, used]) => ({ tool, for: used }));
};

const consumablesOf = (c: Context): Lists['consumables'] =>
  c.undone.flatMap((u) => {
    const joint = jointOf(c, u.id);
    const stated = (joint.consumables ?? []).map((x) => ({
      name: x.name,
      amount: x.amount ?? null,
      for: joint.name,
    }));
    const seals = Object.values(joint.seals ?? {}).flatMap((s) =>
      [s.lubricant, s.sealant].flatMap((name) =>
        name === undefined ? [] : [{ name, amount: null, for: joint.name }],
      ),
    );
    const locking = Object.values(joint.fasteners ?? {}).flatMap((f) =>
      f.locking === undefined ? [] : [{ name: f.locking, amount: `${f.count}`, for: joint.name }],
    );
    return [...stated, ...seals, ...locking];
  });
