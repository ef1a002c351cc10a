// The plant file's shape: one definition for check, type and published JSON Schema.
//
// Before this schema is applied, reading removes two things that any optional field may hold:
// the word `unknown` (the field is then absent) and `{value, from, by?, on?}` (the value alone
// stays; where it came from is kept beside the machine as an origin).

import { z } from 'zod';
import { idSchema, sheetFileSchema, valueSchema } from '../values/schema.ts';
import { liftPointSchema, rigSchema, wayLiftSchema } from './lift-schema.ts';
import { measure } from './measure.ts';

export type { SheetFile, ValueEntry } from '../values/schema.ts';

export { idSchema, sheetFileSchema, valueSchema };

export const originSchema = z.strictObject({
  value: z.unknown(),
  from: z.enum(['drawing', 'measured', 'seen once', 'assumed']),
  by: z.string().optional(),
  on: z.iso.date().optional(),
});

const minutes = z.number().min(0).max(100_000);
const count = z.int().min(1).max(500);
const clearSchema = z.strictObject({ part: idSchema, as: z.enum(['off', 'aside']) });

export const waySchema = z.strictObject({
  name: z.string().optional(),
  gives: z.enum(['off', 'aside']),
  joints: z.array(idSchema),
  clear: z.array(clearSchema).optional(),
  minutes: minutes.optional(),
  people: z.int().min(1).max(20).optional(),
  support: z.string().optional(),
  temporary: z.array(z.string()).optional(),
  /** It stays where it is when its joints are undone: nothing need hold it. */
  rests: z.boolean().optional(),
  lift: wayLiftSchema.optional(),
  rig: rigSchema.optional(),
});

export const accessSchema = z.strictObject({
  name: z.string().optional(),
  clear: z.array(clearSchema).optional(),
  tool: z.string().optional(),
  place: z.string().optional(),
  /** How a wrench comes to the fastener; with `reachLength` where an extension is needed. */
  reach: z.enum(['straight', 'long', 'swivel', 'open-end']).optional(),
  reachLength: measure('mm').optional(),
  /** Of an open-end adapter against the wrench, in degrees: 0 ahead, 90 square. */
  adapterAngle: z.number().min(0).max(180).optional(),
  /** Where whoever undoes it stands, seen as the joint is drawn: the far side opens first. */
  stands: z.enum(['above', 'below', 'left', 'right']).optional(),
});

export const fastenerSchema = z.strictObject({
  kind: z.enum([
    'bolt',
    'cap screw',
    'stud and nut',
    'nut',
    'hose clip',
    'clamp',
    'connector',
    'hose end',
    'union nut',
    'plug',
  ]),
  count,
  holes: z.array(z.union([z.int(), z.string()])).optional(),
  thread: z.string().optional(),
  length: measure('mm').optional(),
  strengthClass: z.string().optional(),
  head: z.enum(['hexagon', 'socket', 'flanged hexagon', 'slotted', 'cross', 'wing']).optional(),
  acrossFlats: measure('mm').optional(),
  washer: z.string().optional(),
  locking: z.string().optional(),
  into: z.string().optional(),
  grip: measure('mm').optional(),
  engagement: measure('mm').optional(),
  holeDepth: measure('mm').optional(),
  projection: measure('mm', 'nought or more').optional(),
  drawOff: measure('mm', 'nought or more').optional(),
  tightening: idSchema.optional(),
  /** Running torque of a self-locking nut as measured, unless the value includes it. */
  runDown: measure('N.m').optional(),
  includesRunDown: z.boolean().optional(),
  /** Clamp a bolt must give, where it is stated. */
  clampNeeded: measure('kN').optional(),
  /** By what it is brought to its clamp; left out: by torque, where a torque is issued for it. */
  tightenedBy: z.enum(['torque', 'angle', 'yield']).optional(),
  /** Into a hole with a bottom: nothing that can't get out may be put in it. */
  blind: z.boolean().optional(),
});

export const looseSchema = z.strictObject({
  name: z.string().optional(),
  kind: z.enum([
    'key',
    'drive tang',
    'circlip',
    'dowel',
    'shim',
    'spacer',
    'slinger',
    'bonding strap',
    'anode',
  ]),
  count,
});

