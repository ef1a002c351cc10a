// Laws of the pack, held on the invented demo plants; no physical figure is checked against them.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { readPlant } from '../plant/read.ts';
import { DOES } from '../plant/schema.ts';
import type { Plant, PlantText } from '../plant/types.ts';
import { AUTHORITY_LINE, CAUTIONS } from '../quantity/authority.ts';
import { evaluate } from '../quantity/expression.ts';
import { hashOf } from '../quantity/sha.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { makePack } from './pack.ts';
import type { Pack, PackRequest, Step } from './types.ts';

const textOf = (folder: string): PlantText =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((f) => /\.yaml$/.test(f))
    .map((f) => ({ file: f, text: readFileSync(join(folder, f), 'utf8') }));

const plantOf = (files: PlantText): Plant => {
  const read = readPlant(files);
  const musts = read.problems.filter((p) => p.level === 'must');
  if (read.plant === null) throw new Error(JSON.stringify(musts, null, 1));
  return read.plant;
};

const solver = solveWithHighs;

const packOf = async (plant: Plant, request: PackRequest): Promise<Pack> => {
  const made = await makePack(plant, request, solver);
  if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
  return made.pack;
};

const everyRequest = (plant: Plant): PackRequest[] =>
  Object.values(plant.machines).flatMap((m) =>
    Object.entries(m.targets).flatMap(([target, t]) =>
      DOES.filter((d) => t.does[d] !== undefined).map((does) => ({
        machine: m.id,
        target,
        does,
      })),
    ),
  );

const MAKING_GOOD: Partial<Record<Step['verb'], (s: Step, pack: Pack) => string[]>> = {
  undone: (s, pack) =>
    (pack.facts.joints[s.thing.slice('joint/'.length)]?.rounds ?? []).map(
      (r) => `made ${s.thing} ${r}`,
    ),
  'moved-off': (s) => [`refitted ${s.thing}`],
  'moved-aside': (s) => [`refitted ${s.thing}`],
  'item-out': (s) => [`item-in ${s.thing}`],
  'seal-out': (s) => [`seal-in ${s.thing}`],
  'loose-out': (s) => [`loose-in ${s.thing}`],
  'put-in': (s) => [`taken-away ${s.thing}`],
  shut: (s) => [`restored ${s.thing}`],
  tagged: (s) => [`untagged ${s.thing}`],
  'drain-opened': (s) => [`drain-shut ${s.thing}`],
};

const ferry = plantOf(textOf('demo/tern-rock'));
const packs: Pack[] = [];

beforeAll(async () => {
  for (const request of everyRequest(ferry)) packs.push(await packOf(ferry, request));
  const works = plantOf(textOf('demo/water-works'));
  for (const request of everyRequest(works)) packs.push(await packOf(works, request));
});

const eachPack = (law: (pack: Pack) => void): void => {
  expect(packs.length).toBeGreaterThan(10);
  for (const pack of packs) law(pack);
};

describe('every pack of the demo plants', () => {
  test('lists each step once, and everything a step needs before it', () => {
    eachPack((pack) => {
      const seen = new Set<string>();
      for (const s of pack.steps) {
        expect(seen.has(s.id), `${pack.title}: ${s.id} twice`).toBe(false);
        for (const n of s.needs)
          expect(seen.has(n), `${pack.title}: ${s.id} before ${n}`).toBe(true);
        seen.add(s.id);
      }
    });
  });

  test('makes good every undoing, after it', () => {
    eachPack((pack) => {
      const at = new Map(pack.steps.map((s, i) => [s.id, i]));
      for (const [i, s] of pack.steps.entries())
        for (const good of MAKING_GOOD[s.verb]?.(s, pack) ?? [])
          expect(at.get(good) ?? -1, `${pack.title}: ${s.id} → ${good}`).toBeGreaterThan(i);
    });
  });

  test('makes good nothing that was not undone', () => {
    eachPack((pack) => {
      const owed = new Set(pack.steps.flatMap((s) => MAKING_GOOD[s.verb]?.(s, pack) ?? []));
      const verbs =
        'made refitted item-in seal-in loose-in taken-away restored untagged drain-shut';
      for (const s of pack.steps)
        if (verbs.split(' ').includes(s.verb)) expect(owed.has(s.id), s.id).toBe(true);
    });
  });

  test('opens no wet joint before its isolation is proved, or says that none is stated', () => {
    eachPack((pack) => {
      for (const joint of pack.facts.isolation.wetJoints) {
        const s = pack.steps.find((x) => x.id === `undone joint/${joint}`);
        expect(s?.stop).toBe('isolation');
        const proofs = pack.facts.isolation.proveAt.map((d) => `proved-dead drain/${d}`);
        if (proofs.length === 0)
          expect(pack.decisions.map((d) => d.id).join()).toMatch(/isolation not stated|no drain/);
        expect(s?.needs).toEqual(expect.arrayContaining(proofs));
      }
    });
  });

  test('renews and counts every seal of every disturbed joint', () => {
    eachPack((pack) => {
      for (const [id, joint] of Object.entries(pack.facts.joints))
        for (const seal of joint.seals) {
          const step = pack.steps.find((s) => s.id === `seal-in seal/${id}:${seal.id}`);
          expect(step?.count?.n, `${id}:${seal.id}`).toBe(seal.count);
          expect(pack.lists.seals.some((s) => s.thing === `seal/${id}:${seal.id}`)).toBe(true);
        }
    });
  });

  test('starts all bolts by hand before any of that joint is tightened', () => {
    eachPack((pack) => {
      const at = new Map(pack.steps.map((s, i) => [s.id, i]));
      for (const [id, joint] of Object.entries(pack.facts.joints)) {
        const places = joint.rounds.map((r) => at.get(`made joint/${id} ${r}`) ?? -1);
        expect([...places].sort((a, b) => a - b)).toEqual(places);
      }
    });
  });

  test('carries the authority line and whole cautions', () => {
    eachPack((pack) => {
      expect(pack.authority).toBe(AUTHORITY_LINE);
      for (const s of pack.steps)
        for (const c of s.cautions) expect(c).toEqual({ hazard: c.hazard, ...CAUTIONS[c.hazard] });
      expect(pack.steps.some((s) => s.cautions.length > 0)).toBe(true);
    });
  });

  test('can be redone with pencil: each working expression gives its value', () => {
    eachPack((pack) => {
      for (const working of [...Object.values(pack.workings), pack.plan.working]) {
        const known = new Map<string, number>();
        for (const row of working) {
          const got = evaluate(row.expression, known);
          expect(got, `${pack.title}: ${row.symbol}`).toBeCloseTo(row.value, 6);
          known.set(row.symbol, row.value);
        }
      }
    });
  });

  test('is named by the hash of its content and comes out the same twice', async () => {
    eachPack((pack) => {
      const { id, ...body } = pack;
      expect(id).toBe(hashOf(body));
    });
    const [first] = packs;
    if (first === undefined) throw new Error('no pack');
    expect((await packOf(ferry, first.request)).id).toBe(first.id);
  });
});

