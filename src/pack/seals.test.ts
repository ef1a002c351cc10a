// The draw list is the seals of the disturbed joints, and only what fits that day is drawn.

import { beforeAll, describe, expect, test } from 'vitest';
import { readFolder } from '../cli/read-folder.ts';
import { heldIn } from '../cli/read-tools.ts';
import { readPlant } from '../plant/read.ts';
import type { Joint, Target } from '../plant/schema.ts';
import type { Machine, Plant } from '../plant/types.ts';
import { below as seededBelow, randomFrom as seededRandom } from '../removal/seeded.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { itemSchema, type StoredItem } from '../stores/item.ts';
import type { Held } from './fastening-types.ts';
import { makePack } from './pack.ts';
import type { SealNeed } from './seal-types.ts';
import type { Pack, PackRequest } from './types.ts';

const LONG = process.env.LONG === '1';
const ON = '2026-11-25';
let plant: Plant;
let held: Held;

beforeAll(() => {
  const read = readPlant(readFolder('demo/tern-rock'));
  if (read.plant === null) throw new Error('the demo cannot be read');
  plant = read.plant;
  held = heldIn('demo/tern-rock', ON).held;
});

const pumpRequest: PackRequest = {
  machine: 'main-engine-port',
  target: 'sea-water-pump',
  does: 'exchange',
  on: ON,
};

const changed = (change: (joints: Record<string, Joint>, machine: Machine) => Machine): Plant => {
  const machine = plant.machines['main-engine-port'];
  if (machine === undefined) throw new Error('the demo has no port engine');
  const next = change(structuredClone(machine.joints) as Record<string, Joint>, machine);
  return { ...plant, machines: { ...plant.machines, [machine.id]: next } };
};

type SealChange = Partial<NonNullable<Joint['seals']>[string]>;

/** The demo with one seal of one joint otherwise. */
const withSeal = (jointId: string, sealId: string, seal: SealChange, rest: Partial<Joint> = {}) =>
  changed((joints, machine) => {
    const joint = joints[jointId];
    const old = joint?.seals?.[sealId];
    if (joint === undefined || old === undefined) throw new Error(`no ${jointId}:${sealId}`);
    const next = { ...joint, ...rest, seals: { ...joint.seals, [sealId]: { ...old, ...seal } } };
    return { ...machine, joints: { ...joints, [jointId]: next } };
  });

async function packOf(of: Plant, items?: readonly StoredItem[], more: Partial<PackRequest> = {}) {
  const stores = items === undefined ? held : { ...held, stores: { items } };
  const made = await makePack(of, { ...pumpRequest, ...more }, solveWithHighs, stores);
  if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
  return made.pack;
}

const needOf = (pack: Pack, thing: string): SealNeed => {
  const need = pack.seals?.needs.find((one) => one.thing === thing);
  if (need === undefined) throw new Error(`no ${thing}`);
  return need;
};

const item = (id: string, more: Readonly<Record<string, unknown>>): StoredItem =>
  itemSchema.parse({
    ...{ kind: 'seal', id, name: id, seal: 'ring', size: 'ISO 3601 99.5x3', compound: 'NBR' },
    ...{ condition: 'ready to fit', origin: 'chandler', quantity: 1, cured: '2Q2024' },
    ...more,
  });

const RING = 'seal/pump-mounting:o-ring';
const open = (pack: Pack) => pack.decisions.filter((d) => d.settled === null).map((d) => d.id);

