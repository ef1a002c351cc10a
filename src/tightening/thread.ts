// Threads by name or by their figures: diameters, stress area, and the limits that stripping needs.

import type { Source } from '../quantity/types.ts';
import { metricRows, readPitches, type UnifiedRow, unifiedRows } from './tables/thread-series.ts';

const INCH = 25.4;

export type Thread = {
  readonly name: string;
  readonly form: 'metric' | 'unified' | 'given';
  readonly diameterMm: number;
  /** The figures below are null where no pitch and no area was given. */
  readonly pitchMm: number | null;
  readonly pitchDiameterMm: number | null;
  readonly rootDiameterMm: number | null;
  readonly minorDiameterMm: number | null;
  readonly stressAreaMm2: number | null;
  readonly source: Source;
  /** Where the size and its pitch were had. */
  readonly sizeSource: Source;
};

export type ReadThread =
  | { readonly ok: true; readonly thread: Thread }
  | { readonly ok: false; readonly expected: string; readonly why: string };

const iso724: Source = {
  kind: 'published',
  title: 'ISO 724 and ISO 898-1, basic dimensions and nominal stress area',
  edition: 'as quoted by public copies',
  place: 'formulas confirmed by every row of M4 to M39',
};
const iso261: Source = {
  kind: 'published',
  title: 'ISO 261, general plan of metric threads',
  edition: 'as quoted by public copies',
  place: 'diameter and pitch',
};
const iso261Memory: Source = { kind: 'from memory', of: 'ISO 261, diameter and pitch' };
const unifiedSource: Source = {
  kind: 'published',
  title: "Shigley's Mechanical Engineering Design, unified screw threads, after ANSI B1.1-1974",
  edition: '9th',
  place: 'Table 8-2, page 413',
};
const unifiedMemory: Source = { kind: 'from memory', of: 'ASME B1.1, threads an inch' };
const given: Source = { kind: 'entered', by: 'the input' };

/** Heights that make the diameters: pitch diameter, root, minor of the nut; times the pitch. */
export const PITCH_DIAMETER = 0.649519;
export const ROOT = { metric: 1.226869, given: 1.226869, unified: 1.299038 } as const;
export const MINOR = 1.082532;

type Figures = {
  readonly name: string;
  readonly form: Thread['form'];
  readonly diameterMm: number;
  readonly pitchMm: number | null;
  readonly areaMm2?: number | undefined;
  readonly sizeSource: Source;
};

export function threadOf(figures: Figures): Thread {
  const { name, form, diameterMm, pitchMm, sizeSource } = figures;
  const less = (factor: number) => (pitchMm === null ? null : diameterMm - factor * pitchMm);
  const pitchDiameterMm = less(PITCH_DIAMETER);
  const rootDiameterMm = less(ROOT[form]);
  const worked =
    pitchDiameterMm === null || rootDiameterMm === null
      ? null
      : (Math.PI / 4) * ((pitchDiameterMm + rootDiameterMm) / 2) ** 2;
  return {
    name,
    form,
    diameterMm,
    pitchMm,
    pitchDiameterMm,
    rootDiameterMm,
    minorDiameterMm: less(MINOR),
    stressAreaMm2: figures.areaMm2 ?? worked,
    source: form === 'unified' ? unifiedSource : iso724,
    sizeSource,
  };
}

