// The bilge main that the rules ask for, and what its pump gives at a stated speed of the water.

import { z } from 'zod';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { formatNumber } from '../quantity/quantity.ts';
import { entered, newSheet, quantity } from '../quantity/sheet.ts';
import type { Source } from '../quantity/types.ts';

const size = (says: string) => figure('m', { above: 0, max: 1_000, says });

export const bilgeMainIn = z.strictObject({
  length: size('a vessel is longer than nought'),
  breadth: size('a vessel is broader than nought'),
  depth: size('a vessel is deeper than nought').describe('to the bulkhead deck'),
  speed: figure('m/s', { above: 0, max: 20, says: 'the water moves in the pipe' })
    .default({ value: 2, unit: 'm/s' })
    .describe('of the water; 2 unless given'),
});
export type BilgeMainIn = z.infer<typeof bilgeMainIn>;

export const bilgeMainOut = z.strictObject({
  diameter: figureOut('mm').describe('least, inside'),
  capacity: figureOut('m3/h').describe('least, of each power pump'),
  ...commonOut,
});
export type BilgeMainOut = z.infer<typeof bilgeMainOut>;

const rule: Source = {
  kind: 'from memory',
  of:
    'SOLAS II-1/35-1 paragraph 3.9 (a public file prints the same formula from Bureau Veritas ' +
    'NR467 Pt C Ch 1 Sec 10 [6.8.1])',
};
const speedRule: Source = {
  kind: 'published',
  title: 'International Code of Safety for High-Speed Craft',
  edition: 'as read on a public page',
  place: '10.3.5',
};

/** Of the rules for small craft and fishing vessels. */
const LEAST_MM = 50;
const LEAST_SPEED = 2;

export function bilgeMain(input: BilgeMainIn) {
  const sheet = newSheet();
  const { breadth, depth, length, speed } = input;
  sheet.take('L', 'length', length.value, 'm', entered);
  sheet.take('B', 'breadth', breadth.value, 'm', entered);
  sheet.take('D', 'depth to the bulkhead deck', depth.value, 'm', entered);
  const fromRule = speed.given === undefined && speed.value === LEAST_SPEED;
  sheet.take('v', 'speed of the water', speed.value, 'm/s', fromRule ? speedRule : entered);
  const d = 25 + 1.68 * Math.sqrt(length.value * (breadth.value + depth.value));
  sheet.work('d', 'bilge main, inside', '25 + 1.68*sqrt(L*(B + D))', d, 'mm', rule);
  const capacity = (Math.PI / 4) * (d / 1_000) ** 2 * speed.value * 3_600;
  const flow = 'pi/4*(d/1000)^2*v*3600';
  sheet.work('Q', 'what each power pump gives', flow, capacity, 'm3/h', speedRule);
  const cautions = ['The rule for this vessel and its flag comes first: this is the one of SOLAS.'];
  if (d < LEAST_MM) {
    cautions.push(
      `${formatNumber(d)} mm is under the ${LEAST_MM} mm that rules for small craft and fishing ` +
        `vessels ask for at the least (Special Service Craft Pt 15 Ch 2 7.1; Torremolinos (2)(d)).`,
    );
  }
  if (speed.value < LEAST_SPEED) {
    cautions.push(`The rules ask for ${LEAST_SPEED} m/s at the least; this is slower.`);
  }
  const result: BilgeMainOut = {
    diameter: quantity(d, 'mm'),
    capacity: quantity(capacity, 'm3/h'),
    working: [...sheet.rows],
    cautions,
    notWorkedOut: [],
  };
  return { ok: true, result } as const;
}
