// Makes acts on this device with the same core as everywhere, and keeps them before anyone is told.

import { limits } from '../../limits.ts';
import { sha256Hex } from '../../quantity/sha.ts';
import { bytesOf, makeAct, readAct } from '../../record/act.ts';
import { mayRecord } from '../../record/closing.ts';
import { fold } from '../../record/fold.ts';
import { order } from '../../record/order.ts';
import type { Replica } from '../../record/replica.ts';
import type { Act, DeviceTime, Draft, Refusal } from '../../record/types.ts';
import { type Answer, problem } from './api.ts';
import { type DeviceRow, db, newDevice, type OwnAct } from './offline-db.ts';
import { notKeptWords } from './offline-words.ts';
import { wordsNow } from './words-now.ts';

/** Own acts of this vessel that the server has not shown: they are folded with what it gave. */
export function notShownOf(replica: Replica, own: readonly OwnAct[]): readonly OwnAct[] {
  const there = new Set(replica.acts.map((act) => act.hash));
  return own.filter(({ act }) => act.vessel === replica.vessel.id && !there.has(act.hash));
}

/** Everything this device has seen: what the server gave, and what was said here. */
export function withOwn(replica: Replica, own: readonly OwnAct[]): Replica {
  const notShown = notShownOf(replica, own);
  if (notShown.length === 0) return replica;
  const acts = [...replica.acts, ...notShown.map(({ act }) => act)];
  return { ...replica, acts, heads: order(acts).heads };
}

const deviceTime = (): DeviceTime => {
  const date = new Date();
  return { utc: date.toISOString(), offsetMinutes: 0 - date.getTimezoneOffset() };
};

export type Made = { readonly acts: readonly Act[]; readonly refusal: Refusal | null };

/** Each draft is asked of the core after the one before it; at the first refusal it stops. */
export function makeActs(seen: Replica, device: DeviceRow, drafts: readonly Draft[]): Made {
  const { packs, vessel } = seen;
  const at = deviceTime();
  const made: Act[] = [];
  for (const draft of drafts) {
    const acts = [...seen.acts, ...made];
    const refusal = mayRecord(fold({ acts, packs }), draft.stream.id, draft, packs, at);
    if (refusal !== null) return { acts: made, refusal };
    const act = makeAct(draft, {
      vessel: vessel.id,
      device: device.id,
      deviceSeq: device.lastSeq + made.length + 1,
      parents: order(acts).heads.slice(0, limits.record.parents),
      at,
    });
    // What no server would take is not made: it would stay here for ever.
    const again = readAct(bytesOf(act), act.hash);
    if (!again.ok) return { acts: made, refusal: { stop: 'bad act', why: again.why, open: [] } };
    made.push(act);
  }
  return { acts: made, refusal: null };
}

export type Said = { readonly own: readonly OwnAct[]; readonly answer: Answer<true> };

/**
 * Two pages on one device take turns here, so that no number is given twice. The replica is asked
 * for inside the turn: own acts may have left for it while this one waited.
 */
export async function sayActs(replica: () => Replica, drafts: readonly Draft[]): Promise<Said> {
  return await db.transaction('rw', db.device, db.own, async (): Promise<Said> => {
    const device = (await db.device.get('device')) ?? newDevice();
    const own = await db.own.toArray();
    const { acts, refusal } = makeActs(withOwn(replica(), own), device, drafts);
    const rows = acts.map(
      (act): OwnAct => ({
        deviceSeq: act.deviceSeq,
        act,
        taken: false,
        refused: null,
      }),
    );
    await db.own.bulkAdd(rows);
    await db.device.put({ ...device, lastSeq: device.lastSeq + rows.length });
    return { own: [...own, ...rows], answer: answerOf(refusal, drafts[acts.length]) };
  });
}

function answerOf(refusal: Refusal | null, draft: Draft | undefined): Answer<true> {
  if (refusal === null || draft === undefined) return { ok: true, value: true };
  const one = { path: draft.kind, got: draft.kind, expected: refusal.stop, why: refusal.why };
  return { ok: false, problems: [one], refusal };
}

export const notKept = (path: string, error: unknown): Answer<never> =>
  problem({
    path,
    got: null,
    expected: wordsNow().offline.toBeKept,
    why: notKeptWords(error, wordsNow()),
  });

function pictureType(bytes: Uint8Array): string | null {
  const starts = (...head: number[]) => head.every((byte, i) => bytes[i] === byte);
  if (starts(0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  return null;
}

export type Photo = { readonly hash: string; readonly type: string };

/** By the hash of its bytes; `crypto.subtle` is not there over plain HTTP. */
export async function keepPhoto(file: Blob): Promise<Answer<Photo>> {
  const most = limits.server.attachmentBytes;
  const path = 'photo';
  const { offline: w } = wordsNow();
  if (file.size > most) {
    return problem({ path, got: file.size, expected: w.atMost(most), why: w.tooLarge });
  }
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const type = pictureType(bytes);
    if (type === null) {
      return problem({ path, got: file.type, expected: w.aPicture, why: w.noPicture });
    }
    const hash = sha256Hex(bytes);
    const kept = await db.photos.get(hash);
    if (kept === undefined) await db.photos.add({ hash, type, bytes, unsent: 1 });
    return { ok: true, value: { hash, type } };
  } catch (error) {
    return notKept(path, error);
  }
}
