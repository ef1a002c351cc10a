// Laws of the weights over the invented demo plants with random weights, reaches and gear.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPlant } from '../plant/read.ts';
import type { Part } from '../plant/schema.ts';
import type { Machine, Plant } from '../plant/types.ts';
import { chain, jobDraft, jobId, saying, startDraft } from '../record/fixture.ts';
import { fold } from '../record/fold.ts';
import { nextSteps } from '../record/next.ts';
import type { JobState } from '../record/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { type Tool, toolSchema } from '../tools/tool.ts';
import type { LiftView } from './lift-types.ts';
import { makePack } from './pack.ts';
import type { Pack, PackRequest } from './types.ts';

const SEED = 20261127;
const runs = process.env.LONG ? 200 : 20;

const plantIn = (folder: string): Plant => {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => ({ file, text: readFileSync(join(folder, file), 'utf8') }));
  const { plant, problems } = readPlant(files);
  if (plant === null) throw new Error(JSON.stringify(problems.slice(0, 3)));
  return plant;
};

const ferry = plantIn('demo/tern-rock');
const pump = { machine: 'main-engine-port', target: 'sea-water-pump', does: 'exchange' } as const;
const requests: readonly PackRequest[] = [
  pump,
  { ...pump, machine: 'main-engine-starboard' },
  { ...pump, target: 'plate-cooler' },
  { ...pump, target: 'air-starter' },
];

const packOf = async (plant: Plant, request: PackRequest, tools: readonly Tool[] = []) => {
  const made = await makePack(plant, request, solveWithHighs, { tools, on: '2026-11-25' });
  if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
  return made.pack;
};

/** The same plant with other weights and ways of lifting, as the numbers say. */
const changed = (plant: Plant, machine: string, numbers: () => number): Plant => {
  const old = plant.machines[machine] as Machine;
  const parts = Object.entries(old.parts).map(([id, part]): [string, Part] => {
    const kg = Math.round(numbers() * 60) + 1;
    const way = {
      ...(numbers() < 0.5
        ? {}
        : {
            lift: {
              origin: {
                h: `${Math.round(20 + numbers() * 60)} cm`,
                v: `${Math.round(numbers() * 200)} cm`,
                asymmetry: Math.round(numbers() * 150),
              },
              travel: `${Math.round(numbers() * 190)} cm`,
              coupling: (['good', 'fair', 'poor'] as const)[Math.floor(numbers() * 3)] ?? 'poor',
              posture: numbers() < 0.8 ? 'standing' : 'kneeling',
              hands: numbers() < 0.9 ? (2 as const) : (1 as const),
              footing: numbers() < 0.9 ? 'firm' : 'wet',
              headroom: `${Math.round(150 + numbers() * 100)} cm`,
              moving: numbers() < 0.1,
            },
          }),
      ...(numbers() < 0.7 ? {} : { rig: { hoist: true, legs: 1 } }),
      rests: numbers() < 0.1,
      people: 1 + Math.floor(numbers() * 3),
    };
    const ways = Object.entries(part.ways ?? {}).map(([key, { rig: _r, lift: _l, ...rest }]) => [
      key,
      { ...rest, ...way },
    ]);
    const { wetMass: _w, ...kept } = part;
    const mass = numbers() < 0.1 ? {} : { mass: `${kg} kg` };
    const bare = 'mass' in mass ? kept : (({ mass: _m, ...none }) => none)(kept);
    return [id, { ...bare, ...mass, ...(part.ways ? { ways: Object.fromEntries(ways) } : {}) }];
  });
  const machines = { ...plant.machines, [machine]: { ...old, parts: Object.fromEntries(parts) } };
  return { ...plant, machines };
};

const numbersFrom = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
};

/** The equation once more, by itself: seldom, so nothing is taken off for how often. */
const recommended = (part: Part, wayId: string): number => {
  const lift = part.ways?.[wayId]?.lift;
  if (lift === undefined) return 0;
  const h = Number.parseFloat(lift.origin.h);
  const ends = [lift.origin, ...(lift.destination ? [lift.destination] : [])];
  const vs = ends.map((end) => Number.parseFloat(end.v));
  const d =
    lift.destination === undefined
      ? Number.parseFloat(lift.travel ?? '0')
      : Math.abs((vs[1] ?? 0) - (vs[0] ?? 0));
  const a = lift.origin.asymmetry ?? 0;
  const [v = 0] = vs;
  if (h > 63 || v > 175 || d > 175 || a > 135) return 0;
  const grip = { good: 1, fair: v < 75 ? 0.95 : 1, poor: 0.9 }[lift.coupling ?? 'poor'];
  return (
    23 *
    (25 / Math.max(25, h)) *
    (1 - 0.003 * Math.abs(v - 75)) *
    (0.82 + 4.5 / Math.max(25, d)) *
    (1 - 0.0032 * a) *
    grip
  );
};

const TEAM: Readonly<Record<number, number>> = { 1: 1, 2: (2 * 2) / 3, 3: 3 / 2 };

