// The archive in one SQLite file: an acknowledged act is on the disk before anyone is told.

import { randomBytes } from 'node:crypto';
import { DatabaseSync, type StatementSync } from 'node:sqlite';
import { limits } from '../limits.ts';
import type { Pack } from '../pack/types.ts';
import { canonicalBytes, hashOf, sha256Hex } from '../quantity/sha.ts';
import { bytesOf, makeAct, readAct } from '../record/act.ts';
import { order } from '../record/order.ts';
import type { Act } from '../record/types.ts';
import type { Row } from '../record/verify.ts';
import {
  type Append,
  type Appended,
  type Archive,
  ArchiveDamaged,
  type Attachment,
  type PlantIssue,
  type Received,
} from './contract.ts';
import { ANY_WAITING, HEADS, SCHEMA, SCHEMA_VERSION } from './schema.ts';

export type SqliteOptions = {
  readonly file: string;
  /** May be left out where the file already says whose it is. */
  readonly vessel?: string;
  /** `off` exists for one test only: the one that must fail without a data sync. */
  readonly synchronous?: 'full' | 'off';
  /** Pages of the log that gather before they are moved into the file; tests keep them all. */
  readonly checkpointPages?: number;
};

/** Opens the file, makes it if there is none, and looks it over before anything is read. */
export function openSqlite(options: SqliteOptions): Archive {
  try {
    return opened(options);
  } catch (error) {
    if (error instanceof ArchiveDamaged || !(error instanceof Error)) throw error;
    if (!('code' in error) || error.code !== 'ERR_SQLITE_ERROR') throw error;
    throw new ArchiveDamaged(`${options.file}: ${error.message}`);
  }
}

function opened(options: SqliteOptions): Archive {
  const db = new DatabaseSync(options.file, { timeout: limits.archive.busyMs });
  const pages = Math.trunc(options.checkpointPages ?? limits.archive.checkpointPages);
  try {
    db.exec(`PRAGMA journal_mode = WAL;
      PRAGMA synchronous = ${options.synchronous === 'off' ? 'OFF' : 'FULL'};
      PRAGMA wal_autocheckpoint = ${pages};
      PRAGMA foreign_keys = ON;`);
    lookOver(db, options.file);
    const about = inTransaction(db, () => introduce(db, options.vessel));
    return archiveOver(db, about.vessel, about.device);
  } catch (error) {
    db.close();
    throw error;
  }
}

function lookOver(db: DatabaseSync, file: string): void {
  const found = db.prepare('PRAGMA quick_check(1)').get() as { quick_check?: string } | undefined;
  if (found?.quick_check !== 'ok')
    throw new ArchiveDamaged(`${file}: ${found?.quick_check ?? 'cannot be read'}`);
}

type About = { readonly vessel: string; readonly device: string };

function introduce(db: DatabaseSync, vessel: string | undefined): About {
  db.exec(SCHEMA);
  const rows = db.prepare('SELECT name, value FROM about').all() as {
    name: string;
    value: string;
  }[];
  const about = new Map(rows.map((r) => [r.name, r.value]));
  const version = Number(about.get('version') ?? SCHEMA_VERSION);
  if (version !== SCHEMA_VERSION)
    throw new ArchiveDamaged(`archive version is ${version} (expected ${SCHEMA_VERSION})`);
  const kept = about.get('vessel');
  if (kept !== undefined && vessel !== undefined && kept !== vessel)
    throw new ArchiveDamaged(`the archive is of ${kept}, not of ${vessel}`);
  const whose = kept ?? vessel;
  if (whose === undefined) throw new ArchiveDamaged('a new archive must be told whose it is');
  const device = about.get('device') ?? `device-${randomBytes(8).toString('hex')}`;
  const put = db.prepare('INSERT OR IGNORE INTO about (name, value) VALUES (?, ?)');
  put.run('version', String(SCHEMA_VERSION));
  put.run('vessel', whose);
  put.run('device', device);
  return { vessel: whose, device };
}

/** Immediate, so that two programs on one file take turns before either reads the heads. */
function inTransaction<T>(db: DatabaseSync, work: () => T): T {
  db.exec('BEGIN IMMEDIATE');
  try {
    const result = work();
    db.exec('COMMIT');
    return result;
  } catch (error) {
    if (db.isTransaction) db.exec('ROLLBACK');
    throw error;
  }
}

