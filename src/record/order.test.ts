// Causal order and ancestors against the plain definition, on random graphs of acts.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { order } from './order.ts';
import type { Act } from './types.ts';

const SEED = 1965;

type Drawn = { readonly parents: readonly number[]; readonly mark: number };

const hashOf = (i: number, mark: number): string => `${mark.toString(16).padStart(8, '0')}-${i}`;

function actsOf(graph: readonly Drawn[]): Act[] {
  return graph.map(({ parents, mark }, i) => ({
    vessel: 'v',
    stream: { kind: 'vessel', id: 'v' },
    kind: 'note',
    version: 1,
    by: 'Ada',
    proved: false,
    device: 'd',
    deviceSeq: i + 1,
    parents: [...new Set(parents.map((p) => p % Math.max(1, i)))]
      .filter((p) => p < i)
      .map((p) => hashOf(p, graph[p]?.mark ?? 0)),
    at: { utc: '2026-03-14T08:00:00.000Z', offsetMinutes: 0 },
    body: {},
    hash: hashOf(i, mark),
  }));
}

/** Everything reachable through parents, by walking: slow and plain. */
function ancestorsOf(act: Act, byHash: ReadonlyMap<string, Act>): Set<string> {
  const seen = new Set<string>();
  const walk = [...act.parents];
  for (let hash = walk.pop(); hash !== undefined; hash = walk.pop()) {
    if (seen.has(hash)) continue;
    seen.add(hash);
    walk.push(...(byHash.get(hash)?.parents ?? []));
  }
  return seen;
}

const graphs = fc.array(
  fc.record({ parents: fc.array(fc.nat(40), { maxLength: 3 }), mark: fc.nat(0xffff_ffff) }),
  { minLength: 1, maxLength: 40 },
);

const runs = process.env.LONG === '1' ? 2_000 : 200;

test(`ancestors equal those found by walking; the order is causal (seed ${SEED})`, () => {
  fc.assert(
    fc.property(graphs, (graph) => {
      const acts = actsOf(graph);
      const byHash = new Map(acts.map((a) => [a.hash, a]));
      const ordered = order([...acts].reverse());
      expect(ordered.acts).toHaveLength(acts.length);
      for (const [b, act] of ordered.acts.entries()) {
        const truth = ancestorsOf(act, byHash);
        for (const [a, other] of ordered.acts.entries())
          expect(ordered.isAncestor(a, b)).toBe(truth.has(other.hash));
        for (const parent of act.parents) expect(ordered.indexOf.get(parent)).toBeLessThan(b);
      }
      const parents = new Set(acts.flatMap((a) => a.parents));
      expect(ordered.heads).toEqual(
        acts
          .map((a) => a.hash)
          .filter((h) => !parents.has(h))
          .sort(),
      );
    }),
    { seed: SEED, numRuns: runs },
  );
});

test(`whatever the devices’ clocks say, the order is the same (seed ${SEED})`, () => {
  fc.assert(
    fc.property(graphs, fc.array(fc.nat(1_000_000), { minLength: 40 }), (graph, minutes) => {
      const acts = actsOf(graph);
      const clock = (i: number) => new Date(1_000_000_000_000 + (minutes[i] ?? 0) * 60_000);
      const wrong = acts.map((act, i) => ({
        ...act,
        at: { ...act.at, utc: clock(i).toISOString() },
      }));
      const hashes = (all: readonly Act[]) => order(all).acts.map((act) => act.hash);
      expect(hashes(wrong)).toEqual(hashes(acts));
    }),
    { seed: SEED, numRuns: runs },
  );
});

test(`with one act missing exactly its descendants wait (seed ${SEED})`, () => {
  fc.assert(
    fc.property(graphs, fc.nat(), (graph, at) => {
      const acts = actsOf(graph);
      const byHash = new Map(acts.map((a) => [a.hash, a]));
      const missing = acts[at % acts.length];
      const here = acts.filter((a) => a !== missing);
      const waiting = here.filter((a) => ancestorsOf(a, byHash).has(missing?.hash ?? ''));
      expect(order(here).waiting).toEqual(waiting.map((a) => a.hash).sort());
    }),
    { seed: SEED, numRuns: runs },
  );
});