export const sealSchema = z.strictObject({
  name: z.string().optional(),
  kind: z.enum(['gasket', 'ring', 'shaft seal', 'sealing washer']),
  count,
  size: z.string().optional(),
  compound: z.string().optional(),
  thickness: measure('mm').optional(),
  lubricant: z.string().optional(),
  sealant: z.string().optional(),
  /** What the seal itself bears, by its maker; held against its line. */
  maxTemperature: measure('Cel', 'any').optional(),
  maxPressure: measure('bar').optional(),
  /** Its thickness is a value: it sets an end clearance. */
  setsClearance: z.boolean().optional(),
  /** Where the old one may go back: on what a named look must find. */
  reuse: z.string().min(1).optional(),
  renewAfterYears: z.number().positive().max(100).optional(),
  fitted: z.iso.date().optional(),
});

export const settingSchema = z.strictObject({
  name: z.string().optional(),
  kind: z.enum(['backlash', 'end float', 'belt tension', 'alignment', 'direction of rotation']),
  value: idSchema.optional(),
});

const hazard = z.enum([
  'stored energy',
  'flooding',
  'heat',
  'lifting',
  'rotation',
  'confined space',
  'electricity',
  'chemicals',
  'fuel',
]);

export const layoutSchema = z.union([
  z.literal('ring'),
  z.strictObject({
    kind: z.enum(['rows', 'rectangle']),
    rows: z.int().min(1),
    columns: z.int().min(1),
  }),
  z.strictObject({ kind: z.literal('positions'), mm: z.array(z.tuple([z.number(), z.number()])) }),
]);

export const jointSchema = z.strictObject({
  name: z.string().min(1),
  between: z.array(idSchema).optional(),
  fasteners: z.record(idSchema, fastenerSchema).optional(),
  loose: z.record(idSchema, looseSchema).optional(),
  seals: z.record(idSchema, sealSchema).optional(),
  settings: z.record(idSchema, settingSchema).optional(),
  layout: layoutSchema.optional(),
  /** Diameter on which the pressure of the line pushes, and what seats the whole seal. */
  sealedDiameter: measure('mm').optional(),
  seating: measure('kN', 'nought or more').optional(),
  critical: z.boolean().optional(),
  byHand: z.boolean().optional(),
  /** A soft gasket that is re-tightened once it has relaxed: by which issued value, and when. */
  retighten: z.strictObject({ value: idSchema, when: z.string().min(1) }).optional(),
  doNotDisturb: z.string().optional(),
  /** Why no sealant may come on it. */
  noSealant: z.string().min(1).optional(),
  medium: z.string().optional(),
  undoMinutes: minutes.optional(),
  makeMinutes: minutes.optional(),
  accesses: z.record(idSchema, accessSchema).optional(),
  consumables: z
    .array(z.strictObject({ name: z.string(), amount: z.string().optional() }))
    .optional(),
  hazards: z.array(hazard).optional(),
  blank: z.string().optional(),
  photo: z.string().optional(),
  drawing: z.string().optional(),
});

export const partSchema = z.strictObject({
  name: z.string().min(1),
  mass: measure('kg').optional(),
  /** With what stays in it when it is lifted. */
  wetMass: measure('kg').optional(),
  /** It comes away in so many pieces: one is lifted at a time. */
  pieces: z.int().min(2).max(1_000).optional(),
  liftPoints: z.record(idSchema, liftPointSchema).optional(),
  centre: z.tuple([z.number(), z.number(), z.number()]).optional(),
  handed: z.enum(['port', 'starboard', 'either']).optional(),
  line: idSchema.optional(),
  on: idSchema.optional(),
  stays: z.boolean().optional(),
  ways: z.record(idSchema, waySchema).optional(),
  carriedBy: z.string().optional(),
  portMark: z.string().optional(),
  hazards: z.array(hazard).optional(),
  item: z.strictObject({ type: z.string(), serial: z.string().optional() }).optional(),
  looks: z.array(z.string()).optional(),
  photo: z.string().optional(),
  drawing: z.string().optional(),
});

export const MEDIA = [
  'sea water',
  'fresh water',
  'jacket water',
  'coolant',
  'lube oil',
  'fuel',
  'bilge',
  'start air',
  'charge air',
  'exhaust',
  'electricity',
  'signal',
] as const;
export const LIQUIDS: readonly string[] = [
  'sea water',
  'fresh water',
  'jacket water',
  'coolant',
  'lube oil',
  'fuel',
  'bilge',
];

export const lineSchema = z.strictObject({
  name: z.string().min(1),
  medium: z.enum(MEDIA).optional(),
  pressure: measure('bar', 'any').optional(),
  temperature: measure('Cel', 'any').optional(),
});

export const closureSchema = z.strictObject({
  name: z.string().min(1),
  kind: z.enum([
    'valve',
    'sea valve',
    'non-return valve',
    'drain',
    'vent',
    'breaker',
    'switch',
    'turning gear',
  ]),
  line: idSchema.optional(),
  normal: z.string().optional(),
  stations: z.array(z.string()).optional(),
  secure: z.string().optional(),
  place: z.string().optional(),
  note: z.string().optional(),
});