const refuse = (expected: string, why: string): ReadThread => ({ ok: false, expected, why });
const FORMS = 'a thread such as "M10", "M10x1.25", "3/8-16 UNC", or {diameter, pitch, stressArea}';
const TOLERANCE = /\s*-\s*(?:\d[a-zA-Z](?:\d[a-zA-Z])?|\d[ABab])$/;
const METRIC = /^M\s*(\d+(?:\.\d+)?)(?:\s*[x×*]\s*(\d+(?:\.\d+)?))?$/i;
const INCH_SIZE = /(?:#|no\.?\s*)?(\d+[- ]\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)\s*(?:in|")?/.source;
const INCH_PITCH = /(?:\s*-\s*(\d+(?:\.\d+)?))?\s*(UNRC|UNRF|UNC|UNF|UNEF|UNS|UN)?/.source;
const UNIFIED = new RegExp(`^${INCH_SIZE}${INCH_PITCH}$`, 'i');

export function readThread(text: string): ReadThread {
  const plain = text.trim().replace(TOLERANCE, '').trim();
  const metric = METRIC.exec(plain);
  if (metric !== null) return metricThread(Number(metric[1]), metric[2]);
  const unified = UNIFIED.exec(plain);
  if (unified !== null && (unified[2] ?? unified[3]) !== undefined) {
    return unifiedThread(unified[1] ?? '', unified[2], unified[3]?.toUpperCase());
  }
  return refuse(FORMS, 'it does not read as a thread');
}

function metricThread(diameterMm: number, pitch: string | undefined): ReadThread {
  const row = metricRows.find(([d]) => d === diameterMm);
  if (row === undefined) {
    const sizes = metricRows.map(([d]) => `M${d}`).join(', ');
    const remedy = 'give {diameter, pitch} for any other';
    return refuse(`one of ${sizes}`, `there is no size M${diameterMm} here; ${remedy}`);
  }
  const [, coarse, fine] = row;
  const pitchMm = pitch === undefined ? coarse : Number(pitch);
  if (pitchMm !== coarse && !fine.includes(pitchMm)) {
    const pitches = [coarse, ...fine].join(', ');
    const which = `there is no pitch of ${pitch} mm to M${diameterMm}`;
    return refuse(`a pitch of ${pitches} mm`, `${which}; the pitches there are: ${pitches}`);
  }
  const name = pitchMm === coarse ? `M${diameterMm}` : `M${diameterMm}x${pitchMm}`;
  const read = readPitches.has(`${diameterMm}x${pitchMm}`);
  const sizeSource = read ? iso261 : iso261Memory;
  return { ok: true, thread: threadOf({ name, form: 'metric', diameterMm, pitchMm, sizeSource }) };
}

const seriesOf = ([, , coarse, fine, others]: UnifiedRow): readonly (readonly [
  number,
  string,
])[] => [
  ...(coarse === null ? [] : [[coarse, 'UNC'] as const]),
  ...(fine === null ? [] : [[fine, 'UNF'] as const]),
  ...others,
];

/** A bare 1 to 4 may be an inch size or a number size: the threads an inch tell which. */
function rowsOf(size: string): readonly UnifiedRow[] {
  const label = size.replace(' ', '-');
  const named = unifiedRows.filter(([name]) => name === label);
  if (named.length > 0 || !/^\d*\.\d+$/.test(size)) return named;
  return unifiedRows.filter(([, inches]) => Math.abs(inches - Number(size)) < 5e-4);
}

function unifiedThread(
  size: string,
  threads: string | undefined,
  series: string | undefined,
): ReadThread {
  const rows = rowsOf(size);
  if (rows.length === 0) {
    const sizes = unifiedRows.map(([name]) => name).join(', ');
    return refuse(`one of ${sizes}`, `${size} is no inch size known here`);
  }
  const wanted = series?.replace('UNR', 'UN');
  const all = rows.flatMap((row) => seriesOf(row).map(([count, kind]) => ({ row, count, kind })));
  const found = all.find(
    ({ count, kind }) =>
      (threads === undefined || count === Number(threads)) &&
      (wanted === undefined || wanted === kind || (wanted === 'UN' && threads !== undefined)),
  );
  if (found === undefined) {
    const there = all.map(({ row, count, kind }) => `${row[0]}-${count} ${kind}`).join(', ');
    return refuse(`one of ${there}`, `there is no such pitch of ${size}; there are: ${there}`);
  }
  const { row, count, kind } = found;
  const read = (kind === 'UNC' || kind === 'UNF') && row[1] <= 1.5;
  return {
    ok: true,
    thread: threadOf({
      name: `${row[0]}-${count} ${kind}`,
      form: 'unified',
      diameterMm: row[1] * INCH,
      pitchMm: INCH / count,
      sizeSource: read ? unifiedSource : unifiedMemory,
    }),
  };
}

export function givenThread(
  diameterMm: number,
  pitchMm: number | null,
  areaMm2: number | undefined,
): ReadThread {
  if (pitchMm !== null && ROOT.given * pitchMm >= diameterMm) {
    const most = (diameterMm / ROOT.given).toPrecision(4);
    return refuse(`a pitch under ${most} mm`, 'such a pitch would leave no core');
  }
  const whole = (Math.PI / 4) * diameterMm ** 2;
  if (areaMm2 !== undefined && areaMm2 > whole) {
    return refuse(`at most ${whole.toPrecision(4)} mm²`, 'the area is more than the full section');
  }
  const name = pitchMm === null ? `${diameterMm} mm` : `${diameterMm} mm x ${pitchMm} mm`;
  const sizeSource = given;
  const figures = { name, form: 'given', diameterMm, pitchMm, areaMm2, sizeSource } as const;
  return { ok: true, thread: threadOf(figures) };
}

export type ThreadLimits = {
  /** Of the bolt, at their least. */
  readonly majorMinMm: number;
  readonly pitchMinMm: number;
  /** Of the hole, at their greatest. */
  readonly holePitchMaxMm: number;
  readonly holeMinorMaxMm: number;
  readonly source: Source;
};

const EDGES = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355, 710];

