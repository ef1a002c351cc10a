// What can be freed, against moving the parts of random small machines in every possible way.

import { expect, test } from 'vitest';
import { readPlant } from './read.ts';
import { type Numbers, numbersFrom } from './text-scan.ts';

const SEED = 20_261_126;
const COUNT = process.env.LONG === '1' ? 4000 : 400;

type As = 'off' | 'aside';
type Clear = { part: string; as: As }[];
type Way = { gives: As; joints: string[]; clear: Clear };
type Small = {
  parts: Record<string, { name: string; stays?: true; on?: string; ways?: Record<string, Way> }>;
  joints: Record<string, { name: string; accesses: Record<string, { clear: Clear }> }>;
};

function small(numbers: Numbers): Small {
  const whole = (below: number) => Math.floor(numbers() * below);
  const ids = Array.from({ length: 2 + whole(4) }, (_, n) => `p${n}`);
  const clear = (most: number): Clear =>
    Array.from({ length: whole(most + 1) }, () => ({
      part: ids[whole(ids.length)] ?? 'p0',
      as: numbers() < 0.5 ? 'off' : 'aside',
    }));
  const jointIds = ['j0', 'j1'];
  const joints = Object.fromEntries(
    jointIds.map((id) => {
      const accesses = Array.from({ length: whole(3) }, (_, n) => [`a${n}`, { clear: clear(1) }]);
      return [id, { name: id, accesses: Object.fromEntries(accesses) }];
    }),
  );
  const parts = Object.fromEntries(
    ids.map((id, n): [string, Small['parts'][string]] => {
      const ways = Array.from({ length: 1 + whole(2) }, (_, way): [string, Way] => [
        `w${way}`,
        {
          gives: numbers() < 0.6 ? 'off' : 'aside',
          joints: jointIds.filter(() => numbers() < 0.25),
          clear: clear(2),
        },
      ]);
      const on = n > 0 && numbers() < 0.15 ? { on: `p${whole(n)}` } : {};
      if (numbers() < 0.1) return [id, { name: id, stays: true, ...on }];
      return [id, { name: id, ways: Object.fromEntries(ways), ...on }];
    }),
  );
  return { parts, joints };
}

/** Every state of a part that some order of moves reaches, found by trying all of them. */
function reached({ parts, joints }: Small): Set<string> {
  const ids = Object.keys(parts);
  const found = new Set<string>();
  const seen = new Set<string>();
  const queue: Record<string, As | undefined>[] = [{}];
  for (const state of queue) {
    const key = ids.map((id) => state[id] ?? 'in').join();
    if (seen.has(key)) continue;
    seen.add(key);
    for (const [id, as] of Object.entries(state)) found.add(`${id} ${as}`);
    const open = (clear: Clear) =>
      clear.every(({ part, as }) => state[part] === 'off' || state[part] === as);
    const can = ({ clear, joints: needed }: Way) =>
      open(clear) &&
      needed.every((id) =>
        Object.values(joints[id]?.accesses ?? {}).some((access) => open(access.clear)),
      );
    for (const id of ids) {
      const ways = Object.values(parts[id]?.ways ?? {}).filter(can);
      for (const { gives } of ways) if (state[id] !== 'off') queue.push({ ...state, [id]: gives });
      const carrier = state[parts[id]?.on ?? ''];
      if (carrier !== undefined && state[id] !== 'off') queue.push({ ...state, [id]: carrier });
    }
  }
  return found;
}

const HEAD = {
  plant: 'p',
  name: 'P',
  kind: 'station',
  issue: { number: 1, date: '2026-01-01', by: 'A' },
};

function told(machine: Small) {
  const file = { type: 't', name: 'T', ...machine };
  // JSON is YAML, so the machine needs no writer of its own.
  const { problems } = readPlant([
    { file: 'plant.yaml', text: JSON.stringify(HEAD) },
    { file: 'type.yaml', text: JSON.stringify(file) },
  ]);
  return problems.filter(({ fault }) => fault === 'F11' || fault === 'F12');
}

test(`${COUNT} random machines from seed ${SEED}: told when a part never moves, only then`, () => {
  let stuckOnes = 0;
  let freeOnes = 0;
  for (let n = 0; n < COUNT; n++) {
    const machine = small(numbersFrom(SEED + n));
    const can = reached(machine);
    const moves = (id: string) => can.has(`${id} aside`) || can.has(`${id} off`);
    const withWays = Object.entries(machine.parts).filter(([, { ways }]) => ways !== undefined);
    const never = withWays.filter(([id]) => !moves(id)).map(([id]) => id);
    const unmet = withWays.some(([id, { ways }]) =>
      Object.values(ways ?? {}).some(({ gives }) =>
        gives === 'off' ? !can.has(`${id} off`) : !moves(id),
      ),
    );
    const problems = told(machine);
    const where = `seed ${SEED + n}`;
    if (never.length > 0) expect(problems.length, where).toBeGreaterThan(0);
    if (!unmet) expect(problems, where).toEqual([]);
    for (const { fault, path } of problems) {
      if (fault === 'F11') expect(never, where).toContain(path.split('/')[1]);
    }
    if (never.length > 0) stuckOnes += 1;
    else freeOnes += 1;
  }
  // Neither kind may be rare, or the comparison would say little.
  expect(Math.min(stuckOnes, freeOnes)).toBeGreaterThan(COUNT / 10);
});
