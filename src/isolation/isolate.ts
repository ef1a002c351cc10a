// `isolate`: the closures that cut the work off from every source, proved least, or the open path.

import { limits } from '../limits.ts';
import { missing, newSheet, type Sheet } from '../quantity/sheet.ts';
import type { Source } from '../quantity/types.ts';
import { type Cut, cutOf } from './cut.ts';
import { cutKeeping, type Keep, type Search } from './keep.ts';
import type { PlainIn, PlainOut, SegmentsIn, SegmentsOut } from './model.ts';
import { closuresToWork, type Network, networkOf } from './network.ts';
import { fewestClosures } from './paths.ts';
import { segmentsOf } from './segments.ts';

const computed: Source = { kind: 'computed', by: 'isolate' };

export type Wanted = {
  readonly network: Network;
  readonly barriers: number;
  readonly keeps: readonly Keep[];
  readonly search?: Search;
};

/** One answer for a network, however it was given. */
export type Found =
  | {
      readonly isolable: true;
      readonly cut: Cut;
      readonly bound: number;
      readonly proven: boolean;
    }
  | { readonly isolable: false; readonly why: string; readonly path: readonly number[] };

export function isolated({ network, barriers, keeps, search }: Wanted): Found {
  const uncut = uncutPath(network, barriers);
  if (uncut !== null) {
    return { isolable: false, why: whyUncut(network, barriers, uncut), path: uncut };
  }
  const kept = cutKeeping(network, barriers, keeps, search);
  if (kept.ok) {
    return { isolable: true, cut: kept.cut, bound: kept.bound, proven: kept.proven };
  }
  if (kept.lost === null) throw new Error('no path is uncut and no service is lost, yet no cut');
  return { isolable: false, ...lossOf(network, kept.lost) };
}

const kindIs = (network: Network, kind: string) => (node: number) =>
  network.nodes[node]?.kind === kind;

const allOf = (network: Network, kind: string): number[] =>
  network.nodes.flatMap((node, at) => (node.kind === kind ? [at] : []));

/** A path from a source to the work with fewer closures than barriers; null: there is none. */
function uncutPath(network: Network, barriers: number): readonly number[] | null {
  const path = fewestClosures(network, allOf(network, 'source'), kindIs(network, 'work'));
  return path === null || path.closures >= barriers ? null : path.nodes;
}

const idOf = (network: Network, node: number): string => network.nodes[node]?.id ?? '';

function whyUncut(network: Network, barriers: number, path: readonly number[]): string {
  const closures = path.filter(kindIs(network, 'valve')).map((node) => idOf(network, node));
  const through = path.map((node) => idOf(network, node)).join(', ');
  if (closures.length === 0) return `no closure stands on the path ${through}`;
  return `only ${closures.join(', ')} of ${barriers} closures stands on the path ${through}`;
}

/** The supply's way, and from the place on it that lies nearest the work on to the work. */
function lossOf(network: Network, { place, from }: Keep): { why: string; path: number[] } {
  const members = network.placeOf.flatMap((own, node) => (own === place ? [node] : []));
  const isSupply = (node: number) =>
    network.nodes[node]?.kind === 'source' && from.includes(network.placeOf[node] ?? -1);
  const way = fewestClosures(network, members, isSupply)?.nodes ?? [];
  const far = closuresToWork(network);
  const farOf = (node: number) => far[network.placeOf[node] ?? -1] ?? 0;
  const least = Math.min(...way.map(farOf));
  const at = way.findLastIndex((node) => farOf(node) === least);
  const turn = way[at];
  const onward =
    turn === undefined
      ? []
      : (fewestClosures(network, [turn], kindIs(network, 'work'))?.nodes ?? []);
  const path = [...way.slice(at + 1).reverse(), ...onward];
  const kept = idOf(network, members[0] ?? -1);
  const why =
    `${kept} cannot stay supplied: its supply runs where too few closures are left before ` +
    `the work, on the path ${path.map((node) => idOf(network, node)).join(', ')}`;
  return { why, path };
}

