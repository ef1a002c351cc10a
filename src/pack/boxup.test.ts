// The trade's rules of box-up, one by one, on the demo ferry's pump; the list is written by hand.

import { beforeAll, describe, expect, test } from 'vitest';
import { readFolder } from '../cli/read-folder.ts';
import { readPlant } from '../plant/read.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { makePack } from './pack.ts';
import type { Pack, Step } from './types.ts';

const packs: Record<'port' | 'starboard', Pack | undefined> = {
  port: undefined,
  starboard: undefined,
};

beforeAll(async () => {
  const { plant, problems } = readPlant(readFolder('demo/tern-rock'));
  if (plant === null) throw new Error(JSON.stringify(problems));
  for (const side of ['port', 'starboard'] as const) {
    const request = { machine: `main-engine-${side}`, target: 'sea-water-pump' };
    const made = await makePack(plant, { ...request, does: 'exchange' }, solveWithHighs);
    if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
    packs[side] = made.pack;
  }
});

const stepOf = (side: 'port' | 'starboard', id: string): Step => {
  const step = packs[side]?.steps.find((s) => s.id === id);
  if (step === undefined) throw new Error(`${side} has no step ${id}`);
  return step;
};

const at = (side: 'port' | 'starboard', id: string): number =>
  packs[side]?.steps.findIndex((s) => s.id === id) ?? -1;

/** The temporary thing that blanks a joint, by its name. */
const blank = (side: 'port' | 'starboard', name: RegExp): string =>
  packs[side]?.lists.temporary.find((t) => name.test(t.name))?.thing ?? 'none';