const lawOfHands = (pack: Pack, plant: Plant, machine: string) => {
  for (const one of pack.lifts?.list ?? []) {
    const kg = one.weight?.value;
    const part = plant.machines[machine]?.parts[one.part] as Part;
    if (one.how === 'light') expect(kg).toBeLessThan(10);
    if (kg === undefined) expect(one.how).toBe('asked');
    if (one.how === 'asked') expect(one.asks.length).toBeGreaterThan(0);
    if (one.how !== 'by hand') continue;
    const row = pack.plan.order.find((each) => each.id === one.part && each.do === one.as);
    const wayId = row?.way ?? '';
    const lift = part.ways?.[wayId]?.lift;
    expect(lift?.posture).toBe('standing');
    expect(lift?.hands).toBe(2);
    expect(lift?.footing).toBe('firm');
    expect(lift?.moving).not.toBe(true);
    const bearable = recommended(part, wayId) * (TEAM[one.people] ?? 0);
    expect(kg, one.name).toBeLessThanOrEqual(bearable * (1 + 1e-9));
  }
};

const needsOf = (pack: Pack, id: string, found = new Set<string>()): Set<string> => {
  for (const need of pack.steps.find((step) => step.id === id)?.needs ?? []) {
    if (found.has(need)) continue;
    found.add(need);
    needsOf(pack, need, found);
  }
  return found;
};

/** Of a part's joints the one undone last comes after what carries it, and so does the part. */
const lawOfSupports = (pack: Pack, plant: Plant, machine: string) => {
  const at = new Map(pack.steps.map((step, i) => [step.id, i]));
  const seen = new Set<string>();
  let held = 0;
  for (const one of pack.lifts?.list ?? []) {
    const part = plant.machines[machine]?.parts[one.part] as Part;
    const row = pack.plan.order.find((each) => each.id === one.part && each.do === one.as);
    const way = part.ways?.[row?.way ?? ''];
    const heavy = (one.weight?.value ?? 0) >= 10;
    if (!heavy || way?.rests === true || one.bench || seen.has(one.part)) continue;
    seen.add(one.part);
    const temps = Object.entries(pack.facts.temps).filter(([, t]) => t.holds === one.part);
    expect(temps.length, one.name).toBeGreaterThan(0);
    const undone = (way?.joints ?? []).flatMap((j) => at.get(`undone joint/${j}`) ?? []);
    const back = at.get(`refitted part/${one.part}`) ?? Number.POSITIVE_INFINITY;
    for (const [n] of temps) {
      held += 1;
      const put = at.get(`put-in temp/${n}`) ?? Number.POSITIVE_INFINITY;
      expect(put, one.name).toBeLessThan(
        Math.max(...undone, at.get(`moved-${one.as} part/${one.part}`) ?? 0),
      );
      if (undone.length > 0) expect(put).toBeLessThan(Math.max(...undone));
      // Whatever order the needs leave free, one of its joints waits for it.
      const waits = (way?.joints ?? []).some((j) =>
        needsOf(pack, `undone joint/${j}`).has(`put-in temp/${n}`),
      );
      expect(waits || undone.length === 0, one.name).toBe(true);
      expect(at.get(`taken-away temp/${n}`)).toBeGreaterThan(back);
    }
  }
  return held;
};

describe(`random weights, reaches and gear, seed ${SEED}`, () => {
  test('no part over the limit is a hand lift; what loses its last joint is carried', async () => {
    let [held, byHand] = [0, 0];
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.constantFrom(...requests), async (seed, request) => {
        const plant = changed(ferry, request.machine, numbersFrom(seed));
        const pack = await packOf(plant, request);
        lawOfHands(pack, plant, request.machine);
        held += lawOfSupports(pack, plant, request.machine);
        byHand += (pack.lifts?.list ?? []).filter((one) => one.how === 'by hand').length;
      }),
      { seed: SEED, numRuns: runs },
    );
    // The law was tried on something.
    expect(held).toBeGreaterThan(runs / 2);
    expect(byHand).toBeGreaterThan(0);
  });
});

const gear = (more: object): Tool =>
  toolSchema.parse({ id: 'g', name: 'G', examinedOn: '2026-03-09', intervalMonths: 12, ...more });
const block = gear({ kind: 'chain block', safeLoad: 250 });
const slings = ['a', 'b'].map((id) =>
  gear({ kind: 'sling', id, name: `Sling ${id}`, safeLoad: 500, mostAngle: 45 }),
);
const shackles = ['c', 'd'].map((id) => gear({ kind: 'shackle', id, safeLoad: 500 }));

const openOf = (pack: Pack): string[] =>
  pack.decisions.flatMap((d) =>
    /^(how carried|sails)/.test(d.id) ? [`${d.id}: ${d.question}`] : [],
  );
const viewOf = (pack: Pack, part: string): LiftView => {
  const one = pack.lifts?.list.find((each) => each.part === part);
  if (one === undefined) throw new Error(`${part} is not lifted`);
  return one;
};

