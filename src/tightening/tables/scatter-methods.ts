// Greatest preload over least by the way of tightening: the tightening factor αA, as a range.

import type { Source } from '../../quantity/types.ts';

export type ScatterMethod = {
  readonly method: string;
  readonly low: number;
  readonly high: number;
  readonly source: Source;
};

const memory: Source = { kind: 'from memory', of: 'VDI 2230 Part 1, 2015, Table A8' };
const read: Source = {
  kind: 'published',
  title: 'VDI 2230 Part 1, tightening factor',
  edition: '2015, as quoted by a public page',
  place: 'Table A8',
};

export const scatterMethods: readonly ScatterMethod[] = [
  { method: 'stretch measured, ultrasonic or mechanical', low: 1.1, high: 1.2, source: memory },
  { method: 'by yield or by angle', low: 1.2, high: 1.4, source: memory },
  { method: 'hydraulic tensioning', low: 1.2, high: 1.6, source: memory },
  { method: 'torque wrench, torque tried on the joint itself', low: 1.4, high: 1.6, source: read },
  { method: 'torque wrench, friction estimated, class B', low: 1.6, high: 2, source: memory },
  { method: 'torque wrench, friction estimated, class A', low: 1.7, high: 2.5, source: memory },
  { method: 'impact driver, or by hand without a wrench', low: 2.5, high: 4, source: memory },
];
