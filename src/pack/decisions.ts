// Everything that will need a decision, listed once when the pack is made and settled by name.

import { type Context, isWet, jointOf, partOf, wayOf } from './context.ts';
import { isWaterSide } from './isolation.ts';
import { isThreaded } from './joint-shape.ts';
import type { Decision } from './types.ts';
import { tighteningValues } from './values.ts';

type Open = Omit<Decision, 'settled'>;

export const decisionsOf = (c: Context): Decision[] => {
  const open: Open[] = [
    ...isolationOpen(c),
    ...c.undone.flatMap((u) => jointOpen(c, u.id)),
    ...usedOpen(c),
    ...unknownOpen(c),
  ];
  return open.map((d) => ({ ...d, settled: c.request.decisions?.[d.id] ?? null }));
};

const isolationOpen = (c: Context): Open[] => {
  const wet = c.undone.some((u) => !u.bench && isWet(c.machine, u.id));
  if (!wet) return [];
  if (!c.isolation.stated)
    return [
      {
        id: 'isolation not stated',
        question: 'Which closures cut this off, and at which drain is it proved?',
        why: 'ISOLATION NOT STATED: no wet joint is ready until a named person has filled it in',
      },
    ];
  if (!c.isolation.closures.some((x) => isWaterSide(c.machine, x.closure)))
    return [
      {
        id: 'no closure of the water side',
        question: 'Which closures keep the water back?',
        why: 'none of the closures listed by hand stands in a line with a liquid',
      },
    ];
  if (c.isolation.proveAt === null)
    return [
      {
        id: 'no drain to prove at',
        question: 'At which drain is it seen that water runs and dies away?',
        why: 'the list names no drain between the closures and the joints',
      },
    ];
  return [];
};

const jointOpen = (c: Context, id: string): Open[] => {
  const joint = jointOf(c, id);
  const open: Open[] = [];
  if (joint.fasteners === undefined)
    open.push({
      id: `fastenings not stated joint/${id}`,
      question: `${joint.name}: what fastens it, and how many? Count them as they come off.`,
      why: 'the plant file does not say, so nothing can be counted back',
    });
  const threaded = Object.values(joint.fasteners ?? {}).some(isThreaded);
  if (threaded && joint.byHand !== true) {
    const values = tighteningValues(c.machine, joint);
    if (values.some((v) => v.shown === null))
      open.push({
        id: `no value joint/${id}`,
        question: `${joint.name}: to what value is it tightened, by whose word?`,
        why: 'no value is issued for this joint; a missing value is asked for, never guessed',
      });
    if (values.some((v) => v.shown !== null && v.threadCondition === null))
      open.push({
        id: `no thread condition joint/${id}`,
        question: `${joint.name}: is its value for dry or for oiled threads?`,
        why: 'a value without thread condition is incomplete',
      });
    if (values.some((v) => v.origin === 'general table'))
      open.push({
        id: `general table joint/${id}`,
        question: `${joint.name}: may the general table's value be used?`,
        why: 'the value was not issued for this joint',
      });
  }
  return open;
};

/** Joints that should be left alone but that nothing avoids. */
const usedOpen = (c: Context): Open[] =>
  [...new Set(c.plans.flatMap((p) => p.used))].map((id) => {
    const joint = jointOf(c, id);
    const why = joint.doNotDisturb ?? `it holds ${joint.medium ?? 'what should stay shut'}`;
    return {
      id: `do not disturb joint/${id}`,
      question: `${joint.name}: may it be undone?`,
      why: `no way round it was found: ${why}`,
    };
  });

const unknownOpen = (c: Context): Open[] => {
  const open: Open[] = [];
  const minutes = [
    ...c.undone
      .filter((u) => {
        const j = jointOf(c, u.id);
        return j.undoMinutes === undefined || j.makeMinutes === undefined;
      })
      .map((u) => jointOf(c, u.id).name),
    ...c.moved.filter((m) => wayOf(c, m)?.minutes === undefined).map((m) => partOf(c, m.id).name),
  ];
  if (minutes.length > 0)
    open.push({
      id: 'unknown minutes',
      question: `How long for ${[...new Set(minutes)].join(', ')}?`,
      why: '15 min each is assumed (common practice, no source); the plan is proven for that only',
    });
  for (const m of c.moved) {
    if (partOf(c, m.id).mass !== undefined) continue;
    open.push({
      id: `unknown mass part/${m.id}`,
      question: `${partOf(c, m.id).name}: what does it weigh, and what carries it?`,
      why: 'its mass is not stated',
    });
  }
  return open;
};

/** What rests on an unknown, in words; it is no problem, but it can't be checked. */
export const notChecked = (c: Context): string[] => {
  const rows: string[] = [];
  for (const u of c.undone) {
    const joint = jointOf(c, u.id);
    if (joint.accesses === undefined)
      rows.push(`${joint.name}: cannot be checked whether it can be reached (no access stated)`);
    if (joint.between === undefined)
      rows.push(`${joint.name}: cannot be checked which parts it joins, nor whether it is wet`);
    if (c.shapes[u.id]?.points === null && (c.shapes[u.id]?.holes.length ?? 0) > 1)
      rows.push(`${joint.name}: positions not known, so the order cannot be checked`);
  }
  const disturbed = [
    ...c.undone.map((u) => `joints/${u.id}/`),
    ...c.moved.map((m) => `parts/${m.id}/`),
  ];
  for (const path of c.machine.unknown)
    if (disturbed.some((d) => path.startsWith(d)))
      rows.push(`${inWords(c, path)} unknown, cannot be checked`);
  for (const o of c.machine.origins)
    if (o.from === 'assumed' && disturbed.some((d) => o.path.startsWith(d)))
      rows.push(`${inWords(c, o.path)} assumed${o.by === undefined ? '' : ` by ${o.by}`}`);
  rows.push(
    'Minutes for isolating, filling and proving are not stated, so they are not in the total',
  );
  return rows;
};

/** `parts/belt-guard/mass` as a person says it: `Belt guard: mass`. */
const inWords = (c: Context, path: string): string => {
  const [kind, id = '', ...rest] = path.split('/');
  const name = kind === 'joints' ? jointOf(c, id).name : partOf(c, id).name;
  return `${name}: ${rest.join(', ')}`;
};
