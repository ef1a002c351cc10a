// Friction that a thread and a bearing face may have, by what is on them: a range, never a figure.

import type { Source } from '../../quantity/types.ts';

export const surfaces = ['as received', 'oiled', 'anti-seize', 'threadlock'] as const;
export type Surface = (typeof surfaces)[number];

export type FrictionRange = {
  readonly low: number;
  readonly high: number;
  readonly source: Source;
  readonly says: string;
};

const classes = (place: string): Source => ({
  kind: 'published',
  title: 'VDI 2230 Part 1, friction classes with guide values',
  edition: '2003, in public copies of the table',
  place: `Table A5, ${place}`,
});

/** Carbon steel, bright or coated; where the table lists a state twice the range spans both. */
const steel: Readonly<Record<Surface, FrictionRange>> = {
  'as received': {
    low: 0.08,
    high: 0.24,
    source: classes('classes B and C: delivery state'),
    says: 'delivery state stands in classes B (0.08 to 0.16) and C (0.14 to 0.24)',
  },
  oiled: { low: 0.08, high: 0.16, source: classes('class B: oils'), says: 'oils, class B' },
  'anti-seize': {
    low: 0.04,
    high: 0.16,
    source: classes('classes A and B: solid lubricants in pastes'),
    says: 'pastes stand in classes A (0.04 to 0.10) and B (0.08 to 0.16)',
  },
  threadlock: {
    low: 0.14,
    high: 0.24,
    source: classes('class C: adhesive'),
    says: 'adhesive, class C',
  },
};

const unboundedTop: Source = { kind: 'common practice, no source' };

/** Austenitic steel galls; its states stand in higher classes. */
const austenitic: Readonly<Record<Surface, FrictionRange>> = {
  'as received': {
    low: 0.3,
    high: 0.5,
    source: unboundedTop,
    says: 'class E states 0.30 or more for austenitic steel without lubricant; 0.5 is assumed',
  },
  oiled: {
    low: 0.2,
    high: 0.35,
    source: classes('class D: austenitic steel, oil'),
    says: 'austenitic steel with oil, class D',
  },
  'anti-seize': {
    low: 0.08,
    high: 0.24,
    source: classes('classes B and C: austenitic steel, pastes'),
    says: 'pastes on austenitic steel stand in classes B and C',
  },
  threadlock: {
    low: 0.14,
    high: 0.35,
    source: unboundedTop,
    says: 'no range is published for adhesive on austenitic steel: classes C and D are spanned',
  },
};

export const frictionRange = (surface: Surface, stainless: boolean): FrictionRange =>
  (stainless ? austenitic : steel)[surface];
