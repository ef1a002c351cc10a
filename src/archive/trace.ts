// Reads what strace wrote: which bytes of the log were synced before each acknowledgement.

export type Traced = {
  readonly acknowledged: number;
  /** Acknowledgements before which every byte written to the log had been synced. */
  readonly synced: number;
  readonly events: readonly Event[];
};

type Event =
  | { readonly kind: 'write'; readonly end: number }
  | { readonly kind: 'sync' }
  | { readonly kind: 'kept' };

const WRITE = /pwrite64\(\d+<([^>]+)>.*,\s*(\d+),\s*(\d+)\)\s*=\s*(\d+)/;
const SYNC = /(?:fdatasync|fsync)\(\d+<([^>]+)>\)\s*=\s*0/;
const SYNC_BEGUN = /^(\d+)\s.*(?:fdatasync|fsync)\(\d+<([^>]+)>\s*<unfinished/;
const SYNC_ENDED = /^(\d+)\s.*<\.\.\. (?:fdatasync|fsync) resumed>.*=\s*0/;

/** Events in the order of the trace; a call cut in two counts when it has ended. */
export function traced(log: string, wal: string): Traced {
  const events: Event[] = [];
  const begun = new Map<string, string>();
  for (const line of log.split('\n')) {
    const write = WRITE.exec(line);
    const [, thread, path] = SYNC_BEGUN.exec(line) ?? [];
    const [, ended] = SYNC_ENDED.exec(line) ?? [];
    if (write?.[1] === wal)
      events.push({ kind: 'write', end: Number(write[3]) + Number(write[4]) });
    else if (SYNC.exec(line)?.[1] === wal) events.push({ kind: 'sync' });
    else if (thread !== undefined && path !== undefined) begun.set(thread, path);
    else if (ended !== undefined && begun.get(ended) === wal) events.push({ kind: 'sync' });
    else if (/ write\(1<[^>]*>, "kept /.test(line)) events.push({ kind: 'kept' });
  }
  let pending = 0;
  let acknowledged = 0;
  let synced = 0;
  for (const event of events) {
    if (event.kind === 'write') pending += 1;
    else if (event.kind === 'sync') pending = 0;
    else {
      acknowledged += 1;
      if (pending === 0 && acknowledged > 0) synced += 1;
    }
  }
  return { acknowledged, synced, events };
}

/** How much of the log was on the disk for sure when the n-th acknowledgement was given. */
export function lastSynced({ events }: Traced, acknowledgement: number): number {
  let written = 0;
  let onDisk = 0;
  let seen = 0;
  for (const event of events) {
    if (event.kind === 'write') written = Math.max(written, event.end);
    else if (event.kind === 'sync') onDisk = written;
    else if (++seen === acknowledgement) break;
  }
  return onDisk;
}
