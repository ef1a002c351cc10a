// What a joint that is tight may have done to it now, and the acts that say it was done.

import type { WrenchLine } from '../pack/fastening-types.ts';
import type { Pack, ShownValue, Step, Thing } from '../pack/types.ts';
import { heard } from '../words/heard.ts';
import type { Sentence } from '../words/say.ts';
import { packKnowing } from './bolts.ts';
import { inForceAt, tightRefused } from './tight-refused.ts';
import type { Draft, JobState, Refusal } from './types.ts';

export type CheckOffer = {
  readonly fastener: string;
  readonly what: string;
  readonly holes: readonly string[];
  readonly value: ShownValue | null;
  /** The figure it is brought to again; null where the check is not offered. */
  readonly to: string | null;
  readonly why: readonly string[];
  /** How the wrench is set for it; none where the value is another than the pack's. */
  readonly sets: readonly WrenchLine[];
};

export type TightJoint = {
  readonly thing: Thing;
  readonly name: string;
  readonly holes: readonly string[];
  readonly layout: Pack['facts']['joints'][string]['layout'];
  readonly check: readonly CheckOffer[];
  /** What speaks against any check of it now, as the record would refuse it. */
  readonly checkStop: Refusal | null;
  readonly retighten: {
    readonly value: ShownValue | null;
    readonly to: string | null;
    readonly when: string | null;
    readonly why: readonly string[];
    readonly sets: readonly WrenchLine[];
  };
  /** Of the joint's last round: its cautions stand at these acts too, and the wrench is its. */
  readonly step: Step | null;
  readonly retightenStop: Refusal | null;
  /** What these sentences say, for other languages. */
  readonly said: readonly Sentence[];
};

/** Every joint of the job's packs that is not open, those of this job's making first. */
export function tightJoints(job: JobState, packs: readonly Pack[]): readonly TightJoint[] {
  const entryOf = (id: string) => job.entries.find((e) => e.thing === `joint/${id}`);
  const own = packs.filter((pack) => job.packs.includes(pack.id));
  const known = new Set(own.flatMap((pack) => Object.keys(pack.facts.joints)));
  const tight = [...known].filter((id) => entryOf(id)?.open !== true);
  const made = tight.filter((id) => entryOf(id) !== undefined);
  return [...made, ...tight.filter((id) => !made.includes(id))].flatMap((id) => {
    const { value, said } = heard(() => tightJoint(job, own, id));
    return value === null ? [] : [{ ...value, said }];
  });
}

function tightJoint(
  job: JobState,
  packs: readonly Pack[],
  id: string,
): Omit<TightJoint, 'said'> | null {
  const pack = packKnowing(job, packs, id);
  const joint = pack?.facts.joints[id];
  if (pack === null || joint === undefined) return null;
  const thing = `joint/${id}`;
  const to = (value: ShownValue | null) => (value === null ? null : inForceAt(job, thing, value));
  const step = pack.steps.findLast((s) => s.verb === 'made' && s.thing === thing) ?? null;
  const check = (joint.recheck?.check ?? []).map((rule) => ({
    ...rule,
    to: to(rule.value),
    sets: setsFor(pack, id, step, rule.value, to(rule.value)).filter(
      (line) => line.fastener === rule.fastener,
    ),
  }));
  const retighten = joint.recheck?.retighten ?? { value: null, when: null, why: [] };
  const offered = check.find((rule) => rule.to !== null);
  const again = to(retighten.value);
  return {
    thing,
    name: joint.name,
    holes: joint.holes,
    layout: joint.layout,
    check,
    checkStop:
      offered === undefined
        ? null
        : tightRefused(
            job,
            packs,
            checkDraft(job.id, '', thing, offered.holes.slice(0, 1), offered.to ?? ''),
          ),
    retighten: {
      ...retighten,
      to: again,
      sets: setsFor(pack, id, step, retighten.value, again),
    },
    step,
    retightenStop:
      again === null ? null : tightRefused(job, packs, retightenDraft(job.id, '', thing, again)),
  };
}

/** The wrench lines of the last round that hold for this very value. */
const setsFor = (
  pack: Pack,
  joint: string,
  step: Step | null,
  value: ShownValue | null,
  inForce: string | null,
): readonly WrenchLine[] =>
  value === null || value.shown !== inForce
    ? []
    : (step?.sets ?? []).filter(({ fastener }) =>
        pack.fastenings?.list.some(
          (one) => one.id === `${joint}:${fastener}` && one.value.id === value.id,
        ),
      );

export const checkDraft = (
  job: string,
  by: string,
  thing: Thing,
  holes: readonly string[],
  value: string,
  verifiedBy = '',
): Draft => ({
  stream: { kind: 'job', id: job },
  kind: 'checked-tight',
  by,
  body: { thing, holes: [...holes], value, text: 're-tightened', ...verified(verifiedBy) },
});

/** Said only after a person answered yes to each of the three. */
export const retightenDraft = (
  job: string,
  by: string,
  thing: Thing,
  value: string,
  verifiedBy = '',
): Draft => ({
  stream: { kind: 'job', id: job },
  kind: 're-tightened',
  by,
  body: {
    thing,
    value,
    cold: 'yes',
    noPressure: 'yes',
    startIsolated: 'yes',
    ...verified(verifiedBy),
  },
});

const verified = (by: string) => (by.trim() === '' ? {} : { verifiedBy: by });
