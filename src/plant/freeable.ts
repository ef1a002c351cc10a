// Which parts can be freed at all: what ways and accesses demand, until nothing more moves.

import { must, type Place, should } from './faults.ts';
import type { Content, Subject } from './references.ts';
import type { Part, Way } from './schema.ts';
import type { FileProblem } from './types.ts';

type As = 'off' | 'aside';
type Need = { readonly part: string; readonly as: As; readonly path: string };
/** One demand of a way: met when any of its alternatives (the accesses of a joint) is met. */
type Demand = { readonly joint?: string; readonly any: readonly (readonly Need[])[] };

const nodeOf = ({ part, as }: { part: string; as: As }): string => `${part} ${as}`;

const needsOf = (path: string, clear: Way['clear']): Need[] =>
  (clear ?? []).map(({ part, as }, at) => ({ part, as, path: `${path}/clear/${at}` }));

function demandsOf({ joints }: Content, path: string, way: Way): Demand[] {
  const own = needsOf(path, way.clear).map((need): Demand => ({ any: [[need]] }));
  const ofJoints = way.joints.flatMap((id): Demand[] => {
    const accesses = joints[id]?.accesses;
    if (accesses === undefined) return [];
    const any = Object.entries(accesses).map(([access, { clear }]) =>
      needsOf(`joints/${id}/accesses/${access}`, clear),
    );
    return [{ joint: id, any }];
  });
  return [...own, ...ofJoints];
}

type Graph = {
  readonly content: Content;
  /** The demands of each way of each part. */
  readonly ways: ReadonlyMap<string, readonly { id: string; way: Way; demands: Demand[] }[]>;
  readonly freed: ReadonlySet<string>;
};

const met = (freed: ReadonlySet<string>, { any }: Demand): boolean =>
  any.some((needs) => needs.every((need) => freed.has(nodeOf(need))));

/** An unknown way is no fault: a part without stated ways gets the benefit of the doubt. */
const doubtful = (part: Part): boolean => part.ways === undefined && part.stays !== true;

function graphOf(content: Content): Graph {
  const ways = new Map(
    Object.entries(content.parts).map(([id, part]) => [
      id,
      Object.entries(part.stays === true ? {} : (part.ways ?? {})).map(([name, way]) => ({
        id: name,
        way,
        demands: demandsOf(content, `parts/${id}/ways/${name}`, way),
      })),
    ]),
  );
  const freed = new Set<string>();
  const free = (part: string, as: As) => {
    freed.add(nodeOf({ part, as }));
    if (as === 'off') freed.add(nodeOf({ part, as: 'aside' }));
  };
  // Each pass frees something or is the last, so there are at most two passes a part.
  for (let size = -1; size < freed.size; ) {
    size = freed.size;
    for (const [id, part] of Object.entries(content.parts)) {
      if (doubtful(part)) free(id, 'off');
      for (const { way, demands } of ways.get(id) ?? []) {
        if (demands.every((demand) => met(freed, demand))) free(id, way.gives);
      }
      for (const as of ['off', 'aside'] as const) {
        if (part.on !== undefined && freed.has(nodeOf({ part: part.on, as }))) free(id, as);
      }
    }
  }
  return { content, ways, freed };
}

const candidates = (graph: Graph, { part, as }: { part: string; as: As }) =>
  (graph.ways.get(part) ?? []).filter(({ way }) => as === 'aside' || way.gives === 'off');

/** The unmet needs of a part's ways that may themselves wait for something. */
function waitsFor(graph: Graph, node: { part: string; as: As }): Need[] {
  return candidates(graph, node).flatMap(({ demands }) =>
    demands
      .filter((demand) => !met(graph.freed, demand))
      .flatMap(({ any }) => any.flat())
      .filter((need) => !graph.freed.has(nodeOf(need)) && candidates(graph, need).length > 0),
  );
}

/** A shortest round of waiting that comes back to `start`; null when there is none. */
function circleFrom(graph: Graph, start: { part: string; as: As }): Need[] | null {
  const goal = nodeOf(start);
  const seen = new Set<string>();
  let edge: { node: { part: string; as: As }; trail: Need[] }[] = [{ node: start, trail: [] }];
  while (edge.length > 0) {
    const next: typeof edge = [];
    for (const { node, trail } of edge) {
      for (const need of waitsFor(graph, node)) {
        if (nodeOf(need) === goal) return [...trail, need];
        if (seen.has(nodeOf(need))) continue;
        seen.add(nodeOf(need));
        next.push({ node: need, trail: [...trail, need] });
      }
    }
    edge = next;
  }
  return null;
}

function circleProblem(subject: Subject, circle: readonly Need[]): FileProblem {
  const nameOf = (id: string) => subject.content.parts[id]?.name ?? id;
  const ids = circle.map(({ part }) => part);
  // The entry written last in the files is the one that closed the circle.
  const places = circle
    .map(({ path, part }) => ({ part, place: subject.at(path) }))
    .sort((a, b) => order(a.place, b.place));
  const closing = places.at(-1) ?? { part: '', place: subject.at('parts') };
  const round = [ids.at(-1) ?? '', ...ids].map(nameOf).join(' waits for ');
  const others = places.slice(0, -1).map(({ place }) => `${place.file}:${place.line}`);
  const also = others.length === 0 ? '' : ` (see also ${others.join(', ')})`;
  return must('F12', closing.place, {
    got: closing.part,
    expected: 'a part that can be cleared first',
    why: `a circle: ${round}${also}`,
  });
}

