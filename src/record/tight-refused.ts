// What may not be recorded of a joint that is tight: a check or a re-tightening that nobody offers.

import type { JointFacts, Pack, ShownValue } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { packKnowing } from './bolts.ts';
import { isWet, isYes } from './isolation.ts';
import { waitsForLook } from './second-look-refused.ts';
import { supersededRefused } from './superseded.ts';
import { after } from './things.ts';
import type { ActBody, Draft, JobState, Refusal } from './types.ts';

const bad = (why: string, open: readonly string[] = []): Refusal => ({
  stop: 'bad act',
  why,
  open,
});

/** Asked of `checked-tight` and `re-tightened` by server, app and command line alike. */
export function tightRefused(job: JobState, packs: readonly Pack[], draft: Draft): Refusal | null {
  const { body } = draft;
  const thing = String(body.thing);
  const pack = packKnowing(job, packs, after(thing));
  const joint = pack?.facts.joints[after(thing)];
  if (pack === null || joint === undefined) return bad(say('noSuchJoint', thing));
  if (job.entries.some((e) => e.thing === thing && e.open))
    return bad(say('openNotTight', joint.name));
  const own =
    draft.kind === 'checked-tight'
      ? checkRefused(job, pack, joint, body)
      : retightenRefused(job, packs, joint, body);
  return own ?? supersededRefused(job, body, pack.facts);
}

/** A nut backed off opens what it holds: on a wet joint not before the isolation is proved. */
function checkRefused(job: JobState, pack: Pack, joint: JointFacts, body: ActBody): Refusal | null {
  const holes = Array.isArray(body.holes) ? body.holes.map(String) : [];
  if (holes.length === 0) return bad(say('whichHoles', joint.name));
  const rules = joint.recheck?.check ?? [];
  const refused = holes.flatMap((hole) => {
    const rule = rules.find((each) => each.holes.includes(hole));
    const none = [say('noSuchHole', [hole])];
    const why = rule === undefined ? none : rule.why;
    return rule?.value != null ? [] : [say('notOfferedHole', joint.name, hole, why)];
  });
  if (refused.length > 0) return bad(refused.join('; '), refused);
  const values = rules
    .filter((rule) => rule.holes.some((hole) => holes.includes(hole)))
    .flatMap(({ value }) => value ?? []);
  const other = valueRefused(job, joint, values, body);
  if (other !== null) return other;
  if (!isWet(pack.facts, after(String(body.thing)))) return null;
  if (job.isolation.proved) return waitsForLook(job, 'isolation', joint.name);
  return {
    stop: 'isolation not proved',
    why: say('checkedUnder', joint.name),
    open: job.isolation.why.split('; '),
  };
}

/** Cold, no pressure, start isolated: a yes to each, and the record may not say otherwise. */
function retightenRefused(
  job: JobState,
  packs: readonly Pack[],
  joint: JointFacts,
  body: ActBody,
): Refusal | null {
  const rule = joint.recheck?.retighten;
  if (rule?.value == null)
    return bad(say('notOffered', joint.name, rule?.why ?? [say('whyNotIssued')]));
  const lacks = [
    ...(isYes(body.cold) ? [] : [say('saidCold')]),
    ...(isYes(body.noPressure) ? [] : [say('saidNoPressure')]),
    ...(isYes(body.startIsolated) ? [] : [say('saidStartIsolated')]),
  ];
  if (lacks.length > 0) return bad(say('threeAnswers', lacks), lacks);
  const inForce = packs.find((p) => p.id === job.packInForce)?.facts;
  const open = (inForce?.isolation.starts ?? []).filter((id) => !job.isolation.shut.includes(id));
  if (open.length > 0) {
    const names = open.map((id) => inForce?.closures[id]?.name ?? id);
    return bad(say('startNotShut', names), names);
  }
  const holes = Array.isArray(body.holes) ? body.holes.map(String) : joint.holes;
  if (joint.holes.some((hole) => !holes.includes(hole))) return bad(say('wholeRound', joint.name));
  return valueRefused(job, joint, [rule.value], body);
}

/** The figure said is the one in force, as issued; with two kinds of bolt, each by itself. */
function valueRefused(
  job: JobState,
  joint: JointFacts,
  values: readonly ShownValue[],
  body: ActBody,
): Refusal | null {
  for (const value of values) {
    const inForce = inForceAt(job, String(body.thing), value);
    if (body.value !== inForce)
      return bad(say('otherValue', joint.name, inForce, String(body.value ?? '–')));
  }
  return null;
}

/** As the pack shows it, or as a later issue that a named person has looked at replaced it. */
export function inForceAt(job: JobState, thing: string, value: ShownValue): string {
  const newer = job.superseded.find(
    (r) => r.value === value.id && r.thing === thing && r.looked !== null,
  );
  return newer?.is ?? value.shown ?? '';
}
