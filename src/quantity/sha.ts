// Canonical bytes (RFC 8785) and their SHA-256: the name of a pack or an act is what it says.

import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';

export function sha256Hex(content: Uint8Array | string): string {
  return bytesToHex(sha256(typeof content === 'string' ? utf8ToBytes(content) : content));
}

/** The one way of writing a JSON value; as in JSON, an undefined field is left out. */
export function canonicalText(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError(`${typeof value} can't be written as JSON`);
  return text;
}

export const canonicalBytes = (value: unknown): Uint8Array => utf8ToBytes(canonicalText(value));

export const hashOf = (value: unknown): string => sha256Hex(canonicalBytes(value));