describe('each making good waits for what the machine demands', () => {
  const demands: [string, string][] = [
    ['seal-in seal/pump-mounting:o-ring', 'seal-out seal/pump-mounting:o-ring'],
    ['seal-in seal/pump-mounting:o-ring', 'checked check/faces:pump-mounting'],
    ['checked check/faces:pump-mounting', 'seal-out seal/pump-mounting:gasket'],
    ['refitted part/sea-water-pump', 'seal-in seal/pump-mounting:o-ring'],
    ['refitted part/sea-water-pump', 'seal-in seal/pump-mounting:gasket'],
    ['refitted part/sea-water-pump', 'loose-in loose/pump-mounting:tang'],
    ['refitted part/sea-water-pump', 'item-in item/sea-water-pump'],
    ['made joint/pump-mounting hand', 'refitted part/sea-water-pump'],
    ['made joint/pump-mounting 30 %', 'made joint/pump-mounting hand'],
    ['made joint/discharge-flange 30 %', 'checked check/square:discharge-flange'],
    ['made joint/suction-flange 30 %', 'checked check/square:suction-flange'],
    ['checked check/square:suction-flange', 'made joint/suction-flange hand'],
    ['proof proof/static-look', 'restored closure/sea-suction-valve'],
    ['proof proof/static-look', 'checked check/tools'],
    ['restored closure/engine-start-air-valve', 'proof proof/static-look'],
    ['restored closure/engine-start-air-valve', 'turned check/hand-turn'],
    ['turned check/hand-turn', 'restored closure/turning-gear'],
    ['turned check/hand-turn', 'people-clear check/clear:turn'],
    ['started check/first-start', 'people-clear check/clear:start'],
    ['proof proof/running', 'started check/first-start'],
  ];
  test.each(demands)('%s waits for %s', (then, first) => {
    expect(stepOf('port', then).needs).toContain(first);
  });

  test('a face and its new seal wait until the blank on that face is off', () => {
    const off = `taken-away ${blank('port', /suction/i)}`;
    expect(stepOf('port', 'checked check/faces:suction-flange').needs).toContain(off);
    expect(stepOf('port', 'seal-in seal/suction-flange:gasket').needs).toContain(
      'checked check/faces:suction-flange',
    );
  });

  test('the part is offered up only when its blanks are off', () => {
    const off = `taken-away ${blank('port', /discharge/i)}`;
    expect(stepOf('port', 'refitted part/sea-water-pump').needs).toContain(off);
  });

  test('its pipes that are up are started by hand before the mounting is tightened', () => {
    for (const pipe of ['discharge-flange', 'pump-gauge-union'])
      expect(at('port', `made joint/${pipe} hand`)).toBeLessThan(
        at('port', 'made joint/pump-mounting 30 %'),
      );
  });

  test('the mounting is tight before any pipe is tightened', () => {
    for (const pipe of ['discharge-flange 30 %', 'suction-flange 30 %'])
      expect(at('port', 'made joint/pump-mounting once more in order')).toBeLessThan(
        at('port', `made joint/${pipe}`),
      );
  });

  test('where the pipe stands in the way it goes up after, and the pack says why', () => {
    expect(stepOf('starboard', 'refitted part/discharge-pipe').needs).toContain(
      'made joint/pump-mounting once more in order',
    );
    expect(packs.starboard?.boxUpNotes.join()).toMatch(
      /Discharge flange and pump mounting: the pipe/,
    );
    expect(packs.port?.boxUpNotes.join()).not.toMatch(/Discharge flange and pump mounting/);
  });

  test('the map of removal numbers as the steps go: pipes off before the mounting', () => {
    const order = packs.port?.plan.order.map((o) => o.id) ?? [];
    expect(order.indexOf('pump-mounting')).toBeGreaterThan(order.indexOf('suction-flange'));
    expect(order.indexOf('pump-mounting')).toBeGreaterThan(order.indexOf('discharge-flange'));
    const steps = order.map((id) => packs.port?.steps.findIndex((s) => s.thing.endsWith(`/${id}`)));
    expect(steps).toEqual([...steps].sort((a, b) => (a ?? 0) - (b ?? 0)));
  });

  test('the weight is taken before the last joint that holds the part lets go', () => {
    const undo = stepOf('port', 'undone joint/pump-mounting');
    expect(undo.text).toMatch(/Weight taken first: chain block and webbing sling/);
    expect(undo.cautions.map((x) => x.hazard)).toContain('lifting');
  });

  test('starting is given back last: the closure shut first among those of the start', () => {
    const start = ['control-breaker', 'remote-start', 'engine-start-air-valve'];
    const places = start.map((id) => at('port', `restored closure/${id}`));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(at('port', 'restored closure/turning-gear')).toBeLessThan(places[0] ?? -1);
  });

  test('one tag for each place a closure can be moved from, at places that exist', () => {
    expect(packs.port?.lists.closures.map((x) => [x.closure, x.tags.length])).toEqual([
      ['sea-suction-valve', 2],
      ['overboard-valve', 1],
      ['sea-water-cross-over', 2],
      ['engine-start-air-valve', 1],
      ['remote-start', 2],
      ['control-breaker', 1],
      ['turning-gear', 1],
    ]);
  });
});

describe('closures typed by hand in a request', () => {
  const closures = {
    by: 'Maren Tollak',
    on: '2026-11-20',
    closures: [{ closure: 'sea-suction-valve', position: 'open' }],
    proveAt: 'overboard-valve',
  };
  test('an open closure and a proof at a sea valve are refused, both at once', async () => {
    const { plant } = readPlant(readFolder('demo/tern-rock'));
    if (plant === null) throw new Error('no plant');
    const request = { machine: 'main-engine-port', target: 'sea-water-pump' };
    const made = await makePack(plant, { ...request, does: 'exchange', closures }, solveWithHighs);
    expect(made).toMatchObject({
      kind: 'problems',
      problems: [
        { path: 'closures/closures/0/position', got: 'open' },
        { path: 'closures/proveAt', got: 'overboard-valve' },
      ],
    });
  });

  test('a wet job without any closure of the water side asks for one', async () => {
    const { plant } = readPlant(readFolder('demo/tern-rock'));
    if (plant === null) throw new Error('no plant');
    const only = [{ closure: 'control-breaker', position: 'off' }];
    const typed = { ...closures, closures: only, proveAt: 'strainer-drain' };
    const request = { machine: 'main-engine-port', target: 'sea-water-pump' };
    const made = await makePack(
      plant,
      { ...request, does: 'exchange', closures: typed },
      solveWithHighs,
    );
    if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
    expect(made.pack.decisions.map((d) => d.id)).toContain('no closure of the water side');
  });
});