describe('the pump and the cooler of the ferry', () => {
  const cooler = { ...pump, target: 'plate-cooler' } as const;

  test('gear that bears it, in date: nothing to settle; worked by hand, 41 kg a leg', async () => {
    const pack = await packOf(ferry, cooler, [block, ...slings, ...shackles]);
    expect(openOf(pack)).toEqual([]);
    const { gear: rig } = viewOf(pack, 'plate-cooler');
    // 71 kg wet over two legs at 30°: 71/(2 × 0.866025) = 40.99.
    expect(rig?.needs.find((need) => need.kind === 'sling')?.bears.value).toBeCloseTo(40.99, 2);
    expect(rig?.needs.flatMap((need) => need.names)).toHaveLength(5);
  });

  test('a block marked too low, one out of date: settled before anything is shut', async () => {
    const weak = gear({ kind: 'chain block', id: 'weak', name: 'Weak block', safeLoad: 70 });
    const old = gear({ kind: 'chain block', id: 'old', name: 'Old block', safeLoad: 250 });
    const late = { ...old, examinedOn: '2024-01-01' } as Tool;
    const pack = await packOf(ferry, cooler, [weak, late, ...slings, ...shackles]);
    const [open] = openOf(pack);
    expect(open).toContain('1 × chain block marked 71 kg or more is missing');
    expect(open).toContain('Weak block: marked 70 kg, must bear 71 kg');
    expect(open).toContain('Old block: out of date');
  });

  test('an angle not stated is asked for, and no load of a leg is guessed', async () => {
    const port = ferry.machines['main-engine-port'] as Machine;
    const part = port.parts['plate-cooler'] as Part;
    const ways = Object.fromEntries(
      Object.entries(part.ways ?? {}).map(([id, way]) => {
        const { angle: _, ...rig } = way.rig ?? {};
        return [id, { ...way, rig }];
      }),
    );
    const parts = { ...port.parts, 'plate-cooler': { ...part, ways } };
    const machines = { ...ferry.machines, 'main-engine-port': { ...port, parts } };
    const pack = await packOf({ ...ferry, machines }, cooler, [block, ...slings, ...shackles]);
    expect(openOf(pack)[0]).toContain('at which angle from straight down');
    expect(viewOf(pack, 'plate-cooler').gear?.tension).toBeNull();
    expect(viewOf(pack, 'plate-cooler').gear?.needs.map(({ kind }) => kind)).toEqual([
      'chain block',
    ]);
  });

  test('sailing before the hands-on work ends with the pump hanging is a clash', async () => {
    const sailing = { ...pump, when: '2026-11-25T14:00', sails: '2026-11-25T15:00' };
    const late = await packOf(ferry, sailing);
    expect(openOf(late).join()).toContain('Sailing at 2026-11-25T15:00');
    expect(late.decisions.find((d) => d.id === 'sails before the end')?.why).toContain(
      'Sea-water pump',
    );
    const early = await packOf(ferry, { ...sailing, sails: '2026-11-26T06:00' });
    expect(openOf(early)).toEqual([]);
    // By hand: the job's own minutes back from six in the morning.
    const minutes = 6 * 60 - early.minutes.value;
    const day = minutes < 0 ? minutes + 24 * 60 : minutes;
    const clock = [Math.floor(day / 60), Math.floor(day % 60)].map((n) =>
      String(n).padStart(2, '0'),
    );
    expect(early.lifts?.sailing?.latestStart).toContain(clock.join(':'));
  });

  test('taken away too early, or never put in: a finding that somebody decides', async () => {
    const pack = await packOf(ferry, pump);
    const [n] =
      Object.entries(pack.facts.temps).find(([, t]) => t.holds === 'sea-water-pump') ?? [];
    const whole = (skip: string): JobState | undefined => {
      const packs = [pack];
      const anyway = pack.decisions.map((d) => ({
        decision: d.id,
        reason: 'demo',
        limits: 'demo',
      }));
      let acts = chain([startDraft(pack, { anyway })]);
      const steps = pack.steps.filter((step) => step.id !== skip);
      const end = steps.findIndex((step) => step.id === 'moved-off part/sea-water-pump');
      for (const step of steps.slice(0, end + 1))
        acts = [...acts, ...chain([saying(pack, step)], 'phone-a', acts)];
      const away = jobDraft('taken-away', { thing: `temp/${n}` });
      if (skip === '') acts = [...acts, ...chain([away], 'phone-a', acts)];
      const state = fold({ acts, packs });
      expect(nextSteps(state, jobId, pack).length).toBeGreaterThan(0);
      return state.jobs[jobId];
    };
    const early = whole('')?.findings.filter((f) => f.thing === `temp/${n}`);
    expect(early?.map((f) => [f.kind, f.needsDecision])).toEqual([['out of order', true]]);
    const bare = whole(`put-in temp/${n}`)?.findings.filter((f) => f.kind === 'out of order');
    expect(bare?.map((f) => f.needsDecision)).toContain(true);
    expect(bare?.map((f) => f.thing)).toContain('part/sea-water-pump');
    expect(whole('none')?.entries.some((e) => e.open && e.thing === `temp/${n}`)).toBe(true);
  });
});
