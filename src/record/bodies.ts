// The shape of each act's body: checked at the border, so that the fold can trust what it reads.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { GRADES } from '../pack/as-found.ts';
import { BEFORE } from '../pack/before.ts';
import { HANDS_ABOARD } from '../pack/request.ts';
import { fastenerSchema, MEDIA, sealSchema } from '../plant/schema.ts';

const name = z.string().trim().min(1).max(200);
const words = z.string().trim().min(1).max(4_000);
const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/);
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const date = z.string().min(4).max(40);
const yes = z.union([z.boolean(), z.enum(['yes', 'no'])]);

/** What a step's own questions may be answered with, under the name the pack gives the question. */
const answer = z.union([
  z.string().max(4_000),
  z.number(),
  z.boolean(),
  z.null(),
  z.array(z.union([z.string().max(200), z.number()])).max(500),
]);

const aboutThing = (prefix: string) =>
  z.string().regex(new RegExp(`^(?:${prefix})/[A-Za-z0-9][A-Za-z0-9:._ -]*$`));

/** Carried out on paper and entered afterwards: from which sheet, what stood there, by whom. */
const fromPaper = {
  paper: z
    .string()
    .regex(/^[A-Z]{1,3}$/)
    .optional(),
  writtenAt: z.string().trim().min(1).max(100).optional(),
  enteredBy: name.optional(),
};

const someHoles = z.array(z.string().min(1).max(20)).min(1).max(500);

const common = {
  step: z.string().max(400).optional(),
  count: z.int().min(0).max(10_000).optional(),
  holes: z.array(z.string().min(1).max(20)).max(500).optional(),
  round: z.string().min(1).max(40).optional(),
  value: z.union([z.number(), z.string().max(200)]).optional(),
  unit: z.string().max(40).optional(),
  text: z.string().max(4_000).optional(),
  /** Said for several steps at one time, afterwards. */
  together: z.boolean().optional(),
  photo: hash.optional(),
  verifiedBy: z.string().trim().max(200).optional(),
  hours: z.number().min(0).optional(),
  serial: z.string().max(200).optional(),
  ...fromPaper,
};

/** A step's body: the thing, what is commonly said with it, and answers by the name asked. */
const about = <Extra extends z.ZodRawShape>(prefix: string, extra: Extra) =>
  z.object({ thing: aboutThing(prefix), ...common, ...extra }).catchall(answer);