/** The part of the answer that every form shares. */
export function answerOf(wanted: Wanted, found: Found, sheet: Sheet): Omit<PlainOut, 'working'> {
  const { network, barriers } = wanted;
  const segments = network.segments.map((members) => members.map((node) => idOf(network, node)));
  if (!found.isolable) {
    const without = { isolable: false, why: found.why, effort: null, bound: null };
    const needs = { effort: ['a closure on the uncut path'], bound: ['the same'] };
    return {
      ...without,
      proven: true,
      closures: [],
      uncutPath: found.path.map((node) => idOf(network, node)),
      segments,
      cautions: insteadOf(wanted),
      notWorkedOut: [...missing({ effort: null, bound: null }, needs)].map(mutable),
    };
  }
  const { cut, proven } = found;
  const effort = clean(cut.effort);
  const closures = cut.shut.map((at) => idOf(network, network.valves[at] ?? -1));
  sheet.take('N', 'closures on every path, at least', barriers, '1', {
    kind: 'entered',
    by: 'the input',
  });
  sumInto(
    sheet,
    closures,
    cut.shut.map((at) => network.weights[at] ?? 0),
  );
  const bound = proven ? effort : Math.min(effort, clean(found.bound));
  sheet.take('B', 'least effort possible, by the flow that fits through', bound, '1', computed);
  const open = proven
    ? []
    : [`Not proven least: no choice has less effort than ${bound}, this one has ${effort}.`];
  return {
    isolable: true,
    effort,
    bound,
    proven,
    closures,
    uncutPath: [],
    segments,
    cautions: open,
    notWorkedOut: [],
  };
}

const mutable = ({ output, needs }: { output: string; needs: readonly string[] }) => ({
  output,
  needs: [...needs],
});

/** Sums of decimals end in digits of rounding that say nothing. */
const clean = (value: number): number => Number(value.toPrecision(12));

function sumInto(sheet: Sheet, names: readonly string[], weights: readonly number[]): void {
  const each = limits.isolation.termsInARow;
  let sum = 0;
  for (let at = 0; at < Math.max(1, weights.length); at += each) {
    const terms = weights.slice(at, at + each);
    sum += terms.reduce((total, weight) => total + weight, 0);
    const last = at + each >= weights.length;
    const before = at === 0 ? [] : [`E${at / each}`];
    const symbol = last ? 'E' : `E${at / each + 1}`;
    const text = `effort of ${names.slice(at, at + each).join(', ') || 'nothing to shut'}`;
    const expression = [...before, ...terms].join(' + ') || '0';
    sheet.work(symbol, text, expression, clean(sum), '1', computed);
  }
}

/** What would do in place of what cannot be had. */
function insteadOf({ network, barriers, keeps }: Wanted): string[] {
  const namesOf = ({ shut }: Cut) =>
    shut.map((at) => idOf(network, network.valves[at] ?? -1)).join(', ') || 'nothing';
  const said: string[] = [];
  if (keeps.length > 0 && uncutPath(network, barriers) === null) {
    const cut = cutOf(network, barriers, []);
    if (cut !== null) said.push(`With no service kept it can be cut off: shut ${namesOf(cut)}.`);
  }
  if (barriers > 1 && uncutPath(network, 1) === null) {
    const kept = cutKeeping(network, 1, keeps);
    if (kept.ok) said.push(`With one closure on each path it can: shut ${namesOf(kept.cut)}.`);
  }
  return said;
}

export function isolatePlain(input: PlainIn, search?: Search): PlainOut {
  const nodes = input.nodes.map(({ id, kind, weight }) => ({ id, kind, weight: weight ?? 1 }));
  const network = networkOf(nodes, input.edges);
  const placeOf = (id: string) => network.placeOf[network.indexOf.get(id) ?? -1] ?? -1;
  const keeps = input.keep.flatMap((one): Keep[] =>
    typeof one === 'string'
      ? [{ place: placeOf(one), from: network.sources }]
      : one.from.map((source) => ({ place: placeOf(one.node), from: [placeOf(source)] })),
  );
  const sheet = newSheet();
  const wanted: Wanted = {
    network,
    barriers: input.barriers,
    keeps,
    ...(search === undefined ? {} : { search }),
  };
  const answer = answerOf(wanted, isolated(wanted), sheet);
  return { ...answer, working: [...sheet.rows] };
}

export function isolateSegments(input: SegmentsIn): SegmentsOut {
  const segments = segmentsOf(input);
  const sheet = newSheet();
  sheet.take('n', 'segments', segments.length, '1', computed);
  const needs = ['nodes of kind source and work', 'edges'];
  const none = {
    isolable: null,
    effort: null,
    bound: null,
    proven: null,
    closures: null,
    uncutPath: null,
  };
  return {
    ...none,
    segments,
    working: [...sheet.rows],
    cautions: [],
    notWorkedOut: Object.keys(none).map((output) => ({ output, needs: [...needs] })),
  };
}
