// From what was seen while stripping to a draft plant file, every field saying seen once, by, on.

import { DOES, type Does } from '../plant/schema.ts';
import { closuresOf, isolationsOf, type Lines, linesOf, seenOnce } from './draft-lines.ts';
import { hasJoint, slugged } from './strip.ts';
import { before } from './things.ts';
import type { JobState, Seen, State, StripState } from './types.ts';
import { type Yaml, yamlText } from './yaml-out.ts';

export type DraftFile = { readonly file: string; readonly text: string };

/** Plant, type and machine as files; none where the job had a pack, since then there is a file. */
export function draftPlant(state: State, job: string): readonly DraftFile[] {
  const now = state.jobs[job];
  const strip = now?.strip ?? null;
  if (now === undefined || strip === null) return [];
  const start = { by: now.startedBy, on: now.startedAt.utc.slice(0, 10) };
  const type = `${now.machine}-as-seen`;
  const machineName = [strip.machineName, strip.side].filter((w) => w !== '').join(', ');
  const remarks = [
    `A draft from the job "${now.title}" of ${start.on}: seen once, checked by nobody.`,
    'Look through it, put it right, and raise the issue in plant.yaml before it is relied on.',
  ];
  const plant = {
    plant: slugged(strip.vessel),
    name: strip.vessel,
    kind: 'vessel',
    issue: { number: 1, date: start.on, by: start.by },
  };
  const machine = {
    machine: now.machine,
    name: machineName,
    type,
    ...(strip.side === '' ? {} : { position: seenOnce(strip.side, start) }),
  };
  const content = { type, name: `${strip.machineName} as seen`, ...typeContent(now, strip, start) };
  return [
    { file: 'plant.yaml', text: yamlText(remarks, plant) },
    { file: `${type}.yaml`, text: yamlText([...remarks, ...ORDER], content) },
    { file: `${now.machine}-machine.yaml`, text: yamlText(remarks, machine) },
  ];
}

const ORDER = [
  'What a way asks to be clear came off before it on that day; it need not have stood in the way.',
  'Strike out what was not in the way, and the next job becomes shorter.',
];

/** What is left of the machine: the far side of every joint that was seen. */
const REST = 'rest-of-the-machine';

type Who = Pick<Seen, 'by' | 'on'>;

/** What came off, by the id it gets in the file. */
type Names = { readonly of: ReadonlyMap<string, string>; readonly target: string };

function typeContent(job: JobState, strip: StripState, start: Who): { [key: string]: Yaml } {
  const off = strip.seen.filter((s) => s.did === 'took off');
  const parts = off.filter((s) => before(s.thing) === 'part');
  const names = namesOf(off, job.target);
  const lines = linesOf(strip, start);
  const hold = holders(strip, parts);
  const taken = parts.some((p) => names.of.get(p.thing) === names.target);
  const loosened = off.filter((s) => before(s.thing) === 'joint');
  const alone = parts.length === 0 && loosened.length > 0;
  const ids = (list: readonly Seen[]): string[] => list.flatMap((s) => names.of.get(s.thing) ?? []);
  const target = {
    name: strip.component,
    ...(alone
      ? { ways: seenOnce({ seen: { gives: 'aside', joints: ids(loosened) } }, start) }
      : {}),
  };
  const take = alone
    ? [{ part: names.target, as: 'aside' }]
    : ids(parts).map((part) => ({ part, as: 'off' }));
  return {
    parts: {
      ...Object.fromEntries(
        parts.map((s) => [names.of.get(s.thing), partOf(s, strip, names, lines, hold)]),
      ),
      ...(taken ? {} : { [names.target]: target }),
      ...Object.fromEntries(
        loosened.filter((s) => s.wet !== 'no').map((s) => lineAt(s, names, lines)),
      ),
      [REST]: { name: 'Rest of the machine', stays: seenOnce(true, start) },
    },
    joints: Object.fromEntries(
      off.filter(hasJoint).map((s) => [names.of.get(s.thing), jointOf(s, strip, names, hold)]),
    ),
    ...lines.content,
    ...closuresOf(strip, lines, start),
    ...isolationsOf(strip, names.target, start),
    ...(take.length === 0
      ? {}
      : { targets: seenOnce(targetOf(job, names.target, taken, take), start) }),
  };
}

function targetOf(job: JobState, target: string, taken: boolean, take: Yaml): Yaml {
  const said = DOES.find((d): d is Does => d === job.does);
  const does = taken ? (said ?? 'exchange') : 'renew-in-place';
  const renews = does === 'renew-in-place' ? { renews: [target] } : {};
  return { [target]: { does: { [does]: { take, ...renews } } } };
}

/** Ids from the words, each once; the component keeps its own, so that the next job finds it. */
function namesOf(off: readonly Seen[], component: string): Names {
  const of = new Map<string, string>();
  const used = new Set([REST]);
  const sorted = [...off].sort(
    (a, b) => Number(slugged(b.what) === component) - Number(slugged(a.what) === component),
  );
  for (const s of sorted) {
    const own =
      before(s.thing) === 'joint' && slugged(s.what) === component
        ? `${component}-joint`
        : slugged(s.what);
    let id = own;
    for (let n = 2; used.has(id); n++) id = `${own}-${n}`;
    used.add(id);
    of.set(s.thing, id);
  }
  return { of, target: component };
}

/** Which part off each loosened joint and each temporary thing is told with. */
type Holders = {
  readonly loosened: ReadonlyMap<string, string>;
  readonly temps: ReadonlyMap<string, string>;
};

