// The request a pack is made from: its shape at the border, and its names found in the plant.

import { z } from 'zod';
import { DOES, isolationSchema } from '../plant/schema.ts';
import { didYouMean } from '../plant/suggest.ts';
import type { Machine, Plant } from '../plant/types.ts';
import type { Problem } from '../quantity/types.ts';
import type { HandsAboard, PackRequest } from './types.ts';

export const HANDS_ABOARD = ['1', '2', '3', 'more'] as const satisfies readonly HandsAboard[];

const settled = z.strictObject({
  by: z.string().trim().min(1),
  reason: z.string().trim().min(1),
  limits: z.string().optional(),
});

export const requestSchema = z.strictObject({
  machine: z.string().min(1),
  target: z.string().min(1),
  does: z.enum(DOES),
  why: z.string().optional(),
  when: z.string().optional(),
  sails: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}/)
    .optional(),
  on: z.iso.date().optional(),
  people: z.array(z.string()).optional(),
  handsAboard: z.enum(HANDS_ABOARD).optional(),
  closures: isolationSchema.omit({ note: true }).optional(),
  decisions: z.record(z.string(), settled).optional(),
  already: z
    .strictObject({
      off: z.array(z.string()).optional(),
      aside: z.array(z.string()).optional(),
      joints: z.array(z.string()).optional(),
    })
    .optional(),
});

type Found =
  | { readonly ok: true; readonly machine: Machine; readonly settled: PackRequest }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Takes ids or slugs; what comes back names ids only. */
export const findNames = (plant: Plant, request: PackRequest): Found => {
  const machine =
    plant.machines[request.machine] ??
    Object.values(plant.machines).find((m) => m.slug === request.machine);
  if (machine === undefined)
    return unknown('machine', request.machine, Object.keys(plant.machines), 'no such machine');
  const target =
    machine.targets[request.target] === undefined
      ? Object.keys(machine.targets).find(
          (id) => slugOf(machine.parts[id]?.name ?? id) === request.target,
        )
      : request.target;
  if (target === undefined)
    return unknown(
      'target',
      request.target,
      Object.keys(machine.targets),
      `${machine.name} has no such target`,
    );
  const does = Object.keys(machine.targets[target]?.does ?? {});
  if (!does.includes(request.does))
    return unknown('does', request.does, does, `that is not stated for ${target}`);
  return { ok: true, machine, settled: { ...request, machine: machine.id, target } };
};

const slugOf = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

const unknown = (path: string, got: string, allowed: readonly string[], why: string): Found => {
  const near = didYouMean(got, allowed);
  return {
    ok: false,
    problems: [
      {
        path,
        got,
        expected: allowed.length === 0 ? 'nothing is stated' : `one of: ${allowed.join(', ')}`,
        why,
        ...(near === undefined ? {} : { remedy: near }),
      },
    ],
  };
};

/** Names inside a request that the machine does not have. */
export const requestProblems = (machine: Machine, request: PackRequest): Problem[] => {
  const rows: Problem[] = [];
  const check = (path: string, got: string, known: Readonly<Record<string, unknown>>) => {
    if (known[got] !== undefined) return;
    const allowed = Object.keys(known);
    const near = didYouMean(got, allowed);
    rows.push({
      path,
      got,
      expected: `one of: ${allowed.join(', ')}`,
      why: `${machine.name} has no such id`,
      ...(near === undefined ? {} : { remedy: near }),
    });
  };
  const c = request.closures;
  for (const [i, x] of (c?.closures ?? []).entries()) {
    const path = `closures/closures/${i}`;
    check(`${path}/closure`, x.closure, machine.closures);
    const normal = machine.closures[x.closure]?.normal;
    if (normal === x.position || /^open\b/.test(x.position))
      rows.push({
        path: `${path}/position`,
        got: x.position,
        expected: 'the position that cuts it off',
        why:
          normal === x.position
            ? `that is the normal position of ${machine.closures[x.closure]?.name}`
            : 'an open closure cuts nothing off',
      });
  }
  const letsOut = (path: string, id: string) => {
    check(path, id, machine.closures);
    const kind = machine.closures[id]?.kind;
    if (kind === undefined || kind === 'drain' || kind === 'vent') return;
    const why = `${machine.closures[id]?.name} is a ${kind}`;
    rows.push({ path, got: id, expected: 'a drain or a vent', why });
  };
  for (const d of c?.drains ?? []) letsOut('closures/drains', d);
  for (const d of c?.vents ?? []) letsOut('closures/vents', d);
  if (c?.proveAt !== undefined) letsOut('closures/proveAt', c.proveAt);
  for (const p of [...(request.already?.off ?? []), ...(request.already?.aside ?? [])])
    check('already', p, machine.parts);
  for (const j of request.already?.joints ?? []) check('already/joints', j, machine.joints);
  return rows;
};
