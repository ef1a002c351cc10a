// `isolate` from lines with parts: the cut, and the order in which it is shut, drained and proved.

import { newSheet, quantity, type Sheet } from '../quantity/sheet.ts';
import type { Source } from '../quantity/types.ts';
import { answerOf, type Found, isolated, type Wanted } from './isolate.ts';
import type { Keep, Search } from './keep.ts';
import type { LinesIn, LinesOut, PartIn } from './model.ts';
import { type GivenNode, type Network, networkOf, reachedFrom } from './network.ts';

export function isolateLines(input: LinesIn, search?: Search): LinesOut {
  const opened = new Set(input.opened);
  const nodes = Object.entries(input.parts).map(([id, part]): GivenNode => {
    if (opened.has(id)) return { id, kind: 'work', weight: 0 };
    if (part.kind === 'valve') return { id, kind: 'valve', weight: part.effort ?? 1 };
    return { id, kind: part.kind === 'source' ? 'source' : 'junction', weight: 0 };
  });
  const network = networkOf(nodes, input.joins);
  const keeps = input.keep.flatMap((id) => keepsOf(input, network, id));
  const sheet = newSheet();
  const wanted: Wanted = {
    network,
    barriers: input.barriers,
    keeps,
    ...(search === undefined ? {} : { search }),
  };
  const found = isolated(wanted);
  const answer = answerOf(wanted, found, sheet);
  if (!found.isolable) return notIsolable(answer, sheet);
  const world = worldOf(input, network, found.cut.shut);
  const drains = drainsOf(world);
  const vents = ventsOf(world);
  const volume = volumeOf(world, sheet);
  const unknown = { output: 'trappedVolume', needs: [...volume.needs] };
  return {
    ...answer,
    order: orderOf(world, drains, vents),
    drains,
    vents,
    lostServices: lostOf(world),
    trappedVolume: volume.value === null ? null : quantity(volume.value, 'l'),
    working: [...sheet.rows],
    cautions: [...answer.cautions, ...cautionsOf(world, drains, vents)],
    notWorkedOut: [...answer.notWorkedOut, ...(volume.value === null ? [unknown] : [])],
  } as LinesOut;
}

const placeOf = (network: Network, id: string): number =>
  network.placeOf[network.indexOf.get(id) ?? -1] ?? -1;

/** What a service needs: each source it names, or any. */
function keepsOf({ parts }: LinesIn, network: Network, id: string): Keep[] {
  const part = parts[id];
  const from = part?.kind === 'service' ? part.from : undefined;
  const place = placeOf(network, id);
  if (from === undefined) return [{ place, from: network.sources }];
  return from.map((source) => ({ place, from: [placeOf(network, source)] }));
}

function notIsolable(answer: ReturnType<typeof answerOf>, sheet: Sheet): LinesOut {
  const needs = ['closures that cut it off'];
  return {
    ...answer,
    order: [],
    drains: [],
    vents: [],
    lostServices: [],
    trappedVolume: null,
    working: [...sheet.rows],
    notWorkedOut: [...answer.notWorkedOut, { output: 'trappedVolume', needs }],
  };
}

type Where = 'opened' | 'between' | 'supplied';

/** The network as it stands with the closures shut. */
type World = {
  readonly input: LinesIn;
  readonly network: Network;
  readonly closures: readonly string[];
  readonly shut: ReadonlySet<number>;
  readonly whereOf: (id: string) => Where;
  readonly sources: readonly string[];
};

function worldOf(input: LinesIn, network: Network, cut: readonly number[]): World {
  const shut = new Set(cut.map((at) => network.segments.length + at));
  const opened = reachedFrom(network, network.works, shut);
  const supplied = reachedFrom(network, network.sources, shut);
  return {
    input,
    network,
    closures: cut.map((at) => network.nodes[network.valves[at] ?? -1]?.id ?? ''),
    shut,
    whereOf: (id) => {
      const place = placeOf(network, id);
      return opened.has(place) ? 'opened' : supplied.has(place) ? 'supplied' : 'between';
    },
    sources: Object.keys(input.parts).filter((id) => input.parts[id]?.kind === 'source'),
  };
}

const nameOf = ({ input }: World, id: string): string => input.parts[id]?.name ?? id;

