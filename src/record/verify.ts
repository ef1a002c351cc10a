// Verifies kept rows against a closed record's head and each device's last number; finds tampering.

import { readAct } from './act.ts';
import { order } from './order.ts';
import type { Act } from './types.ts';

/** A row as an archive keeps it; its columns repeat what the bytes say. */
export type Row = {
  readonly vessel: string;
  readonly hash: string;
  readonly streamKind: string;
  readonly streamId: string;
  readonly device: string;
  readonly deviceSeq: number;
  readonly bytes: Uint8Array;
};

export type Fault = {
  readonly place: string;
  readonly what: string;
};

export type Against = {
  readonly vessel?: string;
  /** Head hashes printed on closed records: each must be there with all its ancestors. */
  readonly closedHeads?: readonly string[];
  /** The last number of each device, as printed; more than this is fine, less is not. */
  readonly deviceSeqs?: Readonly<Record<string, number>>;
};

/** Every fault, not the first only. No fault means: nothing that these checks can see. */
export function verify(rows: readonly Row[], against: Against = {}): readonly Fault[] {
  const read = rows.map((row) => ({ row, ...readRow(row, against.vessel ?? rows[0]?.vessel) }));
  const acts = read.flatMap((r) => (r.act === null ? [] : [r.act]));
  return [
    ...read.flatMap((r) => r.faults),
    ...twice(rows),
    ...strangers(acts),
    ...sequences(acts, against.deviceSeqs ?? {}),
    ...heads(acts, against.closedHeads ?? []),
    ...joined(acts),
  ];
}

/** The last number of each device: what a closed record prints beside its head. */
export function lastSeqs(acts: readonly Act[]): Readonly<Record<string, number>> {
  const last = new Map<string, number>();
  for (const act of acts) last.set(act.device, Math.max(last.get(act.device) ?? 0, act.deviceSeq));
  return Object.fromEntries([...last].sort(([a], [b]) => (a < b ? -1 : 1)));
}

function readRow(row: Row, vessel: string | undefined): { act: Act | null; faults: Fault[] } {
  const place = `row ${row.hash}`;
  const read = readAct(row.bytes, row.hash);
  if (!read.ok) return { act: null, faults: [{ place, what: read.why }] };
  const { act } = read;
  const columns: [string, string | number, string | number][] = [
    ['vessel', row.vessel, act.vessel],
    ['stream kind', row.streamKind, act.stream.kind],
    ['stream', row.streamId, act.stream.id],
    ['device', row.device, act.device],
    ['number', row.deviceSeq, act.deviceSeq],
  ];
  const faults = columns
    .filter(([, kept, said]) => kept !== said)
    .map(([name, kept, said]) => ({
      place,
      what: `${name} is kept as ${kept}, the act says ${said}`,
    }));
  if (vessel !== undefined && act.vessel !== vessel)
    faults.push({ place, what: `is of vessel ${act.vessel}, not of ${vessel}` });
  return { act, faults };
}

function twice(rows: readonly Row[]): Fault[] {
  const seen = new Set<string>();
  return rows.flatMap((row) => {
    if (!seen.has(row.hash)) {
      seen.add(row.hash);
      return [];
    }
    return [{ place: `row ${row.hash}`, what: 'is there twice' }];
  });
}

function strangers(acts: readonly Act[]): Fault[] {
  const known = new Set(acts.map((a) => a.hash));
  return acts.flatMap((act) =>
    act.parents
      .filter((p) => !known.has(p))
      .map((p) => ({ place: `act ${act.hash}`, what: `its parent ${p} is missing` })),
  );
}

/** Each device numbers its acts 1, 2, 3 …, and each follows the one before. */
function sequences(acts: readonly Act[], printed: Readonly<Record<string, number>>): Fault[] {
  const faults: Fault[] = [];
  const byDevice = Map.groupBy(acts, (a) => a.device);
  const ordered = order(acts);
  for (const [device, own] of byDevice) {
    const bySeq = [...own].sort((a, b) => a.deviceSeq - b.deviceSeq);
    for (const [i, act] of bySeq.entries()) {
      const before = bySeq[i - 1];
      const place = `device ${device}, number ${act.deviceSeq}`;
      if (before?.deviceSeq === act.deviceSeq) {
        faults.push({ place, what: `is taken twice: ${before.hash} and ${act.hash}` });
        continue;
      }
      if (act.deviceSeq !== (before?.deviceSeq ?? 0) + 1)
        faults.push({ place, what: `follows number ${before?.deviceSeq ?? 0}: one is missing` });
      const here = ordered.indexOf.get(act.hash);
      const there = before === undefined ? undefined : ordered.indexOf.get(before.hash);
      if (here === undefined || there === undefined) continue;
      if (!ordered.isAncestor(there, here))
        faults.push({ place, what: `does not know the device's own number before it` });
    }
  }
  for (const [device, last] of Object.entries(printed)) {
    const have = Math.max(0, ...(byDevice.get(device) ?? []).map((a) => a.deviceSeq));
    if (have < last)
      faults.push({
        place: `device ${device}`,
        what: `ends at number ${have}, ${last} was printed`,
      });
  }
  return faults;
}

function heads(acts: readonly Act[], closedHeads: readonly string[]): Fault[] {
  const known = new Map(acts.map((a) => [a.hash, a]));
  return closedHeads.flatMap((head): Fault[] => {
    const act = known.get(head);
    if (act === undefined)
      return [{ place: `head ${head}`, what: 'the printed head is not in the record' }];
    return act.kind === 'closed'
      ? []
      : [{ place: `head ${head}`, what: `is "${act.kind}", not the closing of a job` }];
  });
}

/** An act of a closed job that nobody knew of at its closing must have come afterwards. */
function joined(acts: readonly Act[]): Fault[] {
  const { acts: sorted, isAncestor } = order(acts);
  const closings = sorted.flatMap((act, index) => (act.kind === 'closed' ? [{ act, index }] : []));
  return closings.flatMap((closing) =>
    sorted.flatMap((act, index): Fault[] => {
      const same =
        act.stream.kind === closing.act.stream.kind && act.stream.id === closing.act.stream.id;
      if (!same || act === closing.act) return [];
      if (isAncestor(index, closing.index) || isAncestor(closing.index, index)) return [];
      return [
        {
          place: `act ${act.hash}`,
          what: `joins job ${act.stream.id} beside its closing ${closing.act.hash}`,
        },
      ];
    }),
  );
}
