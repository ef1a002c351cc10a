// What every archive promises: acts, packs, plant issues and attachments kept by their bytes.

import type { Pack } from '../pack/types.ts';
import type { Act, DeviceTime, Draft } from '../record/types.ts';
import type { Row } from '../record/verify.ts';

/** A plant issue as it was read: its files in one document, kept by the hash of its bytes. */
export type PlantIssue = {
  readonly hash: string;
  readonly number: number;
  readonly bytes: Uint8Array;
};

export type Attachment = {
  readonly hash: string;
  readonly type: string;
  readonly bytes: Uint8Array;
};

export type Append = {
  readonly drafts: readonly Draft[];
  readonly at: DeviceTime;
  /**
   * The heads that the drafts were checked against. If others stand by now nothing is written and
   * the answer says so: fold again, check again, try again.
   */
  readonly heads?: readonly string[];
};

export type Appended =
  | { readonly ok: true; readonly acts: readonly Act[] }
  | { readonly ok: false; readonly heads: readonly string[] };

/** What became of acts that came from another device. */
export type Received = {
  readonly taken: readonly string[];
  readonly known: readonly string[];
  readonly refused: readonly { readonly hash: string; readonly why: string }[];
};

export type Archive = {
  readonly vessel: string;
  readonly device: string;
  /** All acts of the vessel; those that wait for an ancestor included. Throws on a damaged row. */
  readonly acts: () => Promise<readonly Act[]>;
  /** The same rows unread, for `verify`. */
  readonly rows: () => Promise<readonly Row[]>;
  /** Acts without a folded child: the parents of the next act. */
  readonly heads: () => Promise<readonly string[]>;
  /** Several drafts are one transaction, each act knowing the one before: all are kept or none. */
  readonly append: (append: Append) => Promise<Appended>;
  readonly receive: (
    acts: readonly { readonly hash: string; readonly bytes: Uint8Array }[],
  ) => Promise<Received>;
  readonly addPack: (pack: Pack) => Promise<void>;
  readonly packs: () => Promise<readonly Pack[]>;
  readonly addPlant: (number: number, bytes: Uint8Array) => Promise<string>;
  readonly plants: () => Promise<readonly PlantIssue[]>;
  readonly addAttachment: (type: string, bytes: Uint8Array) => Promise<string>;
  readonly attachment: (hash: string) => Promise<Attachment | null>;
  readonly close: () => Promise<void>;
};

/** Something in the archive is not what it claims: nothing goes on until a person has looked. */
export class ArchiveDamaged extends Error {
  override readonly name = 'ArchiveDamaged';
}
