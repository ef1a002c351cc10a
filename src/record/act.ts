// Makes an act from what a person says, and reads one back only if its bytes are what it claims.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { canonicalBytes, canonicalText, sha256Hex } from '../quantity/sha.ts';
import type { Act, ActBody, DeviceTime, Draft, Json } from './types.ts';

/** What the device adds to a draft; names are not proved before there are accounts. */
export type Placed = {
  readonly vessel: string;
  readonly device: string;
  readonly deviceSeq: number;
  readonly parents: readonly string[];
  readonly at: DeviceTime;
};

const json: z.ZodType<Json> = z.lazy(() =>
  z.union([
    z.string(),
    z.number(),
    z.boolean(),
    z.null(),
    z.array(json),
    z.record(z.string(), json),
  ]),
);
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const name = z.string().min(1).max(200);

const contentSchema = z.strictObject({
  vessel: name,
  stream: z.strictObject({ kind: z.enum(['job', 'machine', 'vessel']), id: name }),
  kind: name,
  version: z.number(),
  by: z.string().trim().min(1).max(200),
  proved: z.boolean(),
  device: name,
  deviceSeq: z.int().min(1),
  parents: z.array(hash).max(limits.record.parents),
  at: z.strictObject({ utc: z.iso.datetime(), offsetMinutes: z.int().min(-1_440).max(1_440) }),
  body: z.record(z.string(), json),
});

/** Parents are kept sorted, so that the same act said with the same parents has one hash. */
export function makeAct(draft: Draft, placed: Placed): Act {
  const content = {
    vessel: placed.vessel,
    stream: draft.stream,
    kind: draft.kind,
    version: 1 as const,
    by: draft.by,
    proved: false,
    device: placed.device,
    deviceSeq: placed.deviceSeq,
    parents: [...placed.parents].sort(),
    at: placed.at,
    body: draft.body,
  };
  return { ...content, hash: sha256Hex(canonicalBytes(content)) };
}

/** The bytes that are kept: RFC 8785, without hash and signature. */
export function bytesOf(act: Act): Uint8Array {
  const { hash: _hash, signature: _signature, ...content } = act;
  return canonicalBytes(content);
}

export type ReadAct =
  | { readonly ok: true; readonly act: Act }
  | { readonly ok: false; readonly why: string };

/** Bytes come from disk or from another device: their shape, form and hash are all checked. */
export function readAct(bytes: Uint8Array, claimed: string): ReadAct {
  if (bytes.length > limits.record.bodyBytes)
    return bad(`${bytes.length} bytes are more than ${limits.record.bodyBytes}`);
  const actual = sha256Hex(bytes);
  if (actual !== claimed) return bad(`the bytes hash to ${actual}, not ${claimed}`);
  let text: string;
  let value: unknown;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    value = JSON.parse(text);
  } catch (error) {
    return bad(`not JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
  const parsed = contentSchema.safeParse(value);
  if (!parsed.success) {
    const [first] = parsed.error.issues;
    return bad(`${first?.path.join('.') ?? ''}: ${first?.message ?? 'not an act'}`);
  }
  if (canonicalText(value) !== text) return bad('the bytes are not in canonical form (RFC 8785)');
  const { version, body, ...rest } = parsed.data;
  // A version that this program does not know is kept and shown as unknown, so it must be read.
  return { ok: true, act: { ...rest, version: version as 1, body: body as ActBody, hash: actual } };
}

const bad = (why: string): ReadAct => ({ ok: false, why });