describe('the draw list', () => {
  test('of every random job equals the seals of the joints undone, seed 52_001', async () => {
    const random = seededRandom(52_001);
    const machines = Object.values(plant.machines);
    let jobs = 0;
    for (let i = 0; i < (LONG ? 400 : 40); i += 1) {
      const machine = machines[seededBelow(random, machines.length)];
      const parts = Object.entries(machine?.parts ?? {}).filter(([, part]) =>
        Object.values(part.ways ?? {}).some((way) => way.gives === 'off'),
      );
      const id = parts[seededBelow(random, parts.length)]?.[0];
      if (machine === undefined || id === undefined) continue;
      const target = { does: { exchange: { take: [{ part: id, as: 'off' }] } } } as Target;
      const next = { ...machine, targets: { ...machine.targets, [id]: target } };
      const of = { ...plant, machines: { ...plant.machines, [machine.id]: next } };
      const asked = { machine: machine.id, target: id, does: 'exchange', on: ON } as const;
      const made = await makePack(of, asked, solveWithHighs, held);
      if (made.kind !== 'pack') continue;
      jobs += 1;
      // Told from the plan and the plant alone, whatever the lists were made from.
      const undone = made.pack.plan.order.flatMap((row) => (row.do === 'undo' ? [row.id] : []));
      const expected = [...new Set(undone)].flatMap((joint) =>
        Object.entries(machine.joints[joint]?.seals ?? {}).map(
          ([seal, { count }]) => `seal/${joint}:${seal} ${count}`,
        ),
      );
      const { seals, lists, steps } = made.pack;
      expect((seals?.needs ?? []).map((n) => `${n.thing} ${n.count}`).sort()).toEqual(
        expected.toSorted(),
      );
      expect(lists.seals.map((n) => `${n.thing} ${n.count}`).sort()).toEqual(expected.toSorted());
      for (const verb of ['seal-out', 'seal-in'])
        expect(
          steps.flatMap((s) => (s.verb === verb ? [`${s.thing} ${s.count?.n}`] : [])).sort(),
        ).toEqual(expected.toSorted());
      for (const need of seals?.needs ?? []) {
        const drawn = need.drawn.reduce((sum, { count }) => sum + count, 0);
        if (need.short !== null) expect(drawn + need.short).toBe(need.count);
        else expect(drawn).toBe(0);
      }
      // Nothing is drawn twice.
      for (const stored of held.stores?.items ?? []) {
        const all = (seals?.needs ?? [])
          .flatMap((n) => n.drawn)
          .filter((d) => d.item === stored.id);
        expect(all.reduce((sum, { count }) => sum + count, 0)).toBeLessThanOrEqual(stored.quantity);
      }
    }
    expect(jobs).toBeGreaterThan(LONG ? 200 : 20);
    process.stdout.write(`random jobs packed, seed 52_001: ${jobs}\n`);
  }, 120_000);

  test('of the demo pump is met, the old and the wrong left in the drawer', async () => {
    const pack = await packOf(plant);
    expect(pack.seals?.needs.map(({ short }) => short)).toEqual([0, 0, 0, 0, 0]);
    const ring = needOf(pack, RING);
    expect(ring.drawn.map(({ item: id, until }) => [id, until])).toEqual([
      ['spigot-ring', '2031-06-30'],
    ]);
    expect(ring.notDrawn.map(({ item: id }) => id)).toEqual(['spigot-ring-old', 'spigot-ring-fkm']);
    expect(pack.seals?.spares[0]?.drawn[0]?.item).toBe('pump-port');
    expect(open(pack).filter((id) => /seal|item|consumable/.test(id))).toEqual([]);
  });

  test('without a list of stores nothing is drawn and nothing is short', async () => {
    const made = await makePack(plant, pumpRequest, solveWithHighs);
    if (made.kind !== 'pack') throw new Error('no pack');
    expect(made.pack.seals?.held).toBe(false);
    expect(made.pack.seals?.needs.every((n) => n.short === null && n.drawn.length === 0)).toBe(
      true,
    );
    expect(open(made.pack).filter((id) => / seal | item | consumable /.test(id))).toEqual([]);
  });
});