export const bodies = {
  'job-started': z.strictObject({
    pack: hash,
    title: name,
    machine: id,
    target: id,
    does: name,
    why: z.string().max(4_000),
    hands: z.array(name).max(50),
    competent: name.optional(),
    anyway: z
      .array(z.strictObject({ decision: words, reason: words, limits: words }))
      .max(500)
      .optional(),
  }),
  'strip-started': z.strictObject({
    vessel: name,
    machine: name,
    side: z.string().trim().max(200).optional(),
    component: name,
    does: name.optional(),
    why: z.string().max(4_000),
    hands: z.array(name).max(50),
    competent: name.optional(),
    handsAboard: z.enum(HANDS_ABOARD).optional(),
  }),
  'pack-amended': z.strictObject({ from: hash, to: hash, why: words }),
  'could-not': z.strictObject({ thing: name, step: z.string().max(400).optional(), why: words }),
  found: z.strictObject({
    thing: name,
    what: words,
    hole: z.string().min(1).max(20).optional(),
    ...fromPaper,
  }),
  decided: z.strictObject({ finding: words, owner: name, what: words, pack: hash.optional() }),
  'cannot-run': z.strictObject({
    thing: z.enum(BEFORE),
    why: words.optional(),
  }),
  corrected: z.strictObject({ of: hash, why: words }),
  'values-issued': z.strictObject({
    sheet: id,
    issue: name,
    date: z.iso.date(),
    authority: name,
    machines: z.array(id).min(1).max(500),
    values: z
      .array(
        z.strictObject({
          id,
          name,
          is: z.string().max(200).nullable(),
          condition: z.string().max(400).nullable(),
          why: z.string().max(1_000).optional(),
        }),
      )
      .min(1)
      .max(500),
  }),
  'value-looked-at': z.strictObject({
    thing: aboutThing('joint'),
    value: id,
    was: z.string().max(200),
    is: z.string().max(200).nullable(),
    issue: name,
  }),
  'used-anyway': z.strictObject({
    thing: name,
    step: z.string().max(400).optional(),
    reason: words,
    limits: words,
  }),
  note: z.strictObject({ thing: name.optional(), text: words }),
  photo: z.strictObject({ thing: name, hash, type: z.string().max(100) }),
  'follow-up-owned': z.strictObject({ followUp: words, owner: name }),
  'follow-up-done': z.strictObject({ followUp: words, text: z.string().max(4_000).optional() }),
  closed: z.strictObject({
    deviations: z.array(z.strictObject({ thing: name, reason: words, limits: words })).max(5_000),
    owner: name.optional(),
  }),
  'order-set': z.strictObject({ order: z.array(name).max(5_000), why: words.optional() }),
  'handed-over': z.strictObject({ to: name, text: z.string().max(4_000).optional() }),
  'seen-at-machine': z.strictObject({ thing: name }),
  'watch-taken': z.strictObject({ name }),
  'sailing-set': z.strictObject({ at: date, where: name }),
  'sailing-off': z.strictObject({ of: hash }),
  drawn: z.strictObject({
    item: id,
    count: z.number().positive().max(limits.stores.quantity),
    job: name.optional(),
  }),
  received: z.strictObject({
    item: id,
    count: z.number().positive().max(limits.stores.quantity),
    from: name.optional(),
  }),
  'person-added': z.strictObject({ name, role: name }),
  'hours-read': z.strictObject({ machine: id, hours: z.number().min(0), at: date }),
  'done-before': z.strictObject({
    target: id,
    does: name,
    at: date,
    hours: z.number().min(0).nullable(),
  }),
  'limit-lifted': z.strictObject({ of: hash, why: words }),
  'took-off': about('part|joint', {
    what: name,
    wet: z.enum(['yes', 'no', 'do not know']),
    medium: z.enum(MEDIA).optional(),
    fasteners: z
      .array(z.strictObject({ count: z.int().min(1).max(500), what: fastenerSchema.shape.kind }))
      .max(20)
      .optional(),
    seals: z.int().min(0).max(500).optional(),
    sealsLeft: z.int().min(0).max(500).optional(),
    sealKind: sealSchema.shape.kind.optional(),
    bag: z.int().min(0).max(100_000).optional(),
  }),
  'shut-or-unplugged': about('closure', {
    what: name,
    kind: z.enum(['valve', 'sea valve', 'non-return valve', 'breaker', 'switch', 'plug']),
    found: name,
    position: name.optional(),
    turns: z.number().min(0).max(1_000).optional(),
    medium: z.enum(MEDIA).optional(),
    where: z.string().max(200).optional(),
  }),
  'put-back': about('part|joint', {}),
  shut: about('closure', {
    found: z.string().max(200).optional(),
    position: name.optional(),
    turns: z.number().min(0).max(1_000).optional(),
  }),
  tagged: about('tag', { closure: id.optional(), station: z.string().max(200).optional() }),
  'drain-opened': about('drain', {}),
  'proved-dead': about('drain', {
    sawRun: yes,
    diedAway: yes,
    minutes: z.number().min(0).optional(),
  }),
  'second-look': about('look', {
    rows: z
      .array(z.strictObject({ thing: aboutThing('closure'), position: name }))
      .min(1)
      .max(500),
    alone: z.boolean(),
  }),
  told: about('[a-z]+', {}),
  measured: about('[a-z]+(?:-[a-z]+)*', {}),
  checked: about('[a-z]+', {}),
  'put-in': about('temp', {}),
  undone: about('joint', {}),
  'moved-off': about('part', {}),
  'moved-aside': about('part', {}),
  'item-out': about('item', {}),
  'seal-out': about('seal', {}),
  /** Which item of the stores went in, by its label. */
  'seal-in': about('seal', {
    item: id.optional(),
    batch: z.string().max(200).optional(),
    cured: z.string().max(40).optional(),
  }),
  'loose-out': about('loose', {}),
  'loose-in': about('loose', {}),
  'as-found': about('item|part', {
    grade: z.enum(GRADES),
    failed: name,
    missing: z.int().min(0).max(10_000),
  }),
  accounted: about('missing', {
    left: z.int().min(0).max(10_000).optional(),
    where: words.optional(),
    reason: words.optional(),
    limits: words.optional(),
  })
    .refine((b) => (b.where === undefined) === (b.left === undefined), {
      message: 'found: where, and how many are still missing',
      path: ['left'],
    })
    .refine((b) => (b.reason === undefined) === (b.limits === undefined), {
      message: 'gone on without: reason and limits go together',
      path: ['limits'],
    })
    .refine((b) => b.where !== undefined || b.reason !== undefined, {
      message: 'found where, or gone on without for what reason?',
      path: ['where'],
    }),
  'item-in': about('item', {}),
  refitted: about('part', {}),
  made: about('joint', {}),
  'checked-tight': about('joint', { holes: someHoles }),
  're-tightened': about('joint', { cold: yes, noPressure: yes, startIsolated: yes }),
  'taken-away': about('temp', {}),
  'drain-shut': about('drain', {}),
  untagged: about('tag', {}),
  restored: about('closure', { position: z.string().max(200).optional() }),
  'people-clear': about('[a-z-]+', {}),
  turned: about('[a-z-]+', {}),
  started: about('[a-z-]+', {}),
  proof: about('proof', {
    result: z.enum(['pass', 'fail', 'cannot tell', 'passed up to']),
    upTo: z.string().min(1).max(100).optional(),
  }).refine((b) => b.result !== 'passed up to' || b.upTo !== undefined, {
    message: 'passed up to what? upTo is missing',
    path: ['upTo'],
  }),
} as const satisfies Record<string, z.ZodType>;

export type Kind = keyof typeof bodies;
