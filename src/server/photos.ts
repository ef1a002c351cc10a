// Photographs kept by the hash of their bytes, in a folder beside the archive.

import { randomUUID } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { limits } from '../limits.ts';
import { sha256Hex } from '../quantity/sha.ts';
import type { Problem } from '../quantity/types.ts';

export type Photo = { readonly hash: string; readonly type: 'image/jpeg' | 'image/png' };
export type KeptPhoto =
  | { readonly ok: true; readonly photo: Photo }
  | { readonly ok: false; readonly problem: Problem };

export type Photos = {
  readonly keep: (bytes: Uint8Array) => KeptPhoto;
  readonly get: (hash: string) => { readonly photo: Photo; readonly bytes: Uint8Array } | null;
};

const HASH = /^[0-9a-f]{64}$/;

/** What the bytes are, whatever the sender called them. */
export function sniff(bytes: Uint8Array): Photo['type'] | null {
  const starts = (...head: number[]) => head.every((byte, i) => bytes[i] === byte);
  if (starts(0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  return null;
}

export function photosIn(folder: string): Photos {
  mkdirSync(folder, { recursive: true });
  const pathOf = (hash: string) => join(folder, hash);
  return {
    keep(bytes) {
      const most = limits.server.attachmentBytes;
      if (bytes.length > most) return refused(bytes.length, `at most ${most} bytes`, 'too large');
      const type = sniff(bytes);
      if (type === null) return refused(null, 'a JPEG or PNG picture', 'its bytes are neither');
      const hash = sha256Hex(bytes);
      const there = statSync(pathOf(hash), { throwIfNoEntry: false }) !== undefined;
      if (!there) writeDurably(pathOf(hash), bytes);
      return { ok: true, photo: { hash, type } };
    },
    get(hash) {
      if (!HASH.test(hash)) return null;
      if (statSync(pathOf(hash), { throwIfNoEntry: false }) === undefined) return null;
      const bytes = new Uint8Array(readFileSync(pathOf(hash)));
      const type = sniff(bytes);
      // A picture whose bytes no longer have its name was altered on disk: it is not shown.
      if (type === null || sha256Hex(bytes) !== hash) return null;
      return { photo: { hash, type }, bytes };
    },
  };
}

const refused = (got: unknown, expected: string, why: string): KeptPhoto => ({
  ok: false,
  problem: { path: 'photo', got, expected, why },
});

/** Write, sync, rename, sync the folder: after this returns a power cut loses nothing. */
function writeDurably(path: string, bytes: Uint8Array): void {
  const part = `${path}.${randomUUID()}.part`;
  const file = openSync(part, 'wx');
  try {
    let at = 0;
    while (at < bytes.length) at += writeSync(file, bytes, at);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(part, path);
  const folder = openSync(dirname(path), 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}
