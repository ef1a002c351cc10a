// Writes what the ferry's log already held: hours of forty days from a printed seed, all invented.
//
// Run it with `node demo/history.ts`; the same seed gives the same file, byte for byte.

import { writeFileSync } from 'node:fs';

const SEED = 20_261_015;
const FIRST = Date.UTC(2026, 9, 15, 6);
const LAST = Date.UTC(2026, 10, 24, 6);
const DAY_MS = 86_400_000;
const FILE = new URL('tern-rock-history.yaml', import.meta.url);

type Meter = { readonly machine: string; readonly from: number; readonly perDay: number };

const METERS: readonly Meter[] = [
  { machine: 'main-engine-port', from: 20_948.5, perDay: 10.6 },
  { machine: 'main-engine-starboard', from: 20_541, perDay: 10.4 },
  { machine: 'generating-set-1', from: 14_122, perDay: 13.5 },
  { machine: 'generating-set-2', from: 13_760.5, perDay: 9.8 },
];

/** When each thing was last done: by hand, so that one is nearly due and one never was recorded. */
const DONE: readonly (readonly [string, string, string, string, number | null])[] = [
  ['main-engine-port', 'sea-water-pump', 'renew-in-place', '2026-08-20T09:00:00Z', 20_390],
  ['main-engine-port', 'sea-water-pump', 'exchange', '2025-06-11T08:00:00Z', 15_720],
  ['main-engine-port', 'plate-cooler', 'overhaul', '2025-11-05T08:00:00Z', 17_330.5],
  ['main-engine-port', 'plate-cooler', 'exchange', '2023-10-16T08:00:00Z', 9_455],
  ['main-engine-port', 'air-starter', 'exchange', '2024-11-12T08:00:00Z', 13_480],
  ['main-engine-starboard', 'sea-water-pump', 'renew-in-place', '2026-10-02T10:00:00Z', 20_406.5],
  ['main-engine-starboard', 'sea-water-pump', 'exchange', '2025-09-30T08:00:00Z', 16_590],
  ['main-engine-starboard', 'plate-cooler', 'overhaul', '2026-03-18T08:00:00Z', 18_350],
  ['main-engine-starboard', 'air-starter', 'exchange', '2022-04-18T08:00:00Z', null],
  ['generating-set-1', 'sea-water-pump', 'renew-in-place', '2026-10-05T13:00:00Z', 13_990],
  ['generating-set-1', 'sea-water-pump', 'exchange', '2025-02-03T09:00:00Z', 6_020],
  ['generating-set-2', 'sea-water-pump', 'renew-in-place', '2026-09-16T13:00:00Z', 13_478],
];

/** The winter timetable: two crossings on weekdays, one on Saturday, none on Sunday. */
const SAILINGS: readonly (readonly [string, string])[] = [
  ['2026-11-25T06:40', 'Skarvholm, first crossing'],
  ['2026-11-25T15:20', 'Skarvholm, second crossing'],
  ['2026-11-26T06:40', 'Skarvholm, first crossing'],
  ['2026-11-26T15:20', 'Skarvholm, second crossing'],
  ['2026-11-27T06:40', 'Skarvholm, first crossing'],
  ['2026-11-27T15:20', 'Skarvholm, second crossing'],
  ['2026-11-28T07:10', 'Skarvholm and the outer skerries'],
  ['2026-11-30T06:40', 'Skarvholm, first crossing'],
];

/** Numbers in [0, 1) from a seed, the same everywhere (a 32-bit mixing generator). */
function drawer(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Sundays the ferry lies still; the sets run on. */
function runOver(from: number, to: number, meter: Meter, draw: () => number): number {
  let hours = 0;
  for (let at = from; at < to; at += DAY_MS) {
    const still = meter.machine.startsWith('main') && new Date(at).getUTCDay() === 0;
    hours += still ? 0 : Math.min(24, meter.perDay * (7 / 6) * (0.85 + 0.3 * draw()));
  }
  return hours;
}

/** A reading every two to four days, read to the half hour, the last one on the last day. */
function readings(meter: Meter, draw: () => number): readonly string[] {
  const rows: string[] = [];
  let at = FIRST;
  let hours = meter.from;
  for (;;) {
    const read = Math.round(hours * 2) / 2;
    const when = new Date(at).toISOString().replace('.000Z', 'Z');
    rows.push(`  - { machine: ${meter.machine}, at: "${when}", hours: ${read} }`);
    if (at >= LAST) return rows;
    const next = Math.min(LAST, at + (2 + Math.floor(draw() * 3)) * DAY_MS);
    hours += runOver(at, next, meter, draw);
    at = next;
  }
}

function written(): string {
  const draw = drawer(SEED);
  return `${[
    '# What the log of the Tern Rock already held when this record began. All invented.',
    `# Written by demo/history.ts from seed ${SEED}; change that, not this. Taken in once, when an`,
    "# archive is made for the demo. It stands beside the plant's folder, for nothing here is part",
    '# of the machines.',
    'history: tern-rock',
    'by: demo history',
    '',
    'watch: Piotr Aldwell',
    '',
    'sailings:',
    ...SAILINGS.map(([at, where]) => `  - { at: "${at}", where: "${where}" }`),
    '',
    'hours:',
    ...METERS.flatMap((meter) => readings(meter, draw)),
    '',
    'done:',
    ...DONE.flatMap(([machine, target, does, at, hours]) => [
      `  - { machine: ${machine}, target: ${target}, does: ${does},`,
      `      at: "${at}", hours: ${hours} }`,
    ]),
  ].join('\n')}\n`;
}

writeFileSync(FILE, written());
process.stdout.write(`seed ${SEED}: ${FILE.pathname.split('/').at(-1)} written\n`);
