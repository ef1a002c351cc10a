// Every sentence of every demo pack in Spanish: whole, with nothing English left outside the names.

import { beforeAll, expect, test } from 'vitest';
import { readFolder } from '../cli/read-folder.ts';
import { readPlant } from '../plant/read.ts';
import type { Plant } from '../plant/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { english, knownIn, type Sentence, type Told, tell, teller } from '../words/say.ts';
import { makePack } from './pack.ts';
import type { Pack } from './types.ts';

type Made = { readonly pack: Pack; readonly names: ReadonlySet<string> };
const made: Made[] = [];

beforeAll(async () => {
  for (const demo of ['demo/tern-rock', 'demo/water-works']) {
    const { plant } = readPlant(readFolder(demo));
    if (plant === null) throw new Error(`${demo} cannot be read`);
    const names = namesIn(plant);
    for (const machine of Object.values(plant.machines))
      for (const [target, { does }] of Object.entries(machine.targets))
        for (const each of Object.keys(does)) {
          const request = { machine: machine.id, target, does: each as 'exchange' };
          const one = await makePack(plant, request, solveWithHighs);
          if (one.kind === 'pack') made.push({ pack: one.pack, names });
        }
  }
}, 60_000);

/** Every text of the plant file, as it is or as it stands inside a sentence. */
function namesIn(plant: Plant): ReadonlySet<string> {
  const names = new Set<string>();
  const look = (x: unknown): void => {
    if (typeof x === 'string') names.add(plain(x));
    else if (x !== null && typeof x === 'object') Object.values(x).forEach(look);
  };
  look(plant);
  return names;
}

const plain = (text: string): string => text.toLowerCase().replace(/\.$/, '');

/** What a person reads of a pack, apart from the plant's own lists and the issued values. */
function textsOf(pack: Pack): readonly string[] {
  const steps = pack.steps.flatMap((s) => [
    s.text,
    s.reason,
    ...s.asks.flatMap((a) => [a.label, ...(a.choices ?? [])]),
    ...s.cautions.flatMap((c) => [c.hazard, c.text, c.verify]),
    ...(s.count === null ? [] : [s.count.what]),
    ...(s.tool === null ? [] : [s.tool]),
    ...(s.place === null ? [] : [s.place]),
    ...(s.round === undefined ? [] : [s.round]),
  ]);
  const facts = [pack.facts.checks, pack.facts.settings, pack.facts.proofs, pack.facts.temps];
  return [
    pack.title,
    pack.authority,
    pack.namesNotProved,
    pack.isolationNote,
    ...steps,
    ...pack.decisions.flatMap((d) => [d.question, d.why]),
    ...pack.notChecked,
    ...pack.boxUpNotes,
    ...(pack.otherSide?.list ?? []),
    ...[pack.plan, pack.bench].flatMap((p) => p?.order.map((row) => row.reason) ?? []),
    ...facts.flatMap((of) => Object.values(of).map((one) => one.name)),
    ...pack.lists.proofs.flatMap((p) => [p.name, p.what]),
    ...pack.lists.seals.map((s) => s.name),
    ...pack.lists.loose.map((l) => l.name),
    ...[pack.plan, pack.bench].flatMap((p) => [
      ...(p?.cautions ?? []),
      ...(p?.working.map((row) => row.text) ?? []),
    ]),
    ...Object.values(pack.workings).flatMap((w) => w.map((row) => row.text)),
  ];
}

const isOurs = (text: string): boolean => tell(text, 'es') !== text || SAME.has(text);

/** Words and signs that are the same in both languages. */
const SAME: ReadonlySet<string> = new Set(['no']);
const isFigure = (text: string): boolean => /^[\d?][^a-z]*( [\w./%]+)*$/.test(text) || text === '';

/** The same sentence with every name of the plant taken out of it. */
function nameless(said: Sentence, { pack, names }: Made): Sentence {
  const known = knownIn(pack.said);
  const without = (arg: Told): Told => {
    if (typeof arg === 'string') {
      const inner = known.get(arg);
      if (inner !== undefined) return nameless(inner, { pack, names });
      if (names.has(plain(arg))) return '¤';
      if (isOurs(arg) || isFigure(arg.trim())) return arg;
      throw new Error(`no name: "${arg}"`);
    }
    if (Array.isArray(arg)) return arg.map((one: Told) => without(one));
    return arg;
  };
  return { key: said.key, args: said.args.map(without) };
}

const ENGLISH = /\b(the|and|of|with|not|is|are|at|on|off|out|for|from|each|which|then)\b/i;

test('every demo pack carries what its sentences say, word for word', () => {
  expect(made.length).toBeGreaterThan(10);
  for (const { pack } of made) {
    const text = JSON.stringify(pack, (key, value) => (key === 'said' ? undefined : value));
    for (const said of pack.said ?? []) {
      expect(english(said)).not.toBe(said.key);
      const own = JSON.stringify(english(said)).slice(1, -1);
      const inAnother = pack.said?.some((other) => JSON.stringify(other.args).includes(own));
      expect(text.includes(own) || inAnother).toBe(true);
    }
    expect(JSON.stringify(pack)).not.toMatch(/\b(unión|soltar|válvula)\b/);
  }
});

test('every sentence and every word of every demo pack is told in Spanish', () => {
  const untold = new Set<string>();
  let told = 0;
  for (const one of made) {
    const say = teller('es', one.pack.said);
    const known = knownIn(one.pack.said);
    for (const text of new Set(textsOf(one.pack))) {
      const said = known.get(text);
      if (said !== undefined) {
        const bare = nameless(said, one);
        const spanish = tell(english(bare), 'es', undefined, bare);
        if (ENGLISH.test(spanish)) untold.add(`${said.key}: ${spanish}`);
        if (say(text) !== text) told++;
        else if (/[a-z]{2}/i.test(english(bare).replaceAll('¤', '')))
          if (!ALIKE.has(said.key)) untold.add(`${said.key}: ${text}`);
      } else if (isOurs(text)) {
        told++;
        if (ENGLISH.test(say(text))) untold.add(say(text));
      } else if (!one.names.has(plain(text)) && !isFigure(text)) untold.add(`not ours: ${text}`);
    }
  }
  expect([...untold]).toEqual([]);
  expect(told).toBeGreaterThan(2_000);
});

/** Sentences that only join names and figures. */
const ALIKE: ReadonlySet<string> = new Set(['packTitle', 'settingOf', 'looseOf', 'fieldOf']);

test('a pack made before sentences travelled is shown in its own words', () => {
  const [one] = made;
  const step = one?.pack.steps[0];
  if (step === undefined) throw new Error('no pack was made');
  expect(teller('es', undefined)('Undo Pump mounting.')).toBe('Undo Pump mounting.');
});
