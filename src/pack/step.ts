// One maker for steps, so that every step carries all its fields and an id made of verb + thing.

import { cautionFor, type Hazard } from '../quantity/authority.ts';
import type { DraftStep } from './order.ts';
import type { Phase, StepVerb, Thing } from './types.ts';

type Given = {
  readonly verb: StepVerb;
  readonly thing: Thing;
  readonly phase: Phase;
  readonly rank: number;
  readonly text: string;
  readonly reason: string;
  readonly hazards?: readonly Hazard[];
} & Partial<
  Omit<DraftStep, 'id' | 'verb' | 'thing' | 'phase' | 'rank' | 'text' | 'reason' | 'cautions'>
>;

export const stepId = (verb: StepVerb, thing: Thing, round?: string): string =>
  round === undefined ? `${verb} ${thing}` : `${verb} ${thing} ${round}`;

export const step = (given: Given): DraftStep => {
  const { hazards = [], ...rest } = given;
  return {
    place: null,
    tool: null,
    needs: [],
    count: null,
    holes: [],
    perHole: false,
    values: [],
    asks: [],
    fixed: {},
    minutes: null,
    hands: 1,
    stop: null,
    ...rest,
    id: stepId(given.verb, given.thing, given.round),
    cautions: [...new Set(hazards)].map(cautionFor),
  };
};
