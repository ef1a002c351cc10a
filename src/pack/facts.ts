// What the record must know of the things a job disturbs, so that the fold needs no plant file.

import { readQuantity } from '../quantity/quantity.ts';
import { asFoundFacts } from './as-found.ts';
import { type Context, isWet, jointOf, partOf, placeName } from './context.ts';
import { proofDrains } from './isolate.ts';
import { givenBackFor } from './isolation.ts';
import { lookFacts } from './looks.ts';
import { proofFacts } from './prove.ts';
import { recheckFacts } from './recheck.ts';
import type { Temporary } from './temporary.ts';
import type { ClosureFacts, JointFacts, PackFacts, ProofFacts, Step } from './types.ts';

export const factsOf = (
  c: Context,
  steps: readonly Step[],
  temps: readonly Temporary[],
): PackFacts => {
  const proofs = proofFacts(c);
  const ids = c.isolation.closures.map((x) => x.closure);
  return {
    joints: Object.fromEntries(c.undone.map((u) => [u.id, jointFacts(c, u.id, proofs)])),
    parts: Object.fromEntries(
      c.moved.map((m) => [m.id, { name: partOf(c, m.id).name, massKg: massKg(c, m.id) }]),
    ),
    items: Object.fromEntries(
      c.items.map((p) => [
        p,
        { name: partOf(c, p).name, renewed: c.does !== 'overhaul' || p !== c.targetId },
      ]),
    ),
    closures: Object.fromEntries(
      [...ids, ...c.isolation.drains, ...c.isolation.vents].map((id) => [id, closureFacts(c, id)]),
    ),
    temps: Object.fromEntries(
      temps.map((t) => [
        String(t.n),
        {
          name: t.name,
          kind: t.kind,
          where: t.where,
          ...(t.before === true ? { holds: t.part } : {}),
        },
      ]),
    ),
    checks: named(steps, 'check/'),
    settings: Object.fromEntries(
      c.undone.flatMap((u) =>
        Object.entries(jointOf(c, u.id).settings ?? {}).map(([id, setting]) => [
          `${u.id}:${id}`,
          { name: c.say('settingOf', jointOf(c, u.id).name, setting.name ?? setting.kind) },
        ]),
      ),
    ),
    proofs,
    asFound: asFoundFacts(c),
    isolation: {
      stated: c.isolation.stated,
      closures: ids,
      proveAt: proofDrains(c),
      starts: ids.filter((id) => givenBackFor(c.machine, id) === 'start'),
      wetJoints: c.undone.filter((u) => !u.bench && isWet(c.machine, u.id)).map((u) => u.id),
    },
    looks: lookFacts(c),
  };
};

const named = (steps: readonly Step[], prefix: string): Record<string, { name: string }> =>
  Object.fromEntries(
    steps
      .filter((s) => s.thing.startsWith(prefix))
      .map((s) => [s.thing.slice(prefix.length), { name: s.text }]),
  );

export const massKg = (c: Pick<Context, 'machine'>, part: string): number | null => {
  const mass = partOf(c, part).mass;
  if (mass === undefined) return null;
  const read = readQuantity(mass, 'kg', part);
  return read.ok ? read.quantity.value : null;
};

const jointFacts = (
  c: Context,
  id: string,
  proofs: Readonly<Record<string, ProofFacts>>,
): JointFacts => {
  const joint = jointOf(c, id);
  const shape = c.shapes[id];
  const undone = c.undone.find((u) => u.id === id);
  const place =
    undone?.access == null ? null : placeName(c, joint.accesses?.[undone.access]?.place);
  return {
    name: joint.name,
    critical: joint.critical === true,
    wet: isWet(c.machine, id),
    fasteners: shape?.fasteners ?? [],
    holes: shape?.holes ?? [],
    rounds: shape?.rounds ?? ['made'],
    seals: Object.entries(joint.seals ?? {}).map(([s, seal]) => ({
      id: s,
      name: seal.name ?? seal.kind,
      count: seal.count,
    })),
    loose: Object.entries(joint.loose ?? {}).map(([l, part]) => ({
      id: l,
      name: part.name ?? part.kind,
      count: part.count,
    })),
    proofs: Object.entries(proofs)
      .filter(([, p]) => p.owedBy.includes(`joint/${id}`))
      .map(([p]) => p),
    place,
    layout:
      shape?.points == null ? { kind: 'unknown' } : { kind: 'positions', mm: [...shape.points] },
    recheck: recheckFacts(c, id),
  };
};

const closureFacts = (c: Context, id: string): ClosureFacts => {
  const closure = c.machine.closures[id];
  const listed = c.isolation.closures.find((x) => x.closure === id);
  const line = closure?.line === undefined ? undefined : c.machine.lines[closure.line];
  return {
    name: closure?.name ?? id,
    kind: closure?.kind ?? 'valve',
    normal: closure?.normal ?? null,
    workPosition: listed?.position ?? 'open',
    stations: closure?.stations ?? [],
    secure: closure?.secure ?? null,
    medium: line?.medium ?? null,
    place: placeName(c, closure?.place),
  };
};
