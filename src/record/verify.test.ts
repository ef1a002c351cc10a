// Tampering: against the printed head and the devices' last numbers, every one of them is found.

import { describe, expect, test } from 'vitest';
import { bytesOf, makeAct, readAct } from './act.ts';
import { chain, fixturePack, jobDraft, wholeJob } from './fixture.ts';
import type { Act } from './types.ts';
import { lastSeqs, type Row, verify } from './verify.ts';

const SEED = 4170;
const RUNS = process.env.LONG === '1' ? 500 : 100;
const pack = fixturePack();

/** Two phones share one job; what stands side by side is joined before the closing. */
function twoPhones(): Act[] {
  const drafts = wholeJob(pack);
  const base = chain(drafts.slice(0, 20));
  const middle = drafts.slice(20, 40);
  const a = chain(
    middle.filter((_, i) => i % 2 === 0),
    'phone-a',
    base,
  );
  const b = chain(
    middle.filter((_, i) => i % 2 === 1),
    'phone-b',
    base,
  );
  const joined = [...base, ...a, ...b];
  const heads = [a.at(-1)?.hash ?? '', b.at(-1)?.hash ?? ''];
  const [first, ...rest] = drafts.slice(40);
  if (first === undefined) throw new Error('the job is longer than that');
  const join = makeAct(first, {
    vessel: 'tern-rock',
    device: 'phone-a',
    deviceSeq: base.length + a.length + 1,
    parents: heads,
    at: { utc: '2026-03-14T10:00:00.000Z', offsetMinutes: 0 },
  });
  const after = [...joined, join];
  return [...after, ...chain(rest, 'phone-a', after)];
}

const acts = twoPhones();
const closing = acts.at(-1);
const rowOf = (act: Act): Row => ({
  vessel: act.vessel,
  hash: act.hash,
  streamKind: act.stream.kind,
  streamId: act.stream.id,
  device: act.device,
  deviceSeq: act.deviceSeq,
  bytes: bytesOf(act),
});
const rows = acts.map(rowOf);
const against = {
  vessel: 'tern-rock',
  closedHeads: [closing?.hash ?? ''],
  deviceSeqs: lastSeqs(acts),
};

/** A small generator of chance with a printed seed (mulberry32). */
function chance(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A row said by `device` on top of `parents`, with a right hash: the best a forger can do. */
function forged(change: Partial<Parameters<typeof makeAct>[1]>, job = 'pump-test-engine'): Row {
  const placed = {
    vessel: 'tern-rock',
    device: 'phone-x',
    deviceSeq: 1,
    parents: [] as readonly string[],
    at: { utc: '2026-03-14T09:00:00.000Z', offsetMinutes: 0 },
  };
  return rowOf(makeAct(jobDraft('note', { text: 'forged' }, 'Eve', job), { ...placed, ...change }));
}

type Tampering = readonly [string, (pick: (n: number) => number) => readonly Row[]];

const tamperings: readonly Tampering[] = [
  [
    'an altered byte',
    (pick) => {
      const at = pick(rows.length);
      return rows.map((row, i) => {
        if (i !== at) return row;
        const bytes = row.bytes.slice();
        const byte = pick(bytes.length);
        bytes[byte] = (bytes[byte] ?? 0) ^ (1 << pick(8));
        return { ...row, bytes };
      });
    },
  ],
  [
    'an altered column',
    (pick) => {
      const at = pick(rows.length);
      const columns: readonly ((row: Row) => Row)[] = [
        (row) => ({ ...row, vessel: 'other' }),
        (row) => ({ ...row, streamId: 'other-job' }),
        (row) => ({ ...row, streamKind: 'vessel' }),
        (row) => ({ ...row, device: 'phone-z' }),
        (row) => ({ ...row, deviceSeq: row.deviceSeq + 1 }),
        (row) => ({ ...row, hash: row.hash.replace(/^./, (c) => (c === '0' ? '1' : '0')) }),
      ];
      const change = columns[pick(columns.length)] ?? ((row: Row) => row);
      return rows.map((row, i) => (i === at ? change(row) : row));
    },
  ],
  [
    'a removed act, the closing too',
    (pick) => {
      const at = pick(rows.length);
      return rows.filter((_, i) => i !== at);
    },
  ],
  ['the end cut off', (pick) => rows.slice(0, rows.length - 1 - pick(rows.length - 1))],
  [
    'a row of another vessel',
    (pick) => [...rows, forged({ vessel: `vessel-${pick(9)}`, parents: against.closedHeads })],
  ],
  [
    'a number already taken',
    (pick) => {
      const taken = acts[pick(acts.length)];
      const { device = '', deviceSeq = 1 } = taken ?? {};
      return [...rows, forged({ device, deviceSeq, parents: against.closedHeads })];
    },
  ],
  [
    'a row joined to the closed job beside its closing',
    (pick) => [...rows, forged({ parents: [acts[pick(acts.length - 1)]?.hash ?? ''] })],
  ],
  ['a row that knows nothing, joined to the closed job', () => [...rows, forged({})]],
  [
    'a number left out by a device',
    (pick) => [...rows, forged({ deviceSeq: 2 + pick(5), parents: against.closedHeads })],
  ],
];

test('an honest record has no fault, in any order of its rows', () => {
  expect(verify(rows, against)).toEqual([]);
  expect(verify([...rows].reverse(), against)).toEqual([]);
  expect(lastSeqs(acts)).toEqual({ 'phone-a': acts.length - 10, 'phone-b': 10 });
});

describe(`${RUNS} random tamperings of each kind together, seed ${SEED}`, () => {
  test('every one is found, and where it is', () => {
    const next = chance(SEED);
    const pick = (n: number) => Math.floor(next() * n);
    const counts = new Map<string, number>();
    for (let i = 0; i < RUNS; i++) {
      const [what, tamper] = tamperings[i % tamperings.length] ?? ['none', () => rows];
      const tampered = [...tamper(pick)].sort(() => next() - 0.5);
      const faults = verify(tampered, against);
      expect(faults, `${what}, run ${i}`).not.toEqual([]);
      for (const fault of faults) expect(fault.place).not.toBe('');
      counts.set(what, (counts.get(what) ?? 0) + 1);
    }
    console.log(`seed ${SEED}: found ${[...counts].map(([k, n]) => `${n} × ${k}`).join(', ')}`);
    expect(counts.size).toBe(tamperings.length);
  });
});

test('what cannot be told without signatures: an act at the tip with a right hash', () => {
  expect(
    verify([...rows, forged({ parents: against.closedHeads }, 'another-job')], against),
  ).toEqual([]);
});

test('a row that is there twice, or lost its closing, is named', () => {
  const [first] = rows;
  if (first === undefined) throw new Error('no rows');
  expect(verify([...rows, first], against)[0]?.what).toBe('is there twice');
  const without = verify(rows.slice(0, -1), against).map((f) => f.what);
  expect(without.join('; ')).toMatch(/printed head is not in the record/);
});

test('bytes that are the same act written otherwise are refused', () => {
  const [act] = acts;
  if (act === undefined) throw new Error('no acts');
  const loose = new TextEncoder().encode(
    JSON.stringify(JSON.parse(new TextDecoder().decode(bytesOf(act))), null, 1),
  );
  expect(readAct(loose, act.hash).ok).toBe(false);
  expect(readAct(bytesOf(act), act.hash)).toEqual({ ok: true, act });
});