const sidesOf = (files: PlantText, keep: (id: string) => boolean): PlantText =>
  files.map((f) => ({ ...f, text: onlyDifferences(f.text, keep) }));

/** Cuts a machine file's differences out of its text, block by block. */
const onlyDifferences = (text: string, keep: (id: string) => boolean): string => {
  const [head, list] = text.split(/^differences:\n/m);
  if (list === undefined || head === undefined) return text;
  const blocks = list.split(/^(?= {2}- id: )/m).filter((b) => b.trim() !== '');
  const kept = blocks.filter((b) => keep(/- id: (\S+)/.exec(b)?.[1] ?? ''));
  return kept.length === 0 ? head : `${head}differences:\n${kept.join('')}`;
};

const NAMES = /main-engine-(port|starboard)|\b(Port|Starboard|port|starboard)\b/g;

/** A pack without what only names the side. */
const unnamed = (pack: Pack): unknown => {
  const { id: _, otherSide: __, machine: ___, ...rest } = pack;
  const { hash: ____, ...issue } = rest.plantIssue;
  return JSON.parse(JSON.stringify({ ...rest, plantIssue: issue }).replaceAll(NAMES, 'SIDE'));
};

describe('the two sides', () => {
  test('with all differences removed port and starboard are the same but for names', async () => {
    const plant = plantOf(sidesOf(textOf('demo/tern-rock'), () => false));
    for (const does of ['renew-in-place', 'exchange', 'overhaul'] as const) {
      const request = { target: 'sea-water-pump', does };
      const port = await packOf(plant, { ...request, machine: 'main-engine-port' });
      const starboard = await packOf(plant, { ...request, machine: 'main-engine-starboard' });
      expect(unnamed(starboard)).toEqual(unnamed(port));
      expect(port.otherSide?.count).toBe(0);
    }
  });

  test('the differences as fitted change the pack in at least three things', () => {
    const port = packs.find(
      (p) =>
        p.machine.id === 'main-engine-port' &&
        p.target.id === 'sea-water-pump' &&
        p.target.does === 'exchange',
    );
    expect(port?.otherSide?.count).toBeGreaterThanOrEqual(3);
    expect(port?.otherSide?.list).toHaveLength(port?.otherSide?.count ?? -1);
  });
});

describe('requests', () => {
  const request = {
    machine: 'main-engine-port',
    target: 'sea-water-pump',
    does: 'exchange',
  } as const;

  test('an unknown name is a problem with place, allowed names and a suggestion', async () => {
    const made = await makePack(ferry, { ...request, machine: 'main-engine-prot' }, solver);
    expect(made).toMatchObject({
      kind: 'problems',
      problems: [
        { path: 'machine', got: 'main-engine-prot', remedy: expect.stringMatching(/port/) },
      ],
    });
  });

  test('slugs serve as well as ids', async () => {
    const slug = await packOf(ferry, { ...request, machine: 'port-main-engine' });
    expect(slug.machine.id).toBe('main-engine-port');
  });

  test('settling a decision makes a new pack in which it stands by name', async () => {
    const open = await packOf(ferry, request);
    const [decision] = open.decisions;
    if (decision === undefined) throw new Error('the demo has no decision to settle');
    expect(decision.settled).toBeNull();
    const settled = { by: 'Maren Tollak', reason: 'read from the general table together' };
    const after = await packOf(ferry, { ...request, decisions: { [decision.id]: settled } });
    expect(after.decisions.find((d) => d.id === decision.id)?.settled).toEqual(settled);
    expect(after.id).not.toBe(open.id);
  });

  test('what is off already costs nothing and is not taken off again', async () => {
    const whole = await packOf(ferry, request);
    const part = whole.plan.order.find((o) => o.do === 'off')?.id ?? '';
    const joints = ferry.machines['main-engine-port']?.joints ?? {};
    const undone = whole.plan.order
      .filter((o) => o.do === 'undo' && (joints[o.id]?.between ?? []).includes(part))
      .map((o) => o.id);
    const rest = await packOf(ferry, { ...request, already: { off: [part], joints: undone } });
    expect(rest.minutes.value).toBeLessThan(whole.minutes.value);
    expect(rest.steps.some((s) => s.id === `moved-off part/${part}`)).toBe(false);
  });
});
