// What every archive must show, whatever it is built on: one suite, given a maker of archives.

import { expect, test } from 'vitest';
import { bytesOf } from '../record/act.ts';
import { chain, fixturePack, jobDraft, startDraft, wholeJob } from '../record/fixture.ts';
import { fold, stateHash } from '../record/fold.ts';
import type { Act } from '../record/types.ts';
import { verify } from '../record/verify.ts';
import type { Archive } from './contract.ts';

export type Maker = {
  /** An empty archive of *Tern Rock*, with a device of its own. */
  readonly fresh: () => Promise<Archive>;
  /** Another connection to the same archive. */
  readonly again: (archive: Archive) => Promise<Archive>;
};

const at = { utc: '2026-03-14T08:00:00.000Z', offsetMinutes: 120 };
const note = (text: string) => jobDraft('note', { text });
const sent = (acts: readonly Act[]) => acts.map((a) => ({ hash: a.hash, bytes: bytesOf(a) }));

const pack = fixturePack();

export function acceptance(name: string, maker: Maker): void {
  appending(name, maker);
  receiving(name, maker);
}

function appending(name: string, { fresh, again }: Maker): void {
  test(`${name}: a whole job is kept, read back by another connection, and verifies`, async () => {
    const archive = await fresh();
    await archive.addPack(pack);
    for (const draft of wholeJob(pack)) await archive.append({ drafts: [draft], at });
    const other = await again(archive);
    const [acts, packs] = [await other.acts(), await other.packs()];
    expect(acts).toHaveLength(wholeJob(pack).length);
    expect(acts.map((a) => a.deviceSeq)).toEqual(acts.map((_, i) => i + 1));
    expect(packs).toEqual([pack]);
    const state = fold({ acts, packs });
    expect(Object.values(state.jobs)[0]?.closed).not.toBeNull();
    expect(stateHash(state)).toBe(stateHash(fold({ acts: await archive.acts(), packs })));
    expect(verify(await other.rows(), { vessel: 'tern-rock' })).toEqual([]);
    expect(other.device).toBe(archive.device);
    await Promise.all([archive.close(), other.close()]);
  });

  test(`${name}: several drafts are one transaction, each knowing the one before`, async () => {
    const archive = await fresh();
    const added = await archive.append({ drafts: [startDraft(pack), note('a'), note('b')], at });
    const acts = added.ok ? added.acts : [];
    expect(acts.map((a) => a.parents)).toEqual([[], [acts[0]?.hash], [acts[1]?.hash]]);
    expect(await archive.heads()).toEqual([acts[2]?.hash]);
    const broken = { ...note('c'), by: '' };
    await expect(archive.append({ drafts: [note('d'), broken], at })).rejects.toThrow();
    expect(await archive.acts()).toHaveLength(3);
    await archive.close();
  });

  test(`${name}: nothing is written when the heads have moved meanwhile`, async () => {
    const archive = await fresh();
    const first = await archive.append({ drafts: [startDraft(pack)], at });
    const heads = first.ok ? first.acts.map((a) => a.hash) : [];
    expect((await archive.append({ drafts: [note('x')], at, heads })).ok).toBe(true);
    const late = await archive.append({ drafts: [note('y')], at, heads });
    expect(late).toEqual({ ok: false, heads: await archive.heads() });
    expect(await archive.acts()).toHaveLength(2);
    await archive.close();
  });
}

function receiving(name: string, { fresh }: Maker): void {
  test(`${name}: another device's acts are taken once, in any order`, async () => {
    const archive = await fresh();
    const started = await archive.append({ drafts: [startDraft(pack)], at });
    const base = started.ok ? started.acts : [];
    const theirs = chain([note('theirs 1'), note('theirs 2')], 'phone-b', base);
    await archive.append({ drafts: [note('mine')], at });
    const [one, two] = sent(theirs);
    if (one === undefined || two === undefined) throw new Error('two acts were made');
    expect((await archive.receive([two])).taken).toEqual([two.hash]);
    // The one that waits is nobody's parent: what is said now must not wait with it.
    const heads = await archive.heads();
    expect(heads).not.toContain(two.hash);
    expect(fold({ acts: await archive.acts(), packs: [] }).waiting).toEqual([two.hash]);
    expect((await archive.receive([one, two])).known).toEqual([two.hash]);
    expect(await archive.heads()).toHaveLength(2);
    const joined = await archive.append({ drafts: [note('both seen')], at });
    expect(joined.ok ? joined.acts[0]?.parents : []).toHaveLength(2);
    await archive.close();
  });

  test(`${name}: a foreign, altered or doubly numbered act is refused`, async () => {
    const archive = await fresh();
    const [act] = chain([startDraft(pack)], 'phone-b');
    const [rival] = chain([note('same number')], 'phone-b');
    if (act === undefined || rival === undefined) throw new Error('acts were made');
    const altered = { hash: act.hash, bytes: bytesOf({ ...act, by: 'Mallory' }) };
    const foreign = sent(chain([startDraft(pack)], 'phone-b').map((a) => ({ ...a, vessel: 'x' })));
    expect((await archive.receive([altered])).refused[0]?.why).toMatch(/hash to/);
    expect((await archive.receive(foreign)).refused).toHaveLength(1);
    expect((await archive.receive(sent([act]))).taken).toEqual([act.hash]);
    expect((await archive.receive(sent([rival]))).refused[0]?.why).toMatch(/taken/);
    expect(await archive.acts()).toEqual([act]);
    await archive.close();
  });

  test(`${name}: packs, plant issues and attachments are kept by their bytes`, async () => {
    const archive = await fresh();
    await archive.addPack(pack);
    await archive.addPack(pack);
    expect(await archive.packs()).toEqual([pack]);
    await expect(archive.addPack({ ...pack, title: 'another' })).rejects.toThrow(/hashes to/);
    const bytes = new TextEncoder().encode('plant: tern-rock');
    const hash = await archive.addPlant(3, bytes);
    expect(await archive.plants()).toEqual([{ hash, number: 3, bytes }]);
    const photo = await archive.addAttachment('image/png', bytes);
    expect(await archive.attachment(photo)).toEqual({ hash: photo, type: 'image/png', bytes });
    expect(await archive.attachment('0'.repeat(64))).toBeNull();
    await archive.close();
  });
}
