// How a part is lifted, as a plant file has it: by hands that reach so far, or hung from gear.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { idSchema } from '../values/schema.ts';
import { measure } from './measure.ts';

const handsSchema = z.strictObject({
  /** Of the hands: ahead of the ankles, above the floor. */
  h: measure('cm', 'nought or more'),
  v: measure('cm', 'nought or more'),
  asymmetry: z.number().min(0).max(180).optional(),
});

/** A lift by hand as it must be done here: what the calculation `lift` asks for. */
export const wayLiftSchema = z.strictObject({
  origin: handsSchema,
  destination: handsSchema.optional(),
  travel: measure('cm', 'nought or more').optional(),
  coupling: z.enum(['good', 'fair', 'poor']).optional(),
  headroom: measure('cm').optional(),
  posture: z.string().optional(),
  hands: z.union([z.literal(1), z.literal(2)]).optional(),
  footing: z.string().optional(),
  moving: z.boolean().optional(),
});

const pointRef = z.strictObject({ part: idSchema, point: idSchema });

/** How it hangs or stands while its joints are loose and on its way: what gear it takes. */
export const rigSchema = z.strictObject({
  hoist: z.boolean().optional(),
  jack: z.boolean().optional(),
  legs: z.int().min(1).max(limits.lifting.legs).optional(),
  /** Of each leg from straight down, in degrees; two where two legs are unlike. */
  angle: z.number().min(0).max(limits.lifting.mostLegDeg).optional(),
  angles: z
    .tuple([
      z.number().min(0).max(limits.lifting.mostLegDeg),
      z.number().min(0).max(limits.lifting.mostLegDeg),
    ])
    .optional(),
  shackles: z.int().min(1).max(8).optional(),
  eyeBolts: z.int().min(1).max(4).optional(),
  /** The lift point it hangs from, and those of the part itself that the legs go to. */
  from: pointRef.optional(),
  points: z.array(pointRef).optional(),
});

/** An eye, a lug, a rail: what it is called, and what it is marked or rated for. */
export const liftPointSchema = z.strictObject({
  name: z.string().min(1),
  rated: measure('kg').optional(),
});

export type WayLift = z.infer<typeof wayLiftSchema>;
export type Rig = z.infer<typeof rigSchema>;