describe('refused with its reason, and short before anything is shut', () => {
  test.each([
    ['expired', { cured: '3Q2014' }, 'ended on 2021-09-30 under ISO 2230 (from memory)'],
    ['to be inspected', { cured: '1Q2018' }, 'after inspection it may be used to 2028-03-31'],
    ['label ended', { expires: '2026-11-24', cured: undefined }, 'label ended on 2026-11-24'],
    ['other compound', { compound: 'FKM' }, 'it is FKM, needed is NBR'],
    ['no compound', { compound: undefined }, 'its compound is not on the bag'],
    ['other hand', { hand: 'starboard' }, 'this machine stands to port'],
    ['reserved', { reservedFor: 'Cooler, starboard' }, 'kept for another job: Cooler, starboard'],
    ['needs work', { condition: 'needs work' }, 'not ready to fit: needs work'],
    ['a core', { condition: 'core' }, 'not ready to fit: core'],
    ['cured later', { cured: '1Q2027' }, 'after the day of the work'],
  ])('%s', async (_, more, why) => {
    const pack = await packOf(plant, [item('a', more)]);
    const ring = needOf(pack, RING);
    expect(ring).toMatchObject({ drawn: [], short: 1 });
    expect(ring.notDrawn[0]?.why.join('; ')).toContain(why);
    expect(open(pack)).toContain('use seal a for pump-mounting:o-ring');
    expect(pack.decisions.find((d) => d.id.startsWith('use seal a'))?.why).toContain(why);
  });

  test('a name lets it be used all the same, and stands on the pack', async () => {
    const settled = { by: 'Maren Tollak', reason: 'sailing at six', limits: 'looked at after' };
    const decisions = { 'use seal a for pump-mounting:o-ring': settled };
    const pack = await packOf(plant, [item('a', { cured: '3Q2014' })], { decisions });
    expect(needOf(pack, RING)).toMatchObject({
      short: 0,
      drawn: [{ item: 'a', anyway: { by: 'Maren Tollak' } }],
    });
    expect(open(pack).filter((id) => id.includes('pump-mounting:o-ring'))).toEqual([]);
  });

  test('none held: where does it come from is settled by name once', async () => {
    const pack = await packOf(plant, []);
    expect(open(pack)).toContain('no seal for pump-gauge-union:washers');
    const settled = { by: 'Maren Tollak', reason: 'from the sister ship at noon' };
    const again = await packOf(plant, [], {
      decisions: { 'no seal for pump-gauge-union:washers': settled },
    });
    expect(open(again)).not.toContain('no seal for pump-gauge-union:washers');
  });

  test('what is kept for this very job is free for it', async () => {
    const kept = item('a', { reservedFor: 'Sea-water pump, Port main engine' });
    expect(needOf(await packOf(plant, [kept]), RING).short).toBe(0);
  });

  test('of two the one that expires first; a thinner gasket is no gasket', async () => {
    const both = [item('young', { cured: '2Q2025' }), item('older', { cured: '2Q2023' })];
    expect(needOf(await packOf(plant, both), RING).drawn[0]?.item).toBe('older');
    const gasket = { seal: 'gasket', size: undefined, compound: undefined, cured: undefined };
    const thin = item('g', { ...gasket, thickness: '0.4 mm', serves: ['pump-mounting:gasket'] });
    const half = item('h', { ...gasket, thickness: '500 um', serves: ['pump-mounting:gasket'] });
    const need = needOf(await packOf(plant, [thin, half]), 'seal/pump-mounting:gasket');
    expect(need.drawn[0]?.item).toBe('h');
    expect(need.notDrawn[0]?.why).toEqual(['it is 0.4 mm, needed is 0.5 mm']);
  });

  test('a size that is not stated is asked, not guessed', async () => {
    const of = withSeal('pump-mounting', 'o-ring', { size: undefined } as SealChange);
    const need = needOf(await packOf(of), RING);
    expect(need).toMatchObject({ short: null, drawn: [] });
    expect(need.notChecked[0]).toContain('cannot be checked');
  });
});