const heightOf = (part: PartIn | undefined): number | null =>
  part?.kind === 'drain' || part?.kind === 'vent' ? (part.height?.value ?? null) : null;

type Drain = LinesOut['drains'][number];

function drainsOf(world: World): Drain[] {
  const all = Object.entries(world.input.parts).flatMap(([id, part]): Drain[] => {
    const where = world.whereOf(id);
    if (part.kind !== 'drain' || where === 'supplied') return [];
    const height = heightOf(part);
    const said = (wanted: 'proves' | 'noProof' | 'unknown') =>
      world.sources.filter((source) => proofBy(height, world.input.parts[source]) === wanted);
    return [
      {
        part: id,
        where,
        proves: said('proves'),
        noProof: said('noProof'),
        unknown: said('unknown'),
      },
    ];
  });
  const height = (one: Drain) => heightOf(world.input.parts[one.part]) ?? Number.MAX_VALUE;
  return all.sort((a, b) => height(a) - height(b));
}

/** A drain that the source does not reach runs dry whether the closure holds or not. */
function proofBy(height: number | null, source: PartIn | undefined) {
  if (source?.kind !== 'source') return 'unknown';
  if ((source.pressure?.value ?? 0) > 0) return 'proves';
  if (height === null || source.height === undefined || source.depth === undefined)
    return 'unknown';
  const level = source.height.value + source.depth.value;
  return level > height ? 'proves' : 'noProof';
}

function ventsOf(world: World): string[] {
  const found = Object.entries(world.input.parts).filter(
    ([id, { kind }]) => kind === 'vent' && world.whereOf(id) !== 'supplied',
  );
  const height = (part: PartIn) => heightOf(part) ?? -Number.MAX_VALUE;
  return found.sort(([, a], [, b]) => height(b) - height(a)).map(([id]) => id);
}

/** Services that a source reached before and that none, or not each they need, reaches now. */
function lostOf(world: World): string[] {
  const { input, network, shut } = world;
  const fed = (keep: Keep, closed: ReadonlySet<number>) => {
    const reached = reachedFrom(network, [keep.place], closed);
    return keep.from.some((source) => reached.has(source));
  };
  return Object.entries(input.parts).flatMap(([id, { kind }]) => {
    if (kind !== 'service') return [];
    const needs = keepsOf(input, network, id);
    const before = needs.every((keep) => fed(keep, new Set()));
    return before && !needs.every((keep) => fed(keep, shut)) ? [id] : [];
  });
}

const entered: Source = { kind: 'entered', by: 'the input' };

function volumeOf(world: World, sheet: Sheet) {
  const needs: string[] = [];
  const symbols: string[] = [];
  let total = 0;
  for (const [id, part] of Object.entries(world.input.parts)) {
    if (part.kind !== 'run' && part.kind !== 'machine') continue;
    if (world.whereOf(id) === 'supplied') continue;
    const symbol = `V${symbols.length + 1}`;
    const { volume, bore, length } = part;
    if (volume !== undefined) {
      sheet.take(symbol, `in ${nameOf(world, id)}`, volume.value, 'l', entered);
      total += volume.value;
    } else if (bore !== undefined && length !== undefined) {
      const litres = (Math.PI / 4) * (bore.value / 100) ** 2 * length.value * 10;
      const expression = `pi/4*(${bore.value}/100)^2*${length.value}*10`;
      const from: Source = { kind: 'computed', by: 'isolate' };
      sheet.work(symbol, `in ${nameOf(world, id)}`, expression, litres, 'l', from);
      total += litres;
    } else {
      needs.push(`parts/${id}/volume, or its bore and length`);
      continue;
    }
    symbols.push(symbol);
  }
  if (needs.length > 0) return { value: null, needs };
  const from: Source = { kind: 'computed', by: 'isolate' };
  sheet.work('V', 'behind the closures', symbols.join(' + ') || '0', total, 'l', from);
  return { value: total, needs };
}

/** Greatest first: what presses or burns most is shut first; unknown counts as most. */
function severity(part: PartIn | undefined): readonly number[] {
  if (part?.kind !== 'source') return [0, 0];
  const pressure = part.pressure?.value ?? 0;
  return [Math.max(pressure, 0), part.depth?.value ?? Number.MAX_VALUE];
}

