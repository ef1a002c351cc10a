// What `isolate` takes in and gives out: a plain network, links with valves, or lines with parts.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';

const most = limits.isolation;
const id = z.string().min(1).max(most.idLength);
const effort = z.number().min(0).max(most.mostEffort);
const barriers = z
  .union([z.literal(1), z.literal(2)])
  .default(1)
  .describe('how many closures every path must have, at least');

export const plainIn = z.strictObject({
  nodes: z
    .array(
      z.strictObject({
        id,
        kind: z.enum(['source', 'work', 'valve', 'junction']),
        weight: effort.optional().describe('effort of shutting a valve; 1 unless given'),
      }),
    )
    .min(1)
    .max(most.nodes),
  edges: z.array(z.tuple([id, id])).max(most.edges),
  barriers,
  keep: z
    .array(
      z.union([
        id,
        z.strictObject({
          node: id,
          from: z.array(id).min(1).max(most.keep).describe('sources, each of which stays joined'),
        }),
      ]),
    )
    .max(most.keep)
    .default([])
    .describe('nodes that stay joined to a source'),
});

export const segmentsIn = z.strictObject({
  nodes: z.array(id).min(1).max(most.nodes),
  links: z.array(z.strictObject({ id, a: id, b: id })).max(most.edges),
  valves: z.array(z.strictObject({ link: id, node: id })).max(most.edges),
});

const name = z.string().min(1).max(most.idLength).optional();
const height = figure('m', { min: -200, max: 200, says: 'that is no height in a vessel' })
  .optional()
  .describe('above one level for all parts, the sole');

export const partIn = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.enum(['run', 'machine', 'junction']),
    name,
    bore: figure('mm', { above: 0, max: 10_000 }).optional(),
    length: figure('m', { above: 0, max: 10_000 }).optional(),
    volume: figure('l', { min: 0, max: 1e9 }).optional(),
  }),
  z.strictObject({
    kind: z.literal('valve'),
    name,
    effort: effort.optional().describe('of shutting it; 1 unless given'),
    normal: z.enum(['open', 'shut', 'throttled']).optional(),
    turns: z.number().min(0).max(1_000).optional().describe('open, where it is throttled'),
    stations: z.array(z.string().min(1).max(most.idLength)).max(20).optional(),
  }),
  z.strictObject({ kind: z.literal('non-return'), name }),
  z.strictObject({
    kind: z.literal('source'),
    name,
    medium: z.string().min(1).max(most.idLength).optional(),
    height,
    depth: figure('m', { min: 0, max: 12_000 }).optional().describe('of liquid above it'),
    pressure: figure('kPa', { min: -101, max: 100_000 })
      .optional()
      .describe('gauge, besides the depth'),
    temperature: figure('Cel', { min: -60, max: 1_000 }).optional(),
  }),
  z.strictObject({ kind: z.enum(['drain', 'vent']), name, height }),
  z.strictObject({
    kind: z.literal('service'),
    name,
    from: z.array(id).min(1).max(most.keep).optional().describe('sources it needs, each'),
  }),
]);

export const linesIn = z.strictObject({
  parts: z.record(id, partIn),
  joins: z.array(z.tuple([id, id])).max(most.edges),
  opened: z.array(id).min(1).max(most.nodes).describe('parts that are opened'),
  barriers,
  keep: z.array(id).max(most.keep).default([]).describe('services that stay supplied'),
});

export type PlainIn = z.infer<typeof plainIn>;
export type SegmentsIn = z.infer<typeof segmentsIn>;
export type PartIn = z.infer<typeof partIn>;
export type LinesIn = z.infer<typeof linesIn>;
export type IsolateIn = PlainIn | SegmentsIn | LinesIn;

const ids = z.array(z.string());
const cutOut = {
  isolable: z.boolean(),
  why: z.string().optional().describe('where it is not isolable'),
  effort: z.number().nullable().describe('sum of the weights; null: not isolable'),
  bound: z.number().nullable().describe('no choice of closures has less effort'),
  proven: z.boolean().describe('that nothing has less effort, or that it is not isolable'),
  closures: ids,
  uncutPath: ids.describe('a path with fewer closures than barriers; empty where there is none'),
  segments: z.array(ids).describe('what no closure parts: node and link ids'),
  ...commonOut,
};

export const plainOut = z.strictObject(cutOut);

export const STEPS = ['shut', 'vent', 'drain', 'prove', 'open'] as const;

export const linesOut = z.strictObject({
  ...cutOut,
  order: z.array(z.strictObject({ do: z.enum(STEPS), part: z.string(), reason: z.string() })),
  drains: z
    .array(
      z.strictObject({
        part: z.string(),
        where: z.enum(['opened', 'between']),
        proves: ids.describe('sources that stand higher than it or press'),
        noProof: ids.describe('sources that do not reach up to it: it would run dry in any case'),
        unknown: ids.describe('sources of which that cannot be said'),
      }),
    )
    .describe('lowest first'),
  vents: ids.describe('highest first'),
  lostServices: ids,
  trappedVolume: figureOut('l').nullable().describe('behind the closures'),
});

export const segmentsOut = z.strictObject({
  isolable: z.null(),
  effort: z.null(),
  bound: z.null(),
  proven: z.null(),
  closures: z.null(),
  uncutPath: z.null(),
  segments: z.array(ids),
  ...commonOut,
});

export type PlainOut = z.infer<typeof plainOut>;
export type LinesOut = z.infer<typeof linesOut>;
export type SegmentsOut = z.infer<typeof segmentsOut>;