const order = (a: Place, b: Place): number =>
  (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) || a.line - b.line;

/** Why a way is not open, where the reason is no other part's waiting. */
function hardReason(graph: Graph, demands: readonly Demand[]): string | null {
  for (const demand of demands) {
    if (met(graph.freed, demand)) continue;
    const { joint, any } = demand;
    const nameOf = (id: string) => graph.content.parts[id]?.name ?? id;
    const jointName = joint === undefined ? '' : (graph.content.joints[joint]?.name ?? joint);
    if (any.length === 0) return `${jointName} has no access`;
    const dead = any.map((needs) =>
      needs.find((need) => !graph.freed.has(nodeOf(need)) && candidates(graph, need).length === 0),
    );
    if (dead.some((need) => need === undefined)) continue;
    const [need] = dead;
    if (need === undefined) continue;
    const stays = graph.content.parts[need.part]?.stays === true;
    const what = stays ? `${nameOf(need.part)} stays` : `${nameOf(need.part)} cannot go ${need.as}`;
    return joint === undefined ? what : `${jointName} is not reached: ${what}`;
  }
  return null;
}

function stuckProblem(subject: Subject, graph: Graph, id: string): FileProblem {
  const ways = graph.ways.get(id) ?? [];
  const name = subject.content.parts[id]?.name ?? id;
  const reasons = ways.map(
    (way) => `by ${way.id}: ${hardReason(graph, way.demands) ?? 'what it waits for never moves'}`,
  );
  return must('F11', subject.at(`parts/${id}/ways`), {
    got: ways.map((way) => way.id),
    expected: 'at least one way that can be done',
    why: ways.length === 0 ? `${name} has no way in its list` : `${name} – ${reasons.join('; ')}`,
    remedy: 'put the way right, or write stays: true for a part that never comes off',
  });
}

/** Circles, and parts that none of their ways can free. Follow-on parts are not told again. */
export function freeableProblems(subject: Subject): FileProblem[] {
  const onCircles = sittingProblems(subject);
  if (subject.mended || onCircles.length > 0) return onCircles;
  const graph = graphOf(subject.content);
  const problems: FileProblem[] = [];
  const inCircle = new Set<string>();
  const stuck: string[] = [];
  for (const [id, part] of Object.entries(subject.content.parts)) {
    if (part.stays === true || part.ways === undefined) continue;
    if (!graph.freed.has(nodeOf({ part: id, as: 'aside' }))) stuck.push(id);
    for (const as of ['aside', 'off'] as const) {
      const node = { part: id, as };
      if (graph.freed.has(nodeOf(node)) || inCircle.has(id)) continue;
      const circle = circleFrom(graph, node);
      if (circle === null) continue;
      for (const { part: member } of circle) inCircle.add(member);
      problems.push(circleProblem(subject, circle));
    }
  }
  const roots = stuck.filter((id) =>
    (graph.ways.get(id) ?? []).every(({ demands }) => hardReason(graph, demands) !== null),
  );
  problems.push(...roots.map((id) => stuckProblem(subject, graph, id)));
  if (problems.length > 0) return problems;
  return [...stuck.map((id) => stuckProblem(subject, graph, id)), ...deadWays(subject, graph)];
}

/** A way that can never be done beside another that can: worth a look, no fault. */
function deadWays(subject: Subject, graph: Graph): FileProblem[] {
  return [...graph.ways].flatMap(([id, ways]) =>
    ways
      .filter(({ demands }) => demands.some((demand) => !met(graph.freed, demand)))
      .map((way) =>
        should(subject.at(`parts/${id}/ways/${way.id}`), {
          got: way.id,
          expected: 'a way that can be done on this machine',
          why: `${hardReason(graph, way.demands) ?? 'what it waits for never moves'}`,
        }),
      ),
  );
}

/** What a part sits on, nearest first; it ends where the chain would close on itself. */
export function carriersOf(parts: Content['parts'], id: string): string[] {
  const chain: string[] = [];
  for (let at = parts[id]?.on; at !== undefined; at = parts[at]?.on) {
    if (chain.includes(at)) break;
    chain.push(at);
  }
  return chain;
}

function sittingProblems(subject: Subject): FileProblem[] {
  const { parts } = subject.content;
  const told = new Set<string>();
  return Object.keys(parts).flatMap((id) => {
    const chain = carriersOf(parts, id);
    if (!chain.includes(id) || told.has(id)) return [];
    for (const member of chain) told.add(member);
    const paths = chain.map((member) => subject.at(`parts/${member}/on`));
    const place = [...paths].sort(order).at(-1) ?? subject.at(`parts/${id}/on`);
    const round = [id, ...chain].map((member) => parts[member]?.name ?? member);
    const why = `a circle: ${round.join(' sits on ')}`;
    const got = parts[place.path.split('/')[1] ?? id]?.on;
    return [must('F12', place, { got, expected: 'a part that does not sit on this one', why })];
  });
}