export const sensorSchema = z.strictObject({
  name: z.string().min(1),
  line: idSchema.optional(),
  joint: idSchema.optional(),
  alarm: z.string().optional(),
});

/** The closures typed by a named person for one target, until they are worked out from lines. */
export const isolationSchema = z.strictObject({
  by: z.string().min(1),
  on: z.iso.date(),
  closures: z.array(z.strictObject({ closure: idSchema, position: z.string().min(1) })).min(1),
  drains: z.array(idSchema).optional(),
  proveAt: idSchema.optional(),
  vents: z.array(idSchema).optional(),
  prime: z.string().optional(),
  note: z.string().optional(),
});

const followUpSchema = z.strictObject({
  after: measure('h'),
  what: z.string().min(1),
});

export const doesSchema = z.strictObject({
  name: z.string().optional(),
  take: z.array(clearSchema).min(1),
  bench: z.array(clearSchema).optional(),
  renews: z.array(idSchema).optional(),
  interval: idSchema.optional(),
  isolation: idSchema.optional(),
});

export const DOES = ['renew-in-place', 'exchange', 'overhaul'] as const;

export const targetSchema = z.strictObject({
  does: z.partialRecord(z.enum(DOES), doesSchema),
  rotation: z.string().optional(),
  speeds: z.array(measure('1/min')).optional(),
  flowSeenAt: z.string().optional(),
  limits: z.array(idSchema).optional(),
  alarms: z.array(idSchema).optional(),
  followUps: z.array(followUpSchema).optional(),
});

export const typeFileSchema = z.strictObject({
  type: idSchema,
  name: z.string().min(1),
  parts: z.record(idSchema, partSchema),
  joints: z.record(idSchema, jointSchema),
  lines: z.record(idSchema, lineSchema).optional(),
  closures: z.record(idSchema, closureSchema).optional(),
  sensors: z.record(idSchema, sensorSchema).optional(),
  isolations: z.record(idSchema, isolationSchema).optional(),
  targets: z.record(idSchema, targetSchema).optional(),
});

export const differenceSchema = z.strictObject({
  id: idSchema,
  why: z.string().min(1),
  change: z.enum(['add', 'remove', 'set']),
  at: z.string().min(1),
  to: z.unknown().optional(),
});

export const machineFileSchema = z.strictObject({
  machine: idSchema,
  name: z.string().min(1),
  type: idSchema,
  otherSide: idSchema.optional(),
  /** Which hand of a handed item it takes. */
  side: z.enum(['port', 'starboard']).optional(),
  plate: z.string().optional(),
  position: z.string().optional(),
  differences: z.array(differenceSchema).optional(),
});

export const plantFileSchema = z.strictObject({
  plant: idSchema,
  name: z.string().min(1),
  kind: z.enum(['vessel', 'station']),
  issue: z.strictObject({ number: z.int().min(1), date: z.iso.date(), by: z.string().min(1) }),
  source: z.literal('invented for the demo').optional(),
  people: z.array(z.strictObject({ name: z.string(), role: z.string() })).optional(),
  /** The rule that this vessel's procedures count the life of rubber in store by. */
  storageRule: z.enum(['ISO 2230', 'SAE ARP5316', 'RMA']).optional(),
  places: z.record(idSchema, z.strictObject({ name: z.string().min(1) })).optional(),
  lines: z.record(idSchema, lineSchema).optional(),
  closures: z.record(idSchema, closureSchema).optional(),
});

export type Way = z.infer<typeof waySchema>;
export type Access = z.infer<typeof accessSchema>;
export type Fastener = z.infer<typeof fastenerSchema>;
export type Loose = z.infer<typeof looseSchema>;
export type Seal = z.infer<typeof sealSchema>;
export type Setting = z.infer<typeof settingSchema>;
export type Joint = z.infer<typeof jointSchema>;
export type Part = z.infer<typeof partSchema>;
export type Line = z.infer<typeof lineSchema>;
export type Closure = z.infer<typeof closureSchema>;
export type Isolation = z.infer<typeof isolationSchema>;
export type Does = (typeof DOES)[number];
export type DoesSpec = z.infer<typeof doesSchema>;
export type Target = z.infer<typeof targetSchema>;
export type Difference = z.infer<typeof differenceSchema>;
export type TypeFile = z.infer<typeof typeFileSchema>;
export type MachineFile = z.infer<typeof machineFileSchema>;
export type PlantFile = z.infer<typeof plantFileSchema>;