describe('what speaks against a seal', () => {
  const against = async (of: Plant, thing: string) => {
    const pack = await packOf(of);
    const { against: said } = needOf(pack, thing);
    expect(open(pack).includes(`speaks against ${thing}`)).toBe(said.length > 0);
    return said.join('; ');
  };

  test('mineral grease on EPDM; on NBR nothing', async () => {
    const of = withSeal('pump-mounting', 'o-ring', { compound: 'EPDM' });
    expect(await against(of, RING)).toContain('mineral-oil grease on EPDM: unsatisfactory');
    expect(await against(plant, RING)).toBe('');
  });

  test('a gasket below the temperature and pressure of its line', async () => {
    const limits = { maxTemperature: '40 Cel', maxPressure: '2 bar' };
    const of = withSeal('discharge-flange', 'gasket', limits);
    const said = await against(of, 'seal/discharge-flange:gasket');
    expect(said).toContain('its limit is 40 °C, its line has 45 °C');
    expect(said).toContain('its limit is 2 bar, its line has 2.2 bar');
  });

  test('sealant where the joint forbids it, and where the gasket sets a clearance', async () => {
    const said = await against(
      withSeal('pump-mounting', 'gasket', { sealant: 'flange sealant' }, { noSealant: 'oil way' }),
      'seal/pump-mounting:gasket',
    );
    expect(said).toContain('no flange sealant here: oil way');
    expect(said).toContain('sets a clearance');
    const { notes } = needOf(await packOf(plant), 'seal/pump-mounting:gasket');
    expect(notes[0]).toContain('one gasket of 0.5 mm, no more than one, no sealant');
  });

  test('blind holes stay dry, and the old one may go back only where it is stated', async () => {
    const of = changed((joints, machine) => {
      const joint = joints['pump-mounting'];
      const fasteners = Object.fromEntries(
        Object.entries(joint?.fasteners ?? {}).map(([id, f]) => [id, { ...f, blind: true }]),
      );
      return {
        ...machine,
        joints: { ...joints, 'pump-mounting': { ...joint, name: 'Pump mounting', fasteners } },
      };
    });
    expect(needOf(await packOf(of), RING).notes.join()).toContain('blind holes clean and dry');
    const again = withSeal('pump-mounting', 'o-ring', { reuse: 'no mark that a nail feels' });
    expect(needOf(await packOf(again), RING).notes.join()).toContain('no mark that a nail feels');
  });
});

describe('consumables and neighbours', () => {
  test('an amount for a ring has its source; what may not touch is refused', async () => {
    const pack = await packOf(plant);
    const grease = pack.seals?.consumables.find(({ name }) => name === 'mineral-oil grease');
    // π² (99.5 + 3) × 3 × 0.1 mm = 303 mm³.
    expect(grease).toMatchObject({ amount: '0.3 mL', held: { place: 'Oil store' } });
    expect(grease?.amountSource).toContain('no source');
    const items = (held.stores?.items ?? []).map((one) =>
      one.id === 'grease-mineral' ? { ...one, touches: ['FKM'] } : one,
    );
    const refused = await packOf(plant, items);
    expect(open(refused)).toContain('no consumable mineral-oil grease');
  });

  test('a seal that the way is open to is told with its age; the record knows better', async () => {
    const pack = await packOf(plant);
    const near = pack.seals?.near.find(({ thing }) => thing === 'seal/pump-cover:o-ring');
    expect(near).toMatchObject({ fittedOn: '2019-05-12', years: 7.5, doNow: true });
    const fitted = { 'main-engine-port pump-cover:o-ring': '2025-03-01' };
    const stores = { ...held, stores: { items: held.stores?.items ?? [], fitted } };
    const made = await makePack(plant, pumpRequest, solveWithHighs, stores);
    if (made.kind !== 'pack') throw new Error('no pack');
    const known = made.pack.seals?.near.find(({ thing }) => thing === 'seal/pump-cover:o-ring');
    expect(known).toMatchObject({ fittedOn: '2025-03-01', doNow: false });
  });
});