function archiveOver(db: DatabaseSync, vessel: string, device: string): Archive {
  const acts = actsOver(db, vessel, device);
  const things = thingsOver(db);
  return {
    vessel,
    device,
    acts: async () => acts.read(),
    rows: async () => acts.rows(),
    heads: async () => acts.heads(),
    append: async (append) => acts.append(append),
    receive: async (given) => acts.receive(given),
    addPack: async (pack) => things.addPack(pack),
    packs: async () => things.packs(),
    addPlant: async (number, bytes) => things.addPlant(number, bytes),
    plants: async () => things.plants(),
    addAttachment: async (type, bytes) => things.addAttachment(type, bytes),
    attachment: async (hash) => things.attachment(hash),
    close: async () => db.close(),
  };
}

function actsOver(db: DatabaseSync, vessel: string, device: string) {
  const insert = db.prepare(
    `INSERT INTO acts (vessel, hash, stream_kind, stream_id, device, device_seq, bytes)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
  );
  const insertParent = db.prepare('INSERT INTO parents (vessel, child, parent) VALUES (?, ?, ?)');
  const select = db.prepare(
    `SELECT vessel, hash, stream_kind AS streamKind, stream_id AS streamId, device,
       device_seq AS deviceSeq, bytes FROM acts ORDER BY rowid`,
  );
  const rows = (): Row[] => select.all() as unknown as Row[];
  const read = (): Act[] => rows().map((row) => checked(row, vessel));
  const write = (act: Act): void => {
    const bytes = bytesOf(act);
    const again = readAct(bytes, act.hash);
    if (!again.ok || act.vessel !== vessel)
      throw new Error(`act ${act.hash} may not be written: ${again.ok ? act.vessel : again.why}`);
    heads.forget();
    const { kind, id } = act.stream;
    insert.run(vessel, act.hash, kind, id, act.device, act.deviceSeq, bytes);
    for (const parent of act.parents) insertParent.run(vessel, act.hash, parent);
  };
  const heads = headsOver(db, vessel, read);
  const lastSeq = db.prepare(
    'SELECT coalesce(max(device_seq), 0) AS seq FROM acts WHERE vessel = ? AND device = ?',
  );
  const appendInside = ({ drafts, at, heads: expected }: Append): Appended => {
    const now = heads.read();
    if (expected !== undefined && [...expected].sort().join() !== now.join())
      return { ok: false, heads: now };
    let parents = now.slice(0, limits.record.parents);
    let deviceSeq = (lastSeq.get(vessel, device) as { seq: number }).seq;
    const acts = drafts.map((draft) => {
      deviceSeq += 1;
      const act = makeAct(draft, { vessel, device, deviceSeq, parents, at });
      write(act);
      parents = [act.hash];
      return act;
    });
    const last = acts.at(-1);
    if (last !== undefined && now.length <= limits.record.parents) heads.joined(last.hash);
    return { ok: true, acts };
  };
  const append = (given: Append): Appended => {
    try {
      return inTransaction(db, () => appendInside(given));
    } catch (error) {
      heads.forget();
      throw error;
    }
  };
  return { rows, read, heads: heads.read, append, receive: receiver(db, vessel, write) };
}

/** Asserted again on the way out: what was written is what is read. */
function checked(row: Row, vessel: string): Act {
  const read = readAct(row.bytes, row.hash);
  if (!read.ok) throw new ArchiveDamaged(`row ${row.hash}: ${read.why}`);
  if (row.vessel !== vessel || read.act.vessel !== vessel)
    throw new ArchiveDamaged(`row ${row.hash} is of ${read.act.vessel}, not of ${vessel}`);
  return read.act;
}

/**
 * Finding the heads looks at every act, so they are remembered until this connection writes or
 * another one has written. An act that waits must be nobody's parent yet, so with one waiting the
 * heads are worked out from the acts.
 */
function headsOver(db: DatabaseSync, vessel: string, read: () => Act[]) {
  const version: StatementSync = db.prepare('PRAGMA data_version');
  const waiting: StatementSync = db.prepare(ANY_WAITING);
  const heads: StatementSync = db.prepare(HEADS);
  let known: { readonly version: unknown; readonly heads: readonly string[] } | null = null;
  const find = (): string[] => {
    const any = waiting.get(vessel) as { waiting: number };
    if (any.waiting === 1) return [...order(read()).heads];
    return (heads.all(vessel) as { hash: string }[]).map((r) => r.hash);
  };
  return {
    read(): readonly string[] {
      const now = version.get()?.data_version;
      if (known?.version !== now || known === null) known = { version: now, heads: find() };
      return known.heads;
    },
    forget(): void {
      known = null;
    },
    /** Called while the transaction still holds the file, so that nobody writes in between. */
    joined(head: string): void {
      known = { version: version.get()?.data_version, heads: [head] };
    },
  };
}

function receiver(db: DatabaseSync, vessel: string, write: (act: Act) => void) {
  const known = db.prepare('SELECT 1 FROM acts WHERE vessel = ? AND hash = ?');
  const taken = db.prepare(
    'SELECT hash FROM acts WHERE vessel = ? AND device = ? AND device_seq = ?',
  );
  return (given: readonly { readonly hash: string; readonly bytes: Uint8Array }[]): Received =>
    inTransaction(db, () => {
      const received = {
        taken: [] as string[],
        known: [] as string[],
        refused: [] as { hash: string; why: string }[],
      };
      for (const { hash, bytes } of given) {
        const read = readAct(bytes, hash);
        const why = read.ok ? refusedHere(read.act) : read.why;
        if (known.get(vessel, hash) !== undefined) received.known.push(hash);
        else if (!read.ok || why !== null) received.refused.push({ hash, why: why ?? '' });
        else {
          write(read.act);
          received.taken.push(hash);
        }
      }
      return received;
    });

  function refusedHere(act: Act): string | null {
    if (act.vessel !== vessel) return `is of ${act.vessel}, not of ${vessel}`;
    const other = taken.get(vessel, act.device, act.deviceSeq) as { hash: string } | undefined;
    if (other === undefined) return null;
    return `number ${act.deviceSeq} of ${act.device} is taken by ${other.hash}`;
  }
}

function thingsOver(db: DatabaseSync) {
  const putPack = db.prepare('INSERT OR IGNORE INTO packs (id, bytes) VALUES (?, ?)');
  const getPacks = db.prepare('SELECT id, bytes FROM packs ORDER BY rowid');
  const putPlant = db.prepare(
    'INSERT OR IGNORE INTO plants (hash, number, bytes) VALUES (?, ?, ?)',
  );
  const getPlants = db.prepare('SELECT hash, number, bytes FROM plants ORDER BY number, hash');
  const putFile = db.prepare('INSERT OR IGNORE INTO files (hash, type, bytes) VALUES (?, ?, ?)');
  const getFile = db.prepare('SELECT hash, type, bytes FROM files WHERE hash = ?');
  return {
    addPack(pack: Pack): void {
      assertNamed(pack);
      putPack.run(pack.id, canonicalBytes(pack));
    },
    packs: (): Pack[] =>
      (getPacks.all() as { id: string; bytes: Uint8Array }[]).map(({ id, bytes }) => {
        const pack = JSON.parse(new TextDecoder().decode(bytes)) as Pack;
        if (pack.id !== id) throw new ArchiveDamaged(`pack ${id} says that it is ${pack.id}`);
        return assertNamed(pack);
      }),
    addPlant(number: number, bytes: Uint8Array): string {
      const hash = sha256Hex(bytes);
      putPlant.run(hash, number, bytes);
      return hash;
    },
    plants: (): PlantIssue[] =>
      (getPlants.all() as unknown as PlantIssue[]).map((p) => assertHash('plant', p)),
    addAttachment(type: string, bytes: Uint8Array): string {
      const hash = sha256Hex(bytes);
      putFile.run(hash, type, bytes);
      return hash;
    },
    attachment(hash: string): Attachment | null {
      const found = getFile.get(hash) as unknown as Attachment | undefined;
      return found === undefined ? null : assertHash('attachment', found);
    },
  };
}

/** A pack's name is the hash of what it says, on the way in and on the way out. */
function assertNamed(pack: Pack): Pack {
  const { id, ...content } = pack;
  const actual = hashOf(content);
  if (actual !== id) throw new ArchiveDamaged(`pack ${id} says what hashes to ${actual}`);
  return pack;
}

function assertHash<T extends { readonly hash: string; readonly bytes: Uint8Array }>(
  what: string,
  kept: T,
): T {
  const actual = sha256Hex(kept.bytes);
  if (actual !== kept.hash)
    throw new ArchiveDamaged(`${what} ${kept.hash} holds bytes that hash to ${actual}`);
  return kept;
}
