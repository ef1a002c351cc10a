// Joints and the torques issued for them: which sheet's value is whose, and who may go without.

import { must, type Place, should } from './faults.ts';
import type { Fastener, Joint } from './schema.ts';
import type { Sheet } from './sheets.ts';
import type { FileProblem, IssuedValue, Machine } from './types.ts';

type Joints = Machine['joints'];
type Values = Machine['values'];

/** The torque whose sheet names the joint or the kind of fastener, where the plant names none. */
const issuedFor = (values: Values, joint: string, fastener: string): IssuedValue | undefined =>
  Object.values(values).find(
    (v) => v.kind === 'torque' && (v.joint === joint || v.joint === `${joint}:${fastener}`),
  );

export function tightenedBy(joints: Joints, values: Values): Joints {
  const named = new Set(Object.values(values).flatMap((v) => v.joint?.split(':')[0] ?? []));
  if (named.size === 0) return joints;
  const rows = Object.entries(joints).map(([id, joint]): [string, Joint] => {
    if (!named.has(id) || joint.fasteners === undefined) return [id, joint];
    const fasteners = Object.entries(joint.fasteners).map(([name, fastener]) => {
      const value = fastener.tightening ?? issuedFor(values, id, name)?.id;
      return [name, value === undefined ? fastener : { ...fastener, tightening: value }] as const;
    });
    return [id, { ...joint, fasteners: Object.fromEntries(fasteners) }];
  });
  return Object.fromEntries(rows);
}

/** The plant names one value for a fastener, a sheet in force another: nobody may choose. */
export function saidTwice(joints: Joints, values: Values, sheets: readonly Sheet[]): FileProblem[] {
  return Object.entries(joints).flatMap(([id, { fasteners }]) =>
    Object.entries(fasteners ?? {}).flatMap(([name, { tightening }]): FileProblem[] => {
      const issued = issuedFor(values, id, name);
      if (tightening === undefined || issued === undefined || issued.id === tightening) return [];
      const sheet = sheets.find(
        (s) => s.sheet.sheet === issued.sheet && s.sheet.issue === issued.issue,
      );
      if (sheet === undefined) return [];
      const why = `${issued.id} is issued for ${id}, whose ${name} name ${tightening}`;
      const expected = `one value for ${id}: let its ${name} name ${issued.id}`;
      return [
        must('F20', sheet.at(`values/${issued.id}/joint`), { got: issued.joint, expected, why }),
      ];
    }),
  );
}

const SCREWED: readonly Fastener['kind'][] = ['bolt', 'cap screw', 'stud and nut', 'nut'];

/** Tight by hand without a value is for joints that the plant marks as not critical. */
export function untoldByHand(joints: Joints, at: (path: string) => Place): FileProblem[] {
  return Object.entries(joints).flatMap(([id, joint]): FileProblem[] => {
    const bare = Object.values(joint.fasteners ?? {}).some(
      ({ kind, tightening }) => SCREWED.includes(kind) && tightening === undefined,
    );
    if (joint.byHand !== true || !bare || joint.critical === false) return [];
    const expected = 'critical: false, or a value issued for it';
    if (joint.critical === true) {
      const why = `${joint.name} is critical, and would be made tight by hand with no value`;
      return [must('F20', at(`joints/${id}/byHand`), { got: true, expected, why })];
    }
    const why = `${joint.name} is made tight by hand with no value, and nobody says it may be`;
    return [should(at(`joints/${id}/byHand`), { got: true, expected, why })];
  });
}

/** A re-tightening names an issued torque: a clearance or an interval tightens nothing. */
export function untoldRetightening(
  joints: Joints,
  values: Values,
  at: (path: string) => Place,
): FileProblem[] {
  return Object.entries(joints).flatMap(([id, { name, retighten, seals }]): FileProblem[] => {
    if (retighten === undefined) return [];
    const value = values[retighten.value];
    // An id that nothing has is told where names are looked up.
    if (value !== undefined && value.kind !== 'torque') {
      const expected = 'the id of an issued torque';
      const why = `${name} would be re-tightened to ${value.name}, which is a ${value.kind}`;
      const got = retighten.value;
      return [must('F20', at(`joints/${id}/retighten/value`), { got, expected, why })];
    }
    if (Object.values(seals ?? {}).some(({ kind }) => kind === 'gasket')) return [];
    const expected = 'a joint with a gasket, or no retighten';
    const why = `${name} has no gasket that could relax, so its re-tightening is never offered`;
    return [should(at(`joints/${id}/retighten`), { got: retighten.value, expected, why })];
  });
}
