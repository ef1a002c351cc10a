// What is wrong with an input of `isolate`: ids nobody knows or twice, nothing to cut off from.

import type { Problem } from '../quantity/types.ts';
import type { IsolateIn, LinesIn, PlainIn, SegmentsIn } from './model.ts';
import { type GivenNode, networkOf, reachedFrom } from './network.ts';

export function isolateProblems(input: IsolateIn): Problem[] {
  if ('parts' in input) return linesProblems(input);
  return 'links' in input ? segmentsProblems(input) : plainProblems(input);
}

function plainProblems({ nodes, edges, keep }: PlainIn): Problem[] {
  const problems = twice('nodes', nodes, 'a node');
  const kinds = new Map(nodes.map(({ id, kind }) => [id, kind]));
  problems.push(...ends('edges', edges, kinds, 'a node'));
  const has = (wanted: string) => nodes.some(({ kind }) => kind === wanted);
  problems.push(...bothEnds('nodes', has('source'), has('work')));
  keep.forEach((one, at) => {
    const [node, path] = typeof one === 'string' ? [one, `keep/${at}`] : [one.node, keepNode(at)];
    problems.push(...keptProblem(kinds, node, path));
    (typeof one === 'string' ? [] : one.from).forEach((source, n) => {
      if (kinds.get(source) === 'source') return;
      problems.push(unknown(`keep/${at}/from/${n}`, source, 'a source'));
    });
  });
  if (problems.length > 0) return problems;
  const given: GivenNode[] = nodes.map(({ id, kind, weight }) => ({
    id,
    kind,
    weight: weight ?? 1,
  }));
  return supplied(
    given,
    edges,
    keep.map((one, at) =>
      typeof one === 'string'
        ? { node: one, from: null, path: `keep/${at}` }
        : { node: one.node, from: one.from, path: keepNode(at) },
    ),
  );
}

const keepNode = (at: number) => `keep/${at}/node`;

function keptProblem(kinds: ReadonlyMap<string, string>, node: string, path: string): Problem[] {
  const kind = kinds.get(node);
  if (kind === undefined) return [unknown(path, node, 'a node')];
  if (kind !== 'work') return [];
  const why = 'what is opened cannot be kept supplied';
  return [{ path, got: node, expected: 'a node that is not opened', why }];
}

type Wanted = { readonly node: string; readonly from: readonly string[] | null; path: string };

/** What is to stay supplied must be supplied now. */
function supplied(
  nodes: readonly GivenNode[],
  edges: readonly (readonly [string, string])[],
  wanted: readonly Wanted[],
): Problem[] {
  if (wanted.length === 0) return [];
  const network = networkOf(nodes, edges);
  const placeOf = (id: string) => network.placeOf[network.indexOf.get(id) ?? -1] ?? -1;
  return wanted.flatMap(({ node, from, path }): Problem[] => {
    const reached = reachedFrom(network, [placeOf(node)], new Set());
    const dry =
      from === null
        ? !network.sources.some((place) => reached.has(place))
        : from.some((source) => !reached.has(placeOf(source)));
    if (!dry) return [];
    const why = 'nothing supplies it even with every closure open';
    return [{ path, got: node, expected: 'a node that is supplied', why }];
  });
}

function segmentsProblems({ nodes, links, valves }: SegmentsIn): Problem[] {
  const known = new Map(nodes.map((id) => [id, 'node']));
  const problems = [
    ...twice(
      'nodes',
      nodes.map((id) => ({ id })),
      'a node',
      '',
    ),
    ...twice('links', links, 'a link'),
  ];
  links.forEach(({ a, b }, at) => {
    if (!known.has(a)) problems.push(unknown(`links/${at}/a`, a, 'a node'));
    if (!known.has(b)) problems.push(unknown(`links/${at}/b`, b, 'a node'));
    if (a === b) problems.push(loop(`links/${at}/b`, b));
  });
  const byId = new Map(links.map((link) => [link.id, link]));
  const seen = new Set<string>();
  valves.forEach(({ link, node }, at) => {
    const of = byId.get(link);
    if (of === undefined) problems.push(unknown(`valves/${at}/link`, link, 'a link'));
    if (!known.has(node)) problems.push(unknown(`valves/${at}/node`, node, 'a node'));
    else if (of !== undefined && of.a !== node && of.b !== node) {
      const why = `link ${link} does not end at node ${node}`;
      const expected = `${of.a} or ${of.b}`;
      problems.push({ path: `valves/${at}/node`, got: node, expected, why });
    }
    const key = JSON.stringify([link, node]);
    if (seen.has(key)) {
      const why = 'a valve stands there already';
      problems.push({ path: `valves/${at}`, got: { link, node }, expected: 'one valve', why });
    }
    seen.add(key);
  });
  return problems;
}

