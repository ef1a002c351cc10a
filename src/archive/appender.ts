// For the durability tests: a process that appends notes and says so only when they are kept.
// Run as: appender.ts FILE full|off COUNT

import { statSync, writeSync } from 'node:fs';
import { openSqlite } from './sqlite.ts';

const [file = '', mode = 'full', count = '1000'] = process.argv.slice(2);
const archive = openSqlite({
  file,
  vessel: 'tern-rock',
  synchronous: mode === 'off' ? 'off' : 'full',
  // All commits stay in the log, so that a copy of it can be cut anywhere.
  checkpointPages: 0,
});
const at = { utc: '2026-03-14T08:00:00.000Z', offsetMinutes: 0 };
const stream = { kind: 'vessel', id: 'tern-rock' } as const;
for (let i = 0; i < Number(count); i++) {
  const draft = { stream, kind: 'note', by: 'Ada', body: { text: `note ${i}` } };
  const added = await archive.append({ drafts: [draft], at });
  const hash = added.ok ? added.acts[0]?.hash : undefined;
  if (hash === undefined) throw new Error('nothing was added');
  // One write straight to the pipe: an acknowledgement must not wait in a buffer.
  writeSync(1, `kept ${hash} ${statSync(`${file}-wal`).size}\n`);
}
await archive.close();
