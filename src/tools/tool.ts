// The tools held, as data: torque wrenches and what fits on them, gauges, lifting gear.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { figure } from '../quantity/border.ts';
import { isDay } from '../quantity/day.ts';
import { unitOf } from '../quantity/units.ts';

/** Driving squares: nominal mm and the inch name that stands on the tool. */
export const DRIVES = [
  [6.3, '1/4'],
  [10, '3/8'],
  [12.5, '1/2'],
  [20, '3/4'],
  [25, '1'],
] as const;

export type Drive = (typeof DRIVES)[number][0];

export const driveName = (drive: Drive): string =>
  `${DRIVES.find(([mm]) => mm === drive)?.[1] ?? drive} in square`;

/** `1/2`, `1/2 in`, `12.5` and `12.5 mm` are one drive. */
export function readDrive(given: unknown): Drive | null {
  const text = String(given)
    .trim()
    .replace(/\s*(?:in|inch|")$/, '"');
  const plain = text.replace(/\s*mm$/, '').replace(/"$/, '');
  const asInch = DRIVES.find(([, inch]) => inch === plain)?.[0];
  const asMm = text.endsWith('"') ? undefined : DRIVES.find(([mm]) => String(mm) === plain)?.[0];
  return asInch ?? asMm ?? null;
}

const refusal = (context: z.core.$RefinementCtx, input: unknown, expected: string, why: string) => {
  context.addIssue({ code: 'custom', message: why, input, params: { expected } });
  return z.NEVER;
};

const drive = z.union([z.string(), z.number()]).transform((given, context): Drive => {
  const read = readDrive(given);
  const allowed = DRIVES.map(([mm, inch]) => `${inch} (${mm} mm)`).join(', ');
  return read ?? refusal(context, given, `one of ${allowed}`, 'it is no driving square known here');
});

const day = z
  .string()
  .transform((given, context) =>
    isDay(given)
      ? given
      : refusal(context, given, 'a day as 2026-11-25', 'it is no day of the calendar'),
  );

/** The unit engraved on a scale, kept as its UCUM code. */
const scaleUnit = z.string().transform((given, context): string => {
  const unit = unitOf(given);
  if (unit?.dimension === 'torque') return unit.code;
  return refusal(context, given, 'N.m, lbf.ft, lbf.in, kgf.m', 'it is no unit of torque');
});

const mm = (says: string) => figure('mm', { above: 0, max: limits.bolting.leverMm, says });
const across = mm('a width across flats is more than nought').transform(({ value }) => value);
const length = (says: string) => mm(says).transform(({ value }) => value);

/** What a spreadsheet would take for a formula is no name: it must not come out of a list again. */
const text = z
  .string()
  .trim()
  .min(1)
  .max(limits.tools.cellLength)
  .refine((value) => !/^[=+@\t-]/.test(value), {
    error: 'a spreadsheet would take this for a formula',
    params: { expected: 'a text that begins with a letter or a figure' },
  });

const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, {
  error: 'an id is a short word: small letters, figures and hyphens',
});

const common = { id, name: text, place: text.optional(), note: text.optional() };

const months = z.int().min(1).max(120);

/** A torque wrench. Its cycles are counted on from `countedOn`, else from its calibration. */
export const wrenchSchema = z.strictObject({
  kind: z.literal('wrench'),
  ...common,
  drive,
  min: figure('N.m', { min: 0, says: 'a wrench begins at nought or above' }),
  max: figure('N.m', { above: 0, says: 'a wrench ends above nought' }),
  scaleUnit: scaleUnit.default('N.m'),
  /** The step of the scale, in its own unit. */
  division: z.number().positive().optional(),
  tolerance: figure('1', { above: 0, below: 1, says: 'a tolerance is a fraction, as 4 %' })
    .transform(({ value }) => value)
    .optional(),
  calibratedOn: day.optional(),
  intervalMonths: months.optional(),
  intervalCycles: z.int().min(1).optional(),
  cyclesSince: z.int().min(0).optional(),
  countedOn: day.optional(),
  droppedOn: day.optional(),
  lengthToGrip: length('drive square to the marked grip').optional(),
});

const socketLike = { ...common, drive, acrossFlats: across, long: z.boolean().default(false) };

/** A spread stated as a figure with its coverage factor. */
export const gaugeSchema = z.strictObject({
  kind: z.literal('gauge'),
  ...common,
  measures: text,
  min: z.number(),
  max: z.number(),
  unit: z.string().refine((given) => unitOf(given) !== undefined, {
    error: 'it is no unit known here',
    params: { expected: 'a unit as mm, bar, Cel' },
  }),
  expanded: z.number().positive().optional(),
  k: z.number().positive().optional(),
  calibratedOn: day.optional(),
  intervalMonths: months.optional(),
});

/** Lifting gear: what it bears is marked on it, and it holds until its next examination. */
const gear = {
  ...common,
  /** The safe load marked on it; of a sling that of one leg, straight down. */
  safeLoad: figure('kg', { above: 0, max: limits.lifting.weightKg, says: 'above nought' }),
  examinedOn: day.optional(),
  intervalMonths: months.optional(),
};
/** How far from straight down it may be pulled, in degrees, where that is marked. */
const mostAngle = z.number().min(0).max(limits.lifting.mostLegDeg).optional();

export const toolSchema = z.discriminatedUnion('kind', [
  wrenchSchema,
  z.strictObject({ kind: z.literal('socket'), ...socketLike }),
  z.strictObject({ kind: z.literal('key'), ...socketLike }),
  z.strictObject({ kind: z.literal('handle'), ...common, drive }),
  z.strictObject({ kind: z.literal('adapter'), ...common, drive, to: drive }),
  z.strictObject({ kind: z.literal('extension'), ...common, drive, length: length('its length') }),
  z.strictObject({ kind: z.literal('swivel'), ...common, drive }),
  z.strictObject({
    kind: z.literal('crowfoot'),
    ...common,
    drive,
    acrossFlats: across,
    offset: length('drive square to the axis of the bolt'),
  }),
  z.strictObject({ kind: z.literal('spanner'), ...common, acrossFlats: across }),
  gaugeSchema,
  z.strictObject({ kind: z.literal('chain block'), ...gear }),
  z.strictObject({
    kind: z.literal('sling'),
    ...gear,
    length: length('its length').optional(),
    mostAngle,
  }),
  z.strictObject({ kind: z.literal('shackle'), ...gear }),
  z.strictObject({ kind: z.literal('eye bolt'), ...gear, mostAngle }),
  z.strictObject({ kind: z.literal('jack'), ...gear }),
]);

export type Tool = z.infer<typeof toolSchema>;
export type ToolKind = Tool['kind'];
export type HeldWrench = Extract<Tool, { kind: 'wrench' }>;
export type Gauge = Extract<Tool, { kind: 'gauge' }>;

export const GEAR_KINDS = ['chain block', 'sling', 'shackle', 'eye bolt', 'jack'] as const;
export type GearKind = (typeof GEAR_KINDS)[number];
export type Gear = Extract<Tool, { kind: GearKind }>;

export const isGear = (tool: Tool): tool is Gear =>
  (GEAR_KINDS as readonly string[]).includes(tool.kind);

/** In the order of a tool list. */
export const TOOL_KINDS = [
  'wrench',
  'handle',
  'socket',
  'key',
  'adapter',
  'extension',
  'swivel',
  'crowfoot',
  'spanner',
  'gauge',
  'chain block',
  'sling',
  'shackle',
  'eye bolt',
  'jack',
] as const satisfies readonly ToolKind[];

/** What of one tool can't be true together: field, value, allowed, why. */
export function contradictions(tool: Tool): {
  readonly field: string;
  readonly got: unknown;
  readonly expected: string;
  readonly why: string;
}[] {
  const found: ReturnType<typeof contradictions> = [];
  const wrong = (field: string, got: unknown, expected: string, why: string) =>
    found.push({ field, got, expected, why });
  if (tool.kind === 'wrench') {
    const { min, max, calibratedOn, countedOn, cyclesSince } = tool;
    if (min.value > max.value) {
      const most = max.given ?? `${max.value} N·m`;
      wrong('min', min.given ?? min.value, `at most ${most}`, 'its least is above its greatest');
    }
    if (countedOn !== undefined && calibratedOn !== undefined && countedOn < calibratedOn) {
      const why = 'its cycles were counted before its calibration';
      wrong('countedOn', countedOn, `${calibratedOn} or later`, why);
    }
    if ((cyclesSince ?? 0) > 0 && countedOn === undefined) {
      const why = 'cycles are given without the day they were counted on';
      wrong('countedOn', null, 'the day of that count', why);
    }
  }
  if (tool.kind === 'adapter' && tool.drive === tool.to) {
    wrong('to', tool.to, 'another square than it fits on', 'an adapter changes the square');
  }
  if (tool.kind === 'gauge') {
    if (tool.min >= tool.max) wrong('min', tool.min, `less than ${tool.max}`, 'it has no range');
    if ((tool.expanded === undefined) !== (tool.k === undefined)) {
      const field = tool.k === undefined ? 'k' : 'expanded';
      wrong(field, null, 'both or neither', 'an uncertainty and its k belong together');
    }
  }
  return found;
}

/** Standard uncertainty of a gauge, in its unit; null where none is stated. */
export const gaugeSpread = ({ expanded, k }: Gauge): number | null =>
  expanded === undefined || k === undefined ? null : expanded / k;