/** Kinds of part that can stand open to the room. */
const OPENABLE: readonly string[] = ['run', 'machine', 'junction', 'valve', 'non-return'];

function linesProblems({ parts, joins, opened, keep }: LinesIn): Problem[] {
  const kinds = new Map<string, string>(Object.entries(parts).map(([id, { kind }]) => [id, kind]));
  const problems = ends('joins', joins, kinds, 'a part');
  problems.push(...bothEnds('parts', [...kinds.values()].includes('source'), true));
  opened.forEach((id, at) => {
    const kind = kinds.get(id);
    if (kind !== undefined && OPENABLE.includes(kind)) return;
    problems.push(unknown(`opened/${at}`, id, `a part that is opened: ${OPENABLE.join(', ')}`));
  });
  keep.forEach((id, at) => {
    if (kinds.get(id) !== 'service') problems.push(unknown(`keep/${at}`, id, 'a service'));
  });
  for (const [id, part] of Object.entries(parts)) {
    if (part.kind !== 'service') continue;
    (part.from ?? []).forEach((source, at) => {
      if (kinds.get(source) === 'source') return;
      problems.push(unknown(`parts/${id}/from/${at}`, source, 'a source'));
    });
  }
  if (problems.length > 0) return problems;
  const nodes = Object.entries(parts).map(([id, { kind }]): GivenNode => {
    const plain = kind === 'source' || kind === 'valve' ? kind : 'junction';
    return { id, kind: plain, weight: 1 };
  });
  const wanted = keep.map((node, at) => {
    const part = parts[node];
    const from = part?.kind === 'service' ? (part.from ?? null) : null;
    return { node, from, path: `keep/${at}` };
  });
  return supplied(nodes, joins, wanted);
}

function twice(
  path: string,
  list: readonly { readonly id: string }[],
  what: string,
  field = '/id',
): Problem[] {
  const seen = new Set<string>();
  return list.flatMap(({ id }, at): Problem[] => {
    const before = seen.has(id);
    seen.add(id);
    if (!before) return [];
    const why = `${what} of this id is there already`;
    return [{ path: `${path}/${at}${field}`, got: id, expected: 'an id that is used once', why }];
  });
}

function ends(
  path: string,
  pairs: readonly (readonly [string, string])[],
  known: ReadonlyMap<string, string>,
  what: string,
): Problem[] {
  return pairs.flatMap(([a, b], at): Problem[] => {
    const missing = [a, b].flatMap((id, end) =>
      known.has(id) ? [] : [unknown(`${path}/${at}/${end}`, id, what)],
    );
    return a === b ? [...missing, loop(`${path}/${at}/1`, b)] : missing;
  });
}

const unknown = (path: string, got: string, what: string): Problem => ({
  path,
  got,
  expected: `the id of ${what}`,
  why: `there is no such id of ${what}`,
});

const loop = (path: string, got: string): Problem => ({
  path,
  got,
  expected: 'another end',
  why: 'it is joined to itself',
});

/** Without both ends nothing is asked, and "isolated" would say more than is known. */
function bothEnds(path: string, source: boolean, work: boolean): Problem[] {
  const none = (kind: string, why: string): Problem[] => [
    { path, got: null, expected: `at least one of kind ${kind}`, why },
  ];
  return [
    ...(source ? [] : none('source', 'no source is given, so there is nothing to cut off from')),
    ...(work ? [] : none('work', 'no work is given, so there is nothing to isolate')),
  ];
}
