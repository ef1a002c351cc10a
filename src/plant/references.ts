// Finds every name in a machine's description that nothing has, or that is no longer in force.

import { type Fault, must, type Place } from './faults.ts';
import { type Laid, laidAt } from './resolve.ts';
import { didYouMean } from './suggest.ts';
import type { FileProblem, Machine } from './types.ts';

export type Kind = 'part' | 'joint' | 'line' | 'closure' | 'sensor' | 'isolation' | 'value';

/** What a machine (or a type that no machine has yet) holds. */
export type Content = Pick<
  Machine,
  'parts' | 'joints' | 'lines' | 'closures' | 'sensors' | 'isolations' | 'targets'
>;

export type Subject = {
  /** The machine's id, or the type's when no machine has it. */
  readonly id: string;
  readonly content: Content;
  /** All ids that stand in the files, also of entries left out because they misfit. */
  readonly known: Readonly<Record<Kind, ReadonlySet<string>>>;
  /** Value ids that stood in an earlier issue only, with what took their place. */
  readonly withdrawn: ReadonlyMap<string, string>;
  readonly laid: readonly Laid[];
  readonly at: (path: string) => Place;
  /** Entries were left out, so reachability can't be judged. */
  readonly mended: boolean;
};

type Reference = { readonly path: string; readonly kind: Kind; readonly id: string };
type Demand = { readonly part: string };

const listed = (path: string, kind: Kind, ids: readonly string[] | undefined): Reference[] =>
  (ids ?? []).map((id, at) => ({ path: `${path}/${at}`, kind, id }));

const one = (path: string, kind: Kind, id: string | undefined): Reference[] =>
  id === undefined ? [] : [{ path, kind, id }];

const demands = (path: string, list: readonly Demand[] | undefined): Reference[] =>
  (list ?? []).map(({ part }, at) => ({ path: `${path}/${at}/part`, kind: 'part', id: part }));

function* ofParts({ parts }: Content): Generator<Reference> {
  for (const [id, part] of Object.entries(parts)) {
    const path = `parts/${id}`;
    yield* one(`${path}/on`, 'part', part.on);
    yield* one(`${path}/line`, 'line', part.line);
    for (const [way, { joints, clear, rig }] of Object.entries(part.ways ?? {})) {
      yield* one(`${path}/ways/${way}/rig/from/part`, 'part', rig?.from?.part);
      yield* demands(`${path}/ways/${way}/rig/points`, rig?.points);
      yield* listed(`${path}/ways/${way}/joints`, 'joint', joints);
      yield* demands(`${path}/ways/${way}/clear`, clear);
    }
  }
}

function* ofJoints({ joints }: Content): Generator<Reference> {
  for (const [id, joint] of Object.entries(joints)) {
    const path = `joints/${id}`;
    yield* listed(`${path}/between`, 'part', joint.between);
    for (const [access, { clear }] of Object.entries(joint.accesses ?? {})) {
      yield* demands(`${path}/accesses/${access}/clear`, clear);
    }
    for (const [fastener, { tightening }] of Object.entries(joint.fasteners ?? {})) {
      yield* one(`${path}/fasteners/${fastener}/tightening`, 'value', tightening);
    }
    yield* one(`${path}/retighten/value`, 'value', joint.retighten?.value);
    for (const [setting, { value }] of Object.entries(joint.settings ?? {})) {
      yield* one(`${path}/settings/${setting}/value`, 'value', value);
    }
  }
}

function* ofLines({ closures, sensors, isolations }: Content): Generator<Reference> {
  for (const [id, { line }] of Object.entries(closures)) {
    yield* one(`closures/${id}/line`, 'line', line);
  }
  for (const [id, { line, joint }] of Object.entries(sensors)) {
    yield* one(`sensors/${id}/line`, 'line', line);
    yield* one(`sensors/${id}/joint`, 'joint', joint);
  }
  for (const [id, isolation] of Object.entries(isolations)) {
    const path = `isolations/${id}`;
    for (const [at, { closure }] of isolation.closures.entries()) {
      yield* one(`${path}/closures/${at}/closure`, 'closure', closure);
    }
    yield* listed(`${path}/drains`, 'closure', isolation.drains);
    yield* listed(`${path}/vents`, 'closure', isolation.vents);
    yield* one(`${path}/proveAt`, 'closure', isolation.proveAt);
  }
}

function* ofTargets({ targets }: Content): Generator<Reference> {
  for (const [id, target] of Object.entries(targets)) {
    const path = `targets/${id}`;
    yield* one(path, 'part', id);
    yield* listed(`${path}/limits`, 'value', target.limits);
    yield* listed(`${path}/alarms`, 'sensor', target.alarms);
    for (const [does, spec] of Object.entries(target.does)) {
      const start = `${path}/does/${does}`;
      yield* demands(`${start}/take`, spec.take);
      yield* demands(`${start}/bench`, spec.bench);
      yield* listed(`${start}/renews`, 'part', spec.renews);
      yield* one(`${start}/interval`, 'value', spec.interval);
      yield* one(`${start}/isolation`, 'isolation', spec.isolation);
    }
  }
}

export function* referencesOf(content: Content): Generator<Reference> {
  yield* ofParts(content);
  yield* ofJoints(content);
  yield* ofLines(content);
  yield* ofTargets(content);
}

const FOLDER: Readonly<Record<Kind, string>> = {
  part: 'parts',
  joint: 'joints',
  line: 'lines',
  closure: 'closures',
  sensor: 'sensors',
  isolation: 'isolations',
  value: 'values',
};

function problemOf(subject: Subject, { path, kind, id }: Reference): FileProblem {
  const known = subject.known[kind];
  const by = subject.withdrawn.get(id);
  const place = subject.at(path);
  const expected = `the id of a ${kind}`;
  const tell = (fault: Fault, at: Place, why: string, remedy?: string) =>
    must(fault, at, { got: id, expected, why, remedy });
  if (kind === 'value' && by !== undefined) {
    return tell('F10', place, `${id} is no longer in force`, by);
  }
  const removed = laidAt(subject.laid, `${FOLDER[kind]}/${id}`);
  if (removed?.removed === true && laidAt(subject.laid, path) === undefined) {
    // The type is right for the other positions: what is wrong is taking away what it still names.
    const here = subject.at(`${FOLDER[kind]}/${id}`);
    const why = `${place.path} (${place.file}:${place.line}) still names ${kind} ${id}`;
    return tell('F9', here, why, `let a difference set ${place.path} as well`);
  }
  const where = kind === 'value' ? `no sheet for ${subject.id} gives` : 'there is no';
  const why = kind === 'value' ? `${where} ${id}` : `${where} ${kind} ${id} on ${subject.id}`;
  return tell('F9', place, why, didYouMean(id, known));
}

/** Kinds in `unsure` may be held by a file that could not be read. */
export function referenceProblems(subject: Subject, unsure: readonly Kind[]): FileProblem[] {
  const problems: FileProblem[] = [];
  for (const reference of referencesOf(subject.content)) {
    if (unsure.includes(reference.kind)) continue;
    const withdrawn = reference.kind === 'value' && subject.withdrawn.has(reference.id);
    if (!withdrawn && subject.known[reference.kind].has(reference.id)) continue;
    problems.push(problemOf(subject, reference));
  }
  return problems;
}
