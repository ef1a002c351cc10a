// What may be done to a joint that is tight already, and why not: two acts, never one.

import type { Fastener, Joint, ValueEntry } from '../plant/schema.ts';
import { readQuantity } from '../quantity/quantity.ts';
import { issuedText } from '../values/issue.ts';
import { type Context, jointOf } from './context.ts';
import { isThreaded } from './joint-shape.ts';
import type { RecheckFacts } from './types.ts';
import { shownValue } from './values.ts';

/** Why one or the other is not offered; the first five of a fastener, the others of the joint. */
export type WhyNot =
  | 'not screwed'
  | 'no torque issued'
  | 'threadlocked'
  | 'locked by a device'
  | 'by angle or yield'
  | 'metal to metal'
  | 'no gasket'
  | 'not issued';

/** One kind of fastener of a joint: may its nuts be backed off and brought to the value again? */
export type CheckRule = {
  readonly fastener: string;
  /** The id of the issued torque; null where the check is not offered. */
  readonly value: string | null;
  readonly why: readonly WhyNot[];
};

export type RecheckRule = {
  readonly check: readonly CheckRule[];
  readonly retighten: {
    /** The id of the issued torque; null where it is not offered. */
    readonly value: string | null;
    readonly why: readonly WhyNot[];
  };
};

type Values = Readonly<Record<string, ValueEntry>>;
type Ruled = Pick<Joint, 'fasteners' | 'seals' | 'retighten'>;

/**
 * Check of a nut that is tight: back off, bring to the value again. Re-tightening of a relaxed soft
 * gasket: no backing off, once round, and only where a value is issued for it. Neither turns what
 * an adhesive or a device holds, nor what was tightened by angle or to yield, nor a face that meets
 * metal to metal round a ring.
 */
export const recheckRule = (joint: Ruled, values: Values): RecheckRule => {
  const rows = Object.entries(joint.fasteners ?? {});
  const faces = facesOf(joint);
  const check = rows.map(([fastener, f]): CheckRule => {
    const why = [...faces, ...ofFastener(f, values)];
    return { fastener, value: why.length === 0 ? (f.tightening ?? null) : null, why };
  });
  const value = joint.retighten === undefined ? undefined : values[joint.retighten.value];
  const why: WhyNot[] = [
    ...faces,
    ...(joint.retighten === undefined || !isTorque(value) ? (['not issued'] as const) : []),
    ...(faces.length > 0 || hasSeal(joint, 'gasket') ? [] : (['no gasket'] as const)),
    ...rows.flatMap(([, f]) => ofFastener(f, values).filter((w) => w !== 'no torque issued')),
    ...(rows.length === 0 ? (['not screwed'] as const) : []),
  ];
  const id = why.length === 0 ? (joint.retighten?.value ?? null) : null;
  return { check, retighten: { value: id, why: [...new Set(why)] } };
};

const hasSeal = ({ seals }: Ruled, kind: 'gasket' | 'ring'): boolean =>
  Object.values(seals ?? {}).some((seal) => seal.kind === kind);

/** A ring and no gasket: the faces meet metal to metal, and nothing between them relaxes. */
const facesOf = (joint: Ruled): WhyNot[] =>
  hasSeal(joint, 'ring') && !hasSeal(joint, 'gasket') ? ['metal to metal'] : [];

const ofFastener = (f: Fastener, values: Values): WhyNot[] => {
  if (!isThreaded(f)) return ['not screwed'];
  const value = f.tightening === undefined ? undefined : values[f.tightening];
  const held = [f.locking, f.washer, value?.threadCondition].join(' ').toLowerCase();
  const angle = f.tightenedBy === 'angle' || f.tightenedBy === 'yield' || isAngle(value);
  return [
    ...(THREADLOCK.test(held) ? (['threadlocked'] as const) : []),
    ...(DEVICE.test(held) || PINNED.test(held) ? (['locked by a device'] as const) : []),
    ...(angle ? (['by angle or yield'] as const) : []),
    ...(angle || isTorque(value) ? [] : (['no torque issued'] as const)),
  ];
};

// Plant files say it in many words: one too many withholds an act, one too few breaks a bond.
const THREADLOCK =
  /thread ?-?(lock|seal)|adhesive|anaerobic|(lock|retain)ing (compound|fluid|liquid|agent|paste)/;
/** Bent, wired or pinned: it has to be undone first, and is then made up anew. */
const DEVICE =
  /\btab|lock[ -]?(tab|plate|wire)|locking[ -](plate|tab)|wire(?![ -]?brush)|split[ -]?pin/;
const PINNED = /cotter|castle|castellated|\bbent\b|\bpin(s|ned)?\b/;

/** A torque with a further turn after it: `40 N.m + 90 deg`, `20 N.m then a quarter turn`. */
const isAngle = (value: ValueEntry | undefined): boolean =>
  /\d\s*(°|deg)|\bturns?\b|\bangle\b/i.test(value === undefined ? '' : (issuedText(value) ?? ''));

/** A single figure of torque: a range or words are nothing a nut can be brought to again. */
const isTorque = (value: ValueEntry | undefined): boolean =>
  value?.kind === 'torque' && readQuantity(issuedText(value) ?? '', 'N.m', '').ok;

const WORDS = {
  'not screwed': 'whyNotScrewed',
  'no torque issued': 'whyNoTorque',
  threadlocked: 'whyThreadlocked',
  'locked by a device': 'whyLocked',
  'by angle or yield': 'whyByAngle',
  'metal to metal': 'whyMetalToMetal',
  'no gasket': 'whyNoGasket',
  'not issued': 'whyNotIssued',
} as const satisfies Record<WhyNot, string>;

/** The same as the record and the screens read it: names, holes, values as issued, reasons. */
export const recheckFacts = (c: Context, id: string): RecheckFacts => {
  const joint = jointOf(c, id);
  const rule = recheckRule(joint, c.machine.values);
  const told = (why: readonly WhyNot[]) => [...new Set(why)].map((each) => c.say(WORDS[each]));
  return {
    check: rule.check.map(({ fastener, value, why }) => {
      const row = c.shapes[id]?.fasteners.find((each) => each.id === fastener);
      return {
        fastener,
        what: row?.what ?? fastener,
        holes: row?.holes ?? [],
        value: value === null ? null : shownValue(c.machine, value, joint.name),
        why: told(why),
      };
    }),
    retighten: {
      value:
        rule.retighten.value === null
          ? null
          : shownValue(c.machine, rule.retighten.value, joint.name),
      when: rule.retighten.value === null ? null : (joint.retighten?.when ?? null),
      why: told(rule.retighten.why),
    },
  };
};