const compare = (a: readonly number[], b: readonly number[]): number => {
  for (let at = 0; at < a.length; at += 1) {
    const by = (b[at] ?? 0) - (a[at] ?? 0);
    if (by !== 0) return by;
  }
  return 0;
};

/** Every closure is shut before anything is drained, and all is proved before it is opened. */
function orderOf(world: World, drains: readonly Drain[], vents: readonly string[]) {
  const shut = shuttingOrder(world);
  const where = (id: string) => (world.whereOf(id) === 'opened' ? 'the opened part' : 'between');
  const proof = drains.filter(({ where: side }) => side === 'opened');
  return [
    ...shut,
    ...vents.map((part) => ({
      do: 'vent' as const,
      part,
      reason: `lets air into ${where(part)}, and pressure out`,
    })),
    ...drains.map(({ part }) => ({
      do: 'drain' as const,
      part,
      reason: `empties ${where(part)}, and stays open`,
    })),
    ...proof.map(({ part, proves, noProof, unknown }) => ({
      do: 'prove' as const,
      part,
      reason: proofInWords(world, proves, noProof, unknown),
    })),
    ...world.input.opened.map((part) => ({
      do: 'open' as const,
      part,
      reason: 'only when each closure is proved; a blank for each open end is in hand',
    })),
  ];
}

function proofInWords(
  world: World,
  proves: readonly string[],
  noProof: readonly string[],
  unknown: readonly string[],
): string {
  const named = (list: readonly string[]) => list.map((id) => nameOf(world, id)).join(', ');
  const parts = [
    proves.length > 0 ? `flow comes, dies away and stays dead: ${named(proves)}` : '',
    noProof.length > 0 ? `no proof, the source is not higher: ${named(noProof)}` : '',
    unknown.length > 0 ? `cannot be said, heights are wanting: ${named(unknown)}` : '',
  ];
  return parts.filter(Boolean).join('; ');
}

function shuttingOrder(world: World) {
  const { network, shut, input } = world;
  const supplied = reachedFrom(network, network.sources, shut);
  const ranked = world.closures.map((part) => {
    const place = placeOf(network, part);
    const outer = (network.next[place] ?? []).filter((at) => supplied.has(at));
    const beyond = reachedFrom(network, outer, shut);
    const facing = world.sources.filter((id) => beyond.has(placeOf(network, id)));
    const worst = facing.map((id) => severity(input.parts[id])).sort(compare)[0] ?? [0, 0];
    return { part, facing, rank: [facing.length > 0 ? 1 : 0, ...worst] };
  });
  ranked.sort((a, b) => compare(a.rank, b.rank));
  return ranked.map(({ part, facing }) => ({
    do: 'shut' as const,
    part,
    reason:
      facing.length > 0
        ? `stands before ${facing.map((id) => nameOf(world, id)).join(', ')}`
        : 'the second closure, with nothing pressing on it any more',
  }));
}

function cautionsOf(world: World, drains: readonly Drain[], vents: readonly string[]): string[] {
  const { input } = world;
  const said: string[] = [];
  const named = (ids: readonly string[]) => ids.map((id) => nameOf(world, id)).join(', ');
  const ofKind = (kind: string) =>
    Object.keys(input.parts).filter((id) => input.parts[id]?.kind === kind);
  const nonReturn = ofKind('non-return');
  if (nonReturn.length > 0) {
    said.push(`A non-return valve is never counted as a barrier: ${named(nonReturn)}.`);
  }
  const throttled = world.closures.filter((id) => {
    const part = input.parts[id];
    return part?.kind === 'valve' && part.normal === 'throttled';
  });
  if (throttled.length > 0) {
    said.push(`Throttled: write down the turns before shutting: ${named(throttled)}.`);
  }
  const proof = drains.filter(({ where }) => where === 'opened');
  if (proof.length === 0) {
    said.push('No drain is given in the opened part: the isolation cannot be proved there.');
  }
  const unproved = world.sources.filter(
    (source) => !proof.some(({ proves }) => proves.includes(source)),
  );
  if (proof.length > 0 && unproved.length > 0) {
    said.push(`At no drain of the opened part is there a proof against ${named(unproved)}.`);
  }
  if (vents.length === 0)
    said.push('No vent is given behind the closures: it drains slowly or not.');
  said.push('The order of shutting is common practice, no source: what presses most comes first.');
  return said;
}

export type { Found };
