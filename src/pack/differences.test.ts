// Each starboard difference alone changes the pump's pack exactly as a list written by hand says.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readPlant } from '../plant/read.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { makePack } from './pack.ts';
import type { Pack, Step } from './types.ts';

type Changed = { step: string; what: string; from: string | number; to: string | number };
type Expected = {
  id: string;
  added?: string[];
  removed?: string[];
  changed?: Changed[];
  never?: string[];
  temporary?: { added?: string[]; removed?: string[] };
  order?: [string, string][];
  minutes: number;
};

const list = parse(readFileSync('demo/tern-rock-differences.expected.yaml', 'utf8')) as {
  machine: string;
  target: string;
  does: 'exchange';
  differences: Expected[];
};

const folder = 'demo/tern-rock';
const port = 'machines/main-engine-port.yaml';
const starboard = 'machines/main-engine-starboard.yaml';
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((f) => f.endsWith('.yaml'))
  .map((f) => ({ file: f, text: readFileSync(join(folder, f), 'utf8') }));
const starboardText = files.find((f) => f.file === starboard)?.text ?? '';
const [starboardHead = '', starboardList = ''] = starboardText.split(/^differences:\n/m);
const blocks = starboardList.split(/^(?= {2}- id: )/m).filter((b) => b.includes('- id: '));
const idOf = (block: string): string => /- id: (\S+)/.exec(block)?.[1] ?? '';

/** The port engine's pack with one difference of the other side laid over it, or with none. */
const portPack = async (difference: string | null): Promise<Pack> => {
  const block = blocks.find((b) => idOf(b) === difference);
  const read = readPlant(
    files.map((f) => {
      if (f.file === starboard) return { ...f, text: starboardHead };
      if (f.file !== port || block === undefined) return f;
      return { ...f, text: `${f.text}\ndifferences:\n${block}` };
    }),
  );
  if (read.plant === null) throw new Error(JSON.stringify(read.problems, null, 1));
  const { machine, target, does } = list;
  const made = await makePack(read.plant, { machine, target, does }, solveWithHighs);
  if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
  return made.pack;
};

/** Steps that only follow from others are left out, as the list says in its head. */
const FOLLOWS = /^(seal-out|seal-in|checked|measured|proof|put-in|taken-away|told) /;

const keyOf = (s: Step): string => `${s.verb} ${s.thing}`;
const keys = (pack: Pack): Set<string> =>
  new Set(pack.steps.map(keyOf).filter((k) => !FOLLOWS.test(k)));
const temps = (pack: Pack): Set<string> => new Set(pack.lists.temporary.map((t) => t.name));
const only = (a: Set<string>, b: Set<string>): string[] => [...a].filter((x) => !b.has(x)).sort();
const sorted = (x: readonly string[] | undefined): string[] => [...(x ?? [])].sort();

const told = (s: Step): Record<string, string> => ({
  place: s.place ?? '',
  tool: s.tool === 'torque wrench in date' ? '' : (s.tool ?? ''),
  count: String(s.count?.n ?? ''),
  value: s.values.map((v) => v.shown ?? '').join(' / '),
  'draw off': /Draw it (\d+ mm)/.exec(s.text)?.[1] ?? '',
});

/** What is told differently at steps that stay; rounds of one joint are told once. */
const changes = (before: Pack, after: Pack): string[] => {
  const then = new Map(before.steps.map((s) => [s.id, s]));
  const rows = after.steps.flatMap((s) => {
    const old = then.get(s.id);
    if (old === undefined) return [];
    const a = told(old);
    const b = told(s);
    return Object.keys(a)
      .filter((what) => a[what] !== b[what])
      .map((what) => `${keyOf(s)} · ${what} · ${a[what]} · ${b[what]}`);
  });
  return [...new Set(rows)].sort();
};

let plain: Pack;
beforeAll(async () => {
  plain = await portPack(null);
});

describe('one difference alone, against the list written by hand', () => {
  test('the list names every difference of the starboard engine', () => {
    expect(sorted(list.differences.map((d) => d.id))).toEqual(sorted(blocks.map(idOf)));
  });

  for (const d of list.differences)
    test(d.id, async () => {
      const pack = await portPack(d.id);
      expect(only(keys(pack), keys(plain))).toEqual(sorted(d.added));
      expect(only(keys(plain), keys(pack))).toEqual(sorted(d.removed));
      expect(only(temps(pack), temps(plain))).toEqual(sorted(d.temporary?.added));
      expect(only(temps(plain), temps(pack))).toEqual(sorted(d.temporary?.removed));
      expect(changes(plain, pack)).toEqual(
        sorted((d.changed ?? []).map((c) => `${c.step} · ${c.what} · ${c.from} · ${c.to}`)),
      );
      for (const step of d.never ?? []) expect(keys(pack).has(step)).toBe(false);
      for (const [first, next] of d.order ?? []) {
        const waits = pack.steps.find((s) => keyOf(s) === next);
        const needed = pack.steps.filter((s) => waits?.needs.includes(s.id)).map(keyOf);
        expect(needed, `${next} waits for ${first}`).toContain(first);
      }
      expect(pack.minutes.value - plain.minutes.value).toBeCloseTo(d.minutes, 9);
    });
});