/** A joint loosened goes with the next part that came off, a thing put in with the last. */
function holders(strip: StripState, parts: readonly Seen[]): Holders {
  const at = (s: Seen): number => strip.seen.indexOf(s);
  const pick = (s: Seen, next: boolean): [string, string][] => {
    const later = parts.find((p) => at(p) > at(s));
    const earlier = parts.findLast((p) => at(p) < at(s));
    const found = next ? (later ?? earlier) : (earlier ?? later);
    return found === undefined ? [] : [[s.thing, found.thing]];
  };
  const of = (did: Seen['did'], sort: string, next: boolean) =>
    new Map(
      strip.seen
        .filter((s) => s.did === did && before(s.thing) === sort)
        .flatMap((s) => pick(s, next)),
    );
  return { loosened: of('took off', 'joint', true), temps: of('put in', 'temp', false) };
}

function partOf(s: Seen, strip: StripState, names: Names, lines: Lines, hold: Holders): Yaml {
  const id = names.of.get(s.thing) ?? '';
  const with_ = [...hold.loosened].filter(([, part]) => part === s.thing);
  const joints = [
    ...(hasJoint(s) ? [id] : []),
    ...with_.flatMap(([joint]) => names.of.get(joint) ?? []),
  ];
  const blank = blankOf(s, strip, hold);
  const temporary = tempsOf(s, strip, hold).filter((t) => t !== blank);
  const clear = clearedBefore(s, strip).flatMap((thing) => {
    const part = names.of.get(thing);
    return part === undefined ? [] : [{ part, as: 'off' }];
  });
  const way = {
    gives: 'off',
    joints,
    ...(clear.length === 0 ? {} : { clear }),
    ...(temporary.length === 0 ? {} : { temporary: temporary.map(tempName) }),
  };
  const [photo] = s.photos;
  return {
    name: nameOf(s, id),
    ...(s.wet === 'no' ? {} : { line: seenOnce(lines.of(s), s) }),
    ways: seenOnce({ seen: way }, s),
    ...(photo === undefined ? {} : { photo: seenOnce(photo, s) }),
  };
}

/** Two things of the same words are told apart by their number. */
function nameOf(s: Seen, id: string): string {
  const number = id === slugged(s.what) ? undefined : /-(\d+)$/.exec(id)?.[1];
  return number === undefined ? s.what : `${s.what} (${number})`;
}

/** The nearest parts that were off before it, looking past valves, tags and things put in. */
function clearedBefore(s: Seen, strip: StripState): readonly string[] {
  const byThing = new Map(strip.seen.map((x) => [x.thing, x]));
  const found = new Set<string>();
  const looked = new Set<string>();
  const ahead = [...s.justBefore];
  for (let thing = ahead.pop(); thing !== undefined; thing = ahead.pop()) {
    const before_ = byThing.get(thing);
    if (looked.has(thing) || before_ === undefined) continue;
    looked.add(thing);
    if (before_.did === 'took off' && before(thing) === 'part') found.add(thing);
    else ahead.push(...before_.justBefore);
  }
  found.delete(s.thing);
  return [...found];
}

const tempsOf = (s: Seen, strip: StripState, hold: Holders): readonly Seen[] =>
  strip.seen.filter((t) => t.did === 'put in' && hold.temps.get(t.thing) === s.thing);

/** The first blank put in after a wet thing came off closes the end that it left open. */
const blankOf = (s: Seen, strip: StripState, hold: Holders): Seen | null =>
  s.wet !== 'no' && hasJoint(s)
    ? (tempsOf(s, strip, hold).find((t) => t.kind === 'blank') ?? null)
    : null;

const tempName = (t: Seen): string => (t.where === null ? t.what : `${t.what}, ${t.where}`);

/** Which kind of seal it was is only known where somebody said so. */
const sealsIn = (s: Seen, count: number): Yaml =>
  seenOnce(
    { seal: { kind: s.sealKind ?? 'gasket', count } },
    s,
    s.sealKind === null ? 'assumed' : 'seen once',
  );

/** A wet joint that was only loosened: the line it stands in is named, so that its stop holds. */
function lineAt(s: Seen, names: Names, lines: Lines): [string, Yaml] {
  const id = `line-at-${names.of.get(s.thing)}`;
  return [
    id,
    { name: `Line at ${s.what}`, stays: seenOnce(true, s), line: seenOnce(lines.of(s), s) },
  ];
}

function jointOf(s: Seen, strip: StripState, names: Names, hold: Holders): Yaml {
  const id = names.of.get(s.thing) ?? '';
  const isPart = before(s.thing) === 'part';
  const seals = s.seals + s.sealsLeft;
  const between = isPart ? [id, REST] : s.wet === 'no' ? [] : [`line-at-${id}`];
  const fasteners = Object.fromEntries(
    s.fasteners.map(({ what, count }, i) => [`f${i + 1}`, { kind: what, count }]),
  );
  const blank = blankOf(s, strip, hold);
  const [photo] = s.photos;
  return {
    name: isPart ? `${nameOf(s, id)} joint` : nameOf(s, id),
    ...(between.length === 0 ? {} : { between: seenOnce(between, s, 'assumed') }),
    ...(s.fasteners.length === 0 ? {} : { fasteners: seenOnce(fasteners, s) }),
    ...(seals === 0 ? {} : { seals: sealsIn(s, seals) }),
    ...(blank === null ? {} : { blank: seenOnce(tempName(blank), blank) }),
    ...(photo === undefined ? {} : { photo: seenOnce(photo, s) }),
  };
}