/** Tolerances are set for a range of diameters, by the geometric middle of the range. */
function middleMm(diameterMm: number): number {
  const at = Math.max(
    1,
    EDGES.findIndex((edge) => diameterMm <= edge),
  );
  return Math.sqrt((EDGES[at - 1] ?? 0.99) * (EDGES[at] ?? 1.4));
}

/** 6g in 6H: the usual fit. Micrometres by the formulas of ISO 965-1. */
function metricLimits(d: number, p: number): ThreadLimits {
  const middle = middleMm(d);
  const gapUm = 15 + 11 * p;
  const pitchToleranceUm = 90 * p ** 0.4 * middle ** 0.1;
  const minorUm = p >= 1 ? 230 * p ** 0.7 : 433 * p - 190 * p ** 1.22;
  const majorUm = 180 * p ** (2 / 3) - 3.15 / Math.sqrt(p);
  return {
    majorMinMm: d - (gapUm + majorUm) / 1000,
    pitchMinMm: d - PITCH_DIAMETER * p - (gapUm + pitchToleranceUm) / 1000,
    holePitchMaxMm: d - PITCH_DIAMETER * p + (1.32 * pitchToleranceUm) / 1000,
    holeMinorMaxMm: d - MINOR * p + minorUm / 1000,
    source: { kind: 'from memory', of: 'ISO 965-1, formulas of the limits 6g and 6H' },
  };
}

/** 2A in 2B, inches by the formulas of ASME B1.1, engagement taken as one diameter. */
function unifiedLimits(dMm: number, pMm: number): ThreadLimits {
  const d = dMm / INCH;
  const p = pMm / INCH;
  const pitch = 0.0015 * Math.cbrt(d) + 0.0015 * Math.sqrt(d) + 0.015 * p ** (2 / 3);
  const gap = 0.3 * pitch;
  const small = d < 0.25;
  const minor = small
    ? Math.max(0.05 * p ** (2 / 3) + 0.03 * (p / d) - 0.002, 0.25 * p - 0.4 * p ** 2)
    : p > 0.25
      ? 0.15 * p
      : 0.25 * p - 0.4 * p ** 2;
  return {
    majorMinMm: (d - gap - 0.06 * p ** (2 / 3)) * INCH,
    pitchMinMm: (d - PITCH_DIAMETER * p - gap - pitch) * INCH,
    holePitchMaxMm: (d - PITCH_DIAMETER * p + 1.3 * pitch) * INCH,
    holeMinorMaxMm: (d - MINOR * p + minor) * INCH,
    source: { kind: 'from memory', of: 'ASME B1.1, formulas of the limits 2A and 2B' },
  };
}

export function limitsOf(thread: Thread): ThreadLimits | null {
  if (thread.pitchMm === null) return null;
  return thread.form === 'unified'
    ? unifiedLimits(thread.diameterMm, thread.pitchMm)
    : metricLimits(thread.diameterMm, thread.pitchMm);
}
