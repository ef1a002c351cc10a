// The tables of the SQLite archive; everything is kept by its bytes, columns only repeat them.

export const SCHEMA_VERSION = 1;

export const SCHEMA = `
CREATE TABLE IF NOT EXISTS about (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT;
CREATE TABLE IF NOT EXISTS acts (
  vessel TEXT NOT NULL,
  hash TEXT NOT NULL,
  stream_kind TEXT NOT NULL,
  stream_id TEXT NOT NULL,
  device TEXT NOT NULL,
  device_seq INTEGER NOT NULL,
  bytes BLOB NOT NULL,
  PRIMARY KEY (vessel, hash)
) STRICT;
CREATE UNIQUE INDEX IF NOT EXISTS acts_numbered ON acts (vessel, device, device_seq);
CREATE TABLE IF NOT EXISTS parents (
  vessel TEXT NOT NULL,
  child TEXT NOT NULL,
  parent TEXT NOT NULL,
  PRIMARY KEY (vessel, parent, child)
) STRICT, WITHOUT ROWID;
CREATE TABLE IF NOT EXISTS packs (id TEXT PRIMARY KEY, bytes BLOB NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS plants (
  hash TEXT PRIMARY KEY,
  number INTEGER NOT NULL,
  bytes BLOB NOT NULL
) STRICT;
CREATE TABLE IF NOT EXISTS files (
  hash TEXT PRIMARY KEY,
  type TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;
`;

/** Folded heads where no act waits: acts that are nobody's parent. */
export const HEADS = `
SELECT hash FROM acts a WHERE vessel = ?1
  AND NOT EXISTS (SELECT 1 FROM parents p WHERE p.vessel = ?1 AND p.parent = a.hash)
ORDER BY hash`;

/** True when some act names a parent that has not come. */
export const ANY_WAITING = `
SELECT EXISTS (
  SELECT 1 FROM parents p WHERE p.vessel = ?1
    AND NOT EXISTS (SELECT 1 FROM acts a WHERE a.vessel = ?1 AND a.hash = p.parent)
) AS waiting`;
