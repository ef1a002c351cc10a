// What a photograph may be: its bytes decide its type, whatever the sender called it.

import { limits } from '../limits.ts';
import type { Problem } from '../quantity/types.ts';

export type PhotoType = 'image/jpeg' | 'image/png';

export function sniff(bytes: Uint8Array): PhotoType | null {
  const starts = (...head: number[]) => head.every((byte, i) => bytes[i] === byte);
  if (starts(0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  return null;
}

export type CheckedPhoto =
  | { readonly ok: true; readonly type: PhotoType }
  | { readonly ok: false; readonly problem: Problem };

export function checkPhoto(bytes: Uint8Array): CheckedPhoto {
  const most = limits.server.attachmentBytes;
  if (bytes.length > most) return refused(bytes.length, `at most ${most} bytes`, 'it is too large');
  const type = sniff(bytes);
  if (type === null) return refused(null, 'a JPEG or PNG picture', 'its bytes are neither');
  return { ok: true, type };
}

const refused = (got: unknown, expected: string, why: string): CheckedPhoto => ({
  ok: false,
  problem: { path: 'photo', got, expected, why },
});
