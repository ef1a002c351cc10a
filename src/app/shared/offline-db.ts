// What this device keeps by itself: its own acts until the server has them, photos, the last known.

import { Dexie, type Table } from 'dexie';
import type { Replica } from '../../record/replica.ts';
import type { Act } from '../../record/types.ts';

/** An act said here that the server has not shown yet. */
export type OwnAct = {
  readonly deviceSeq: number;
  readonly act: Act;
  /** The server said that it has it; kept here all the same until it shows it. */
  readonly taken: boolean;
  /** Why the server would not take it. */
  readonly refused: string | null;
};

export type PhotoRow = {
  readonly hash: string;
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** 1 until the server has the bytes: a number, because an index holds no truth values. */
  readonly unsent: 0 | 1;
};

/** Made once in each browser; numbers are never given twice. */
export type DeviceRow = { readonly key: 'device'; readonly id: string; readonly lastSeq: number };
export type KnownRow = {
  readonly key: 'known';
  readonly seen: string;
  readonly replica: Replica;
};

export class DeviceDb extends Dexie {
  readonly device: Table<DeviceRow, string>;
  readonly known: Table<KnownRow, string>;
  readonly own: Table<OwnAct, number>;
  readonly photos: Table<PhotoRow, string>;

  constructor() {
    // Strict: a browser may otherwise call written what a flat battery would take away.
    super('boxup', { chromeTransactionDurability: 'strict' });
    this.version(1).stores({
      device: 'key',
      known: 'key',
      own: 'deviceSeq',
      photos: 'hash, unsent',
    });
    this.device = this.table('device');
    this.known = this.table('known');
    this.own = this.table('own');
    this.photos = this.table('photos');
  }
}

export const db = new DeviceDb();

/** `crypto.randomUUID` is not there over plain HTTP; random bytes are. */
export function newDevice(): DeviceRow {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return { key: 'device', id: `device-${hex}`, lastSeq: 0 };
}
