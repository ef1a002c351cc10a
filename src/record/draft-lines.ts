// The lines, closures and isolation of a draft plant file, as far as they were seen.

import { MEDIA } from '../plant/schema.ts';
import { FLOW, slugged } from './strip.ts';
import type { Seen, StripState } from './types.ts';
import type { Yaml } from './yaml-out.ts';

type Who = Pick<Seen, 'by' | 'on'>;

/** A field that says where it came from. */
export const seenOnce = (value: Yaml, s: Pick<Seen, 'by' | 'on'>, from = 'seen once'): Yaml => ({
  value,
  from,
  by: s.by,
  on: s.on,
});

export type Lines = {
  readonly content: { readonly lines?: Yaml };
  /** The line a wet thing, a valve or a drain belongs to; what nobody said is not known. */
  readonly of: (s: Seen) => string;
  /** A drain stands on its own line where that is said or there is but one; else on the first. */
  readonly ofDrain: (s: Seen) => { readonly id: string; readonly said: boolean } | null;
};

const NOT_KNOWN = 'liquid-not-known';

/**
 * A thing may be wet without anybody saying with what. Its line is then written as sea water,
 * `assumed`, so that the next pack keeps the stop before it: the careful answer, to be put right.
 */
export function linesOf(strip: StripState, start: Who): Lines {
  const wet = strip.seen.filter((s) => s.did === 'took off' && s.wet !== 'no');
  const valves = strip.seen.filter(isFlow);
  const media = [...new Set([...wet, ...valves].flatMap((s) => s.medium ?? []))];
  const only = media.length === 1 ? media[0] : undefined;
  const of = (s: Seen): string => slug(s.medium ?? only ?? NOT_KNOWN);
  const used = new Map<string, Seen>();
  for (const s of [...wet, ...valves]) if (!used.has(of(s))) used.set(of(s), s);
  const rows = [...used].map(([id, s]): [string, Yaml] => {
    const medium = MEDIA.find((m) => slug(m) === id);
    const name = medium === undefined ? 'Liquid not known' : `Line of ${medium}`;
    const said = medium === undefined ? seenOnce('sea water', s, 'assumed') : seenOnce(medium, s);
    return [id, { name, medium: said }];
  });
  const [first] = used.keys();
  const ofDrain: Lines['ofDrain'] = (s) =>
    first === undefined ? null : { id: used.has(of(s)) ? of(s) : first, said: used.has(of(s)) };
  const content = rows.length === 0 ? {} : { lines: seenOnce(Object.fromEntries(rows), start) };
  return { content, of, ofDrain };
}

const slug = (medium: string): string => medium.replaceAll(' ', '-');

const isFlow = (s: Seen): boolean => s.did === 'shut' && FLOW.includes(s.kind ?? '');

const isDrain = (s: Seen): boolean => s.did === 'opened';

/** Ids of closures and drains from their words, each once; a device's own names may be no ids. */
function idsOf(strip: StripState): ReadonlyMap<string, string> {
  const of = new Map<string, string>();
  const used = new Set<string>();
  for (const s of strip.seen.filter((x) => x.did === 'shut' || isDrain(x))) {
    let id = slugged(s.what);
    for (let n = 2; used.has(id); n++) id = `${slugged(s.what)}-${n}`;
    used.add(id);
    of.set(s.thing, id);
  }
  return of;
}

export function closuresOf(strip: StripState, lines: Lines, start: Who): { closures?: Yaml } {
  const seen = strip.seen.filter((s) => s.did === 'shut' || isDrain(s));
  if (seen.length === 0) return {};
  const ids = idsOf(strip);
  const rows = seen.map((s): [string, Yaml] => {
    const stations = strip.seen
      .filter((t) => t.did === 'tagged' && t.of === s.thing && t.where !== null)
      .map((t) => t.where ?? '');
    const line = isFlow(s) ? { id: lines.of(s), said: true } : isDrain(s) ? lines.ofDrain(s) : null;
    const notes = [
      ...(s.kind === 'plug' ? ['a plug, pulled and not switched'] : []),
      ...(s.turns === null ? [] : [`${s.turns} turns from ${s.found ?? 'open'}`]),
    ];
    return [
      ids.get(s.thing) ?? '',
      {
        name: s.what,
        kind: isDrain(s) ? 'drain' : s.kind === 'plug' ? 'breaker' : (s.kind ?? 'valve'),
        ...(line === null
          ? {}
          : { line: seenOnce(line.id, s, line.said ? 'seen once' : 'assumed') }),
        normal: seenOnce(isDrain(s) ? 'shut' : (s.found ?? 'open'), s),
        ...(stations.length === 0 ? {} : { stations: seenOnce(stations, s) }),
        ...(s.where === null ? {} : { place: seenOnce(s.where, s) }),
        ...(notes.length === 0 ? {} : { note: seenOnce(notes.join('; '), s) }),
      },
    ];
  });
  return { closures: seenOnce(Object.fromEntries(rows), start) };
}

/** Listed by hand: what was shut on that job, by the name of whoever shut the first of it. */
export function isolationsOf(strip: StripState, target: string, start: Who): { isolations?: Yaml } {
  const shut = strip.seen.filter((s) => s.did === 'shut');
  const [first] = shut;
  if (first === undefined) return {};
  const ids = idsOf(strip);
  const drains = strip.seen.filter(isDrain);
  const proved = strip.provedAt.findLast((p) => drains.some((d) => d.thing === p));
  const isolation = {
    by: first.by,
    on: first.on,
    closures: shut.map((s) => ({
      closure: ids.get(s.thing) ?? '',
      position: s.position ?? (s.kind === 'plug' ? 'pulled' : 'shut'),
    })),
    ...(drains.length === 0
      ? {}
      : {
          drains: seenOnce(
            drains.map((d) => ids.get(d.thing) ?? ''),
            first,
          ),
        }),
    ...(proved === undefined ? {} : { proveAt: seenOnce(ids.get(proved) ?? '', first) }),
    note: seenOnce('what was shut on that job', first),
  };
  return { isolations: seenOnce({ [target]: isolation }, start) };
}
